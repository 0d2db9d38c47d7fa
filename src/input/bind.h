#ifndef FIRMPEDAL_INPUT_BIND_H
#define FIRMPEDAL_INPUT_BIND_H

#include "input/schema.h"
#include "input/value.h"
#include "parts/keys/key.h"

/* Putting values into fields by the rows of their tables. */

/* A table and what its section said. */
struct bound {
    const struct key *rows;
    size_t count;
    const struct entry **entries; /* by row: the line that gave it, or NULL; kept although the value
                                     was refused, so that it does not seem missing */
    struct origin *origins;       /* by row */
    void *base;                   /* the struct whose fields the rows describe */
};
struct bound bound_start(struct arena *arena, const struct key *rows, size_t count, void *base);

/* Reads a line into its field. false when its key is not in the table (without a message); a
 * mistake in its value, or a key given before, leaves a message. */
bool bound_take(struct bound *bound, const struct entry *entry, struct input *input);

/* Index of the row that a line's key means, -1 when there is none. A list may go on under the same
 * name with a number: "renewed 2". */
int bound_row(const struct bound *bound, const struct entry *entry);

/* The message for a line whose key is in neither table; more may be NULL. */
void bound_refuse(const struct bound *bound, const struct bound *more, const struct entry *entry,
                  struct written header, struct input *input);

/* Messages for required rows that were not given. */
void bound_require(const struct bound *bound, struct written header, struct input *input);

#endif
