#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_SCOPE_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_SCOPE_H

#include "advice/bleeding/bleed_types.h"
#include "network/belonging.h"

/* Which nipples the work let air get to. */

struct scoped_nipple {
    struct nipple nipple;
    int vertex;
    int circuit;
    bool clutch; /* on a clutch circuit */
    bool wheel;  /* at a brake or a clutch slave; else upstream of them */
};
struct bleed_set {
    enum bleed_scope scope;
    const char *reason;
    struct scoped_nipple *items; /* in scope, in the order of parts */
    int count;
    struct nipple *untouched;
    int untouched_count;
    bool *air;          /* by vertex: air got into it, and not only old fluid is to be changed */
    bool *master_air;   /* by part index: a master that air got into */
    bool *circuit_open; /* by circuit: some vertex of it is in scope */
};

struct bleed_set bleed_set_of(const struct system *system, const struct network *network,
                              struct arena *arena);

#endif
