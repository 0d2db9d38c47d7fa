#ifndef FIRMPEDAL_ADVICE_FIGURES_BRANCHES_H
#define FIRMPEDAL_ADVICE_FIGURES_BRANCHES_H

#include "network/graph.h"
#include "network/system.h"
#include "physics/solution.h"

/* Laws with several cases (a servo, a valve, a pedal that meets its floor): which case holds. */

struct branch {
    int part;
    int index;         /* 0 first; another number is another case of the same law */
    const char *words; /* "helping: output rises by its ratio" */
    double now;      /* what decides it: force or pressure into the part; NaN where nothing does */
    double from, to; /* between which this case holds; to is infinite for the last one */
    enum dimension dimension; /* of the three */
};

/* The case of a part's law in a solution; false for a part whose law has but one case, or of which
 * too little is known.
 *
 *   solution   solved for that system, servo working */
bool branch_of(const struct system *system, const struct network *network,
               const struct solution *solution, int part, struct branch *branch);

#endif
