#ifndef FIRMPEDAL_PARTS_RESERVOIR_H
#define FIRMPEDAL_PARTS_RESERVOIR_H

#include "units/quantity.h"

struct reservoir {
    struct volume capacity; /* key "capacity": between the MAX mark and empty */
    struct volume usable;   /* "usable": between MAX and MIN marks; assumed a third of capacity */
    int fluid;              /* "fluid": which fluid section, when there are several; -1 */
};

/* Volume between the marks: the one given, else a third of the capacity (common practice, no
 * source), m3; NaN when neither is known or > 0.
 * Checked by: tests/parts/test_reservoir.c */
struct volume reservoir_usable(const struct reservoir *reservoir);

#endif
