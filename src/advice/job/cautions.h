#ifndef FIRMPEDAL_ADVICE_JOB_CAUTIONS_H
#define FIRMPEDAL_ADVICE_JOB_CAUTIONS_H

#include <stdbool.h>

#include "advice/bleeding/touched.h"

enum caution_when {
    CAUTION_ALWAYS,
    CAUTION_LININGS, /* brakes, or a slave inside the bell housing, are worked on */
    CAUTION_DRUMS,
    CAUTION_BLEEDING,
    CAUTION_LIFTED,
    CAUTION_ROAD,
    CAUTION_ROAD_MOTORCYCLE,
    CAUTION_CLUTCH,
    CAUTION_GLYCOL,
    CAUTION_SILICONE,
    CAUTION_OIL, /* silicone or mineral oil */
    CAUTION_MOTORCYCLE
};
struct caution_row {
    const char *id;
    const char *signal; /* "DANGER", "WARNING", "CAUTION" (ISO 3864-2, ANSI Z535 signal words) */
    const char *hazard; /* "Brake fluid" */
    const char *brief;  /* all of it in one line of a small sheet or screen */
    const char *strip;  /* in capitals, for the bar above a sheet; NULL: not there */
    const char *harm;   /* what happens */
    const char *avoid;  /* how to avoid it */
    enum caution_when when;
};
const struct caution_row *caution_rows(size_t *count);
/* Whether a caution is for this job: that of a part only where the work has to do with it.
 *
 *   job   as touched_by gives it; the whole car without a work file */
bool caution_applies(const struct caution_row *row, const struct system *system,
                     const struct touched *job);
/* The sentence that every result ends with: the car's own manual, local rules and licensed
 * inspection come first. */
const char *caution_deference(void);
/* The same in one line, for answers in short. */
const char *caution_deference_brief(void);

#endif
