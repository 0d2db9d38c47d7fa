#include "advice/bleeding/bleed_methods.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/bleeding/bleed_details.h"
#include "advice/bleeding/bleed_way.h"
#include "parts/bubble.h"
#include "parts/flow.h"
#include "physics/pressure.h"

struct judging {
    const struct bleed_nets *nets;
    const struct bleed_set *set;
    struct bleed_plan *plan;
    struct method_verdict *verdict;
    int room; /* for notes of a verdict */
};

static const struct method_reason *reason_named(const char *id)
{
    size_t count;
    const struct method_reason *reasons = method_reasons(&count);
    for (size_t i = 0; i < count; i++) {
        if (strcmp(reasons[i].id, id) == 0) {
            return &reasons[i];
        }
    }
    return NULL;
}

/* Adds a reason about a part, once; NULL when it stands there already. */
static struct method_note *note(struct judging *judging, const char *id, int part)
{
    struct method_verdict *verdict = judging->verdict;
    const struct method_reason *reason = reason_named(id);
    for (int i = 0; i < verdict->note_count; i++) {
        if (verdict->notes[i].reason == reason && verdict->notes[i].part == part) {
            return NULL;
        }
    }
    if (reason == NULL || verdict->note_count == judging->room) {
        return NULL;
    }
    struct method_note *added = &verdict->notes[verdict->note_count++];
    added->reason = reason;
    added->part = part;
    verdict->suits = verdict->suits && !reason->against;
    verdict->unknown = verdict->unknown || reason->unknown;
    return added;
}

static void with_quantity(struct method_note *added, const char *name, double value,
                          enum dimension dimension)
{
    if (added != NULL && added->quantity_count < 4) {
        added->quantities[added->quantity_count++] =
            (struct named_quantity){.name = name, .value = value, .dimension = dimension};
    }
}

/* What the method moves at a nipple when the way is full of fluid, m3/s. */
static double flow_at(const struct judging *judging, const struct scoped_nipple *item, int nipple)
{
    const struct bleed_net *net = &judging->nets->items[item->circuit];
    int master = judging->nets->network->circuits[item->circuit].master;
    bool assumed = false;
    switch (judging->verdict->row->method) {
    case METHOD_PEDAL:
        return net->way.stroke / net->way.stroke_time;
    case METHOD_PRESSURE:
        return bleed_full_flow(net->net, nipple, limit_value("kit-pressure"));
    case METHOD_VACUUM:
    case METHOD_REVERSE:
        return bleed_full_flow(net->net, nipple, limit_value("kit-vacuum"));
    case METHOD_GRAVITY:
        return bleed_full_flow(
            net->net, nipple,
            flow_head(net->net->density,
                      bleed_head(judging->nets->system, master, item->nipple.part, &assumed).m));
    case METHOD_COUNT:
        break;
    }
    return NAN;
}

static bool is_carrier(const struct judging *judging, const struct purge_leg *leg)
{
    if (leg->part < 0) {
        return false;
    }
    enum part_kind kind = judging->nets->system->parts[leg->part].kind;
    return kind == KIND_PIPE || kind == KIND_HOSE;
}

/* Wide pipes in which a bubble climbs faster than the fluid goes down. A slanted one takes twice
 * the flow. */
static void judge_bubbles(struct judging *judging, const struct scoped_nipple *item, int nipple)
{
    const struct purge_net *net = judging->nets->items[item->circuit].net;
    const struct bubble_fluid fluid = {net->density, net->viscosity, net->tension};
    double flow = flow_at(judging, item, nipple);
    bool backwards = judging->verdict->row->method == METHOD_REVERSE;
    for (int at = net->nipples[nipple].leg; at >= 0; at = net->legs[at].above) {
        const struct purge_leg *leg = &net->legs[at];
        double down = backwards ? leg->climb : -leg->climb;
        if (!is_carrier(judging, leg) || !(leg->air > 0) || (!leg->climb_assumed && !(down > 0))) {
            continue;
        }
        bool slanted = !leg->climb_assumed && down < 0.9 * leg->length;
        double least = bubble_rise(&fluid, leg->bore) * acos(-1.0) / 4 * leg->bore * leg->bore *
                       (slanted ? 2 : 1);
        if (isnan(flow))
            note(judging, "flow-unknown", leg->part);
        if (flow < least) {
            struct method_note *added = note(
                judging, leg->climb_assumed ? "bubble-may-outrun" : "bubble-outruns", leg->part);
            with_quantity(added, "flow_least", 60 * least, DIMENSION_VOLUME);
            with_quantity(added, "flow", 60 * flow, DIMENSION_VOLUME);
        }
    }
}

