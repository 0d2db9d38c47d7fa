#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_SEARCH_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_SEARCH_H

#include <stdbool.h>

#include "base/arena.h"
#include "purge/purge.h"

/* An order of nipples by rule, and then checked by the simulation against all orders. It knows nets
 * and no cars, so that the planner and whoever judges it ask the same. */

enum { SEARCH_MOST = 6 }; /* so many stops are tried in all orders: 720 of them */

/* What an order comes to. */
struct order_trial {
    double fluid; /* m3 drawn off until no more air comes, clear strokes not counted */
    double strokes;
    double air_left; /* m3 that could have left */
    bool gave_up;    /* at some nipple */
};

/* A better trial leaves less air, or as little with less fluid. */
/* Air left counts as equal within ORDER_AIR_EQUAL: nobody would see it. */
#define ORDER_AIR_EQUAL 0.05e-6 /* m3 */
bool order_better(const struct order_trial *a, const struct order_trial *b);
/* Whether a trial may stand beside the best: no more air than it leaves (but for rounding), and at
 * most 5 % more fluid, or so much more as slack says, m3. */
bool order_stands(const struct order_trial *trial, const struct order_trial *best, double slack);

/* An order of things 0, 1, ...: each at least once, some perhaps again. */
struct thing_order {
    const int *items;
    int count;
};

/* A search over orders of so many things by a judge who tries one order. */
struct order_search {
    int things;
    struct order_trial (*judge)(const struct thing_order *order, void *with);
    void *with;
    const struct thing_order *proposals; /* the most wanted first; at least one */
    int proposal_count;
    double slack; /* m3 of fluid that count for nothing: a stroke, where strokes are whole */
};
struct order_found {
    struct thing_order order; /* the first proposal that stands beside the best and takes at most
                                 5 % more strokes than need be; else, of those that stand, the one
                                 with the fewest strokes */
    int proposal;             /* which it is; -1: none of them */
    struct order_trial chosen, best, worst; /* of all that were tried: least fluid; most air left or
                                               strokes */
    struct thing_order worst_order;
    struct order_trial *proposals; /* what each of them came to */
    int tried; /* orders beside the proposals: none when there are over SEARCH_MOST things */
};
/* Tries all orders of up to SEARCH_MOST things, and the proposals. Of equal orders the first in
 * lexical order counts as the best, so the answer is the same every time.
 * Strokes differ from fluid only where a nipple is shut under pressure and fluid flows back.
 * Checked by: tests/advice/bleeding/test_bleed_search.c */
struct order_found order_find(const struct order_search *search, struct arena *arena);

/* Runs the turns over a net and adds up. */
struct order_trial bleed_try(const struct purge_net *net, const struct purge_way *way,
                             const struct purge_turn *turns, int count, struct purge_room *room);

/* The air that stands on the way from the master to a nipple, its pot included, m3. */
double bleed_air_on_way(const struct purge_net *net, int nipple);
/* Length of the way, m. */
double bleed_run_to(const struct purge_net *net, int nipple);

/* The order by rule alone: nipples at the ends of legs (master, high points) first, nearest to the
 * master before others; then the way with most air first, ties by the longer run, then as they
 * come. The far half of a caliper comes before the half that its fluid passes, and again after it.
 *
 *   shut    by nipple: those that stay shut; NULL: none
 *   into    has room for twice the nipples
 *   gives   how many turns
 *
 * Source: most air first from how closed branches breathe (purge/purge.h); common practice, no
 * source, for the rest.
 * Checked by: tests/advice/bleeding/test_bleed_search.c */
int bleed_rule_order(const struct purge_net *net, const bool *shut, struct purge_turn *into);

/* The order by rule, kept if the simulation finds that it stands beside the best of all orders,
 * else of
 * those that do the one with the fewest strokes. */
struct bleed_choice {
    struct purge_turn *turns;
    int count;
    bool by_rule;
    const char *reason; /* id of the reason row why the rule was left; NULL when it stands */
    struct order_trial rule, chosen, best, worst;
    int tried;
};
struct bleed_choice bleed_best_order(const struct purge_net *net, const struct purge_way *way,
                                     const bool *shut, struct arena *arena);

/* Why an order departs from a rule's: "shared-air-shortest-way" where the air stands in what the
 * ways share and the first of the order has the shorter way, "tried-cheaper" otherwise.
 * first, rule: the nipple that the order, and the rule, begins with. */
const char *bleed_departure(const struct purge_net *net, int first, int rule);

#endif
