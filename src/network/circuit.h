#ifndef FIRMPEDAL_NETWORK_CIRCUIT_H
#define FIRMPEDAL_NETWORK_CIRCUIT_H

#include "base/arena.h"
#include "network/graph.h"
#include "network/system.h"

/* Walks a wired network from every master chamber and fills in its circuits: which vertices each
 * reaches, their parents, depths and runs, the circuits' order and names. A vertex that two
 * circuits reach stays with the first; the edge between them belongs to neither. */
void circuits_walk(const struct system *system, struct network *network, struct arena *arena);

#endif
