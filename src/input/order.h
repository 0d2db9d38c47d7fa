#ifndef FIRMPEDAL_INPUT_ORDER_H
#define FIRMPEDAL_INPUT_ORDER_H

#include "input/car.h"

/* Reads the maker's own bleed order, once all parts are complete. */
struct own_order order_read(struct car *car);

/* The words for a nipple that order_read understands: "front right disc outer nipple". */
const char *order_words(const struct part *part, int nipple, struct arena *arena);

#endif
