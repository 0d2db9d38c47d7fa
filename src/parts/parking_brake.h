#ifndef FIRMPEDAL_PARTS_PARKING_BRAKE_H
#define FIRMPEDAL_PARTS_PARKING_BRAKE_H

#include "parts/names.h"
#include "units/quantity.h"

struct parking {
    struct part_names works;    /* key "works": the brakes it acts on */
    struct number lever_ratio;  /* "lever ratio": hand to cable */
    struct number shoe_ratio;   /* "shoe lever ratio": cable to shoe tip */
    struct share cable_loss;    /* "cable loss", assumed 25 % */
    struct force effort;        /* "effort" of the hand, assumed 400 N */
    int clicks;                 /* "clicks" of the lever when it holds */
};

#endif
