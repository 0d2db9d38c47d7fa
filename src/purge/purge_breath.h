#ifndef FIRMPEDAL_PURGE_PURGE_BREATH_H
#define FIRMPEDAL_PURGE_PURGE_BREATH_H

#include <stdbool.h>

#include "parts/flow.h"

/* One stroke with a nipple open, as a lumped circuit: pipes that resist, one behind the other, air
 * that hangs at the far end of each behind a resistance of its own, and the nipple's passage.
 *
 *     in -> resistance 0 -+- resistance 1 -+- ... -+- out -> open air
 *                       side 0           side 1  side n-1
 *                       air 0            air 1    air n-1
 *
 * Air at gauge pressure p takes up W = V p/(p + one atmosphere) (Boyle). With P_k at the node and
 * q_k beyond it: q_k = q_(k-1) - dW_k/dt; P_(k-1) - P_k = R_k q_(k-1); P_k - p_k = S_k dW_k/dt. */
struct breath_node {
    double resistance; /* of the pipe before it, Pa s/m3, >= 0 */
    double side;       /* between it and its air, Pa s/m3, >= 0 */
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
 *   steps    of time, >= 1; 4 are within 0.5 % of many
 *
 * Two implicit stages a step, stiffly accurate, second order, each one root in the outflow.
 * Source: R. Alexander, SIAM J. Numer. Anal. 14 (1977) 1006 (from memory), for the stages.
 * Checked by: tests/purge/test_purge_breath.c; against GNU Octave: tests/cross/bleed_strokes.c */
struct breath purge_breathe(struct breath_node *nodes, int count, struct resistance out,
                            double stroke, double time, int steps);

#endif
