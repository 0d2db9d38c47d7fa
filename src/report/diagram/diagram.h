#ifndef FIRMPEDAL_REPORT_DIAGRAM_DIAGRAM_H
#define FIRMPEDAL_REPORT_DIAGRAM_DIAGRAM_H

#include <stdbool.h>

#include "advice/result.h"
#include "report/diagram/layout.h"
#include "report/paint/drawing.h"
#include "report/paint/sketch.h"

/* The drawing of a layout that is not refused, LAYOUT_WIDTH by LAYOUT_HEIGHT, without legend. */
struct sketch diagram_sketch(const struct layout *layout, const struct ruler *ruler,
                             struct arena *arena);

/* The pen of a circuit's pipes; no two circuits have the same dash. */
struct pen diagram_circuit_pen(const struct layout *layout, int circuit);

/* What lines, tags and circles mean, in columns over a width.
 *   gives  a sketch as high as it needs */
struct sketch diagram_legend(const struct layout *layout, const struct ruler *ruler,
                             struct arena *arena, double width);

/* The diagram alone with title and legend, as a page of its own. */
struct sketch diagram_page(const struct layout *layout, const struct ruler *ruler,
                           struct arena *arena);

/* The page as the bytes of a file in out (out->arena must be set). false with words in *error, also
 * where the layout is refused. dots: to the inch, 20 to 1200, of a PNG. */
bool diagram_picture(const struct result *result, enum picture_form form, double dots,
                     struct bytes *out, const char **error);

#endif
