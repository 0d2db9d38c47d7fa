#include "advice/checks/hoses.h"

#include <math.h>
#include <string.h>

#include "advice/checks/finding.h"
#include "base/list.h"
#include "base/text.h"
#include "parts/keys/key.h"

struct line_list {
    struct hose_line *items;
    size_t count;
    size_t capacity;
};

struct listing {
    const struct system *system;
    const struct network *network;
    struct date today;
    struct arena *arena;
    struct line_list lines;
    bool *listed; /* by part: this hose has its line */
    bool *unsaid; /* by part: what it is mounted on is needed and not said */
};

const char *hose_standing_words(enum hose_standing standing)
{
    switch (standing) {
    case HOSE_IS_NEW:
        return "new enough";
    case HOSE_IS_OLD:
        return "old: renew it";
    case HOSE_AGE_NOT_KNOWN:
        return "age not known";
    case HOSE_IS_MISSING:
        return "missing";
    case HOSE_IS_ACCEPTED:
        return "hard pipe accepted";
    case HOSE_CANNOT_TELL:
        return "cannot tell";
    case HOSE_IS_IDLE:
        return "a hose where nothing moves";
    }
    return "";
}

static enum hose_standing standing_of(struct date renewed, struct date today)
{
    if (!date_known(renewed))
        return HOSE_AGE_NOT_KNOWN;
    const int years = (int)lround(limit_value("hose-age-most"));
    if (date_known(today) && date_compare(date_add_years(renewed, years), today) < 0)
        return HOSE_IS_OLD;
    return HOSE_IS_NEW;
}

/* Whether a day is that of the latest work. */
static bool is_at_hand(const struct system *system, struct date date)
{
    return system->work_count == 0 ||
           date_compare(date, system->works[system->work_count - 1].date) == 0;
}

static struct hose_line *add_line(struct listing *listing, enum hose_standing standing,
                                  const char *use)
{
    struct hose_line *line = LIST_ADD(listing->arena, &listing->lines);
    line->standing = standing;
    line->use = use;
    line->hose = line->near = line->far = -1;
    return line;
}

static const char *without_article(const char *words)
{
    return strncmp(words, "the ", 4) == 0 ? words + 4 : words;
}

static const char *from_mount_to_mount(struct listing *listing, const struct gap *gap)
{
    return text_print(listing->arena, "from %s to %s", mount_words(gap->from),
                      mount_words(gap->to));
}

/* What a missing hose should be called. */
static const char *name_for(struct listing *listing, const struct gap *gap)
{
    const struct part *far = &listing->system->parts[gap->far];
    if (far->kind == KIND_SLAVE)
        return text_print(listing->arena, "hose to %s", far->name);
    return text_print(listing->arena, "hose to %s", without_article(mount_words(gap->to)));
}

/* A line for a hose that is a part of its own. */
static struct hose_line *add_hose(struct listing *listing, int index, const char *use)
{
    const struct part *part = &listing->system->parts[index];
    const struct date renewed = part->as.hose.renewed;
    enum hose_standing standing = standing_of(renewed, listing->today);
    const bool in_work = part->done.renewed || part->done.replaced;
    const bool at_hand = in_work && is_at_hand(listing->system, part->done.date);
    if (standing == HOSE_AGE_NOT_KNOWN && at_hand)
        standing = HOSE_IS_NEW;
    struct hose_line *line = add_line(listing, standing, use);
    line->hose = index;
    line->name = part->name;
    line->renewed = renewed;
    line->renewed_in_work = at_hand;
    line->place = part->place;
    listing->listed[index] = true;
    return line;
}

static void add_gap(struct listing *listing, const struct gap *gap)
{
    const struct part *far = &listing->system->parts[gap->far];
    struct hose_line *line = NULL;
    switch (gap->state) {
    case GAP_BRIDGED:
        line = add_hose(listing, gap->hose, "pressure");
        break;
    case GAP_BARE:
        line = add_line(listing, HOSE_IS_MISSING, "pressure");
        line->name = name_for(listing, gap);
        line->place = far->place;
        break;
    case GAP_ACCEPTED:
        line = add_line(listing, HOSE_IS_ACCEPTED, "pressure");
        line->name = text_print(listing->arena, "hard pipe to %s", far->name);
        line->reason = gap->reason;
        line->place = far->place;
        break;
    case GAP_CANNOT_TELL:
        line = add_line(listing, HOSE_CANNOT_TELL, "pressure");
        line->name = text_print(listing->arena, "hose at %s", far->name);
        if (gap->unknown >= 0)
            listing->unsaid[gap->unknown] = true;
        line->reason = text_print(listing->arena, "what the %s is on is not said", far->name);
        line->where = text_print(listing->arena, "between the %s and the %s",
                                 listing->system->parts[gap->near].name, far->name);
        line->place = far->place;
        break;
    }
    line->near = gap->near;
    line->far = gap->far;
    if (!line->where)
        line->where = from_mount_to_mount(listing, gap);
}

