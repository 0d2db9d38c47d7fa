#ifndef FIRMPEDAL_PARTS_FLUID_H
#define FIRMPEDAL_PARTS_FLUID_H

#include <stddef.h>

#include "base/date.h"
#include "units/quantity.h"

enum fluid_grade {
    GRADE_NOT_SAID,
    GRADE_DOT3,
    GRADE_DOT4,
    GRADE_DOT51,
    GRADE_DOT5, /* silicone */
    GRADE_MINERAL,
    GRADE_CASTOR /* castor oil and alcohol: found in old systems, filled into none */
};
enum fluid_family { FAMILY_UNKNOWN, FAMILY_GLYCOL, FAMILY_SILICONE, FAMILY_MINERAL, FAMILY_CASTOR };

struct fluid {
    enum fluid_grade grade;         /* key "grade" = DOT 3 | DOT 4 | DOT 5.1 | DOT 5 | mineral */
    struct date renewed;            /* "renewed": when it was last changed */
    struct temperature temperature; /* "temperature", assumed 20 degC */
    struct temperature hot;         /* "temperature hot": with the brakes hot, assumed 100 degC */
    struct volume air;              /* "air": free air left in each circuit, assumed 0 mL */
    enum fluid_grade found;         /* "found": what was in it when opened, when it was another */
};

/* One row a grade: boiling points, density, modulus, viscosity, air it dissolves; each with its
 * source or "from memory". The table is printed into the docs. The viscosity law is meant for
 * more than 2 mm2/s. Castor oil with alcohol is only found and drained, so no more of it is known
 * than how it boils. */
struct fluid_row {
    enum fluid_grade grade;
    const char *word; /* of the description */
    const char *name; /* in running words */
    enum fluid_family family;
    struct temperature dry_boiling, wet_boiling; /* minima; NaN for mineral */
    struct density density;                      /* at 20 degC */
    double expansion;                            /* 1/K */
    struct pressure modulus_20;                  /* isothermal K0 at 20 and 100 degC */
    struct pressure modulus_100;
    double modulus_slope;        /* K', change of modulus with pressure, - */
    double walther_a, walther_b; /* log10 log10(nu + 0.7) = A - B log10 T */
    double surface_tension;      /* N/m, from memory */
    double air_dissolved;        /* volume of air at 1 atm per volume of fluid */
    int change_years;            /* renewal interval */
    const char *boiling_source, *modulus_source, *density_source;
    const char *viscosity_source, *air_source, *change_source;
};
const struct fluid_row *fluid_rows(size_t *count);
/* The row of a grade; NULL when it is not said. */
const struct fluid_row *fluid_row(enum fluid_grade grade);

/* Isothermal bulk modulus at rest pressure.
 *
 *   grade   of the fluid
 *   at      its temperature, degC
 *   gives   modulus, Pa: on the straight line between the row's values at 20 and 100 degC, held at
 *           them below and above; NaN for no grade or no temperature
 *
 * Source: the rows, from memory; what brands show differs by 10 %.
 * Checked by: tests/parts/test_fluid.c
 */
struct pressure fluid_modulus(enum fluid_grade grade, struct temperature at);

/* Boiling point of fluid that has been in the car for some years. Glycol takes up water, fast at
 * first: from the dry minimum by the root of time to the wet one at the end of the grade's renewal
 * interval, then 10 K a year further down, not below 115 degC.
 *
 *   years   since it was changed, >= 0; NaN: not known
 *   gives   degC; NaN for no grade, for mineral oil, of which no boiling point is asked, and for
 *           glycol of unknown age, which boils anywhere from wet to neglected. Silicone takes up no
 *           water: its wet minimum at any age; castor oil with alcohol: as the alcohol
 *
 * Source: minima of 49 CFR 571.116, S5.1.1 and S5.1.2. The rest is a fit of our own through points
 * that trade texts print for DOT 3: 160 degC after a year, 145 after eighteen months, 118 with 6 %
 * of water, which is put at four years. For DOT 4 and 5.1 its slope is an assumption.
 * Checked by: tests/parts/test_fluid.c
 */
struct temperature fluid_boiling(enum fluid_grade grade, double years);

/* The lowest that neglect takes it to, degC: glycol 115, silicone 100, at which free water in it
 * boils; NaN for the others. Source and checks: as for fluid_boiling; water by definition. */
struct temperature fluid_boiling_neglected(enum fluid_grade grade);

/* Volume by which fluid gives way under pressure.
 *
 *   of        volume at rest, m3, >= 0
 *   modulus   isothermal bulk modulus at rest K0, Pa, > 0
 *   slope     change of modulus with pressure K', -, >= 0
 *   p         pressure, Pa gauge, >= 0
 *   gives     V [1 - (1 + K' p/K0)^(-1/K')], m3; with slope 0 the simple V p/K0; NaN outside
 *
 * One temperature throughout: a foot is slow.
 * Source: F. D. Murnaghan, Proc. Nat. Acad. Sci. 30 (1944) 244, from memory.
 * Checked by: tests/reference/murnaghan.c; slope 0 by tests/reference/young_freedman.c,
 * tests/reference/esposito.c
 */
struct volume fluid_compression(struct volume of, struct pressure modulus, double slope,
                                struct pressure p);

/* Volume by which free (not dissolved) air gives way.
 *
 *   free_air   volume at one atmosphere, m3, >= 0
 *   p          pressure, Pa gauge, >= 0
 *   gives      V0 [1 - p_a/(p_a + p)], m3; NaN outside
 *
 * One temperature: a bubble follows the wall within a tenth of a second.
 * Source: Boyle's law.
 * Checked by: tests/reference/esposito.c
 */
struct volume air_compression(struct volume free_air, struct pressure p);

/* Pressure of a gas that is shut in and squeezed at one temperature.
 *
 *   before   pressure at first, Pa gauge, above a perfect vacuum
 *   from, to volumes at first and at last, m3, > 0
 *   gives    pressure at last, Pa gauge; NaN outside
 *
 * Source: Boyle's law in absolute pressures.
 * Checked by: tests/reference/esposito.c, tests/reference/joel.c, tests/reference/granet.c
 */
struct pressure air_pressure_after(struct pressure before, struct volume from, struct volume to);

#endif
