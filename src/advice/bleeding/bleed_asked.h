#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_ASKED_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_ASKED_H

#include "network/system.h"

/* An order of nipples as a person asks for it: "rear left, rear right, front left outer". Words
 * that leave one nipple of the car are enough; commas part the nipples.
 *
 *   words     as asked
 *   order     set to the nipples, from the arena
 *   trouble   set to what is wrong, a sentence, when it cannot be read
 *   gives     how many; 0 when it cannot be read
 *
 * Checked by: tests/advice/bleeding/test_bleed_asked.c */
int bleed_asked_order(const struct system *system, const char *words, struct arena *arena,
                      struct nipple **order, const char **trouble);

/* The methods' ids as method_rows has them: "pedal", "pressure", ...; -1 when it is none. */
int bleed_asked_method(const char *id);

#endif
