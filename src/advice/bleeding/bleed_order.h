#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_ORDER_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_ORDER_H

#include "advice/bleeding/bleed_scope.h"

/* A place in the bleeding order. */
struct ordered_nipple {
    const struct scoped_nipple *nipple;
    const char *reason; /* id of the reason row */
    bool run_assumed;   /* its place rests on runs that are not all given */
};

/* Puts the nipples of a set in order by the customs of the trade (see bleed_plan.h). into has room
 * for all of them. */
void bleed_order(const struct system *system, const struct network *network,
                 const struct bleed_set *set, struct arena *arena, struct ordered_nipple *into);

/* By circuit: the number of its group. Circuits that meet in a caliper with two inlets are bled
 * together. into has room for all circuits. */
void bleed_groups(const struct system *system, const struct network *network, int *into);
/* Whether a nipple's own name, of several, says that it is the outer (inner) one of a caliper. */
bool nipple_is_outer(const struct part *part, int index);
bool nipple_is_inner(const struct part *part, int index);

/* An order that somebody gives, and the ids of the reasons why a nipple stands in it, stands there
 * once more, or comes after it. */
struct given_order {
    const struct nipple *items;
    int count;
    const char *reason, *again, *left_out;
};

/* The same by a given order, in which a nipple may come up more than once; those that it leaves out
 * come after, in the trade's order, with a reason that says so. Clutch nipples come last unless the
 * order names them. into has room for the set and the order together. Gives how many. */
int bleed_order_given(const struct system *system, const struct network *network,
                      const struct bleed_set *set, const struct given_order *order,
                      struct arena *arena, struct ordered_nipple *into);

#endif
