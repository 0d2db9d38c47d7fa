#include "advice/job/cautions.h"

#include <stddef.h>

static const struct caution_row rows[] = {
    {"no-road", "DANGER", "Brakes that do not hold",
     "Not on the road until the pedal is firm and every joint stayed dry.",
     "NOT ON THE ROAD BEFORE FIRM AND DRY",
     "People are killed when the brakes of a car that was worked on fail on the road.",
     "Do not drive until the pedal is firm, its reserve is proven, every joint stayed dry under "
     "the held pedal, the hand brake holds, no warning lamp is lit and the wheel nuts are tight.",
     CAUTION_ROAD},
    {"no-road-motorcycle", "DANGER", "Brakes that do not hold",
     "Not on the road until lever and pedal are firm and all stayed dry.",
     "NOT ON THE ROAD BEFORE FIRM AND DRY",
     "People are killed when the brakes of a motorcycle that was worked on fail on the road.",
     "Do not ride until lever and pedal are firm, every joint stayed dry under the held brake, and "
     "the bolts of calipers and axles are tight.",
     CAUTION_ROAD_MOTORCYCLE},
    {"stands", "DANGER", "A car that falls",
     "Stands and chocks, never a jack alone: a car that falls crushes.",
     "STANDS AND CHOCKS, NEVER A JACK ALONE", "It crushes whoever lies under it.",
     "Firm level ground, stands under strong points, wheels on the ground chocked both ways. Rock "
     "the car before going under it. Never under a jack alone.",
     CAUTION_LIFTED},
    {"jet", "WARNING", "Fluid under pressure",
     "No finger at a weeping joint: the jet goes through skin; to hospital.",
     "NO FINGER AT A WEEPING JOINT", "A fine jet goes through skin and poisons the flesh.",
     "Keep fingers away from a joint that weeps under pressure. A wound like this goes to "
     "hospital at once, however small it looks.",
     CAUTION_BLEEDING},
    {"dust", "WARNING", "Dust of brake and clutch linings",
     "Lining dust may hold asbestos: wet it, never blow or brush it dry.",
     "LINING DUST: WET IT, NEVER BLOW",
     "Linings of older cars may hold asbestos; its dust causes cancer.",
     "Do not blow or brush it dry. Wet it, wipe it up and bag the rags, or use a vacuum cleaner "
     "made for it; wear a fitting mask.",
     CAUTION_LININGS},
    {"piston-out", "WARNING", "Pistons driven out by pressure",
     "Pistons fly under pressure: wood before them, hands away.", "PISTONS FLY: WOOD, HANDS AWAY",
     "They fly and crush fingers.",
     "Little pressure, a block of wood before the piston, hands away. Never the full pressure of "
     "the pedal or of workshop air.",
     CAUTION_ALWAYS},
    {"slave-out", "WARNING", "A clutch slave that hangs loose",
     "Strap the clutch slave's piston in; nobody touches the clutch pedal.",
     "CLUTCH PISTON STRAPPED IN",
     "One stroke of the pedal drives its piston out and empties the clutch.",
     "Keep the piston strapped in whenever the slave is off; nobody touches the clutch pedal.",
     CAUTION_CLUTCH},
    {"second-person", "WARNING", "One pair of eyes",
     "A second person looks over every joint before it goes on the road.",
     "A SECOND PERSON LOOKS IT OVER", "One forgotten nut empties a circuit.",
     "A second person looks over every joint and signs before it goes on the road.",
     CAUTION_ALWAYS},
    {"lost-hold", "WARNING", "A lifted axle",
     "Chock the wheels on the ground: a lifted axle may not hold the car.", NULL,
     "The hand brake may act on the wheels in the air.",
     "Chock the wheels on the ground on both sides before lifting.", CAUTION_LIFTED},
    {"springs", "CAUTION", "Shoe return springs",
     "Shoe springs snap back: glasses, and the right pliers.", "SPRINGS SNAP BACK: GLASSES",
     "They snap back and hit eyes and fingers.", "Glasses, and the right pliers.", CAUTION_DRUMS},
    {"fluid", "CAUTION", "Brake fluid",
     "Brake fluid burns eyes and lifts paint: gloves, glasses, water at hand.",
     "FLUID: GLOVES, GLASSES, WATER",
     "It burns eyes, irritates skin, is poisonous, lifts paint and catches fire on hot iron.",
     "Gloves and glasses. Rinse eyes for 15 minutes and see a doctor. Flood paint with water at "
     "once. Keep it from children: it tastes sweet.",
     CAUTION_GLYCOL},
    {"oil", "CAUTION", "Silicone fluid and mineral oil",
     "Silicone fluid and mineral oil ruin other seals: wipe up every drop.", NULL,
     "They irritate eyes and skin, make floors and linings slippery and burn on hot iron; a little "
     "of either ruins the seals of a system for the other kinds.",
     "Gloves and glasses. Rinse eyes for 15 minutes and see a doctor. Wipe up every drop. Keep "
     "funnels, tins and rubber for it apart, and from children.",
     CAUTION_OIL},
    {"silicone", "CAUTION", "Silicone fluid",
     "Silicone fluid mixes with no other: only into a stripped, dry system.", NULL,
     "It does not mix with other brake fluid; the mix swells seals and parts in the pipes.",
     "Only in a system that was stripped, dried and given new seals. Do not shake it: it keeps "
     "the bubbles. Water that gets in lies free and boils as water does: draw off at the lowest "
     "nipple.",
     CAUTION_SILICONE},
    {"motorcycle", "CAUTION", "A motorcycle on its stand",
     "It falls while a nipple is turned: strap it down, chock the wheel.", NULL,
     "It falls while a nipple is turned.",
     "Strap it down and chock the wheel. Keep fluid off disc, pads and tyre.", CAUTION_MOTORCYCLE},
    {"waste", "CAUTION", "Old fluid and washings",
     "Old fluid poisons water: into a marked can, never a drain, never back.", NULL,
     "They poison water.",
     "Into a marked can and to the collection of hazardous waste; never into the drain, the oil "
     "tin or back into the reservoir.",
     CAUTION_BLEEDING},
    {"figures", "CAUTION", "Computed figures",
     "Figures hold for the description, not for the car: measure, compare.", NULL,
     "They hold for the description, not for the car; a wrong bore gives a wrong answer.",
     "Measure, and compare the readings with the figures before the road.", CAUTION_ALWAYS},
};

