#include "parts/clutch.h"

#include <math.h>

#include "parts/disc_brake.h"
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

struct force slave_release_force(const struct slave *slave, enum release_point point)
{
    double peak = slave->release_force.n, end = slave->release_end.n;
    double there = point == RELEASE_PEAK ? peak : end;
    if (isnan(there))
        there = point == RELEASE_PEAK ? end : peak;
    return (struct force){there >= 0 ? there : NAN};
}

struct pressure slave_pressure(const struct slave *slave, enum release_point point)
{
    double force = slave_release_force(slave, point).n, efficiency = slave->efficiency.value;
    if (!(efficiency > 0 && efficiency <= 1))
        return (struct pressure){NAN};
    return (struct pressure){force / (slave_ratio(slave) * slave_area(slave).m2 * efficiency)};
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

struct length clutch_lift(const struct slave *slave, struct length bearing_travel)
{
    double flex = slave->flex.of_1;
    if (!(bearing_travel.m >= 0) || !(slave->finger_ratio.value > 0) || !(flex >= 0 && flex <= 1))
        return (struct length){NAN};
    return (struct length){bearing_travel.m * (1 - flex) / slave->finger_ratio.value};
}

struct length clutch_face_clearance(const struct slave *slave, struct length lift)
{
    if (!(lift.m >= 0) || !(slave->cushion.m >= 0) || !(slave->plate_run_out.m >= 0))
        return (struct length){NAN};
    return (struct length){(lift.m - slave->cushion.m - slave->plate_run_out.m) / 2};
}

struct torque clutch_torque(const struct slave *slave, bool bedded)
{
    struct length inner = {slave->plate_inner.m / 2}, outer = {slave->plate_outer.m / 2};
    double radius = (bedded ? annulus_radius_wear : annulus_radius_pressure)(inner, outer).m;
    if (!(slave->clamp.n >= 0) || !(slave->plate_friction.value > 0))
        return (struct torque){NAN};
    return (struct torque){2 * slave->plate_friction.value * slave->clamp.n * radius};
}
