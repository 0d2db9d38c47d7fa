#ifndef FIRMPEDAL_INPUT_EXPAND_H
#define FIRMPEDAL_INPUT_EXPAND_H

#include "base/text.h"
#include "network/system.h"

/* Writes the car as it now stands, work included, as a description in full: one section a part,
 * pipes and hoses too, each value with a comment that says where it comes from. What it writes
 * reads back to the same car. */
void expand_car(struct text *into, const struct system *system);

#endif
