#ifndef FIRMPEDAL_PARTS_CLUTCH_H
#define FIRMPEDAL_PARTS_CLUTCH_H

#include "units/quantity.h"

enum slave_type { SLAVE_NOT_SAID, SLAVE_OUTSIDE, SLAVE_CONCENTRIC };

struct slave {
    enum slave_type type;         /* key "type" = outside | concentric */
    struct length bore;           /* "bore": outside slave, or outer diameter of a concentric one */
    struct length inner_bore;     /* "inner bore": concentric: the sleeve inside */
    struct length stroke;         /* "stroke" until the piston leaves its bore */
    struct number fork_ratio;     /* "fork ratio": slave travel / bearing travel; concentric 1 */
    struct length play;           /* "bearing play" before the fingers are touched, assumed 0 */
    struct force release_force;   /* "release force" at the bearing, peak */
    struct length bearing_travel; /* "bearing travel" that frees the clutch */
    struct length bearing_most;   /* "most bearing travel" before springs are overstressed */
};

/* Area of the piston, m2: the bore, less the sleeve inside of a concentric one; NaN for no type,
 * or unless bore > inner bore > 0.
 * Checked by: tests/parts/test_clutch.c */
struct area slave_area(const struct slave *slave);

/* Ratio of slave to bearing travel: the fork ratio, NaN unless > 0; 1 for a concentric one. */
double slave_ratio(const struct slave *slave);

/* Pressure that holds the bearing down.
 *
 *   slave   type and bores; fork ratio > 0; release force N >= 0
 *   gives   release force / (ratio * area), Pa gauge; NaN outside
 *
 * Source: force balance on fork and piston.
 * Checked by: tests/parts/test_clutch.c
 */
struct pressure slave_pressure(const struct slave *slave);

/* Travel of the bearing against the fingers.
 *
 *   slave       type and bores; fork ratio > 0; play m >= 0
 *   delivered   volume that reaches the slave, m3, >= 0
 *   gives       delivered / area / ratio - play, never below 0, m; NaN outside
 *
 * Does not know where the piston leaves its bore: compare with the stroke.
 * Checked by: tests/parts/test_clutch.c
 */
struct length slave_bearing_travel(const struct slave *slave, struct volume delivered);

#endif
