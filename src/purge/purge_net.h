#ifndef FIRMPEDAL_PURGE_PURGE_NET_H
#define FIRMPEDAL_PURGE_PURGE_NET_H

#include <stdbool.h>

#include "base/arena.h"
#include "network/graph.h"
#include "network/system.h"

/* One circuit as the simulation sees it: legs, pots, nipples, and the air in them at first. */

struct purge_leg {
    int above;          /* leg it hangs on; -1: the master's outlet. Always less than its index */
    int part;           /* index of the part; -1 in a network made up for a test */
    bool in_master;     /* the master's own chamber, not counted in path volumes */
    double volume;      /* m3, > 0 */
    double bore;        /* m, > 0 */
    double length;      /* m, > 0 */
    double climb;       /* m by which its far end lies above its near one; below 0: it falls */
    bool shut;          /* fluid at rest does not pass it: nothing beyond can be bled */
    bool climb_assumed; /* heights are not known: taken as level */
    double air;         /* m3 at first, at its far end */
};

struct purge_pot {
    int leg;         /* the leg that leads into it */
    int behind;      /* another pot that the fluid passes first (near half of a caliper); -1 */
    bool open_above; /* it lies before another and opens into that at its top: air goes on first */
    int part;        /* -1 in a network made up */
    int chamber;     /* of the part */
    double volume;   /* m3, >= 0 */
    double trapped;  /* m3 of it that lie above the nipple and cannot leave, 0 to volume */
    double air;      /* m3 at first */
};

/* A nipple opens a pot, or where pot is -1 the far end of a leg (a master's outlet, a high point).
 */
struct purge_nipple {
    int pot, leg;
    struct nipple nipple; /* which it is on the car; part -1 in a network made up */
};

struct purge_net {
    struct purge_leg *legs;
    int leg_count;
    struct purge_pot *pots;
    int pot_count;
    struct purge_nipple *nipples;
    int nipple_count;
    double density, viscosity, tension; /* of the fluid: kg/m3, m2/s, N/m */
    bool any_assumed;                   /* a volume or climb in it was assumed */
    /* by vertex of the network, NULL in a network made up: the leg at whose far end it stands (-1:
     * not of this circuit), and its chamber's volume, which is part of that leg (0 for a pot) */
    int *leg_at;
    double *chamber_at;
};

/* The net of a circuit as the car has it, without air. Unknown lengths and chambers are taken as
 * usual and mark any_assumed. Nipples in the order of vertices.
 * Checked by tests/purge/test_purge_net.c */
struct purge_net *purge_net_of(const struct system *system, const struct network *network,
                               int circuit, struct arena *arena);
/* Fills with air all that lies beyond a vertex, and the vertex (its own leg or pot). */
void purge_net_dry(struct purge_net *net, const struct network *network,
                   const struct system *system, int vertex);
/* Fills with air a vertex itself (its own chamber or pot), and nothing beyond. */
void purge_net_dry_own(struct purge_net *net, const struct network *network, int vertex);
/* Volume of legs and pots on the way to a nipple from the master's outlet, its pot included, m3. */
double purge_path_volume(const struct purge_net *net, int nipple);
/* The next pot that a nipple clears with its own pot, towards the master; -1. */
int purge_clears_too(const struct purge_net *net, int pot);
/* What no nipple lets out of the pots that this one clears, m3, and of that what is air at first.
 */
double purge_trapped_at(const struct purge_net *net, int nipple);
double purge_trapped_air_at(const struct purge_net *net, int nipple);
/* A caliper's pistons pushed home: what its pads have lost is no room for fluid any more. Before
 * any air is put in. Nothing changes where the chamber's volume was given. */
void purge_net_push_home(struct purge_net *net, const struct system *system, int part);

#endif
