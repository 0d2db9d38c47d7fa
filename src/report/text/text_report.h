#ifndef FIRMPEDAL_REPORT_TEXT_TEXT_REPORT_H
#define FIRMPEDAL_REPORT_TEXT_TEXT_REPORT_H

#include <stdbool.h>

#include "advice/result.h"
#include "base/message.h"
#include "base/text.h"

/* What is written as text at once, without a document. */

/* One step of the whole job on at most 20 lines of 40 columns, for a phone at the car.
 *
 *   which   its number or its name, or "next": the first that is not noted as done
 *   gives   false when there is none such; then the words say so */
bool text_step(struct text *into, const struct result *result, const char *which);

/* Messages about files: place, words, the line with the place underlined, what to write. width: of
 * the lines that are quoted. */
void text_messages(struct text *into, const struct messages *messages, int width);

#endif
