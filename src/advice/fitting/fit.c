#include "advice/common/bores.h"
#include "advice/fitting/fit.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/fitting/fit_rules.h"
#include "advice/figures/part_bore.h"
#include "base/text.h"
#include "physics/pressure.h"
#include "physics/root.h"

/* What a person compares, in the order of printing. */
static const char *const compared[] = {
    "line-pressure",
    "clamp-force",
    "brake-torque",
    "brake-force",
    "deceleration",
    "pedal-travel",
    "pedal-left",
    "stroke-left",
    "pedal-left-slack",
    "travel-circuit-lost",
    "left-circuit-lost",
    "deceleration-circuit-lost",
    "deceleration-unassisted",
    "rear-lock-margin",
    "effort-for-half-g",
    "clutch-pressure",
    "clutch-effort",
    "slave-travel",
    "slave-stroke-left",
    "bearing-travel",
    "bearing-travel-spare",
};
enum { COMPARED = sizeof compared / sizeof *compared };

static enum figure_state worse(enum figure_state a, enum figure_state b)
{
    return a > b ? a : b;
}

static struct fit_line *add_line(struct fit *fit)
{
    return &fit->lines[fit->line_count++];
}

/* The effort stands first: it is what the driver feels. */
static void add_effort_line(struct fitting *fitting)
{
    static const struct {
        const char *id, *title;
    } same[] = {
        [SAME_STOP] = {"effort-for-same-stop", "Effort for the same stop"},
        [SAME_BRAKING] = {"effort-for-same-braking", "Effort for the same brake force"},
        [SAME_PRESSURE] = {"effort-for-same-pressure", "Effort for the same line pressure"},
    };
    const struct fit_effort *effort = &fitting->brake_effort;
    const struct figure *stop = fit_figure(&fitting->before, "deceleration", -1);
    if (effort->same == SAME_NOTHING || isnan(effort->before) || isnan(effort->after) ||
        fabs(effort->after - effort->before) <= 1e-6 * effort->before)
        return;
    *add_line(fitting->fit) = (struct fit_line){
        .id = same[effort->same].id,
        .title = same[effort->same].title,
        .of = "",
        .dimension = DIMENSION_FORCE,
        .before = effort->before,
        .after = effort->after,
        .state = stop != NULL ? stop->state : FIGURE_ASSUMED,
    };
}

static void add_lines(struct fitting *fitting)
{
    struct fit *fit = fitting->fit;
    for (int c = 0; c < COMPARED; c++) {
        for (int i = 0; i < fitting->after.figures.count; i++) {
            const struct figure *after = &fitting->after.figures.items[i];
            if (strcmp(after->row->id, compared[c]) != 0 || !fit_is_usable(after)) {
                continue;
            }
            const struct figure *before = fit_figure(&fitting->before, compared[c], after->subject);
            if (before == NULL ||
                fabs(after->value - before->value) <= 1e-9 * fabs(before->value)) {
                continue;
            }
            *add_line(fit) = (struct fit_line){
                .id = after->row->id,
                .title = after->row->title,
                .of = after->of,
                .dimension = after->row->dimension,
                .before = before->value,
                .after = after->value,
                .state = worse(before->state, after->state),
            };
        }
    }
}

static const char *nearest_words(struct length bore, struct arena *arena)
{
    const struct bore_row *nearest = bore_nearest(bore);
    if (nearest == NULL) {
        return NULL;
    }
    const struct bore_row *twin = bore_twin(nearest);
    double off = fabs(nearest->bore.m - bore.m) * 1e3;
    return twin == NULL ? text_print(arena, "%s, %.2f mm off", nearest->name, off)
                        : text_print(arena, "%s, %.2f mm off; easily mistaken for %s",
                                     nearest->name, off, twin->name);
}

