#ifndef FIRMPEDAL_ADVICE_JOB_SOFT_H
#define FIRMPEDAL_ADVICE_JOB_SOFT_H

#include "advice/checks/hoses.h"
#include "network/graph.h"

/* The pedal does not come firm: what one feels, what to do first, what then; only what can be on
 * this car. Common practice, no source. */

struct soft_row {
    const char *id;   /* "long-then-hard" */
    const char *feel; /* what one feels */
};

struct soft_line {
    const struct soft_row *row;
    const char *first, *then; /* then NULL: nothing more */
};
struct soft_list {
    struct soft_line *items;
    int count;
};
struct soft_list soft_of(const struct system *system, const struct network *network,
                         const struct hose_list *hoses, struct arena *arena);

#endif
