#ifndef FIRMPEDAL_PARTS_DRUM_BRAKE_H
#define FIRMPEDAL_PARTS_DRUM_BRAKE_H

#include <stdbool.h>

#include "parts/brake_case.h"
#include "parts/shoe.h"
#include "parts/edge_code.h"
#include "units/quantity.h"

#define DRUM_WALL 8e-3 /* m, usual thickness of a drum's rim, from memory */

enum shoe_layout { SHOES_NOT_SAID, SHOES_LEADING_TRAILING, SHOES_TWO_LEADING, SHOES_DUO_SERVO };
enum cylinder_layout {
    CYLINDER_NOT_SAID,
    CYLINDER_TWO_PISTONS, /* fixed, a piston to each shoe */
    CYLINDER_ONE_EACH,    /* a single-piston cylinder for each shoe */
    CYLINDER_SLIDING /* one piston, the body slides in the backplate and works the other shoe */
};
enum shoe_anchor { ANCHOR_NOT_SAID, ANCHOR_PIN, ANCHOR_SLIDING };
enum lining_fixing { FIXING_NOT_SAID, FIXING_RIVETS, FIXING_GLUE };
enum adjuster { ADJUSTER_NOT_SAID, ADJUSTER_CAM, ADJUSTER_WHEEL, ADJUSTER_WEDGE, ADJUSTER_SELF };

struct drum {
    /* All that the shoe factor rests on stands above efficiency: drum_memory.c compares that much.
     */
    enum shoe_layout shoes;          /* key "shoes" */
    enum cylinder_layout cylinder;   /* "cylinder" */
    struct length bore;              /* "bore" of the wheel cylinders */
    struct length diameter;          /* "drum diameter", inside */
    struct length most_diameter;     /* "most diameter" cast in */
    enum shoe_anchor anchor;         /* "anchor" = pin | sliding, assumed sliding */
    struct length pin_distance;      /* "pin distance": pin (or abutment) to drum centre */
    struct length tip_distance;      /* "tip distance": cylinder line to drum centre */
    struct angle abutment_angle;     /* "abutment angle" of a sliding shoe, assumed square: 0 */
    struct number abutment_friction; /* "abutment friction", assumed 0 */
    struct angle lining_start;       /* "lining start": from the pin, for pins */
    struct angle lining_arc;      /* "lining arc": angle covered by one lining, assumed 110 deg */
    struct number friction;       /* "friction" of the linings, assumed 0.38 */
    struct number efficiency;     /* "efficiency", assumed 0.96 */
    struct pressure threshold;    /* "threshold" of the shoe springs, assumed 2 bar */
    struct length clearance;      /* "clearance" at the cylinder tip when set, assumed 0.4 mm */
    struct length give;           /* "give": lining, shoe and drum at the tip at 10 MPa, 0.3 mm */
    struct length piston_travel;  /* "piston travel" at 10 MPa, all of it; NaN: not measured */
    struct length lining_squash;  /* "lining squash": what of the give is the lining's own, 1/4 */
    struct temperature hot;       /* "temperature hot" of the drum, assumed 220 degC */
    struct temperature shoes_hot; /* "shoes hot": shoes and linings by then, assumed 90 degC */
    enum adjuster adjuster;       /* "adjuster" */
    struct length bridge;         /* "bridge": length of the pipe between its two cylinders */
    struct length lining_width;   /* "lining width", along the axle */
    struct mass mass;             /* "drum mass": what warms; assumed by its size */
    struct duration cooling;      /* "cooling time" of the warm drum, from its mass */
    struct share heat_to_fluid;   /* "heat to fluid", assumed 0.2 */
    struct share friction_spread; /* "friction spread", up and down, assumed 0.10 */
    enum edge_code edge_code;     /* "edge code": letters on the lining's edge */
    enum lining_fixing fixing;    /* "lining held by" = rivets | glue */
    struct length lining_left;    /* "lining left": friction material, thinnest place */
    struct length lining_new;     /* "lining new": the same when new, assumed 5 mm */
    struct length lining_worn;    /* "lining worn": the same when worn out, assumed 1.6 mm */
};

/* Sum of the shoe factors with the same force on every tip: torque over force and radius.
 *
 *   drum      shoes; diameter, pin distance, tip distance m > 0; lining arc rad, 0 to pi; friction
 *             > 0; anchor, sliding when not said, with abutment angle and friction. Pinned shoes
 * with no lining start have their lining midway. A duo-servo brake is taken as evenly built: link
 * as far from the centre as the cylinder, both linings alike, pin distance the one of its anchor
 *   forward   the way the drum turns; two-leading shoes both trail in reverse
 *   gives     sum, -; NaN outside, and for a brake too near to locking by itself
 *
 * Rigid shoes, bedded linings, round drum: measured factors differ by 5 to 20 % (from memory).
 * Checked by: tests/parts/test_drum_brake.c
 */
