#ifndef FIRMPEDAL_PHYSICS_TRAVEL_H
#define FIRMPEDAL_PHYSICS_TRAVEL_H

#include "physics/solution.h"

/* Volume that a circuit takes at the given pressures, by cause. Beyond a remote servo the volume is
 * that of its piston, so it counts once. clutch: the slave's own travel is not part of it. */
void travel_volumes(const struct system *system, const struct network *network, int circuit,
                    const struct pressure *by_vertex, bool slack,
                    struct volume by_cause[CAUSE_COUNT]);

#endif
