#ifndef FIRMPEDAL_REPORT_TEXT_REPORT_H
#define FIRMPEDAL_REPORT_TEXT_REPORT_H

#include "advice/result.h"
#include "base/message.h"
#include "base/text.h"

/* Results as plain text for a terminal of 80 columns without colour. Each adds to a text and
 * needs nothing but the result. */

/* What sums up and the first figures, then findings worst first (what is the same of several places
 * once), then all figures by subject, then published rules. */
void text_check(struct text *into, const struct result *result);
/* Settings first, then the numbered steps, then what stays shut. */
void text_bleed(struct text *into, const struct result *result);
/* The bleed plan one step to a page of at most 20 lines of 40 columns, for a phone at the car. */
void text_bleed_step(struct text *into, const struct result *result, int number);
/* How many there are: those of the bleeding, then what follows it; 0 for a plan that is refused. */
size_t text_bleed_step_count(const struct result *result);
/* Which hoses there must be, which there are, which are new; the first line is the answer. */
void text_hoses(struct text *into, const struct result *result);
/* What to open, in order. */
void text_open(struct text *into, const struct result *result);
/* Another bore: the verdict in the third line, then a line a question, the worst first; all: every
 * figure before and after, and everything that was judged. */
void text_fit(struct text *into, const struct result *result, bool all);
/* The verdict, and what it needs where it cannot say. */
const char *fit_headline(struct arena *arena, const struct result *result);
/* Why a question could not be answered: "needs [brake pedal] travel"; NULL where it could. */
const char *fit_lack_words(struct arena *arena, const struct result *result,
                           const struct fit_answer *answer);
const char *fit_reason_words(struct arena *arena, const struct result *result,
                             const struct fit_reason *reason);

/* "not computed: needs [front left disc] run out": of a case without a curve. */
const char *curve_lack_words(struct arena *arena, const struct system *system,
                             const struct car_curve *drawn);
/* The usual pedal curve point by point, what takes the travel, and all cases side by side. */
void text_curve(struct text *into, const struct result *result);
/* One figure: its value, the cases of the laws it goes through, the way down to the lines of the
 * file, and every value it rests on, most telling first. */
void text_trace(struct text *into, const struct result *result);

/* Messages about files: place, words, the line with the place underlined, what to write. */
void text_messages(struct text *into, const struct messages *messages);

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

#endif
