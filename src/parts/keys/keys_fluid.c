#include "parts/keys/rows.h"

/* clang-format off */

#define GRADES                                                                                     \
    {"DOT 3", NULL, GRADE_DOT3, "glycol"},                                                         \
    {"DOT 4", NULL, GRADE_DOT4, "glycol and borate ester"},                                        \
    {"DOT 5.1", NULL, GRADE_DOT51, "glycol, thin in the cold"},                                    \
    {"DOT 5", "silicone, DOT 5 silicone", GRADE_DOT5, "silicone; mixes with no other"},            \
    {"mineral", "mineral oil", GRADE_MINERAL, "mineral oil; its rubber is of another kind"}

static const struct choice grades[] = {GRADES, {0}};

/* What nobody fills in any more can still be found. */
static const struct choice grades_found[] = {
    GRADES,
    {"castor", "castor oil, castor oil and alcohol", GRADE_CASTOR,
     "castor oil and alcohol, of the first decades; only found, never filled in"},
    {0}};

static const struct key rows[] = {
    {.name = "grade", .others = "type, fluid", CHOICE_OF(as.fluid.grade), PLAIN, .choices = grades,
     REQUIRED,
     .example = "DOT 4", .help = "as the cap of the reservoir says, or what goes in now", MEASURED,
     TRAVELS_ONLY},
    {.name = "renewed", .others = "changed, last renewed, last changed", DATE(as.fluid.renewed),
     .example = "2024-06", .help = "when the fluid was last changed"},
    {.name = "temperature", QUANTITY(DIMENSION_TEMPERATURE, as.fluid.temperature),
     WITHIN(-60, 300), USUALLY(-30, 200), ASSUME(20, PRACTICE),
     .example = "20 degC", .help = "of the fluid when the car is checked", TRAVELS_ONLY},
    {.name = "temperature hot", .others = "hot", QUANTITY(DIMENSION_TEMPERATURE, as.fluid.hot),
     WITHIN(-60, 300), USUALLY(50, 200), ASSUME(100, MEMORY),
     .example = "100 degC", .help = "of the fluid after hard braking, all of it alike",
     TRAVELS_ONLY},
    {.name = "air", .others = "air left, free air", VOLUME(as.fluid.air),
     WITHIN(0, 0.1e-3), USUALLY(0, 10e-6), ASSUME(0, "a system well bled; " PRACTICE),
     .example = "0.5 mL", .help = "free air left in each circuit", TRAVELS_ONLY},
    {.name = "found", .others = "fluid found", CHOICE_OF(as.fluid.found), PLAIN, .choices = grades_found,
     .example = "mineral", .help = "what was in it when opened, if another; in water oil and silicone float, glycol mixes"},
    ROW_NOTE};

const struct key *keys_fluid(size_t *count)
{
    return ROWS_OF(rows, count);
}
