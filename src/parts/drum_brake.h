#ifndef FIRMPEDAL_PARTS_DRUM_BRAKE_H
#define FIRMPEDAL_PARTS_DRUM_BRAKE_H

#include <stdbool.h>

#include "units/quantity.h"

enum shoe_layout { SHOES_NOT_SAID, SHOES_LEADING_TRAILING, SHOES_TWO_LEADING, SHOES_DUO_SERVO };
enum cylinder_layout {
    CYLINDER_NOT_SAID,
    CYLINDER_TWO_PISTONS, /* fixed, a piston to each shoe */
    CYLINDER_ONE_EACH,    /* a single-piston cylinder for each shoe */
    CYLINDER_SLIDING      /* one piston, the body slides in the backplate and works the other shoe */
};
enum shoe_anchor { ANCHOR_NOT_SAID, ANCHOR_PIN, ANCHOR_SLIDING };
enum adjuster { ADJUSTER_NOT_SAID, ADJUSTER_CAM, ADJUSTER_WHEEL, ADJUSTER_WEDGE, ADJUSTER_SELF };

struct drum {
    enum shoe_layout shoes;        /* key "shoes" */
    enum cylinder_layout cylinder; /* "cylinder" */
    struct length bore;            /* "bore" of the wheel cylinders */
    struct length diameter;        /* "drum diameter", inside */
    struct length most_diameter;   /* "most diameter" cast in */
    enum shoe_anchor anchor;       /* "anchor" = pin | sliding, assumed sliding */
    struct length pin_distance;    /* "pin distance": pin (or abutment) to drum centre */
    struct length tip_distance;    /* "tip distance": cylinder line to drum centre */
    struct angle lining_start;     /* "lining start": from the pin, for pins */
    struct angle lining_arc;       /* "lining arc": angle covered by one lining, assumed 110 deg */
    struct number friction;        /* "friction" of the linings, assumed 0.38 */
    struct number efficiency;      /* "efficiency", assumed 0.96 */
    struct pressure threshold;     /* "threshold" of the shoe springs, assumed 2 bar */
    struct length clearance;       /* "clearance" at the cylinder tip when set, assumed 0.4 mm */
    struct length give;            /* "give": lining, shoe and drum at the tip at 10 MPa, 0.3 mm */
    enum adjuster adjuster;        /* "adjuster" */
    struct length bridge;          /* "bridge": length of the pipe between its two cylinders */
    struct length lining_left;     /* "lining left" */
};

/* Shoe factor T/(F r) of one shoe. NaN from 0.8 of the friction at which it locks. */
double shoe_factor_pin(double friction, double radius, double pin, double arm, double start,
                       double end, bool leading);
double shoe_factor_sliding(double friction, double radius, double tip, double abutment,
                           double half_arc, bool leading);
/* Friction at which a pinned leading shoe would lock by itself, G/H. */
double shoe_locks_at(double radius, double pin, double start, double end);
/* Sum of shoe factors with the same force on every tip, forward or in reverse. */
double drum_factor(const struct drum *drum, bool forward);
/* How many pistons the brake has, and the tip force area of one. */
int drum_pistons(const struct drum *drum);
/* Torque: factor * (p - threshold) * area * radius * efficiency. */
struct torque drum_torque(const struct drum *drum, struct pressure p, bool forward);
struct drum_volumes {
    struct volume clearance, give;
};
/* Volume taken at pressure p, all pistons. slack: adjusters not set (clearance times 3). */
struct drum_volumes drum_volume(const struct drum *drum, struct pressure p, bool slack);

#endif
