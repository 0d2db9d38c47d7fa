#include "advice/rules/rule_stop.h"

#include <math.h>

struct acceleration rule_stop_at(const struct system *system, const struct network *network,
                                 double effort, bool assisted, int lost, struct solution *room)
{
    const struct vehicle *vehicle = system_vehicle(system);
    struct state state = state_usual();
    state.effort.n = effort;
    state.assisted = assisted;
    state.lost_circuit = lost;
    solve(system, network, &state, room);
    struct wheel_forces wheels = wheel_forces_of(system, room);
    struct grip_use use = grip_use_of_wheels(vehicle, &wheels);
    struct acceleration brakes = room->deceleration;
    if (isnan(use.front) || isnan(use.rear))
        return (struct acceleration){NAN};
    if (use.front <= vehicle->tyre_grip.value && use.rear <= vehicle->tyre_grip.value)
        return brakes;
    struct first_lock lock = balance_first_lock(system, network, &state, vehicle->tyre_grip, room);
    return lock.lifts ? vehicle_lifts_at(vehicle) : lock.at;
}

struct acceleration rule_stop(const struct system *system, const struct network *network,
                              bool assisted, int lost, struct arena *arena)
{
    struct solution *room = solution_room(system, network, arena);
    return rule_stop_at(system, network, RULE_EFFORT, assisted, lost, room);
}
