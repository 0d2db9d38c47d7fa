#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_STROKE_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_STROKE_H

#include "network/graph.h"
#include "network/system.h"

/* What a stroke of the pedal moves in a circuit that is open. */

/* How far the pad of a pedal may go while old masters hang on it, from rest: as far as takes each
 * of their pistons, alone and its circuit open, over two thirds of what it can go; m. The least
 * over the pistons of a tandem and over the masters on a balance bar, which tilts about the one
 * that stands still; free play and rod gap included. NaN when no master of it is old or its strokes
 * and the pedal are not known. Source: the levers' geometry; two thirds: common practice, no
 * source. */
struct length bleed_pad_stop(const struct system *system, int pedal);
/* What one stroke moves in a circuit with a nipple open, the pedal down to its block or its end,
 * m3; not below 0; NaN when bore or strokes are not known.
 *
 *   air      free air that the other circuit of a tandem holds, at one atmosphere, its nipples
 * shut, m3; 0: it is firm. Of a single master nothing assumed  set where a stroke of the pistons
 * was assumed
 *
 * The open piston stands against no pressure at the end of its stroke. With S1, S2, f springs and
 * seal friction of each piston, x_c the ports' way, L1, L2 the pistons' own strokes, R the way of
 * the rod, gap closed:
 *
 *   first open   the second goes x2 = x_c + W/A (not over L2 and R), W what its air takes up at
 *                (S1 - S2 - f)/A, and not at all where that is below 0; the first delivers over
 *                min(R - x2, L1) less what of x_c is left
 *   second open  it goes with the first, min(R, L2) - x_c; where S1 - S2 - f is below 0, R less
 *                x_c + W/A of the first's air at the force that lacks
 *
 * Source: force balance on the second piston, Boyle's law; the springs with one force each.
 * Checked by tests/advice/bleeding/test_bleed_stroke.c */
struct volume bleed_stroke_beside(const struct system *system, const struct circuit *circuit,
                                  struct volume air, bool *assumed);
/* The same with the other circuit firm. */
struct volume bleed_stroke(const struct system *system, const struct circuit *circuit,
                           bool *assumed);
/* Whether a spring of a tandem is not described but assumed. */
bool bleed_springs_assumed(const struct part *master);

#endif
