#include "advice/bleeding/bleed_order.h"

#include <math.h>
#include <stddef.h>
#include <string.h>
#include <strings.h>

/* Circuits that meet in a caliper with two inlets are bled together, so they make one group. */
struct group {
    bool has_rear, has_front;
    bool diagonal;      /* one rear wheel and the front wheel of the other side */
    bool runs_known;    /* of all its wheels that are in scope */
    long longest;       /* cm of pipe to its farthest wheel in scope; rear wheels if it has any */
    enum side far_side; /* of that wheel */
};
struct sorting {
    const struct system *system;
    const struct network *network;
    int *group_of; /* by circuit */
    struct group *groups;
    long *part_run; /* by part: cm to its farthest nipple in scope */
    bool runs_known;
    enum side away; /* from the master, which sits before the driver */
};

/* Runs that differ by less than the tape shows count as equal. */
static long centimetres(double metres)
{
    return lround(metres * 100.0);
}

static enum side away_from_master(const struct system *system)
{
    return system_vehicle(system)->driver == DRIVER_LEFT ? SIDE_RIGHT : SIDE_LEFT;
}

static int group_root(const struct sorting *sorting, int circuit)
{
    while (sorting->group_of[circuit] != circuit) {
        circuit = sorting->group_of[circuit];
    }
    return circuit;
}

static void join_shared_calipers(struct sorting *sorting)
{
    const struct system *system = sorting->system;
    for (int c = 0; c < sorting->network->circuit_count; c++) {
        sorting->group_of[c] = c;
    }
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind != KIND_DISC || part_chambers(&system->parts[i]) < 2) {
            continue;
        }
        int first = network_vertex(sorting->network, i, 0);
        int second = network_vertex(sorting->network, i, 1);
        if (first < 0 || second < 0) {
            continue;
        }
        int a = sorting->network->vertices[first].circuit;
        int b = sorting->network->vertices[second].circuit;
        if (a >= 0 && b >= 0) {
            int low = group_root(sorting, a), high = group_root(sorting, b);
            sorting->group_of[low > high ? low : high] = low > high ? high : low;
        }
    }
    for (int c = 0; c < sorting->network->circuit_count; c++) {
        sorting->group_of[c] = group_root(sorting, c);
    }
}

/* What a group consists of follows from the car, not from what is in scope. */
static void describe_groups(struct sorting *sorting)
{
    const struct network *network = sorting->network;
    for (int g = 0; g < network->circuit_count; g++) {
        int fronts = 0, rears = 0;
        enum side front_side = SIDE_NONE, rear_side = SIDE_NONE;
        for (int v = 0; v < network->vertex_count; v++) {
            int circuit = network->vertices[v].circuit;
            if (circuit < 0 || sorting->group_of[circuit] != g) {
                continue;
            }
            const struct part *part = &sorting->system->parts[network->vertices[v].part];
            if (!kind_is_brake(part->kind)) {
                continue;
            }
            if (part->axle == AXLE_REAR) {
                rears++;
                rear_side = part->side;
            } else {
                fronts++;
                front_side = part->side;
            }
        }
        struct group *group = &sorting->groups[g];
        group->has_front = fronts > 0;
        group->has_rear = rears > 0;
        group->diagonal = fronts == 1 && rears == 1 && front_side != rear_side;
        group->runs_known = true;
        group->longest = -1;
    }
}

static void measure_groups(struct sorting *sorting, const struct bleed_set *set)
{
    for (int i = 0; i < set->count; i++) {
        const struct scoped_nipple *item = &set->items[i];
        if (!item->wheel || item->clutch) {
            continue;
        }
        const struct vertex *vertex = &sorting->network->vertices[item->vertex];
        const struct part *part = &sorting->system->parts[item->nipple.part];
        struct group *group = &sorting->groups[sorting->group_of[item->circuit]];
        long run = centimetres(vertex->run);
        if (run > sorting->part_run[item->nipple.part]) {
            sorting->part_run[item->nipple.part] = run;
        }
        if (!vertex->run_known) {
            group->runs_known = false;
            sorting->runs_known = false;
        }
        if (group->has_rear && part->axle != AXLE_REAR) {
            continue;
        }
        if (run > group->longest || (run == group->longest && part->side == sorting->away)) {
            group->longest = run;
            group->far_side = part->side;
        }
    }
}

