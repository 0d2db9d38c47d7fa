#include "advice/bleeding/bleed_plan.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/bleeding/bleed_arrange.h"
#include "advice/bleeding/bleed_details.h"
#include "advice/bleeding/bleed_methods.h"
#include "advice/bleeding/bleed_order.h"
#include "advice/bleeding/bleed_scope.h"
#include "advice/bleeding/bleed_stroke.h"
#include "advice/bleeding/bleed_way.h"
#include "advice/bleeding/bottles.h"
#include "advice/checks/finding.h"
#include "base/text.h"
#include "physics/pressure.h"

struct planning {
    const struct system *system;
    const struct network *network;
    const struct bleed_set *set;
    struct bleed_plan *plan;
    struct arena *arena;
    double fluid; /* m3 so far */
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

static enum step_id row_for(const struct planning *planning, const struct part *part)
{
    switch (planning->plan->method) {
    case METHOD_PEDAL:
        return part->kind == KIND_SLAVE ? STEP_BLEED_SLAVE : STEP_BLEED_NIPPLE;
    case METHOD_PRESSURE:
    case METHOD_VACUUM:
    case METHOD_GRAVITY:
        return STEP_BLEED_STEADY;
    case METHOD_REVERSE:
        return STEP_BLEED_BACKWARDS;
    case METHOD_COUNT:
        break;
    }
    return STEP_BLEED_NIPPLE;
}

static void add_nipple(struct planning *planning, const struct ordered_nipple *ordered)
{
    const struct scoped_nipple *item = ordered->nipple;
    const struct vertex *vertex = &planning->network->vertices[item->vertex];
    const struct part *part = &planning->system->parts[item->nipple.part];
    bool again = strcmp(ordered->reason, "outer-again") == 0 ||
                 strcmp(ordered->reason, "makers-order-again") == 0 ||
                 strcmp(ordered->reason, "asked-order-again") == 0;
    struct step *step =
        steps_add(&planning->plan->steps, again ? STEP_BLEED_AGAIN : row_for(planning, part));
    step->part = item->nipple.part;
    step->nipple = item->nipple.index;
    step->circuit = item->circuit;
    step->place_words = place_of(part, planning->arena);
    step->reason = reason_row(ordered->reason);
    step->run.m = vertex->run_known ? vertex->run : NAN;
    step->run_assumed = ordered->run_assumed;
}

/* Backwards the air goes up through the master by itself. */
static void add_masters(struct planning *planning, bool clutch)
{
    if (planning->plan->method == METHOD_REVERSE) {
        return;
    }
    for (int i = 0; i < planning->system->part_count; i++) {
        int open = -1;
        for (int c = 0; planning->set->master_air[i] && c < planning->network->circuit_count; c++) {
            if (planning->network->circuits[c].master == i &&
                planning->network->circuits[c].clutch == clutch && open < 0) {
                open = c;
            }
        }
        if (open >= 0) {
            struct step *step =
                steps_add(&planning->plan->steps, planning->plan->method == METHOD_PEDAL
                                                      ? STEP_BLEED_MASTER
                                                      : STEP_BLEED_MASTER_STEADY);
            int pedal = pressure_pedal_of(planning->system, i);
            step->part = i;
            step->text = pedal >= 0 ? planning->system->parts[pedal].name : "pedal";
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
                          const char *reason, struct arena *arena)
{
    plan->left_out = ARENA_ARRAY(arena, (size_t)count + 1, struct nipple);
    plan->left_out_count = 0;
    for (int i = 0; i < count; i++) {
        if (strcmp(order[i].reason, reason) == 0) {
            plan->left_out[plan->left_out_count++] = order[i].nipple->nipple;
        }
    }
}

static void add_steps(struct planning *planning, const struct arranged *arranged)
{
    add_masters(planning, false);
    bool clutch_begun = false;
    for (int i = 0; i < arranged->count; i++) {
        if (arranged->items[i].nipple->clutch && !clutch_begun) {
            clutch_begun = true;
            add_masters(planning, true);
        }
        add_nipple(planning, &arranged->items[i]);
    }
}

/* The way through an order that somebody gives. */
static struct arranged by_given(struct planning *planning, const struct bleed_nets *nets,
                                const struct given_order *given)
{
    size_t room = (size_t)planning->set->count + (size_t)given->count + 1;
    struct ordered_nipple *order = ARENA_ARRAY(planning->arena, room, struct ordered_nipple);
    int count = bleed_order_given(planning->system, planning->network, planning->set, given,
                                  planning->arena, order);
    note_left_out(planning->plan, order, count, given->left_out, planning->arena);
    return bleed_arrange(nets, order, count, true, planning->arena);
}

static struct order_cost cost_of(const struct bleed_nets *nets, const struct arranged *arranged)
{
    struct nipple *order = ARENA_ARRAY(nets->arena, (size_t)arranged->count + 1, struct nipple);
    for (int i = 0; i < arranged->count; i++) {
        order[i] = arranged->items[i].nipple->nipple;
    }
    return bleed_nets_cost(nets, order, arranged->count);
}

static void note_asked(struct planning *planning, const struct bleed_nets *nets,
                       const struct bleed_wishes *wishes)
{
    struct bleed_plan *plan = planning->plan;
    plan->asked_order = true;
    plan->asked = bleed_nets_cost(nets, wishes->order, wishes->order_count);
    plan->asked_left_out =
        ARENA_ARRAY(planning->arena, (size_t)planning->set->count + 1, struct nipple);
    for (int i = 0; i < planning->set->count; i++) {
        struct nipple nipple = planning->set->items[i].nipple;
        bool named = false;
        for (int k = 0; k < wishes->order_count; k++) {
            named = named || (wishes->order[k].part == nipple.part &&
                              wishes->order[k].index == nipple.index);
        }
        if (!named) {
            plan->asked_left_out[plan->asked_left_out_count++] = nipple;
        }
    }
}

/* The trade's order, and what becomes of it by the simulation or the maker's word. */
static void find_order(struct planning *planning, const struct bleed_wishes *wishes)
{
    const struct bleed_set *set = planning->set;
    struct bleed_plan *plan = planning->plan;
    int most = 3 * set->count + wishes->order_count + (int)planning->system->own_order.count + 1;
    struct bleed_nets nets =
        bleed_nets_of(planning->system, planning->network, set, wishes, most, planning->arena);
    struct ordered_nipple *trade =
        ARENA_ARRAY(planning->arena, (size_t)set->count + 1, struct ordered_nipple);
    bleed_order(planning->system, planning->network, set, planning->arena, trade);
    struct arranged arranged = bleed_arrange(&nets, trade, set->count, false, planning->arena);
    plan->trade = bleed_nets_cost(&nets, arranged.trade, arranged.trade_count);
    if (arranged.tried > 0) {
        plan->worst = bleed_nets_cost(&nets, arranged.worst, arranged.worst_count);
    }
    plan->tried = arranged.tried;
    plan->makers_order = planning->system->own_order.count > 0;
    if (plan->makers_order) {
        const struct own_order *order = &planning->system->own_order;
        const struct given_order given = {order->items, (int)order->count, "makers-order",
                                          "makers-order-again", "left-out-of-makers-order"};
        arranged = by_given(planning, &nets, &given);
        plan->makers = cost_of(&nets, &arranged);
    } else if (arranged.departure != NULL) {
        plan->departure = reason_row(arranged.departure);
    }
    if (wishes->order_count > 0) {
        const struct given_order given = {wishes->order, wishes->order_count, "asked-order",
                                          "asked-order-again", "left-out-of-asked-order"};
        plan->own = cost_of(&nets, &arranged);
        plan->makers_order = false;
        plan->departure = NULL;
        arranged = by_given(planning, &nets, &given);
        note_asked(planning, &nets, wishes);
    }
    plan->planned = cost_of(&nets, &arranged);
    plan->each = bleed_nets_strokes(&nets);
    add_steps(planning, &arranged);
    bleed_details_fill(&nets, set, plan, planning->arena);
    bleed_methods_judge(&nets, set, plan, planning->arena);
}

/* What is drawn off, with the clear strokes, and what goes into emptied reservoirs. */
static void add_fluid(struct planning *planning)
{
    struct bleed_plan *plan = planning->plan;
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.items[i];
        if (step->nipple < 0) {
            continue;
        }
        bool assumed = false;
        double each =
            bleed_stroke(planning->system, &planning->network->circuits[step->circuit], &assumed)
                .m3;
        /* in the first round and in the second */
        planning->fluid += step->volume.m3 + 2 * limit_value("clear-strokes") * each;
        plan->fluid_assumed = plan->fluid_assumed || assumed || step->volume_assumed;
    }
    add_reservoirs(planning);
    plan->fluid.m3 = planning->fluid > 0 ? planning->fluid : NAN;
    if (planning->fluid > 0)
        plan->fluid_ready = bottles_for(plan->fluid).held;
}

static bool has_lever(const struct system *system, const struct network *network,
                      const struct bleed_set *set)
{
    for (int c = 0; c < network->circuit_count; c++) {
        int pedal = pressure_pedal_of(system, network->circuits[c].master);
        if (set->circuit_open[c] && pedal >= 0 &&
            system->parts[pedal].as.pedal.type == PEDAL_HAND) {
            return true;
        }
    }
    return false;
}

static struct bleed_plan *plan_as_said(const struct system *system, const struct network *network,
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
    };
    plan->method = wishes->method;
    plan->shut_under_pressure = wishes->shut_under_pressure;
    plan->by_lever = has_lever(system, network, &set);
    plan->scope = set.scope;
    plan->scope_reason = set.reason;
    plan->untouched = set.untouched;
    plan->untouched_count = set.untouched_count;
    plan->settings.arena = arena;
    plan->steps.arena = plan->bench.arena = arena;
    plan->fluid.m3 = plan->fluid_ready.m3 = NAN;
    if (looped(network, &set)) {
        plan->refused = true;
        plan->refusal = "the plumbing has a loop, so that a nipple draws from two sides and no "
                        "order clears it; open the loop in the description, or bleed by the "
                        "maker's text";
        return plan;
    }
    find_order(&planning, wishes);
    add_fluid(&planning);
    return plan;
}

static double strokes_in_all(const struct bleed_plan *plan)
{
    double sum = 0;
    for (size_t i = 0; i < plan->steps.count; i++)
        if (plan->steps.items[i].nipple >= 0)
            sum += plan->steps.items[i].strokes;
    return sum;
}

/* The same work, all fluid renewed with it. */
static void look_at_renewal(struct bleed_plan *plan, const struct system *system,
                            const struct network *network, struct arena *arena)
{
    struct system *renewed = system_copy(system, arena);
    struct bleed_wishes same_method = {.method = plan->method,
                                       .shut_under_pressure = plan->shut_under_pressure};
    renewed->fluid_renewed = true;
    if (system->work_count > 0)
        renewed->fluid_renewed_date = system->works[system->work_count - 1].date;
    const struct bleed_plan *with = plan_as_said(renewed, network, &same_method, arena);
    plan->renewal =
        (struct renewal){!with->refused, with->fluid, strokes_in_all(with), strokes_in_all(plan)};
}

struct bleed_plan *bleed_plan_of(const struct system *system, const struct network *network,
                                 const struct bleed_wishes *wishes, struct arena *arena)
{
    static const struct bleed_wishes none = {.order = NULL};
    struct bleed_plan *plan = plan_as_said(system, network, wishes == NULL ? &none : wishes, arena);
    if (plan->scope != BLEED_NOTHING && !plan->refused && !fluid_is_renewed(system))
        look_at_renewal(plan, system, network, arena);
    return plan;
}
