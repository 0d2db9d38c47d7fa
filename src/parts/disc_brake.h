#ifndef FIRMPEDAL_PARTS_DISC_BRAKE_H
#define FIRMPEDAL_PARTS_DISC_BRAKE_H

#include "parts/brake_case.h"
#include "parts/edge_code.h"
#include "units/quantity.h"

enum caliper_type { CALIPER_NOT_SAID, CALIPER_FIXED, CALIPER_SLIDING };

/* How a pad presses, which decides the radius where its friction acts. */
enum pad_contact {
    PADS_NOT_SAID,
    PADS_WORN_IN, /* pressure as 1/radius: wear is even */
    PADS_NEW,     /* pressure alike all over */
    PADS_ROUND    /* a round pad, worn in */
};

/* "2 of 48 mm": how many pistons in all, and their diameter. */
struct bores {
    int count;
    struct length bore;
};

struct disc {
    enum caliper_type caliper; /* key "caliper" = fixed | sliding */
    struct bores bores;        /* "bore" = 2 of 48 mm: all pistons of the caliper */
    struct bores second_bores; /* "second bore": pistons of another size */
    int inlets;                /* "inlets": 1, or 2 for two circuits in one caliper; assumed 1 */
    struct length disc_outer;  /* "disc diameter" */
    struct length pad_height;  /* "pad height": radial */
    struct angle pad_arc;      /* "pad arc": covered by a pad, seen from the disc's centre */
    enum pad_contact contact;  /* "pads", assumed worn in */
    struct length effective_radius; /* "effective radius"; else (from the two above) */
    struct number friction;         /* "friction" of the pads, assumed 0.38 */
    struct number efficiency;       /* "efficiency", assumed 0.96 */
    struct pressure threshold;      /* "threshold", assumed 0.5 bar */
    struct length roll_back;        /* "roll back" of each piston, assumed 0.15 mm */
    struct length pad_squash; /* "pad squash": of one pad at 10 MPa line pressure, assumed .1 mm */
    struct length body_opening;    /* "body opening" at 10 MPa, assumed 0.15 mm */
    struct length piston_travel;   /* "piston travel" at 10 MPa, all of it; NaN: not measured */
    struct length run_out;         /* "run out" of the disc */
    struct length bearing_play;    /* "bearing play" at the disc's edge, assumed 0.05 mm */
    struct length thickness;       /* "disc thickness" */
    struct length least_thickness; /* "least thickness" cast in */
    struct mass mass;              /* "disc mass": what warms; assumed a solid plate of its sizes */
    struct duration cooling;       /* "cooling time" of the warm disc, from its mass */
    struct share heat_to_fluid;    /* "heat to fluid", assumed 0.35 */
    struct share friction_spread;  /* "friction spread", up and down, assumed 0.10 */
    enum edge_code edge_code;      /* "edge code": letters on the pad's edge */
    struct length pad_left;        /* "pad left": friction material, thinnest pad */
    struct length pad_new;         /* "pad new": the same when new, assumed 10 mm */
    struct length pad_worn;        /* "pad worn": the same when worn out, assumed 2 mm */
};

#define DISC_SOLID_MOST 14e-3 /* m; a thicker disc may have vents inside, from memory */

/* Area of the pistons that press on one side of the disc.
 *
 *   disc    caliper; bores: count > 0, diameter m > 0; second bores when their count is > 0
 *   inlet   -1 for all; 0 or 1 for one of two: the first feeds the bores and the second the second
 *           bores, or half of the bores each where all are alike
 *   gives   half of the pistons of a fixed caliper, all of a sliding one, m2; NaN outside, and for
 *           an inlet that the caliper does not have
 *
 * Source: one side presses back as hard as the other, so opposed pistons count once.
 * Checked by: tests/parts/test_disc_brake.c
 */
struct area disc_side_area(const struct disc *disc, int inlet);
/* Radius at which the friction acts: the one given, else that of a pad that reaches from the edge
 * of the disc inwards by its height, by how it presses (worn in when not said), m. NaN when neither
 * is known or > 0. Checked by: tests/reference/shigley_16_3.c, tests/parts/test_disc_brake.c */
struct length disc_radius(const struct disc *disc);

/* Friction radius of an annular pad: by uniform wear (bedded in) (ri + ro)/2, by uniform pressure
 * (new) 2/3 (ro^3 - ri^3)/(ro^2 - ri^2).
 *
 *   inner, outer   radii, m, 0 <= inner < outer
 *   gives          m; NaN outside
 *
 * Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 16-6, from memory.
 * Checked by: tests/reference/shigley_16_3.c, tests/reference/khurmi_10_23.c
 */