/* Master and valves first, then wheels, the clutch last. */
static int stage_of(const struct scoped_nipple *item)
{
    if (item->clutch) {
        return item->wheel ? 3 : 2;
    }
    return item->wheel ? 1 : 0;
}

static int compare_sides(const struct sorting *sorting, enum side a, enum side b)
{
    return (b == sorting->away) - (a == sorting->away);
}

static int compare_groups(const struct sorting *sorting, int a, int b)
{
    const struct group *left = &sorting->groups[a], *right = &sorting->groups[b];
    if (a == b) {
        return 0;
    }
    if (left->has_rear != right->has_rear) {
        return left->has_rear ? -1 : 1;
    }
    if (sorting->runs_known && left->longest != right->longest) {
        return left->longest > right->longest ? -1 : 1;
    }
    int by_side = compare_sides(sorting, left->far_side, right->far_side);
    return by_side != 0 ? by_side : a - b;
}

/* Whether a nipple's own name holds one of the words; the names stand in the part, with commas. */
static bool name_holds(const struct part *part, int index, const char *const *words, size_t count)
{
    const char *names = part->fitted.nipple_names;
    for (int skipped = 0; names != NULL && skipped < index; skipped++) {
        names = strchr(names, ',');
        names = names == NULL ? NULL : names + 1;
    }
    if (names == NULL) {
        return false;
    }
    const char *end = strchr(names, ',');
    size_t length = end == NULL ? strlen(names) : (size_t)(end - names);
    for (size_t i = 0; i < count; i++) {
        size_t letters = strlen(words[i]);
        for (size_t at = 0; at + letters <= length; at++) {
            if (strncasecmp(names + at, words[i], letters) == 0) {
                return true;
            }
        }
    }
    return false;
}

bool nipple_is_outer(const struct part *part, int index)
{
    static const char *const words[] = {"outer", "outboard"};
    return name_holds(part, index, words, 2);
}

bool nipple_is_inner(const struct part *part, int index)
{
    static const char *const words[] = {"inner", "inboard"};
    return name_holds(part, index, words, 2);
}

/* Lower before upper, outer before inner, by the nipples' own names where they have any. */
static int nipple_rank(const struct part *part, int index)
{
    static const char *const late[] = {"upper", "top", "inner", "inboard"};
    return name_holds(part, index, late, 4) ? 100 + index : index;
}

static int compare_axles(const struct part *a, const struct part *b)
{
    return (b->axle == AXLE_REAR) - (a->axle == AXLE_REAR);
}

static int compare_wheels(const struct sorting *sorting, const struct scoped_nipple *a,
                          const struct scoped_nipple *b)
{
    const struct part *left = &sorting->system->parts[a->nipple.part];
    const struct part *right = &sorting->system->parts[b->nipple.part];
    const struct group *group = &sorting->groups[sorting->group_of[a->circuit]];
    long left_run = sorting->part_run[a->nipple.part];
    long right_run = sorting->part_run[b->nipple.part];
    int by_axle = compare_axles(left, right);
    if (group->diagonal && by_axle != 0) {
        return by_axle;
    }
    if (group->runs_known && left_run != right_run) {
        return left_run > right_run ? -1 : 1;
    }
    int by_side = compare_sides(sorting, left->side, right->side);
    if (by_axle != 0 || by_side != 0) {
        return by_axle != 0 ? by_axle : by_side;
    }
    return strcmp(left->name, right->name);
}