/* Air in falling pipes takes their height off the head. Fluid that comes from the master drives the
 * air before it as long as its front stays below the reservoir: what counts is the highest place
 * that still has air behind it. Beyond it air could come to stand in every falling pipe. */
static void judge_head(struct judging *judging, const struct scoped_nipple *item, int nipple)
{
    const struct bleed_nets *nets = judging->nets;
    const struct purge_net *net = nets->items[item->circuit].net;
    int master = nets->network->circuits[item->circuit].master;
    bool unknown = false;
    double head = bleed_head(nets->system, master, item->nipple.part, &unknown).m;
    double falls = 0, above = 0, highest = 0; /* above the nipple: where one stands; with air */
    for (int at = net->nipples[nipple].leg; at >= 0; at = net->legs[at].above) {
        const struct purge_leg *leg = &net->legs[at];
        bool air = leg->air > 0.5 * leg->volume && !leg->in_master;
        unknown = unknown || (air && leg->climb_assumed && is_carrier(judging, leg));
        above -= leg->climb;
        falls += air && leg->climb < 0 ? -leg->climb : 0;
        highest = air ? fmax(highest, above) : highest;
    }
    struct method_note *added = NULL;
    double drop = highest >= head ? highest : falls;
    if (!(head > 0)) {
        added = note(judging, "no-head", item->nipple.part);
    } else if (drop >= head) {
        added = note(judging, highest >= head ? "gas-lock" : "gas-lock-may", item->nipple.part);
        with_quantity(added, "drop", drop, DIMENSION_LENGTH);
    } else if (unknown) {
        note(judging, "gas-lock-unknown", -1);
        return;
    }
    with_quantity(added, "head", head, DIMENSION_LENGTH);
}

static void judge_valve(struct judging *judging, int index, const struct scoped_nipple *item)
{
    const struct part *part = &judging->nets->system->parts[index];
    enum bleed_method method = judging->verdict->row->method;
    const struct purge_net *net = judging->nets->items[item->circuit].net;
    struct method_note *added = NULL;
    if (part->as.valve.type == VALVE_RESIDUAL && method == METHOD_GRAVITY) {
        int master = judging->nets->network->circuits[item->circuit].master;
        bool assumed = false;
        struct length head = bleed_head(judging->nets->system, master, item->nipple.part, &assumed);
        added = note(judging, "residual-in-way", index);
        with_quantity(added, "pressure", flow_head(net->density, head.m), DIMENSION_PRESSURE);
    } else if (part->as.valve.type == VALVE_RESIDUAL && method == METHOD_REVERSE &&
               !(part->as.valve.holds.pa < limit_value("kit-vacuum"))) {
        added = note(judging, "residual-against", index);
        with_quantity(added, "pressure", part->as.valve.holds.pa, DIMENSION_PRESSURE);
    } else if (part->as.valve.type == VALVE_HOLD_OFF && method != METHOD_PEDAL) {
        added = note(judging, "hold-off-in-way", index);
        with_quantity(added, "pressure", part->as.valve.opens.pa, DIMENSION_PRESSURE);
    }
}

/* Valves, servos, dead legs and high points on the way from the master. */
static void judge_way(struct judging *judging, const struct scoped_nipple *item)
{
    const struct bleed_nets *nets = judging->nets;
    for (int v = item->vertex; v >= 0; v = nets->network->vertices[v].parent) {
        int index = nets->network->vertices[v].part;
        const struct part *part = &nets->system->parts[index];
        if (part->kind == KIND_VALVE) {
            judge_valve(judging, index, item);
        } else if (part->kind == KIND_SERVO && part->as.servo.passes == NO) {
            note(judging, "servo-shut", index);
        } else if (part->kind == KIND_JOINT && part->as.joint.blanked > 0) {
            bool usual = false;
            struct volume held = part_chamber_volume(part, 0, &usual);
            held.m3 *= part->as.joint.blanked;
            struct method_note *added = note(judging, "dead-leg", index);
            with_quantity(added, "volume", held.m3, DIMENSION_VOLUME);
            with_quantity(added, "travel", bleed_air_at_pedal(nets, v, held).m, DIMENSION_LENGTH);
        }
    }
}

