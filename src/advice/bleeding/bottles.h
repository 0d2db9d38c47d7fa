#ifndef FIRMPEDAL_ADVICE_BLEEDING_BOTTLES_H
#define FIRMPEDAL_ADVICE_BLEEDING_BOTTLES_H

#include "base/arena.h"
#include "units/quantity.h"

/* Brake fluid is bought in whole bottles, sealed: what is left in an open one takes up water. */

enum { BOTTLE_SIZES = 3 };

struct bottles {
    int count[BOTTLE_SIZES]; /* of each size, the largest first */
    struct volume held;      /* what they hold in all */
};

/* The bottles of usual sizes (1 L, 500 mL, 250 mL; common practice, no source) that hold a volume
 * with the least left over, and of those as few as can be.
 *
 *   needed   m3, > 0; up to 1000 L */
struct bottles bottles_for(struct volume needed);

/* "1 bottle of 1 L and 1 of 250 mL". */
const char *bottles_words(struct arena *arena, const struct bottles *bottles);

#endif
