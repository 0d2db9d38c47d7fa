#ifndef FIRMPEDAL_REPORT_TEXT_TEXT_REPORT_H
#define FIRMPEDAL_REPORT_TEXT_TEXT_REPORT_H

#include <stdbool.h>

#include "advice/result.h"
#include "base/message.h"
#include "base/text.h"
#include "report/document/document.h"
#include "report/words/words.h"

/* Answers as documents, from nothing but the result. Each is short, the answer first; all:
 * everything there is. Every DANGER and WARNING stands in both. */

/* What must not go on the road, what to look at, a dozen figures, where to ask on; all: findings in
 * full, all figures by subject, published rules. */
void text_check(struct document *into, const struct result *result, bool all);
/* The numbers of published rules of a country beside the car's. */
void text_rules(struct document *into, const struct result *result, const char *country);
/* The order of the nipples as a table, what is set first and undone; all: every step with why,
 * volumes, costs of orders, ways of bleeding. */
void text_bleed(struct document *into, const struct result *result, bool all);
/* Which hoses there must be, which there are, which are new; the first line is the answer. */
void text_hoses(struct document *into, const struct result *result);
/* Where the pedal does not come firm: a list to go through. */
void text_soft(struct document *into, const struct result *result);
/* What to open, in order: joints and parts as tables; all: every step in full. */
void text_open(struct document *into, const struct result *result, bool all);
/* Another bore: the verdict in the third line, then a line a question, the worst first; all: every
 * figure before and after, and everything that was judged. */
void text_fit(struct document *into, const struct result *result, bool all);
/* The usual pedal curve, what takes the travel, and all cases side by side; all: every point. */
void text_curve(struct document *into, const struct result *result, bool all);
/* One figure: its value, what it is made of, what tells most and how to measure that; all: the
 * cases of the laws it goes through, the way down to the lines of the file, every value it rests
 * on. */
void text_trace(struct document *into, const struct result *result, bool all);

/* One step of the whole job on at most 20 lines of 40 columns, for a phone at the car.
 *
 *   which   its number or its name, or "next": the first that is not noted as done
 *   gives   false when there is none such; then the words say so */
bool text_step(struct text *into, const struct result *result, const char *which);

/* Messages about files: place, words, the line with the place underlined, what to write. width: of
 * the lines that are quoted. */
void text_messages(struct text *into, const struct messages *messages, int width);

#endif
