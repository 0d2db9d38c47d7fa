#ifndef FIRMPEDAL_REPORT_TEXT_TEXT_REPORT_H
#define FIRMPEDAL_REPORT_TEXT_TEXT_REPORT_H

#include <stdbool.h>

#include "advice/result.h"
#include "base/message.h"
#include "base/text.h"
#include "report/words/words.h"

/* Results as plain text for a terminal of 80 columns without colour. Each adds to a text and
 * needs nothing but the result. */

/* What sums up and the first figures, then findings worst first (what is the same of several places
 * once), then all figures by subject, then published rules. */
void text_check(struct text *into, const struct result *result);
/* Settings first, then the numbered steps, then what stays shut. */
void text_bleed(struct text *into, const struct result *result);
/* One step of the whole job on at most 20 lines of 40 columns, for a phone at the car.
 *
 *   which   its number or its name, or "next": the first that is not noted as done
 *   gives   false when there is none such; then the words say so */
bool text_step(struct text *into, const struct result *result, const char *which);
/* Which hoses there must be, which there are, which are new; the first line is the answer. */
void text_hoses(struct text *into, const struct result *result);
/* Where the pedal does not come firm: a list to go through. */
void text_soft(struct text *into, const struct result *result);
/* What to open, in order. */
void text_open(struct text *into, const struct result *result);
/* Another bore: the verdict in the third line, then a line a question, the worst first; all: every
 * figure before and after, and everything that was judged. */
void text_fit(struct text *into, const struct result *result, bool all);

/* The usual pedal curve point by point, what takes the travel, and all cases side by side. */
void text_curve(struct text *into, const struct result *result);
/* One figure: its value, the cases of the laws it goes through, the way down to the lines of the
 * file, and every value it rests on, most telling first. */
void text_trace(struct text *into, const struct result *result);

/* Messages about files: place, words, the line with the place underlined, what to write. */
void text_messages(struct text *into, const struct messages *messages);

#endif
