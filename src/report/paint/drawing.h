#ifndef FIRMPEDAL_REPORT_PAINT_DRAWING_H
#define FIRMPEDAL_REPORT_PAINT_DRAWING_H

#include <stdbool.h>

#include "report/paint/paint.h"

/* Opens a ruler, draws with it and closes it, also when memory runs out on the way: the jump of
 * the arena then goes on to where its owner wants it. */
typedef bool drawing_work(const struct ruler *ruler, const void *order, struct bytes *out,
                          const char **error);
bool drawing_run(drawing_work *work, const void *order, struct bytes *out, const char **error);

enum picture_form { PICTURE_SVG, PICTURE_PDF, PICTURE_PNG };
/* Makes the one page of a picture of something; false with words in *error where there is none. */
typedef bool picture_maker(const struct ruler *ruler, const void *of, struct arena *arena,
                           struct sketch *page, const char **error);
struct picture {
    picture_maker *make;
    const void *of;
    const char *title; /* of the file, and its date */
    struct date date;
    enum picture_form form;
    double dots; /* an inch, 20 to 1200; of PICTURE_PNG */
};
/* The bytes of the file in out (out->arena must be set). false with words in *error. */
bool picture_bytes(const struct picture *picture, struct bytes *out, const char **error);

#endif
