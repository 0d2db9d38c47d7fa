#ifndef FIRMPEDAL_INPUT_LETTERS_H
#define FIRMPEDAL_INPUT_LETTERS_H

#include <stdbool.h>
#include <stddef.h>

#include "input/mistakes.h"

/* A line as it stands in a file, without its end. */
struct raw_line {
    const char *bytes;
    size_t count;
    int number;
};

/* Gives a copy of a line in which all that must not reach a terminal is a question mark, byte for
 * byte, and adds a message for the first letter that has no place in a description. *fine tells
 * whether there was none. Other blanks than the plain one are allowed behind comment, the byte at
 * which a comment begins. */
struct written letters_check(struct raw_line raw, size_t comment, struct input *input, bool *fine);

/* The byte at which a comment begins in a line: at ; or # as its first letter, or at a ; that has
 * a blank before it; count when there is none. */
size_t letters_comment(const char *bytes, size_t count);

/* Whether the file begins like UTF-16: with its mark, or with NUL beside a letter. */
bool letters_are_utf_16(const char *bytes, size_t count);

#endif
