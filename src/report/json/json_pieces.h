#ifndef FIRMPEDAL_REPORT_JSON_JSON_PIECES_H
#define FIRMPEDAL_REPORT_JSON_JSON_PIECES_H

#include <jansson.h>

#include "advice/result.h"
#include "base/date.h"

/* Pieces of JSON that several answers are made of. Each gives a new object. */

/* null where there are no words, or no finite value. */
json_t *string_or_null(const char *words);
json_t *real_or_null(double value);
/* The SI unit of values of a kind: "m3". */
const char *si_unit(enum dimension dimension);
/* "file" and "line", where they are known. */
void set_place(json_t *into, struct place place);
void set_date(json_t *into, const char *key, struct date date);
/* Keys as the description writes them. */
json_t *cited_array(struct arena *arena, const struct system *system, const struct cited_key *keys,
                    int count);
json_t *figure_object(struct arena *arena, const struct result *result,
                      const struct figure *figure);

/* A list of steps. */
json_t *steps_array(struct arena *arena, const struct result *result, const struct steps *steps);

#endif
