#ifndef FIRMPEDAL_TESTS_SUPPORT_PLAIN_PLAN_H
#define FIRMPEDAL_TESTS_SUPPORT_PLAIN_PLAN_H

#include "advice/job/plan.h"
#include "network/work.h"

/* The plan of a job whose nipples come in the order of parts: nothing is simulated, so that
 * thousands of jobs can be looked at. The day is 2026-11-25. */
struct plan *plain_plan(const struct system *system, const struct network *network,
                        enum bleed_method method, struct arena *arena);

/* The car with one part (-1: all that hold fluid, and the fluid) opened or renewed on 2026-11-20.
 */
const struct system *plain_work(const struct system *car, enum work_deed deed, int part,
                                struct arena *arena);

#endif
