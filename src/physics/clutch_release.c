#include "physics/clutch_release.h"

#include <math.h>

#include "physics/press.h"
#include "physics/pressure.h"
#include "physics/root.h"
#include "physics/travel.h"

#define EFFORT_TOLERANCE 1e-7

static int circuit_of_slave(const struct network *network, int slave)
{
    int vertex = network_vertex(network, slave, 0);
    return vertex < 0 ? -1 : network->vertices[vertex].circuit;
}

struct wanted_rod {
    const struct system *system;
    int master;
    double rod_n;
};

static double rod_excess(double effort, void *context)
{
    const struct wanted_rod *wanted = context;
    struct force at = {effort};
    return pressure_rod_force(wanted->system, wanted->master, at, true).n - wanted->rod_n;
}

static struct force effort_for_rod(const struct system *system, int master, double rod_n)
{
    if (pressure_servo_of(system, master) < 0) {
        const struct pedal *pedal = &system->parts[pressure_pedal_of(system, master)].as.pedal;
        struct force beyond = {1 + pedal->return_spring.n}; /* 1 N more than the spring takes */
        return (struct force){pedal->return_spring.n +
                              rod_n / pressure_rod_force(system, master, beyond, false).n};
    }
    struct wanted_rod wanted = {system, master, rod_n};
    struct root root = root_between(rod_excess, &wanted, 0, MOST_EFFORT, EFFORT_TOLERANCE);
    return (struct force){root.fits};
}

static struct force effort_for_pressure(const struct system *system, int master, struct pressure p)
{
    const struct master *data = &system->parts[master].as.master;
    return effort_for_rod(system, master, master_rod_force(data, p).n);
}

/* What the pedal's rod goes before the piston does. */
static double gap_before(const struct system *system, int master)
{
    return press_own_gap(system, master).m + press_lost_motion(system, master, true).m;
}

/* Pedal travel until the bearing touches: free play, gap, port, and the bearing's own play. */
static double touching(const struct system *system, const struct clutch_state *clutch,
                       const struct slave *slave)
{
    const struct pedal *pedal = &system->parts[clutch->pedal].as.pedal;
    const struct master *master = &system->parts[clutch->master].as.master;
    double play = slave_area(slave).m2 * slave_ratio(slave) * slave->play.m;
    double gap = gap_before(system, clutch->master);
    double rod = gap + master->cut_off.m + play / master_area(master).m2;
    return press_free_play(pedal).m + pedal_ratio(pedal).value * rod;
}

static double delivered_volume(const struct system *system, const struct clutch_state *clutch)
{
    const struct pedal *pedal = &system->parts[clutch->pedal].as.pedal;
    const struct master *master = &system->parts[clutch->master].as.master;
    double flexed = clutch->effort_end.n / pedal->stiffness.n_m;
    double rod =
        (pedal_end(pedal).m - press_free_play(pedal).m - flexed) / pedal_ratio(pedal).value;
    double piston = rod - gap_before(system, clutch->master);
    if (piston > master->stroke.m)
        piston = master->stroke.m;
    double pushed = piston - master->cut_off.m;
    if (pushed < 0)
        pushed = 0;
    /* Without a stroke nobody knows whether the bore ends first. */
    return isnan(master->stroke.m) || master_is_stepped(master) ? NAN
                                                                : master_area(master).m2 * pushed;
}

static double lost_volume(const struct system *system, const struct network *network, int circuit,
                          struct pressure p, struct solution *into)
{
    struct circuit_state *taken = &into->circuits[circuit];
    taken->pressure = p;
    pressure_spread(system, network, circuit, p, true, into->pressures);
    struct state usual = state_usual();
    travel_volumes(system, network, circuit, into->pressures, &usual, taken->by_cause);
    double lost = 0;
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        lost += taken->by_cause[cause].m3;
    return lost;
}

struct clutch_state clutch_release(const struct system *system, const struct network *network,
                                   int slave, struct solution *into)
{
    struct clutch_state clutch = {-1,    -1,    {NAN}, {NAN}, {NAN}, {NAN},
                                  {NAN}, {NAN}, {NAN}, {NAN}, {NAN}};
    const struct slave *data = &system->parts[slave].as.slave;
    clutch.pressure = slave_pressure(data, RELEASE_PEAK);
    clutch.pressure_end = slave_pressure(data, RELEASE_END);
    int circuit = circuit_of_slave(network, slave);
    if (circuit < 0)
        return clutch;
    clutch.master = network->circuits[circuit].master;
    clutch.pedal = pressure_pedal_of(system, clutch.master);
    if (clutch.pedal < 0)
        return clutch;

    const struct master *master = &system->parts[clutch.master].as.master;
    double area = master_area(master).m2;
    clutch.effort = effort_for_pressure(system, clutch.master, clutch.pressure);
    clutch.effort_end = effort_for_pressure(system, clutch.master, clutch.pressure_end);
    clutch.touch.m = touching(system, &clutch, data);
    clutch.delivered.m3 = delivered_volume(system, &clutch);
    clutch.lost.m3 = lost_volume(system, network, circuit, clutch.pressure_end, into);
    double arrives = clutch.delivered.m3 - clutch.lost.m3;
    if (arrives < 0)
        arrives = 0;
    clutch.slave_travel.m = arrives / slave_area(data).m2;
    clutch.bearing_travel = slave_bearing_travel(data, (struct volume){arrives});

    struct circuit_state *taken = &into->circuits[circuit];
    taken->by_cause[CAUSE_SLAVE].m3 = arrives;
    taken->volume.m3 = clutch.lost.m3 + arrives;
    taken->stroke.m = master->cut_off.m + taken->volume.m3 / area;
    return clutch;
}
