#ifndef FIRMPEDAL_REPORT_CHART_PEDAL_DRAWING_H
#define FIRMPEDAL_REPORT_CHART_PEDAL_DRAWING_H

#include "advice/result.h"
#include "report/paint/sketch.h"

/* Draws travel against effort, a line for each case with its words at the end of it, and the floor.
 * Black on white, the lines apart by their dashes. Nothing is drawn where the usual curve has not
 * two points. */
void pedal_drawing_curves(struct sketch *sketch, const struct result *result,
                          const struct pedal_curves *curves, struct box box);
/* Draws what takes the travel at the end of the usual curve, a bar for each cause. Gives the height
 * that it took. */
double pedal_drawing_causes(struct sketch *sketch, const struct result *result,
                            const struct pedal_curves *curves, double left, double top,
                            double width);

#endif
