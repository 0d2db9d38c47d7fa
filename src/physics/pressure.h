#ifndef FIRMPEDAL_PHYSICS_PRESSURE_H
#define FIRMPEDAL_PHYSICS_PRESSURE_H

#include "physics/solution.h"

/* Which pedal works a master, directly or through a direct servo; -1 when none says so. */
int pressure_pedal_of(const struct system *system, int master);
/* The direct servo in front of a master, -1. */
int pressure_servo_of(const struct system *system, int master);
/* Push rod force of a master for a pedal effort: lever, balance bar, servo. */
struct force pressure_rod_force(const struct system *system, int master, struct force effort,
                                bool assisted);
/* Fills the pressures of all vertices of a circuit from that of its source, through valves and
 * remote servos on the way. */
void pressure_spread(const struct system *system, const struct network *network, int circuit,
                     struct pressure source, bool assisted, struct pressure *by_vertex);

#endif
