#ifndef FIRMPEDAL_ADVICE_FIGURES_DEPENDENCE_H
#define FIRMPEDAL_ADVICE_FIGURES_DEPENDENCE_H

#include "advice/figures/figures.h"

/* Finds what figures rest on and what they lack, by trying it out on a copy of the car.
 *
 *   figures   with row, subject, sub and value set; assumed, needs and state are filled in, and
 *             reason where a value is not known though no key is missing
 *
 * Rests on: each assumed value is moved to the ends of its usual range, by a hundredth, to half and
 * double, to its row's example where it is 0, and through all choices, within its limits; a figure
 * that changes by any bit rests on it. A chamber's usual volume counts as an assumed "chamber".
 * Most telling first: by the greatest change over the usual range; those that matter only beyond a
 * knee (a floor, a full bore) after all others.
 *
 * Lacks: all that is not said is filled with its row's example (where that gives no value, with the
 * ends of the usual range), then taken away key by key for good as long as no figure loses its
 * value, so that of two ways to say a thing one is left, the first of its table; then of what is
 * left each key by itself, to see which figures lose theirs.
 *
 * Counts (inlets, passages, nipples) say how the plumbing is joined and are not moved. */
void dependence_find(const struct system *system, const struct network *network,
                     struct force effort, struct figures *figures, struct arena *arena);

#endif
