#ifndef FIRMPEDAL_PARTS_VEHICLE_H
#define FIRMPEDAL_PARTS_VEHICLE_H

#include "base/date.h"
#include "units/quantity.h"

enum vehicle_type { VEHICLE_NOT_SAID, VEHICLE_CAR, VEHICLE_MOTORCYCLE };
enum driver_side { DRIVER_NOT_SAID, DRIVER_LEFT, DRIVER_RIGHT, DRIVER_MIDDLE };
enum engine_place { ENGINE_NOT_SAID, ENGINE_FRONT, ENGINE_REAR };
/* How the wheels of an axle are carried; decides what their brakes are mounted on. */
enum axle_type {
    AXLE_TYPE_NOT_SAID,
    AXLE_INDEPENDENT, /* each wheel by itself */
    AXLE_LIVE,        /* one driven beam; at the front a steered beam */
    AXLE_DEAD,        /* one beam without drive */
    AXLE_FORK,        /* motorcycle front */
    AXLE_ARM          /* motorcycle swinging arm */
};

struct vehicle {
    const char *title;           /* key "title": what the sheet calls the car */
    const char *registration;    /* the four: words for the sheet, nothing is computed of them */
    const char *chassis;         /* "chassis number" */
    const char *distance;        /* "distance", as the counter shows it */
    const char *workshop;        /* "workshop" */
    enum vehicle_type type;      /* "type", assumed car */
    struct date first_used;      /* "first used" */
    const char *country;         /* "country": whose published rules are asked; NULL: not said */
    enum driver_side driver;     /* "driver" = left | right; "steering wheel" understood */
    enum engine_place engine;    /* "engine" = front | rear, assumed front */
    enum axle_type front_axle;   /* "front axle" = independent | live | dead | fork */
    enum axle_type rear_axle;    /* "rear axle" = live | dead | independent | swinging arm */
    struct mass mass;            /* "mass", as it is driven, with driver */
    struct share front_share;    /* "weight on front": share of the weight on the front wheels */
    struct length wheelbase;     /* "wheelbase" */
    struct length centre_height; /* "height of mass centre" */
    struct length front_tyre;    /* "front tyre radius", rolling */
    struct length rear_tyre;     /* "rear tyre radius" */
    struct number tyre_grip;     /* "grip": assumed 0.8 dry road, common practice */
    struct number wet_grip;      /* "grip wet": assumed 0.4, common practice */
    struct number rolling;       /* "rolling resistance" over the weight, assumed 0: left out */
    struct length track;        /* "track": middle of left to middle of right tyre, assumed 1.3 m */
    struct speed stop_from;     /* "stop from": speed of the stopping distance, assumed 50 km/h */
    struct duration reaction;   /* "reaction time", assumed 1 s */
    struct speed hot_stop_from; /* "hot stop from": for the heat, assumed 100 km/h */
    struct duration hot_stop_gap; /* "hot stops apart": from one to the next, assumed 60 s */
    struct share rotating;        /* "rotating share": wheels and engine, assumed 0.05 */
    struct duration build_up;     /* "build-up time" of the brakes, assumed 0.3 s */
};

/* Loads that the road carries under the axles while the car brakes.
 *
 *   vehicle   mass kg > 0, weight on front 0 to 1 (neither end), wheelbase m > 0, height m >= 0
 *   z         braking rate, deceleration over gravity, -, >= 0
 *   gives     front and rear load, N, each for the whole axle; their sum is the weight. Past the
 *             rate at which the rear wheels lift the rear load is 0. NaN when an argument is
 *             outside its range
 *
 * Level road, straight line, no pitching of the body.
 * Source: moment balance about the tyre contacts.
 * Checked by: tests/reference/halliday_resnick_walker.c, tests/reference/gillespie.c
 */
struct axle_loads {
    struct force front;
    struct force rear;
};
struct axle_loads vehicle_axle_loads(const struct vehicle *vehicle, double z);

/* Deceleration at which the rear wheels leave the road: g psi/chi, m/s2, psi their share of the
 * weight, chi height of the mass centre over wheelbase; infinite with the centre on the ground, NaN
 * where one of them is not known. Level road, no pitching. Source and ranges as above.
 * Checked by: tests/parts/test_vehicle.c
 */
struct acceleration vehicle_lifts_at(const struct vehicle *vehicle);

/* Way to a standstill: reaction at full speed, deceleration rising evenly, then steady.
 *
 *   from       speed, m/s, >= 0
 *   steady     deceleration once it is built up, m/s2, > 0
 *   reaction   time until the brakes begin, s, >= 0
 *   build_up   time in which they build up, s, >= 0
 *   gives      distance, m: v t_r + v t_b/2 + v^2/(2a) - a t_b^2/24; where the car stands before
 *              the build-up ends, v t_r + 2/3 v sqrt(2 v t_b/a). NaN outside the ranges
 *
 * Source: the deceleration, integrated twice.
 * Checked by: tests/parts/test_vehicle.c, tests/reference/gillespie.c
 */
struct length vehicle_stopping_distance(struct speed from, struct acceleration steady,
                                        struct duration reaction, struct duration build_up);

#endif
