#include "plain_car.h"

#include <math.h>

#include "physics/balance.h"
#include "physics/pressure.h"

static double least(double a, double b)
{
    return b < a || isnan(b) ? b : a;
}

static double lost_left(const struct system *system, const struct network *network,
                        struct state state, struct solution *room)
{
    double left = INFINITY;
    for (int c = 0; c < network->circuit_count; c++) {
        int pedal = pressure_pedal_of(system, network->circuits[c].master), circuits = 0;
        for (int other = 0; other < network->circuit_count; other++)
            circuits += pressure_pedal_of(system, network->circuits[other].master) == pedal;
        if (network->circuits[c].clutch || pedal < 0 || circuits < 2)
            continue;
        state.lost_circuit = c;
        solve(system, network, &state, room);
        left = least(left, room->pedals[pedal].left.m);
    }
    return left;
}

struct column_car plain_car(const struct system *system, const struct network *network,
                            struct force effort, struct acceleration stop, struct solution *room)
{
    struct column_car car = {.left = INFINITY, .at_most = NAN};
    struct state state = state_usual();
    state.no_clutch = true;
    struct force foot = solve_effort_by_force(system, network, &state, stop, room);
    struct number grip = system_vehicle(system)->tyre_grip;
    struct first_lock lock = balance_first_lock(system, network, &state, grip, room);
    state.effort = effort;
    solve(system, network, &state, room);
    for (int p = 0; p < room->brake_pedal_count; p++)
        car.left = least(car.left, room->pedals[room->brake_pedals[p]].left.m);
    car.lost = lost_left(system, network, state, room);
    car.foot = isnan(foot.n) ? INFINITY : foot.n;
    car.balance = lock.axle == AXLE_NONE ? INFINITY : lock.front - lock.rear;
    return car;
}
