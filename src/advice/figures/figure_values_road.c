#include <math.h>

#include "advice/figures/figure_values.h"
#include "physics/side_pull.h"

/* Getters of what happens between tyres and road. */

/* Of the wheels that lock first; of_this picks the row that names them. */
#define LOCKS(name, of)                                                                            \
    GETS(value_##name##_locks_at, situation->lock[ROAD_DRY][of].at.m_s2)                           \
    GETS(value_##name##_locks_effort, situation->lock[ROAD_DRY][of].effort.n)                      \
    GETS(value_##name##_locks_at_wet, situation->lock[ROAD_WET][of].at.m_s2)                       \
    GETS(value_##name##_locks_effort_wet, situation->lock[ROAD_WET][of].effort.n)

LOCKS(front, GRIP_FRONT)
LOCKS(rear, GRIP_REAR)
GETS(value_front_load_at_lock, situation->lock[ROAD_DRY][GRIP_FRONT].loads.front.n)
GETS(value_rear_load_at_lock, situation->lock[ROAD_DRY][GRIP_REAR].loads.rear.n)
GETS(value_rear_lifts_at, vehicle_lifts_at(system_vehicle(situation->system)).m_s2)
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

/* What the axle that does not lock keeps of the grip; below 0 where that is the front. */
static double rear_margin(const struct first_lock *lock)
{
    return lock->axle == AXLE_NONE ? NAN : lock->front - lock->rear;
}

GETS(value_rear_lock_margin, rear_margin(&situation->lock[ROAD_DRY][GRIP_FRONT]))
GETS(value_rear_lock_margin_wet, rear_margin(&situation->lock[ROAD_WET][GRIP_FRONT]))

/* The steady rate of a stop: what the brakes give, up to the rate at which the first wheel locks;
 * who has a pedal or lever for each axle lets each off by itself. */
static struct acceleration steady(const struct situation *situation, enum road road)
{
    const struct vehicle *vehicle = system_vehicle(situation->system);
    const struct first_lock *lock = situation->lock[road];
    double brakes = situation->usual->deceleration.m_s2;
    if (isnan(brakes) || !lock[GRIP_FRONT].known || !lock[GRIP_REAR].known)
        return (struct acceleration){NAN};
    if (situation->pedals.apart) {
        struct wheel_forces wheels = wheel_forces_of(situation->system, situation->usual);
        return grip_takes(vehicle, &wheels,
                          road == ROAD_WET ? vehicle->wet_grip : vehicle->tyre_grip);
    }
    double road_gives = lock->lifts               ? vehicle_lifts_at(vehicle).m_s2
                        : lock->axle != AXLE_NONE ? lock->at.m_s2
                                                  : INFINITY;
    return (struct acceleration){fmin(brakes, road_gives)};
}

static double stopping_distance(const struct situation *situation, enum road road)
{
    const struct vehicle *vehicle = system_vehicle(situation->system);
    return vehicle_stopping_distance(vehicle->stop_from, steady(situation, road), vehicle->reaction,
                                     vehicle->build_up)
        .m;
}

GETS(value_stopping_distance, stopping_distance(situation, ROAD_DRY))
GETS(value_stopping_distance_wet, stopping_distance(situation, ROAD_WET))

/* No more than the road takes: one wheel of each axle has half of what it carries. */
FIGURE_GETTER(value_deceleration_circuit_lost)
{
    (void)sub;
    const struct vehicle *vehicle = system_vehicle(situation->system);
    struct wheel_forces wheels = wheel_forces_of(situation->system, situation->lost[subject]);
    return grip_takes(vehicle, &wheels, vehicle->tyre_grip).m_s2;
}

/* The axle that a pedal of its own brakes. */
static int axle_of(const struct situation *situation, int pedal)
{
    return pedal == situation->pedals.front ? GRIP_FRONT : GRIP_REAR;
}

GETS(value_deceleration_by_it, situation->alone[axle_of(situation, subject)]->deceleration.m_s2)
GETS(value_its_lock_at, situation->lock[ROAD_DRY][axle_of(situation, subject)].at.m_s2)
GETS(value_its_lock_effort, situation->lock[ROAD_DRY][axle_of(situation, subject)].effort.n)
GETS(value_its_lock_at_wet, situation->lock[ROAD_WET][axle_of(situation, subject)].at.m_s2)
GETS(value_its_lock_effort_wet, situation->lock[ROAD_WET][axle_of(situation, subject)].effort.n)

FIGURE_GETTER(value_its_load_at_lock)
{
    (void)sub;
    int axle = axle_of(situation, subject);
    const struct axle_loads *loads = &situation->lock[ROAD_DRY][axle].loads;
    return axle == GRIP_FRONT ? loads->front.n : loads->rear.n;
}

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

static bool has_axle(const struct situation *situation, enum axle axle)
{
    return has_brake(situation, axle, SIDE_NONE);
}

FIGURE_TEST(of_brakes)
{
    (void)subject, (void)sub;
    return situation->usual->brake_count > 0;
}

FIGURE_TEST(of_two_axles)
{
    (void)subject, (void)sub;
    return has_axle(situation, AXLE_FRONT) && has_axle(situation, AXLE_REAR);
}

/* Both axles braked together: who brakes them apart has no order of locking. */
FIGURE_TEST(of_axles_together)
{
    return of_two_axles(situation, subject, sub) && !situation->pedals.apart;
}

FIGURE_TEST(of_axles_apart)
{
    (void)sub;
    return situation->pedals.apart &&
           (subject == situation->pedals.front || subject == situation->pedals.rear);
}

FIGURE_TEST(of_motorcycle)
{
    (void)subject, (void)sub;
    return !is_car(situation);
}

/* Whether the wheels of this axle lock first. Where nobody can tell, one row says why. */
static bool locks_here(const struct situation *situation, enum road road, int axle)
{
    enum axle here = axle == GRIP_FRONT ? AXLE_FRONT : AXLE_REAR;
    enum axle first = situation->lock[road][axle].axle;
    if (situation->pedals.apart || first != AXLE_NONE)
        return !situation->pedals.apart && first == here;
    return has_axle(situation, here) && (axle == GRIP_FRONT || !has_axle(situation, AXLE_FRONT));
}

FIGURE_TEST(of_front_lock)
{
    (void)subject, (void)sub;
    return locks_here(situation, ROAD_DRY, GRIP_FRONT);
}

FIGURE_TEST(of_rear_lock)
{
    (void)subject, (void)sub;
    return locks_here(situation, ROAD_DRY, GRIP_REAR);
}

FIGURE_TEST(of_front_lock_wet)
{
    (void)subject, (void)sub;
    return locks_here(situation, ROAD_WET, GRIP_FRONT);
}

FIGURE_TEST(of_rear_lock_wet)
{
    (void)subject, (void)sub;
    return locks_here(situation, ROAD_WET, GRIP_REAR);
}

static const char *no_lock(const struct first_lock *lock)
{
    if (!lock->known)
        return NULL;
    return lock->lifts ? "the rear wheels leave the road before"
                       : "no effort up to 2000 N locks a wheel at the grip of the road";
}

FIGURE_REASON(refuses_front_lock)
{
    (void)subject, (void)sub;
    return no_lock(&situation->lock[ROAD_DRY][GRIP_FRONT]);
}

FIGURE_REASON(refuses_rear_lock)
{
    (void)subject, (void)sub;
    return no_lock(&situation->lock[ROAD_DRY][GRIP_REAR]);
}

FIGURE_REASON(refuses_its_lock)
{
    (void)sub;
    return no_lock(&situation->lock[ROAD_DRY][axle_of(situation, subject)]);
}

FIGURE_REASON(refuses_its_lock_wet)
{
    (void)sub;
    return no_lock(&situation->lock[ROAD_WET][axle_of(situation, subject)]);
}

FIGURE_REASON(refuses_front_lock_wet)
{
    (void)subject, (void)sub;
    return no_lock(&situation->lock[ROAD_WET][GRIP_FRONT]);
}

FIGURE_REASON(refuses_rear_lock_wet)
{
    (void)subject, (void)sub;
    return no_lock(&situation->lock[ROAD_WET][GRIP_REAR]);
}

FIGURE_REASON(refuses_grip_use)
{
    (void)subject, (void)sub;
    if (isnan(situation->usual->deceleration.m_s2))
        return NULL;
    return isnan(situation->half_g.n) ? "no effort up to 2000 N gives such a stop" : NULL;
}
