#ifndef FIRMPEDAL_PARTS_SHOE_H
#define FIRMPEDAL_PARTS_SHOE_H

#include <stdbool.h>

/* One shoe in a drum: its factor is torque over tip force and drum radius. Lengths m, angles rad.
 * Each law refuses (NaN) a leading shoe from 0.8 of the friction at which it locks by itself. */

/* Friction at which a leading shoe on a fixed pin would lock by itself.
 *
 *   radius       of the drum, > 0
 *   pin          pin to drum centre, > 0 and below radius
 *   start, end   of the lining, about the drum centre from the line to the pin, 0 <= start < end
 *                <= pi
 *   gives        G/H of shoe_factor_pin; NaN outside
 *
 * Checked by: tests/reference/shigley_16_2.c
 */
double shoe_locks_at(double radius, double pin, double start, double end);

/* Factor of a shoe on a fixed pin: mu c [cos t1 - cos t2] / (G -+ mu H), with
 *   G = a [(t2-t1)/2 - (sin 2t2 - sin 2t1)/4]
 *   H = r (cos t1 - cos t2) - (a/2)(sin^2 t2 - sin^2 t1)
 *
 *   friction   mu, > 0
 *   arm        c of the tip force about the pin, > 0; the rest as above, a is pin, t1 start, t2 end
 *   leading    whether the drum turns from the tip towards the pin
 *   gives      -; NaN outside
 *
 * Rigid shoe, lining bedded in: its pressure goes with the sine of the angle.
 * Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 16-2, from memory.
 * Checked by: tests/reference/shigley_16_2.c, bhandari_12_9.c, jindal_23_4.c there
 */
double shoe_factor_pin(double friction, double radius, double pin, double arm, double start,
                       double end, bool leading);

/* The face on which the heel of a sliding shoe leans. */
struct shoe_abutment {
    double angle;    /* rad from square to the cylinder's line, above 0 where the face pushes the
                        heel towards the tip, below 1 either way */
    double friction; /* of the heel on the face, >= 0 */
};

/* Factor of a shoe that slides along its abutment. The pressure goes as cos(x - psi) over the
 * lining, x from its middle, wherever that is above 0: the end of a lining that would have to pull
 * on the drum lifts; with
 *   P, C, S   integrals of that pressure, and of it times cos x and sin x, over what touches
 *   e         angle of the abutment plus (leading) or minus (trailing) atan of its friction
 *   s         1 leading, -1 trailing
 * psi follows from
 *   (S + s mu C)(h_a + h_c) = tan e [s mu r P + h_a (C - s mu S)]
 * and the factor is
 *   mu P (h_a + h_c) / [h_c (C - s mu S) - s mu r P]
 * Where nothing lifts, on a square face without friction, that is
 *   mu k (h_a + h_c) / [h_c (1 + mu^2) - s mu k r],  k = 4 sin a/(2a + sin 2a)
 *
 *   friction   mu, > 0
 *   radius     r of the drum, > 0
 *   tip        h_a, cylinder line to drum centre, > 0 and below radius
 *   abutment   h_c, abutment to drum centre, likewise
 *   half_arc   of the lining, > 0 and up to pi/2, even about the shoe's middle
 *   gives      -; NaN outside, and where the abutment would have to pull
 *
 * The heel leans on the face straight below the drum's centre as the cylinder sees it; friction of
 * the face acts against the way the drum drags the shoe. At half arc 55 deg the toe lifts from
 * friction 0.22 on; at 0.38 that makes a leading factor 1.8 % greater than the closed form, 3.3 %
 * at 40 deg. Source: equilibrium of the shoe, our own working. Checked by: tests/parts/test_shoe.c,
 * against the sum over small pieces of lining
 */
double shoe_factor_sliding(double friction, double radius, double tip, double abutment,
                           double half_arc, struct shoe_abutment face, bool leading);

/* Peak pressure of a lining over the torque of its shoe, 1/m3.
 *
 *   width   of the lining along the axle, m, > 0; lengths m, the rest as for the factors
 *   gives   pinned: sin(t) at the lining's angle nearest to 90 deg over mu b r^2 (cos t1 - cos t2);
 *           sliding: cos(x - psi) at its greatest over mu b r^2 P. NaN outside
 *
 * Source: Shigley's, section 16-2 (from memory); the pressure under the factors above.
 * Checked by: tests/reference/shigley_16_2.c, tests/cross/shoe_pressure.c
 */
double shoe_peak_pin(double friction, double radius, double width, double start, double end);
double shoe_peak_sliding(double friction, double radius, double width, double tip, double abutment,
                         double half_arc, struct shoe_abutment face, bool leading);

/* The two shoes of a drum, by what a force on one tip alone does: torque over that force and the
 * radius. Pushed alike they make the sum of both. */
struct shoe_factors {
    double front; /* the tip of the shoe that leads when the car rolls forward; of two alike the one
                     further forward; of a duo-servo pair the primary's */
    double rear;  /* the other's tip */
    double own;   /* what of front its own shoe rubs: all of it, but in a duo-servo pair */
};

/* Factors of a duo-servo pair: a primary shoe that slides on a floating link and a secondary one on
 * the anchor, driven by the link (front) and by the other end of the cylinder (rear).
 *
 *   friction, radius, tip   as above
 *   link                    link to drum centre, > 0 and below radius
 *   anchor                  anchor pin to drum centre, > 0 and below radius
 *   primary_half_arc, secondary_half_arc   of the linings, > 0 and up to pi/2
 *   gives                   -; NaN outside. The rear one is 0 where cylinder and anchor stand
 *                           equally far out
 *
 * Source: equilibrium of both shoes, our own working.
 * Checked by: tests/parts/test_shoe.c; order of magnitude: tests/reference/tribology_handbook.c
 */
struct shoe_factors duo_servo_factors(double friction, double radius, double tip, double link,
                                      double anchor, double primary_half_arc,
                                      double secondary_half_arc);

#endif
