#ifndef FIRMPEDAL_PHYSICS_GRIP_USE_H
#define FIRMPEDAL_PHYSICS_GRIP_USE_H

#include "physics/solution.h"

/* Grip that each axle asks of the road in a stop, and how well the two share what there is. */
struct grip_use {
    double z;           /* braking rate: deceleration over gravity */
    double front, rear; /* of the wheel of the axle that asks for most: force at the road over its
                           load; a wheel that its turning parts drive on asks for less than 0 */
    double efficiency;  /* z over the greater of them: the part of a road's grip that stops the car
                           by the time the first wheel locks */
};

/* What the brakes press at each wheel: torque over the radius of the tyre, N, >= 0. */
enum { GRIP_FRONT, GRIP_REAR, GRIP_AXLES };
struct wheel_forces {
    struct force at[GRIP_AXLES][2]; /* of an axle: left and right */
};

/* Those of a solution: a brake without a side counts half for either wheel; the one wheel of a
 * motorcycle's axle counts as two halves alike. */
struct wheel_forces wheel_forces_of(const struct system *system, const struct solution *solution);

/* One stop on a road with grip enough.
 *
 *   vehicle   mass, weight on front, wheelbase, height of the mass centre; rolling resistance f
 *             and share k of the turning parts, >= 0
 *   wheels    what the brakes press
 *   gives     z = (sum of the brakes / W + f)/(1 + k)
 *             of a wheel: (brake + f N - k z W/4)/N, N half of the load of its axle,
 *             W (1 - psi + chi z) or W (psi - chi z)
 *             infinite for a braked axle that hangs in the air; NaN outside. No efficiency without
 *             any braking
 *
 * The brake slows the wheel itself too: that part of it the road need not hold. All four wheels
 * turn with equal parts, the engine apart. What rolling takes comes from the road, so it is within
 * the grip (J. Y. Wong, Theory of Ground Vehicles, counts it outside: the brake's part alone up to
 * the grip; from memory). Level road, straight on, no pitching.
 * Source: moment balance about the tyre contacts and about each wheel; T. D. Gillespie,
 * Fundamentals of Vehicle Dynamics, chapter 3 (from memory); UN Regulation No. 13-H, annex 5, 3.1
 * (from memory). Checked by: tests/reference/gillespie.c, tests/physics/test_grip_use.c */
struct grip_use grip_use_of_wheels(const struct vehicle *vehicle,
                                   const struct wheel_forces *wheels);
/* The same with both wheels of an axle alike; front, rear: of the whole axle. */
struct grip_use grip_use(const struct vehicle *vehicle, struct force front, struct force rear);

/* The same for as many stops; arrays of that count. */
void grip_use_curve(const struct vehicle *vehicle, const struct force *front,
                    const struct force *rear, size_t count, struct grip_use *into);

/* What the road takes of a stop: each wheel no more than grip times its load, where it slides.
 *
 *   grip    > 0, sliding as good as rolling
 *   gives   a with m a = sum over the wheels of the lesser of brake + f N - k m a/4 and grip * N;
 *           at most the rate at which the rear wheels leave the road; NaN outside
 *
 * Source: as above. Checked by: tests/physics/test_grip_use.c */
struct acceleration grip_takes(const struct vehicle *vehicle, const struct wheel_forces *wheels,
                               struct number grip);

/* The car as its pedal brings it to a braking rate.
 *
 *   state   what is assisted or lost; its effort does not matter
 *   z       braking rate, > 0
 *   gives   the use of grip there; NaN where no effort up to 2000 N gets it there
 */
struct grip_use grip_use_at(const struct system *system, const struct network *network,
                            const struct state *state, double z, struct solution *room);

#endif
