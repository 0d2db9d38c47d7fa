#ifndef FIRMPEDAL_PHYSICS_BLOCKED_PORT_H
#define FIRMPEDAL_PHYSICS_BLOCKED_PORT_H

#include "physics/solution.h"

/* How much the fluid of a circuit is taken to warm on the road, K. Common practice, no source: the
 * whole circuit, brakes used but not hard. */
#define BLOCKED_PORT_RISE 30.0

/* Pressure that comes up with no foot on the pedal when the master's port stays shut and the fluid
 * behind it warms: a push rod with no gap, a swollen cup, a plugged port.
 *
 *   circuit  a brake circuit
 *   warmer   by how much all of its fluid warms, K, >= 0
 *   room     for pressures along the way
 *   gives    the pressure p, Pa gauge, at which the circuit takes as much as the fluid grew:
 *            sum of volumes by cause at p = V beta warmer. NaN where a volume is not known, for a
 *            clutch, or where that takes more than 100 MPa
 *
 * One pressure in the whole circuit, brakes and adjusters as described, the fluid's modulus that of
 * its described temperature. Up to the threshold of the brakes the growth only closes their
 * clearances. Left out: pipes, cylinders and calipers grow as well, which takes up about a
 * twentieth of the fluid's growth; what the cup lets by.
 * Source: conservation of volume; the expansion in parts/fluid.c, from memory.
 * Checked by: tests/reference/constructed_whole_car.c, tests/physics/test_blocked_port.c
 */
struct pressure blocked_port_pressure(const struct system *system, const struct network *network,
                                      int circuit, double warmer, struct solution *room);

#endif
