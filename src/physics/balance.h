#ifndef FIRMPEDAL_PHYSICS_BALANCE_H
#define FIRMPEDAL_PHYSICS_BALANCE_H

#include "physics/solution.h"

/* Which axle would lock first at the grip of the road, and at which deceleration. */
struct lock_order {
    struct acceleration front_at, rear_at; /* deceleration at which that axle would lock */
    bool rear_first;
    bool known;
};
struct lock_order balance_lock_order(const struct system *system, const struct solution *solution,
                                     double grip);
/* Side difference of an axle: 1 - weaker / stronger brake force. NaN when not known. */
struct share balance_side_difference(const struct system *system, const struct solution *solution,
                                     enum axle axle);
/* Slope (tangent) that the hand brake holds, facing up; NaN when not known. */
double balance_hand_brake_slope(const struct system *system, int parking);

#endif
