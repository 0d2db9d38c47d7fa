#include "report/paint/inks.h"

struct colour ink_colour(enum ink ink)
{
    static const struct colour colours[INK_COUNT] = {
        [INK_NONE] = {1, 1, 1},
        [INK_BLACK] = {0, 0, 0},
        [INK_DARK] = {0.22, 0.22, 0.22},
        [INK_GREY] = {0.42, 0.42, 0.42},
        [INK_LIGHT] = {0.72, 0.72, 0.72},
        [INK_PALE] = {0.92, 0.92, 0.92},
        [INK_WHITE] = {1, 1, 1},
        [INK_FIRST] = {0.04, 0.20, 0.46},
        [INK_SECOND] = {0.62, 0.16, 0.05},
        [INK_THIRD] = {0.10, 0.38, 0.18},
        [INK_FOURTH] = {0.36, 0.16, 0.50},
    };
    return colours[ink];
}

const double *dash_lengths(enum dash dash)
{
    static const double dashes[DASH_COUNT][DASH_MOST] = {
        [DASH_SOLID] = {0},
        [DASH_LONG] = {5, 2.2, 0},
        [DASH_CHAIN] = {5.5, 2, 1, 2, 0},
        [DASH_DOUBLE_CHAIN] = {5.5, 2, 1, 2, 1, 2, 0},
        [DASH_TRIPLE_CHAIN] = {5.5, 2, 1, 2, 1, 2, 1, 2, 0},
        [DASH_LONG_SHORT] = {5.5, 1.8, 2.4, 1.8, 0},
        [DASH_PAIRS] = {1, 1, 1, 3, 0},
        [DASH_SHORT] = {2.6, 1.8, 0},
        [DASH_DOTS] = {1, 1.6, 0},
    };
    return dashes[dash];
}
