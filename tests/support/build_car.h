#ifndef FIRMPEDAL_TESTS_SUPPORT_BUILD_CAR_H
#define FIRMPEDAL_TESTS_SUPPORT_BUILD_CAR_H

#include "base/arena.h"
#include "network/system.h"

/* Builds small cars by hand, part by part, for tests of network, physics and advice:
 *
 *     struct car car = car_start();
 *     int master = car_add(&car, KIND_MASTER, "brake master");
 *     int left = car_brake(&car, KIND_DISC, AXLE_FRONT, SIDE_LEFT);
 *     car_line(&car, master, 0, 0.5, 0.36, left, 0);
 *     ... car.system ...
 *     car_finish(&car);
 *
 * Parts are blank but for what is said here. Places are "car.ini", a line for each part and
 * connection, counted up. */
struct car {
    struct arena *arena;
    struct system *system;
    size_t part_room;
    size_t connection_room;
    int lines;
};

struct car car_start(void);
void car_finish(struct car *car);

/* Adds a blank part; gives its index. Pointers to parts hold until the next one is added. */
int car_add(struct car *car, enum part_kind kind, const char *name);
struct part *car_part(const struct car *car, int part);
/* A vehicle with these axles. */
int car_vehicle(struct car *car, enum axle_type front, enum axle_type rear);
/* A disc or drum, named "front left disc" and the like. */
int car_brake(struct car *car, enum part_kind kind, enum axle axle, enum side side);

/* Joins two ports directly. */
void car_join(struct car *car, int a, int a_chamber, int b, int b_chamber);
/* Joins two ports by a pipe or hose of a length (NaN: not known), named by number ("pipe 7");
 * gives the carrier. */
int car_pipe(struct car *car, int a, int a_chamber, double length, int b, int b_chamber);
int car_hose(struct car *car, int a, int a_chamber, double length, int b, int b_chamber);
/* Pipe, implied joint, hose; gives the hose. */
int car_line(struct car *car, int a, int a_chamber, double pipe, double hose, int b, int b_chamber);

/* A joint that sprang up in a run, "joint 7". */
int car_implied_joint(struct car *car);

/* The usual small car: independent front with discs, live rear axle with drums, tandem master
 * (chamber 0 front, 1 rear), tees "front tee" and "axle tee" (on the rear axle), one hose to each
 * front wheel and one to the axle; clutch with its own master and a hose. Lengths as given below.
 * Masters are of 20.64 mm and 15.87 mm; other data are blank. */
struct usual_car {
    int vehicle, master, front_tee, axle_tee;
    int front_left, front_right, rear_left, rear_right;
    int front_left_hose, front_right_hose, axle_hose;
    int clutch_master, slave, clutch_hose;
};
struct usual_car car_usual(struct car *car);

#endif
