#include "base/list.h"

#include <stdint.h>
#include <string.h>

void *list_room(struct arena *arena, void *items, size_t count, size_t *capacity, size_t size)
{
    if (count >= *capacity) {
        /* A capacity that can no longer be doubled makes a product that overflows, which the
         * arena takes as no memory. */
        size_t wanted = *capacity == 0 ? 8 : *capacity > SIZE_MAX / 2 ? SIZE_MAX : *capacity * 2;
        char *grown = arena_new_array(arena, wanted, size);
        if (count > 0)
            memcpy(grown, items, count * size);
        items = grown;
        *capacity = wanted;
    }
    memset((char *)items + count * size, 0, size);
    return items;
}
