#ifndef FIRMPEDAL_PARTS_PIPE_H
#define FIRMPEDAL_PARTS_PIPE_H

#include <stddef.h>

#include "base/date.h"
#include "units/quantity.h"

enum pipe_material { PIPE_MATERIAL_NOT_SAID, PIPE_STEEL, PIPE_COPPER_NICKEL };

struct pipe {
    struct length length;        /* key "length"; from the run */
    struct length size;          /* "size": outside diameter, assumed 3/16 in */
    struct length wall;          /* "wall", assumed 0.028 in (0.7 mm for metric sizes is near) */
    enum pipe_material material; /* "material", assumed steel */
    struct date renewed;         /* "renewed" */
    const char *thread;          /* "thread" of its nuts: M10 x 1, 3/8-24 UNF ... */
    const char *flare;           /* "flare": double, bubble */
};

/* Inside diameter: size less twice the wall; NaN unless both are > 0 and leave a hole. */
struct length pipe_inside(const struct pipe *pipe);
/* Volume inside a length of pipe. */
struct volume pipe_volume(const struct pipe *pipe);
/* Swelling of a closed-ended elastic pipe under inner pressure (Lame):
 * dV/V = (2 eps_t + eps_z). */
struct volume pipe_swelling(const struct pipe *pipe, struct pressure p);

/* Tube, thread and flare rows for hints and tests. */
struct thread_row {
    const char *name;      /* "M10 x 1" */
    struct length major, pitch;
    const char *usual_on;  /* "4.75 mm (3/16 in) tube, metric cars" */
    const char *beware;    /* look-alike and what happens */
    const char *source;
};
const struct thread_row *thread_rows(size_t *count);
struct tube_row {
    const char *name;      /* "3/16 in" */
    struct length size, wall;
    const char *source;
};
const struct tube_row *tube_rows(size_t *count);
/* The wall of the standard tube of that outside size (within 0.1 mm); NaN when none. */
struct length tube_usual_wall(struct length size);

#endif
