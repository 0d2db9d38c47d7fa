#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_BENCH_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_BENCH_H

#include "advice/bleeding/bleed_scope.h"

/* What is done at the bench before the parts go on: new masters are bled there, pipes that stay
 * are tried for flow (those that the work emptied; without work all), like ones in one step. */
struct steps bleed_bench_of(const struct system *system, const struct network *network,
                            const struct bleed_set *set, struct arena *arena);

#endif
