#ifndef FIRMPEDAL_PHYSICS_GRIP_USE_H
#define FIRMPEDAL_PHYSICS_GRIP_USE_H

#include "physics/solution.h"

/* Grip that each axle asks of the road in a stop, and how well the two share what there is. */
struct grip_use {
    double z;           /* braking rate: deceleration over gravity */
    double front, rear; /* brake force of the axle over its load */
    double efficiency;  /* z over the greater of them: the part of a road's grip that stops the car
                           by the time the first axle locks */
};

/* One stop.
 *
 *   vehicle       mass, weight on front, wheelbase, height of the mass centre; rolling resistance
 *                 >= 0
 *   front, rear   brake force of each axle, N, >= 0
 *   gives         z = (front + rear)/W + rolling resistance
 *                 f_front = front/(W (1 - psi + chi z)), f_rear = rear/(W (psi - chi z))
 *                 infinite for an axle that hangs in the air; NaN outside. No
 *                 efficiency without any braking
 *
 * Level road, straight on, no pitching.
 * Source: moment balance about the tyre contacts; T. D. Gillespie, Fundamentals of Vehicle
 * Dynamics, chapter 3 (from memory); UN Regulation No. 13-H, annex 5, 3.1 (from memory). Checked
 * by: tests/reference/gillespie.c, tests/physics/test_grip_use.c */
struct grip_use grip_use(const struct vehicle *vehicle, struct force front, struct force rear);

/* The same for as many stops; arrays of that count. */
void grip_use_curve(const struct vehicle *vehicle, const struct force *front,
                    const struct force *rear, size_t count, struct grip_use *into);

/* The car as its pedal brings it to a braking rate.
 *
 *   state   what is assisted or lost; its effort does not matter
 *   z       braking rate, > 0
 *   gives   the use of grip there; NaN where no effort up to 2000 N gets it there
 */
struct grip_use grip_use_at(const struct system *system, const struct network *network,
                            const struct state *state, double z, struct solution *room);

#endif
