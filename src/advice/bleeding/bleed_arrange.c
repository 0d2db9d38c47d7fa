#include "advice/bleeding/bleed_arrange.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

/* A stretch of the order: the wheels of one group of circuits. */
struct stretch {
    const struct bleed_nets *nets;
    const struct ordered_nipple *items; /* of the trade's order, what comes again as well */
    int count;
    bool *circuits;              /* whose group it is */
    const struct nipple *before; /* nipples upstream of the wheels, which come first */
    int before_count;
    bool by_wheel; /* things are wheels, else nipples */
    int *thing_of; /* by item */
    int things;
    struct nipple *sequence; /* room for a trial */
};

static bool same(struct nipple a, struct nipple b)
{
    return a.part == b.part && a.index == b.index;
}

/* The halves of a caliper: outer, inner, outer again. Gives the length with what comes again. */
static int add_again(const struct system *system, const struct ordered_nipple *order, int count,
                     struct ordered_nipple *into)
{
    int total = 0;
    for (int i = 0; i < count; i++) {
        into[total++] = order[i];
        const struct nipple one = order[i].nipple->nipple;
        const struct part *part = &system->parts[one.part];
        const struct scoped_nipple *before = i > 0 ? order[i - 1].nipple : NULL;
        if (before != NULL && before->nipple.part == one.part &&
            before->vertex == order[i].nipple->vertex &&
            nipple_is_outer(part, before->nipple.index) && nipple_is_inner(part, one.index)) {
            into[total] = order[i - 1];
            into[total++].reason = "outer-again";
        }
    }
    return total;
}

static void name_things(struct stretch *stretch)
{
    for (int pass = 0; pass < 2; pass++) {
        stretch->things = 0;
        for (int i = 0; i < stretch->count; i++) {
            const struct nipple one = stretch->items[i].nipple->nipple;
            stretch->thing_of[i] = -1;
            for (int j = 0; j < i && stretch->thing_of[i] < 0; j++) {
                const struct nipple other = stretch->items[j].nipple->nipple;
                bool alike = stretch->by_wheel ? other.part == one.part : same(other, one);
                stretch->thing_of[i] = alike ? stretch->thing_of[j] : -1;
            }
            if (stretch->thing_of[i] < 0) {
                stretch->thing_of[i] = stretch->things++;
            }
        }
        if (stretch->by_wheel || stretch->things <= SEARCH_MOST) {
            break;
        }
        stretch->by_wheel = true;
    }
}

/* The nipples of a thing: of a wheel all of its items, of a nipple itself. */
static int add_thing(const struct stretch *stretch, int thing, struct nipple *into, int count)
{
    for (int i = 0; i < stretch->count; i++) {
        if (stretch->thing_of[i] == thing) {
            into[count++] = stretch->items[i].nipple->nipple;
            if (!stretch->by_wheel) {
                break;
            }
        }
    }
    return count;
}

static struct order_trial judge(const struct thing_order *order, void *with)
{
    struct stretch *stretch = with;
    int count = stretch->before_count;
    memcpy(stretch->sequence, stretch->before, (size_t)count * sizeof *stretch->sequence);
    for (int i = 0; i < order->count; i++) {
        count = add_thing(stretch, order->items[i], stretch->sequence, count);
    }
    return bleed_nets_try(stretch->nets, stretch->circuits, stretch->sequence, count, false);
}

/* Air on the way to the nipples of a wheel. */
static double air_at(const struct stretch *stretch, int item)
{
    const struct scoped_nipple *nipple = stretch->items[item].nipple;
    const struct bleed_net *net = &stretch->nets->items[nipple->circuit];
    int index = bleed_net_nipple(net, nipple->nipple);
    return index < 0 ? 0 : bleed_air_on_way(net->net, index);
}

static double air_at_wheel(const struct stretch *stretch, int item)
{
    double most = 0;
    for (int i = 0; i < stretch->count; i++) {
        if (stretch->items[i].nipple->nipple.part == stretch->items[item].nipple->nipple.part) {
            double air = air_at(stretch, i);
            most = air > most ? air : most;
        }
    }
    return most;
}

/* Wheels with more air on their way first, else as the trade has them. into: items of the
 * stretch. */
