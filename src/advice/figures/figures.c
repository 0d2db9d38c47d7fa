#include "advice/figures/figures.h"

#include <math.h>
#include <string.h>

#include "advice/figures/dependence.h"
#include "advice/figures/figure_values.h"
#include "advice/figures/holds.h"
#include "base/text.h"
#include "physics/press.h"
#include "physics/pressure.h"

/* How many subjects a scope could have, and whether one of them is one. */
static int subjects_of(const struct situation *situation, enum figure_scope scope)
{
    switch (scope) {
    case SCOPE_CAR:
        return 1;
    case SCOPE_CIRCUIT:
    case SCOPE_CAUSE:
        return situation->network->circuit_count;
    case SCOPE_PEDAL:
    case SCOPE_CALIPER:
    case SCOPE_BRAKE:
    case SCOPE_CLUTCH:
    case SCOPE_HAND_BRAKE:
    case SCOPE_SERVO:
    case SCOPE_VALVE:
        break;
    }
    return situation->system->part_count;
}

static bool in_scope(const struct situation *situation, enum figure_scope scope, int subject)
{
    const struct system *system = situation->system;
    switch (scope) {
    case SCOPE_CAR:
        return true;
    case SCOPE_CIRCUIT:
    case SCOPE_CAUSE:
        return !situation->network->circuits[subject].clutch;
    case SCOPE_PEDAL:
        return press_is_brake(system, situation->network, subject);
    case SCOPE_CALIPER:
        return system->parts[subject].kind == KIND_DISC;
    case SCOPE_BRAKE:
        return kind_is_brake(system->parts[subject].kind);
    case SCOPE_CLUTCH:
        return system->parts[subject].kind == KIND_SLAVE;
    case SCOPE_HAND_BRAKE:
        return system->parts[subject].kind == KIND_PARKING;
    case SCOPE_SERVO:
        return system->parts[subject].kind == KIND_SERVO;
    case SCOPE_VALVE:
        return system->parts[subject].kind == KIND_VALVE;
    }
    return false;
}

static const char *name_of(const struct situation *situation, enum figure_scope scope, int subject,
                           int sub, struct arena *arena)
{
    if (scope == SCOPE_CAR)
        return "";
    if (scope == SCOPE_CIRCUIT)
        return situation->network->circuits[subject].name;
    if (scope == SCOPE_CAUSE)
        return text_print(arena, "%s, %s", situation->network->circuits[subject].name,
                          cause_words((enum cause)sub));
    return situation->system->parts[subject].name;
}

/* Every figure that this car has, row by row; with into NULL they are only counted. */
static int list_figures(const struct situation *situation, struct figure *into, struct arena *arena)
{
    int count = 0;
    size_t row_count;
    const struct figure_row *rows = figure_rows(&row_count);
    for (size_t r = 0; r < row_count; r++) {
        int subjects = subjects_of(situation, rows[r].scope);
        int subs = rows[r].scope == SCOPE_CAUSE ? CAUSE_COUNT : 1;
        for (int i = 0; i < subjects * subs; i++) {
            int subject = i / subs, sub = i % subs;
            if (!in_scope(situation, rows[r].scope, subject) ||
                (rows[r].of_this != NULL && !rows[r].of_this(situation, subject, sub)))
                continue;
            if (into != NULL)
                into[count] =
                    (struct figure){.row = &rows[r],
                                    .subject = rows[r].scope == SCOPE_CAR ? -1 : subject,
                                    .sub = sub,
                                    .of = name_of(situation, rows[r].scope, subject, sub, arena)};
            count++;
        }
    }
    return count;
}

static const char *circuit_reason(const struct situation *situation, int circuit)
{
    int master = situation->network->circuits[circuit].master;
    if (pressure_pedal_of(situation->system, master) < 0)
        return "no pedal is described that works its master";
    if (system_fluid_of(situation->system, master) < 0)
        return "no fluid is described for it";
    return NULL;
}

/* Where some brake's master hangs on no pedal, or holds no fluid, nothing about the whole car can
 * be worked out. */
