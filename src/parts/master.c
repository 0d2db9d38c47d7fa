#include "parts/master.h"

#include <math.h>

#include "units/constants.h"

struct area circle_area(struct length diameter)
{
    if (!(diameter.m > 0))
        return (struct area){NAN};
    return (struct area){PI / 4 * diameter.m * diameter.m};
}

struct area master_area(const struct master *master)
{
    return circle_area(master->bore);
}

struct pressure master_pressure(const struct master *master, struct force rod)
{
    double efficiency = master->efficiency.value;
    if (!(rod.n >= 0) || !(efficiency > 0 && efficiency <= 1))
        return (struct pressure){NAN};
    return (struct pressure){efficiency * rod.n / master_area(master).m2};
}
