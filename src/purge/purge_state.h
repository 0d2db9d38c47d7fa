#ifndef FIRMPEDAL_PURGE_PURGE_STATE_H
#define FIRMPEDAL_PURGE_PURGE_STATE_H

#include "purge/purge_breath.h"
#include "purge/purge_net.h"
#include "purge/purge_run.h"
#include "purge/slugs.h"

/* The inside of a room: where air and fluid stand during a run, and what is laid ready once for a
 * net so that a stroke costs little. For the files of the purge simulation only. */

/* The way that an open nipple makes, the master's end first. */
struct purge_path {
    int *legs, *pots; /* the pots in the order in which fluid passes them */
    int leg_count, pot_count;
    double share; /* of what goes in */
};

/* A closed branch, its air taken together. */
struct purge_branch {
    int joins; /* place on the way */
    double air, side;
};

/* What came out at the open nipples, or at the master. */
struct purge_fate {
    double air, fluid;
};

struct purge_room {
    int most_turns, most_points;
    struct slugs *legs; /* by leg */
    double *air;        /* in each of them */
    double *pot_air;    /* by pot */
    /* by leg, laid ready for a net */
    double *area, *resistance, *rise; /* m2; Pa s/m3 full of fluid; m/s upwards along the leg */
    bool *has_exit, *pot_has_exit;    /* a nipple lies beyond */
    bool rises;                       /* somewhere air rises by itself */
    struct resistance passage;        /* of a nipple */
    /* by leg, for a turn */
    double *film; /* m/(1 - m) at the turn's flow */
    int *joins;   /* for a leg off the way: the place on it where its branch hangs */
    struct purge_path path, with;
    int fork; /* legs that both ways have in common; pots as well, when one lies behind the other */
    int fork_pots;
    struct breath_node *nodes;
    /* closed branches with air, and air at rest on the way: where each hangs, for a turn */
    struct purge_branch *branches;
    int branch_count;
    int *branch_of; /* by leg off the way: its branch's index; -1 on the way */
    double *reach;  /* by leg: resistance from the way to its far end */
    struct purge_result result;
    int stride, skipped; /* of the curve: every how many strokes a point is kept */
};

/* Puts air and fluid where the net has them at first. */
void purge_fill(const struct purge_net *net, struct purge_room *room);
/* All air in the net, m3; that part of it above nipples or where no nipple is. */
double purge_air(const struct purge_net *net, const struct purge_room *room);
double purge_trapped(const struct purge_net *net, const struct purge_room *room);
/* Air in the pots that a way's nipple clears, but for what is trapped. */
double purge_air_to_clear(const struct purge_net *net, const struct purge_room *room,
                          const struct purge_path *path);
/* Air on a way that could leave through its nipple. */
double purge_air_on(const struct purge_net *net, const struct purge_room *room,
                    const struct purge_path *path);
/* Finds the ways of a turn, where they part, and where closed branches hang. */
void purge_open(const struct purge_net *net, const struct purge_turn *turn,
                struct purge_room *room);
/* Takes the air of closed branches together, as it now stands. */
void purge_close(const struct purge_net *net, struct purge_room *room);
/* Drives a volume in at the master and out at the open nipples, in that time. */
struct purge_fate purge_push(const struct purge_net *net, struct purge_room *room, double volume,
                             double time);
/* The other way: in at the nipple, out at the master. */
struct purge_fate purge_push_back(const struct purge_net *net, struct purge_room *room,
                                  double volume, double time);
/* Air rises for a while with no flow; gives what left through the master, m3. */
double purge_rest(const struct purge_net *net, struct purge_room *room, double time);
/* What a way resists from one of its legs on, with the air that now stands in it; portion: the
 * volume that is about to go through its nipple, of which fluid costs and air does not. */
struct resistance purge_resistance(const struct purge_net *net, const struct purge_room *room,
                                   const struct purge_path *path, int from, double portion);
/* Divides a flow between the two ways so that both cost the same, into their shares. Gives what
 * the open ways resist to that flow. */
struct resistance purge_divide(const struct purge_net *net, struct purge_room *room, double flow,
                               double portion);
/* Height of falling legs on a way that stand full of air, m. */
double purge_lost_head(const struct purge_net *net, const struct purge_room *room,
                       const struct purge_path *path);
/* What of a stroke stays moved when the nipple is shut while the pedal presses, m3. */
double purge_net_stroke(const struct purge_net *net, struct purge_room *room,
                        const struct purge_way *way);

#endif
