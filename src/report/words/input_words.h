#ifndef FIRMPEDAL_REPORT_WORDS_INPUT_WORDS_H
#define FIRMPEDAL_REPORT_WORDS_INPUT_WORDS_H

#include "advice/figures/trace.h"
#include "units/unit.h"

/* Words about a value of the description that a figure rests on. */

/* A value of a key in the reader's units: "20.6 mm", "fixed", "2". */
const char *key_value_words(struct arena *arena, const struct key *key, double value,
                            enum unit_system units);
/* The value as it was written, with the reader's units beside where they differ:
 * "13/16 in (20.64 mm)". */
const char *input_value_words(struct arena *arena, const struct trace_input *input,
                              enum unit_system units);
/* "given", "given for several", "taken from a work file", "follows from other words", "assumed" */
const char *origin_words(enum origin_kind kind);
/* "systems/van.ini:28", or "" */
const char *place_words(struct arena *arena, struct place place);
/* "+12 %": by which part of itself a figure changes; "becomes 3 %" where it was 0; "none left"
 * where it could not be computed any more. */
const char *change_words(struct arena *arena, const struct figure *figure, double now,
                         enum unit_system units);

#endif
