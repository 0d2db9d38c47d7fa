#ifndef FIRMPEDAL_TESTS_PROOF_JUDGE_H
#define FIRMPEDAL_TESTS_PROOF_JUDGE_H

#include <stdbool.h>

#include "purge/purge.h"

/* What every order of the nipples of a net comes to, by the simulation. */

enum { JUDGE_MOST = 6, JUDGE_MOST_ORDERS = 720, JUDGE_MOST_TURNS = 2 * JUDGE_MOST };

struct trial {
    int order[JUDGE_MOST_TURNS]; /* nipples as they are opened */
    int count;
    double air;     /* m3 left that could have left */
    double fluid;   /* m3 drawn off, clear strokes not counted */
    double strokes; /* the same */
    double balance; /* m3: how far the bookkeeping of volumes was out at worst */
    bool gave_up;   /* at some nipple the air would not come */
};

struct verdict {
    int nipples, orders;
    struct trial best, worst;
    /* The mean over all orders: what a planner that throws dice comes to in the long run. */
    double mean_fluid, mean_strokes, mean_air;
    /* How far the dearest order lies above the cheapest, as a share of it. Only orders count that
     * get out as much air as the best: what stops early is no bargain. */
    double fluid_spread, stroke_spread;
    double fewest_strokes; /* of the same orders */
    int left_air;          /* orders that leave more air than the best */
    double worst_balance;  /* m3: how far the volumes of any run were out */
};

/* One run of turns, and an order in which each nipple is opened once. */
struct trial judge_turns(const struct purge_net *net, const struct purge_way *way,
                         const struct purge_turn *turns, int count, struct purge_room *room);
struct trial judge_order(const struct purge_net *net, const struct purge_way *way, const int *order,
                         struct purge_room *room);

/* All orders; trials has room for JUDGE_MOST_ORDERS. The best leaves the least air (what differs by
 * less than judge_air counts as equal), of those draws the least fluid, of those takes the fewest
 * strokes; the worst is the opposite. Nets of more than six nipples are refused: 0 orders. */
struct verdict judge_all(const struct purge_net *net, const struct purge_way *way,
                         struct purge_room *room, struct trial *trials);

/* Air that nobody would see: 0.05 mL, m3. */
double judge_air(void);
/* Negative when a is the better, positive when b is. */
int judge_compare(const struct trial *a, const struct trial *b);
/* By how much of the other's fluid a trial draws more; 0 for none of both. */
double judge_more_fluid(const struct trial *trial, const struct trial *than);

/* Whether it gets as much air out as the other. */
bool judge_as_clear(const struct trial *trial, const struct trial *as);

/* From the nipple with the shortest way from the master to the one with the longest. */
void judge_nearest_first(const struct purge_net *net, int *order);
/* The other way round. */
void judge_farthest_first(const struct purge_net *net, int *order);

#endif
