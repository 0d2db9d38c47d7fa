#ifndef FIRMPEDAL_TESTS_SUPPORT_FIXTURE_RESULT_H
#define FIRMPEDAL_TESTS_SUPPORT_FIXTURE_RESULT_H

#include <stdbool.h>

#include "advice/result.h"

/* A result made by hand, for tests of reports: a van with front discs, rear drums on a live axle,
 * tandem master, servo, load-sensing valve and a clutch fed from the same reservoir. */
struct fixture_choice {
    bool driver_left; /* and every side changed over */
    bool reversed;    /* parts in the opposite order */
    bool other_names; /* every part named otherwise */
    bool plain;       /* nothing opened: no numbers on nipples */
};
const struct result *fixture_result(struct arena *arena, struct fixture_choice choice);

#endif
