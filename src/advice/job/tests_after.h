#ifndef FIRMPEDAL_ADVICE_JOB_TESTS_AFTER_H
#define FIRMPEDAL_ADVICE_JOB_TESTS_AFTER_H

#include "advice/common/steps.h"
#include "network/graph.h"

/* What follows the bleeding, in no order yet: the second round, levels, leak tests from a light
 * foot to a hard one, a second person, the road and later; about what the work touched and nothing
 * else, with expected values and dates. */
struct steps tests_of(const struct system *system, const struct network *network, struct date today,
                      struct arena *arena);

#endif
