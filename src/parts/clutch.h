#ifndef FIRMPEDAL_PARTS_CLUTCH_H
#define FIRMPEDAL_PARTS_CLUTCH_H

#include <stdbool.h>

#include "units/quantity.h"

enum slave_type { SLAVE_NOT_SAID, SLAVE_OUTSIDE, SLAVE_CONCENTRIC };

struct slave {
    enum slave_type type;         /* key "type" = outside | concentric */
    struct length bore;           /* "bore": outside slave, or outer diameter of a concentric one */
    struct length inner_bore;     /* "inner bore": concentric: the sleeve inside */
    struct length stroke;         /* "stroke" until the piston leaves its bore */
    struct number fork_ratio;     /* "fork ratio": slave travel / bearing travel; concentric 1 */
    struct number efficiency;     /* "efficiency" of slave, fork and guide tube, assumed 0.90 */
    struct share flex;            /* "flex": of the lift, bent away; assumed 12 % */
    struct length play;           /* "bearing play" before the fingers are touched, assumed 0 */
    struct force release_force;   /* "release force" at the bearing, peak */
    struct force release_end;     /* "release force end" at the bearing, at full travel */
    struct length bearing_travel; /* "bearing travel" that frees the clutch */
    struct length bearing_most;   /* "most bearing travel" before springs are overstressed */
    struct number finger_ratio;   /* "finger ratio": bearing travel / lift of the pressure plate */
    struct length cushion;        /* "cushion" of the driven plate, assumed 0.8 mm */
    struct length plate_run_out;  /* "plate run out" at its edge, assumed 0.3 mm */
    struct force clamp;           /* "clamp force" of the clutch's springs */
    struct length plate_outer;    /* "plate outer diameter" of the facings */
    struct length plate_inner;    /* "plate inner diameter" */
    struct number plate_friction; /* "plate friction", assumed 0.3 */
};

/* Area of the piston, m2: the bore, less the sleeve inside of a concentric one; NaN for no type,
 * or unless bore > inner bore > 0.
 * Checked by: tests/parts/test_clutch.c */
struct area slave_area(const struct slave *slave);

/* Ratio of slave to bearing travel: the fork ratio, NaN unless > 0; 1 for a concentric one. */
double slave_ratio(const struct slave *slave);

/* A diaphragm is hardest to push part of the way and gives way after that: where on its way. */
enum release_point { RELEASE_PEAK, RELEASE_END };

/* Release force at the bearing, N, >= 0. Where only one of peak and end is said it serves for both;
 * NaN where neither is, or when it is below 0.
 * Checked by: tests/parts/test_clutch.c */
struct force slave_release_force(const struct slave *slave, enum release_point point);

/* Pressure that holds the bearing down.
 *
 *   slave   type and bores; fork ratio > 0; efficiency over 0 and up to 1; release force N >= 0
 *   gives   release force / (ratio * area * efficiency), Pa gauge; NaN outside
 *
 * Source: force balance on fork and piston.
 * Checked by: tests/parts/test_clutch.c
 */
struct pressure slave_pressure(const struct slave *slave, enum release_point point);

/* Travel of the bearing against the fingers.
 *
 *   slave       type and bores; fork ratio > 0; play m >= 0
 *   delivered   volume that reaches the slave, m3, >= 0
 *   gives       delivered / area / ratio - play, never below 0, m; NaN outside
 *
 * Does not know where the piston leaves its bore: compare with the stroke.
 * Checked by: tests/parts/test_clutch.c
 */
struct length slave_bearing_travel(const struct slave *slave, struct volume delivered);

/* Lift of the pressure plate: travel of the bearing over the finger ratio, less the part that fork
 * and cover bend away, m; NaN unless travel >= 0, ratio > 0 and flex 0 to 1.
 * Source: lever of the diaphragm or of the fingers. Checked by: tests/parts/test_clutch.c */
struct length clutch_lift(const struct slave *slave, struct length bearing_travel);

/* Clearance on each face of the driven plate once the pressure plate is lifted.
 *
 *   slave   cushion and plate run out, m, >= 0
 *   lift    of the pressure plate, m, >= 0
 *   gives   (lift - cushion)/2 - run out/2, m; below 0 the plate still rubs; NaN outside
 *
 * The plate is taken to stand midway, free on its splines. Source: geometry.
 * Checked by: tests/parts/test_clutch.c */
struct length clutch_face_clearance(const struct slave *slave, struct length lift);

/* Torque that a plate with two faces carries before it slips: 2 mu F r_m.
 *
 *   slave    clamp force N >= 0; plate friction > 0; plate diameters m, inner below outer
 *   bedded   true: uniform wear, r_m = (r_o + r_i)/2; false: new facings, uniform pressure,
 *            r_m = 2/3 (r_o^3 - r_i^3)/(r_o^2 - r_i^2)
 *   gives    N m; NaN outside
 *
 * Source: R. S. Khurmi and J. K. Gupta, Theory of Machines, section on disc clutches (from memory).
 * Checked by: tests/reference/khurmi_10_23.c, tests/parts/test_clutch.c */
struct torque clutch_torque(const struct slave *slave, bool bedded);

#endif
