#ifndef FIRMPEDAL_INPUT_BUILD_H
#define FIRMPEDAL_INPUT_BUILD_H

#include "input/car.h"

/* Makes parts of the sections of a description: both sides where none is said, the low-pressure
 * hoses that masters and servos name. The special sections are noted for later steps. */
void build_parts(struct car *car, const struct read_lines *document);

/* After all connections: messages for what parts lack, and typical values for what may be
 * assumed. */
void build_finish(struct car *car);

#endif
