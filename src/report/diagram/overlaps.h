#ifndef FIRMPEDAL_REPORT_DIAGRAM_OVERLAPS_H
#define FIRMPEDAL_REPORT_DIAGRAM_OVERLAPS_H

#include "report/diagram/layout.h"

/* Whether a straight line comes into a box. */
bool overlaps_line_meets_box(struct point a, struct point b, struct box box);

#endif
