#include "parts/keys/rows.h"

static bool is_tandem(const struct part *part)
{
    return part->as.master.type != MASTER_SINGLE;
}

/* What brings a piston back: in a tandem the stronger spring stands between the pistons. */
static double primary_spring(const struct part *part)
{
    const struct master *master = &part->as.master;
    return master->type == MASTER_TANDEM ? 120 : 0.2e6 * circle_area(master->bore).m2;
}

static double half_stroke(const struct part *part)
{
    return part->as.master.stroke.m / 2;
}

/* clang-format off */

static const struct choice master_types[] = {
    {"single", "plain", MASTER_SINGLE, "one piston, one circuit"},
    {"tandem", "dual, double", MASTER_TANDEM, "two pistons in one bore, two circuits"},
    {0}};

#define HALF "half of the stroke; " MEMORY

static const struct key rows[] = {
    {.name = "type", CHOICE_OF(as.master.type), PLAIN, .choices = master_types, REQUIRED,
     .example = "tandem", .help = "single or tandem"},
    {.name = "bore", .others = "diameter, cylinder bore", LENGTH(as.master.bore),
     CYLINDER_SIZES, ASSUME_NOTHING, REQUIRED,
     .example = "13/16 in", .help = "inside the cylinder, at three depths and two ways across", MEASURED},
    {.name = "stroke", LENGTH(as.master.stroke),
     WITHIN(1e-3, 1), USUALLY(10e-3, 60e-3), ASSUME_NOTHING,
     .example = "34 mm", .help = "of the push rod, from rest until all pistons are at their end",
     MEASURED, TRAVELS_ONLY},
    {.name = "primary stroke", LENGTH(as.master.primary_stroke),
     WITHIN(1e-3, 0.5), USUALLY(5e-3, 35e-3), ASSUME_BY(half_stroke, HALF), ONLY(is_tandem),
     .example = "17 mm", .help = "tandem: the first piston, until it stands against the second",
     MEASURED, TRAVELS_ONLY},
    {.name = "secondary stroke", LENGTH(as.master.secondary_stroke),
     WITHIN(1e-3, 0.5), USUALLY(5e-3, 35e-3), ASSUME_BY(half_stroke, HALF), ONLY(is_tandem),
     .example = "17 mm", .help = "tandem: the second piston, until it stands at the end", MEASURED,
     TRAVELS_ONLY},
    {.name = "cut off", .others = "port travel", LENGTH(as.master.cut_off),
     WITHIN(0, 15e-3), USUALLY(0.5e-3, 2.5e-3), ASSUME(1.2e-3, PRACTICE),
     .example = "1.2 mm", .help = "travel of a piston until its seal has covered the small port",
     TRAVELS_ONLY},
    {.name = "rod gap", .others = "push rod gap, push rod clearance", LENGTH(as.master.rod_gap),
     WITHIN(0, 20e-3), USUALLY(0.2e-3, 3.5e-3), ASSUME(0.8e-3, PRACTICE),
     .example = "0.8 mm", .help = "push rod to piston at rest: feel it with thumb and finger", MEASURED,
     TRAVELS_ONLY},
    {.name = "efficiency", NUMBER(as.master.efficiency),
     WITHIN(0.3, 1), USUALLY(0.85, 1), ASSUME(0.95, MEMORY),
     .example = "0.95", .help = "of its seals"},
    {.name = "primary spring", .others = "piston spring", FORCE(as.master.primary_spring),
     WITHIN(0, 5000), USUALLY(10, 200),
     ASSUME_BY(primary_spring, "tandem 120 N, single 0.2 MPa times its area; " MEMORY),
     .example = "120 N", .help = "force of the spring of its piston; tandem: of that between the pistons"},
    {.name = "secondary spring", FORCE(as.master.secondary_spring),
     WITHIN(0, 5000), USUALLY(10, 150), ASSUME(70, MEMORY), ONLY(is_tandem),
     .example = "70 N", .help = "tandem: force of the spring between the second piston and the end"},
    {.name = "seal friction", FORCE(as.master.seal_friction),
     WITHIN(0, 2000), USUALLY(0, 100), ASSUME(0, "held in the efficiency; " PRACTICE),
     .example = "20 N", .help = "force that moves a piston without spring and pressure, each piston"},
    {.name = "large bore", .others = "take-up bore, step bore", LENGTH(as.master.large_bore),
     WITHIN(2e-3, 0.4), USUALLY(NAN, NAN), ASSUME_NOTHING,
     .example = "1 1/4 in", .help = "stepped master: the large bore, which delivers at low pressure"},
    {.name = "take-up pressure", .others = "quick take-up pressure", PRESSURE(as.master.take_up),
     WITHIN(0, 100e5), USUALLY(3e5, 10e5), ASSUME(6e5, MEMORY),
     .example = "6 bar", .help = "stepped master: from it on only the small bore delivers"},
    {.name = "primary outlets", .others = "primary outlet", WORDS(as.master.primary_outlets), ONLY(is_tandem),
     .example = "front", .help = "tandem: what runs call the ports beside the push rod", MEASURED},
    {.name = "secondary outlets", .others = "secondary outlet", WORDS(as.master.secondary_outlets), ONLY(is_tandem),
     .example = "rear", .help = "tandem: what runs call the ports at the far end", MEASURED},
    {.name = "reservoir", .others = "fed from, fed by", ONE_PART(as.master.reservoir),
     .example = "brake reservoir", .help = "the reservoir that feeds it, where there are several"},
    {.name = "supply hose", .others = "feed hose", LENGTH(as.master.supply_hose),
     WITHIN(10e-3, 10), USUALLY(50e-3, 1.5), ASSUME_NOTHING,
     .example = "0.35 m", .help = "length of the hose from a reservoir that sits elsewhere", MEASURED},
    {.name = "supply hose renewed", .others = "feed hose renewed",
     DATE(as.master.supply_hose_renewed),
     .example = "2019", .help = "when that hose was made or fitted, as printed on it"},
    {.name = "casting", .others = "same casting as, casting with", ONE_PART(as.master.casting),
     .example = "clutch master", .help = "the other master in the same casting"},
    ROW_ON, ROW_HEIGHT, ROWS_CHAMBER(NIPPLES_NONE, "5 mL"), ROW_RIGID, ROW_NOTE};

const struct key *keys_master(size_t *count)
{
    return ROWS_OF(rows, count);
}
