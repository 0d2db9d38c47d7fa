#include "physics/grip_use.h"

#include <math.h>

#include "physics/root.h"
#include "units/constants.h"

static const struct grip_use unknown = {NAN, NAN, NAN, NAN};

struct wheel_forces wheel_forces_of(const struct system *system, const struct solution *solution)
{
    struct wheel_forces wheels = {{{{0}, {0}}, {{0}, {0}}}};
    bool one_track = system_vehicle(system)->type == VEHICLE_MOTORCYCLE;
    for (int b = 0; b < solution->brake_count; b++) {
        int i = solution->brakes_at[b];
        const struct part *part = &system->parts[i];
        struct force *axle = wheels.at[part->axle == AXLE_FRONT ? GRIP_FRONT : GRIP_REAR];
        double left = one_track || part->side == SIDE_NONE ? 0.5 : part->side == SIDE_LEFT ? 1 : 0;
        axle[0].n += left * solution->brakes[i].force.n;
        axle[1].n += (1 - left) * solution->brakes[i].force.n;
    }
    return wheels;
}

static double sum_of(const struct wheel_forces *wheels)
{
    double sum = 0;
    for (int axle = 0; axle < GRIP_AXLES; axle++)
        for (int side = 0; side < 2; side++) {
            if (!(wheels->at[axle][side].n >= 0))
                return NAN;
            sum += wheels->at[axle][side].n;
        }
    return sum;
}

static double wheel_load(struct axle_loads loads, int axle)
{
    return (axle == GRIP_FRONT ? loads.front.n : loads.rear.n) / 2;
}

/* What the road must hold of a wheel that turns. */
static double at_road(const struct vehicle *vehicle, struct force brake, double load, double z)
{
    double turning = vehicle->rotating.of_1 * z * vehicle->mass.kg * STANDARD_GRAVITY / 4;
    return brake.n + vehicle->rolling.value * load - turning;
}

static double asked_of(const struct vehicle *vehicle, const struct force *brakes, double load,
                       double z)
{
    struct force most = {fmax(brakes[0].n, brakes[1].n)};
    if (load > 0 || isnan(load))
        return at_road(vehicle, most, load, z) / load;
    return most.n > 0 ? INFINITY : 0;
}

struct grip_use grip_use_of_wheels(const struct vehicle *vehicle, const struct wheel_forces *wheels)
{
    struct grip_use use = unknown;
    double sum = sum_of(wheels);
    if (isnan(sum) || !(vehicle->rolling.value >= 0) || !(vehicle->rotating.of_1 >= 0) ||
        !(vehicle->mass.kg > 0))
        return use;
    double weight = vehicle->mass.kg * STANDARD_GRAVITY;
    use.z = (sum / weight + vehicle->rolling.value) / (1 + vehicle->rotating.of_1);
    struct axle_loads loads = vehicle_axle_loads(vehicle, use.z);
    use.front = asked_of(vehicle, wheels->at[GRIP_FRONT], wheel_load(loads, GRIP_FRONT), use.z);
    use.rear = asked_of(vehicle, wheels->at[GRIP_REAR], wheel_load(loads, GRIP_REAR), use.z);
    double most = fmax(use.front, use.rear);
    use.efficiency = most > 0 ? use.z / most : NAN;
    return use;
}

struct grip_use grip_use(const struct vehicle *vehicle, struct force front, struct force rear)
{
    const struct wheel_forces wheels = {
        {{{front.n / 2}, {front.n / 2}}, {{rear.n / 2}, {rear.n / 2}}}};
    return grip_use_of_wheels(vehicle, &wheels);
}

void grip_use_curve(const struct vehicle *vehicle, const struct force *front,
                    const struct force *rear, size_t count, struct grip_use *into)
{
    for (size_t i = 0; i < count; i++)
        into[i] = grip_use(vehicle, front[i], rear[i]);
}

struct sliding {
    const struct vehicle *vehicle;
    const struct wheel_forces *wheels;
    double grip;
};

/* How far a braking rate is above what the road gives at it, over the weight. */
static double rate_excess(double z, void *context)
{
    const struct sliding *sliding = context;
    struct axle_loads loads = vehicle_axle_loads(sliding->vehicle, z);
    double road = 0;
    for (int axle = 0; axle < GRIP_AXLES; axle++)
        for (int side = 0; side < 2; side++) {
            double load = wheel_load(loads, axle);
            double turns = at_road(sliding->vehicle, sliding->wheels->at[axle][side], load, z);
            road += fmin(turns, sliding->grip * load);
        }
    return z - road / (sliding->vehicle->mass.kg * STANDARD_GRAVITY);
}

struct acceleration grip_takes(const struct vehicle *vehicle, const struct wheel_forces *wheels,
                               struct number grip)
{
    struct sliding sliding = {vehicle, wheels, grip.value};
    struct grip_use free = grip_use_of_wheels(vehicle, wheels);
    if (isnan(free.front) || isnan(free.rear) || !(grip.value > 0))
        return (struct acceleration){NAN};
    double lifts = vehicle_lifts_at(vehicle).m_s2 / STANDARD_GRAVITY, most = fmin(free.z, lifts);
    if (!(rate_excess(most, &sliding) > 0))
        return (struct acceleration){most * STANDARD_GRAVITY};
    struct root root = root_between(rate_excess, &sliding, 0, most, 1e-13 * most);
    return (struct acceleration){root.bracketed ? root.fits * STANDARD_GRAVITY : 0};
}

struct grip_use grip_use_at(const struct system *system, const struct network *network,
                            const struct state *state, double z, struct solution *room)
{
    struct state pressed = *state;
    struct acceleration wanted = {z * STANDARD_GRAVITY};
    pressed.effort = solve_effort_by_force(system, network, state, wanted, room);
    if (isnan(pressed.effort.n))
        return unknown;
    solve_forces(system, network, &pressed, room);
    struct wheel_forces wheels = wheel_forces_of(system, room);
    return grip_use_of_wheels(system_vehicle(system), &wheels);
}
