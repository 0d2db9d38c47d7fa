#ifndef FIRMPEDAL_PARTS_VALVE_H
#define FIRMPEDAL_PARTS_VALVE_H

#include "units/quantity.h"

enum valve_type {
    VALVE_NOT_SAID,
    VALVE_RESIDUAL,
    VALVE_LIMITING,
    VALVE_PROPORTIONING,
    VALVE_LOAD_SENSING,
    VALVE_HOLD_OFF,
    VALVE_SHUTTLE
};

struct valve {
    enum valve_type type;          /* key "type" */
    int passages;                  /* "passages": 1 or 2 circuits through it; assumed 1, shuttle 2 */
    struct pressure knee;          /* "knee": proportioning, load-sensing (at the present load) */
    struct number slope;           /* "slope" above the knee, assumed 0.4 */
    struct pressure limit;         /* "limit": limiting */
    struct pressure opens;         /* "opens": hold-off */
    struct pressure equal_above;   /* "equal above": hold-off has caught up */
    struct pressure holds;         /* "holds": residual */
    struct pressure trips;         /* "trips": shuttle, difference that lights the lamp */
};

/* Pressure out for pressure in while the pedal goes down. Never above in, never below 0. NaN when
 * the type's own figures are not known. Monotone. */
struct pressure valve_output(const struct valve *valve, struct pressure in);

#endif
