#include "physics/blocked_port.h"

#include <math.h>

#include "physics/root.h"
#include "physics/travel.h"

#define MOST_PRESSURE      100e6
#define PRESSURE_TOLERANCE 1e-3

struct shut_in {
    const struct system *system;
    const struct network *network;
    int circuit;
    struct state state;
    double grown_m3;
    struct solution *room;
};

static double not_grown_into(double pressure_pa, void *context)
{
    struct shut_in *shut = context;
    const struct circuit *circuit = &shut->network->circuits[shut->circuit];
    for (int i = 0; i < circuit->vertex_count; i++)
        shut->room->pressures[circuit->vertices[i]] = (struct pressure){pressure_pa};
    struct volume by_cause[CAUSE_COUNT];
    travel_volumes(shut->system, shut->network, shut->circuit, shut->room->pressures, &shut->state,
                   by_cause);
    double taken = 0;
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        taken += by_cause[cause].m3;
    return taken - shut->grown_m3;
}

struct pressure blocked_port_pressure(const struct system *system, const struct network *network,
                                      int circuit, double warmer, struct solution *room)
{
    const struct circuit *shut_in = &network->circuits[circuit];
    int fluid = system_fluid_of(system, shut_in->master);
    const struct fluid_row *row = fluid < 0 ? NULL : fluid_row(system->parts[fluid].as.fluid.grade);
    if (row == NULL || shut_in->clutch || !(warmer >= 0))
        return (struct pressure){NAN};
    double grown = travel_fluid(system, network, circuit).m3 * row->expansion * warmer;
    struct shut_in shut = {system, network, circuit, state_usual(), grown, room};
    struct root root = root_between(not_grown_into, &shut, 0, MOST_PRESSURE, PRESSURE_TOLERANCE);
    return (struct pressure){root.bracketed && root.converged ? root.fits : NAN};
}