struct length annulus_radius_wear(struct length inner, struct length outer);
struct length annulus_radius_pressure(struct length inner, struct length outer);

/* The same for a round pad that is worn in: pressure as 1/radius over the circle, so the radius is
 * its area over the integral of 1/radius.
 *
 *   middle   pad's middle to the axis, m, > 0
 *   pad      radius of the pad, m, > 0 and below middle
 *   gives    m; NaN outside. 0.5 % below the middle for pad/middle 0.2, 3.4 % for 0.5
 *
 * Source: our own integration. The table that textbooks give for round pads (0.9693 of the middle
 * at 0.2) does not follow from this pressure and is not used.
 * Checked by: tests/reference/round_pads.c
 */
struct length round_pad_radius(struct length middle, struct length pad);

/* Force with which the caliper presses on each side of the disc.
 *
 *   disc    as for the area; efficiency over 0 and up to 1; threshold Pa >= 0
 *   p       pressure at each inlet, Pa gauge, >= 0; only the first counts when there is one inlet
 *   gives   efficiency * (p - threshold) * area of one side, none below the threshold, summed over
 *           the inlets, N; NaN outside
 *
 * Source: force balance on the pistons.
 * Checked by: tests/reference/constructed_parts.c, tests/reference/shigley_16_3.c
 */
struct force disc_clamp(const struct disc *disc, const struct pressure p[2]);

/* Torque of the brake: 2 * friction * clamp * radius, N m; NaN where one of them is, or friction is
 * not > 0.
 * Source: friction on both faces.
 * Checked by: tests/reference/constructed_parts.c, tests/reference/shigley_16_3.c */
struct torque disc_torque(const struct disc *disc, const struct pressure p[2]);

/* Pressure between a pad and the disc: clamp over the pad's face, on the mean and where it is
 * greatest.
 *
 *   disc    as for the clamp; disc diameter, pad height m > 0; pad arc rad > 0 unless the pads are
 * round gives   mean: clamp/(arc/2 (ro^2 - ri^2)), round clamp/(pi h^2/4). Greatest: worn in, at
 * the inner edge, clamp/(arc ri (ro - ri)); new, the mean; round not known, NaN. Pa; NaN outside
 *
 * Source: Shigley's, section 16-6 (from memory): pressure as 1/radius where worn in, even where
 * new. Checked by: tests/reference/shigley_16_3.c, tests/parts/test_disc_brake.c */
struct pad_pressure {
    struct pressure mean, greatest;
};
struct pad_pressure disc_pad_pressure(const struct disc *disc, const struct pressure p[2]);

/* Volume that a brake takes at an inlet, by cause. */
struct disc_volumes {
    struct volume roll_back, pads, body;
};

/*   disc    as for the area; threshold Pa >= 0; roll back, pad squash and body opening m >= 0
 *   inlet   as for the area
 *   p       at that inlet, Pa gauge, >= 0
 *   as      how it stands; NULL: as described, cold, nothing knocked back
 *   gives   m3 each; a cause whose figure is not known is NaN, all are outside the ranges:
 *             roll back   all pistons by the roll back; on an even way there below the threshold.
 *                         Knocked back by w, run-out + bearing play, with a roll back of d: area of
 *                         one side by w where that is over d for a sliding caliper that sticks, by
 *                         w + d where that is over 2 d for a fixed one
 *             pads        area of one side by the squash of two pads, growing with pressure. As a
 *                         spring A E/t it goes with the thickness; hot pads give twice as much
 *             body        area of one side by the opening, growing with pressure
 *             Where the piston travel is given, what is left of it beyond the roll back stands for
 *             both: the opening first, the rest is squash
 *
 * Pad squash is that of the pads as they are now, or of new ones where their thickness is not said.
 * Source: what the pistons must follow; squash and opening as linear springs, twice the squash when
 * hot (from memory). Knock-back: a disc that sweeps w pushes out one pad at each end of its way, so
 * both gaps of a fixed caliper grow together to w, and to w + d where the brake was let go with the
 * disc at one end of it; geometry.
 * Checked by: tests/parts/test_disc_brake.c, tests/reference/constructed_parts.c
 */
struct disc_volumes disc_volume(const struct disc *disc, int inlet, struct pressure p,
                                const struct brake_case *as);

/* Fluid that stands behind the pistons on top of the caliper's chamber as described, because they
 * have followed the pads as these wore.
 *
 *   gives   m3: area of one side by the wear of two pads, from now; below 0 for pads that are new;
 *           0 for pads as described; NaN outside
 *
 * Goes into the fluid that is compressed, and came out of the reservoir.
 * Checked by: tests/parts/test_disc_brake.c
 */
struct volume disc_fluid_followed(const struct disc *disc, int inlet, const struct brake_case *as);

#endif
