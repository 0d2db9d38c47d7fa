#ifndef FIRMPEDAL_REPORT_CHART_CHOICE_CHART_H
#define FIRMPEDAL_REPORT_CHART_CHOICE_CHART_H

#include "advice/result.h"
#include "report/paint/drawing.h"
#include "report/paint/sketch.h"

/* Two bores against each other: lines of the same foot and of the same pedal left, the region that
 * suits, every pair that was tried, the car as it is and the best pair. */

/* The map of a result, NULL where there is none: of other than two cylinders of the brakes. */
const struct choice_group *choice_chart_of(const struct result *result);
/* The page, from a group that has a map. */
struct sketch choice_chart(const struct result *result, const struct choice_group *group,
                           struct arena *arena);

/* The page as the bytes of a file; false with words in *error. dots: to the inch, of a PNG. */
bool choice_picture(const struct result *result, enum picture_form form, double dots,
                    struct bytes *out, const char **error);

#endif
