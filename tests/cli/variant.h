#ifndef FIRMPEDAL_TESTS_CLI_VARIANT_H
#define FIRMPEDAL_TESTS_CLI_VARIANT_H

#include <jansson.h>
#include <stdbool.h>
#include <stddef.h>

#include "firmpedal.h"

/* Ready cars as lines of text, changed a little and asked again through the public face. */

enum { MOST_LINES = 400, MOST_CARS = 32 };

struct lines {
    char *items[MOST_LINES];
    size_t count;
};

/* Paths of all ready cars, in the order of their names. */
size_t variant_cars(char *paths[MOST_CARS]);
struct lines variant_lines(const char *path);
void variant_finish(struct lines *lines);

/* Asks a question of a description made of these lines, but for the left-out one (-1: none). NULL
 * when the description could not be used. The caller owns the answer (json_decref). */
json_t *ask_lines(const struct lines *lines, long left_out, enum fp_question question);
/* The same of a whole text. */
json_t *ask_text(const char *text, enum fp_question question);

/* The figure of an answer to FP_CHECK that has the same id, subject and cause as another. */
json_t *same_figure(json_t *answer, json_t *figure);
const char *text_of(json_t *object, const char *key);
/* The value of a figure of an answer to FP_CHECK, of this subject or (NULL) of the first one that
 * has it. Fails the test when there is none. */
double asked_figure(json_t *answer, const char *id, const char *of);

#endif
