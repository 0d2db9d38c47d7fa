#ifndef FIRMPEDAL_TESTS_CROSS_RANDOM_CAR_H
#define FIRMPEDAL_TESTS_CROSS_RANDOM_CAR_H

#include <stdbool.h>
#include <stdio.h>

#include "cross/random_numbers.h"

/* Cars made up at random, each as a description for the program and as rows of numbers for another
 * solver. Discs and drums, single and tandem masters, two masters on a balance bar, servos, valves
 * in a row, hoses in every state, air. The number of a car decides all of it.
 *
 * A row of numbers begins with the number of the car and a word for the kind of row, as a number
 * (enum row_kind); what follows stands beside each kind. SI units; NaN is not said; trailing
 * numbers that a kind does not use are 0. A domain is what lies between two pistons or valves and
 * has one pressure. */
enum row_kind {
    ROW_PEDAL = 1,   /* ratio, efficiency, free play (NaN: not said), stiffness, effort, return
                        spring, travel,   bar to first, bar to second (NaN without a bar) */
    ROW_SERVO = 2,   /* type (0 none, 1 direct, 2 remote), diameter, ratio, cut in, jump, vacuum,
                        efficiency, return spring, bore, line cut in */
    ROW_SERVO2 = 3,  /* rod gap (NaN: not said), assisted (0, 1), lost circuit (0: none), lost
                        motion, lost motion without vacuum; remote: passes at rest (0, 1), rod
                        diameter, valve volume */
    ROW_MASTER = 4,  /* tandem (0, 1), bore, stroke, cut off, rod gap, efficiency, primary spring,
                        secondary spring, seal friction */
    ROW_CASE = 5,    /* hoses (0 as described, 1 all good, 2 all worn), adjusters not set (0, 1),
                        pads knocked back (0, 1) */
    ROW_FLUID = 6,   /* grade as in docs/physics.md's table of fluids (3, 4, 5.1, 5, 0 mineral),
                        temperature in degC, air */
    ROW_CIRCUIT = 7, /* master (1, 2), chamber (0 single, 1 primary, 2 secondary) */
    ROW_DOMAIN = 8,  /* circuit, the domain before it (0: the master), how it is got (0 the
                        same, 1 limiting, 2 proportioning or load-sensing, 3 hold-off, 4 remote
                        servo), two figures of a valve */
    ROW_PIPE = 9,    /* domain, length, size, wall, material (1 steel, 2 copper-nickel) */
    ROW_HOSE =
        10, /* domain, length, inside, state (1 good, 2 worn, 3 new), expansion (NaN: not said) */
    ROW_CHAMBER = 11, /* domain, volume */
    ROW_DISC = 12,    /* domain, caliper (1 fixed, 2 sliding), pistons, bore, pistons, bore of the
                         second    size, threshold, roll back, pad squash, body opening, run out,
                         bearing play, piston travel (NaN: not said) */
    ROW_DRUM = 13,    /* domain, bore, threshold, clearance, give, piston travel (NaN: not said) */
    ROW_WHEEL =
        14, /* domain of the front left, front right, rear left, rear right brake (0: none) */
    ROW_ANSWER = 15 /* what the program says: pedal travel, effort, rod travel, pressures at the
                       four wheels (0: no brake), whether it ended at floor or bore */
};

enum { ROW_NUMBERS = 13 };

/* How a car is to be solved. */
struct random_state {
    bool assisted;     /* its servo has vacuum */
    int lost;          /* the circuit without pressure, counted from 1; 0: none */
    int hoses;         /* 0 as described, 1 all good, 2 all worn */
    bool slack;        /* adjusters of the shoes are not set */
    bool knocked_back; /* the first stroke after pads were knocked back */
};

/* Writes car number `car` as a description and as rows. */
void random_car(int car, FILE *description, FILE *numbers, struct random_state *state);

/* Writes one row. */
void write_numbers(FILE *numbers, int car, enum row_kind kind, const double *values, int count);

#endif
