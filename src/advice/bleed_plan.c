#include "advice/bleed_plan.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/bleed_finish.h"
#include "advice/bleed_order.h"
#include "advice/bleed_scope.h"
#include "advice/bleed_settings.h"
#include "advice/finding.h"
#include "base/text.h"
#include "physics/pressure.h"

struct planning {
    const struct system *system;
    const struct network *network;
    const struct bleed_set *set;
    struct bleed_plan *plan;
    struct arena *arena;
    bool *flushed; /* by vertex: its way from the master was drawn through */
    double fluid;  /* m3 so far */
};

static const char *own_name(const struct part *part, int index, struct arena *arena)
{
    const char *names = part->fitted.nipple_names;
    for (int skipped = 0; names != NULL && skipped < index; skipped++) {
        names = strchr(names, ',');
        names = names == NULL ? NULL : names + 1;
    }
    if (names == NULL) {
        return NULL;
    }
    while (*names == ' ') {
        names++;
    }
    const char *end = strchr(names, ',');
    size_t length = end == NULL ? strlen(names) : (size_t)(end - names);
    while (length > 0 && names[length - 1] == ' ') {
        length--;
    }
    return length == 0 ? NULL : text_copy_part(arena, names, length);
}

const char *nipple_words(const struct system *system, struct nipple nipple, struct arena *arena)
{
    const struct part *part = &system->parts[nipple.part];
    if (nipple.index < 0 || nipples_of(part) < 2) {
        return part->name;
    }
    const char *name = own_name(part, nipple.index, arena);
    if (name != NULL) {
        return text_print(arena, "%s, %s nipple", part->name, name);
    }
    return text_print(arena, "%s, nipple %d", part->name, nipple.index + 1);
}

static bool rests_on_assumed(const struct part *part, size_t field)
{
    const struct origin *origin = part_origin(part, field);
    return origin != NULL && origin->kind == ORIGIN_ASSUMED;
}

static double edge_volume(const struct planning *planning, int edge, bool *assumed)
{
    const struct edge *carrier = &planning->network->edges[edge];
    if (carrier->kind != EDGE_CARRIER) {
        return 0;
    }
    const struct part *part = &planning->system->parts[carrier->part];
    size_t field = part->kind == KIND_PIPE ? FIELD(as.pipe.size) : FIELD(as.hose.inside);
    *assumed = *assumed || rests_on_assumed(part, field);
    return network_edge_volume(planning->system, carrier);
}

static int sharers(const struct bleed_set *set, int vertex)
{
    int count = 0;
    for (int i = 0; i < set->count; i++) {
        count += set->items[i].vertex == vertex;
    }
    return count;
}

/* What has to come out here: the way from the master as far as nothing was drawn through it
 * before, and the chamber, which its nipples share. */
static double volume_at(struct planning *planning, const struct scoped_nipple *item, bool *assumed)
{
    const struct network *network = planning->network;
    double volume = 0;
    for (int v = item->vertex; v >= 0 && (v == item->vertex || !planning->flushed[v]);
         v = network->vertices[v].parent) {
        const struct vertex *vertex = &network->vertices[v];
        bool usual = false;
        double chamber =
            part_chamber_volume(&planning->system->parts[vertex->part], vertex->chamber, &usual).m3;
        *assumed = *assumed || usual;
        volume += v == item->vertex ? chamber / sharers(planning->set, v) : chamber;
        if (planning->flushed[v]) {
            break;
        }
        if (vertex->edge >= 0) {
            volume += edge_volume(planning, vertex->edge, assumed);
        }
        planning->flushed[v] = true;
    }
    return volume;
}

/* The stroke of the piston that feeds a circuit, as far as pedal and master let it go. */
static double piston_stroke(const struct system *system, const struct circuit *circuit,
                            bool *assumed)
{
    const struct part *part = &system->parts[circuit->master];
    const struct master *master = &part->as.master;
    int pedal = pressure_pedal_of(system, circuit->master);
    double stroke = master->stroke.m;
    if (master->type == MASTER_TANDEM) {
        double own = circuit->chamber == 0 ? master->primary_stroke.m : master->secondary_stroke.m;
        size_t field = circuit->chamber == 0 ? FIELD(as.master.primary_stroke)
                                             : FIELD(as.master.secondary_stroke);
        *assumed = *assumed || !(own > 0) || rests_on_assumed(part, field);
        stroke = own > 0 ? own : stroke / 2;
    }
    if (pedal >= 0) {
        const struct pedal *lever = &system->parts[pedal].as.pedal;
        double by_pedal = pedal_end(lever).m / pedal_ratio(lever).value - master->rod_gap.m;
        stroke = !(stroke <= by_pedal) && by_pedal > 0 ? by_pedal : stroke;
    }
    return stroke - master->cut_off.m;
}

static double stroke_volume(const struct system *system, const struct circuit *circuit,
                            bool *assumed)
{
    const struct part *part = &system->parts[circuit->master];
    double share = part_is_new(part) ? 1.0 : limit_value("old-master-stroke");
    return master_area(&part->as.master).m2 * piston_stroke(system, circuit, assumed) * share;
}

static const char *place_of(const struct part *part, struct arena *arena)
{
    double below = part->fitted.nipple_below.m;
    if (part->side == SIDE_NONE && part->axle == AXLE_NONE) {
        return NULL;
    }
    return text_print(arena, "%s%s%s%s", axle_word(part->axle),
                      part->axle != AXLE_NONE && part->side != SIDE_NONE ? " " : "",
                      side_word(part->side), below > 0 ? ", not at the top" : "");
}

