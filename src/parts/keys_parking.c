#include "parts/rows.h"

/* clang-format off */

static const struct key rows[] = {
    {.name = "works", .others = "acts on", PARTS(as.parking.works), REQUIRED,
     .example = "rear drum", .help = "the brakes it acts on"},
    {.name = "lever ratio", .others = "ratio", NUMBER(as.parking.lever_ratio),
     WITHIN(0.5, 60), USUALLY(3, 15), ASSUME_NOTHING,
     .example = "7", .help = "hand to pivot over cable to pivot", MEASURED},
    {.name = "shoe lever ratio", NUMBER(as.parking.shoe_ratio),
     WITHIN(0.5, 60), USUALLY(2, 12), ASSUME_NOTHING,
     .example = "4.5", .help = "in the brake: cable to pivot over shoe to pivot", MEASURED},
    {.name = "cable loss", SHARE(as.parking.cable_loss),
     WITHIN(0, 0.95), USUALLY(0.05, 0.5), ASSUME(0.25, MEMORY),
     .example = "25 %", .help = "share of the pull that cable and sheaves eat up"},
    {.name = "effort", .others = "hand force", FORCE(as.parking.effort),
     WITHIN(1, 2000), USUALLY(50, 600), ASSUME(400, MEMORY),
     .example = "400 N", .help = "pull of the hand at which it is checked"},
    {.name = "clicks", .others = "notches", COUNT(as.parking.clicks),
     WITHIN(1, 60), USUALLY(2, 12), ASSUME_NOTHING,
     .example = "6", .help = "of the lever when it holds", MEASURED},
    ROW_NOTE};

const struct key *keys_parking(size_t *count)
{
    return ROWS_OF(rows, count);
}
