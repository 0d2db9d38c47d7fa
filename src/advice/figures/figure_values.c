#include "advice/figures/figure_values.h"

#include <math.h>

#include "physics/press.h"
#include "physics/pressure.h"
#include "physics/travel.h"
#include "units/constants.h"

static const struct part *part_at(const struct situation *situation, int part)
{
    return &situation->system->parts[part];
}

GETS(value_deceleration, situation->usual->deceleration.m_s2)
GETS(value_deceleration_unassisted, situation->unassisted->deceleration.m_s2)
GETS(value_effort_half_g, situation->half_g_fits ? situation->half_g.n : NAN)
GETS(value_effort_half_g_unassisted,
     situation->half_g_unassisted_fits ? situation->half_g_unassisted.n : NAN)
GETS(value_pedal_effort, situation->usual->pedals[subject].effort.n)
GETS(value_rod_force, situation->usual->pedals[subject].rod.n)
GETS(value_rod_travel, situation->usual->pedals[subject].rod_travel.m)
GETS(value_pedal_travel, situation->usual->pedals[subject].travel.m)
GETS(value_pedal_left, situation->usual->pedals[subject].left.m)
GETS(value_pedal_travel_slack, situation->slack->pedals[subject].travel.m)
GETS(value_pedal_left_slack, situation->slack->pedals[subject].left.m)
GETS(value_bar_tilt, situation->usual->pedals[subject].bar_tilt.rad)
GETS(value_line_pressure, situation->usual->circuits[subject].pressure.pa)
GETS(value_unassisted_pressure, situation->unassisted->circuits[subject].pressure.pa)
GETS(value_volume_taken, situation->usual->circuits[subject].volume.m3)
GETS(value_piston_stroke, situation->usual->circuits[subject].stroke.m)
GETS(value_volume_by_cause, situation->usual->circuits[subject].by_cause[sub].m3)
GETS(value_clamp_force, situation->usual->brakes[subject].clamp.n)
GETS(value_brake_torque, situation->usual->brakes[subject].torque.nm)
GETS(value_brake_torque_reverse, situation->usual->brakes[subject].torque_reverse.nm)
GETS(value_brake_force, situation->usual->brakes[subject].force.n)

FIGURE_GETTER(value_front_share)
{
    (void)subject, (void)sub;
    double front = situation->usual->front.n, both = front + situation->usual->rear.n;
    return both > 0 ? front / both : NAN;
}

/* Stroke that is left in the master whose bore ends first. */
FIGURE_GETTER(value_stroke_left)
{
    (void)sub;
    double least = INFINITY;
    const struct pedal *pedal = &part_at(situation, subject)->as.pedal;
    for (size_t i = 0; i < pedal->works.count; i++) {
        int master = pressure_worked_master(situation->system, subject, i);
        if (master < 0)
            return NAN;
        double left = part_at(situation, master)->as.master.stroke.m;
        for (int c = 0; c < situation->network->circuit_count; c++)
            if (situation->network->circuits[c].master == master)
                left -= situation->usual->circuits[c].stroke.m;
        if (isnan(left))
            return NAN;
        least = fmin(least, left);
    }
    return isfinite(least) ? least : NAN;
}

/* The whole stroke of the piston that makes a circuit's pressure. */
static double own_stroke(const struct situation *situation, int circuit)
{
    const struct circuit *made = &situation->network->circuits[circuit];
    const struct master *master = &part_at(situation, made->master)->as.master;
    if (master->type == MASTER_SINGLE)
        return master->stroke.m;
    return made->chamber == 0 ? master->primary_stroke.m : master->secondary_stroke.m;
}

FIGURE_GETTER(value_piston_stroke_left)
{
    (void)sub;
    return own_stroke(situation, subject) - situation->usual->circuits[subject].stroke.m;
}

static int pedal_of_circuit(const struct situation *situation, int circuit)
{
    return pressure_pedal_of(situation->system, situation->network->circuits[circuit].master);
}

