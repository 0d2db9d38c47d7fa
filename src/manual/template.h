#ifndef FIRMPEDAL_MANUAL_TEMPLATE_H
#define FIRMPEDAL_MANUAL_TEMPLATE_H

#include "base/text.h"
#include "parts/keys/key.h"
#include "starters/starter.h"

/* Writes the description to start from: its sections with what is known of the car filled in and
 * the rest as "?", each line with its help. It reads without mistakes. */
void template_start(struct text *into, const struct starter *starter);

/* A line "key = value" with its help beside it, or above where that is long. */
void template_line(struct text *into, const struct key *key, const char *value);

#endif