static const char *car_reason(const struct situation *situation)
{
    bool brakes = false;
    for (int c = 0; c < situation->network->circuit_count; c++) {
        if (situation->network->circuits[c].clutch)
            continue;
        brakes = true;
        const char *reason = circuit_reason(situation, c);
        if (reason != NULL)
            return reason;
    }
    return brakes ? NULL : "no brakes are described";
}

/* Why a figure has no value when no key is missing. */
static const char *plain_reason(const struct situation *situation, const struct figure *figure,
                                struct arena *arena)
{
    const char *reason = NULL;
    enum figure_scope scope = figure->row->scope;
    if (scope == SCOPE_CAR)
        reason = car_reason(situation);
    if (scope == SCOPE_CIRCUIT || scope == SCOPE_CAUSE) {
        reason = circuit_reason(situation, figure->subject);
    } else if (scope == SCOPE_CALIPER || scope == SCOPE_BRAKE || scope == SCOPE_CLUTCH) {
        int vertex = network_vertex(situation->network, figure->subject, 0);
        int circuit = vertex < 0 ? -1 : situation->network->vertices[vertex].circuit;
        reason = circuit < 0 ? "no circuit reaches it" : circuit_reason(situation, circuit);
    }
    return reason != NULL ? reason
                          : text_print(arena, "outside its limits: %s", figure->row->limits);
}

/* What is left to the floor is not there where the master's bore ends before. The rod cannot go
 * farther than the stroke that is left; flexing left out. Source: the geometry of the lever. */
static const char *end_first(const struct situation *situation, const struct figure *figure,
                             struct arena *arena)
{
    bool usual = strcmp(figure->row->id, "pedal-left") == 0;
    if (!usual || isnan(figure->value))
        return NULL;
    const struct pedal_state *pedal = &situation->usual->pedals[figure->subject];
    const struct pedal *data = &situation->system->parts[figure->subject].as.pedal;
    const char *end = data->type == PEDAL_HAND ? "bar" : "floor";
    if (pedal->bottomed)
        return text_print(arena, "a piston is at its end before the %s is reached", end);
    double ratio = pedal_ratio(data).value;
    double on = ratio * value_stroke_left(situation, figure->subject, 0);
    if (!(on < figure->value))
        return NULL;
    return text_print(arena, "the bore of the master ends after %.0f %% of what is left to the %s",
                      100 * on / figure->value, end);
}

struct figures figures_listed(const struct situation *situation, struct arena *arena)
{
    struct figures figures = {NULL, list_figures(situation, NULL, arena)};
    figures.items = ARENA_ARRAY(arena, (size_t)figures.count + 1, struct figure);
    list_figures(situation, figures.items, arena);
    return figures;
}

struct figures figures_of(const struct system *system, const struct network *network,
                          struct force effort, struct arena *arena)
{
    struct situation *situation = situation_room(system, network, effort, arena);
    situation_solve(situation);
    struct figures figures = figures_listed(situation, arena);
    for (int i = 0; i < figures.count; i++) {
        struct figure *figure = &figures.items[i];
        double value = figure->row->get(situation, figure->subject, figure->sub);
        figure->value = isfinite(value) ? value : NAN;
    }
    dependence_find(system, network, effort, &figures, arena);
    for (int i = 0; i < figures.count; i++) {
        struct figure *figure = &figures.items[i];
        holds_look(situation, figure);
        figure->remark = end_first(situation, figure, arena);
        if (isnan(figure->value) && figure->needs_count == 0 && figure->reason == NULL)
            figure->reason = plain_reason(situation, figure, arena);
    }
    return figures;
}

const struct figure *figures_find(const struct figures *figures, const char *id, const char *of)
{
    for (int i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (strcmp(figure->row->id, id) == 0 && (of == NULL || text_same(figure->of, of)))
            return figure;
    }
    return NULL;
}

const struct cited_key *figure_first_to_measure(const struct figure *figure)
{
    for (int k = 0; k < figure->assumed_count; k++)
        if (figure->assumed[k].key->measured)
            return &figure->assumed[k];
    return NULL;
}

bool figure_mostly_assumed(const struct figure *figure)
{
    return figure->state == FIGURE_ASSUMED &&
           (figure->assumed_share > 0.5 || figure->assumed_here > figure->given_here);
}
