#ifndef FIRMPEDAL_REPORT_PAINT_DRAWING_H
#define FIRMPEDAL_REPORT_PAINT_DRAWING_H

#include <stdbool.h>

#include "report/paint/paint.h"

/* Opens a ruler, draws with it and closes it, also when memory runs out on the way: the jump of
 * the arena then goes on to where its owner wants it. */
typedef bool drawing_work(const struct ruler *ruler, const void *order, struct bytes *out,
                          const char **error);
bool drawing_run(drawing_work *work, const void *order, struct bytes *out, const char **error);

#endif
