#ifndef FIRMPEDAL_TESTS_SUPPORT_NEAR_H
#define FIRMPEDAL_TESTS_SUPPORT_NEAR_H

#include <stdbool.h>

#include "support/cmocka_all.h"

/* Comparisons in double; cmocka's own round to float. A NaN is near to nothing. */

/* Fails the test unless the two differ by no more than the tolerance, in the unit of both. */
#define near(actual, expected, tolerance)                                                          \
    near_check((actual), (expected), (tolerance), false, #actual, __FILE__, __LINE__)
#define near_abs(actual, expected, tolerance) near(actual, expected, tolerance)

/* The same with the tolerance as a part of the expected value: 1e-3 is a thousandth of it. */
#define near_rel(actual, expected, tolerance)                                                      \
    near_check((actual), (expected), (tolerance), true, #actual, __FILE__, __LINE__)

/* Fails the test unless the value is not known. */
#define near_unknown(actual) near_check_unknown((actual), #actual, __FILE__, __LINE__)

bool near_enough(double actual, double expected, double tolerance, bool relative);
void near_check(double actual, double expected, double tolerance, bool relative, const char *what,
                const char *file, int line);
void near_check_unknown(double actual, const char *what, const char *file, int line);

#endif