double drum_factor(const struct drum *drum, bool forward);
/* The same at another friction. */
double drum_factor_with(const struct drum *drum, struct number friction, bool forward);
/* The same shoe by shoe: front and rear as the car stands, whichever way it rolls; in a duo-servo
 * brake the one that is primary that way counts as front. */
struct shoe_factors drum_shoe_factors(const struct drum *drum, struct number friction,
                                      bool forward);
/* Torque of its front and its rear shoe, going forward, at line pressure p: both add up to
 * drum_torque. In a duo-servo brake the primary shoe and the secondary one.
 * Checked by: tests/parts/test_drum_brake.c */
struct shoe_torques {
    struct torque front, rear;
};
struct shoe_torques drum_shoe_torques(const struct drum *drum, struct pressure p);
/* The same with factors that are at hand already, going forward. */
struct shoe_torques drum_torques_by_factors(const struct drum *drum, struct pressure p,
                                            const struct shoe_factors *shoes);

/* Greatest pressure between lining and drum, of both shoes, going forward.
 *
 *   drum     as for the torque; lining width m > 0
 *   torques  of its two shoes
 *   gives    Pa; NaN outside
 *
 * Rigid shoes, bedded in. Source: shoe_peak_pin and shoe_peak_sliding.
 * Checked by: tests/parts/test_drum_brake.c, tests/reference/shigley_16_2.c */
struct pressure drum_lining_pressure(const struct drum *drum, struct shoe_torques torques);

/* Whether the factor at that friction is refused because a shoe would be too near to locking by
 * itself, all else being known. */
bool drum_near_lock(const struct drum *drum, struct number friction, bool forward);

/* How many pistons its cylinders have; 0 when the layout is not said. One piston is a cylinder
 * that slides: its body works the other shoe with the same force. */
int drum_pistons(const struct drum *drum);

/* Torque of the brake.
 *
 *   drum    as for the factor; bore m > 0; efficiency over 0 and up to 1; threshold Pa >= 0
 *   p       Pa gauge, >= 0
 *   gives   factor * efficiency * (p - threshold) * area of a bore * radius, none below the
 *           threshold, N m; NaN outside
 *
 * Checked by: tests/reference/constructed_parts.c
 */
struct torque drum_torque(const struct drum *drum, struct pressure p, bool forward);
/* The same with a factor that is at hand already, for a sweep over pressures. */
struct torque drum_torque_by_factor(const struct drum *drum, struct pressure p, double factor);

/* Travel of a cylinder tip for each millimetre that the drum stands off the middle of the lining:
 * (pin + tip) / pin, over the sine of the angle from the pin to the lining's middle where a pinned
 * shoe's lining is not midway. Both shoes of a duo-servo brake turn about the link between them,
 * taken as far from the centre as the cylinder. NaN outside the ranges of the factor.
 *
 * Source: the shoe is rigid and turns about its pin, or about where it leans on its abutment.
 * Checked by: tests/parts/test_drum_brake.c
 */
double drum_tip_ratio(const struct drum *drum);

/* How far a warm drum's radius has grown beyond that at 20 degC: 11.5e-6/K * radius * rise, m.
 * Below 0 in the cold. Source: grey iron's expansion, from memory.
 * Checked by: tests/parts/test_drum_brake.c */
struct length drum_growth(const struct drum *drum, struct temperature at);
/* How far each piston goes farther in the hot drum: the tip ratio times the drum's growth less that
 * of shoes as warm as "shoes hot", which follow it (steel and iron alike), m. */
struct length drum_hot_tip_travel(const struct drum *drum);

/* Volume that a brake takes, by cause. */
struct drum_volumes {
    struct volume clearance, give;
};

/*   drum    cylinder; bore m > 0; threshold Pa >= 0; clearance and give m >= 0
 *   p       Pa gauge, >= 0
 *   as      how it stands; NULL: as described, adjusters set, cold
 *   gives   m3 for both shoes, in every layout of cylinders; NaN outside:
 *             clearance   two tips by the clearance; on an even way there below the threshold
 *             give        two tips by the give, growing with pressure
 *
 * Slack: adjusters were not set, three times the clearance (common practice, no source). Worn and
 * slack: never set again until the linings are worn out, so the clearance has grown by the wear
 * times the tip ratio, where that is more. Hot: the clearance grows by drum_hot_tip_travel, and the
 * lining's own squash doubles (from memory). Worn or new: that squash goes with the lining's
 * thickness. Lining squash is that of the linings as they are now, or new where their thickness is
 * not said. Source: what the tips must follow; give as a linear spring (from memory). Checked by:
 * tests/parts/test_drum_brake.c, tests/reference/constructed_parts.c
 */
struct drum_volumes drum_volume(const struct drum *drum, struct pressure p,
                                const struct brake_case *as);

#endif
