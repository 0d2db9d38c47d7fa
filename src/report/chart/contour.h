#ifndef FIRMPEDAL_REPORT_CHART_CONTOUR_H
#define FIRMPEDAL_REPORT_CHART_CONTOUR_H

#include "report/paint/sketch.h"

/* Values at even steps over a box. */
struct field {
    const double
        *values; /* at[x * high + y], x from the left, y from the bottom; NaN, infinite: none */
    int wide, high;
    struct box box; /* mm */
};

/* Draws the line on which a field has a value: a piece for each cell that it crosses, straight
 * between the crossings of its sides.
 *   gives  where a label would stand: the crossing farthest to the right; x NaN without a line */
struct point contour_draw(struct sketch *sketch, const struct field *field, double value,
                          struct pen pen);

#endif
