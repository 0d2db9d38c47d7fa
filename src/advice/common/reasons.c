#include "advice/common/steps.h"

#include <string.h>

#define CUSTOM  "common practice, no source"
#define ARTICLE "trade article"
#define MAKER   "makers' workshop texts"

#define BREATHING                                                                                  \
    "Boyle's law: air in a shut branch takes up fluid under pressure and gives it back after"
#define TRIED "our simulation of the purge; docs/bleeding.md"

static const struct reason_row rows[] = {
    {"makers-order", "the maker's own order, as the description gives it", MAKER},
    {"makers-order-again", "the maker's own order has this nipple once more", MAKER},
    {"left-out-of-makers-order",
     "the maker's order in the description leaves this nipple out, but it needs bleeding", CUSTOM},
    {"asked-order", "you asked for this order", CUSTOM},
    {"asked-order-again", "the order you asked for has this nipple once more", CUSTOM},
    {"left-out-of-asked-order",
     "the order you asked for leaves this nipple out, but it needs bleeding", CUSTOM},
    {"master-first",
     "a master that is new or ran dry is full of air: its outlets first, or the air goes the "
     "whole way",
     CUSTOM},
    {"upstream-first", "it lies before the wheels: its air would go on to them", CUSTOM},
    {"only-this-wheel", "only this wheel was opened and the reservoir did not run dry", CUSTOM},
    {"longest-run-first",
     "the longest pipe run: it holds the most air, and what it draws clears the shared pipe",
     ARTICLE},
    {"longest-run-by-custom",
     "the longest pipe run, as the trade has it: more air stands on the way to another nipple, but "
     "by the simulation no other order takes a twentieth less fluid",
     ARTICLE},
    {"longest-run-anyway",
     "the longest pipe run, as the trade has it; by the simulation another order takes one stroke "
     "less, which is no more than the rounding to whole strokes",
     ARTICLE},
    {"most-air-first",
     "more air stands on its way than on any other's, and what it draws clears the shared pipe",
     BREATHING},
    {"next-most-air", "the most air of what is left", BREATHING},
    {"shared-air-shortest-way",
     "the air stands in the pipe that the ways share: it leaves by the shortest way out", TRIED},
    {"tried-cheaper",
     "all orders were tried by the simulation: beginning here takes less fluid or fewer strokes "
     "than the trade's order",
     TRIED},
    {"as-tried", "as in the order that took the least fluid by the simulation", TRIED},
    {"outer-again",
     "what the inner half gave up may have gone over to the outer: outer, inner, outer again",
     CUSTOM},
    {"next-longest-run", "the next longest pipe run", ARTICLE},
    {"shortest-run-last", "the shortest pipe run comes last", ARTICLE},
    {"away-from-master",
     "as long a run as the other side's, or lengths not given: the side away from the driver, "
     "and so from the master, first",
     ARTICLE},
    {"near-the-master", "the other side of the axle", ARTICLE},
    {"rear-before-front",
     "lengths of the runs are not all given: rear wheels are usually farther from the master",
     CUSTOM},
    {"rear-of-pair-first", "diagonal split: the rear wheel of a pair first", CUSTOM},
    {"front-of-pair", "diagonal split: then the front wheel of the same pair", CUSTOM},
    {"lower-nipple-first", "several nipples here: the lower, or outer, one first", CUSTOM},
    {"upper-nipple-after", "several nipples here: the upper, or inner, one after the other",
     CUSTOM},
    {"both-circuits-in-step",
     "two circuits work this caliper: both are bled here in step, so that its pistons do not "
     "cock",
     CUSTOM},
    {"clutch-last",
     "the clutch comes last: it shares the brakes' reservoir, and its port, high up in it, starves "
     "first",
     CUSTOM},
    {"clutch-apart", "the clutch has a reservoir of its own: its place is free, so it comes last",
     CUSTOM},
    {"clutch-only", "only the clutch was opened", CUSTOM},
};

const struct reason_row *reason_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

const struct reason_row *reason_row(const char *id)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (strcmp(rows[i].id, id) == 0) {
            return &rows[i];
        }
    }
    return NULL;
}
