#include "advice/bleeding/bottles.h"

#include <math.h>

#include "base/text.h"

/* Each is a multiple of the next, so the largest that fit first are the fewest. */
static const struct {
    double volume;
    const char *words;
} sizes[BOTTLE_SIZES] = {{1e-3, "1 L"}, {500e-6, "500 mL"}, {250e-6, "250 mL"}};

#define SMALLEST 250e-6
/* Less than a drop over the brim is no further bottle. */
#define DROP 0.05e-6

struct bottles bottles_for(struct volume needed)
{
    struct bottles bottles = {.held = {0}};
    double left = ceil((fmin(needed.m3, 1) - DROP) / SMALLEST) * SMALLEST;
    for (int i = 0; i < BOTTLE_SIZES; i++) {
        bottles.count[i] = (int)floor(left / sizes[i].volume + 1e-9);
        left -= bottles.count[i] * sizes[i].volume;
        bottles.held.m3 += bottles.count[i] * sizes[i].volume;
    }
    return bottles;
}

const char *bottles_words(struct arena *arena, const struct bottles *bottles)
{
    struct text words = text_start(arena);
    bool first = true;
    for (int i = 0; i < BOTTLE_SIZES; i++) {
        int count = bottles->count[i];
        if (count == 0)
            continue;
        if (first)
            text_add(&words, "%d bottle%s of %s", count, count == 1 ? "" : "s", sizes[i].words);
        else
            text_add(&words, " and %d of %s", count, sizes[i].words);
        first = false;
    }
    return words.items;
}
