#ifndef FIRMPEDAL_ADVICE_FIGURES_CHAIN_H
#define FIRMPEDAL_ADVICE_FIGURES_CHAIN_H

#include "advice/figures/figures.h"

/* Which figures a figure is made of, for the way from a figure down to the lines of the file. Only
 * the way stands here; what a figure rests on is found by moving values, and a test holds the two
 * against each other. */

/* Whether two figures' subjects have to do with each other: the car with all; the same part or
 * circuit; a pedal, a circuit and a brake when fluid joins them. */
bool chain_related(const struct system *system, const struct network *network,
                   const struct figure *one, const struct figure *other);

/* The figures that a figure is made of, by index.
 *
 *   index   of the figure
 *   into    room for figures->count of them
 *   gives   how many there are */
int chain_from(const struct system *system, const struct network *network,
               const struct figures *figures, int index, int *into);

/* The rows of the way: a figure, what it is made of; or_from where there is no figure of from. */
struct chain_row {
    const char *figure, *from, *or_from;
    enum axle axle; /* only brakes of that axle; AXLE_NONE: all */
};
const struct chain_row *chain_rows(size_t *count);

#endif
