#ifndef FIRMPEDAL_NETWORK_MOUNTS_H
#define FIRMPEDAL_NETWORK_MOUNTS_H

#include <stdbool.h>

#include "network/graph.h"
#include "network/system.h"

/* Whether two mounts move against each other; a table of pairs. A steered wheel moves against its
 * beam axle; a brake on a live or dead rear axle is mounted on that axle, not on a wheel, so rear
 * wheel against rear axle moves too. Unknown mounts: false; ask first. */
bool mounts_move(enum mount a, enum mount b);

/* A place where the plumbing crosses from one mount to another that moves against it: exactly one
 * flexible piece belongs there. */
enum gap_state {
    GAP_BRIDGED,    /* there is a hose */
    GAP_BARE,       /* there is none: a hose is missing */
    GAP_ACCEPTED,   /* none, and the description accepts a hard pipe with a reason */
    GAP_CANNOT_TELL /* what a part is mounted on is not known */
};
struct gap {
    enum gap_state state;
    int circuit; /* index in the network */
    int near;    /* part on the master's side whose mount is known */
    int far;     /* part beyond the gap */
    enum mount from, to;
    int hose;    /* part index of the hose that bridges it, -1 */
    int unknown; /* the part whose mount is not known, -1 */
};
struct gaps {
    struct gap *items;
    int count;
    int *idle_hoses; /* pressure hoses that bridge no gap (each costs pedal) */
    int idle_count;
};

/* Finds every gap of the network. Walk each circuit from its master: joints that sprang up in a run
 * and joints, valves and nipples' parts without a mount are looked through when nothing branches
 * there; a branching joint of unknown mount next to a gap gives GAP_CANNOT_TELL. */
struct gaps mounts_gaps(const struct system *system, const struct network *network,
                        struct arena *arena);

#endif
