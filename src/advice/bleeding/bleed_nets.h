#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_NETS_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_NETS_H

#include "advice/bleeding/bleed_scope.h"
#include "advice/bleeding/bleed_search.h"

/* The circuits in scope as the simulation sees them, with the air that the work let in. */

struct bleed_net {
    struct purge_net *net;          /* NULL: nothing of this circuit is in scope */
    struct purge_way way;           /* as wished */
    struct purge_way other;         /* by the other practice */
    struct purge_room *room, *kept; /* for trying; with the curve of the last run */
    struct purge_turn *turns;       /* room for a run */
    bool dry;                       /* no fluid was left in it */
};
struct bleed_nets {
    const struct system *system;
    const struct network *network;
    struct arena *arena;
    struct bleed_net *items; /* by circuit */
    int count;
    int most_turns;
};

/* most_turns: of one run over one net. */
struct bleed_nets bleed_nets_of(const struct system *system, const struct network *network,
                                const struct bleed_set *set, const struct bleed_wishes *wishes,
                                int most_turns, struct arena *arena);

/* Air that the work let into a circuit, m3; 0 for one that is not in scope. */
double bleed_net_air(const struct bleed_net *net);
/* The other circuit of the same tandem; -1. */
int bleed_nets_fellow(const struct bleed_nets *nets, int circuit);
/* What a stroke gives each circuit, by circuit. */
const struct circuit_stroke *bleed_nets_strokes(const struct bleed_nets *nets);

/* The nipple's index in the net of its circuit; -1. */
int bleed_net_nipple(const struct bleed_net *net, struct nipple nipple);

/* Runs one circuit's share of a sequence of nipples, with the curve; holds until the next. */
const struct purge_result *bleed_nets_run(const struct bleed_nets *nets, int circuit,
                                          const struct nipple *order, int count);
/* What a sequence comes to over the circuits for which take is true (NULL: all). */
struct order_trial bleed_nets_try(const struct bleed_nets *nets, const bool *take,
                                  const struct nipple *order, int count, bool other);
/* The same for all circuits by both practices, with the order. */
struct order_cost bleed_nets_cost(const struct bleed_nets *nets, const struct nipple *order,
                                  int count);

#endif
