#ifndef FIRMPEDAL_INPUT_VALUE_H
#define FIRMPEDAL_INPUT_VALUE_H

#include "input/lines.h"
#include "parts/keys/key.h"

/* Reading the value of one line by the row of its key. */

/* Sets the field of the row in the struct at base, and the origin. false with a message when the
 * value cannot be read. "?" leaves the field as it is and sets ORIGIN_ASKED. "about 2.9 m" is
 * 2.9 m give or take a fifth. Names of parts are left as they are (FORM_PART: nothing is set). */
bool value_read(const struct key *key, const struct entry *entry, void *base, struct origin *origin,
                struct input *input);

/* Whether the value is a question mark. */
bool value_is_asked(const struct entry *entry);

/* Copies the field of a row from one struct to another. */
void field_copy(const struct key *key, void *to, const void *from);

/* Several words or names, each with its place. */
struct written_list {
    struct written *items;
    size_t count;
    size_t capacity;
};
/* Splits words at commas and leaves blanks out; empty items come as empty texts. */
struct written_list written_split(struct written list, struct arena *arena);

#endif
