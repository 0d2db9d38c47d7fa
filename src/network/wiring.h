#ifndef FIRMPEDAL_NETWORK_WIRING_H
#define FIRMPEDAL_NETWORK_WIRING_H

#include <stdbool.h>

#include "base/arena.h"
#include "base/message.h"
#include "network/graph.h"
#include "network/system.h"

/* The first half of building a network: what is joined to what, before anything is walked. */
struct wiring {
    struct network *network; /* vertices and edges; no circuits yet */
    /* by vertex: a mistake at this vertex was already reported, so that what follows from it is
     * not reported again */
    bool *excused;
};

/* Makes the vertices of all parts with fluid under pedal pressure, an edge for each pipe and
 * pressure hose with both ends joined, each direct joint and each passage, and lists the edges at
 * each vertex in the order of system_compare. Supply and vacuum hoses are left out. Reports loose
 * ends, ends used twice, missing joints and runs to parts without fluid. */
struct wiring wiring_lay(const struct system *system, struct arena *arena,
                         struct messages *messages);

#endif