static void by_most_air(const struct stretch *stretch, int *into)
{
    for (int i = 0; i < stretch->count; i++) {
        int at = i;
        while (at > 0 &&
               air_at_wheel(stretch, i) > air_at_wheel(stretch, into[at - 1]) + ORDER_AIR_EQUAL) {
            into[at] = into[at - 1];
            at--;
        }
        into[at] = i;
    }
}

/* Things in the order of items; of a wheel whose items stand together once. */
static struct thing_order things_in(const struct stretch *stretch, const int *items,
                                    struct arena *arena)
{
    int *order = ARENA_ARRAY(arena, (size_t)stretch->count + 1, int);
    int count = 0;
    for (int i = 0; i < stretch->count; i++) {
        int thing = stretch->thing_of[items[i]];
        if (!stretch->by_wheel || count == 0 || order[count - 1] != thing) {
            order[count++] = thing;
        }
    }
    return (struct thing_order){order, count};
}

static bool same_order(const struct thing_order *a, const struct thing_order *b)
{
    return a->count == b->count &&
           memcmp(a->items, b->items, (size_t)a->count * sizeof *a->items) == 0;
}

static bool all_dry(const struct stretch *stretch)
{
    bool dry = true;
    for (int c = 0; c < stretch->nets->count; c++) {
        dry = dry && (!stretch->circuits[c] || stretch->nets->items[c].dry);
    }
    return dry;
}

/* Whether the first wheel of the trade's order has less air on its way than some other. */
static bool holds_less(const struct stretch *stretch)
{
    for (int i = 1; i < stretch->count; i++) {
        if (air_at_wheel(stretch, i) > air_at_wheel(stretch, 0) + ORDER_AIR_EQUAL) {
            return true;
        }
    }
    return false;
}

static const char *departure_of(const struct stretch *stretch, const struct scoped_nipple *first)
{
    const struct scoped_nipple *rule = stretch->items[0].nipple;
    const struct bleed_net *net = &stretch->nets->items[rule->circuit];
    int at = bleed_net_nipple(net, first->nipple), by_rule = bleed_net_nipple(net, rule->nipple);
    return at >= 0 && by_rule >= 0 && at != by_rule ? bleed_departure(net->net, at, by_rule)
                                                    : "tried-cheaper";
}

/* Puts the items in the order that was found, with reasons that are true of it. */
static void put(const struct stretch *stretch, const struct order_found *found,
                const struct thing_order *trade, const struct thing_order *most_air,
                struct arranged *into)
{
    bool is_trade = same_order(&found->order, trade);
    bool is_most_air = !is_trade && same_order(&found->order, most_air);
    bool *used = ARENA_ARRAY(stretch->nets->arena, (size_t)stretch->count + 1, bool);
    int start = into->count;
    for (int i = 0; i < found->order.count; i++) {
        for (int k = 0; k < stretch->count; k++) {
            if (used[k] || stretch->thing_of[k] != found->order.items[i]) {
                continue;
            }
            used[k] = true;
            into->items[into->count++] = stretch->items[k];
            if (!stretch->by_wheel) {
                break;
            }
        }
    }
    if (is_trade) {
        struct ordered_nipple *first = &into->items[start];
        if (strcmp(first->reason, "longest-run-first") != 0) {
            return;
        }
        if (!order_stands(&found->chosen, &found->best, 0)) {
            first->reason = "longest-run-anyway";
        } else if (holds_less(stretch)) {
            first->reason = "longest-run-by-custom";
        }
        return;
    }
    const char *why =
        is_most_air ? "most-air-first" : departure_of(stretch, into->items[start].nipple);
    for (int i = start; i < into->count; i++) {
        struct ordered_nipple *item = &into->items[i];
        bool in_wheel = strcmp(item->reason, "outer-again") == 0 ||
                        strcmp(item->reason, "upper-nipple-after") == 0 ||
                        strcmp(item->reason, "both-circuits-in-step") == 0;
        if (!in_wheel || !(stretch->by_wheel || is_most_air)) {
            item->reason = i == start ? why : is_most_air ? "next-most-air" : "as-tried";
        }
    }
    into->departure = into->departure == NULL ? why : into->departure;
}

