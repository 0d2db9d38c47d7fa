#ifndef FIRMPEDAL_INPUT_KEY_WORDS_H
#define FIRMPEDAL_INPUT_KEY_WORDS_H

#include "base/arena.h"
#include "parts/keys/key.h"

/* The rows of the key tables in words, for the page, the starters, the measuring sheet and
 * `explain`. All results live in the arena. */

/* What is written as its value: "a length", "one of: fixed, sliding", "a date". */
const char *key_form_words(struct arena *arena, const struct key *key);
/* "2 mm to 400 mm"; "" when it has no limits. The usual range in the same way. */
const char *key_limit_words(struct arena *arena, const struct key *key);
const char *key_usual_words(struct arena *arena, const struct key *key);
/* What is taken when nothing is said, and why: "0.38 (from memory)"; for a required key "must be
 * given"; "" when nothing is. */
const char *key_unsaid_words(struct arena *arena, const struct key *key);
/* The words of its choices, "fixed, sliding"; "" for other forms. */
const char *key_choice_words(struct arena *arena, const struct key *key);

#endif
