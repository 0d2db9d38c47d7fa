#ifndef FIRMPEDAL_TESTS_SUPPORT_DRIVEN_CAR_H
#define FIRMPEDAL_TESTS_SUPPORT_DRIVEN_CAR_H

#include "network/graph.h"
#include "support/build_car.h"

/* The usual small car of build_car.h with all that the figures need: pedals, servo, fluid, bores,
 * weights. What is not said is assumed as the reader would; no part's data are anybody's car. */
struct driven_car {
    struct car car;
    struct usual_car usual;
    int brake_pedal, clutch_pedal, servo, fluid, parking;
    struct network *network;
};

struct driven_car driven_start(void);
void driven_finish(struct driven_car *driven);

/* Says a value by its key's name; the origin becomes given. */
void driven_say(struct driven_car *driven, int part, const char *key, double value);
/* Makes a key of a part not said at all, even where a value would be assumed. */
void driven_unsay(struct driven_car *driven, int part, const char *key);
/* Assumes what is left and builds the network again. */
void driven_settle(struct driven_car *driven);

/* Puts names and indices of what a part works into a part_names. */
struct part_names car_names(struct car *car, int count, const int *parts);

#endif