/* The part at whose place a leg ends: a joint, or the pipe itself where it states a high point. */
static int part_at_end(const struct judging *judging, const struct purge_net *net, int leg)
{
    const struct network *network = judging->nets->network;
    for (int v = 0; v < network->vertex_count; v++) {
        if (net->leg_at[v] == leg) {
            return network->vertices[v].part;
        }
    }
    return net->legs[leg].part;
}

static void judge_high_points(struct judging *judging, const struct scoped_nipple *item, int nipple)
{
    const struct purge_net *net = judging->nets->items[item->circuit].net;
    for (int at = net->nipples[nipple].leg; at >= 0 && net->legs[at].above >= 0;
         at = net->legs[at].above) {
        const struct purge_leg *leg = &net->legs[at], *before = &net->legs[leg->above];
        int part = part_at_end(judging, net, leg->above);
        if (!(leg->climb < 0 && before->climb > 0) || part < 0 ||
            nipples_of(&judging->nets->system->parts[part]) > 0) {
            continue;
        }
        note(judging, part == leg->part ? "high-point-in-pipe" : "high-point", part);
    }
}

static double bore_of(const struct part *part)
{
    return part->kind == KIND_DISC   ? part->as.disc.bores.bore.m
           : part->kind == KIND_DRUM ? part->as.drum.bore.m
                                     : part->as.slave.bore.m;
}

/* Air above the nipple; the simulation's pots know how much. */
static void judge_chamber(struct judging *judging, const struct scoped_nipple *item, int nipple)
{
    const struct bleed_nets *nets = judging->nets;
    const struct purge_net *net = nets->items[item->circuit].net;
    const struct part *part = &nets->system->parts[item->nipple.part];
    struct volume trapped = {purge_trapped_at(net, nipple)};
    if (!(trapped.m3 > 0)) {
        return;
    }
    bool bottom = part->fitted.nipple_below.m > 0.6 * bore_of(part) && part->kind == KIND_DISC;
    struct method_note *added =
        note(judging, bottom ? "calipers-swapped" : "nipple-below-top", item->nipple.part);
    with_quantity(added, "volume", trapped.m3, DIMENSION_VOLUME);
    with_quantity(added, "travel", bleed_air_at_pedal(nets, item->vertex, trapped).m,
                  DIMENSION_LENGTH);
}

/* Brakes in open circuits that air cannot leave by a nipple. */
static void judge_nippleless(struct judging *judging)
{
    const struct network *network = judging->nets->network;
    for (int v = 0; v < network->vertex_count; v++) {
        const struct part *part = &judging->nets->system->parts[network->vertices[v].part];
        if ((kind_is_brake(part->kind) || part->kind == KIND_SLAVE) && nipples_of(part) == 0 &&
            judging->set->air[v]) {
            bool backwards = judging->verdict->row->method == METHOD_REVERSE;
            note(judging, backwards ? "no-nipple-to-push" : "no-nipple", network->vertices[v].part);
        }
    }
}

static enum fluid_family family_in(const struct judging *judging, int circuit)
{
    int fluid =
        system_fluid_of(judging->nets->system, judging->nets->network->circuits[circuit].master);
    const struct fluid_row *row =
        fluid_row(fluid >= 0 ? judging->nets->system->parts[fluid].as.fluid.grade : GRADE_NOT_SAID);
    return row == NULL ? FAMILY_UNKNOWN : row->family;
}

static int reservoirs_touched(const struct judging *judging)
{
    int count = 0;
    for (int i = 0; i < judging->nets->system->part_count; i++) {
        bool touched = false;
        for (int c = 0; c < judging->nets->count; c++) {
            touched = touched || (judging->nets->items[c].net != NULL &&
                                  reservoir_of(judging->nets->system,
                                               judging->nets->network->circuits[c].master) == i);
        }
        count += touched;
    }
    return count;
}