static int compare_nipples(const struct sorting *sorting, const struct scoped_nipple *a,
                           const struct scoped_nipple *b)
{
    const struct vertex *left = &sorting->network->vertices[a->vertex];
    const struct vertex *right = &sorting->network->vertices[b->vertex];
    const struct part *part = &sorting->system->parts[a->nipple.part];
    int result = stage_of(a) - stage_of(b);
    if (result == 0 && a->nipple.part == b->nipple.part) {
        return nipple_rank(part, a->nipple.index) - nipple_rank(part, b->nipple.index);
    }
    if (result == 0 && !a->wheel) {
        result = left->depth - right->depth;
    }
    if (result == 0) {
        result =
            compare_groups(sorting, sorting->group_of[a->circuit], sorting->group_of[b->circuit]);
    }
    if (result == 0) {
        result = compare_wheels(sorting, a, b);
    }
    return result;
}

static bool only_one_wheel(const struct bleed_set *set)
{
    for (int i = 0; i < set->count; i++) {
        if (!set->items[i].wheel || set->items[i].nipple.part != set->items[0].nipple.part) {
            return false;
        }
    }
    return set->untouched_count > 0;
}

static bool only_clutch(const struct bleed_set *set)
{
    for (int i = 0; i < set->count; i++) {
        if (!set->items[i].clutch) {
            return false;
        }
    }
    return true;
}

/* The reason of a wheel among the wheels of its group: first and last of it count. */
static const char *wheel_reason(const struct sorting *sorting, const struct ordered_nipple *list,
                                int count, int at)
{
    const struct scoped_nipple *item = list[at].nipple;
    const struct part *part = &sorting->system->parts[item->nipple.part];
    int id = sorting->group_of[item->circuit];
    const struct group *group = &sorting->groups[id];
    long run = sorting->part_run[item->nipple.part];
    bool first = true, last = true, tie_after = false, tie_before = false;
    for (int i = 0; i < count; i++) {
        const struct scoped_nipple *other = list[i].nipple;
        if (!other->wheel || other->clutch || other->nipple.part == item->nipple.part ||
            sorting->group_of[other->circuit] != id) {
            continue;
        }
        const struct part *wheel = &sorting->system->parts[other->nipple.part];
        bool tie = group->runs_known ? sorting->part_run[other->nipple.part] == run
                                     : wheel->axle == part->axle;
        first = first && i > at;
        last = last && i < at;
        tie_after = tie_after || (tie && i > at);
        tie_before = tie_before || (tie && i < at);
    }
    if (group->diagonal) {
        return part->axle == AXLE_REAR ? "rear-of-pair-first" : "front-of-pair";
    }
    if (tie_before) {
        return "near-the-master";
    }
    if (tie_after) {
        return "away-from-master";
    }
    if (!group->runs_known) {
        return "rear-before-front";
    }
    return first ? "longest-run-first" : last ? "shortest-run-last" : "next-longest-run";
}

static bool shares_reservoir(const struct sorting *sorting, int clutch)
{
    const struct network *network = sorting->network;
    int own = reservoir_of(sorting->system, network->circuits[clutch].master);
    for (int c = 0; c < network->circuit_count; c++) {
        if (!network->circuits[c].clutch && own >= 0 &&
            reservoir_of(sorting->system, network->circuits[c].master) == own) {
            return true;
        }
    }
    return false;
}

static const char *clutch_reason(const struct sorting *sorting, const struct bleed_set *set,
                                 const struct scoped_nipple *item)
{
    if (!item->wheel) {
        return "upstream-first";
    }
    if (only_clutch(set)) {
        return "clutch-only";
    }
    return shares_reservoir(sorting, item->circuit) ? "clutch-last" : "clutch-apart";
}

