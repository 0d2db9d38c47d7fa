#include "parts/keys/rows.h"

static double third(const struct part *part)
{
    return part->as.reservoir.capacity.m3 / 3;
}

/* clang-format off */

static const struct key rows[] = {
    {.name = "capacity", .others = "volume", VOLUME(as.reservoir.capacity),
     WITHIN(1e-6, 10e-3), USUALLY(20e-6, 1.5e-3), ASSUME_NOTHING,
     .example = "280 mL", .help = "from the MAX mark down to empty", MEASURED},
    {.name = "usable", .others = "usable volume", VOLUME(as.reservoir.usable),
     WITHIN(1e-6, 10e-3), USUALLY(5e-6, 1e-3),
     ASSUME_BY(third, "a third of the capacity; " PRACTICE),
     .example = "90 mL", .help = "from the MAX mark to the MIN mark", MEASURED},
    {.name = "fluid", ONE_PART(as.reservoir.fluid),
     .example = "brake fluid", .help = "which fluid section, where there are several"},
    ROW_ON, ROW_HEIGHT, ROW_NOTE};

const struct key *keys_reservoir(size_t *count)
{
    return ROWS_OF(rows, count);
}
