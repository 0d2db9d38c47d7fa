#ifndef FIRMPEDAL_NETWORK_FAULTS_H
#define FIRMPEDAL_NETWORK_FAULTS_H

#include "base/arena.h"
#include "base/message.h"
#include "network/system.h"
#include "network/wiring.h"

/* Reports what is wrong with a network that was wired and walked: parts that nobody feeds, joints
 * that lead nowhere, ports left open, valves fed at their outlet, circuits that run into each
 * other, loops, nipples out of reach, masters that feed nothing. One mistake gives one message:
 * what follows from a loose end or a mistyped joint is not reported again. */
void faults_report(const struct system *system, const struct wiring *wiring, struct arena *arena,
                   struct messages *messages);

#endif
