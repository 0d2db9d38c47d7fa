#ifndef FIRMPEDAL_REPORT_WORDS_WORDS_H
#define FIRMPEDAL_REPORT_WORDS_WORDS_H

#include "advice/result.h"
#include "base/message.h"

/* Results in running words, for text, JSON and paper alike. */

/* The severity as a word: "note", "advice", "warning", "danger"; capitals for headings. */
const char *severity_word(enum severity severity);
/* "[servo] vacuum": a key as the description writes it. */
const char *cited_words(struct arena *arena, const struct system *system,
                        const struct cited_key *cited);
/* Several of them, "A, B and 2 more". */
const char *cited_list(struct arena *arena, const struct system *system,
                       const struct cited_key *keys, int count, int most);
/* "computed", "assumed: [servo] vacuum and 3 more", "not computed: needs [vehicle] wheelbase". */
const char *figure_state_words(struct arena *arena, const struct system *system,
                               const struct figure *figure, int most);
/* "computed", "assumed", "mostly assumed", or "" where it is not computed. */
const char *figure_state_word(const struct figure *figure);
/* What of a figure's limits is not met here, or NULL. */
const char *figure_broken_words(struct arena *arena, const struct figure *figure);
/* The value of a figure in the reader's units, or "-". */
const char *figure_value_words(struct arena *arena, const struct figure *figure,
                               enum unit_system units);
/* A reading beside its figure: "66.0 mm at 220 N; computed 65.7 mm *: agrees". */
const char *reading_words(struct arena *arena, const struct result *result,
                          const struct compared *compared);
/* "agrees", "off", "not possible", "not computed" */
const char *comparing_words(enum comparing outcome);
/* The summing-up line of check, hoses and the sheet's head. */
const char *summary_words(struct arena *arena, const struct result *result);
const char *hoses_verdict_words(struct arena *arena, const struct hose_list *hoses);
/* "not computed: needs [front left disc] run out": of a case without a curve. */
const char *curve_lack_words(struct arena *arena, const struct system *system,
                             const struct car_curve *drawn);

#endif
