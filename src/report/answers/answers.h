#ifndef FIRMPEDAL_REPORT_ANSWERS_ANSWERS_H
#define FIRMPEDAL_REPORT_ANSWERS_ANSWERS_H

#include <stdbool.h>

#include "advice/result.h"
#include "base/text.h"
#include "report/document/document.h"
#include "report/words/words.h"

/* Answers as documents, from nothing but the result. Each is short, the answer first; all:
 * everything there is. Every DANGER and WARNING stands in both. */

/* What must not go on the road, what to look at, a dozen figures, where to ask on; all: findings in
 * full, all figures by subject, published rules. */
void answer_check(struct document *into, const struct result *result, bool all);
/* The numbers of published rules of a country beside the car's. */
void answer_rules(struct document *into, const struct result *result, const char *country);
/* The order of the nipples as a table, what is set first and undone; all: every step with why,
 * volumes, costs of orders, ways of bleeding. */
void answer_bleed(struct document *into, const struct result *result, bool all);
/* Whose order of the nipples it is, where it is not the plan's own, and what it leaves out. */
void answer_bleed_order(struct document *into, const struct result *result);
/* What orders of the nipples cost, and which ways of bleeding suit. */
void answer_ways(struct document *into, const struct result *result);
/* Which hoses there must be, which there are, which are new; the first line is the answer. */
void answer_hoses(struct document *into, const struct result *result);
/* Where the pedal does not come firm: a list to go through. */
void answer_soft(struct document *into, const struct result *result);
/* What to open, in order: joints and parts as tables; all: every step in full. */
void answer_open(struct document *into, const struct result *result, bool all);
/* Another bore: the verdict in the third line, then a line a question, the worst first; all: every
 * figure before and after, and everything that was judged. */
void answer_fit(struct document *into, const struct result *result, bool all);
/* Which bores would suit: how many, the best few with why, the nearest misses; all: which limits
 * stand in the way. */
void answer_choose(struct document *into, const struct result *result, bool all);
/* The usual pedal curve, what takes the travel, and all cases side by side; all: every point. */
void answer_curve(struct document *into, const struct result *result, bool all);
/* One figure: its value, what it is made of, what tells most and how to measure that; all: the
 * cases of the laws it goes through, the way down to the lines of the file, every value it rests
 * on. */
void answer_trace(struct document *into, const struct result *result, bool all);

#endif
