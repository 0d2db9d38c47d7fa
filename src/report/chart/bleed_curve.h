#ifndef FIRMPEDAL_REPORT_CHART_BLEED_CURVE_H
#define FIRMPEDAL_REPORT_CHART_BLEED_CURVE_H

#include "advice/result.h"
#include "report/paint/sketch.h"

/* Draws how the air goes: what is left in the circuits against the fluid drawn off, by the planned
 * order, with a mark and the step's number where each nipple begins. Black on white. Nothing is
 * drawn where the plan has no curve of two points at least. */
void bleed_curve_draw(struct sketch *sketch, const struct result *result, struct box box);

/* The numbers along an axis from 0 to most: 1, 2 or 5 times a power of ten apart, from three to
 * eight of them. */
double bleed_curve_step(double most);

#endif
