#include "parts/keys/rows.h"
#include "units/constants.h"

static double nipple_each_inlet(const struct part *part)
{
    return part->as.disc.inlets == 2 ? 2 : 1;
}

static double usual_new_pad(const struct part *part)
{
    return fmax(10e-3, part->as.disc.pad_left.m); /* fmax passes over a NaN */
}

#define IRON_DENSITY 7200  /* kg/m3, grey iron, from memory */
#define IRON_HEAT    480.0 /* J/(kg K), at 150 degC, from memory */
#define DISC_TO_AIR  40.0  /* W/(m2 K), moving, from memory: 500 s for 4 kg of 250 mm */

/* Of one face, without its hole. */
static double whole_circle(const struct disc *disc)
{
    return PI / 4 * disc->disc_outer.m * disc->disc_outer.m;
}

static double whole_disc(const struct part *part)
{
    const struct disc *disc = &part->as.disc;
    if (!(disc->thickness.m <= DISC_SOLID_MOST))
        return NAN;
    return whole_circle(disc) * disc->thickness.m * IRON_DENSITY;
}

static double disc_cools(const struct part *part)
{
    const struct disc *disc = &part->as.disc;
    return disc->mass.kg * IRON_HEAT / (DISC_TO_AIR * 2 * whole_circle(disc));
}

static double pad_friction(const struct part *part)
{
    return edge_code_friction(part->as.disc.edge_code);
}

/* clang-format off */

static const struct choice calipers[] = {
    {"fixed", "opposed, opposed pistons", CALIPER_FIXED, "pistons on both sides of the disc"},
    {"sliding", "floating, slider", CALIPER_SLIDING, "pistons on one side, the body slides"},
    {0}};

static const struct choice pad_contacts[] = {
    {"worn in", "bedded in, even wear", PADS_WORN_IN, "the usual pad after some hundred stops"},
    {"new", "even pressure", PADS_NEW, "pressure alike all over"},
    {"round", "round pads, pucks", PADS_ROUND, "round pads, pad height is their diameter"},
    {0}};

/* What gives way under pressure, m. */
#define GIVE WITHIN(0, 5e-3), USUALLY(0.02e-3, 0.6e-3)

#define NIPPLE_EACH_INLET ASSUME_BY(nipple_each_inlet, "1 for each inlet; " PRACTICE)

