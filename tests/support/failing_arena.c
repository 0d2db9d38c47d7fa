#include "support/failing_arena.h"

#include <stdlib.h>

static void *give(size_t size, void *context)
{
    struct failing_arena *blocks = context;
    blocks->asked++;
    if (blocks->fails_at > 0 && blocks->asked >= blocks->fails_at)
        return NULL;
    void *block = malloc(size);
    if (block)
        blocks->out++;
    return block;
}

static void take_back(void *block, void *context)
{
    struct failing_arena *blocks = context;
    blocks->out--;
    free(block);
}

struct arena_source failing_arena_source(struct failing_arena *blocks)
{
    return (struct arena_source){give, take_back, blocks};
}
