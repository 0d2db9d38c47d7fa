#include "advice/common/bores.h"

#include <math.h>

#include "advice/common/limits.h"
#define INCH 0.0254

static const struct bore_row rows[] = {
    {"1/2 in", {INCH / 2}},
    {"14 mm", {14e-3}},
    {"9/16 in", {INCH * 9 / 16}},
    {"15 mm", {15e-3}},
    {"5/8 in", {INCH * 5 / 8}},
    {"16 mm", {16e-3}},
    {"17 mm", {17e-3}},
    {"11/16 in", {INCH * 11 / 16}},
    {"0.700 in", {INCH * 0.7}},
    {"18 mm", {18e-3}},
    {"19 mm", {19e-3}},
    {"3/4 in", {INCH * 3 / 4}},
    {"20 mm", {20e-3}},
    {"13/16 in", {INCH * 13 / 16}},
    {"21 mm", {21e-3}},
    {"22 mm", {22e-3}},
    {"7/8 in", {INCH * 7 / 8}},
    {"23 mm", {23e-3}},
    {"15/16 in", {INCH * 15 / 16}},
    {"24 mm", {24e-3}},
    {"25 mm", {25e-3}},
    {"1 in", {INCH}},
    {"26 mm", {26e-3}},
    {"1-1/16 in", {INCH * 17 / 16}},
    {"28 mm", {28e-3}},
    {"1-1/8 in", {INCH * 18 / 16}},
    {"30 mm", {30e-3}},
    {"1-3/16 in", {INCH * 19 / 16}},
    {"1-1/4 in", {INCH * 20 / 16}},
    {"32 mm", {32e-3}},
    {"34 mm", {34e-3}},
    {"1-3/8 in", {INCH * 22 / 16}},
    {"36 mm", {36e-3}},
    {"38 mm", {38e-3}},
    {"1-1/2 in", {INCH * 24 / 16}},
    {"40 mm", {40e-3}},
    {"1-5/8 in", {INCH * 26 / 16}},
    {"42 mm", {42e-3}},
    {"43 mm", {43e-3}},
    {"1-3/4 in", {INCH * 28 / 16}},
    {"45 mm", {45e-3}},
    {"1-7/8 in", {INCH * 30 / 16}},
    {"48 mm", {48e-3}},
    {"2 in", {INCH * 2}},
    {"51 mm", {51e-3}},
    {"2-1/8 in", {INCH * 34 / 16}},
    {"54 mm", {54e-3}},
    {"57 mm", {57e-3}},
    {"2-1/4 in", {INCH * 36 / 16}},
    {"60 mm", {60e-3}},
};

const struct bore_row *bore_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

const struct bore_row *bore_nearest(struct length bore)
{
    const struct bore_row *nearest = NULL;
    if (!(bore.m > 0)) {
        return NULL;
    }
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (nearest == NULL || fabs(rows[i].bore.m - bore.m) < fabs(nearest->bore.m - bore.m)) {
            nearest = &rows[i];
        }
    }
    return nearest;
}

const struct bore_row *bore_twin(const struct bore_row *row)
{
    double within = limit_value("danger-pair-within");
    const struct bore_row *twin = NULL;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double apart = fabs(rows[i].bore.m - row->bore.m);
        if (&rows[i] == row || !(apart < within)) {
            continue;
        }
        if (twin == NULL || apart < fabs(twin->bore.m - row->bore.m)) {
            twin = &rows[i];
        }
    }
    return twin;
}
