#ifndef FIRMPEDAL_PARTS_BUBBLE_H
#define FIRMPEDAL_PARTS_BUBBLE_H

/* Air in pipes and chambers: what holds it, what lets it rise, how it is carried along. Lengths m,
 * speeds m/s, density kg/m3, viscosity m2/s (kinematic), tension N/m (surface tension), air against
 * fluid. All give NaN outside the ranges. */

struct bubble_fluid {
    double density, viscosity, tension; /* > 0; viscosity 0 or more where it says so */
};

/* Bond number rho g R^2/sigma of a pipe, and Eotvos number rho g D^2/sigma, four times that.
 * Checked by: tests/parts/test_bubble.c */
double bubble_bond(const struct bubble_fluid *fluid, double bore);
double bubble_eotvos(const struct bubble_fluid *fluid, double bore);

/* The greatest bore in which a long bubble stands still in an upright pipe: Bond number 0.842.
 * Source: F. P. Bretherton, J. Fluid Mech. 10 (1961) 166-188.
 * Checked by: tests/reference/bretherton_1961.c */
double bubble_critical_bore(const struct bubble_fluid *fluid);

/* Capillary number mu U/sigma of a bubble that rises just above the threshold: the root of
 *   Bo - 0.842 = 1.25 Ca^(2/9) + 2.24 Ca^(1/3)
 *
 *   bond    0.842 to 1.04
 *   gives   -; 0 at and below the threshold
 *
 * Source: Bretherton 1961.
 * Checked by: tests/reference/bretherton_1961.c */
double bubble_capillary_near_threshold(double bond);

/* Froude number U/sqrt(g D) of a long bubble in an upright pipe.
 *
 *   eotvos    rho g D^2/sigma, > 0; fitted to more than 6
 *   buoyancy  Reynolds number of buoyancy rho sqrt(g D^3)/mu, > 0
 *
 * Source: F. Viana, R. Pardo, R. Yanez, J. L. Trallero, D. D. Joseph, J. Fluid Mech. 494 (2003)
 * 379-398; the constants of the blend from memory.
 * Checked by: tests/reference/viana_2003.c */
double bubble_froude(double eotvos, double buoyancy);

/* Speed at which a long bubble rises in an upright pipe that is shut above it.
 *
 *   bore    > 0
 *   gives   Bond number up to 0.842: 0; to 1.04: Bretherton's; from Eotvos number 6: Viana's.
 *           Between them neither holds: the straight line of log speed over Bond number that joins
 *           them (our own)
 *
 * Clean wetted wall, even bore. Checked by: tests/parts/test_bubble.c and the two above */
double bubble_rise(const struct bubble_fluid *fluid, double bore);

/* The same with viscosity and tension left out: 0.46 sqrt(g R), which no bubble outruns by more
 * than 8 %.
 * Source: R. M. Davies and G. I. Taylor, Proc. R. Soc. A 200 (1950) 375-390.
 * Checked by: tests/reference/davies_taylor_1950.c */
double bubble_rise_limit(double bore);

/* Speed at which a small round bubble rises: rho g d^2/(18 mu), its skin stiff; half as much again
 * when the skin moves freely. The weight of the air is left out.
 *
 *   diameter   >= 0; holds while its Reynolds number is below 1
 *
 * Source: G. G. Stokes 1851; J. Hadamard and W. Rybczynski 1911 (from memory).
 * Checked by: tests/reference/stokes.c */
double bubble_rise_small(const struct bubble_fluid *fluid, double diameter);
double bubble_rise_small_mobile(const struct bubble_fluid *fluid, double diameter);

/* Film that a long bubble leaves on the wall when fluid carries it, over the radius:
 *   1.34 Ca^(2/3)/(1 + 3.35 Ca^(2/3)), Ca = mu U/sigma
 *
 *   capillary   >= 0
 *
 * Source: the first term Bretherton 1961; the whole P. Aussillous and D. Quere, Phys. Fluids 12
 * (2000) 2367 (from memory), a fit to G. I. Taylor, J. Fluid Mech. 10 (1961) 161.
 * Checked by: tests/reference/bretherton_1961.c, tests/parts/test_bubble.c */
double bubble_film(double capillary);
/* Share of the bore that the film takes, m = 1 - (1 - film)^2. */
double bubble_film_share(double capillary);
/* How much faster than the mean of the fluid a long bubble moves with it: 1/(1 - m). */
double bubble_carried(double capillary);
/* Pressure that pushes one long bubble along: 3.58 (3 Ca)^(2/3) sigma/R, Pa; meant for Ca below
 * 0.005.
 * Source: Bretherton 1961. Checked by: tests/reference/bretherton_1961.c */
double bubble_drag(const struct bubble_fluid *fluid, double bore, double capillary);

/* Air that stays above a nipple's hole in a round chamber that lies level: a segment of the circle.
 *
 *   bore    diameter of the chamber, > 0
 *   below   how far the hole lies below its top, 0 to bore
 *   gives   share of the chamber's volume, 0 to 1:
 *           [r^2 acos((r-h)/r) - (r-h) sqrt(2 r h - h^2)]/(pi r^2)
 *
 * Source: geometry. Checked by: tests/parts/test_bubble.c */
double bubble_trapped_share(double bore, double below);

#endif
