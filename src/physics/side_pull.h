#ifndef FIRMPEDAL_PHYSICS_SIDE_PULL_H
#define FIRMPEDAL_PHYSICS_SIDE_PULL_H

#include "physics/solution.h"

/* What pulls a car to a side. */
struct side_pull {
    struct share difference; /* 1 - weaker / stronger brake force of the axle */
    struct torque yaw;       /* turns the car: difference of the forces times half the track, N m */
};

/* Part of a brake's force that is left when one of its pistons (the largest of a caliper), or one
 * of its wheel cylinders, does nothing.
 *
 *   caliper   1 - area of that piston / area of all: a stiff disc rests on nothing opposite, so the
 *             other pad alone rubs; a disc that bends to the seized pad leaves more, so this is the
 *             least. A sliding caliper has all on one side
 *   drum      one tip is still pushed, and the worse one counts; nothing where one piston slides
 *             against its own body
 *   shoes     factors of a drum's shoes going forward; not looked at for a caliper
 *   gives     0 to 1; NaN where it is not known
 *
 * Source: force balance. Checked by: tests/physics/test_side_pull.c */
double side_pull_left(const struct part *brake, const struct shoe_factors *shoes);

/* One piston or wheel cylinder of an axle seized, the one that pulls most, all else as solved.
 *
 *   solution   of the state looked at
 *   gives      difference and yaw; NaN when not known, or when the axle has no brakes on two sides
 *
 * The forces are those with grip enough; a seized piston is taken as doing nothing, not as
 * dragging. Checked by: tests/physics/test_side_pull.c */
struct side_pull side_pull_seized(const struct system *system, const struct solution *solution,
                                  enum axle axle);

/* Linings of one side at the most of their friction, of the other at the least, the way round that
 * pulls more.
 *
 *   solution   of the state looked at; each brake's friction is moved by its friction spread
 *   gives      difference and yaw; NaN when not known, when the axle has no brakes on two sides,
 * and where a shoe comes too near to locking by itself
 *
 * A disc follows its friction in proportion, a drum by its factor: the more it helps itself the
 * more it makes of a difference. Source: each brake's own law. Checked by:
 * tests/physics/test_side_pull.c */
struct side_pull side_pull_friction(const struct system *system, const struct solution *solution,
                                    enum axle axle);

#endif
