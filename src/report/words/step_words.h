#ifndef FIRMPEDAL_REPORT_WORDS_STEP_WORDS_H
#define FIRMPEDAL_REPORT_WORDS_STEP_WORDS_H

#include "advice/result.h"

/* What a step says, in short. */

/* The first sentence of running words: up to a full stop that a capital follows. */
const char *first_sentence(struct arena *arena, const char *words);
/* What a step says in a few words, for one who only needs reminding; begins small. */
const char *step_brief(struct arena *arena, const struct result *result, const struct step *step);
/* All steps of a phase so, "; " between them; how many in *count. */
const char *phase_briefs(struct arena *arena, const struct result *result, enum step_phase phase,
                         int *count);

#endif
