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
    double before = fitting->before.stop_effort.n, after = fitting->after.stop_effort.n;
    const struct figure *stop = fit_figure(&fitting->before, "deceleration", -1);
    if (fitting->same == SAME_NOTHING || fitting->same == SAME_CLUTCH || isnan(before) ||
        isnan(after) || fabs(after - before) <= 1e-6 * before)
        return;
    *add_line(fitting->fit) = (struct fit_line){
        .id = same[fitting->same].id,
        .title = same[fitting->same].title,
        .of = "",
        .dimension = DIMENSION_FORCE,
        .before = before,
        .after = after,
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
    if (fabs(fit->before.m - fit->after.m) <= 1e-9)
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

static struct system *with_bore(const struct system *system, const int *parts, int part_count,
                                struct length bore, struct arena *arena)
{
    struct system *copy = system_copy(system, arena);
    for (int i = 0; i < part_count; i++) {
        struct part *part = &copy->parts[parts[i]];
        const struct key *key = key_of(part->kind, part_bore_field(part->kind));
        /* of a caliper that says no bore the number of pistons is not known either */
        if (key->form != FORM_BORES || key_said(part, key))
            key_set(part, key, bore.m);
    }
    return copy;
}

/* --- the effort that is compared ------------------------------------------------------------- */

static void compare_stops(struct fitting *fitting)
{
    const struct network *network = fitting->network;
    struct solution *room = solution_room(fitting->before.system, network, fitting->arena);
    struct state state = state_usual();
    fitting->before.stop_effort =
        solve_effort_by_force(fitting->before.system, network, &state, fitting->fit->stop, room);
    bool fitted = solve_effort_fits(fitting->before.system, network, &state,
                                    fitting->before.stop_effort, room);
    struct force after =
        solve_effort_by_force(fitting->after.system, network, &state, fitting->fit->stop, room);
    bool fits = solve_effort_fits(fitting->after.system, network, &state, after, room);
    fitting->after.stop_effort.n = fits || !fitted ? after.n : NAN;
    fitting->same = SAME_STOP;
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
    fitting->same = SAME_BRAKING;
    fitting->before.stop_effort.n = effort->value;
    fitting->after.stop_effort.n = root.bracketed ? root.fits : NAN;
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
    fitting->same = SAME_PRESSURE;
    fitting->before.stop_effort.n = effort->value;
    fitting->after.stop_effort.n = root.bracketed ? root.fits : NAN;
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
        fitting->same = SAME_CLUTCH;
        fitting->before.stop_effort.n = before->value;
        fitting->after.stop_effort.n = after->value;
    }
}

static void compare_efforts(struct fitting *fitting)
{
    const struct figure *stop = fit_figure(&fitting->before, "deceleration", -1);
    bool stops = stop != NULL && fit_figure(&fitting->after, "deceleration", -1) != NULL;
    fitting->fit->stop.m_s2 = stop == NULL ? NAN : stop->value;
    fitting->before.stop_effort.n = fitting->after.stop_effort.n = NAN;
    if (fitting->clutch)
        compare_clutches(fitting);
    else if (system_vehicle(fitting->before.system)->type == VEHICLE_MOTORCYCLE)
        compare_brakings(fitting);
    else if (stops)
        compare_stops(fitting);
    if (!fitting->clutch && fitting->same == SAME_NOTHING && fitting->alone)
        compare_pressures(fitting);
}

struct fit *fit_of(const struct system *system, const struct network *network, const int *parts,
                   int part_count, struct length bore, struct force effort, struct arena *arena)
{
    struct fit *fit = ARENA_NEW(arena, struct fit);
    struct fitting fitting = {
        .network = network, .parts = parts, .part_count = part_count, .fit = fit, .arena = arena};
    fit->part = parts[0];
    fit->other = part_count > 1 ? parts[1] : -1;
    fit->before = part_bore(&system->parts[parts[0]]);
    fit->after = bore;
    fit->nearest = nearest_words(bore, arena);
    fitting.before.system = system;
    fitting.after.system = with_bore(system, parts, part_count, bore, arena);
    fitting.before.figures = figures_of(system, network, effort, arena);
    fitting.after.figures = figures_of(fitting.after.system, network, effort, arena);
    fit->lines = ARENA_ARRAY(arena, (size_t)fitting.after.figures.count + 1, struct fit_line);
    fit_look(&fitting);
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
        return "nothing changes: it is the same bore";
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
