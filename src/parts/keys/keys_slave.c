#include "parts/keys/rows.h"

static bool is_outside(const struct part *part)
{
    return part->as.slave.type != SLAVE_CONCENTRIC;
}

static bool is_concentric(const struct part *part)
{
    return part->as.slave.type != SLAVE_OUTSIDE;
}

/* clang-format off */

static const struct choice slave_types[] = {
    {"outside", "external, outer", SLAVE_OUTSIDE, "on the gearbox, pushing a fork"},
    {"concentric", "inside, internal, annular", SLAVE_CONCENTRIC, "around the gearbox shaft"},
    {0}};

static const struct key rows[] = {
    {.name = "type", CHOICE_OF(as.slave.type), PLAIN, .choices = slave_types, REQUIRED,
     .example = "outside", .help = "outside on the gearbox, or concentric around its shaft",
     TRAVELS_ONLY},
    {.name = "bore", .others = "diameter, cylinder bore, outer bore", LENGTH(as.slave.bore),
     CYLINDER_SIZES, ASSUME_NOTHING, REQUIRED,
     .example = "7/8 in", .help = "inside the cylinder; concentric: the outer diameter of its ring",
     MEASURED, TRAVELS_ONLY},
    {.name = "inner bore", .others = "inner diameter", LENGTH(as.slave.inner_bore), ONLY(is_concentric),
     WITHIN(2e-3, 0.4), USUALLY(20e-3, 60e-3), ASSUME_NOTHING,
     .example = "38 mm", .help = "concentric: the inner diameter of its ring", MEASURED,
     TRAVELS_ONLY},
    {.name = "stroke", LENGTH(as.slave.stroke),
     WITHIN(1e-3, 0.3), USUALLY(8e-3, 50e-3), ASSUME_NOTHING,
     .example = "28 mm", .help = "of the piston, until it would leave its bore", MEASURED,
     TRAVELS_ONLY},
    {.name = "fork ratio", .others = "lever ratio", NUMBER(as.slave.fork_ratio), ONLY(is_outside),
     WITHIN(0.2, 20), USUALLY(1.1, 4), ASSUME_NOTHING,
     .example = "1.7", .help = "outside: pivot to rod over pivot to bearing, along the fork", MEASURED,
     TRAVELS_ONLY},
    {.name = "efficiency", NUMBER(as.slave.efficiency),
     WITHIN(0.3, 1), USUALLY(0.85, 0.95), ASSUME(0.90, MEMORY),
     .example = "0.90", .help = "of slave seal, fork and guide tube together", TRAVELS_ONLY},
    {.name = "flex", SHARE(as.slave.flex),
     WITHIN(0, 0.6), USUALLY(0.08, 0.18), ASSUME(0.12, "10 to 15 %; " MEMORY),
     .example = "12 %", .help = "part of the plate's lift that fork and clutch cover bend away", FIGURES_ONLY},
    {.name = "bearing play", LENGTH(as.slave.play),
     WITHIN(0, 20e-3), USUALLY(0, 4e-3), ASSUME(0, PRACTICE),
     .example = "1.5 mm", .help = "travel of the bearing until it touches the fingers", MEASURED,
     TRAVELS_ONLY},
    {.name = "release force", FORCE(as.slave.release_force),
     WITHIN(10, 50e3), USUALLY(300, 5000), ASSUME_NOTHING,
     .example = "1150 N", .help = "at the bearing, its peak, from the clutch maker", TRAVELS_ONLY},
    {.name = "release force end", .others = "end release force", FORCE(as.slave.release_end),
     WITHIN(10, 50e3), USUALLY(200, 5000), ASSUME_NOTHING,
     .example = "850 N",
     .help = "at the bearing, at full travel, past the peak; only one said serves for both",
     TRAVELS_ONLY},
    {.name = "bearing travel", LENGTH(as.slave.bearing_travel),
     WITHIN(0.5e-3, 0.1), USUALLY(4e-3, 16e-3), ASSUME_NOTHING,
     .example = "7.5 mm", .help = "that frees the clutch", FIGURES_ONLY},
    {.name = "most bearing travel", .others = "maximum bearing travel",
     LENGTH(as.slave.bearing_most), WITHIN(0.5e-3, 0.1), USUALLY(5e-3, 20e-3), ASSUME_NOTHING,
     .example = "9.5 mm", .help = "beyond which the springs are strained too far", FIGURES_ONLY},
    {.name = "finger ratio", .others = "diaphragm ratio, finger lever ratio",
     NUMBER(as.slave.finger_ratio), WITHIN(0.5, 20), USUALLY(3, 6), ASSUME_NOTHING,
     .example = "4.2", .help = "travel of the bearing over the lift of the pressure plate",
     FIGURES_ONLY},
    {.name = "cushion", .others = "plate cushion, cushion travel", LENGTH(as.slave.cushion),
     WITHIN(0, 5e-3), USUALLY(0.4e-3, 1.2e-3), ASSUME(0.8e-3, MEMORY),
     .example = "0.8 mm", .help = "by which the driven plate springs apart as it is let go",
     FIGURES_ONLY},
    {.name = "plate run out", .others = "plate runout", LENGTH(as.slave.plate_run_out),
     WITHIN(0, 5e-3), USUALLY(0.05e-3, 0.8e-3), ASSUME(0.3e-3, MEMORY),
     .example = "0.3 mm", .help = "of the driven plate at its edge, on its splines", FIGURES_ONLY},
    {.name = "clamp force", .others = "clamp load, spring load", FORCE(as.slave.clamp),
     WITHIN(10, 100e3), USUALLY(1500, 9000), ASSUME_NOTHING,
     .example = "4200 N", .help = "of the clutch's springs on the driven plate, from the maker",
     FIGURES_ONLY},
    {.name = "plate outer diameter", .others = "plate diameter", LENGTH(as.slave.plate_outer),
     WITHIN(30e-3, 0.6), USUALLY(0.14, 0.3), ASSUME_NOTHING,
     .example = "200 mm", .help = "of the facings of the driven plate", FIGURES_ONLY},
    {.name = "plate inner diameter", LENGTH(as.slave.plate_inner),
     WITHIN(10e-3, 0.5), USUALLY(0.09, 0.22), ASSUME_NOTHING,
     .example = "130 mm", .help = "of the facings of the driven plate", FIGURES_ONLY},
    {.name = "plate friction", .others = "facing friction", NUMBER(as.slave.plate_friction),
     WITHIN(0.03, 1), USUALLY(0.2, 0.45), ASSUME(0.3, MEMORY),
     .example = "0.3", .help = "of the facings of the driven plate", FIGURES_ONLY},
    ROW_ON, ROW_HEIGHT, ROWS_CHAMBER(NIPPLES_ONE, "9 mL"), ROW_RIGID, ROW_NOTE};

const struct key *keys_slave(size_t *count)
{
    return ROWS_OF(rows, count);
}
