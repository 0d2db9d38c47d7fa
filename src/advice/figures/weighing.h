#ifndef FIRMPEDAL_ADVICE_FIGURES_WEIGHING_H
#define FIRMPEDAL_ADVICE_FIGURES_WEIGHING_H

#include "advice/figures/branches.h"
#include "advice/figures/trial.h"

/* How much every figure moves with every value, given or assumed, where the car is now and around
 * each knee. Dear (some thousand solves), so only a trace asks for it. */

/* What one value does to one figure. Figures are SI, NaN where that was not tried or gives none. */
struct weight {
    bool moves;         /* some move changed the figure */
    bool beyond;        /* none did where the car is now: it matters only beyond a knee */
    double more;        /* the figure with a hundredth more of the value; with a hundredth less
                           where the row's limits allow no more */
    double less_by;     /* 1 where more is with a hundredth less */
    double least, most; /* the figure at the ends of the value's usual range */
    double other;       /* the figure farthest off at the row's example (value 0) or at another
                           choice */
    double telling;     /* for the order: the greatest change, as a part of the figure, over the
                           usual range of an assumed value, within the tolerance of a given one, for
                           a hundredth of it where none was written; what matters only beyond a knee
                           is below 1, the rest from 1 on */
};

struct weighing {
    struct moved_keys keys;
    size_t given;           /* the first so many of them are written, the others assumed */
    struct weight *weights; /* of figure f by key k: weights[k * figures + f] */
    size_t figures;
    struct branch *knees; /* where along the effort a case of some law ends */
    double *efforts;      /* there, as a part of the effort of the check */
    int knee_count;
};

/* Moves every value as dependence does, and besides by a hundredth at efforts a little below, at
 * and a little above each knee that lies between a tenth and four times the effort of the check.
 *
 *   figures   as figures_of gives them
 *   effort    as there
 *
 * What follows from a given value by a row's rule is found again when that value is moved.
 * Checked by: tests/advice/figures/test_weighing.c */
struct weighing weighing_of(const struct system *system, const struct network *network,
                            struct force effort, const struct figures *figures,
                            struct arena *arena);
const struct weight *weighing_weight(const struct weighing *weighing, size_t key, int figure);

#endif
