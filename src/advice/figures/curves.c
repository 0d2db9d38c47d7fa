#include "advice/figures/curves.h"

#include <math.h>

#include "advice/figures/trial.h"
#include "base/text.h"
#include "physics/press.h"

struct drawer {
    const struct system *system;
    const struct network *network;
    struct force effort;
    struct arena *arena;
};

static bool is_drawn(const struct pedal_curve *curve)
{
    return curve->count > 0 && !isnan(curve->points[curve->count - 1].travel.m);
}

/* What a curve lacks: all that is not said is put in and taken away again key by key, for good as
 * long as the curve stays. */
static void find_needs(const struct drawer *drawer, int pedal, const struct state *state,
                       struct car_curve *drawn, struct pedal_curve *room)
{
    struct figures none = {NULL, 0};
    struct trial trial =
        trial_start(drawer->system, drawer->network, drawer->effort, &none, drawer->arena);
    struct moved_keys keys = trial_missing_keys(drawer->system, TRIAL_FILL_EXAMPLE, drawer->arena);
    drawn->needs = ARENA_ARRAY(drawer->arena, keys.count + 1, struct cited_key);
    for (size_t k = 0; k < keys.count; k++)
        trial_fill(&trial, &keys.items[k], true);
    pedal_curve_solve(trial.moved, drawer->network, pedal, state, room);
    if (!is_drawn(room))
        return;
    for (size_t k = keys.count; k-- > 0;) {
        trial_fill(&trial, &keys.items[k], false);
        pedal_curve_solve(trial.moved, drawer->network, pedal, state, room);
        if (is_drawn(room))
            continue;
        trial_fill(&trial, &keys.items[k], true);
        drawn->needs[drawn->needs_count++] =
            (struct cited_key){keys.items[k].part, keys.items[k].key, 0};
    }
}

static struct car_curve draw_one(const struct drawer *drawer, int pedal,
                                 const struct curve_case *row, int lost)
{
    struct pedal_curve *curve =
        pedal_curve_room(drawer->system, drawer->network, CURVE_USUAL_POINTS, drawer->arena);
    struct state state = row->state;
    state.effort = drawer->effort;
    if (lost >= 0)
        state.lost_circuit = lost;
    pedal_curve_solve(drawer->system, drawer->network, pedal, &state, curve);
    struct car_curve drawn = {row, lost, row->words, curve, {NAN}, {NAN}, NULL, 0};
    if (lost >= 0)
        drawn.words = text_print(drawer->arena, "%s lost", drawer->network->circuits[lost].name);
    if (is_drawn(curve))
        drawn.travel = curve->points[curve->count - 1].travel;
    else
        find_needs(
            drawer, pedal, &state, &drawn,
            pedal_curve_room(drawer->system, drawer->network, CURVE_LEAST_POINTS, drawer->arena));
    drawn.left.of_1 = curve->left.m / drawer->system->parts[pedal].as.pedal.travel.m;
    return drawn;
}

/* A case once, or once for each circuit of the pedal. */
static void draw_case(const struct drawer *drawer, const struct curve_case *row,
                      struct pedal_curves *into)
{
    if (!row->each_circuit) {
        into->items[into->count++] = draw_one(drawer, into->pedal, row, -1);
        return;
    }
    const struct pedal_curve *usual = into->items[0].curve;
    for (int i = 0; i < usual->circuit_count; i++)
        into->items[into->count++] = draw_one(drawer, into->pedal, row, usual->circuits[i]);
}

static struct pedal_curves draw_pedal(const struct drawer *drawer, int pedal)
{
    size_t count;
    const struct curve_case *cases = curve_cases(&count);
    struct pedal_curves into = {.pedal = pedal};
    into.items = ARENA_ARRAY(drawer->arena, count * CURVE_MOST_CIRCUITS + 1, struct car_curve);
    for (size_t i = 0; i < count; i++)
        if (i == 0 || curve_case_is_of(drawer->system, drawer->network, pedal, &cases[i]))
            draw_case(drawer, &cases[i], &into);
    return into;
}

struct curves curves_of(const struct system *system, const struct network *network,
                        struct force effort, struct arena *arena)
{
    struct drawer drawer = {system, network, effort, arena};
    struct curves curves = {
        .items = ARENA_ARRAY(arena, (size_t)system->part_count + 1, struct pedal_curves)};
    for (int i = 0; i < system->part_count; i++)
        if (press_is_brake(system, network, i))
            curves.items[curves.count++] = draw_pedal(&drawer, i);
    return curves;
}
