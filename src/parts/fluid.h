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
    GRADE_DOT5,    /* silicone */
    GRADE_MINERAL
};
enum fluid_family { FAMILY_UNKNOWN, FAMILY_GLYCOL, FAMILY_SILICONE, FAMILY_MINERAL };

struct fluid {
    enum fluid_grade grade;         /* key "grade" = DOT 3 | DOT 4 | DOT 5.1 | DOT 5 | mineral */
    struct date renewed;            /* "renewed": when it was last changed */
    struct temperature temperature; /* "temperature", assumed 20 degC */
    struct volume air;              /* "air": free air left in each circuit, assumed 0 mL */
    enum fluid_grade found;         /* "found": what was in it when opened, when it was another */
};

/* One row a grade: boiling points, density, modulus, viscosity, air it dissolves; each with its
 * source or "from memory". The table is printed into the docs. */
struct fluid_row {
    enum fluid_grade grade;
    const char *word;
    enum fluid_family family;
    struct temperature dry_boiling, wet_boiling; /* minima; NaN for mineral */
    struct density density;          /* at 20 degC */
    double expansion;                /* 1/K */
    struct pressure modulus_20;      /* isothermal K0 at 20 and 100 degC */
    struct pressure modulus_100;
    double modulus_slope;            /* K', change of modulus with pressure, - */
    double walther_a, walther_b;     /* log10 log10(nu + 0.7) = A - B log10 T */
    double surface_tension;          /* N/m */
    double air_dissolved;            /* volume of air at 1 atm per volume of fluid */
    int change_years;                /* renewal interval */
    const char *boiling_source, *modulus_source, *density_source;
};
const struct fluid_row *fluid_rows(size_t *count);
const struct fluid_row *fluid_row(enum fluid_grade grade); /* NULL when not said */

/* Isothermal modulus at rest pressure, linear between the rows' two temperatures (held beyond). */
struct pressure fluid_modulus(enum fluid_grade grade, struct temperature at);

/* Volume that a volume of fluid gives way under pressure, Murnaghan:
 *   dV = V [1 - (1 + K' p/K0)^(-1/K')], p >= 0; written with expm1/log1p.
 * With slope 0: V p / K0. NaN outside. */
struct volume fluid_compression(struct volume of, struct pressure modulus, double slope,
                                struct pressure p);

/* Volume that free air gives way: V0 [1 - p_a/(p_a + p)], isothermal (Boyle), V0 at 1 atm. */
struct volume air_compression(struct volume free_air, struct pressure p);

/* Gauge pressure of a gas closed in and squeezed isothermally from one volume to another. */
struct pressure air_pressure_after(struct pressure before, struct volume from, struct volume to);

#endif
