#ifndef FIRMPEDAL_PHYSICS_PURGE_BREATH_H
#define FIRMPEDAL_PHYSICS_PURGE_BREATH_H

#include <stdbool.h>

#include "parts/flow.h"

/* One stroke with a nipple open, as a lumped circuit: pipes that resist, one behind the other, with
 * air hanging at the far end of each, and the nipple's passage at the end.
 *
 *     in -> resistance 0 -+- resistance 1 -+- ... -+- out -> open air
 *                       air 0            air 1    air n-1
 *
 * Air at gauge pressure p takes up W = V p/(p + one atmosphere) (Boyle); what it takes up is
 * missing from the flow beyond: q_k = q_(k-1) - dW_k/dt; each pipe costs p_(k-1) - p_k = R_k
 * q_(k-1). */
struct breath_node {
    double resistance; /* of the pipe before it, Pa s/m3, >= 0 */
    double air;        /* at one atmosphere, m3, >= 0 */
    double taken_up;   /* m3, at the end of the stroke; written by purge_breathe */
    double from, base; /* of purge_breathe: at the start of a step, before a stage's own part */
};

struct breath {
    double taken_up; /* by all air, at the end of the stroke, m3 */
    double out;      /* that came out at the nipple, m3 */
    double pressure; /* at the first node, at the end of the stroke, Pa */
    bool converged;
};

/*   nodes    one or more, the master's end first
 *   out      resistance of the nipple's passage
 *   stroke   m3 that goes in at an even rate, > 0
 *   time     s, > 0
 *   steps    of time; 8 are within 1 % (tests/cross)
 *
 * Two implicit stages a step, stiffly accurate, second order, each one root in the outflow.
 * Source: R. Alexander, SIAM J. Numer. Anal. 14 (1977) 1006 (from memory), for the stages.
 * Checked by: tests/physics/test_purge_breath.c and, against another solver,
 * tests/cross/one_stroke.m */
struct breath purge_breathe(struct breath_node *nodes, int count, struct resistance out,
                            double stroke, double time, int steps);

#endif
