#ifndef FIRMPEDAL_ADVICE_JOB_PLAN_TABLES_H
#define FIRMPEDAL_ADVICE_JOB_PLAN_TABLES_H

#include "advice/job/plan.h"

/* Fills the rows of joints and of parts from the steps of a plan, which are in order. */
void plan_fill_tables(const struct system *system, struct plan *plan);
/* Whether of two parts that meet the first is the one that is screwed in: a pipe before a hose, a
 * hose before all else. */
bool plan_screws_in(const struct system *system, int one, int other);

#endif