FIGURE_GETTER(value_travel_circuit_lost)
{
    (void)sub;
    int pedal = pedal_of_circuit(situation, subject);
    return pedal < 0 ? NAN : situation->lost[subject]->pedals[pedal].travel.m;
}

FIGURE_GETTER(value_left_circuit_lost)
{
    (void)sub;
    int pedal = pedal_of_circuit(situation, subject);
    return pedal < 0 ? NAN : situation->lost[subject]->pedals[pedal].left.m;
}

/* Of the pistons that still have fluid to stand against, the one whose bore ends first. */
FIGURE_GETTER(value_stroke_left_circuit_lost)
{
    (void)sub;
    double least = INFINITY;
    for (int c = 0; c < situation->network->circuit_count; c++) {
        if (c == subject || pedal_of_circuit(situation, c) != pedal_of_circuit(situation, subject))
            continue;
        double left = own_stroke(situation, c) - situation->lost[subject]->circuits[c].stroke.m;
        if (isnan(left))
            return NAN;
        least = fmin(least, left);
    }
    return isfinite(least) ? least : NAN;
}

FIGURE_GETTER(value_fluid_in_circuit)
{
    (void)sub;
    return travel_fluid(situation->system, situation->network, subject).m3;
}

FIGURE_GETTER(value_pedal_lost_rod_gap)
{
    (void)sub;
    const struct system *system = situation->system;
    const struct pedal *pedal = &system->parts[subject].as.pedal;
    int first = pressure_worked_master(system, subject, 0);
    if (first < 0)
        return NAN;
    double gap = press_rod_gap(system, first).m;
    if (pedal->works.count == 2) {
        int second = pressure_worked_master(system, subject, 1);
        double share = pedal_bar_share(pedal).of_1;
        gap = second < 0 ? NAN : share * gap + (1 - share) * press_rod_gap(system, second).m;
    }
    return pedal_ratio(pedal).value * gap;
}

FIGURE_GETTER(value_port_blocked_pressure)
{
    (void)sub;
    return situation->port_blocked[subject].pa;
}

/* Pipe and hose from the master to a vertex, from the lengths as they are now. */
static double run_to(const struct situation *situation, int vertex)
{
    const struct network *network = situation->network;
    double run = 0;
    /* as many steps as there are vertices, so that a damaged tree cannot hold us */
    for (int i = 0; i < network->vertex_count && network->vertices[vertex].edge >= 0; i++) {
        const struct edge *edge = &network->edges[network->vertices[vertex].edge];
        if (edge->kind == EDGE_CARRIER) {
            const struct part *part = part_at(situation, edge->part);
            run += part->kind == KIND_PIPE ? part->as.pipe.length.m : part->as.hose.length.m;
        }
        vertex = network->vertices[vertex].parent;
    }
    return run;
}

FIGURE_GETTER(value_pipe_run_longest)
{
    (void)sub;
    const struct circuit *circuit = &situation->network->circuits[subject];
    double longest = NAN;
    for (int i = 0; i < circuit->vertex_count; i++) {
        int vertex = circuit->vertices[i];
        const struct part *part = part_at(situation, situation->network->vertices[vertex].part);
        if (!kind_is_brake(part->kind))
            continue;
        double run = run_to(situation, vertex);
        if (isnan(run))
            return NAN;
        longest = fmax(longest, run);
    }
    return longest;
}

/* Pads wear away one by one on both sides; each piston follows its own. */
FIGURE_GETTER(value_reservoir_volume_needed)
{
    (void)sub;
    const struct circuit *circuit = &situation->network->circuits[subject];
    double sum = 0;
    for (int i = 0; i < circuit->vertex_count; i++) {
        const struct vertex *vertex = &situation->network->vertices[circuit->vertices[i]];
        const struct part *part = part_at(situation, vertex->part);
        if (part->kind == KIND_DISC)
            sum +=
                2 * disc_side_area(&part->as.disc, vertex->chamber).m2 * part->as.disc.pad_left.m;
    }
    return sum;
}