/* The part with a name of its own at, or past, one end of a hose: a joint that sprang up in a run
 * says nothing to a reader. */
static int named_part(const struct listing *listing, int vertex, int edge)
{
    const struct network *network = listing->network;
    for (int steps = 0; steps < network->edge_count; steps++) {
        const struct part *part = &listing->system->parts[network->vertices[vertex].part];
        const int *both = &network->edges_at[network->first_at[vertex]];
        if (part->kind != KIND_JOINT || part->as.joint.implied != 1 ||
            network->first_at[vertex + 1] - network->first_at[vertex] != 2)
            break;
        edge = both[0] == edge ? both[1] : both[0];
        const struct edge *next = &network->edges[edge];
        vertex = next->a == vertex ? next->b : next->a;
    }
    return network->vertices[vertex].part;
}

static void say_neighbours(struct listing *listing, struct hose_line *line)
{
    const struct network *network = listing->network;
    for (int e = 0; e < network->edge_count; e++) {
        const struct edge *edge = &network->edges[e];
        if (edge->kind != EDGE_CARRIER || edge->part != line->hose)
            continue;
        const bool down = network->vertices[edge->a].depth <= network->vertices[edge->b].depth;
        line->near = named_part(listing, down ? edge->a : edge->b, e);
        line->far = named_part(listing, down ? edge->b : edge->a, e);
        line->where = text_print(listing->arena, "between the %s and the %s",
                                 listing->system->parts[line->near].name,
                                 listing->system->parts[line->far].name);
        return;
    }
    line->where = "joined to no circuit";
}

static void add_idle(struct listing *listing, int hose)
{
    struct hose_line *line = add_hose(listing, hose, "pressure");
    line->idle = true;
    if (line->standing == HOSE_IS_NEW)
        line->standing = HOSE_IS_IDLE;
    else
        line->reason = "nothing moves there, so a pipe would do";
    say_neighbours(listing, line);
}

static const char *use_words(enum hose_use use)
{
    switch (use) {
    case HOSE_SUPPLY:
        return "supply";
    case HOSE_VACUUM:
        return "vacuum";
    case HOSE_USE_NOT_SAID:
    case HOSE_PRESSURE:
        break;
    }
    return "pressure";
}

/* Hoses that no gap spoke of: beside a part whose mount is not known, or for supply or vacuum. */
static void add_others(struct listing *listing)
{
    int *others = ARENA_ARRAY(listing->arena, (size_t)listing->system->part_count, int);
    int count = 0;
    for (int i = 0; i < listing->system->part_count; i++) {
        const struct part *part = &listing->system->parts[i];
        if (part->kind != KIND_HOSE || listing->listed[i])
            continue;
        int place = count++;
        for (; place > 0 && system_compare(listing->system, i, others[place - 1]) < 0; place--)
            others[place] = others[place - 1];
        others[place] = i;
    }
    for (int k = 0; k < count; k++) {
        const enum hose_use use = listing->system->parts[others[k]].as.hose.use;
        struct hose_line *line = add_hose(listing, others[k], use_words(use));
        if (use == HOSE_SUPPLY)
            line->where = "between reservoir and master";
        else if (use == HOSE_VACUUM)
            line->where = "between engine and servo";
        else
            say_neighbours(listing, line);
    }
}

/* A low-pressure hose that is told by two keys of a part: its length and when it was renewed. */
static void add_low_pressure(struct listing *listing, int index, const char *use,
                             struct date renewed, size_t length_field, size_t renewed_field)
{
    const struct part *part = &listing->system->parts[index];
    const struct origin *origin = part_origin(part, renewed_field);
    struct hose_line *line = add_line(listing, standing_of(renewed, listing->today), use);
    line->name = text_print(listing->arena, "%s %s hose", part->name, use);
    line->far = index;
    line->renewed = renewed;
    line->renewed_in_work = origin->kind == ORIGIN_WORK && part->done.replaced &&
                            is_at_hand(listing->system, part->done.date);
    line->place = part->place;
    if (origin->place.line > 0)
        line->place = origin->place;
    else if (part_origin(part, length_field)->place.line > 0)
        line->place = part_origin(part, length_field)->place;
}

static void add_supply(struct listing *listing, int index)
{
    const struct part *part = &listing->system->parts[index];
    const struct master *master = &part->as.master;
    if (!(master->supply_hose.m > 0) && !date_known(master->supply_hose_renewed))
        return;
    const char *name = text_print(listing->arena, "%s supply hose", part->name);
    if (system_find(listing->system, name) >= 0)
        return; /* the reader made a part of it, which is listed already */
    add_low_pressure(listing, index, "supply", master->supply_hose_renewed,
                     FIELD(as.master.supply_hose), FIELD(as.master.supply_hose_renewed));
    struct hose_line *line = &listing->lines.items[listing->lines.count - 1];
    line->near = master->reservoir;
    line->where = text_print(
        listing->arena, "from %s%s to the %s", line->near >= 0 ? "the " : "",
        line->near >= 0 ? listing->system->parts[line->near].name : "its reservoir", part->name);
}

