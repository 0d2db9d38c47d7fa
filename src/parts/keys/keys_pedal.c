#include "parts/keys/rows.h"

/* A balance bar stands between two masters. */
static bool has_bar(const struct part *part)
{
    return part->as.pedal.works.count != 1;
}

static double worked_by(const struct part *part)
{
    (void)part;
    return PEDAL_FOOT;
}

static double effort(const struct part *part)
{
    return part->as.pedal.type == PEDAL_HAND ? 130 : 300;
}

/* clang-format off */

static const struct choice pedal_types[] = {
    {"foot", "pedal", PEDAL_FOOT, "a pedal"},
    {"hand", "lever, hand lever", PEDAL_HAND, "the hand lever of a motorcycle"},
    {0}};

static const struct key rows[] = {
    {.name = "worked by", .others = "type", CHOICE_OF(as.pedal.type), .choices = pedal_types,
     UNBOUNDED, ASSUME_BY(worked_by, "foot, unless its name says lever or hand; " PRACTICE),
     .example = "foot", .help = "foot or hand; said by its name already"},
    {.name = "works", .others = "acts on, pushes", PARTS(as.pedal.works), REQUIRED,
     .example = "brake master",
     .help = "the master or servo its rod pushes; two with a balance bar: first, second"},
    {.name = "ratio", .others = "pedal ratio, leverage, lever ratio", NUMBER(as.pedal.ratio),
     WITHIN(0.2, 30), USUALLY(2.2, 9), ASSUME_NOTHING,
     .example = "3.8", .help = "pad travel over rod travel; or give the two lengths below"},
    {.name = "pad to pivot", .others = "pedal arm, pivot to pad", LENGTH(as.pedal.pad_arm),
     WITHIN(10e-3, 2), USUALLY(50e-3, 0.45), ASSUME_NOTHING,
     .example = "290 mm", .help = "centre of the pad to the pivot, square to the push of the foot",
     MEASURED},
    {.name = "rod to pivot", .others = "rod arm, pivot to rod", LENGTH(as.pedal.rod_arm),
     WITHIN(2e-3, 1), USUALLY(12e-3, 0.15), ASSUME_NOTHING,
     .example = "76 mm", .help = "clevis pin of the push rod to the pivot, square to the rod", MEASURED},
    {.name = "efficiency", NUMBER(as.pedal.efficiency),
     WITHIN(0.3, 1), USUALLY(0.85, 1), ASSUME(0.95, MEMORY),
     .example = "0.95", .help = "of pivot and linkage"},
    {.name = "free play", .others = "free travel, play", LENGTH(as.pedal.free_play),
     WITHIN(0, 0.1), USUALLY(0.5e-3, 20e-3), ASSUME_NOTHING,
     .example = "4 mm",
     .help = "at the pad, by hand until it resists: the rod's gap lies within; else that gap counts",
     MEASURED, TRAVELS_ONLY},
    {.name = "travel", .others = "pedal travel", LENGTH(as.pedal.travel),
     WITHIN(5e-3, 0.6), USUALLY(20e-3, 0.2), ASSUME_NOTHING,
     .example = "150 mm", .help = "at the pad, from rest to the floor (lever: to the bar)", MEASURED,
     TRAVELS_ONLY},
    {.name = "stop", .others = "pedal stop, travel to stop", LENGTH(as.pedal.stop),
     WITHIN(5e-3, 0.6), USUALLY(NAN, NAN), ASSUME_NOTHING,
     .example = "130 mm", .help = "at the pad, from rest to a stop that ends it before the floor",
     TRAVELS_ONLY},
    {.name = "stiffness", QUANTITY(DIMENSION_STIFFNESS, as.pedal.stiffness),
     WITHIN(1e3, 1e9), USUALLY(50e3, 1e6), ASSUME(200e3, MEMORY),
     .example = "200 N/mm", .help = "of pedal, bracket and bulkhead together, at the pad",
     TRAVELS_ONLY},
    {.name = "return spring", .others = "pedal spring", FORCE(as.pedal.return_spring),
     WITHIN(0, 1000), USUALLY(0, 60),
     ASSUME(0, "left out, as it differs from car to car: measure it; " PRACTICE),
     .example = "25 N",
     .help = "force on the pad that the spring alone takes: spring balance, rod undone"},
    {.name = "effort", .others = "pedal effort, foot force, pedal force", FORCE(as.pedal.effort),
     WITHIN(1, 20e3), USUALLY(30, 1000),
     ASSUME_BY(effort, "300 N at a pedal, 130 N at a hand lever: a hard stop; " PRACTICE),
     .example = "220 N", .help = "force on the pad at which the car is checked"},
    {.name = "bar to first", LENGTH(as.pedal.bar_first), ONLY(has_bar),
     WITHIN(1e-3, 0.5), USUALLY(8e-3, 80e-3), ASSUME_NOTHING,
     .example = "32 mm", .help = "balance bar: its bearing to the rod of the first master", MEASURED},
    {.name = "bar to second", LENGTH(as.pedal.bar_second), ONLY(has_bar),
     WITHIN(1e-3, 0.5), USUALLY(8e-3, 80e-3), ASSUME_NOTHING,
     .example = "28 mm", .help = "balance bar: its bearing to the rod of the second master", MEASURED},
    ROW_ON, ROW_NOTE};

const struct key *keys_pedal(size_t *count)
{
    return ROWS_OF(rows, count);
}