static const struct key rows[] = {
    {.name = "axle", CHOICE_OF(axle), PLAIN, .choices = axle_choices,
     .example = "front", .help = "front or rear; said by the name already"},
    {.name = "side", CHOICE_OF(side), PLAIN, .choices = side_choices,
     .example = "left", .help = "left or right; said by the name already"},
    {.name = "caliper", .others = "calliper, type, caliper type", CHOICE_OF(as.disc.caliper), PLAIN,
     .choices = calipers, REQUIRED,
     .example = "fixed", .help = "fixed: pistons on both sides; sliding: on one side", MEASURED},
    {.name = "bore", .others = "pistons, piston diameter", BORES(as.disc.bores),
     CYLINDER_SIZES, ASSUME_NOTHING, REQUIRED,
     .example = "2 of 48 mm", .help = "pistons of the whole caliper: how many, and their diameter",
     MEASURED},
    {.name = "second bore", .others = "second pistons", BORES(as.disc.second_bores),
     CYLINDER_SIZES, ASSUME_NOTHING,
     .example = "2 of 38 mm", .help = "pistons of another size in the same caliper", MEASURED},
    {.name = "inlets", .others = "circuits", COUNT(as.disc.inlets),
     WITHIN(1, 2), USUALLY(NAN, NAN), ASSUME(1, PRACTICE),
     .example = "1", .help = "2 where two circuits work one caliper", MEASURED},
    {.name = "disc diameter", .others = "disk diameter, rotor diameter, diameter",
     LENGTH(as.disc.disc_outer), WITHIN(50e-3, 0.8), USUALLY(0.18, 0.36), ASSUME_NOTHING,
     .example = "247 mm", .help = "outside", MEASURED},
    {.name = "pad height", LENGTH(as.disc.pad_height),
     WITHIN(5e-3, 0.2), USUALLY(20e-3, 70e-3), ASSUME_NOTHING,
     .example = "40 mm", .help = "of the friction material, along a radius of the disc", MEASURED},
    {.name = "pad arc", QUANTITY(DIMENSION_ANGLE, as.disc.pad_arc),
     WITHIN(0.09, 2.1), USUALLY(0.5, 1.3), ASSUME_NOTHING,
     .example = "45 deg", .help = "angle that one pad covers, seen from the centre of the disc",
     MEASURED, FIGURES_ONLY},
    {.name = "pads", .others = "pad contact, pad shape", CHOICE_OF(as.disc.contact),
     .choices = pad_contacts, UNBOUNDED, ASSUME(PADS_WORN_IN, PRACTICE),
     .example = "worn in", .help = "how the pads press; decides the radius where friction acts"},
    {.name = "effective radius", LENGTH(as.disc.effective_radius),
     WITHIN(10e-3, 0.4), USUALLY(70e-3, 0.16), ASSUME_NOTHING,
     .example = "104 mm", .help = "where friction acts; instead of disc diameter and pad height"},
    {.name = "friction", .others = "pad friction", NUMBER(as.disc.friction),
     WITHIN(0.03, 1), USUALLY(0.25, 0.5), ASSUME_BY(pad_friction, EDGE_SOURCE),
     .example = "0.38", .help = "of the pads on the disc"},
    {.name = "efficiency", NUMBER(as.disc.efficiency),
     WITHIN(0.3, 1), USUALLY(0.85, 1), ASSUME(0.96, MEMORY),
     .example = "0.96", .help = "of the pistons"},
    {.name = "threshold", PRESSURE(as.disc.threshold),
     WITHIN(0, 50e5), USUALLY(0, 2e5), ASSUME(0.5e5, MEMORY),
     .example = "0.5 bar", .help = "pressure at which the pads begin to press"},
    {.name = "roll back", .others = "rollback", LENGTH(as.disc.roll_back), GIVE,
     ASSUME(0.15e-3, MEMORY),
     .example = "0.15 mm", .help = "how far the seal draws each piston back, squash not in it",
     TRAVELS_ONLY},
    {.name = "pad squash", LENGTH(as.disc.pad_squash), GIVE,
     ASSUME(0.10e-3, "0.05 to 0.15 mm, less where 10 MPa on the pad is meant; " MEMORY),
     .example = "0.10 mm",
     .help = "how much one pad gives way at 10 MPa (100 bar) in the line, from where it touches",
     TRAVELS_ONLY},
    {.name = "body opening", LENGTH(as.disc.body_opening), GIVE, ASSUME(0.15e-3, MEMORY),
     .example = "0.15 mm", .help = "how far the caliper opens at 10 MPa (100 bar) in the line",
     TRAVELS_ONLY},
    {.name = "piston travel", .others = "pad travel", LENGTH(as.disc.piston_travel),
     WITHIN(0, 10e-3), USUALLY(0.2e-3, 1e-3), ASSUME_NOTHING,
     .example = "0.4 mm",
     .help = "measured: way of a piston from rest to 10 MPa, roll back, squash and opening in one",
     TRAVELS_ONLY},
    {.name = "run out", .others = "runout", LENGTH(as.disc.run_out),
     WITHIN(0, 5e-3), USUALLY(0, 0.15e-3), ASSUME_NOTHING,
     .example = "0.06 mm", .help = "of the disc, by dial gauge near its edge, over one turn", MEASURED,
     FIGURES_ONLY},
    {.name = "bearing play", .others = "wheel bearing play", LENGTH(as.disc.bearing_play),
     WITHIN(0, 5e-3), USUALLY(0, 0.2e-3), ASSUME(0.05e-3, MEMORY),
     .example = "0.05 mm", .help = "at the disc's edge, wheel rocked, by dial gauge", MEASURED,
     FIGURES_ONLY},
    {.name = "disc thickness", .others = "disk thickness, rotor thickness, thickness",
     LENGTH(as.disc.thickness), WITHIN(1e-3, 60e-3), USUALLY(3e-3, 30e-3), ASSUME_NOTHING,
     .example = "9.2 mm", .help = "where it is thinnest, inside any lip at the edge", MEASURED,
     FIGURES_ONLY},
    {.name = "least thickness", .others = "minimum thickness", LENGTH(as.disc.least_thickness),
     WITHIN(1e-3, 60e-3), USUALLY(3e-3, 30e-3), ASSUME_NOTHING,
     .example = "8.5 mm", .help = "cast into the disc, or from the book", MEASURED, FIGURES_ONLY},
    ROW_EDGE_CODE(as.disc.edge_code),
    {.name = "pad left", .others = "pad thickness", LENGTH(as.disc.pad_left),
     WITHIN(0, 40e-3), USUALLY(2e-3, 20e-3), ASSUME_NOTHING,
     .example = "7 mm", .help = "friction material of the thinnest pad, without its plate", MEASURED,
     TRAVELS_ONLY},
    {.name = "disc mass", .others = "disk mass, rotor mass, disc weight",
     QUANTITY(DIMENSION_MASS, as.disc.mass), WITHIN(0.1, 100), USUALLY(1, 15),
     ASSUME_BY(whole_disc, "from its sizes: a solid plate of its diameter, the hat as heavy as the "
                           "hole, 7200 kg/m3; up to 14 mm thick, else it may have vents; " MEMORY),
     .example = "4.2 kg", .help = "of the disc without its hub, on the kitchen scales", MEASURED},
    {.name = "cooling time", QUANTITY(DIMENSION_DURATION, as.disc.cooling),
     WITHIN(10, 36000), USUALLY(200, 1200),
     ASSUME_BY(disc_cools, "moving: mass * 480 J/(kg K) over 40 W/(m2 K) from both faces; by a "
                           "factor of two; " MEMORY),
     .example = "500 s", .help = "in which a hot disc loses two thirds of its heat on the road"},
    {.name = "heat to fluid", SHARE(as.disc.heat_to_fluid),
     WITHIN(0, 1), USUALLY(0.2, 0.6), ASSUME(0.35, MEMORY),
     .example = "35 %", .help = "warming of the fluid at the pistons, over that of the disc",
     FIGURES_ONLY},
    {.name = "friction spread", .others = "friction band", SHARE(as.disc.friction_spread),
     WITHIN(0, 0.9), USUALLY(0.05, 0.3), ASSUME(0.10, PRACTICE),
     .example = "10 %", .help = "how far friction may be off, up and down", FIGURES_ONLY},
    {.name = "pad new", .others = "new pad thickness", LENGTH(as.disc.pad_new),
     WITHIN(1e-3, 40e-3), USUALLY(7e-3, 15e-3),
     ASSUME_BY(usual_new_pad, "10 mm, or what is left where that is more; " MEMORY),
     .example = "10 mm", .help = "friction material of a new pad, without its plate", TRAVELS_ONLY},
    {.name = "pad worn", .others = "worn pad thickness", LENGTH(as.disc.pad_worn),
     WITHIN(0.1e-3, 20e-3), USUALLY(1.5e-3, 4e-3), ASSUME(2e-3, PRACTICE),
     .example = "2 mm", .help = "friction material left when a pad is to be renewed", TRAVELS_ONLY},
    ROW_ON, ROW_HEIGHT,
    ROWS_CHAMBER(NIPPLE_EACH_INLET, "40 mL"), ROW_RIGID, ROW_NOTE};

const struct key *keys_disc(size_t *count)
{
    return ROWS_OF(rows, count);
}
