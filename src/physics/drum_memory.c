#include "physics/drum_memory.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

/* By how much friction is moved to see how steeply the factor follows. */
#define FRICTION_STEP 1e-3

static double factor_at(const struct drum *drum, double times)
{
    return drum_factor_with(drum, (struct number){drum->friction.value * times}, true);
}

static void work_out(const struct drum *drum, struct drum_memory *memory)
{
    double spread = drum->friction_spread.of_1;
    memory->of = *drum;
    memory->ahead = drum_shoe_factors(drum, drum->friction, true);
    memory->back = drum_shoe_factors(drum, drum->friction, false);
    memory->forward = memory->ahead.front + memory->ahead.rear;
    memory->reverse = memory->back.front + memory->back.rear;
    memory->most = factor_at(drum, 1 + spread);
    memory->least = factor_at(drum, 1 - spread);
    memory->sensitivity =
        log(factor_at(drum, 1 + FRICTION_STEP) / factor_at(drum, 1 - FRICTION_STEP)) /
        log((1 + FRICTION_STEP) / (1 - FRICTION_STEP));
}

/* All bits alike of what the factors rest on, padding too, or they are worked out anew. The bore is
 * no part of that. */
static bool is_of(const struct drum_memory *memory, const struct drum *drum)
{
    struct drum same;
    if (memory->of.bore.m == 0)
        return false;
    memcpy(&same, drum, sizeof same);
    same.bore = memory->of.bore;
    return memcmp(&memory->of, &same, offsetof(struct drum, efficiency)) == 0 &&
           memcmp(&memory->of.friction_spread, &same.friction_spread,
                  sizeof same.friction_spread) == 0;
}

const struct drum_memory *drum_remembered(const struct system *system, int drum,
                                          const struct solution *room)
{
    const struct drum *data = &system->parts[drum].as.drum;
    struct drum_memory *own = &room->drums[drum];
    if (is_of(own, data))
        return own;
    for (int b = 0; b < room->brake_count; b++) {
        const struct drum_memory *other = &room->drums[room->brakes_at[b]];
        if (is_of(other, data)) {
            *own = *other;
            return own;
        }
    }
    work_out(data, own);
    return own;
}

void drum_memory_share(struct solution *room, const struct solution *with)
{
    room->drums = with->drums;
}
