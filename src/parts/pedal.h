#ifndef FIRMPEDAL_PARTS_PEDAL_H
#define FIRMPEDAL_PARTS_PEDAL_H

#include <stdbool.h>

#include "parts/names.h"
#include "units/quantity.h"

enum pedal_type { PEDAL_NOT_SAID, PEDAL_FOOT, PEDAL_HAND };

struct pedal {
    enum pedal_type type;       /* from the header: pedal or (hand) lever */
    struct part_names works;    /* key "works": master or servo; two with a balance bar */
    struct number ratio;        /* "ratio"; or the two arms */
    struct length pad_arm;      /* "pad to pivot" */
    struct length rod_arm;      /* "rod to pivot" */
    struct number efficiency;   /* "efficiency", assumed 0.95 */
    struct length free_play;    /* "free play" at the pad, assumed 3 mm foot, 1 mm hand: see keys */
    struct length travel;       /* "travel": from rest to the floor (or the bar), at the pad */
    struct stiffness stiffness; /* "stiffness" of pedal, bracket and bulkhead at the pad */
    struct force effort;        /* "effort": at which the car is checked; assumed by use, see keys */
    struct length bar_first;    /* "bar to first": balance bar, pivot to first rod */
    struct length bar_second;   /* "bar to second" */
};

/* Ratio of pad travel to rod travel: given, else pad arm over rod arm; NaN when neither. */
struct number pedal_ratio(const struct pedal *pedal);
/* Force on the push rod from a foot (or hand) force: efficiency * ratio * foot. N, >= 0.
 * Source: moment balance about the pivot. */
struct force pedal_rod_force(const struct pedal *pedal, struct force foot);
/* The share of the rod force that goes to the first of two masters on a balance bar:
 * second / (first + second); 0.5 when the bar is not measured. */
struct share pedal_bar_share(const struct pedal *pedal);

#endif
