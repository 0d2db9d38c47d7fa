#ifndef FIRMPEDAL_TESTS_INPUT_CAR_TEXT_H
#define FIRMPEDAL_TESTS_INPUT_CAR_TEXT_H

#include <stdbool.h>

#include "input/read.h"
#include "network/work.h"

/* A car read from words in a test. */
struct car_text {
    struct arena *arena;
    struct messages messages;
    struct system *system; /* NULL when there was a mistake */
};

/* A small car without fault: one circuit to two front discs. Lines can be put behind it. */
extern const char small_car[];

struct car_text car_read(const char *text);
/* The small car with more lines. */
struct car_text car_read_more(const char *more);
/* A file below the root of the sources. */
struct car_text car_load(const char *below);
void car_finish(struct car_text *car);

/* The bytes of a file below the root of the sources. */
struct source source_below(struct arena *arena, const char *below);

/* The part of that name; fails the test when there is none or no car. */
const struct part *car_part(const struct car_text *car, const char *name);
/* Whether two parts stand against each other, by words as "front tee" or "load valve:1" (chamber
 * behind a colon, 0 when none is given). */
bool car_joined(const struct car_text *car, const char *a, const char *b);
/* Whether a message of that id is among those of the car. */
bool car_has(const struct car_text *car, const char *id);

/* What differs between two cars, the order of parts and connections aside; NULL when nothing. */
const char *car_difference(const struct system *a, const struct system *b, struct arena *arena);

#endif
