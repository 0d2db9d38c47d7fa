#ifndef FIRMPEDAL_STARTERS_STARTER_H
#define FIRMPEDAL_STARTERS_STARTER_H

#include <stddef.h>

#include "starters/picks.h"

/* What a description to start from consists of: sections with the keys that matter, some of them
 * filled in, and the runs, put together from what kind of car it is. */

/* A line of a section: the row, by its field, and what is written; NULL writes "?". */
struct filled {
    size_t field;
    const char *value;
    picks with; /* only with one of these words; 0: always */
    bool guess; /* what is usual, to be asked all the same */
};

/* A section of a starter. The header's words name the kind of part. */
struct outline {
    const char *header;
    const struct filled *lines;
    size_t count;
};

struct starter {
    picks said; /* by the person */
    picks all;  /* with the usual words */
    struct outline *sections;
    size_t section_count;
    const char **runs; /* a run each, "front feed = brake master.front, pipe, front tee" */
    size_t run_count;
};

/* The starter for what was said; it reads without mistakes. In the arena. */
struct starter starter_of(picks said, struct arena *arena);

#endif
