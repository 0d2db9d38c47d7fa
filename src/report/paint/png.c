#include "report/paint/png.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

#include "base/list.h"

/* The signature, and the first chunk behind it, IHDR: 13 bytes with 12 around them. */
enum { SIGNATURE = 8, HEAD = SIGNATURE + 25, CHUNK = 21 };

static void put(unsigned char *at, uint32_t value)
{
    for (int i = 0; i < 4; i++)
        at[i] = (unsigned char)(value >> (24 - 8 * i));
}

/* The check sum of a chunk, over its name and its data. */
static uint32_t check_sum(const unsigned char *bytes, size_t count)
{
    uint32_t sum = 0xffffffffu;
    for (size_t i = 0; i < count; i++) {
        sum ^= bytes[i];
        for (int bit = 0; bit < 8; bit++)
            sum = sum & 1 ? 0xedb88320u ^ (sum >> 1) : sum >> 1;
    }
    return ~sum;
}

void png_state_resolution(struct bytes *png, double dots)
{
    static const unsigned char signature[SIGNATURE] = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    if (png->count < HEAD || memcmp(png->items, signature, SIGNATURE) != 0)
        return;
    uint32_t per_metre = (uint32_t)lround(dots / 0.0254);
    unsigned char chunk[CHUNK] = {0, 0, 0, 9, 'p', 'H', 'Y', 's', [16] = 1};
    put(chunk + 8, per_metre);
    put(chunk + 12, per_metre);
    put(chunk + 17, check_sum(chunk + 4, 13));
    while (png->capacity - png->count < CHUNK)
        png->items = list_room(png->arena, png->items, png->capacity, &png->capacity, 1);
    memmove(png->items + HEAD + CHUNK, png->items + HEAD, png->count - HEAD);
    memcpy(png->items + HEAD, chunk, CHUNK);
    png->count += CHUNK;
}