static void judge_pressure(struct judging *judging, const struct scoped_nipple *item)
{
    int reservoir =
        reservoir_of(judging->nets->system, judging->nets->network->circuits[item->circuit].master);
    if (reservoir >= 0) {
        with_quantity(note(judging, "old-reservoir", reservoir), "pressure",
                      limit_value("kit-pressure"), DIMENSION_PRESSURE);
    }
    if (reservoirs_touched(judging) > 1) {
        note(judging, "kit-each", -1);
    }
}

static void judge_vacuum(struct judging *judging, const struct scoped_nipple *item)
{
    enum part_kind kind = judging->nets->system->parts[item->nipple.part].kind;
    if (family_in(judging, item->circuit) == FAMILY_SILICONE) {
        note(judging, "silicone-outgasses", -1);
    }
    if (kind == KIND_DRUM || kind == KIND_SLAVE) {
        note(judging, "cups-draw-air", -1);
    }
    note(judging, "thread-draws-air", -1);
}

static void judge_reverse(struct judging *judging, const struct scoped_nipple *item, int nipple)
{
    const struct bleed_nets *nets = judging->nets;
    int reservoir = reservoir_of(nets->system, nets->network->circuits[item->circuit].master);
    double volume = purge_path_volume(nets->items[item->circuit].net, nipple);
    note(judging, "dirt-back", -1);
    if (reservoir >= 0 && volume > 0.5 * nets->system->parts[reservoir].as.reservoir.capacity.m3) {
        with_quantity(note(judging, "overflows", reservoir), "volume", volume, DIMENSION_VOLUME);
    }
    if (item->clutch && item->wheel) {
        note(judging, "with-buoyancy", item->nipple.part);
    }
}

static void judge_pedal(struct judging *judging, const struct scoped_nipple *item)
{
    int master = judging->nets->network->circuits[item->circuit].master;
    note(judging, "pedal-alone", -1);
    if (!part_is_new(&judging->nets->system->parts[master])) {
        note(judging, "stroke-limited", master);
    }
}

static void judge_gravity(struct judging *judging, const struct scoped_nipple *item, int nipple)
{
    judge_head(judging, item, nipple);
    if (item->wheel && item == &judging->set->items[0]) {
        with_quantity(note(judging, "trickles", item->nipple.part), "flow",
                      60 * flow_at(judging, item, nipple), DIMENSION_VOLUME);
    }
}

static void judge_nipple(struct judging *judging, const struct scoped_nipple *item)
{
    int nipple = bleed_net_nipple(&judging->nets->items[item->circuit], item->nipple);
    if (nipple < 0) {
        return;
    }
    judge_way(judging, item);
    judge_bubbles(judging, item, nipple);
    judge_chamber(judging, item, nipple);
    judge_high_points(judging, item, nipple);
    switch (judging->verdict->row->method) {
    case METHOD_PEDAL:
        judge_pedal(judging, item);
        break;
    case METHOD_PRESSURE:
        judge_pressure(judging, item);
        break;
    case METHOD_VACUUM:
        judge_vacuum(judging, item);
        break;
    case METHOD_GRAVITY:
        judge_gravity(judging, item, nipple);
        break;
    case METHOD_REVERSE:
        judge_reverse(judging, item, nipple);
        break;
    case METHOD_COUNT:
        break;
    }
}

void bleed_methods_judge(const struct bleed_nets *nets, const struct bleed_set *set,
                         struct bleed_plan *plan, struct arena *arena)
{
    struct judging judging = {.nets = nets, .set = set, .plan = plan};
    judging.room = 4 * nets->system->part_count + 16;
    size_t count;
    const struct method_row *methods = method_rows(&count);
    for (size_t m = 0; set->count > 0 && m < count; m++) {
        judging.verdict = &plan->verdicts[plan->verdict_count++];
        judging.verdict->row = &methods[m];
        judging.verdict->suits = true;
        judging.verdict->notes = ARENA_ARRAY(arena, (size_t)judging.room, struct method_note);
        for (int i = 0; i < set->count; i++) {
            judge_nipple(&judging, &set->items[i]);
        }
        judge_nippleless(&judging);
    }
}
