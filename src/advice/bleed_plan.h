#ifndef FIRMPEDAL_ADVICE_BLEED_PLAN_H
#define FIRMPEDAL_ADVICE_BLEED_PLAN_H

#include "advice/steps.h"
#include "base/message.h"
#include "network/graph.h"

enum bleed_scope {
    BLEED_NOTHING, /* nothing was opened */
    BLEED_PART,    /* only what was opened */
    BLEED_ALL
};
struct bleed_plan {
    enum bleed_scope scope;
    const char *scope_reason; /* in words: "the master is new", "no work file: the whole car" */
    bool refused;             /* a loop in the plumbing: no order can be given */
    const char *refusal;
    bool makers_order;       /* the description's own order was followed */
    struct nipple *left_out; /* nipples in scope that the maker's order leaves out */
    int left_out_count;
    struct steps settings;    /* before */
    struct steps steps;       /* PHASE_BLEED, in order */
    struct nipple *untouched; /* nipples that stay shut */
    int untouched_count;
    struct volume fluid; /* to have ready, in all; NaN when lengths are missing */
    bool fluid_assumed;
};

/* Plans the bleeding. Without work: every nipple. With work: what the opened, renewed and replaced
 * parts and dry reservoirs let air into (all beyond an opened part, and the part itself); renewed
 * fluid takes every nipple. A nipple in scope comes up exactly once. Order: master outlets, then
 * nipples upstream of wheels (remote servo, valves, joints), then circuit by circuit (rear or
 * diagonal pair with the rear wheel first), within it the longest run first, ties by the side away
 * from the master, several nipples at a wheel lower or outer first; the clutch last. The maker's
 * own order wins and is checked for completeness. */
struct bleed_plan *bleed_plan_of(const struct system *system, const struct network *network,
                                 struct arena *arena);

/* Nipple as words: "rear left drum", "front left disc, outer nipple". */
const char *nipple_words(const struct system *system, struct nipple nipple, struct arena *arena);

#endif