static const char *reason_of(const struct sorting *sorting, const struct bleed_set *set,
                             const struct ordered_nipple *list, int at)
{
    const struct scoped_nipple *item = list[at].nipple;
    const struct scoped_nipple *before = at > 0 ? list[at - 1].nipple : NULL;
    const struct scoped_nipple *after = at + 1 < set->count ? list[at + 1].nipple : NULL;
    if (before != NULL && before->nipple.part == item->nipple.part) {
        return before->circuit != item->circuit ? "both-circuits-in-step" : "upper-nipple-after";
    }
    if (!item->wheel && !item->clutch) {
        return "upstream-first";
    }
    if (item->clutch) {
        return clutch_reason(sorting, set, item);
    }
    if (only_one_wheel(set)) {
        return after != NULL ? "lower-nipple-first" : "only-this-wheel";
    }
    return wheel_reason(sorting, list, set->count, at);
}

static struct sorting sorting_of(const struct system *system, const struct network *network,
                                 const struct bleed_set *set, struct arena *arena)
{
    size_t circuits = (size_t)network->circuit_count + 1;
    struct sorting sorting = {
        .system = system,
        .network = network,
        .group_of = ARENA_ARRAY(arena, circuits, int),
        .groups = ARENA_ARRAY(arena, circuits, struct group),
        .part_run = ARENA_ARRAY(arena, (size_t)system->part_count + 1, long),
        .runs_known = true,
        .away = away_from_master(system),
    };
    join_shared_calipers(&sorting);
    describe_groups(&sorting);
    measure_groups(&sorting, set);
    return sorting;
}

void bleed_order(const struct system *system, const struct network *network,
                 const struct bleed_set *set, struct arena *arena, struct ordered_nipple *into)
{
    struct sorting sorting = sorting_of(system, network, set, arena);
    for (int i = 0; i < set->count; i++) {
        int at = i;
        while (at > 0 && compare_nipples(&sorting, &set->items[i], into[at - 1].nipple) < 0) {
            into[at] = into[at - 1];
            at--;
        }
        into[at].nipple = &set->items[i];
    }
    for (int i = 0; i < set->count; i++) {
        const struct scoped_nipple *item = into[i].nipple;
        into[i].reason = reason_of(&sorting, set, into, i);
        into[i].run_assumed = item->wheel && !item->clutch &&
                              !sorting.groups[sorting.group_of[item->circuit]].runs_known;
    }
}

void bleed_groups(const struct system *system, const struct network *network, int *into)
{
    struct sorting sorting = {.system = system, .network = network, .group_of = into};
    join_shared_calipers(&sorting);
}

static bool order_names(const struct given_order *order, struct nipple nipple)
{
    for (int i = 0; i < order->count; i++) {
        if (order->items[i].part == nipple.part && order->items[i].index == nipple.index) {
            return true;
        }
    }
    return false;
}

int bleed_order_given(const struct system *system, const struct network *network,
                      const struct bleed_set *set, const struct given_order *order,
                      struct arena *arena, struct ordered_nipple *into)
{
    struct ordered_nipple *customs =
        ARENA_ARRAY(arena, (size_t)set->count + 1, struct ordered_nipple);
    bool *taken = ARENA_ARRAY(arena, (size_t)set->count + 1, bool);
    int count = 0;
    bleed_order(system, network, set, arena, customs);
    for (int o = 0; o < order->count; o++) {
        for (int i = 0; i < set->count; i++) {
            struct nipple nipple = customs[i].nipple->nipple;
            if (nipple.part == order->items[o].part && nipple.index == order->items[o].index) {
                into[count] = customs[i];
                into[count].run_assumed = false;
                into[count++].reason = taken[i] ? order->again : order->reason;
                taken[i] = true;
            }
        }
    }
    for (int i = 0; i < set->count; i++) {
        const struct scoped_nipple *item = customs[i].nipple;
        if (order_names(order, item->nipple)) {
            continue;
        }
        into[count] = customs[i];
        if (!item->clutch) {
            into[count].reason = order->left_out;
        }
        count++;
    }
    return count;
}