/* What one millilitre of free air costs at the pad. */
FIGURE_GETTER(value_air_cost)
{
    (void)sub;
    int pedal = pedal_of_circuit(situation, subject);
    if (pedal < 0)
        return NAN;
    const struct circuit *circuit = &situation->network->circuits[subject];
    const struct master *master = &part_at(situation, circuit->master)->as.master;
    double area = master_area(master).m2;
    struct pressure pressure = situation->usual->circuits[subject].pressure;
    struct volume lost = travel_air(situation->system, situation->network, circuit->source,
                                    situation->usual->pressures, (struct volume){1e-6});
    const struct pedal *data = &part_at(situation, pedal)->as.pedal;
    double rod = lost.m3 / area;
    if (master_is_stepped(master)) {
        double early = air_compression((struct volume){1e-6},
                                       (struct pressure){fmin(master->take_up.pa, pressure.pa)})
                           .m3;
        rod = early / master_take_up_area(master).m2 + (lost.m3 - early) / area;
    }
    if (data->works.count == 2) {
        double first = pedal_bar_share(data).of_1;
        rod *= pressure_worked_master(situation->system, pedal, 0) == circuit->master ? first
                                                                                      : 1 - first;
    }
    return pedal_ratio(data).value * rod;
}

FIGURE_GETTER(value_wheel_pressure)
{
    (void)sub;
    const struct pressure *p = situation->usual->brakes[subject].pressure;
    return isnan(p[1].pa) ? p[0].pa : fmax(p[0].pa, p[1].pa);
}

FIGURE_TEST(of_servo)
{
    (void)subject, (void)sub;
    return situation->servo;
}

FIGURE_TEST(of_drum)
{
    (void)sub;
    return part_at(situation, subject)->kind == KIND_DRUM;
}

/* Whether the pedal of a circuit works another one too. */
FIGURE_TEST(of_split_pedal)
{
    (void)sub;
    int pedal = pedal_of_circuit(situation, subject);
    for (int c = 0; c < situation->network->circuit_count; c++)
        if (c != subject && pedal >= 0 && pedal_of_circuit(situation, c) == pedal)
            return true;
    return false;
}

FIGURE_TEST(of_balance_bar)
{
    (void)sub;
    return part_at(situation, subject)->as.pedal.works.count == 2;
}

static bool reaches(const struct situation *situation, int circuit, enum part_kind kind)
{
    const struct circuit *reached = &situation->network->circuits[circuit];
    for (int i = 0; i < reached->vertex_count; i++)
        if (part_at(situation, situation->network->vertices[reached->vertices[i]].part)->kind ==
            kind)
            return true;
    return false;
}

FIGURE_TEST(of_pedal_with_drums)
{
    (void)sub;
    for (int c = 0; c < situation->network->circuit_count; c++)
        if (pedal_of_circuit(situation, c) == subject && reaches(situation, c, KIND_DRUM))
            return true;
    return false;
}

FIGURE_TEST(of_circuit_with_discs)
{
    (void)sub;
    return reaches(situation, subject, KIND_DISC);
}

FIGURE_TEST(of_cause)
{
    switch ((enum cause)sub) {
    case CAUSE_BODY:
        return reaches(situation, subject, KIND_DISC);
    case CAUSE_SLAVE:
    case CAUSE_COUNT:
        return false;
    case CAUSE_CLEARANCE:
    case CAUSE_LININGS:
    case CAUSE_HOSES:
    case CAUSE_FLUID:
    case CAUSE_PIPES:
    case CAUSE_AIR:
        break;
    }
    return true;
}

static const char *refuses_stop(const struct solution *solution)
{
    return isnan(solution->deceleration.m_s2)
               ? NULL
               : "neither 2000 N nor all the travel of the pedal gives such a stop";
}

FIGURE_REASON(refuses_half_g)
{
    (void)subject, (void)sub;
    return refuses_stop(situation->usual);
}

FIGURE_REASON(refuses_half_g_unassisted)
{
    (void)subject, (void)sub;
    return refuses_stop(situation->unassisted);
}
