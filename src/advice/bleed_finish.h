#ifndef FIRMPEDAL_ADVICE_BLEED_FINISH_H
#define FIRMPEDAL_ADVICE_BLEED_FINISH_H

#include "advice/bleed_scope.h"

/* What ends the bleeding: pedal, levels, the leak tests under a held pedal and overnight, the road.
 * Only pedals and reservoirs of circuits in scope. */
struct steps bleed_finish_of(const struct system *system, const struct network *network,
                             const struct bleed_set *set, struct arena *arena);

/* The leak tests of a pedal that works brakes, with force and time of their rules; of a hand lever
 * the one that suits it. */
void leak_tests_add(struct steps *steps, const struct system *system, int pedal);

#endif
