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
    enum valve_type type;        /* key "type" */
    int passages;                /* "passages": 1 or 2 circuits through it; assumed 1, shuttle 2 */
    struct pressure knee;        /* "knee": proportioning, load-sensing (at the present load) */
    struct number slope;         /* "slope" above the knee, assumed 0.4 */
    struct pressure limit;       /* "limit": limiting */
    struct pressure opens;       /* "opens": hold-off */
    struct pressure equal_above; /* "equal above": hold-off has caught up */
    struct pressure holds;       /* "holds": residual */
    struct pressure trips;       /* "trips": shuttle, difference that lights the lamp */
};

/* Pressure out of a passage of a valve while the pedal goes down.
 *
 *   valve   its type, and the type's own figures:
 *             limiting         limit, Pa >= 0: the lesser of in and limit
 *             proportioning,   knee, Pa >= 0, and slope, 0 to 1: in up to the knee, then
 *             load-sensing     knee + slope (in - knee)
 *             hold-off         opens, Pa >= 0, and equal above, Pa > opens: 0 up to opens, then
 *                              along a straight line, in from equal above on
 *             residual,        none: in. A residual valve acts when the pedal comes up
 *             shuttle
 *   in      Pa gauge, >= 0
 *   gives   Pa gauge, 0 to in, never falling with in; NaN for no type or figures outside
 *
 * Leaves out the gap between rising and falling pressure that real valves have.
 * Source: force balance on the stepped piston (proportioning); the others are their definition.
 * Checked by: tests/parts/test_valve.c, tests/reference/gillespie.c
 */
struct pressure valve_output(const struct valve *valve, struct pressure in);

#endif
