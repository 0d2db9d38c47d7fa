#include <math.h>

#include "advice/figure_values.h"
#include "physics/side_pull.h"
#include "units/constants.h"

/* Getters of what happens between tyres and road. */

GETS(value_front_locks_at, situation->lock.front_at.m_s2)
GETS(value_rear_locks_at, situation->lock.rear_at.m_s2)
GETS(value_front_locks_effort, situation->lock.front_effort.n)
GETS(value_rear_locks_effort, situation->lock.rear_effort.n)
GETS(value_front_locks_at_wet, situation->lock_wet.front_at.m_s2)
GETS(value_rear_locks_at_wet, situation->lock_wet.rear_at.m_s2)
GETS(value_front_locks_effort_wet, situation->lock_wet.front_effort.n)
GETS(value_rear_locks_effort_wet, situation->lock_wet.rear_effort.n)
GETS(value_grip_used_front, situation->grip_use.front)
GETS(value_grip_used_rear, situation->grip_use.rear)
GETS(value_grip_efficiency, situation->grip_use.efficiency)
GETS(value_side_difference_front,
     balance_side_difference(situation->system, situation->usual, AXLE_FRONT).of_1)
GETS(value_side_difference_rear,
     balance_side_difference(situation->system, situation->usual, AXLE_REAR).of_1)

static struct side_pull seized(const struct situation *situation, enum axle axle)
{
    return side_pull_seized(situation->system, situation->usual, axle);
}

GETS(value_pull_seized_front, seized(situation, AXLE_FRONT).difference.of_1)
GETS(value_pull_seized_rear, seized(situation, AXLE_REAR).difference.of_1)
GETS(value_yaw_seized_front, seized(situation, AXLE_FRONT).yaw.nm)
GETS(value_yaw_seized_rear, seized(situation, AXLE_REAR).yaw.nm)

static double pull_by_friction(const struct situation *situation, enum axle axle)
{
    return side_pull_friction(situation->system, situation->usual, axle).difference.of_1;
}

GETS(value_pull_friction_front, pull_by_friction(situation, AXLE_FRONT))
GETS(value_pull_friction_rear, pull_by_friction(situation, AXLE_REAR))

FIGURE_GETTER(value_rear_lock_margin)
{
    (void)subject, (void)sub;
    double front = situation->lock.front_at.m_s2;
    return front > 0 ? situation->lock.rear_at.m_s2 / front - 1 : NAN;
}

static double stopping_distance(const struct situation *situation, struct number grip)
{
    const struct vehicle *vehicle = system_vehicle(situation->system);
    double brakes = situation->usual->deceleration.m_s2;
    double road = (grip.value + vehicle->rolling.value) * STANDARD_GRAVITY;
    if (isnan(brakes) || isnan(road))
        return NAN;
    struct acceleration steady = {fmin(brakes, road)};
    return vehicle_stopping_distance(vehicle->stop_from, steady, vehicle->reaction,
                                     vehicle->build_up)
        .m;
}

GETS(value_stopping_distance,
     stopping_distance(situation, system_vehicle(situation->system)->tyre_grip))
GETS(value_stopping_distance_wet,
     stopping_distance(situation, system_vehicle(situation->system)->wet_grip))

static bool has_brake(const struct situation *situation, enum axle axle, enum side side)
{
    for (int i = 0; i < situation->system->part_count; i++) {
        const struct part *part = &situation->system->parts[i];
        if (kind_is_brake(part->kind) && part->axle == axle &&
            (side == SIDE_NONE || part->side == side))
            return true;
    }
    return false;
}

FIGURE_TEST(of_front_sides)
{
    (void)subject, (void)sub;
    return has_brake(situation, AXLE_FRONT, SIDE_LEFT) &&
           has_brake(situation, AXLE_FRONT, SIDE_RIGHT);
}

FIGURE_TEST(of_rear_sides)
{
    (void)subject, (void)sub;
    return has_brake(situation, AXLE_REAR, SIDE_LEFT) &&
           has_brake(situation, AXLE_REAR, SIDE_RIGHT);
}

/* The two discs of a motorcycle's wheel pull at one wheel. */
static bool is_car(const struct situation *situation)
{
    return system_vehicle(situation->system)->type != VEHICLE_MOTORCYCLE;
}

FIGURE_TEST(of_front_pair)
{
    return is_car(situation) && of_front_sides(situation, subject, sub);
}

FIGURE_TEST(of_rear_pair)
{
    return is_car(situation) && of_rear_sides(situation, subject, sub);
}

FIGURE_TEST(of_two_axles)
{
    (void)subject, (void)sub;
    return has_brake(situation, AXLE_FRONT, SIDE_NONE) &&
           has_brake(situation, AXLE_REAR, SIDE_NONE);
}

static const char never_locks[] = "no effort up to 2000 N locks this axle at the grip of the road";

FIGURE_REASON(refuses_front_lock)
{
    (void)subject, (void)sub;
    return situation->lock.known ? never_locks : NULL;
}

FIGURE_REASON(refuses_rear_lock)
{
    (void)subject, (void)sub;
    return situation->lock.known ? never_locks : NULL;
}

FIGURE_REASON(refuses_lock_wet)
{
    (void)subject, (void)sub;
    return situation->lock_wet.known ? never_locks : NULL;
}

FIGURE_REASON(refuses_lock_margin)
{
    (void)subject, (void)sub;
    return situation->lock.known ? "no effort up to 2000 N locks both axles" : NULL;
}

FIGURE_REASON(refuses_grip_use)
{
    (void)subject, (void)sub;
    if (isnan(situation->usual->deceleration.m_s2))
        return NULL;
    return isnan(situation->half_g.n) ? "no effort up to 2000 N gives such a stop" : NULL;
}
