#ifndef FIRMPEDAL_ASKING_KIND_ASKED_H
#define FIRMPEDAL_ASKING_KIND_ASKED_H

#include "starters/picks.h"

/* Asking what kind of car it is, a group of words after the other. */

/* Words of brakes, circuits and the like say too whether it is a car or a motorcycle. */
picks kind_settled(picks said);
/* The next group that is not said and has meaning; GROUP_COUNT: all is said. */
enum pick_group kind_next(picks said);
/* The question of a group in words; again: it stands just above. */
void kind_words(struct text *into, enum pick_group group, picks said, bool again, int width);
/* What was said with the answer: a number of the list, words, or "" for what is usual;
 * words may say other groups, too. false with
 * the reason in trouble. */
bool kind_take(struct text *trouble, enum pick_group group, const char *answer, picks *said);

#endif
