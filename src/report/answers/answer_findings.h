#ifndef FIRMPEDAL_REPORT_TEXT_ANSWER_FINDINGS_H
#define FIRMPEDAL_REPORT_TEXT_ANSWER_FINDINGS_H

#include "report/answers/answer.h"

/* The findings of one severity under a heading (NULL: none), one line each, those alike once; false
 * when there are none (then no heading either). */
bool answer_findings_in_short(struct document *into, const struct result *result,
                              enum severity severity, const char *heading);
/* All of them with place, why, what to do and source. */
void answer_findings_in_full(struct document *into, const struct result *result);
/* What was found bad on parts that stay. */
void answer_unsettled(struct document *into, const struct result *result);

#endif
