#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_WAY_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_WAY_H

#include "advice/bleeding/bleed_plan.h"

/* How this car's circuits are bled: what a stroke moves, what a kit or gravity pushes with, what
 * the reservoir can give. */

/* How far the pad of a pedal may go while old masters hang on it, from rest: as far as takes each
 * of their pistons, alone and its circuit open, over two thirds of what it can go; m. The least
 * over the pistons of a tandem and over the masters on a balance bar, which tilts about the one
 * that stands still; free play and rod gap included. NaN when no master of it is old or its strokes
 * and the pedal are not known. Source: the levers' geometry; two thirds: common practice, no
 * source. */
struct length bleed_pad_stop(const struct system *system, int pedal);
/* What one stroke of the pedal moves in a circuit: as far as its own piston goes, with the pedal
 * down to its block or its end, m3; NaN when bore or strokes are not known. */
struct volume bleed_stroke(const struct system *system, const struct circuit *circuit,
                           bool *assumed);

/* Height of the reservoir over a part, m, from the heights given; else the usual one, and assumed.
 */
struct length bleed_head(const struct system *system, int master, int part, bool *assumed);

/* What the reservoir may give between two fillings without letting air in, m3: what lies between
 * its marks, and half of that where it feeds several circuits, since it is walled inside or has a
 * port high up. NaN when its size is not known. */
struct volume bleed_usable(const struct system *system, const struct network *network, int circuit);

/* Flow that a push drives to a nipple of a net when its way is full of fluid, m3/s; push Pa, 0 for
 * one not above 0. */
double bleed_full_flow(const struct purge_net *net, int nipple, double push);

/* All of it as the simulation wants it. A stroke that is not known is taken as the usual 5 mL. */
struct purge_way bleed_way_of(const struct system *system, const struct network *network,
                              int circuit, const struct bleed_wishes *wishes);

#endif
