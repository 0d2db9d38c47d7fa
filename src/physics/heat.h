#ifndef FIRMPEDAL_PHYSICS_HEAT_H
#define FIRMPEDAL_PHYSICS_HEAT_H

#include "physics/solution.h"

/* How warm the brakes get. */

#define HEAT_AIR       20.0  /* degC of the air and of brakes that are cold */
#define HEAT_IRON_MOST 600.0 /* degC up to which the law of its specific heat serves */
enum { HEAT_STOPS = 10 };

/* Energy that slowing takes from a car.
 *
 *   mass       kg, > 0
 *   from, to   speeds, m/s, >= 0
 *   rotating   what turning parts add, as a share of the straight energy, >= 0
 *   gives      (m/2)(v1^2 - v2^2)(1 + rotating), J; NaN outside
 *
 * Checked by: tests/reference/jindal_23_5.c
 */
struct energy heat_of_stop(struct mass mass, struct speed from, struct speed to,
                           struct share rotating);

/* Mean rise of a mass that takes up heat: E/(m c), K. mass kg and specific heat c J/(kg K) > 0,
 * else NaN. Checked by: tests/reference/jindal_23_5.c, tests/reference/bhandari_12_14.c */
struct warming heat_rise(struct energy heat, struct mass mass, double specific_heat);

/* The same for grey iron, whose specific heat grows as it warms: 420 J/(kg K) at 20 degC, 550 at
 * 300 degC, on that straight line.
 *
 *   at      where it starts, degC
 *   gives   the root of heat/mass = integral of c, K
 *
 * Source: the two values, from memory. Up to about 600 degC: tested by what shows it.
 * Checked by: tests/physics/test_heat.c
 */
struct warming heat_rise_iron(struct energy heat, struct mass mass, struct temperature at);

/* Greatest rise of the rubbed surface over its start, in one stop with evenly falling speed: of a
 * slab whose far side lets no heat through, under the flow q (1 - t/stop), q = 2 E/(A stop).
 *
 *   heat    into the iron, J, >= 0
 *   swept   area that takes it, m2, > 0
 *   depth   of iron behind it, m, > 0: half of a solid disc, which is rubbed from both sides
 *   stop    how long it takes, s, > 0
 *   gives   K; NaN outside
 *
 * It is all of the rise: nothing comes on top. Thin iron warms through: its mean rise E/(A rho c
 * depth), reached at the end; thick iron as a half space, 4/(3 sqrt(2 pi)) q sqrt(stop)/sqrt(k rho
 * c), half way (books round to sqrt(5/18)). The greater of the two is up to 10 % short in between,
 * about 8 mm for a stop of 4 s.
 * Grey iron k 50 W/(m K), rho 7200 kg/m3, c 460 J/(kg K), from memory: on the hot side, since 52
 * to 66 W/(m K) follow from the diffusivity of brake discs, 0.156 to 0.200 cm2/s, R. L. Hecht, R.
 * B. Dinwiddie and H. Wang, J. Materials Science 34 (1999) 4775, abstract. Source: H. S. Carslaw
 * and J. C. Jaeger, Conduction of Heat in Solids, slab and half space under a flow, from memory,
 * summed over the falling flow. Checked by: tests/physics/test_heat.c
 */
struct warming heat_surface_rise(struct energy heat, struct area swept, struct length depth,
                                 struct duration stop);

/* Of one brake in the stop that the vehicle's data ask for, spread over the brakes as their forces
 * are in the solution. */
struct heat_state {
    struct energy heat;           /* into this brake, pads and linings included */
    struct warming rise;          /* mean, of a cold disc or drum in one stop */
    struct warming surface;       /* of what is rubbed, at its most in that stop */
    struct temperature after_ten; /* of the disc or drum, after ten stops so far apart */
    struct temperature fluid;     /* at its pistons, then */
};

/*   brake   part index of a disc or drum
 *   gives   all of it; NaN where something is not known
 *
 * 95 % of the heat goes into the iron (0.90 to 0.99, from memory). Between stops the iron cools
 * towards the air by exp(-time/cooling time). The time of a stop is speed over deceleration, which
 * is at most grip times g. Fluid follows the iron by a share.
 * Source: conservation of energy; T. P. Newcomb and R. T. Spurr, Braking of Road Vehicles, from
 * memory.
 * Checked by: tests/physics/test_heat.c
 */
struct heat_state heat_of_brake(const struct system *system, const struct solution *solution,
                                int brake);

#endif
