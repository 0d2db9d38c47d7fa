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
    enum valve_type type;         /* key "type" */
    int passages;                 /* "passages": 1 or 2 circuits through it; assumed 1, shuttle 2 */
    struct pressure knee;         /* "knee": proportioning, load-sensing (at the present load) */
    struct number slope;          /* "slope" above the knee, assumed 0.4 */
    struct pressure knee_unladen; /* "knee unladen", "knee laden": load-sensing, where no knee is */
    struct pressure knee_laden;
    struct share load;           /* "load": of what the car may carry, 0 to 1; assumed 0 */
    struct pressure gap;         /* "gap": how far the inlet falls before the outlet follows */
    struct pressure limit;       /* "limit": limiting */
    struct pressure opens;       /* "opens": hold-off */
    struct pressure equal_above; /* "equal above": hold-off has caught up */
    struct pressure holds;       /* "holds": residual */
    struct pressure trips;       /* "trips": shuttle, difference that lights the lamp */
};

/* The pressure from which a proportioning or load-sensing valve holds back.
 *
 *   gives   the knee as given; else, for a load-sensing one, on the straight line from knee unladen
 *           to knee laden at the load, 0 to 1; Pa. NaN when neither is known
 *
 * Source: force balance on the piston, its spring pressed in proportion to the load.
 * Checked by: tests/parts/test_valve.c
 */
struct pressure valve_knee(const struct valve *valve);
/* Pressure out of a passage of a valve while the pedal goes down.
 *
 *   valve   its type, and the type's own figures:
 *             limiting         limit, Pa >= 0: the lesser of in and limit
 *             proportioning,   valve_knee(), Pa >= 0, and slope, 0 to 1: in up to the knee, then
 *             load-sensing     knee + slope (in - knee)
 *             hold-off         opens, Pa >= 0, and equal above, Pa > opens: 0 up to opens, then
 *                              along a straight line, in from equal above on
 *             residual,        none: in. A residual valve acts when the pedal comes up
 *             shuttle
 *   in      Pa gauge, >= 0
 *   gives   Pa gauge, 0 to in, never falling with in; NaN for no type or figures outside
 *
 * Source: force balance on the stepped piston (proportioning); the others are their definition.
 * Checked by: tests/parts/test_valve.c, tests/reference/gillespie.c
 */
struct pressure valve_output(const struct valve *valve, struct pressure in);
/* Pressure out of a passage while the pedal comes up again.
 *
 *   peak    the greatest pressure that went in, Pa gauge, >= in
 *   in      as it is now, Pa gauge, >= 0
 *   gives   Pa gauge: proportioning, load-sensing, limiting: what came out at the peak, until the
 *           inlet has fallen by the gap, then as in rising but later by the gap, never more than
 *           in; hold-off: in, at most what came out at the peak; residual: in, but not below what
 *           it holds (nor below the peak, where that was less); shuttle: in. NaN outside
 *
 * Source: force balance on the piston with the friction of its seals both ways.
 * Checked by: tests/parts/test_valve.c
 */
struct pressure valve_output_falling(const struct valve *valve, struct pressure peak,
                                     struct pressure in);

#endif
