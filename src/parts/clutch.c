#include "parts/clutch.h"

#include <math.h>

#include "parts/master.h"

struct area slave_area(const struct slave *slave)
{
    double area = circle_area(slave->bore).m2;
    switch (slave->type) {
    case SLAVE_NOT_SAID:
        break;
    case SLAVE_OUTSIDE:
        return (struct area){area};
    case SLAVE_CONCENTRIC:
        if (!(slave->inner_bore.m < slave->bore.m))
            break;
        return (struct area){area - circle_area(slave->inner_bore).m2};
    }
    return (struct area){NAN};
}

double slave_ratio(const struct slave *slave)
{
    if (slave->type == SLAVE_CONCENTRIC)
        return 1;
    return slave->fork_ratio.value > 0 ? slave->fork_ratio.value : NAN;
}

struct pressure slave_pressure(const struct slave *slave)
{
    if (!(slave->release_force.n >= 0))
        return (struct pressure){NAN};
    return (struct pressure){slave->release_force.n / (slave_ratio(slave) * slave_area(slave).m2)};
}

struct length slave_bearing_travel(const struct slave *slave, struct volume delivered)
{
    if (!(delivered.m3 >= 0) || !(slave->play.m >= 0))
        return (struct length){NAN};
    double moved = delivered.m3 / slave_area(slave).m2 / slave_ratio(slave);
    if (isnan(moved))
        return (struct length){NAN};
    return (struct length){fmax(moved - slave->play.m, 0)};
}
