#ifndef FIRMPEDAL_TESTS_REPORT_DRAWN_CAR_H
#define FIRMPEDAL_TESTS_REPORT_DRAWN_CAR_H

#include <stdbool.h>
#include <stdio.h>

/* Cars made up at random for the drawing: what matters is what stands where and how it is piped,
 * not the figures. One circuit, front and rear, diagonal, doubled front calipers, two masters on a
 * balance bar, clutch only, motorcycles; two or three axles, both sides or one; valves in any run,
 * tees, blocks, unions and brackets; no, direct and remote servos; nipples at brakes, valves and
 * joints; short names and names as long as a header may be; hoses of every age.
 *
 * The number decides all of it. driver_left gives the same car with the driver on the left and
 * every side changed over. */
void drawn_car(int number, bool driver_left, FILE *description);

/* The valve that stands in only one of the runs of the number's car, wherever that is; for cars
 * with one valve. Writes a plain car of front and rear circuit with one valve in its run `run`.
 *   gives   false when there is no such run */
bool car_with_one_valve(int run, const char *type, bool driver_left, FILE *description);

#endif
