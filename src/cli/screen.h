#ifndef FIRMPEDAL_CLI_SCREEN_H
#define FIRMPEDAL_CLI_SCREEN_H

#include <stdbool.h>
#include <stdio.h>

/* Where answers are read. */

enum { SCREEN_LEAST = 40, SCREEN_USUAL = 80, SCREEN_MOST = 100 };
struct screen {
    int columns; /* SCREEN_LEAST to SCREEN_MOST */
    bool lively; /* a terminal that shows bold and colour, and nobody asked for none */
};

/* Columns: what COLUMNS says (a shell exports it where a person wants it), else the terminal's,
 * else SCREEN_USUAL. Lively: a terminal, TERM is not dumb, and NO_COLOR is not set (no-color.org:
 * set to anything but nothing). */
struct screen screen_of(FILE *stream);

/* Words wrapped at the width: the first line begins after first blanks, further ones after hang. */
void screen_print(FILE *into, const char *words, int first, int hang, int width);
/* Words after a label, from a column on; on the next line where the label reaches beyond it. */
void screen_print_beside(FILE *into, const char *label, int indent, const char *words, int column,
                         int width);

#endif