const struct caution_row *caution_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

static enum fluid_family family_of(enum fluid_grade grade)
{
    const struct fluid_row *row = fluid_row(grade);
    return row == NULL ? FAMILY_UNKNOWN : row->family;
}

/* Whether fluid of a family is in the car, or was found in it. */
static bool has_family(const struct system *system, enum fluid_family family)
{
    for (int i = 0; i < system->part_count; i++) {
        const struct fluid *fluid = &system->parts[i].as.fluid;
        if (system->parts[i].kind == KIND_FLUID &&
            (family_of(fluid->grade) == family || family_of(fluid->found) == family)) {
            return true;
        }
    }
    return false;
}

/* Whether air or fluid is let out of such a part. */
static bool works_on(const struct system *system, const struct touched *job,
                     bool (*wanted)(const struct part *part))
{
    for (int i = 0; i < system->part_count; i++) {
        if (job->bled[i] && wanted(&system->parts[i])) {
            return true;
        }
    }
    return false;
}

static bool is_drum(const struct part *part)
{
    return part->kind == KIND_DRUM;
}

static bool is_slave(const struct part *part)
{
    return part->kind == KIND_SLAVE;
}

/* Pads and shoes, and the clutch plate where the slave is inside the bell housing. */
static bool is_at_linings(const struct part *part)
{
    return kind_is_brake(part->kind) ||
           (part->kind == KIND_SLAVE && part->as.slave.type == SLAVE_CONCENTRIC);
}

bool caution_applies(const struct caution_row *row, const struct system *system,
                     const struct touched *job)
{
    bool motorcycle = system_vehicle(system)->type == VEHICLE_MOTORCYCLE;
    switch (row->when) {
    case CAUTION_ALWAYS:
    case CAUTION_BLEEDING:
        return true;
    case CAUTION_ROAD:
    case CAUTION_LIFTED:
        return !motorcycle;
    case CAUTION_ROAD_MOTORCYCLE:
        return motorcycle;
    case CAUTION_LININGS:
        return works_on(system, job, is_at_linings);
    case CAUTION_DRUMS:
        return works_on(system, job, is_drum);
    case CAUTION_CLUTCH:
        return works_on(system, job, is_slave);
    case CAUTION_GLYCOL:
        return has_family(system, FAMILY_GLYCOL) || has_family(system, FAMILY_CASTOR) ||
               system_first(system, KIND_FLUID) < 0;
    case CAUTION_SILICONE:
        return has_family(system, FAMILY_SILICONE);
    case CAUTION_OIL:
        return has_family(system, FAMILY_SILICONE) || has_family(system, FAMILY_MINERAL);
    case CAUTION_MOTORCYCLE:
        return motorcycle;
    }
    return true;
}

const char *caution_deference(void)
{
    return "The maker's manual of this car, the rules of your country and a licensed inspection "
           "come before anything that is printed here.";
}

const char *caution_deference_brief(void)
{
    return "The maker's manual, your country's rules and licensed inspection come first.";
}
