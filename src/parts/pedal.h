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
    struct length free_play;    /* "free play" at the pad, the rod's gap within it; NaN: not said */
    struct length travel;       /* "travel": from rest to the floor (or the bar), at the pad */
    struct stiffness stiffness; /* "stiffness" of pedal, bracket and bulkhead at the pad */
    struct force return_spring; /* "return spring": force at the pad that only the spring takes */
    struct length stop;         /* "stop": at the pad, from rest to a stop before the floor */
    struct force effort;      /* "effort": at which the car is checked; assumed by use, see keys */
    struct length bar_first;  /* "bar to first": balance bar, pivot to first rod */
    struct length bar_second; /* "bar to second" */
};

/* Ratio of pad travel to rod travel.
 *
 *   pedal   ratio, - , > 0; or pad arm and rod arm, m, > 0
 *   gives   the ratio given, else pad arm over rod arm; NaN when neither is known or in range
 *
 * Holds for a small swing: the rod must stand nearly square to its arm.
 * Checked by: tests/reference/bmat_2004.c
 */
struct number pedal_ratio(const struct pedal *pedal);
/* Force on the push rod.
 *
 *   pedal   its ratio, and efficiency, over 0 and up to 1
 *   foot    force at the pad (of the hand at a lever), N, >= 0; return spring at the pad, N, >= 0
 *   gives   efficiency * ratio * (foot - return spring), N, never below 0; NaN outside
 *
 * The spring is taken as even along the travel, and it pulls the pedal back throughout: one that
 * goes over its centre is not shown.
 * Source: moment balance about the pivot.
 * Checked by: tests/parts/test_pedal.c, tests/reference/bmat_2004.c,
 * tests/reference/openstax_college_physics.c
 */
struct force pedal_rod_force(const struct pedal *pedal, struct force foot);
/* Where the pedal's way ends, at the pad: at its stop or at the floor, whichever comes first; m.
 * NaN when neither is known.
 * Checked by: tests/parts/test_pedal.c
 */
struct length pedal_end(const struct pedal *pedal);
/* The share of the rod force that the first of two masters on a balance bar gets.
 *
 *   pedal   bar to first and to second, m, >= 0 and not both 0
 *   gives   second / (first + second), 0 to 1; 0.5 unless both are measured; NaN outside
 *
 * Holds while the bar stands nearly square to the rods.
 * Source: moment balance about either rod.
 * Checked by: tests/parts/test_pedal.c
 */
struct share pedal_bar_share(const struct pedal *pedal);

#endif
