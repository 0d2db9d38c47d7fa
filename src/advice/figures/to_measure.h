#ifndef FIRMPEDAL_ADVICE_FIGURES_TO_MEASURE_H
#define FIRMPEDAL_ADVICE_FIGURES_TO_MEASURE_H

#include "advice/figures/figures.h"

/* What to measure first: values of the car that a person can take with tape, caliper or gauge and
 * that were assumed or are missing, most telling first. Equal values of parts of a kind, left and
 * right, are one thing. */

struct measuring {
    const struct key *key;
    const int *parts; /* whose value it is */
    int part_count;
    const char *words; /* "run out of the front left disc and the front right disc" */
    bool missing;      /* nothing stands for it: the figures that need it are not computed */
    int figures;       /* how many it moves or would give */
    const struct figure *most; /* the one that it moves most, or the first that needs it */
    double share; /* by how much of itself that figure moves over the value's usual range; NaN where
                     it is missing */
    double tells; /* sum of such shares over the figures, each at most 1; a figure that needs
                     several values counts 1 in all */
};

struct measurings {
    struct measuring *items;
    int count;
};

/* The list of these figures. Empty where all that can be measured is given. */
struct measurings measurings_of(const struct system *system, const struct figures *figures,
                                struct arena *arena);

/* "run out of the front left disc". */
const char *cited_thing_words(struct arena *arena, const struct system *system,
                              const struct cited_key *cited);

#endif