static enum fit_verdict verdict_of(const struct fit *fit)
{
    enum fit_standing worst = FIT_FINE;
    if (fit->change_count == 0 && fit->line_count == 0)
        return FIT_NOTHING_CHANGES;
    for (int i = 0; i < fit->answer_count; i++)
        if (fit->answers[i].standing > worst)
            worst = fit->answers[i].standing;
    switch (worst) {
    case FIT_FINE:
        return FIT_SUITS;
    case FIT_CARE:
        return FIT_SUITS_WITH_CARE;
    case FIT_CANNOT:
        return FIT_CANNOT_SAY;
    case FIT_AGAINST:
        break;
    }
    return FIT_DOES_NOT_SUIT;
}

/* --- what is changed ------------------------------------------------------------------------- */

struct work_file fit_bore(const struct system *system, const int *parts, int part_count,
                          struct length bore, struct arena *arena)
{
    struct work_file file = {.items = ARENA_ARRAY(arena, (size_t)part_count, struct work_item),
                             .count = (size_t)part_count};
    for (int i = 0; i < part_count; i++) {
        const struct part *part = &system->parts[parts[i]];
        struct work_value *value = ARENA_NEW(arena, struct work_value);
        *value = (struct work_value){.key = key_of(part->kind, part_bore_field(part->kind)),
                                     .number = bore.m,
                                     .origin = {.kind = ORIGIN_WORK, .text = ""}};
        /* of a caliper that says no bore the number of pistons is not known either */
        if (part->kind == KIND_DISC) {
            value->bores = part->as.disc.bores;
            value->bores.bore.m = key_said(part, value->key) ? bore.m : NAN;
        }
        file.items[i] = (struct work_item){
            .deed = DEED_REPLACED, .part = parts[i], .values = value, .value_count = 1};
    }
    return file;
}

bool fit_is_bore(const struct fitting *fitting, const struct fit_change *change)
{
    const struct part *part = &fitting->before.system->parts[change->part];
    return part_is_cylinder(part) && part_bore_field(part->kind) == change->key->field;
}

static int pistons_of(const struct part *part, const struct key *key)
{
    if (key->form != FORM_BORES || !key_said(part, key))
        return 0;
    return ((const struct bores *)(const void *)((const char *)part + key->field))->count;
}

static bool are_sides(const struct part *a, const struct part *b)
{
    return a->kind == b->kind && a->axle == b->axle && a->side != b->side && a->side != SIDE_NONE &&
           b->side != SIDE_NONE;
}

static bool same_number(double a, double b)
{
    return (isnan(a) && isnan(b)) || fabs(a - b) <= 1e-9 * fabs(b);
}

/* A change already listed that the other side gets too; NULL. */
static struct fit_change *same_on_other_side(const struct fitting *fitting,
                                             const struct fit_change *change)
{
    const struct part *parts = fitting->before.system->parts;
    for (int i = 0; i < fitting->fit->change_count; i++) {
        struct fit_change *listed = &fitting->fit->changes[i];
        if (listed->other < 0 && listed->key == change->key &&
            same_number(listed->before, change->before) &&
            same_number(listed->after, change->after) &&
            listed->pistons_after == change->pistons_after &&
            are_sides(&parts[listed->part], &parts[change->part]))
            return listed;
    }
    return NULL;
}

static void add_change(struct fitting *fitting, int part, const struct key *key, double after)
{
    const struct part *was = &fitting->before.system->parts[part];
    const struct part *is = &fitting->after.system->parts[part];
    struct fit_change change = {.part = part,
                                .other = -1,
                                .key = key,
                                .before = key_value(was, key),
                                .after = after,
                                .pistons_before = pistons_of(was, key),
                                .pistons_after = pistons_of(is, key)};
    if (isnan(after) ||
        (same_number(change.before, after) && change.pistons_before == change.pistons_after))
        return;
    struct fit_change *pair = same_on_other_side(fitting, &change);
    if (pair != NULL) {
        pair->other = part;
        return;
    }
    if (fit_is_bore(fitting, &change))
        change.nearest = nearest_words((struct length){after}, fitting->arena);
    fitting->fit->changes[fitting->fit->change_count++] = change;
}

