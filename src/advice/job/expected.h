#ifndef FIRMPEDAL_ADVICE_JOB_EXPECTED_H
#define FIRMPEDAL_ADVICE_JOB_EXPECTED_H

#include "physics/solution.h"

/* What a test after the work is to show, from a solution in the test's own state. */

struct expecting {
    const struct system *system;
    const struct network *network;
    struct system *moved; /* a copy, to see what a value rests on */
    struct solution *room;
};
struct expected {
    double value; /* SI; NaN when not known */
    bool assumed; /* some assumed value of the car moves it */
    bool at_end;  /* the pedal meets its end before the effort is reached */
};

struct expecting expecting_start(const struct system *system, const struct network *network,
                                 struct arena *arena);
/* The most that any joint of a brake pedal's circuits sees, Pa.
 *
 *   force   on the pad, N, > 0 */
struct expected expected_lines(const struct expecting *expecting, int pedal, double force,
                               bool assisted);
/* What is left of a brake pedal's travel at its own effort, as part of it. */
struct expected expected_left(const struct expecting *expecting, int pedal);
/* How many strokes a servo still helps with the engine stopped. */
struct expected expected_strokes(const struct expecting *expecting, int servo);
/* Travel of a clutch slave, and of its bearing, with the pedal at its end, m. */
struct expected expected_slave(const struct expecting *expecting, int slave);
struct expected expected_bearing(const struct expecting *expecting, int slave);

/* Whether a circuit is one of the brakes and hangs on that pedal. */
bool is_brake_circuit_of(const struct system *system, const struct network *network, int circuit,
                         int pedal);

#endif
