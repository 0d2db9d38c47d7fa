#ifndef FIRMPEDAL_REPORT_SHEET_PAGES_H
#define FIRMPEDAL_REPORT_SHEET_PAGES_H

#include "advice/result.h"
#include "report/sheet/flow.h"
#include "report/diagram/layout.h"

/* The chapters of the sheet, in order: first what is done at the car, up to the signatures, then
 * what one looks up. Each adds to the flow. */
void pages_front(struct flow *flow, const struct result *result);
void pages_notes(struct flow *flow, const struct result *result);
void pages_before(struct flow *flow, const struct result *result);
void pages_opening(struct flow *flow, const struct result *result);
void pages_bench(struct flow *flow, const struct result *result);
void pages_settings(struct flow *flow, const struct result *result);
void pages_bleeding(struct flow *flow, const struct result *result);
void pages_methods(struct flow *flow, const struct result *result);
void pages_hoses(struct flow *flow, const struct result *result);
void pages_findings(struct flow *flow, const struct result *result);
void pages_after(struct flow *flow, const struct result *result);
void pages_figures(struct flow *flow, const struct result *result);
void pages_curve(struct flow *flow, const struct result *result);
void pages_rules(struct flow *flow, const struct result *result);

/* Pieces that several chapters use. */

/* A word on a tag, filled when it is grave; gives the tag's width. */
double pages_signal(struct flow *flow, double x, double y, const char *word, bool filled);
/* A step of a list with its boxes to tick: words, why (once for all steps of a row), and a line for
 * what is read. */
void pages_step(struct flow *flow, const struct result *result, const struct steps *steps,
                size_t at);
/* How high a step will be. */
double pages_step_height(struct flow *flow, const struct result *result, const struct steps *steps,
                         size_t at);
/* The severity in capitals. */
const char *pages_signal_word(enum severity severity);
/* "20 November 2026" */
const char *pages_date(struct arena *arena, struct date date);
/* Whether the hoses are complete, as a sentence. */
const char *pages_hoses_verdict(struct arena *arena, const struct result *result);
/* The first letter as a capital. */
const char *pages_sentence(struct arena *arena, const char *words);

#endif
