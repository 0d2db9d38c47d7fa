#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_METHODS_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_METHODS_H

#include "advice/bleeding/bleed_nets.h"

/* Judges every method of bleeding for this car by what stands in its way: fills the plan's
 * verdicts, in the order of method_rows. What is the same for all methods (dead legs, air above
 * nipples) is noted at each.
 * Checked by: tests/advice/bleeding/test_bleed_methods.c */
void bleed_methods_judge(const struct bleed_nets *nets, const struct bleed_set *set,
                         struct bleed_plan *plan, struct arena *arena);

#endif
