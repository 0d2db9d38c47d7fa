#include "advice/figures/figure_values.h"

#include <math.h>

#include "physics/press.h"
#include "physics/pressure.h"
#include "physics/servo_stroke.h"
#include "physics/travel.h"

/* Figures of pedals in cases other than the usual one, of servos and of valves. */

/* Below that a travel counts as the same, m: what the search of a floor leaves open. */
#define SAME 1e-7

/* Whether a case takes this pedal elsewhere than the usual one. */
static bool differs(const struct situation *situation, enum pedal_case of, int pedal)
{
    double usual = situation->usual->pedals[pedal].travel.m;
    double in_case = situation->cases[of]->pedals[pedal].travel.m;
    return fabs(in_case - usual) > SAME || fabs(situation->cases[of]->pedals[pedal].effort.n -
                                                situation->usual->pedals[pedal].effort.n) > SAME;
}

/* Travel, what is left, and whether there is such a case, for one case each. */
#define PEDAL_IN(name, of)                                                                         \
    FIGURE_GETTER(value_pedal_travel_##name)                                                       \
    {                                                                                              \
        (void)sub;                                                                                 \
        return situation->cases[of]->pedals[subject].travel.m;                                     \
    }                                                                                              \
    FIGURE_GETTER(value_pedal_left_##name)                                                         \
    {                                                                                              \
        (void)sub;                                                                                 \
        return situation->cases[of]->pedals[subject].left.m;                                       \
    }                                                                                              \
    FIGURE_TEST(of_pedal_##name)                                                                   \
    {                                                                                              \
        (void)sub;                                                                                 \
        return differs(situation, of, subject);                                                    \
    }

PEDAL_IN(new, PEDAL_NEW)
PEDAL_IN(worn, PEDAL_WORN)
PEDAL_IN(hot, PEDAL_HOT)
PEDAL_IN(knocked_back, PEDAL_KNOCKED_BACK)
PEDAL_IN(worn_hoses, PEDAL_WORN_HOSES)

static const struct part *part_at(const struct situation *situation, int part)
{
    return &situation->system->parts[part];
}

FIGURE_GETTER(value_assisted_strokes)
{
    (void)sub;
    return servo_strokes_left(
        &part_at(situation, subject)->as.servo,
        servo_stroke_in(situation->system, situation->network, situation->usual, subject));
}

/* The pressures of a circuit when its master's outlet has fallen to a share of what it was; in the
 * room for roots. */
static const struct pressure *released(const struct situation *situation, int circuit, double share)
{
    struct pressure now = {share * situation->usual->circuits[circuit].pressure.pa};
    pressure_spread_falling(situation->system, situation->network, circuit,
                            situation->usual->pressures, now, true, situation->scratch->pressures);
    return situation->scratch->pressures;
}

/* What stays somewhere in a circuit with the foot off the pedal. */
FIGURE_GETTER(value_residual_pressure)
{
    (void)sub;
    const struct pressure *left = released(situation, subject, 0);
    const struct circuit *circuit = &situation->network->circuits[subject];
    double most = 0;
    for (int i = 0; i < circuit->vertex_count; i++) {
        double p = left[circuit->vertices[i]].pa;
        if (isnan(p))
            return NAN;
        most = fmax(most, p);
    }
    return most;
}

static bool is_valve(const struct situation *situation, int part, enum valve_type type)
{
    return part_at(situation, part)->kind == KIND_VALVE &&
           part_at(situation, part)->as.valve.type == type;
}

FIGURE_TEST(of_residual_valve)
{
    (void)sub;
    const struct circuit *circuit = &situation->network->circuits[subject];
    for (int i = 0; i < circuit->vertex_count; i++)
        if (is_valve(situation, situation->network->vertices[circuit->vertices[i]].part,
                     VALVE_RESIDUAL))
            return true;
    return false;
}

FIGURE_GETTER(value_release_pressure)
{
    (void)sub;
    double most = NAN;
    for (int inlet = 0; inlet < part_chambers(part_at(situation, subject)); inlet++) {
        int vertex = network_vertex(situation->network, subject, inlet);
        int circuit = vertex < 0 ? -1 : situation->network->vertices[vertex].circuit;
        if (circuit < 0)
            continue;
        double p = released(situation, circuit, 0.5)[vertex].pa;
        if (isnan(p))
            return NAN;
        most = fmax(most, p);
    }
    return most;
}

FIGURE_TEST(of_knee)
{
    (void)sub;
    return is_valve(situation, subject, VALVE_PROPORTIONING) ||
           is_valve(situation, subject, VALVE_LOAD_SENSING);
}

/* Whether a valve that holds back stands between a brake and its master. */
FIGURE_TEST(of_reducing_valve)
{
    for (int inlet = 0; inlet < part_chambers(part_at(situation, subject)); inlet++) {
        int vertex = network_vertex(situation->network, subject, inlet);
        for (int i = 0; i < situation->network->vertex_count && vertex >= 0; i++) {
            int part = situation->network->vertices[vertex].part;
            if (of_knee(situation, part, sub) || is_valve(situation, part, VALVE_LIMITING))
                return true;
            vertex = situation->network->vertices[vertex].parent;
        }
    }
    return false;
}

FIGURE_GETTER(value_valve_knee)
{
    (void)sub;
    return valve_knee(&part_at(situation, subject)->as.valve).pa;
}

/* Inlets of both passages of a shuttle; false when one is not fed. */
static bool shuttle_inlets(const struct situation *situation, int valve, int inlets[2])
{
    for (int i = 0; i < 2; i++) {
        inlets[i] = network_vertex(situation->network, valve, 2 * i);
        if (inlets[i] < 0 || situation->network->vertices[inlets[i]].circuit < 0)
            return false;
    }
    return true;
}

static double difference(const struct solution *solution, const int inlets[2])
{
    return fabs(solution->pressures[inlets[0]].pa - solution->pressures[inlets[1]].pa);
}

FIGURE_TEST(of_shuttle)
{
    (void)sub;
    return is_valve(situation, subject, VALVE_SHUTTLE) &&
           part_at(situation, subject)->as.valve.passages == 2;
}

FIGURE_GETTER(value_shuttle_difference)
{
    (void)sub;
    int inlets[2];
    return shuttle_inlets(situation, subject, inlets) ? difference(situation->usual, inlets) : NAN;
}

/* The lesser of what it sees with either of its circuits lost. */
FIGURE_GETTER(value_shuttle_difference_lost)
{
    (void)sub;
    int inlets[2];
    double least = INFINITY;
    if (!shuttle_inlets(situation, subject, inlets))
        return NAN;
    for (int i = 0; i < 2; i++) {
        const struct solution *lost =
            situation->lost[situation->network->vertices[inlets[i]].circuit];
        double seen = lost == NULL ? NAN : difference(lost, inlets);
        if (isnan(seen))
            return NAN;
        least = fmin(least, seen);
    }
    return least;
}
