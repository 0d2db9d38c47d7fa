#ifndef FIRMPEDAL_REPORT_TEXT_TEXT_FIGURES_H
#define FIRMPEDAL_REPORT_TEXT_TEXT_FIGURES_H

#include "advice/result.h"
#include "base/text.h"

/* The figures that are asked for first, under the title: effort, travel, pressure, stop. */
void text_headlines(struct text *into, const struct result *result);
/* Every figure on a line with its id, by what it is of; equal ones of two brakes stand once. */
void text_figures(struct text *into, const struct result *result);

#endif
