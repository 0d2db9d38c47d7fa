#ifndef FIRMPEDAL_TESTS_SUPPORT_FAILING_ARENA_H
#define FIRMPEDAL_TESTS_SUPPORT_FAILING_ARENA_H

#include <stddef.h>

#include "base/arena.h"

/* A source of blocks that fails once it was asked often enough, and counts what is still out.
 *
 *     struct failing_arena blocks = {.fails_at = 3};
 *     struct arena *arena = arena_create_on(failing_arena_source(&blocks));
 */
struct failing_arena {
    size_t fails_at; /* 1: the first call fails and all after it; 0: none fails */
    size_t asked;    /* calls so far */
    size_t out;      /* blocks given and not taken back */
};

struct arena_source failing_arena_source(struct failing_arena *blocks);

#endif
