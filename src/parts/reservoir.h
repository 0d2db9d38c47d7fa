#ifndef FIRMPEDAL_PARTS_RESERVOIR_H
#define FIRMPEDAL_PARTS_RESERVOIR_H

#include "units/quantity.h"

struct reservoir {
    struct volume capacity; /* key "capacity": between the MAX mark and empty */
    struct volume usable;   /* "usable": between MAX and MIN marks; assumed a third of capacity */
    int fluid;              /* "fluid": which fluid section, when there are several; -1 */
};

#endif
