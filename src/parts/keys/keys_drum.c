#include "parts/keys/rows.h"
#include "units/constants.h"

static double cylinders(const struct part *part)
{
    return part->as.drum.shoes == SHOES_TWO_LEADING ? CYLINDER_ONE_EACH : CYLINDER_TWO_PISTONS;
}

static double usual_arm(const struct part *part)
{
    return 0.8 * part->as.drum.diameter.m / 2;
}

#define IRON_DENSITY 7200  /* kg/m3, grey iron, from memory */
#define IRON_HEAT    480.0 /* J/(kg K), at 150 degC, from memory */
#define DRUM_FACE    6e-3  /* m, thickness of its face, from memory */
#define DRUM_TO_AIR  30.0  /* W/(m2 K), moving, from memory */

static double lining_friction(const struct part *part)
{
    return edge_code_friction(part->as.drum.edge_code);
}

static double rim_width(const struct drum *drum)
{
    return 4.0 / 3 * drum->lining_width.m;
}

static double whole_drum(const struct part *part)
{
    const struct drum *drum = &part->as.drum;
    double rim = PI * (drum->diameter.m + DRUM_WALL) * DRUM_WALL * rim_width(drum);
    double face = PI / 4 * drum->diameter.m * drum->diameter.m * DRUM_FACE;
    return (rim + face) * IRON_DENSITY;
}

static double drum_cools(const struct part *part)
{
    const struct drum *drum = &part->as.drum;
    double outer = drum->diameter.m + 2 * DRUM_WALL;
    double outside = PI * outer * rim_width(drum) + PI / 4 * outer * outer;
    return drum->mass.kg * IRON_HEAT / (DRUM_TO_AIR * outside);
}

static double usual_new_lining(const struct part *part)
{
    return fmax(5e-3, part->as.drum.lining_left.m); /* fmax passes over a NaN */
}

static double usual_lining_squash(const struct part *part)
{
    return part->as.drum.give.m / 4;
}

static bool has_pins(const struct part *part)
{
    return part->as.drum.anchor != ANCHOR_SLIDING;
}

static bool has_abutments(const struct part *part)
{
    return part->as.drum.anchor != ANCHOR_PIN && part->as.drum.shoes != SHOES_DUO_SERVO;
}

/* From pin to tip is half a turn. */
static double lining_midway(const struct part *part)
{
    return part->as.drum.anchor == ANCHOR_PIN ? (PI - part->as.drum.lining_arc.rad) / 2 : NAN;
}

static bool has_two_cylinders(const struct part *part)
{
    return part->as.drum.cylinder == CYLINDER_NOT_SAID ||
           part->as.drum.cylinder == CYLINDER_ONE_EACH;
}

/* clang-format off */

static const struct choice shoe_layouts[] = {
    {"leading and trailing", "leading trailing, leading/trailing, leading & trailing, one leading, l/t, lt, simplex",
     SHOES_LEADING_TRAILING, "one shoe is pulled in forward, the other in reverse"},
    {"two leading", "twin leading, double leading, 2 leading, 2ls, tls, duplex", SHOES_TWO_LEADING,
     "both shoes are pulled in forward"},
    {"duo-servo", "dual servo, servo", SHOES_DUO_SERVO, "one shoe pushes the other through a link"},
    {0}};

static const struct choice cylinder_layouts[] = {
    {"two pistons", "double, fixed", CYLINDER_TWO_PISTONS, "fixed, a piston to each shoe"},
    {"one each", "one a shoe, one per shoe, two single", CYLINDER_ONE_EACH,
     "a single-piston cylinder for each shoe"},
    {"sliding", "one piston, single piston, floating", CYLINDER_SLIDING,
     "one piston; the body slides in the backplate and works the other shoe"},
    {0}};

static const struct choice anchors[] = {
    {"pin", "pins, pivot", ANCHOR_PIN, "the shoe turns on a fixed pin"},
    {"sliding", "abutment, slide", ANCHOR_SLIDING, "the shoe's end can slide on its abutment"},
    {0}};

