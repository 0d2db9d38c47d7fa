#ifndef FIRMPEDAL_ADVICE_JOB_OPENING_H
#define FIRMPEDAL_ADVICE_JOB_OPENING_H

#include "advice/common/steps.h"
#include "network/graph.h"

/* Taking apart and putting together what the work renews, replaces or opens: which unions in which
 * order, what to plug and restrain, torques for closing where a source has one; gauging of a
 * servo's rod while its master is off. Each union is undone once and done up once. */
struct steps opening_of(const struct system *system, const struct network *network,
                        struct arena *arena);

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
