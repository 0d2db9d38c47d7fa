#ifndef FIRMPEDAL_TESTS_PROOF_TALLY_H
#define FIRMPEDAL_TESTS_PROOF_TALLY_H

#include "base/text.h"
#include "contest.h"

/* What many contests come to. Percentages are of the best order's fluid or strokes; orders that
 * leave more air than the best are counted apart, for what stops early is no bargain. */

/* One planner over all nets. */
struct rival {
    int dirty;             /* nets where it left more air than the best */
    int clear;             /* the others, where the best draws anything at all */
    double fluid, strokes; /* sums of what it draws above the best on those, as shares */
    double most_fluid;     /* the greatest of them */
    int worse, better;     /* than the plan: more air, or over 5 % more or less fluid */
};
struct tally {
    int nets;
    long orders;
    int differences[DIFFERENCES], rule_differences[DIFFERENCES], simple_differences[DIFFERENCES];
    int departures; /* nets where the plan leaves the rule */
    int dear;       /* the dearest order lies 20 % or more above the cheapest: fluid or strokes */
    int dear_fluid, dear_strokes;
    int some_leave_air;                 /* some order leaves more air than the best */
    int dear_or_air;                    /* either */
    double fluid_spread, stroke_spread; /* sums */
    double most_fluid_spread, most_stroke_spread;
    double worst_balance; /* m3 */
    struct rival plan, rule, nearest, farthest, simple, random;
    double mean_fluid; /* sum of what the mean over all orders lies above the best, as shares */
};

void tally_add(struct tally *tally, const struct contest *contest);
/* "12.3 %" of a sum over so many. */
const char *tally_percent(struct arena *arena, double sum, int count);

#endif
