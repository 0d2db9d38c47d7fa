#ifndef FIRMPEDAL_ADVICE_FIGURES_CURVES_H
#define FIRMPEDAL_ADVICE_FIGURES_CURVES_H

#include "advice/figures/figures.h"
#include "physics/pedal_curve.h"

/* The pedal curves of a car: every brake pedal or hand lever in every case that can differ from the
 * usual one. */

struct car_curve {
    const struct curve_case *of;
    int lost;          /* circuit that is lost, -1 */
    const char *words; /* "hot brakes, hot fluid", "front circuit lost" */
    const struct pedal_curve *curve;
    struct length travel;    /* at its end; NaN where there is no curve */
    struct share left;       /* of the travel to the floor, at its end; NaN where it is not known */
    struct cited_key *needs; /* what is missing where there is no curve */
    int needs_count;
};
struct pedal_curves {
    int pedal;               /* part index */
    struct car_curve *items; /* the usual case first */
    int count;
};
struct curves {
    struct pedal_curves *items;
    int count;
};

/* Works all of them out, at each pedal's own effort or the asked one (NaN: its own).
 * Checked by: tests/advice/figures/test_curves.c */
struct curves curves_of(const struct system *system, const struct network *network,
                        struct force effort, struct arena *arena);

#endif
