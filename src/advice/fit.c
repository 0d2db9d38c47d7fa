#include "advice/fit.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/fit_rules.h"
#include "advice/part_bore.h"
#include "base/text.h"

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

/* The pedal force for the same stop stands first: it is what the driver feels. */
static void add_effort_line(struct fitting *fitting, const struct figure *stop)
{
    double before = fitting->before.stop_effort.n, after = fitting->after.stop_effort.n;
    if (stop == NULL || isnan(before) || isnan(after) || fabs(after - before) <= 1e-6 * before) {
        return;
    }
    *add_line(fitting->fit) = (struct fit_line){
        .id = "effort-for-same-stop",
        .title = "Effort for the same stop",
        .of = "",
        .dimension = DIMENSION_FORCE,
        .before = before,
        .after = after,
        .state = stop->state,
    };
}

static void add_lines(struct fitting *fitting)
{
    struct fit *fit = fitting->fit;
    for (int c = 0; c < COMPARED; c++) {
        for (int i = 0; i < fitting->after.figures.count; i++) {
            const struct figure *after = &fitting->after.figures.items[i];
            if (strcmp(after->row->id, compared[c]) != 0 || after->state == FIGURE_NOT_COMPUTED) {
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
    bool against = false;
    for (int i = 0; i < fit->reason_count; i++) {
        if (fit->reasons[i].grave) {
            return FIT_DOES_NOT_SUIT;
        }
        against = against || fit->reasons[i].against;
    }
    if (fit->line_count == 0 && fabs(fit->before.m - fit->after.m) > 1e-9) {
        return FIT_CANNOT_TELL;
    }
    return against ? FIT_SUITS_WITH_CARE : FIT_SUITS;
}

static struct system *with_bore(const struct system *system, const int *parts, int part_count,
                                struct length bore, struct arena *arena)
{
    struct system *copy = system_copy(system, arena);
    for (int i = 0; i < part_count; i++) {
        struct part *part = &copy->parts[parts[i]];
        key_set(part, key_of(part->kind, part_bore_field(part->kind)), bore.m);
    }
    return copy;
}

/* NaN when it is not reached, for want of force or of travel. */
static struct force effort_for(const struct system *system, const struct network *network,
                               struct acceleration stop, struct arena *arena)
{
    struct solution *room = solution_room(system, network, arena);
    struct state state = state_usual();
    struct force effort = solve_effort_by_force(system, network, &state, stop, room);
    if (!solve_effort_fits(system, network, &state, effort, room)) {
        effort.n = NAN;
    }
    return effort;
}

struct fit *fit_of(const struct system *system, const struct network *network, const int *parts,
                   int part_count, struct length bore, struct force effort, struct date today,
                   struct arena *arena)
{
    (void)today;
    struct fit *fit = ARENA_NEW(arena, struct fit);
    struct fitting fitting = {.network = network, .fit = fit, .arena = arena};
    fit->part = parts[0];
    fit->before = part_bore(&system->parts[parts[0]]);
    fit->after = bore;
    fit->nearest = nearest_words(bore, arena);
    fitting.before.system = system;
    fitting.after.system = with_bore(system, parts, part_count, bore, arena);
    fitting.before.figures = figures_of(system, network, effort, arena);
    fitting.after.figures = figures_of(fitting.after.system, network, effort, arena);
    fit->lines = ARENA_ARRAY(arena, (size_t)fitting.after.figures.count + 1, struct fit_line);

    const struct figure *stop = fit_figure(&fitting.before, "deceleration", -1);
    fit->stop.m_s2 = stop == NULL ? NAN : stop->value;
    fitting.before.stop_effort = effort_for(system, network, fit->stop, arena);
    fitting.after.stop_effort = effort_for(fitting.after.system, network, fit->stop, arena);
    add_effort_line(&fitting, stop);
    add_lines(&fitting);
    fit_give_reasons(&fitting);
    fit->verdict = verdict_of(fit);
    return fit;
}

const char *fit_verdict_words(enum fit_verdict verdict)
{
    switch (verdict) {
    case FIT_SUITS:
        return "suits";
    case FIT_SUITS_WITH_CARE:
        return "suits, with care";
    case FIT_DOES_NOT_SUIT:
        return "does not suit";
    case FIT_CANNOT_TELL:
        return "cannot tell: too little is known";
    }
    return "";
}
