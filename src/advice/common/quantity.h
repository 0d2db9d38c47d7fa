#ifndef FIRMPEDAL_ADVICE_COMMON_QUANTITY_H
#define FIRMPEDAL_ADVICE_COMMON_QUANTITY_H

#include <stdbool.h>

#include "units/quantity.h"

/* What stands in words under a name in braces, "{force}": findings, steps, reasons and methods
 * carry these, and reports put them in the reader's units. */
struct named_quantity {
    const char *name;
    double value;
    enum dimension dimension;
    bool bore_like;
    const char *text; /* words instead of a value, or NULL */
};

#endif
