#include "parts/parking_brake.h"

#include <math.h>

struct force parking_cable_force(const struct parking *parking)
{
    double loss = parking->cable_loss.of_1;
    if (!(parking->effort.n >= 0) || !(parking->lever_ratio.value > 0) ||
        !(loss >= 0 && loss < 1) || parking->works.count == 0)
        return (struct force){NAN};
    double pull = parking->effort.n * parking->lever_ratio.value * (1 - loss);
    return (struct force){pull / (double)parking->works.count};
}

struct force parking_shoe_force(const struct parking *parking)
{
    if (!(parking->shoe_ratio.value > 0))
        return (struct force){NAN};
    return (struct force){parking_cable_force(parking).n * parking->shoe_ratio.value};
}
