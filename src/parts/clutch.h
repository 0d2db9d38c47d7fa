#ifndef FIRMPEDAL_PARTS_CLUTCH_H
#define FIRMPEDAL_PARTS_CLUTCH_H

#include "units/quantity.h"

enum slave_type { SLAVE_NOT_SAID, SLAVE_OUTSIDE, SLAVE_CONCENTRIC };

struct slave {
    enum slave_type type;          /* key "type" = outside | concentric */
    struct length bore;            /* "bore": outside slave, or outer diameter of a concentric one */
    struct length inner_bore;      /* "inner bore": concentric: the sleeve inside */
    struct length stroke;          /* "stroke" until the piston leaves its bore */
    struct number fork_ratio;      /* "fork ratio": slave travel / bearing travel; concentric 1 */
    struct length play;            /* "bearing play" before the fingers are touched, assumed 0 */
    struct force release_force;    /* "release force" at the bearing, peak */
    struct length bearing_travel;  /* "bearing travel" that frees the clutch */
    struct length bearing_most;    /* "most bearing travel" before springs are overstressed */
};

struct area slave_area(const struct slave *slave);
/* Ratio of slave to bearing travel: fork ratio, 1 for a concentric one. */
double slave_ratio(const struct slave *slave);
/* Pressure that holds the bearing down: release force / (fork ratio * area). */
struct pressure slave_pressure(const struct slave *slave);
/* Bearing travel from the volume that reaches the slave. */
struct length slave_bearing_travel(const struct slave *slave, struct volume delivered);

#endif
