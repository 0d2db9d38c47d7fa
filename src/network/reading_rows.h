#ifndef FIRMPEDAL_NETWORK_READING_ROWS_H
#define FIRMPEDAL_NETWORK_READING_ROWS_H

#include "parts/keys/key.h"

/* What can be read at the car, a row each: the one table behind [readings], docs/input.md, the
 * lines for readings on the sheet and the comparing. */

enum reading_of {
    READING_OF_CAR,
    READING_OF_PEDAL, /* a brake pedal or hand lever */
    READING_OF_CIRCUIT,
    READING_OF_BRAKE,
    READING_OF_CLUTCH, /* a clutch slave */
    READING_OF_HAND_BRAKE,
    READING_OF_SERVO
};

struct reading_row {
    const char *figure;   /* id of the figure that it is compared with: "pedal-travel" */
    enum reading_of of;   /* what it is read of */
    bool at_effort;       /* hangs on the effort at the pedal or lever */
    double resolves;      /* SI; a difference below this cannot be told by such a reading: common
                             practice, no source */
    const struct key key; /* its name, unit, limits, example; help: how to take it */
    bool elsewhere;       /* needs a tester of an inspection, or follows from another reading */
};
const struct reading_row *reading_rows(size_t *count);
/* The row of that figure, or NULL. */
const struct reading_row *reading_row(const char *figure);
/* "each brake circuit" */
const char *reading_of_words(enum reading_of of);

#endif
