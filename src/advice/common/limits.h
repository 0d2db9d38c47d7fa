#ifndef FIRMPEDAL_ADVICE_COMMON_LIMITS_H
#define FIRMPEDAL_ADVICE_COMMON_LIMITS_H

#include <stddef.h>

#include "units/quantity.h"

/* Limits behind verdicts: a row each, with its source. */
struct limit_row {
    const char *id; /* "line-pressure-most" */
    double value;   /* SI */
    enum dimension dimension;
    const char *words;
    const char *source;
};
const struct limit_row *limit_rows(size_t *count);
const struct limit_row *limit_find(const char *id); /* NULL when there is none */
double limit_value(const char *id);

#endif
