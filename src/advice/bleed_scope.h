#ifndef FIRMPEDAL_ADVICE_BLEED_SCOPE_H
#define FIRMPEDAL_ADVICE_BLEED_SCOPE_H

#include "advice/bleed_plan.h"

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

/* The reservoir that feeds a master: its own, else that of the master in the same casting, else
 * the only one; -1 when there is none or it cannot be told. */
int reservoir_of(const struct system *system, int master);
/* The master or servo that a supply or vacuum hose belongs to, by its name as the reader gives it;
 * -1: a pressure hose, or it cannot be told. */
int soft_hose_owner(const struct system *system, int hose);
/* Nipples of a part, counting what is not said as usual: one at brakes and slaves, none else. */
int nipples_of(const struct part *part);
/* The vertex that a nipple opens; -1 when no circuit reaches it. */
int nipple_vertex(const struct system *system, const struct network *network, struct nipple nipple);
/* Whether the work fitted a new part. */
/* Whether the work at hand changes this fluid: all of it, or for another. */
bool fluid_is_changed(const struct system *system, int fluid);
bool part_is_new(const struct part *part);
/* Whether a master, or the reservoir that feeds it, ran dry. */
bool master_ran_dry(const struct system *system, int master);
/* Whether the work at hand, the latest, renewed the fluid. */
bool fluid_is_renewed(const struct system *system);
/* Whether the work opened, renewed or replaced a part. */
bool part_was_opened(const struct part *part);

#endif