/* Strokes are whole, so that a stroke more or less is no difference. */
static double stroke_of(const struct stretch *stretch)
{
    double stroke = 0;
    for (int c = 0; c < stretch->nets->count; c++) {
        const struct bleed_net *net = &stretch->nets->items[c];
        stroke = stretch->circuits[c] && net->way.method == METHOD_PEDAL
                     ? fmax(stroke, net->way.stroke)
                     : stroke;
    }
    return stroke;
}

static void arrange(struct stretch *stretch, struct arranged *into)
{
    struct arena *arena = stretch->nets->arena;
    size_t room = (size_t)stretch->count + 1;
    stretch->thing_of = ARENA_ARRAY(arena, room, int);
    int *as_is = ARENA_ARRAY(arena, room, int), *by_air = ARENA_ARRAY(arena, room, int);
    name_things(stretch);
    for (int i = 0; i < stretch->count; i++) {
        as_is[i] = i;
    }
    by_most_air(stretch, by_air);
    struct thing_order trade = things_in(stretch, as_is, arena);
    struct thing_order most_air = things_in(stretch, by_air, arena);
    bool dry = all_dry(stretch);
    struct thing_order proposals[] = {dry ? trade : most_air, dry ? most_air : trade};
    struct order_search search = {stretch->things, judge, stretch,
                                  proposals,       2,     stroke_of(stretch)};
    struct order_found found = order_find(&search, arena);
    put(stretch, &found, &trade, &most_air, into);
    into->tried += found.tried;
    for (int i = 0; i < found.worst_order.count; i++) {
        into->worst_count =
            add_thing(stretch, found.worst_order.items[i], into->worst, into->worst_count);
    }
}

/* How many items from at on belong to the wheels of one group, clutches by themselves. */
static int stretch_length(const struct ordered_nipple *order, int at, int count,
                          const int *group_of)
{
    const struct scoped_nipple *first = order[at].nipple;
    int length = 0;
    while (at + length < count) {
        const struct scoped_nipple *item = order[at + length].nipple;
        if (!item->wheel || item->clutch != first->clutch ||
            group_of[item->circuit] != group_of[first->circuit]) {
            break;
        }
        length++;
    }
    return length;
}

struct arranged bleed_arrange(const struct bleed_nets *nets, const struct ordered_nipple *trade,
                              int count, bool own, struct arena *arena)
{
    size_t room = 2 * (size_t)count + 2;
    struct ordered_nipple *order = ARENA_ARRAY(arena, room, struct ordered_nipple);
    int total = own ? count : add_again(nets->system, trade, count, order);
    struct arranged arranged = {
        .items = ARENA_ARRAY(arena, 2 * room, struct ordered_nipple),
        .trade = ARENA_ARRAY(arena, room, struct nipple),
        .trade_count = total,
        .worst = ARENA_ARRAY(arena, 2 * room, struct nipple),
    };
    struct nipple *before = ARENA_ARRAY(arena, room, struct nipple);
    int *group_of = ARENA_ARRAY(arena, (size_t)nets->count + 1, int), upstream = 0;
    bleed_groups(nets->system, nets->network, group_of);
    if (own) {
        memcpy(order, trade, (size_t)count * sizeof *order);
    }
    for (int i = 0; i < total; i++) {
        arranged.trade[i] = order[i].nipple->nipple;
    }
    for (int i = 0; i < total;) {
        int length = own ? 0 : stretch_length(order, i, total, group_of);
        if (length == 0) {
            before[upstream++] = arranged.worst[arranged.worst_count++] = order[i].nipple->nipple;
            arranged.items[arranged.count++] = order[i++];
            continue;
        }
        struct stretch stretch = {
            .nets = nets,
            .items = &order[i],
            .count = length,
            .circuits = ARENA_ARRAY(arena, (size_t)nets->count + 1, bool),
            .before = before,
            .before_count = upstream,
            .sequence = ARENA_ARRAY(arena, 2 * room, struct nipple),
        };
        int circuits = 0;
        for (int k = 0; k < length; k++) {
            int circuit = order[i + k].nipple->circuit;
            circuits += !stretch.circuits[circuit];
            stretch.circuits[circuit] = true;
        }
        stretch.by_wheel = circuits > 1;
        arrange(&stretch, &arranged);
        i += length;
    }
    return arranged;
}