static void add_vacuum(struct listing *listing, int index)
{
    const struct part *part = &listing->system->parts[index];
    add_low_pressure(listing, index, "vacuum", part->as.servo.vacuum_hose_renewed,
                     FIELD(as.servo.vacuum_hose), FIELD(as.servo.vacuum_hose_renewed));
    listing->lines.items[listing->lines.count - 1].where =
        text_print(listing->arena, "from the engine's inlet to the %s", part->name);
}

static bool has_vacuum_part(const struct system *system)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_HOSE && system->parts[i].as.hose.use == HOSE_VACUUM)
            return true;
    }
    return false;
}

static void add_keys_of(struct listing *listing, enum part_kind kind)
{
    const struct system *system = listing->system;
    int *found = ARENA_ARRAY(listing->arena, (size_t)system->part_count, int);
    int count = 0;
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind != kind)
            continue;
        int place = count++;
        for (; place > 0 && system_compare(system, i, found[place - 1]) < 0; place--)
            found[place] = found[place - 1];
        found[place] = i;
    }
    for (int k = 0; k < count; k++) {
        if (kind == KIND_MASTER)
            add_supply(listing, found[k]);
        else
            add_vacuum(listing, found[k]);
    }
}

static void count_line(struct hose_list *list, const struct hose_line *line)
{
    const bool there = line->standing != HOSE_IS_MISSING && line->standing != HOSE_IS_ACCEPTED &&
                       line->standing != HOSE_CANNOT_TELL;
    list->missing += line->standing == HOSE_IS_MISSING;
    list->has += there && !line->idle;
    list->renewed += line->renewed_in_work;
    list->old += line->standing == HOSE_IS_OLD;
    list->unknown += line->standing == HOSE_AGE_NOT_KNOWN;
    list->needed = list->has + list->missing;
}

/* A brake's mount follows from its axle's kind, any other part says its own. */
static const char *needs_words(const struct listing *listing)
{
    enum { MOST_NEEDS = 4 };
    struct text words = text_start(listing->arena);
    bool axles[AXLE_REAR + 1] = {false};
    int said = 0;
    for (int i = 0; i < listing->system->part_count && said < MOST_NEEDS; i++) {
        const struct part *part = &listing->system->parts[i];
        bool brake = kind_is_brake(part->kind) && part->axle != AXLE_NONE;
        if (!listing->unsaid[i] || (brake && axles[part->axle]))
            continue;
        const char *join = said++ > 0 ? ", " : "";
        if (brake)
            text_add(&words, "%s[vehicle] %s axle", join,
                     part->axle == AXLE_FRONT ? "front" : "rear");
        else
            text_add(&words, "%s[%s] on", join, part->name);
        axles[part->axle] = axles[part->axle] || brake;
    }
    return said > 0 ? words.items : NULL;
}

static struct hose_list summed_up(const struct listing *listing)
{
    struct hose_list list = {.items = listing->lines.items,
                             .count = (int)listing->lines.count,
                             .needs = needs_words(listing)};
    bool untold = false;
    for (int i = 0; i < list.count; i++) {
        count_line(&list, &list.items[i]);
        untold |= list.items[i].standing == HOSE_CANNOT_TELL;
    }
    if (list.missing > 0)
        list.verdict = HOSES_MISSING;
    else if (untold)
        list.verdict = HOSES_CANNOT_TELL;
    else if (list.old + list.unknown > 0)
        list.verdict = HOSES_OLD_LEFT;
    else
        list.verdict = HOSES_COMPLETE;
    return list;
}

struct hose_list hoses_of(const struct system *system, const struct network *network,
                          struct date today, struct arena *arena)
{
    struct listing listing = {
        .system = system,
        .network = network,
        .today = today,
        .arena = arena,
        .listed = ARENA_ARRAY(arena, (size_t)system->part_count, bool),
        .unsaid = ARENA_ARRAY(arena, (size_t)system->part_count, bool),
    };
    const struct gaps gaps = mounts_gaps(system, network, arena);
    for (int i = 0; i < gaps.count; i++)
        add_gap(&listing, &gaps.items[i]);
    for (int i = 0; i < gaps.idle_count; i++)
        add_idle(&listing, gaps.idle_hoses[i]);
    add_others(&listing);
    add_keys_of(&listing, KIND_MASTER);
    if (!has_vacuum_part(system))
        add_keys_of(&listing, KIND_SERVO);
    return summed_up(&listing);
}
