#ifndef FIRMPEDAL_PARTS_BRAKE_CASE_H
#define FIRMPEDAL_PARTS_BRAKE_CASE_H

#include <stdbool.h>

/* How a brake stands when it is pressed: the same part has other clearances new, worn, hot. */

enum linings { LININGS_AS_SAID, LININGS_NEW, LININGS_WORN };

struct brake_case {
    enum linings linings; /* as described, all new, or all worn to their limit */
    bool slack;           /* shoe adjusters are not set */
    bool hot;          /* drums grown, pads and linings soft; the fluid has its own temperature */
    bool knocked_back; /* the first stroke after run-out and bearing play pushed pistons back */
};

#endif
