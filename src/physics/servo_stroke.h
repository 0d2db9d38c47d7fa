#ifndef FIRMPEDAL_PHYSICS_SERVO_STROKE_H
#define FIRMPEDAL_PHYSICS_SERVO_STROKE_H

#include "physics/solution.h"

/* How far the diaphragm of a servo goes in a solved state, m; NaN where it is not known.
 *
 *   servo   part index: direct, it goes as far as the pistons of the master that it works and the
 *           gap before them; remote, as far as its own piston sweeps what the lines behind it take
 *
 * Source: geometry; conservation of volume behind a remote servo's piston. */
struct length servo_stroke_in(const struct system *system, const struct network *network,
                              const struct solution *solved, int servo);

#endif
