#include "parts/fluid.h"

#include <math.h>

#include "units/constants.h"

#define BOILING    "49 CFR 571.116 (FMVSS 116), S5.1.1 and S5.1.2, read as quoted in print"
#define NO_BOILING "no boiling point is asked of mineral oil"
#define MEMORY     "from memory"
#define AIR_READ   "SAE J1705 appendix A, read as quoted in print"
#define TWO_POINTS "line through two usual values, from memory, after ASTM D341"
#define INTERVAL   "common practice, no source"
#define ALCOHOL    "boils as its alcohol does, derived"
#define NOT_KNOWN  "not known"

#define ALCOHOL_BOILS    78.0  /* degC, ethanol */
#define WATER_BOILS      100.0 /* degC */
#define NEGLECTED_GLYCOL 115.0 /* degC */
#define BEYOND_WET       10.0  /* K a year, once it is wet */

static const struct fluid_row rows[] = {
    {GRADE_DOT3, "DOT 3",  "DOT 3", FAMILY_GLYCOL, {205},    {140},   {1050}, 7.5e-4,
     {1.95e9},   {1.30e9}, 10,      10.0953,       4.0555,   0.033,   0.05,   2,
     BOILING,    MEMORY,   MEMORY,  TWO_POINTS,    AIR_READ, INTERVAL},
    {GRADE_DOT4, "DOT 4",  "DOT 4", FAMILY_GLYCOL, {230},    {155},   {1050}, 7.5e-4,
     {1.95e9},   {1.30e9}, 10,      10.0953,       4.0555,   0.033,   0.05,   2,
     BOILING,    MEMORY,   MEMORY,  TWO_POINTS,    AIR_READ, INTERVAL},
    {GRADE_DOT51, "DOT 5.1", "DOT 5.1", FAMILY_GLYCOL, {260},    {180},   {1050}, 7.5e-4,
     {1.95e9},    {1.30e9},  10,        9.9517,        4.0114,   0.033,   0.05,   2,
     BOILING,     MEMORY,    MEMORY,    TWO_POINTS,    AIR_READ, INTERVAL},
    {GRADE_DOT5, "DOT 5",  "DOT 5", FAMILY_SILICONE, {260},    {180},   {955}, 1.0e-3,
     {1.05e9},   {0.68e9}, 11,      4.0960,          1.5586,   0.0205,  0.16,  4,
     BOILING,    MEMORY,   MEMORY,  TWO_POINTS,      AIR_READ, INTERVAL},
    {GRADE_MINERAL, "mineral", "mineral oil", FAMILY_MINERAL, {NAN},  {NAN},   {845}, 7.5e-4,
     {1.65e9},      {1.10e9},  10.5,          6.9704,         2.7425, 0.030,   0.085, 2,
     NO_BOILING,    MEMORY,    MEMORY,        TWO_POINTS,     MEMORY, INTERVAL},
    {GRADE_CASTOR,
     "castor",
     "castor oil and alcohol",
     FAMILY_CASTOR,
     {ALCOHOL_BOILS},
     {ALCOHOL_BOILS},
     {NAN},
     NAN,
     {NAN},
     {NAN},
     NAN,
     NAN,
     NAN,
     NAN,
     NAN,
     1,
     ALCOHOL,
     NOT_KNOWN,
     NOT_KNOWN,
     NOT_KNOWN,
     NOT_KNOWN,
     "drained when found"},
};

const struct fluid_row *fluid_rows(size_t *count)
{
    *count = sizeof rows / sizeof rows[0];
    return rows;
}

const struct fluid_row *fluid_row(enum fluid_grade grade)
{
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        if (rows[i].grade == grade)
            return &rows[i];
    return NULL;
}

struct pressure fluid_modulus(enum fluid_grade grade, struct temperature at)
{
    const struct fluid_row *row = fluid_row(grade);
    if (!row || isnan(at.celsius))
        return (struct pressure){NAN};
    double along = fmin(fmax((at.celsius - 20) / (100 - 20), 0), 1);
    return (struct pressure){row->modulus_20.pa +
                             along * (row->modulus_100.pa - row->modulus_20.pa)};
}

/* About 1 % of water a year beyond the 3.7 % of wet fluid, 9.6 K for each (print of DOT 3). */
static double glycol_boiling(const struct fluid_row *row, double years)
{
    double dry = row->dry_boiling.celsius, wet = row->wet_boiling.celsius;
    double aged = years / row->change_years;
    if (aged <= 1)
        return dry - (dry - wet) * sqrt(aged);
    return fmax(wet - BEYOND_WET * (years - row->change_years), NEGLECTED_GLYCOL);
}

struct temperature fluid_boiling(enum fluid_grade grade, double years)
{
    const struct fluid_row *row = fluid_row(grade);
    if (!row || years < 0)
        return (struct temperature){NAN};
    if (row->family != FAMILY_GLYCOL)
        return row->wet_boiling;
    return (struct temperature){isnan(years) ? NAN : glycol_boiling(row, years)};
}

struct temperature fluid_boiling_neglected(enum fluid_grade grade)
{
    const struct fluid_row *row = fluid_row(grade);
    enum fluid_family family = row ? row->family : FAMILY_UNKNOWN;
    return (struct temperature){family == FAMILY_GLYCOL     ? NEGLECTED_GLYCOL
                                : family == FAMILY_SILICONE ? WATER_BOILS
                                                            : NAN};
}

struct volume fluid_compression(struct volume of, struct pressure modulus, double slope,
                                struct pressure p)
{
    if (!(of.m3 >= 0) || !(modulus.pa > 0) || !(slope >= 0) || !(p.pa >= 0))
        return (struct volume){NAN};
    if (slope == 0)
        return (struct volume){of.m3 * p.pa / modulus.pa};
    /* Not 1 - pow(...): that loses digits at the low pressures where a pedal begins. */
    return (struct volume){-of.m3 * expm1(-log1p(slope * p.pa / modulus.pa) / slope)};
}

struct volume air_compression(struct volume free_air, struct pressure p)
{
    if (!(free_air.m3 >= 0) || !(p.pa >= 0))
        return (struct volume){NAN};
    return (struct volume){free_air.m3 * (p.pa / (STANDARD_ATMOSPHERE + p.pa))};
}

struct pressure air_pressure_after(struct pressure before, struct volume from, struct volume to)
{
    if (!(before.pa > -STANDARD_ATMOSPHERE) || !(from.m3 > 0) || !(to.m3 > 0))
        return (struct pressure){NAN};
    double before_abs = STANDARD_ATMOSPHERE + before.pa;
    return (struct pressure){before_abs * from.m3 / to.m3 - STANDARD_ATMOSPHERE};
}
