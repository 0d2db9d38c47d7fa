#ifndef FIRMPEDAL_PHYSICS_PRESSURE_H
#define FIRMPEDAL_PHYSICS_PRESSURE_H

#include "physics/solution.h"

/* The master that the nth entry of a pedal's "works" reaches, through a direct servo or not; -1
 * when there is none. */
int pressure_worked_master(const struct system *system, int pedal, size_t place);
/* Which pedal works a master, directly or through a direct servo; -1 when none says so. */
int pressure_pedal_of(const struct system *system, int master);
/* The direct servo in front of a master, -1. */
int pressure_servo_of(const struct system *system, int master);
/* Push rod force of a master for a pedal effort: lever, balance bar, servo.
 *
 *   effort    at the pad, N, >= 0
 *   assisted  the servo has vacuum
 *   gives     force on the master's piston, N; NaN without a pedal, where a balance bar is not
 *             measured, and where more than two masters hang on one bar
 *
 * The bar is nearly square to its rods. Source: moment balance about the bar's pivot.
 * Checked by tests/physics/test_pressure.c */
struct force pressure_rod_force(const struct system *system, int master, struct force effort,
                                bool assisted);
/* Fills the pressures of all vertices of a circuit from that of its source, through valves and
 * remote servos on the way.
 *
 *   source     at the master's outlet, Pa gauge, >= 0
 *   by_vertex  as many as the network has vertices; only those of the circuit are written
 *
 * Fluid at rest: pressure is the same all along pipes, hoses and joints (Pascal), heights left out.
 * NaN beyond a valve that lacks its figures and beyond one that is fed through its outlet.
 * Checked by tests/physics/test_pressure.c */
void pressure_spread(const struct system *system, const struct network *network, int circuit,
                     struct pressure source, bool assisted, struct pressure *by_vertex);

/* The same for a vertex and all beyond it, from the pressure there. */
void pressure_spread_beyond(const struct system *system, const struct network *network, int from,
                            struct pressure there, bool assisted, struct pressure *by_vertex);

/* Pressures of a circuit while the pedal comes up.
 *
 *   peak       by vertex, what pressure_spread left at the greatest effort
 *   source     at the master's outlet now, Pa gauge, 0 to its peak
 *   by_vertex  as for pressure_spread; not the same memory as peak
 *
 * Valves go by their law of falling pressure, each with the peak before it; servos as when rising.
 * Checked by tests/physics/test_pressure.c */
void pressure_spread_falling(const struct system *system, const struct network *network,
                             int circuit, const struct pressure *peak, struct pressure source,
                             bool assisted, struct pressure *by_vertex);

#endif