static void list_changes(struct fitting *fitting, const struct work_file *changes)
{
    size_t most = 1;
    for (size_t i = 0; i < changes->count; i++)
        most += changes->items[i].value_count + 1;
    fitting->fit->changes = ARENA_ARRAY(fitting->arena, most, struct fit_change);
    for (size_t i = 0; i < changes->count; i++) {
        const struct work_item *item = &changes->items[i];
        for (size_t v = 0; v < item->value_count; v++)
            add_change(fitting, item->part, item->values[v].key, item->values[v].number);
        const struct part *after = &fitting->after.system->parts[item->part];
        const struct key *state = key_of(KIND_HOSE, FIELD(as.hose.state));
        if (after->kind == KIND_HOSE) /* a new one is a good one */
            add_change(fitting, item->part, state, key_value(after, state));
    }
}

/* --- the effort that is compared ------------------------------------------------------------- */

static void compare_stops(struct fitting *fitting)
{
    const struct network *network = fitting->network;
    const struct system *was = fitting->before.system, *is = fitting->after.system;
    const struct acceleration stop = fitting->fit->stop;
    struct solution *room = solution_room(was, network, fitting->arena);
    struct state state = state_usual();
    struct force before = solve_effort_by_force(was, network, &state, stop, room);
    bool fitted = solve_effort_fits(was, network, &state, before, room);
    struct force after = solve_effort_by_force(is, network, &state, stop, room);
    bool fits = solve_effort_fits(is, network, &state, after, room);
    fitting->brake_effort =
        (struct fit_effort){SAME_STOP, before.n, fits || !fitted ? after.n : NAN};
}

struct pressing_for {
    const struct system *system;
    const struct network *network;
    struct solution *room;
    int circuit;
    double wanted; /* Pa */
};

static double over_pressure(double effort, void *context)
{
    struct pressing_for *pressing = context;
    struct state state = state_usual();
    state.effort.n = effort;
    solve_forces(pressing->system, pressing->network, &state, pressing->room);
    return pressing->room->circuits[pressing->circuit].pressure.pa - pressing->wanted;
}

/* Each control by itself: the brakes that it works. */
static double braking_of(const struct fitting *fitting, const struct solution *room)
{
    double sum = 0;
    for (int i = 0; i < fitting->after.system->part_count; i++) {
        int vertex = kind_is_brake(fitting->after.system->parts[i].kind)
                         ? network_vertex(fitting->network, i, 0)
                         : -1;
        int circuit = vertex < 0 ? -1 : fitting->network->vertices[vertex].circuit;
        if (circuit >= 0 && fitting->circuits[circuit])
            sum += room->brakes[i].force.n;
    }
    return sum;
}

struct braking_for {
    const struct fitting *fitting;
    const struct system *system;
    struct solution *room;
    double wanted; /* N */
};

static double over_braking(double effort, void *context)
{
    struct braking_for *braking = context;
    struct state state = state_usual();
    state.effort.n = effort;
    solve_forces(braking->system, braking->fitting->network, &state, braking->room);
    return braking_of(braking->fitting, braking->room) - braking->wanted;
}

static const struct figure *effort_before(const struct fitting *fitting)
{
    for (int i = 0; i < fitting->before.system->part_count; i++)
        if (fitting->pedals[i])
            return fit_figure(&fitting->before, "pedal-effort", i);
    return NULL;
}

static void compare_brakings(struct fitting *fitting)
{
    const struct figure *effort = effort_before(fitting);
    if (effort == NULL)
        return;
    struct braking_for braking = {
        fitting, fitting->before.system,
        solution_room(fitting->before.system, fitting->network, fitting->arena), 0};
    braking.wanted = over_braking(effort->value, &braking);
    if (!(braking.wanted > 0))
        return;
    braking.system = fitting->after.system;
    struct root root = root_between(over_braking, &braking, 0, MOST_EFFORT, 1e-6);
    fitting->brake_effort =
        (struct fit_effort){SAME_BRAKING, effort->value, root.bracketed ? root.fits : NAN};
}

/* The only master of its pedal: the same pressure in its first circuit is the same pressure at
 * every brake of it, and so the same stop, whatever the brakes are. */
