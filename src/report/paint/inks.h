#ifndef FIRMPEDAL_REPORT_PAINT_INKS_H
#define FIRMPEDAL_REPORT_PAINT_INKS_H

#include "report/paint/sketch.h"

/* What inks and dashes look like, whatever paints them. */

struct colour {
    double red, green, blue; /* 0 to 1 */
};
struct colour ink_colour(enum ink ink);

/* Lengths of strokes and gaps in turn, in pen widths, ended by 0; none for an unbroken line. */
enum { DASH_MOST = 10 };
const double *dash_lengths(enum dash dash);

#endif
