#ifndef FIRMPEDAL_REPORT_WORDS_CHOOSE_WORDS_H
#define FIRMPEDAL_REPORT_WORDS_CHOOSE_WORDS_H

#include "advice/result.h"

/* "3 of 1764 suit", or which limit stands in the way, or what is needed. */
const char *choose_headline(struct arena *arena, const struct result *result,
                            const struct choice_group *group);
/* Which cylinders with how many bores, for which stop. */
const char *choose_tried_words(struct arena *arena, const struct result *result,
                               const struct choice_group *group);
/* "rear drums" */
const char *choose_axis_words(struct arena *arena, const struct result *result, int axis);
/* "7/8 in"; of the car as it is its own bore. */
const char *choose_bore_words(struct arena *arena, const struct result *result,
                              const struct choice_car *car, int axis);
/* What it is nearest to, or misses by what. */
const char *choose_why_words(struct arena *arena, const struct result *result,
                             const struct choice_group *group, const struct choice_car *car);

#endif
