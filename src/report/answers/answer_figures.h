#ifndef FIRMPEDAL_REPORT_TEXT_ANSWER_FIGURES_H
#define FIRMPEDAL_REPORT_TEXT_ANSWER_FIGURES_H

#include "report/answers/answer.h"

/* The dozen figures that answer questions, each with its mark: the pedal in each case, the brakes,
 * then a line a question; equal sides once; what is missing for all of it in one line. */
void answer_figures(struct document *into, const struct result *result);

/* All figures by subject, with ids and marks; what lacks the same together. */
void answer_all_figures(struct document *into, const struct result *result);

#endif