static const struct choice adjusters[] = {
    {"cam", "snail cam, snail, eccentric", ADJUSTER_CAM, "a cam behind each shoe"},
    {"wheel", "star wheel, toothed wheel", ADJUSTER_WHEEL, "a toothed wheel turned through a hole"},
    {"wedge", "cone, square", ADJUSTER_WEDGE, "a square end at the backplate, with clicks"},
    {"self-adjusting", "self, automatic", ADJUSTER_SELF, "sets itself by pedal or hand brake"},
    {0}};

static const struct choice fixings[] = {
    {"rivets", "riveted, rivet", FIXING_RIVETS, "measured over the rivets"},
    {"glue", "bonded, glued", FIXING_GLUE, "measured over the shoe"},
    {0}};

#define ARMS WITHIN(10e-3, 0.5), USUALLY(50e-3, 0.17)

static const struct key rows[] = {
    {.name = "axle", CHOICE_OF(axle), PLAIN, .choices = axle_choices,
     .example = "rear", .help = "front or rear; said by the name already"},
    {.name = "side", CHOICE_OF(side), PLAIN, .choices = side_choices,
     .example = "left", .help = "left or right; said by the name already"},
    {.name = "shoes", .others = "type, kind, shoe layout", CHOICE_OF(as.drum.shoes), PLAIN,
     .choices = shoe_layouts, REQUIRED,
     .example = "leading and trailing", .help = "how the shoes are set out", MEASURED},
    {.name = "cylinder", .others = "cylinders, wheel cylinder", CHOICE_OF(as.drum.cylinder),
     .choices = cylinder_layouts, UNBOUNDED,
     ASSUME_BY(cylinders, "two pistons; one each with two leading shoes; " PRACTICE),
     .example = "two pistons", .help = "what pushes the shoes", MEASURED},
    {.name = "bore", .others = "cylinder bore, piston diameter", LENGTH(as.drum.bore),
     CYLINDER_SIZES, ASSUME_NOTHING, REQUIRED,
     .example = "3/4 in", .help = "of the wheel cylinders, inside; often cast into them", MEASURED},
    {.name = "drum diameter", .others = "diameter", LENGTH(as.drum.diameter),
     WITHIN(50e-3, 0.8), USUALLY(0.12, 0.36), ASSUME_NOTHING,
     .example = "203 mm", .help = "inside, past any lip, two ways across", MEASURED},
    {.name = "most diameter", .others = "maximum diameter", LENGTH(as.drum.most_diameter),
     WITHIN(50e-3, 0.8), USUALLY(0.12, 0.36), ASSUME_NOTHING,
     .example = "204.5 mm", .help = "cast into the drum, or from the book", MEASURED, FIGURES_ONLY},
    {.name = "anchor", .others = "anchors", CHOICE_OF(as.drum.anchor), .choices = anchors, UNBOUNDED,
     ASSUME(ANCHOR_SLIDING, PRACTICE),
     .example = "sliding", .help = "what holds the shoe's other end", MEASURED},
    {.name = "pin distance", .others = "anchor distance", LENGTH(as.drum.pin_distance), ARMS,
     ASSUME_BY(usual_arm, "0.8 of the drum's radius; " PRACTICE),
     .example = "81 mm", .help = "anchor pin (or abutment) to the centre of the drum", MEASURED},
    {.name = "tip distance", LENGTH(as.drum.tip_distance), ARMS,
     ASSUME_BY(usual_arm, "0.8 of the drum's radius; " PRACTICE),
     .example = "81 mm", .help = "line of the cylinder to the centre of the drum", MEASURED},
    {.name = "abutment angle", .others = "anchor angle, heel angle",
     QUANTITY(DIMENSION_ANGLE, as.drum.abutment_angle),
     WITHIN(-0.6, 0.8), USUALLY(0, 0.55), ONLY(has_abutments),
     ASSUME(0, "square to the cylinder's line; " PRACTICE),
     .example = "10 deg", .help = "of the face under the heel, above 0 where it pushes the heel to the cylinder",
     MEASURED},
    {.name = "abutment friction", .others = "heel friction", NUMBER(as.drum.abutment_friction),
     WITHIN(0, 0.6), USUALLY(0, 0.25), ONLY(has_abutments), ASSUME(0, "greased; " PRACTICE),
     .example = "0.1", .help = "of the heel on its abutment; 0.2 where it is dry"},
    {.name = "lining arc", QUANTITY(DIMENSION_ANGLE, as.drum.lining_arc),
     WITHIN(0.17, 3.1), USUALLY(1.3, 2.4), ASSUME(1.9198621771937625, "110 deg; " MEMORY),
     .example = "110 deg", .help = "angle that one lining covers, seen from the centre", MEASURED},
    {.name = "lining start", QUANTITY(DIMENSION_ANGLE, as.drum.lining_start),
     WITHIN(0, 1.6), USUALLY(0.1, 1.0), ONLY(has_pins),
     ASSUME_BY(lining_midway, "so that the lining lies midway from pin to tip; " PRACTICE),
     .example = "25 deg", .help = "pins: from the pin to where the lining begins, seen from the centre",
     MEASURED},
    {.name = "friction", .others = "lining friction", NUMBER(as.drum.friction),
     WITHIN(0.03, 1), USUALLY(0.25, 0.5), ASSUME_BY(lining_friction, EDGE_SOURCE),
     .example = "0.38", .help = "of the linings on the drum"},
    {.name = "efficiency", NUMBER(as.drum.efficiency),
     WITHIN(0.3, 1), USUALLY(0.85, 1), ASSUME(0.96, MEMORY),
     .example = "0.96", .help = "of the wheel cylinders"},
    {.name = "threshold", PRESSURE(as.drum.threshold),
     WITHIN(0, 50e5), USUALLY(0.3e5, 6e5), ASSUME(2e5, MEMORY),
     .example = "2 bar", .help = "pressure that overcomes the shoe springs"},
    {.name = "clearance", LENGTH(as.drum.clearance),
     WITHIN(0, 20e-3), USUALLY(0.1e-3, 2e-3), ASSUME(0.4e-3, "linings of three old cars stood 0.15, 0.25 and 0.38 mm off (makers' texts, quoted); up to "
                     "twice that at the tip, derived"),
     .example = "0.4 mm", .help = "travel of each piston until its lining touches, brake adjusted",
     TRAVELS_ONLY},
    {.name = "give", LENGTH(as.drum.give),
     WITHIN(0, 5e-3), USUALLY(0.05e-3, 1.5e-3), ASSUME(0.3e-3, MEMORY),
     .example = "0.3 mm", .help = "lining, shoe and drum together, at the tip, at 10 MPa (100 bar)",
     TRAVELS_ONLY},
    {.name = "piston travel", .others = "tip travel", LENGTH(as.drum.piston_travel),
     WITHIN(0, 20e-3), USUALLY(0.3e-3, 3e-3), ASSUME_NOTHING,
     .example = "0.7 mm",
     .help = "measured: way of a piston from rest to 10 MPa, clearance and give in one", TRAVELS_ONLY},
    {.name = "lining squash", LENGTH(as.drum.lining_squash),
     WITHIN(0, 5e-3), USUALLY(0.01e-3, 0.5e-3),
     ASSUME_BY(usual_lining_squash, "a quarter of the give; " MEMORY),
     .example = "0.08 mm", .help = "what of the give is the lining's own: more of it when hot",
     TRAVELS_ONLY},
    {.name = "temperature hot", .others = "hot temperature",
     QUANTITY(DIMENSION_TEMPERATURE, as.drum.hot),
     WITHIN(-60, 800), USUALLY(80, 400), ASSUME(220, "200 K over the day's; " MEMORY),
     .example = "220 degC", .help = "of the drum after hard use: it has grown by then",
     TRAVELS_ONLY},
    {.name = "shoes hot", QUANTITY(DIMENSION_TEMPERATURE, as.drum.shoes_hot),
     WITHIN(-60, 800), USUALLY(40, 300), ASSUME(90, MEMORY),
     .example = "90 degC", .help = "of shoes and linings by then: they have grown after the drum"},
    {.name = "adjuster", .others = "adjusters", CHOICE_OF(as.drum.adjuster), PLAIN,
     .choices = adjusters,
     .example = "wheel", .help = "how the shoes are set", MEASURED},
    {.name = "bridge", .others = "bridge pipe, bridge line", LENGTH(as.drum.bridge), ONLY(has_two_cylinders),
     WITHIN(5e-3, 2), USUALLY(50e-3, 0.6), ASSUME_NOTHING,
     .example = "0.25 m", .help = "length of the pipe between its two cylinders", MEASURED},
    ROW_EDGE_CODE(as.drum.edge_code),
    {.name = "lining held by", .others = "lining fixing, linings", CHOICE_OF(as.drum.fixing), PLAIN,
     .choices = fixings,
     .example = "rivets", .help = "rivets or glue: decides how thin it may get", MEASURED},
    {.name = "lining left", .others = "lining thickness", LENGTH(as.drum.lining_left),
     WITHIN(0, 40e-3), USUALLY(1e-3, 12e-3), ASSUME_NOTHING,
     .example = "3.5 mm", .help = "thinnest place, above the rivets where it is riveted", MEASURED,
     TRAVELS_ONLY},
    {.name = "lining width", .others = "shoe width", LENGTH(as.drum.lining_width),
     WITHIN(5e-3, 0.2), USUALLY(25e-3, 70e-3), ASSUME_NOTHING,
     .example = "38 mm", .help = "of the friction material, along the axle", MEASURED,
     FIGURES_ONLY},
    {.name = "drum mass", .others = "drum weight", QUANTITY(DIMENSION_MASS, as.drum.mass),
     WITHIN(0.1, 100), USUALLY(1.5, 15),
     ASSUME_BY(whole_drum, "from its sizes: a rim a third wider than the lining, 8 mm thick, and a "
                           "face of 6 mm, 7200 kg/m3; " MEMORY),
     .example = "4.5 kg", .help = "of the drum without its hub, on the kitchen scales", MEASURED},
    {.name = "cooling time", QUANTITY(DIMENSION_DURATION, as.drum.cooling),
     WITHIN(10, 36000), USUALLY(400, 2000),
     ASSUME_BY(drum_cools, "moving: mass * 480 J/(kg K) over 30 W/(m2 K) from rim and face outside; "
                           "by a factor of two; " MEMORY),
     .example = "800 s", .help = "in which a hot drum loses two thirds of its heat on the road"},
    {.name = "heat to fluid", SHARE(as.drum.heat_to_fluid),
     WITHIN(0, 1), USUALLY(0.1, 0.4), ASSUME(0.20, MEMORY),
     .example = "20 %", .help = "warming of the fluid in its cylinders, over that of the drum",
     FIGURES_ONLY},
    {.name = "friction spread", .others = "friction band", SHARE(as.drum.friction_spread),
     WITHIN(0, 0.9), USUALLY(0.05, 0.3), ASSUME(0.10, PRACTICE),
     .example = "10 %", .help = "how far friction may be off, up and down", FIGURES_ONLY},
    {.name = "lining new", .others = "new lining thickness", LENGTH(as.drum.lining_new),
     WITHIN(1e-3, 40e-3), USUALLY(3e-3, 10e-3),
     ASSUME_BY(usual_new_lining, "5 mm, or what is left where that is more; " MEMORY),
     .example = "5 mm", .help = "friction material of a new lining, without the shoe",
     TRAVELS_ONLY},
    {.name = "lining worn", .others = "worn lining thickness", LENGTH(as.drum.lining_worn),
     WITHIN(0.1e-3, 20e-3), USUALLY(0.8e-3, 3e-3), ASSUME(1.6e-3, PRACTICE),
     .example = "1.6 mm", .help = "friction material left when a lining is to be renewed",
     TRAVELS_ONLY},
    ROW_ON, ROW_HEIGHT, ROWS_CHAMBER(NIPPLES_ONE, "2 mL"), ROW_RIGID, ROW_NOTE};

const struct key *keys_drum(size_t *count)
{
    return ROWS_OF(rows, count);
}
