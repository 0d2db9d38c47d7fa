#include "parts/keys/rows.h"

static double usual_wall(const struct part *part)
{
    double wall = tube_usual_wall(part->as.pipe.size).m;
    return wall > 0 ? wall : 0.7112e-3;
}

/* clang-format off */

static const struct choice materials[] = {
    {"steel", "plated steel, coated steel", PIPE_STEEL, "plated or coated steel; a magnet holds"},
    {"copper-nickel", "cupronickel, copper nickel alloy", PIPE_COPPER_NICKEL, "copper with a tenth of nickel"},
    {"copper", "plain copper", PIPE_COPPER, "red all through, no nickel; it hardens and cracks"},
    {0}};

static const struct key rows[] = {
    {.name = "length", LENGTH(as.pipe.length),
     WITHIN(5e-3, 30), USUALLY(50e-3, 6), ASSUME_NOTHING,
     .example = "2.6 m", .help = "end to end along its bends; the run says it already", MEASURED,
     TRAVELS_ONLY},
    {.name = "size", .others = "diameter, outside diameter", LENGTH(as.pipe.size),
     WITHIN(2e-3, 30e-3), USUALLY(4e-3, 9e-3), ASSUME(4.7625e-3, "3/16 in; " PRACTICE),
     .example = "3/16 in", .help = "outside diameter, on bare metal", MEASURED, TRAVELS_ONLY},
    {.name = "wall", .others = "wall thickness", LENGTH(as.pipe.wall),
     WITHIN(0.2e-3, 5e-3), USUALLY(0.5e-3, 1.3e-3),
     ASSUME_BY(usual_wall, "that of the standard tube of its size, else 0.028 in; " PRACTICE),
     .example = "0.028 in", .help = "thickness of its wall", TRAVELS_ONLY},
    {.name = "highest", .others = "highest point", LENGTH(as.pipe.highest),
     WITHIN(0, 4), USUALLY(0.05, 1.8), ASSUME_NOTHING,
     .example = "0.70 m",
     .help = "height above the ground where it goes over something, higher than both its ends",
     FIGURES_ONLY},
    {.name = "lowest", .others = "lowest point", LENGTH(as.pipe.lowest),
     WITHIN(0, 4), USUALLY(0.05, 1.8), ASSUME_NOTHING,
     .example = "0.15 m",
     .help = "height above the ground where it dips below both its ends", FIGURES_ONLY},
    {.name = "material", CHOICE_OF(as.pipe.material), .choices = materials, UNBOUNDED,
     ASSUME(PIPE_STEEL, PRACTICE),
     .example = "steel", .help = "what it is made of", MEASURED, TRAVELS_ONLY},
    {.name = "renewed", DATE(as.pipe.renewed),
     .example = "2019", .help = "when it was made or fitted"},
    {.name = "thread", TEXT(as.pipe.thread),
     .example = "M10 x 1", .help = "of its nuts, by pitch gauge", MEASURED},
    {.name = "flare", .others = "seat", TEXT(as.pipe.flare),
     .example = "double", .help = "shape of its ends: double (inverted), bubble", MEASURED},
    ROW_NOTE};

const struct key *keys_pipe(size_t *count)
{
    return ROWS_OF(rows, count);
}
