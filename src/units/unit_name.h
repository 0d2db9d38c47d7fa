#ifndef FIRMPEDAL_UNITS_UNIT_NAME_H
#define FIRMPEDAL_UNITS_UNIT_NAME_H

#include <stddef.h>

#include "units/unit.h"

/* Finds the unit that letters name; they need not end with NUL. Blanks, points, hyphens and
 * multiplication dots between words do not count, ² is 2, ° is deg. Units of the wanted kind come
 * before others, the exact letters before the same in other case. NULL when there is none. */
const struct unit *unit_find(const char *letters, size_t length, enum dimension wanted);

/* The unit name of the wanted kind that is nearest to mistyped letters, or NULL. */
const char *unit_nearest(const char *letters, size_t length, enum dimension wanted);

#endif
