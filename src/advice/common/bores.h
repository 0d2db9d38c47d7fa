#ifndef FIRMPEDAL_ADVICE_COMMON_BORES_H
#define FIRMPEDAL_ADVICE_COMMON_BORES_H

#include <stddef.h>

#include "units/quantity.h"

/* Standard bores of the trade (common practice, no source). */
struct bore_row {
    const char *name; /* "7/8 in", "22 mm" */
    struct length bore;
};
const struct bore_row *bore_rows(size_t *count);
/* Nearest standard bore; NULL unless the bore is above 0. */
const struct bore_row *bore_nearest(struct length bore);
/* The standard bore that is easily taken for this one (within the limit danger-pair-within), the
 * nearest if there are several; or NULL. */
const struct bore_row *bore_twin(const struct bore_row *row);

#endif
