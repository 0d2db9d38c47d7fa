#include "parts/disc_brake.h"

#include <math.h>
#include <stdbool.h>

#include "parts/master.h"

/* Squash and opening are given at this line pressure. */
#define REFERENCE_PRESSURE 10e6

static int inlet_count(const struct disc *disc)
{
    return disc->inlets >= 2 ? 2 : 1;
}

static double bores_area(struct bores bores)
{
    return bores.count > 0 ? bores.count * circle_area(bores.bore).m2 : NAN;
}

/* Area of all pistons that one inlet feeds, both sides together. */
static double piston_area(const struct disc *disc, int inlet)
{
    double first = bores_area(disc->bores);
    bool mixed = disc->second_bores.count > 0;
    double second = mixed ? bores_area(disc->second_bores) : 0;
    if (inlet == -1 || (inlet == 0 && inlet_count(disc) == 1))
        return first + second;
    if (inlet < 0 || inlet >= inlet_count(disc))
        return NAN;
    if (!mixed)
        return first / 2;
    return inlet == 0 ? first : second;
}

struct area disc_side_area(const struct disc *disc, int inlet)
{
    double all = piston_area(disc, inlet);
    switch (disc->caliper) {
    case CALIPER_NOT_SAID:
        break;
    case CALIPER_FIXED:
        return (struct area){all / 2};
    case CALIPER_SLIDING:
        return (struct area){all};
    }
    return (struct area){NAN};
}

struct length annulus_radius_wear(struct length inner, struct length outer)
{
    if (!(inner.m >= 0) || !(outer.m > inner.m))
        return (struct length){NAN};
    return (struct length){(inner.m + outer.m) / 2};
}

struct length annulus_radius_pressure(struct length inner, struct length outer)
{
    if (!(inner.m >= 0) || !(outer.m > inner.m))
        return (struct length){NAN};
    double i = inner.m, o = outer.m;
    /* (o^3 - i^3)/(o^2 - i^2) with the common factor taken out, so a thin ring loses no digits */
    return (struct length){2.0 / 3.0 * (o * o + o * i + i * i) / (o + i)};
}

struct length disc_radius(const struct disc *disc)
{
    if (!isnan(disc->effective_radius.m))
        return (struct length){disc->effective_radius.m > 0 ? disc->effective_radius.m : NAN};
    if (!(disc->pad_height.m > 0))
        return (struct length){NAN};
    struct length outer = {disc->disc_outer.m / 2};
    struct length inner = {outer.m - disc->pad_height.m};
    return annulus_radius_wear(inner, outer);
}

struct force disc_clamp(const struct disc *disc, const struct pressure p[2])
{
    double efficiency = disc->efficiency.value, clamp = 0;
    if (!(efficiency > 0 && efficiency <= 1) || !(disc->threshold.pa >= 0))
        return (struct force){NAN};
    for (int inlet = 0; inlet < inlet_count(disc); inlet++) {
        if (!(p[inlet].pa >= 0))
            return (struct force){NAN};
        double pressing = fmax(p[inlet].pa - disc->threshold.pa, 0);
        clamp += efficiency * pressing * disc_side_area(disc, inlet).m2;
    }
    return (struct force){clamp};
}

struct torque disc_torque(const struct disc *disc, const struct pressure p[2])
{
    if (!(disc->friction.value > 0))
        return (struct torque){NAN};
    return (struct torque){2 * disc->friction.value * disc_clamp(disc, p).n * disc_radius(disc).m};
}

/* A figure that must not be negative, else NaN. */
static double at_least_0(double value)
{
    return value >= 0 ? value : NAN;
}

struct disc_volumes disc_volume(const struct disc *disc, int inlet, struct pressure p,
                                const struct brake_case *as)
{
    (void)as;
    struct disc_volumes volumes = {{NAN}, {NAN}, {NAN}};
    if (!(p.pa >= 0) || !(disc->threshold.pa >= 0))
        return volumes;
    double all = piston_area(disc, inlet), side = disc_side_area(disc, inlet).m2;
    double taken_up = p.pa < disc->threshold.pa ? p.pa / disc->threshold.pa : p.pa > 0;
    double load = p.pa / REFERENCE_PRESSURE;
    if (isnan(side))
        return volumes;
    volumes.roll_back.m3 = all * at_least_0(disc->roll_back.m) * taken_up;
    /* Both pads give way; a sliding caliper's pistons follow both, a fixed one's their own. */
    volumes.pads.m3 = 2 * side * at_least_0(disc->pad_squash.m) * load;
    volumes.body.m3 = side * at_least_0(disc->body_opening.m) * load;
    return volumes;
}
