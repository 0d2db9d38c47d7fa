#ifndef FIRMPEDAL_ADVICE_JOB_OPENING_H
#define FIRMPEDAL_ADVICE_JOB_OPENING_H

#include "advice/common/steps.h"
#include "network/graph.h"

/* What to open for the parts that the work renews or replaces (or for named parts): which unions in
 * which order, what to try first (nipples before ordering, the old pressure to free pistons), what
 * to plug and restrain, torques for closing where a source has one. parts NULL: those of the work.
 */
struct steps opening_of(const struct system *system, const struct network *network,
                        const int *parts, int part_count, struct arena *arena);

/* Torques for closing, a row each with its source. */
struct torque_row {
    const char *id;
    const char *words; /* what it is for: thread and material */
    struct torque least, most;
    const char *source;
};
const struct torque_row *torque_rows(size_t *count);
const struct torque_row *torque_row(const char *id);
/* Puts the torque of a row into a step. */
void step_torque(struct step *step, const char *row_id);

#endif
