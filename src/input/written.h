#ifndef FIRMPEDAL_INPUT_WRITTEN_H
#define FIRMPEDAL_INPUT_WRITTEN_H

#include <stddef.h>

#include "base/arena.h"
#include "base/place.h"

/* Words that a person wrote, with the place where they stand. */
struct written {
    const char *text;   /* the words; NULL when nothing was written */
    const char *line;   /* the whole line they stand on, safe to print, or NULL */
    struct place place; /* of their first letter */
};

/* A part of the words: length bytes from start, blanks at both ends left out. */
struct written written_part(struct arena *arena, struct written whole, size_t start, size_t length);

#endif
