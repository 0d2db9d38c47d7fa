#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_ARRANGE_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_ARRANGE_H

#include "advice/bleeding/bleed_nets.h"
#include "advice/bleeding/bleed_order.h"

/* The trade's order, checked by the simulation wheel group by wheel group, and changed where it
 * costs too much. */
struct arranged {
    struct ordered_nipple *items; /* nipples may come up again */
    int count;
    struct nipple *trade; /* the trade's order, with what comes again */
    int trade_count;
    struct nipple *worst; /* the worst order of each group in turn; empty when none was tried */
    int worst_count;
    int tried;             /* orders */
    const char *departure; /* id of the reason why some group left the trade's order; NULL */
};

/* trade: count nipples in the trade's order (bleed_order), or the maker's when own: then nothing is
 * changed and nothing tried. */
struct arranged bleed_arrange(const struct bleed_nets *nets, const struct ordered_nipple *trade,
                              int count, bool own, struct arena *arena);

#endif
