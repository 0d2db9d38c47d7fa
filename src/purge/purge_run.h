#ifndef FIRMPEDAL_PURGE_PURGE_RUN_H
#define FIRMPEDAL_PURGE_PURGE_RUN_H

#include <stdbool.h>

/* How one bleeds, and what that came to. */

enum bleed_method {
    METHOD_PEDAL,    /* a helper strokes the pedal */
    METHOD_PRESSURE, /* a kit presses on the reservoir */
    METHOD_VACUUM,   /* a pump draws at the nipple */
    METHOD_GRAVITY,  /* nipples open, the reservoir high */
    METHOD_REVERSE,  /* fluid pushed in at the nipple, up to the reservoir */
    METHOD_COUNT
};

/* How one bleeds. */
struct purge_way {
    enum bleed_method method;
    bool shut_under_pressure; /* pedal: the nipple is shut before the pedal stops, so what closed
                                 branches took up flows back; false: held open till flow stops */
    double stroke;            /* m3 that one pedal stroke delivers, > 0 */
    double stroke_time;       /* s, of the stroke, and of the pause after it */
    double pause_time;
    double push;      /* Pa at the master: what a kit gives, or rho g h of gravity; not for PEDAL */
    double reservoir; /* m3 in it when full; NaN: not known */
    double reserve;   /* m3 that must stay in it, so that it never runs dry */
    int clear_strokes;   /* after the last air, at each nipple */
    int most_strokes;    /* at one nipple, before one gives up */
    double tee_pressure; /* Pa; over 0: closed branches breathe at this pressure instead of that
                            which the flow makes, and the way itself does not; for tests */
};

/* One opening of one nipple, or of two at once. */
struct purge_turn {
    int nipple;
    int with; /* opened together with it; -1 */
};

/* What one turn came to. */
struct purge_done {
    double strokes;   /* of the pedal, or the same volume by another method */
    double fluid;     /* m3 that went in, so came out as fluid and air; without the clear strokes */
    double waste;     /* m3 of it that came out as fluid */
    double clear;     /* m3 of the clear strokes */
    double air_out;   /* m3 */
    double air_left;  /* m3 in the whole net after it */
    double time;      /* s */
    double reservoir; /* m3 in it after the turn; NaN */
    int top_ups;      /* how often it was topped up during the turn */
    bool gave_up;     /* most_strokes were not enough */
};

/* A point of the curve: air left against fluid drawn. */
struct purge_point {
    double strokes, fluid, air;
    int turn;
};

struct purge_result {
    struct purge_done *turns; /* one a turn */
    int turn_count;
    double fluid;                      /* m3 that went in, in all, without the clear strokes */
    double waste;                      /* m3 of it that came out as fluid */
    double strokes;                    /* in all, without the clear strokes */
    double air_left;                   /* m3 that could have left, in all */
    double trapped;                    /* m3 that cannot leave through any nipple */
    double *air_in_legs, *air_in_pots; /* m3 left, by leg and pot */
    struct purge_point *curve;         /* NULL unless asked for */
    int point_count;
    double worst_balance; /* greatest difference that the bookkeeping of volumes ever showed, m3 */
};

#endif
