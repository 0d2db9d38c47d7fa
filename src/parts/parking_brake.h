#ifndef FIRMPEDAL_PARTS_PARKING_BRAKE_H
#define FIRMPEDAL_PARTS_PARKING_BRAKE_H

#include "parts/disc_brake.h"
#include "parts/drum_brake.h"
#include "parts/names.h"
#include "units/quantity.h"

/* What spreads the shoes. A lever hung on one shoe pushes the other through a strut, and its pivot
 * pushes its own by less, for the cable pulls that way; a lever that is pulled across, through the
 * backplate, pushes both alike; a cam on a fixed pivot moves both by the same travel, so that
 * bedded linings bear with the same pressure. */
enum spreader { SPREADER_NOT_SAID, SPREADER_FLOATING, SPREADER_CROSS, SPREADER_CAM };
/* The shoe on which that lever hangs, as the car stands. */
enum lever_shoe { LEVER_SHOE_NOT_SAID, LEVER_ON_REAR, LEVER_ON_FRONT };

/* Pull of the hand at which clicks are counted, N. Four makers' workshop texts state them at 20 kgf
 * or 44 lbf. */
#define PARKING_CLICKS_EFFORT 200.0

struct parking {
    struct part_names works;      /* key "works": the brakes it acts on */
    struct number lever_ratio;    /* "lever ratio": hand to cable */
    struct number shoe_ratio;     /* "shoe lever ratio": cable to shoe tip */
    struct share cable_loss;      /* "cable loss", assumed 25 % */
    struct angle cable_bends;     /* "cable bends": all of them added up; then it is not used */
    struct number cable_friction; /* "cable friction" in its sheath, assumed 0.15 */
    struct length cable_slack;    /* "cable slack" at the lever, assumed 2 mm */
    struct stiffness cable_stiff; /* "cable stiffness" of one brake's cable, assumed 300 N/mm */
    enum spreader
        spreader; /* "spreader" = floating lever | cross lever | fixed cam, assumed floating */
    enum lever_shoe lever_on;      /* "lever on" = rear shoe | front shoe, assumed rear */
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
 * the ratio is >= 1. In a drum: what the strut pushes its shoe with; with a lever pulled across, on
 * each shoe; with a cam, the mean of the two.
 * Checked by: tests/parts/test_parking_brake.c */
struct force parking_shoe_force(const struct parking *parking);

/* Torque of a drum that the hand brake spreads, over parking_shoe_force and the radius.
 *
 *   parking   spreader; shoe ratio i >= 1
 *   shoes     of the drum, the way it would turn, at friction * holding friction
 *   layout    of its shoes
 *   gives     floating lever: S_strut + (i - 1)/i S_pivot, the lever hanging on the rear shoe or
 * the front one; cross lever S_f + S_r; cam, whose two forces add up to twice the mean, 4/(1/S_f +
 * 1/S_r). NaN outside. In a duo-servo brake the strut pushes the shoe that is primary forward, and
 * a cam counts as a cross lever
 *
 * Source: force balance of the lever along the shoes: strut force i F, cable F the same way, so its
 * pivot is pushed back by (i - 1) F. Cam: equal pressure on both linings makes equal torques, so
 * forces as 1/S; R. S. Khurmi and J. K. Gupta, Theory of Machines, internal expanding brake (from
 * memory).
 * Checked by: tests/parts/test_parking_brake.c */
double parking_drum_factor(const struct parking *parking, struct shoe_factors shoes,
                           enum shoe_layout layout, bool forward);

/* How far its cable must be pulled at a brake before it holds, m; NaN where something is unknown.
 *
 *   drum   floating lever: i (c + g) + (i - 1) (c + g (i - 1)/i), c clearance, g give of a tip at
 * the shoe force; else i 2 (c + g); and pull / stiffness of the cable disc   shoe ratio * (2 * roll
 * back + (2 * pad squash + body opening) at that force), + the same
 *
 * Give, squash and opening are said at 10 MPa and grow with the force.
 * Source: what the levers must follow (the pull goes on as the tips go, by virtual work); linear
 * springs. Checked by: tests/parts/test_parking_brake.c
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
