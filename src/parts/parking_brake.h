#ifndef FIRMPEDAL_PARTS_PARKING_BRAKE_H
#define FIRMPEDAL_PARTS_PARKING_BRAKE_H

#include "parts/names.h"
#include "units/quantity.h"

struct parking {
    struct part_names works;   /* key "works": the brakes it acts on */
    struct number lever_ratio; /* "lever ratio": hand to cable */
    struct number shoe_ratio;  /* "shoe lever ratio": cable to shoe tip */
    struct share cable_loss;   /* "cable loss", assumed 25 % */
    struct force effort;       /* "effort" of the hand, assumed 400 N */
    int clicks;                /* "clicks" of the lever when it holds */
};

/* Pull of the cable at one of the brakes that the hand brake works.
 *
 *   parking   effort N >= 0; lever ratio > 0; cable loss, 0 and below 1; the brakes it works
 *   gives     effort * lever ratio * (1 - loss), shared evenly among the brakes, N; NaN outside
 *
 * Source: moment balance on the lever, and an equaliser that shares evenly.
 * Checked by: tests/parts/test_parking_brake.c
 */
struct force parking_cable_force(const struct parking *parking);

/* Force at the shoe (or pad) lever's short end: pull of the cable times shoe ratio, N; NaN unless
 * the ratio is > 0.
 * Checked by: tests/parts/test_parking_brake.c */
struct force parking_shoe_force(const struct parking *parking);

#endif
