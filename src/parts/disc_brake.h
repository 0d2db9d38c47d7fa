#ifndef FIRMPEDAL_PARTS_DISC_BRAKE_H
#define FIRMPEDAL_PARTS_DISC_BRAKE_H

#include "units/quantity.h"

enum caliper_type { CALIPER_NOT_SAID, CALIPER_FIXED, CALIPER_SLIDING };

/* "2 of 48 mm": how many pistons in all, and their diameter. */
struct bores {
    int count;
    struct length bore;
};

struct disc {
    enum caliper_type caliper;   /* key "caliper" = fixed | sliding */
    struct bores bores;          /* "bore" = 2 of 48 mm: all pistons of the caliper */
    struct bores second_bores;   /* "second bore": pistons of another size */
    int inlets;                  /* "inlets": 1, or 2 for two circuits in one caliper; assumed 1 */
    struct length disc_outer;    /* "disc diameter" */
    struct length pad_height;    /* "pad height": radial */
    struct length effective_radius; /* "effective radius"; else (from the two above) */
    struct number friction;      /* "friction" of the pads, assumed 0.38 */
    struct number efficiency;    /* "efficiency", assumed 0.96 */
    struct pressure threshold;   /* "threshold", assumed 0.5 bar */
    struct length roll_back;     /* "roll back" of each piston, assumed 0.15 mm */
    struct length pad_squash;    /* "pad squash": of one pad at 10 MPa line pressure, assumed .15 mm */
    struct length body_opening;  /* "body opening" at 10 MPa, assumed 0.15 mm */
    struct length run_out;       /* "run out" of the disc */
    struct length thickness;     /* "disc thickness" */
    struct length least_thickness; /* "least thickness" cast in */
    struct length pad_left;      /* "pad left": friction material, thinnest pad */
};

/* Area that presses on one side: half the pistons of a fixed caliper, all of a sliding one; inlet
 * -1 for all, 0 or 1 for one circuit of two (first bores, second bores, or half each). */
struct area disc_side_area(const struct disc *disc, int inlet);
/* Effective radius: given, else uniform wear (ro + ri)/2 from disc diameter and pad height. */
struct length disc_radius(const struct disc *disc);
struct length annulus_radius_wear(struct length inner, struct length outer);
struct length annulus_radius_pressure(struct length inner, struct length outer);
/* Clamp force of the caliper: efficiency * (p - threshold) * area of one side, summed over inlets. */
struct force disc_clamp(const struct disc *disc, const struct pressure p[2]);
/* Torque: 2 mu N r_e. Source: friction on both faces. */
struct torque disc_torque(const struct disc *disc, const struct pressure p[2]);
/* Volume taken by one inlet at pressure p, by cause. */
struct disc_volumes {
    struct volume roll_back, pads, body;
};
struct disc_volumes disc_volume(const struct disc *disc, int inlet, struct pressure p);

#endif
