#ifndef FIRMPEDAL_ADVICE_FIGURES_PART_BORE_H
#define FIRMPEDAL_ADVICE_FIGURES_PART_BORE_H

#include <stdbool.h>
#include <stddef.h>

#include "parts/part.h"

/* The field of a part's bore under pedal pressure; (size_t)-1 where the kind has none. */
size_t part_bore_field(enum part_kind kind);
/* The bore; NaN where there is none. */
struct length part_bore(const struct part *part);

/* Whether another bore can be tried on it: a master, a caliper, a wheel cylinder, a clutch slave. A
 * remote servo is not exchanged for one of another bore. */
bool part_is_cylinder(const struct part *part);

#endif
