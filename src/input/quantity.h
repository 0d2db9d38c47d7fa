#ifndef FIRMPEDAL_INPUT_QUANTITY_H
#define FIRMPEDAL_INPUT_QUANTITY_H

#include <stdbool.h>

#include "input/mistakes.h"
#include "parts/keys/key.h"

/* Reads a quantity of the row's dimension, "about 2.9 m" too, and keeps it within the row's limits.
 * *tolerance: half width, NaN when none was written. false with a message when it cannot. */
bool quantity_read(const struct key *key, struct written value, double *si, double *tolerance,
                   struct input *input);

/* Checks a value against the limits of its row (false with a message) and its usual range (a
 * remark, true). */
bool limits_keep(const struct key *key, double si, struct written value, struct input *input);

/* Adds the message for what unit_read made of words that should be a quantity. what: "bore";
 * example: what could be written. */
struct reading;
void quantity_refuse(const struct reading *reading, const char *what, enum dimension dimension,
                     struct written value, const char *example, struct input *input);

#endif
