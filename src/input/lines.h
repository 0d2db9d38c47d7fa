#ifndef FIRMPEDAL_INPUT_LINES_H
#define FIRMPEDAL_INPUT_LINES_H

#include <stdbool.h>

#include "input/mistakes.h"
#include "input/source.h"

/* The lines of a file as sections with keys and values, each with its place; what they mean is
 * not known here. */

struct entry {
    struct written key;
    struct written value; /* text NULL when the line was refused and has had its message */
};

struct section {
    struct written name;
    bool refused; /* its header is no use and has had its message */
    bool missed;  /* a line of it could not be read at all, so a key may seem missing */
    struct entry *items;
    size_t count;
    size_t capacity;
};

struct read_lines {
    struct section *items;
    size_t count;
    size_t capacity;
};

/* Longest line without its end that inih takes whole, in bytes, and longest header (stock build
 * of release 55). */
enum { LINE_MOST = 198, HEADER_MOST = 49 };

/* Splits a file. inih does the splitting of key and value; lines come to it through a reader that
 * counts them, undoes indents and keeps back, with a message, all that inih would cut, merge or
 * drop without a word. */
struct read_lines lines_read(const struct source *source, struct input *input);

#endif