static void add_nipple(struct planning *planning, const struct ordered_nipple *ordered)
{
    const struct scoped_nipple *item = ordered->nipple;
    const struct system *system = planning->system;
    const struct circuit *circuit = &planning->network->circuits[item->circuit];
    const struct vertex *vertex = &planning->network->vertices[item->vertex];
    const struct part *part = &system->parts[item->nipple.part];
    struct step *step = steps_add(&planning->plan->steps,
                                  part->kind == KIND_SLAVE ? "bleed-slave" : "bleed-nipple");
    bool assumed = false, strokes_assumed = false;
    double factor = fluid_is_renewed(system) ? limit_value("exchange-volumes") : 1.0;
    double volume = factor * volume_at(planning, item, &assumed);
    double each = stroke_volume(system, circuit, &strokes_assumed);
    step->part = item->nipple.part;
    step->nipple = item->nipple.index;
    step->circuit = item->circuit;
    step->place_words = place_of(part, planning->arena);
    step->reason = reason_row(ordered->reason);
    step->run.m = vertex->run_known ? vertex->run : NAN;
    step->run_assumed = ordered->run_assumed;
    step->volume.m3 = volume;
    step->volume_assumed = assumed;
    step->strokes = volume > 0 && each > 0 ? ceil(volume / each) : NAN;
    planning->fluid += volume + limit_value("clear-strokes") * each;
    planning->plan->fluid_assumed = planning->plan->fluid_assumed || assumed || strokes_assumed;
}

static void add_masters(struct planning *planning, bool clutch)
{
    for (int i = 0; i < planning->system->part_count; i++) {
        int open = -1;
        for (int c = 0; planning->set->master_air[i] && c < planning->network->circuit_count; c++) {
            if (planning->network->circuits[c].master == i &&
                planning->network->circuits[c].clutch == clutch && open < 0) {
                open = c;
            }
        }
        if (open >= 0) {
            struct step *step = steps_add(&planning->plan->steps, "bleed-master");
            step->part = i;
            step->circuit = open;
            step->reason = reason_row("master-first");
            step->run.m = 0;
        }
    }
}

static void add_reservoirs(struct planning *planning)
{
    const struct system *system = planning->system;
    bool *counted = ARENA_ARRAY(planning->arena, (size_t)system->part_count + 1, bool);
    for (int c = 0; c < planning->network->circuit_count; c++) {
        int master = planning->network->circuits[c].master;
        int reservoir = reservoir_of(system, master);
        if (!planning->set->circuit_open[c] || reservoir < 0 || counted[reservoir] ||
            !(fluid_is_renewed(system) || planning->set->master_air[master])) {
            continue;
        }
        counted[reservoir] = true;
        planning->fluid += system->parts[reservoir].as.reservoir.capacity.m3;
    }
}

static bool looped(const struct network *network, const struct bleed_set *set)
{
    for (int c = 0; c < network->circuit_count; c++) {
        if (set->circuit_open[c] && network->circuits[c].looped) {
            return true;
        }
    }
    return false;
}

static void note_left_out(struct bleed_plan *plan, const struct ordered_nipple *order, int count,
                          struct arena *arena)
{
    plan->left_out = ARENA_ARRAY(arena, (size_t)count + 1, struct nipple);
    for (int i = 0; i < count; i++) {
        if (strcmp(order[i].reason, "left-out-of-makers-order") == 0) {
            plan->left_out[plan->left_out_count++] = order[i].nipple->nipple;
        }
    }
}

static void add_steps(struct planning *planning)
{
    const struct bleed_set *set = planning->set;
    struct ordered_nipple *order =
        ARENA_ARRAY(planning->arena, (size_t)set->count + 1, struct ordered_nipple);
    planning->plan->makers_order = planning->system->own_order.count > 0;
    if (planning->plan->makers_order) {
        bleed_order_makers(planning->system, planning->network, set, planning->arena, order);
        note_left_out(planning->plan, order, set->count, planning->arena);
    } else {
        bleed_order(planning->system, planning->network, set, planning->arena, order);
    }
    add_masters(planning, false);
    bool clutch_begun = false;
    for (int i = 0; i < set->count; i++) {
        if (order[i].nipple->clutch && !clutch_begun) {
            clutch_begun = true;
            add_masters(planning, true);
        }
        add_nipple(planning, &order[i]);
    }
}

struct bleed_plan *bleed_plan_of(const struct system *system, const struct network *network,
                                 const struct bleed_wishes *wishes, struct arena *arena)
{
    struct bleed_plan *plan = ARENA_NEW(arena, struct bleed_plan);
    struct bleed_set set = bleed_set_of(system, network, arena);
    struct planning planning = {
        .system = system,
        .network = network,
        .set = &set,
        .plan = plan,
        .arena = arena,
        .flushed = ARENA_ARRAY(arena, (size_t)network->vertex_count + 1, bool),
    };
    plan->method = wishes == NULL ? METHOD_PEDAL : wishes->method;
    plan->shut_under_pressure = wishes != NULL && wishes->shut_under_pressure;
    plan->scope = set.scope;
    plan->scope_reason = set.reason;
    plan->untouched = set.untouched;
    plan->untouched_count = set.untouched_count;
    plan->settings.arena = arena;
    plan->steps.arena = plan->bench.arena = plan->finish.arena = arena;
    plan->fluid.m3 = NAN;
    if (looped(network, &set)) {
        plan->refused = true;
        plan->refusal = "the plumbing has a loop, so that a nipple draws from two sides and no "
                        "order clears it; open the loop in the description, or bleed by the "
                        "maker's text";
        return plan;
    }
    plan->settings = bleed_settings_of(system, network, &set, plan->method, arena);
    plan->finish = bleed_finish_of(system, network, &set, arena);
    add_steps(&planning);
    add_reservoirs(&planning);
    plan->fluid.m3 = planning.fluid > 0 ? planning.fluid : NAN;
    return plan;
}
