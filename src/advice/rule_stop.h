#ifndef FIRMPEDAL_ADVICE_RULE_STOP_H
#define FIRMPEDAL_ADVICE_RULE_STOP_H

#include "network/graph.h"
#include "network/system.h"

/* The most that the rules allow a foot for a stop, N: 49 CFR 571.135, S7.5; UN Regulation No. 13-H,
 * annex 3, 2.1.1 (from memory). */
#define RULE_EFFORT 500.0

/* Deceleration at that effort with a circuit lost (-1: none) or without the servo's help; NaN when
 * it is not known. */
struct acceleration rule_stop(const struct system *system, const struct network *network,
                              bool assisted, int lost, struct arena *arena);

#endif
