#ifndef FIRMPEDAL_PHYSICS_ROOT_H
#define FIRMPEDAL_PHYSICS_ROOT_H

#include <stdbool.h>

/* How far something is over a limit at x: below 0 it fits, above 0 it does not. Rises with x, may
 * jump. */
typedef double (*excess_at)(double x, void *context);

struct root {
    double fits;    /* the greatest x found at which the excess is not above 0 */
    double fails;   /* the least x found at which it is */
    bool bracketed; /* it fits at the low end and not at the high one; otherwise fits is NaN */
    bool converged; /* fails - fits is within the tolerance */
    int steps;
};

/* Finds where a rising excess crosses 0 between two ends.
 *
 *   tolerance  greatest distance between fits and fails, in the unit of x, > 0
 *   gives      both sides of the crossing; at most 200 calls of the function
 *
 * Chords between the ends, the held end's value halved each time it is held again, and a halving
 * of the bracket after every three chords, so that a jump is found as surely as a root.
 * Source: the Illinois rule, M. Dowell and P. Jarratt, BIT 11 (1971) 168-174 (from memory), and
 * plain bisection.
 * Checked by tests/physics/test_root.c */
struct root root_between(excess_at excess, void *context, double low, double high,
                         double tolerance);

#endif
