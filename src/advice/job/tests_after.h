#ifndef FIRMPEDAL_ADVICE_JOB_TESTS_AFTER_H
#define FIRMPEDAL_ADVICE_JOB_TESTS_AFTER_H

#include "advice/common/steps.h"
#include "network/graph.h"

/* All that follows the bleeding, for text, small screen, JSON and sheet alike: what the settings
 * set for the work alone is undone, then levels, leak tests from a light foot to a hard one, the
 * road and later; about what the work touched and nothing else, with expected values and dates.
 *
 *   settings   those of the bleed plan */
struct steps tests_of(const struct system *system, const struct network *network,
                      const struct steps *settings, struct date today, struct arena *arena);

#endif
