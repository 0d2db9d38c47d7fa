#ifndef FIRMPEDAL_INPUT_ENDS_H
#define FIRMPEDAL_INPUT_ENDS_H

#include "input/car.h"

/* Connects the pipes and hoses whose sections say from and to. One whose end leads nowhere, neither
 * by its section nor by a run, leaves a message. */
void ends_connect(struct car *car);

#endif
