#ifndef FIRMPEDAL_TESTS_ADVICE_CHOICE_PLAIN_CAR_H
#define FIRMPEDAL_TESTS_ADVICE_CHOICE_PLAIN_CAR_H

#include "advice/choice/columns.h"

/* What a column says of a car, by solving the car as a whole: the network walked for every state,
 * efforts searched. */
struct column_car plain_car(const struct system *system, const struct network *network,
                            struct force effort, struct acceleration stop, struct solution *room);

#endif
