#ifndef FIRMPEDAL_REPORT_WORDS_FIT_WORDS_H
#define FIRMPEDAL_REPORT_WORDS_FIT_WORDS_H

#include "advice/result.h"

/* "brake master: 22.22 mm (7/8 in) instead of 20.64 mm (13/16 in)" */
const char *fit_change_words(struct arena *arena, const struct result *result,
                             const struct fit_change *change);
/* The verdict, and what it needs where it cannot say. */
const char *fit_headline(struct arena *arena, const struct result *result);
/* Why a question could not be answered: "needs [brake pedal] travel"; NULL where it could. */
const char *fit_lack_words(struct arena *arena, const struct result *result,
                           const struct fit_answer *answer);
const char *fit_reason_words(struct arena *arena, const struct result *result,
                             const struct fit_reason *reason);

#endif
