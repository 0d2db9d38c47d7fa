#ifndef FIRMPEDAL_INPUT_READING_LINE_H
#define FIRMPEDAL_INPUT_READING_LINE_H

#include "input/lines.h"
#include "network/system.h"

/* Reads a line of [readings]: "line pressure of front circuit = 60 bar at 300 N". The figure's
 * words are joined with hyphens, the dimension is that of the unit; which figure it is, is not
 * known here. false with a message when it cannot be read. */
bool reading_line_read(const struct entry *entry, struct taken_reading *into, struct input *input);

#endif
