#ifndef FIRMPEDAL_PARTS_FITTINGS_H
#define FIRMPEDAL_PARTS_FITTINGS_H

#include <stddef.h>

#include "units/quantity.h"

/* The threads of pipe nuts and ports, and the usual tubes, for hints and for walls that were not
 * measured. Each row has its source or "from memory". */
struct thread_row {
    const char *name;           /* "M10 x 1" */
    struct length major, pitch; /* nominal outside diameter; from crest to crest */
    const char *usual_on;       /* "4.75 mm (3/16 in) tube, metric cars" */
    const char *beware;         /* look-alike and what happens; NULL when none is known */
    const char *source;
};
const struct thread_row *thread_rows(size_t *count);

struct tube_row {
    const char *name;         /* "3/16 in" */
    struct length size, wall; /* outside diameter; thickness */
    const char *source;
};
const struct tube_row *tube_rows(size_t *count);

/* The wall of the usual tube of an outside size.
 *
 *   size    outside diameter, m
 *   gives   wall of the row that is nearest and within 0.1 mm, m; NaN when there is none
 *
 * Checked by: tests/reference/tube_and_thread.c
 */
struct length tube_usual_wall(struct length size);

#endif
