#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_WAY_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_WAY_H

#include "advice/bleeding/bleed_types.h"

/* How this car's circuits are bled: what a stroke moves, what a kit or gravity pushes with, what
 * the reservoir can give. */

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
