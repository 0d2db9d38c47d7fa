#ifndef FIRMPEDAL_MANUAL_MEASURING_SHEET_H
#define FIRMPEDAL_MANUAL_MEASURING_SHEET_H

#include "base/text.h"
#include "starters/starter.h"

/* Writes a sheet to print and to fill in at the car: for each part of the car what to measure and
 * where to put the caliper, where the value comes from (measured, cast in, book, guessed), and
 * beside each port its thread, seat and outlet. 80 columns, every letter plain. */
void measuring_sheet(struct text *into, const struct starter *starter);

#endif
