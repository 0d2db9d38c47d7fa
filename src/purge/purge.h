#ifndef FIRMPEDAL_PURGE_PURGE_H
#define FIRMPEDAL_PURGE_PURGE_H

#include <stdbool.h>

#include "base/arena.h"
#include "network/graph.h"
#include "network/system.h"

/* Getting the air out, stroke by stroke: air and fluid as slugs that move through the legs and pots
 * of one circuit. Planner and judge both ask this simulation. docs/bleeding.md has the formulas.
 *
 * The model. A leg (pipe or hose, with the small chamber at its far end; a passage; the master's
 * own chamber) is a queue of slugs, air and fluid, each with its volume; what is pushed in at one
 * end drives the same volume out at the other. Air runs ahead of the fluid by the film it leaves on
 * the wall and, in wide legs that climb or fall, by its own rise, in strokes and pauses
 * (parts/bubble.h). A pot (a brake, a slave) keeps its air at the top: with the nipple open the air
 * leaves first, down to what lies above the nipple. On the way to a pot behind, a pot with a nipple
 * of its own lets fluid through first, so that its own air stays; one without opens at its top.
 *
 * Pedal: the stroke's volume goes in at a steady rate. Closed branches breathe: at the pressure
 * that the flow makes at their tee their air shrinks by Boyle and takes up fluid; air on the way as
 * well. Held open until the flow stops, that fluid goes on to the nipple: the whole stroke counts.
 * Shut at the end of the stroke, while the pedal still presses, it flows back up the pipe: only the
 * rest counts (purge/purge_breath.h). Pressure, vacuum, gravity: one steady push; air in a
 * falling leg takes its height off the head; where that locks the flow one waits, if the air can
 * rise. Reverse: in at the nipple, out through the master.
 *
 * Left out: froth and dissolved air, the stretch of hoses, vacuum's widening of the air (it changes
 * the time, not the volume), cups that draw air in. Air is counted as its volume at one atmosphere
 * throughout. Everything is deterministic, bounded, and keeps volume to rounding. */

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

enum bleed_method {
    METHOD_PEDAL,    /* a helper strokes the pedal */
    METHOD_PRESSURE, /* a kit presses on the reservoir */
    METHOD_VACUUM,   /* a pump draws at the nipple */
    METHOD_GRAVITY,  /* nipples open, the reservoir high */
    METHOD_REVERSE,  /* fluid pushed in at the nipple, up to the reservoir */
    METHOD_COUNT
};

/* How one bleeds. */
struct purge_way {
    enum bleed_method method;
    bool shut_under_pressure; /* pedal: the nipple is shut before the pedal stops, so what closed
                                 branches took up flows back; false: held open till flow stops */
    double stroke;            /* m3 that one pedal stroke delivers, > 0 */
    double stroke_time;       /* s, of the stroke, and of the pause after it */
    double pause_time;
    double push;      /* Pa at the master: what a kit gives, or rho g h of gravity; not for PEDAL */
    double reservoir; /* m3 in it when full; NaN: not known */
    double reserve;   /* m3 that must stay in it, so that it never runs dry */
    int clear_strokes;   /* after the last air, at each nipple */
    int most_strokes;    /* at one nipple, before one gives up */
    double tee_pressure; /* Pa; over 0: closed branches breathe at this pressure instead of that
                            which the flow makes, and the way itself does not; for tests */
};

/* One opening of one nipple, or of two at once. */
struct purge_turn {
    int nipple;
    int with; /* opened together with it; -1 */
};

/* What one turn came to. */
struct purge_done {
    double strokes;   /* of the pedal, or the same volume by another method */
    double fluid;     /* m3 that went in, so came out as fluid and air; without the clear strokes */
    double waste;     /* m3 of it that came out as fluid */
    double clear;     /* m3 of the clear strokes */
    double air_out;   /* m3 */
    double air_left;  /* m3 in the whole net after it */
    double time;      /* s */
    double reservoir; /* m3 in it after the turn; NaN */
    int top_ups;      /* how often it was topped up during the turn */
    bool gave_up;     /* most_strokes were not enough */
};

/* A point of the curve: air left against fluid drawn. */
struct purge_point {
    double strokes, fluid, air;
    int turn;
};

struct purge_result {
    struct purge_done *turns; /* one a turn */
    int turn_count;
    double fluid;                      /* m3 that went in, in all, without the clear strokes */
    double waste;                      /* m3 of it that came out as fluid */
    double strokes;                    /* in all, without the clear strokes */
    double air_left;                   /* m3 that could have left, in all */
    double trapped;                    /* m3 that cannot leave through any nipple */
    double *air_in_legs, *air_in_pots; /* m3 left, by leg and pot */
    struct purge_point *curve;         /* NULL unless asked for */
    int point_count;
    double worst_balance; /* greatest difference that the bookkeeping of volumes ever showed, m3 */
};

/* Room for runs over one net: queues, results. curve: whether points are kept (bounded, at most
 * 4096). A run allocates nothing. */
struct purge_room;
struct purge_room *purge_room(const struct purge_net *net, int most_turns, bool curve,
                              struct arena *arena);

/* Bleeds by the given turns, each until no air is left on the way to its nipple that could leave
 * through it (less than a thousandth of a mm3) and fluid has come, then clear strokes; a turn that
 * gave up has none. At most most_turns of the room are gone through. The result belongs to the room
 * and holds until the next run.
 * Checked by tests/purge/test_purge.c */
const struct purge_result *purge_run(const struct purge_net *net, const struct purge_way *way,
                                     const struct purge_turn *turns, int turn_count,
                                     struct purge_room *room);

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
