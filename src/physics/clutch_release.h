#ifndef FIRMPEDAL_PHYSICS_CLUTCH_RELEASE_H
#define FIRMPEDAL_PHYSICS_CLUTCH_RELEASE_H

#include "physics/solution.h"

/* A clutch slave with its pedal at full travel and the pressure that its release load asks for.
 *
 *   slave   part index of a slave
 *   gives   the clutch's state; unknown values NaN, pedal and master -1 when nothing feeds it
 *
 *   pressure   = release force / (fork ratio * slave area)
 *   effort     = pressure * master area / (ratio * efficiencies of pedal and master), through a
 *                servo where one stands between; both at the peak and at the end of the travel
 *   touch      = free play + ratio * (gap + cut-off + slave area * fork ratio * play / master area)
 *   piston     = (pedal travel - free play - effort at the end/stiffness) / ratio - gap, at most
 *                its stroke
 *   delivered  = master area * (piston - cut-off), never below 0
 *   lost       = hoses, fluid, pipes and air at the pressure of full travel
 *   slave travel = (delivered - lost) / slave area, never below 0
 *
 * Also fills the pressures, volumes and stroke of the circuit. One slave to a circuit: several
 * would share what is delivered, which is not modelled. With a servo the effort is found by a
 * bounded bisection between 0 and 2000 N.
 * Source: force balance and conservation of volume.
 * Checked by tests/physics/test_clutch_release.c */
struct clutch_state clutch_release(const struct system *system, const struct network *network,
                                   int slave, struct solution *into);

#endif
