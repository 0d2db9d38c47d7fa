#ifndef FIRMPEDAL_PARTS_PARKING_BRAKE_H
#define FIRMPEDAL_PARTS_PARKING_BRAKE_H

#include "parts/disc_brake.h"
#include "parts/drum_brake.h"
#include "parts/names.h"
#include "units/quantity.h"

/* What spreads the shoes. A lever that floats pushes both with the same force; a cam on a fixed
 * pivot moves both by the same travel, so that bedded linings bear with the same pressure. */
enum spreader { SPREADER_NOT_SAID, SPREADER_FLOATING, SPREADER_CAM };

struct parking {
    struct part_names works;       /* key "works": the brakes it acts on */
    struct number lever_ratio;     /* "lever ratio": hand to cable */
    struct number shoe_ratio;      /* "shoe lever ratio": cable to shoe tip */
    struct share cable_loss;       /* "cable loss", assumed 25 % */
    struct angle cable_bends;      /* "cable bends": all of them added up; then it is not used */
    struct number cable_friction;  /* "cable friction" in its sheath, assumed 0.15 */
    struct length cable_slack;     /* "cable slack" at the lever, assumed 2 mm */
    struct stiffness cable_stiff;  /* "cable stiffness" of one brake's cable, assumed 300 N/mm */
    enum spreader spreader;        /* "spreader" = floating lever | fixed cam, assumed floating */
    struct number holding;         /* "holding friction" over the moving one, assumed 1 */
    struct length holds_off;       /* "cable holds off": shoe tips, from their stops, assumed 0 */
    struct force effort;           /* "effort" of the hand, assumed 400 N */
    struct length travel_of_click; /* "travel per click" of the grip, assumed 20 mm */
    int clicks;                    /* "clicks" of the lever when it holds */
};

/* Part of the pull that cable and sheaves eat up: 1 - exp(-friction * bends) where the bends are
 * said, else the cable loss; NaN outside (bends rad >= 0, friction >= 0, loss 0 and below 1).
 * Source: rope over a drum (Euler). Checked by: tests/parts/test_parking_brake.c */
struct share parking_cable_loss(const struct parking *parking);

/* Pull of the cable at one of the brakes that the hand brake works.
 *
 *   parking   effort N >= 0; lever ratio > 0; loss of the cable; the brakes it works
 *   gives     effort * lever ratio * (1 - loss), shared evenly among the brakes, N; NaN outside
 *
 * Source: moment balance on the lever, and an equaliser that shares evenly.
 * Checked by: tests/parts/test_parking_brake.c
 */
struct force parking_cable_force(const struct parking *parking);

/* Force at the shoe (or pad) lever's short end: pull of the cable times shoe ratio, N; NaN unless
 * the ratio is > 0. On both shoes of a drum: the same on each, or the mean of the two with a cam.
 * Checked by: tests/parts/test_parking_brake.c */
struct force parking_shoe_force(const struct parking *parking);

/* Torque over force of a tip and radius of a drum that the hand brake spreads.
 *
 *   parking   spreader; holding friction > 0
 *   forward   the way the drum would turn
 *   gives     with a floating lever the sum of the shoe factors, S_l + S_t; with a cam, whose two
 *             forces add up to twice the mean, 4/(1/S_l + 1/S_t); at friction * holding friction.
 *             NaN outside. A duo-servo drum has no cam
 *
 * Source: equal pressure on both linings makes equal torques, so forces as 1/S_l to 1/S_t; R. S.
 * Khurmi and J. K. Gupta, Theory of Machines, internal expanding brake (from memory).
 * Checked by: tests/parts/test_parking_brake.c */
double parking_drum_factor(const struct parking *parking, const struct drum *drum, bool forward);

/* How far its cable must be pulled at a brake before it holds, m; NaN where something is unknown.
 *
 *   drum   shoe ratio * 2 * (clearance + give at the shoe force), + pull / stiffness of the cable
 *   disc   shoe ratio * (2 * roll back + (2 * pad squash + body opening) at that force), + the same
 *
 * Give, squash and opening are said at 10 MPa and grow with the force.
 * Source: what the levers must follow; linear springs. Checked by: tests/parts/test_parking_brake.c
 */
struct length parking_drum_pull(const struct parking *parking, const struct drum *drum);
struct length parking_disc_pull(const struct parking *parking, const struct disc *disc);

/* Clicks of the lever until it holds.
 *
 *   mean_pull   of the brakes it works: an equaliser moves by the mean of its cables, m, >= 0
 *   gives       (slack + mean pull) * lever ratio / travel per click, -; NaN outside
 *
 * Checked by: tests/parts/test_parking_brake.c */
double parking_clicks(const struct parking *parking, struct length mean_pull);

#endif
