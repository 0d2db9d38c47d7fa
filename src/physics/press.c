#include "physics/press.h"

#include <math.h>

#include "physics/pressure.h"
#include "physics/travel.h"

enum { MOST_MASTERS = 2 };

static int circuit_of(const struct network *network, int master, int chamber)
{
    for (int i = 0; i < network->circuit_count; i++)
        if (network->circuits[i].master == master && network->circuits[i].chamber == chamber)
            return i;
    return -1;
}

static bool feeds_brake(const struct network *network, int master)
{
    for (int i = 0; i < network->circuit_count; i++)
        if (network->circuits[i].master == master && !network->circuits[i].clutch)
            return true;
    return false;
}

bool press_is_brake(const struct system *system, const struct network *network, int pedal)
{
    if (system->parts[pedal].kind != KIND_PEDAL)
        return false;
    for (size_t i = 0; i < system->parts[pedal].as.pedal.works.count; i++) {
        int master = pressure_worked_master(system, pedal, i);
        if (master >= 0 && feeds_brake(network, master))
            return true;
    }
    return false;
}

struct force press_pressures(const struct system *system, const struct network *network,
                             const struct state *state, int pedal, struct force effort,
                             struct solution *into)
{
    struct force sum = {0};
    for (size_t i = 0; i < system->parts[pedal].as.pedal.works.count; i++) {
        int master = pressure_worked_master(system, pedal, i);
        if (master < 0)
            return (struct force){NAN};
        struct force rod = pressure_rod_force(system, master, effort, state->assisted);
        struct pressure made = master_pressure(&system->parts[master].as.master, rod);
        sum.n += rod.n;
        for (int c = 0; c < network->circuit_count; c++) {
            if (network->circuits[c].master != master)
                continue;
            into->circuits[c].pressure = c == state->lost_circuit ? (struct pressure){0} : made;
            pressure_spread(system, network, c, into->circuits[c].pressure, state->assisted,
                            into->pressures);
        }
    }
    return sum;
}

static void take_volumes(const struct system *system, const struct network *network,
                         const struct state *state, int circuit, struct solution *into)
{
    struct circuit_state *taken = &into->circuits[circuit];
    travel_volumes(system, network, circuit, into->pressures, state, taken->by_cause);
    taken->volume.m3 = 0;
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        taken->volume.m3 += taken->by_cause[cause].m3;
}

/* How far one piston goes. past: by how much it needs more than its own full stroke. */
static double piston_stroke(const struct system *system, const struct network *network,
                            const struct state *state, int circuit, int master, double full,
                            struct solution *into, double *past)
{
    const struct master *data = &system->parts[master].as.master;
    if (circuit < 0) { /* nothing is joined to this chamber: it only shuts its port */
        *past = data->cut_off.m - full;
        return data->cut_off.m;
    }
    struct circuit_state *taken = &into->circuits[circuit];
    take_volumes(system, network, state, circuit, into);
    if (circuit == state->lost_circuit) {
        taken->stroke.m = full;
        *past = -INFINITY; /* it stands at its end, and that is counted */
    } else {
        taken->stroke.m = data->cut_off.m + taken->volume.m3 / master_area(data).m2;
        *past = taken->stroke.m - full;
    }
    return taken->stroke.m;
}

/* Greater of two that may be unknown: an unknown end of a bore is no end. */
static double known_most(double a, double b)
{
    return fmax(a, b); /* fmax passes over a NaN */
}

/* Travel of a master's push rod, its gap included. */
static double master_travel(const struct system *system, const struct network *network,
                            const struct state *state, int master, struct solution *into,
                            double *past)
{
    const struct master *data = &system->parts[master].as.master;
    int servo = pressure_servo_of(system, master);
    double gap = data->rod_gap.m, strokes, second_past = NAN;
    if (servo >= 0 && !isnan(system->parts[servo].as.servo.rod_gap.m))
        gap = system->parts[servo].as.servo.rod_gap.m;

    int first = circuit_of(network, master, 0);
    if (data->type == MASTER_TANDEM) {
        int second = circuit_of(network, master, 1);
        strokes = piston_stroke(system, network, state, first, master, data->primary_stroke.m, into,
                                past) +
                  piston_stroke(system, network, state, second, master, data->secondary_stroke.m,
                                into, &second_past);
        *past = known_most(*past, second_past);
        if (state->lost_circuit < 0 ||
            (state->lost_circuit != first && state->lost_circuit != second))
            *past = known_most(*past, strokes - data->stroke.m);
    } else {
        strokes = piston_stroke(system, network, state, first, master, data->stroke.m, into, past);
    }
    return gap + strokes;
}

/* Whether the pedal's only piston has lost its circuit. */
static bool is_dead(const struct system *system, const struct network *network,
                    const struct state *state, int pedal)
{
    if (state->lost_circuit < 0 || system->parts[pedal].as.pedal.works.count != 1)
        return false;
    int master = pressure_worked_master(system, pedal, 0);
    return network->circuits[state->lost_circuit].master == master &&
           system->parts[master].as.master.type == MASTER_SINGLE;
}

struct reach press_travel(const struct system *system, const struct network *network,
                          const struct state *state, int pedal, struct force effort,
                          struct solution *into)
{
    const struct pedal *data = &system->parts[pedal].as.pedal;
    struct reach reach = {{NAN}, {NAN}, {NAN}, {NAN}, {NAN}, {NAN}, false};
    size_t masters = data->works.count;
    if (masters < 1 || masters > MOST_MASTERS)
        return reach;
    reach.rod = press_pressures(system, network, state, pedal, effort, into);
    double travels[MOST_MASTERS] = {NAN, NAN};
    for (size_t i = 0; i < masters; i++) {
        int master = pressure_worked_master(system, pedal, i);
        double past = NAN;
        if (master >= 0)
            travels[i] = master_travel(system, network, state, master, into, &past);
        reach.past_bore.m = known_most(reach.past_bore.m, past);
    }
    reach.rod_travel.m = travels[0];
    if (masters == MOST_MASTERS) {
        double share = pedal_bar_share(data).of_1;
        reach.rod_travel.m = share * travels[0] + (1 - share) * travels[1];
        reach.tilt.rad = atan((travels[0] - travels[1]) / (data->bar_first.m + data->bar_second.m));
    }
    reach.travel.m = data->free_play.m + pedal_ratio(data).value * reach.rod_travel.m +
                     effort.n / data->stiffness.n_m;
    reach.past_floor.m = reach.travel.m - pedal_end(data).m;
    reach.dead = is_dead(system, network, state, pedal);
    return reach;
}
