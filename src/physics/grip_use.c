#include "physics/grip_use.h"

#include <math.h>

#include "units/constants.h"

struct grip_use grip_use(const struct vehicle *vehicle, struct force front, struct force rear)
{
    struct grip_use use = {NAN, NAN, NAN, NAN};
    if (!(front.n >= 0) || !(rear.n >= 0) || !(vehicle->rolling.value >= 0) ||
        !(vehicle->mass.kg > 0))
        return use;
    double weight = vehicle->mass.kg * STANDARD_GRAVITY;
    use.z = (front.n + rear.n) / weight + vehicle->rolling.value;
    struct axle_loads loads = vehicle_axle_loads(vehicle, use.z);
    use.front = front.n / loads.front.n;
    use.rear = loads.rear.n > 0 ? rear.n / loads.rear.n : isnan(loads.rear.n) ? NAN : INFINITY;
    double most = fmax(use.front, use.rear);
    use.efficiency = most > 0 ? use.z / most : NAN;
    return use;
}

void grip_use_curve(const struct vehicle *vehicle, const struct force *front,
                    const struct force *rear, size_t count, struct grip_use *into)
{
    for (size_t i = 0; i < count; i++)
        into[i] = grip_use(vehicle, front[i], rear[i]);
}

struct grip_use grip_use_at(const struct system *system, const struct network *network,
                            const struct state *state, double z, struct solution *room)
{
    struct state pressed = *state;
    struct acceleration wanted = {z * STANDARD_GRAVITY};
    pressed.effort = solve_effort_by_force(system, network, state, wanted, room);
    if (isnan(pressed.effort.n))
        return (struct grip_use){NAN, NAN, NAN, NAN};
    solve_forces(system, network, &pressed, room);
    return grip_use(system_vehicle(system), room->front, room->rear);
}
