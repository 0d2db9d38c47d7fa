#ifndef FIRMPEDAL_ADVICE_COMMON_FLUID_AGE_H
#define FIRMPEDAL_ADVICE_COMMON_FLUID_AGE_H

#include "network/system.h"

/* Years after which a fluid is changed: what takes up water by the limit fluid-age-most, other
 * fluid by its grade's own interval (parts/fluid.c).
 *
 *   fluid   a part of KIND_FLUID */
int fluid_years_most(const struct part *fluid);

/* Whether a fluid is due on that day, or nobody knows how old it is. */
bool fluid_is_due(const struct part *fluid, struct date today);

#endif
