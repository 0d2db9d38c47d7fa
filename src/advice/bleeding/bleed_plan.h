#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_PLAN_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_PLAN_H

#include "advice/bleeding/bleed_types.h"
#include "network/graph.h"

/* Plans the bleeding. Without work: every nipple, and the circuits count as dry. With work: what
 * the opened, renewed and replaced parts and dry reservoirs let air into (all beyond an opened
 * part, and the part itself); renewed fluid takes every nipple. Every nipple in scope comes up at
 * least once.
 *
 * Stages: master outlets, then nipples upstream of wheels (remote servo, valves, joints), then
 * circuit by circuit (rear or diagonal pair with the rear wheel first), the clutch last. Within a
 * circuit that is dry throughout the longest run comes first, as the trade has it; in one that is
 * not, the way with the most air, ties by the longer run. That order is kept if the simulation
 * finds that no other leaves less air and none takes a twentieth less fluid; else the best takes
 * its place, with the reason. The maker's own order wins over all of it, and one that was asked for
 * over that.
 *
 *   wishes   NULL: none */
struct bleed_plan *bleed_plan_of(const struct system *system, const struct network *network,
                                 const struct bleed_wishes *wishes, struct arena *arena);

/* Nipple as words: "rear left drum", "front left disc, outer nipple". */
const char *nipple_words(const struct system *system, struct nipple nipple, struct arena *arena);

#endif
