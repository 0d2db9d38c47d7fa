#ifndef FIRMPEDAL_INPUT_PART_RULES_H
#define FIRMPEDAL_INPUT_PART_RULES_H

#include "input/lines.h"
#include "network/system.h"
#include "parts/keys/key.h"

/* Rules across the keys of one part: what each key for itself allows and both together do not.
 *
 *   part      what holds, as said and not yet assumed
 *   entries   by row of the kind's table: the line that said it, or NULL
 *
 * Leaves messages at those lines; a rule without a line of its own in entries is not asked, so that
 * a work file is judged by what it changes. */
void part_rules_check(const struct part *part, const struct entry *const *entries,
                      struct input *input);

/* Remarks on dates that cannot be: values and work after today, work before the car was first used.
 *
 *   car     with the work laid over it
 *   today   year 0: not known, then only what needs no today */
void dates_check(const struct system *car, struct date today, struct input *input);

#endif
