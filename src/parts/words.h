#ifndef FIRMPEDAL_PARTS_WORDS_H
#define FIRMPEDAL_PARTS_WORDS_H

#include <stdbool.h>
#include <stddef.h>

/* Comparing the words of a description, as people write them: blanks, hyphens, underlines and case
 * do not matter, so "Self-adjusting", "self adjusting" and "selfadjusting" are the same. */

/* Whether two wordings are the same. */
bool words_same(const char *a, const char *b);

/* Whether words are one of a comma-separated list; list may be NULL. */
bool words_among(const char *words, const char *list);

/* The next item of a comma-separated list from *list on, without blanks around it; *length gets
 * its letters and *list moves behind it. NULL at the end. list may point to NULL. */
const char *words_next(const char **list, size_t *length);

/* Whether words end (or begin) with the given whole words; *letters gets how many letters of words
 * these take up. */
bool words_end_with(const char *words, const char *end, size_t *letters);
bool words_begin_with(const char *words, const char *beginning, size_t *letters);

#endif
