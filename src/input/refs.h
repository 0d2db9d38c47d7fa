#ifndef FIRMPEDAL_INPUT_REFS_H
#define FIRMPEDAL_INPUT_REFS_H

#include "input/car.h"

/* Finds the parts that keys name (works, reservoir, casting, fluid), and where nothing is named
 * takes the only one there is, marked assumed. */
void refs_resolve(struct car *car);

#endif
