#ifndef FIRMPEDAL_REPORT_WORDS_PAIR_WORDS_H
#define FIRMPEDAL_REPORT_WORDS_PAIR_WORDS_H

#include "network/system.h"

/* "front discs" of "front left disc" and "front right disc"; NULL where two names are not those of
 * the two sides. */
const char *pair_words(struct arena *arena, const char *one, const char *other);
/* Words in which every "front left disc and front right disc" of the car is "front discs". */
const char *words_paired(struct arena *arena, const struct system *system, const char *words);
/* Words with a name put in the place of another. */
const char *words_renamed(struct arena *arena, const char *words, const char *from, const char *to);

#endif
