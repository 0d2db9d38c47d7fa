#ifndef FIRMPEDAL_INPUT_ROUTE_H
#define FIRMPEDAL_INPUT_ROUTE_H

#include "input/car.h"

/* Turns the lines of [runs] into pipes, hoses, joints and connections. */
void route_runs(struct car *car);

/* After all connections: messages for joints to which one thing leads only, and for inlets of
 * valves and remote servos to which two do. */
void route_check(struct car *car);

#endif
