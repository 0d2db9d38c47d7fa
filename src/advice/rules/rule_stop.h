#ifndef FIRMPEDAL_ADVICE_RULES_RULE_STOP_H
#define FIRMPEDAL_ADVICE_RULES_RULE_STOP_H

#include "physics/balance.h"

/* The most that the rules allow a foot for a stop, N: 49 CFR 571.135, S7.5; UN Regulation No. 13-H,
 * annex 3, 2.1.1 (from memory). */
#define RULE_EFFORT 500.0

/* Deceleration of a stop as rules test it: at an effort, or a lesser one where a wheel would lock.
 *
 *   effort     N
 *   assisted   the servo works
 *   lost       circuit that is lost, -1: none
 *   room       for the solving
 *   gives      the lesser of what the brakes give and of what the first wheel locks at on the grip
 *              of the vehicle's tyres; NaN when it is not known
 *
 * Checked by: tests/advice/rules/test_rule_stop.c, tests/advice/rules/test_rules.c */
struct acceleration rule_stop_at(const struct system *system, const struct network *network,
                                 double effort, bool assisted, int lost, struct solution *room);

/* The same at RULE_EFFORT. */
struct acceleration rule_stop(const struct system *system, const struct network *network,
                              bool assisted, int lost, struct arena *arena);

#endif
