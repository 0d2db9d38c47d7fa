#ifndef FIRMPEDAL_TESTS_SUPPORT_OUTSIDE_H
#define FIRMPEDAL_TESTS_SUPPORT_OUTSIDE_H

#include <stdbool.h>

/* Checks against something outside the project, which write themselves down: docs/checks.md is made
 * of what they say (see tests/reference/checks_page.c). */

/* Where a figure comes from. */
struct outside {
    const char *id;     /* short, one for each example: "D1" */
    const char *source; /* author, title, place in it; or the library */
    const char *status; /* read, transcription, quoted, inputs read, from memory, constructed,
                           library: as tests/reference/SOURCES.md explains */
};

/* Fails the test unless ours is within the tolerance, in the unit of both, of what the source
 * prints; and writes the comparison down. */
#define outside_printed(source, what, unit, theirs, ours, tolerance)                               \
    outside_check((source), (what), (unit), true, (theirs), (ours), (tolerance), __FILE__, __LINE__)

/* The same with a figure that is not printed there but was worked out again from the source's
 * inputs, elsewhere and with more digits. */
#define outside_again(source, what, unit, theirs, ours, tolerance)                                 \
    outside_check((source), (what), (unit), false, (theirs), (ours), (tolerance), __FILE__,        \
                  __LINE__)

/* A line for each comparison goes at the end of the file that OUTSIDE_CHECKS names, fields with
 * tabs between: id, source, status, what, unit, "printed" or "again", theirs, ours, tolerance. */
void outside_check(const struct outside *source, const char *what, const char *unit, bool printed,
                   double theirs, double ours, double tolerance, const char *file, int line);

#endif
