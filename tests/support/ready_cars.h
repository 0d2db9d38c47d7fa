#ifndef FIRMPEDAL_TESTS_SUPPORT_READY_CARS_H
#define FIRMPEDAL_TESTS_SUPPORT_READY_CARS_H

#include <stddef.h>

#include "advice/result.h"

/* Results of the ready cars in systems/, for tests of reports. Day: 2026-11-20. */

/* Paths below the root of the sources, in order of name; the list ends with NULL. */
const char **ready_cars(struct arena *arena);
/* Reads a car, lays a work file (may be NULL; from the root of all where it begins with /) over it
 * and works out all there is to say. Fails the test when a file cannot be used. */
struct result *ready_result(struct arena *arena, const char *car, const char *work);

/* How wide words would be, mm, if every letter were 0.6 times as wide as the font is high (size in
 * points): for rulers that do not depend on the fonts of a machine. */
double fixed_width(void *context, const char *words, double size);

#endif
