#ifndef FIRMPEDAL_MANUAL_TEMPLATE_H
#define FIRMPEDAL_MANUAL_TEMPLATE_H

#include "base/text.h"
#include "starters/starter.h"

/* Writes the description to start from: its sections with what is known of the car filled in and
 * the rest as "?", each line with its help. It reads without mistakes. */
void template_start(struct text *into, const struct starter *starter);

#endif
