#include "parts/keys/rows.h"

/* clang-format off */

static const struct choice uses[] = {
    {"pressure", "brake", HOSE_PRESSURE, "between a master and what it works"},
    {"supply", "feed", HOSE_SUPPLY, "from a reservoir to a master"},
    {"vacuum", NULL, HOSE_VACUUM, "from the engine to a servo"},
    {0}};

static const struct choice states[] = {
    {"new", "renewed, just fitted", HOSE_NEW, "just fitted, of this year or last"},
    {"good", "sound", HOSE_GOOD, "in service: no cracks, no bulge, dry at the collars"},
    {"worn", "old, cracked, swollen", HOSE_WORN,
     "taken to swell as much as a rule still allows of a new one (our own mark, no source)"},
    {0}};

static const struct key rows[] = {
    {.name = "use", CHOICE_OF(as.hose.use), .choices = uses, UNBOUNDED,
     ASSUME(HOSE_PRESSURE, "a hose in a run carries pressure; " PRACTICE),
     .example = "pressure", .help = "what it carries"},
    {.name = "length", LENGTH(as.hose.length),
     WITHIN(5e-3, 20), USUALLY(80e-3, 1), ASSUME_NOTHING,
     .example = "0.36 m", .help = "of the rubber, without the fittings; the run says it already", MEASURED,
     TRAVELS_ONLY},
    {.name = "inside", .others = "inside diameter, bore", LENGTH(as.hose.inside),
     WITHIN(1e-3, 20e-3), USUALLY(2e-3, 7e-3), ASSUME(3.175e-3, "1/8 in; " PRACTICE),
     .example = "1/8 in", .help = "inside diameter, as printed on the hose", TRAVELS_ONLY},
    {.name = "state", .others = "condition", CHOICE_OF(as.hose.state), .choices = states, UNBOUNDED,
     ASSUME(HOSE_GOOD, "an old hose that bends without a crack; " PRACTICE),
     .example = "good", .help = "bend it and look: cracks, bulges, wet collars", MEASURED,
     TRAVELS_ONLY},
    {.name = "expansion", .others = "swelling, swell",
     QUANTITY(DIMENSION_SWELLING, as.hose.expansion),
     WITHIN(1e-8, 1e-4), USUALLY(0.1e-6, 3e-6), ASSUME_NOTHING,
     .example = "0.4 mL/m", .help = "measured: volume it takes at 1000 psi (69 bar), by length",
     TRAVELS_ONLY},
    {.name = "renewed", .others = "made, dated", DATE(as.hose.renewed),
     .example = "2008", .help = "when it was made or fitted, as printed on it", MEASURED},
    {.name = "thread", TEXT(as.hose.thread),
     .example = "M10 x 1", .help = "of its ends, by pitch gauge", MEASURED},
    ROW_NOTE};

const struct key *keys_hose(size_t *count)
{
    return ROWS_OF(rows, count);
}
