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
    int hose;           /* part index of the hose that bridges it, -1 */
    int unknown;        /* the part whose mount is not known, -1 */
    const char *reason; /* GAP_ACCEPTED: why the hard pipe is accepted; else NULL */
};
struct gaps {
    struct gap *items;
    int count;
    int *idle_hoses; /* pressure hoses that bridge no gap (each costs pedal), in walking order */
    int idle_count;
};

/* Finds every gap of the network, circuit by circuit from the master on.
 *
 * The plumbing is cut into stretches that end at parts of known mount. Joints and valves without a
 * mount through which one pipe or hose goes on are looked through; they may be on either side. A
 * stretch whose ends move against each other is a gap: with no hose it is bare (or accepted, when
 * the part beyond or one on it says so), with one it is bridged, of several the first bridges it
 * and the others are idle. Every hose of a stretch whose ends do not move against each other is
 * idle. A stretch that feeds several brakes is one gap.
 *
 * A joint or valve without a mount where the plumbing branches or ends is judged so:
 *   - Fed through hard pipe alone, it is on the same mount as the part that feeds it: hard pipe
 *     cannot cross a gap. This follows from pipes, never from a hose: when its feed's hose was
 *     forgotten, what it feeds through hard pipe shows as bare. When all that lies beyond and moves
 *     against the feed hangs on one mount by hard pipe alone, the one bare gap is its feed.
 *     Not when a beam axle lies between the body and front wheels that it feeds, since it may
 *     be on either.
 *   - Fed through a hose, it is on that mount too when nothing beyond it moves against it.
 *   - Else one gap of GAP_CANNOT_TELL says so, and no stretch that ends at it is judged: its hoses
 *     neither bridge a gap nor are idle.
 * A brake without a mount gives GAP_CANNOT_TELL in the same way. */
struct gaps mounts_gaps(const struct system *system, const struct network *network,
                        struct arena *arena);

#endif
