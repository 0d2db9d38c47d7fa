#ifndef FIRMPEDAL_REPORT_OVERLAPS_H
#define FIRMPEDAL_REPORT_OVERLAPS_H

#include "report/layout.h"

/* Whether a straight line comes into a box. */
bool overlaps_line_meets_box(struct point a, struct point b, struct box box);

#endif
