#ifndef FIRMPEDAL_REPORT_TEXT_ANSWER_STEPS_H
#define FIRMPEDAL_REPORT_TEXT_ANSWER_STEPS_H

#include "report/answers/answer.h"

/* The cautions of some times that are for this job.
 *
 *   when    bits of 1u << enum caution_when
 *   full    with harm and how to avoid it; otherwise DANGER and WARNING a line each, the rest in
 * one
 */
void answer_cautions(struct document *into, const struct result *result, unsigned when, bool full);

/* What a bleeding step leaves undone: air that stays above the nipple, air that does not come. */
void answer_bleed_warnings(struct document *into, const struct result *result,
                           const struct step *step, int turn);

/* A numbered step in full: words, its boxes, why, what to write down. */
void answer_step(struct document *into, const struct result *result, const struct steps *steps,
                 size_t at);
/* All steps of a list under a head; nothing where there are none. */
void answer_steps(struct document *into, const struct result *result, const char *head,
                  const struct steps *steps);

#endif
