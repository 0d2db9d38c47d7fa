#ifndef FIRMPEDAL_MANUAL_LAYOUTS_H
#define FIRMPEDAL_MANUAL_LAYOUTS_H

#include <stddef.h>

/* What the starters in template.c are made of. */

/* A line of a section: the row, by its field, and what is written; NULL writes "?". */
struct filled {
    size_t field;
    const char *value;
};

/* A section of a starter. The header's words name the kind of part. */
struct outline {
    const char *header;
    const struct filled *lines;
    size_t count;
};

#endif
