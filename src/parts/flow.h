#ifndef FIRMPEDAL_PARTS_FLOW_H
#define FIRMPEDAL_PARTS_FLOW_H

#include "parts/fluid.h"

/* Fluid on the move through pipes and nipples. Flow m3/s, lengths m, density kg/m3, viscosity m2/s
 * (kinematic), pressure Pa. All give NaN outside the ranges; flow is laminar throughout. */

/* A short narrow passage, such as a nipple's. */
struct passage {
    double bore, length; /* > 0 */
    double loss;         /* velocity heads lost going in and out, >= 0 */
};

/* A nipple's passage when nothing is known of it: 1.5 mm, 8 mm long, two velocity heads. From
 * memory. */
struct passage passage_usual(void);

/* What a way through pipes and passages costs: pressure = linear Q + square Q^2. */
struct resistance {
    double linear; /* Pa s/m3 */
    double square; /* Pa s2/m6 */
};

/* Reynolds number 4 Q/(pi D nu).
 *
 *   flow        >= 0
 *   bore        > 0
 *   viscosity   > 0
 *
 * Checked by: tests/reference/massey.c, tests/reference/subramanya.c, tests/reference/esposito.c */
double flow_reynolds(double flow, double bore, double viscosity);

/* Resistance of a pipe full of fluid: 128 mu L/(pi D^4), Pa s/m3; laminar, Reynolds number below
 * 2000.
 *
 *   density, viscosity   of the fluid, > 0 and >= 0
 *   length, bore         >= 0, > 0
 *
 * Source: Hagen and Poiseuille; B. S. Massey and J. Ward-Smith, Mechanics of Fluids, section 6.2.
 * Checked by: tests/reference/massey.c, tests/reference/subramanya.c, tests/reference/esposito.c */
double flow_pipe(double density, double viscosity, double length, double bore);

/* Resistance of a passage: that of its pipe, and loss rho/(2 A^2) with the square of the flow.
 * Checked by: tests/reference/constructed_gravity.c */
struct resistance flow_passage(double density, double viscosity, const struct passage *passage);

/* Flow that a pressure drives through a resistance: the root of linear Q + square Q^2 = push.
 *
 *   push    >= 0; a push below 0 drives nothing
 *   gives   m3/s; infinity where nothing resists
 *
 * Checked by: tests/reference/constructed_gravity.c */
double flow_driven(struct resistance through, double push);
/* Pressure that a flow costs there. */
double flow_cost(struct resistance through, double flow);

/* Pressure of a column of fluid, density g height, Pa.
 * Checked by: tests/reference/subramanya.c */
double flow_head(double density, double height);

/* Old fluid that new fluid drives out of a pipe, laminar and without diffusion.
 *
 *   volumes   passed, over the volume of the pipe, >= 0
 *   gives     share of old fluid in what comes out: 1 up to half a volume, then 1/(4 q^2); and
 * share of the pipe's old fluid that is still in it: 1 - q, then 1/(4 q)
 *
 * Source: O. Levenspiel, Chemical Reaction Engineering, 3rd edition, pp. 343-344.
 * Checked by: tests/reference/levenspiel.c */
double flow_old_in_outflow(double volumes);
double flow_old_left(double volumes);

/* Kinematic viscosity by log10 log10(nu + 0.7) = a - b log10 T, nu in mm2/s, T in K.
 *
 *   a, b    of the fluid
 *   at      above absolute zero
 *   gives   m2/s; meant for more than 2 mm2/s
 *
 * Source: C. Walther 1931; ASTM D341.
 * Checked by: tests/reference/astm_d341.c */
struct viscosity flow_viscosity(double a, double b, struct temperature at);
/* That of a grade by its row in the table of fluids; NaN for no grade. */
struct viscosity flow_viscosity_of(enum fluid_grade grade, struct temperature at);

#endif
