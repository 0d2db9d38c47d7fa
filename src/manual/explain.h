#ifndef FIRMPEDAL_MANUAL_EXPLAIN_H
#define FIRMPEDAL_MANUAL_EXPLAIN_H

#include <stdbool.h>

#include "base/text.h"

/* Explains a word of a description: a key of any kind of part or special section, by any of its
 * names, a kind of part, a special section, or the word of a mistake. false when it is none of
 * them; nothing is written then. */
bool explain_word(struct text *into, const char *word);

/* The known words that are nearest to one that is none, at most three, parted by commas; "" when
 * none is near. In the arena. */
const char *explain_near(struct arena *arena, const char *word);

#endif
