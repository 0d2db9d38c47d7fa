#ifndef FIRMPEDAL_UNITS_NUMBER_H
#define FIRMPEDAL_UNITS_NUMBER_H

#include <stddef.h>

#include "base/arena.h"

enum number_outcome {
    NUMBER_FINE,
    NUMBER_NONE,          /* no number stands there; 0x10, nan and inf are none */
    NUMBER_DECIMAL_COMMA, /* 0,32 */
    NUMBER_OUT_OF_RANGE   /* too large, too small to be kept, or divided by zero */
};

/* A number at the beginning of a text. */
struct number_found {
    enum number_outcome outcome;
    double value;  /* NaN unless the outcome is NUMBER_FINE */
    size_t length; /* letters it takes up, 0 when there is none */
};

/* Reads 19.05, -3, 2.5e3, 5/8, 1-1/16 or 1 1/16 at the very beginning of a text. The decimal sign
 * is a point in every locale. The fraction beside a whole number must be below 1. */
struct number_found number_read(const char *text);

/* Writes a finite number with so many decimals, a point in every locale, never in exponent form
 * and never as minus zero; lives in the arena. */
char *number_print(struct arena *arena, double value, int decimals);

/* Decimals that show so many significant digits of a value, never more than most. */
int number_decimals(double value, int significant, int most);

#endif