static void compare_pressures(struct fitting *fitting)
{
    int circuit = 0;
    while (circuit < fitting->network->circuit_count && !fitting->circuits[circuit])
        circuit++;
    const struct figure *pressure = fit_figure(&fitting->before, "line-pressure", circuit);
    const struct figure *effort = effort_before(fitting);
    if (pressure == NULL || effort == NULL || !(pressure->value > 0))
        return;
    struct pressing_for pressing = {
        fitting->after.system, fitting->network,
        solution_room(fitting->after.system, fitting->network, fitting->arena), circuit,
        pressure->value};
    struct root root = root_between(over_pressure, &pressing, 0, MOST_EFFORT, 1e-6);
    fitting->brake_effort =
        (struct fit_effort){SAME_PRESSURE, effort->value, root.bracketed ? root.fits : NAN};
}

static void compare_clutches(struct fitting *fitting)
{
    for (int i = 0; i < fitting->after.figures.count; i++) {
        const struct figure *after = &fitting->after.figures.items[i];
        const struct figure *before =
            strcmp(after->row->id, "clutch-effort") != 0 || !fit_concerns(fitting, after)
                ? NULL
                : fit_figure(&fitting->before, "clutch-effort", after->subject);
        if (before == NULL || !fit_is_usable(after))
            continue;
        fitting->clutch_effort = (struct fit_effort){SAME_CLUTCH, before->value, after->value};
    }
}

static void compare_efforts(struct fitting *fitting)
{
    const struct figure *stop = fit_figure(&fitting->before, "deceleration", -1);
    bool stops = stop != NULL && fit_figure(&fitting->after, "deceleration", -1) != NULL;
    fitting->fit->stop.m_s2 = stop == NULL ? NAN : stop->value;
    fitting->brake_effort = fitting->clutch_effort = (struct fit_effort){SAME_NOTHING, NAN, NAN};
    if (fitting->clutch)
        compare_clutches(fitting);
    if (!fitting->brakes)
        return;
    if (system_vehicle(fitting->before.system)->type == VEHICLE_MOTORCYCLE)
        compare_brakings(fitting);
    else if (stops)
        compare_stops(fitting);
    if (fitting->brake_effort.same == SAME_NOTHING && fitting->alone)
        compare_pressures(fitting);
}

/* Travel of the brake pedals for the same foot as if they had no floor. */
static double free_travel(const struct fitting *fitting, const struct system *system)
{
    struct solution *room = solution_room(system, fitting->network, fitting->arena);
    struct state state = state_usual();
    state.no_floor = state.no_clutch = true;
    double sum = 0;
    solve(system, fitting->network, &state, room);
    for (int p = 0; p < room->brake_pedal_count; p++)
        sum += room->pedals[room->brake_pedals[p]].travel.m;
    return sum;
}

struct fit *fit_of(const struct system *system, const struct network *network,
                   const struct work_file *changes, struct force effort, struct arena *arena)
{
    struct fit *fit = ARENA_NEW(arena, struct fit);
    struct fitting fitting = {.network = network, .fit = fit, .arena = arena};
    fitting.before.system = system;
    fitting.after.system = work_apply(system, changes, 1, arena);
    list_changes(&fitting, changes);
    fitting.before.figures = figures_of(system, network, effort, arena);
    fitting.after.figures = figures_of(fitting.after.system, network, effort, arena);
    fit->lines = ARENA_ARRAY(arena, (size_t)fitting.after.figures.count + 1, struct fit_line);
    fit_look(&fitting, changes);
    fitting.farther = free_travel(&fitting, fitting.after.system) > free_travel(&fitting, system);
    compare_efforts(&fitting);
    add_effort_line(&fitting);
    add_lines(&fitting);
    fit_give_reasons(&fitting);
    fit_answer_questions(&fitting);
    fit->verdict = verdict_of(fit);
    return fit;
}

const char *fit_verdict_words(enum fit_verdict verdict)
{
    switch (verdict) {
    case FIT_NOTHING_CHANGES:
        return "nothing changes: it is the same";
    case FIT_SUITS:
        return "suits";
    case FIT_SUITS_WITH_CARE:
        return "suits, with care";
    case FIT_CANNOT_SAY:
        return "cannot say";
    case FIT_DOES_NOT_SUIT:
        return "does not suit";
    }
    return "";
}
