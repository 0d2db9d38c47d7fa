#include "parts/vehicle.h"

#include <math.h>

#include "units/constants.h"

struct axle_loads vehicle_axle_loads(const struct vehicle *vehicle, double z)
{
    struct axle_loads loads = {{NAN}, {NAN}};
    double share = vehicle->front_share.of_1;
    if (!(vehicle->mass.kg > 0) || !(share > 0 && share < 1) || !(vehicle->wheelbase.m > 0) ||
        !(vehicle->centre_height.m >= 0) || !(z >= 0) || !isfinite(z))
        return loads;
    double weight = vehicle->mass.kg * STANDARD_GRAVITY;
    double front = weight * (share + vehicle->centre_height.m / vehicle->wheelbase.m * z);
    /* From here on the rear wheels hang in the air: they cannot pull at the road. */
    if (front > weight)
        front = weight;
    loads.front.n = front;
    loads.rear.n = weight - front;
    return loads;
}

struct acceleration vehicle_lifts_at(const struct vehicle *vehicle)
{
    double share = vehicle->front_share.of_1;
    double chi = vehicle->centre_height.m / vehicle->wheelbase.m;
    if (!(share > 0 && share < 1) || !(chi >= 0))
        return (struct acceleration){NAN};
    return (struct acceleration){STANDARD_GRAVITY * (1 - share) / chi};
}

struct length vehicle_stopping_distance(struct speed from, struct acceleration steady,
                                        struct duration reaction, struct duration build_up)
{
    double v = from.m_s, a = steady.m_s2, rise = build_up.s;
    if (!(v >= 0) || !(a > 0) || !(reaction.s >= 0) || !(rise >= 0))
        return (struct length){NAN};
    double before = v * reaction.s;
    /* So slow that it stands before the brakes are fully on: v = a t^2 / (2 rise). */
    if (v < a * rise / 2)
        return (struct length){before + 2.0 / 3.0 * v * sqrt(2 * v * rise / a)};
    return (struct length){before + v * rise / 2 + v * v / (2 * a) - a * rise * rise / 24};
}
