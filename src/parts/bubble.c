#include "parts/bubble.h"

#include <math.h>
#include <stdbool.h>

#include "units/constants.h"

#define HELD           0.842 /* Bond number */
#define NEAR_THRESHOLD 1.04  /* Bond number up to which Bretherton's law holds */
#define LEAST_EOTVOS   6.0   /* from which Viana's correlation holds */

enum { MOST_STEPS = 60 };

static bool known(const struct bubble_fluid *fluid)
{
    return fluid->density > 0 && fluid->viscosity > 0 && fluid->tension > 0;
}

double bubble_eotvos(const struct bubble_fluid *fluid, double bore)
{
    if (!(fluid->density > 0) || !(fluid->tension > 0) || !(bore > 0))
        return NAN;
    return fluid->density * STANDARD_GRAVITY * bore * bore / fluid->tension;
}

double bubble_bond(const struct bubble_fluid *fluid, double bore)
{
    return bubble_eotvos(fluid, bore) / 4;
}

double bubble_critical_bore(const struct bubble_fluid *fluid)
{
    if (!(fluid->density > 0) || !(fluid->tension > 0))
        return NAN;
    return 2 * sqrt(HELD * fluid->tension / (fluid->density * STANDARD_GRAVITY));
}

double bubble_capillary_near_threshold(double bond)
{
    if (isnan(bond))
        return NAN;
    const double over = bond - HELD;
    if (!(over > 0))
        return 0;
    /* With x = Ca^(1/9) it is 1.25 x^2 + 2.24 x^3 = over. The left side is convex, so that Newton's
     * steps come down to the root from above. */
    double x = fmin(sqrt(over / 1.25), cbrt(over / 2.24));
    for (int step = 0; step < MOST_STEPS; step++) {
        const double too_much = x * x * (1.25 + 2.24 * x) - over;
        const double next = x - too_much / (x * (2.5 + 6.72 * x));
        if (!(next < x))
            break;
        x = next;
    }
    return pow(x, 9);
}

/* a/(1 + (x/b)^c)^d */
static double blend(double x, double a, double b, double c, double d)
{
    return a / pow(1 + pow(x / b, c), d);
}

double bubble_froude(double eotvos, double buoyancy)
{
    if (!(eotvos > 0) || !(buoyancy > 0))
        return NAN;
    const double a = blend(eotvos, 0.34, 14.793, -3.06, 0.58);
    const double b = blend(eotvos, 31.08, 29.868, -1.96, -0.49);
    const double c = blend(eotvos, -1.45, 24.867, -9.93, -0.094);
    return blend(buoyancy, a, b, c, -1.0295 / c);
}

static double rise_by_froude(const struct bubble_fluid *fluid, double bore)
{
    const double speed = sqrt(STANDARD_GRAVITY * bore);
    return speed * bubble_froude(bubble_eotvos(fluid, bore), speed * bore / fluid->viscosity);
}

static double rise_near_threshold(const struct bubble_fluid *fluid, double bond)
{
    return bubble_capillary_near_threshold(bond) * fluid->tension /
           (fluid->density * fluid->viscosity);
}

double bubble_rise(const struct bubble_fluid *fluid, double bore)
{
    if (!known(fluid) || !(bore > 0))
        return NAN;
    const double bond = bubble_bond(fluid, bore);
    if (bond <= NEAR_THRESHOLD)
        return rise_near_threshold(fluid, bond);
    if (4 * bond >= LEAST_EOTVOS)
        return rise_by_froude(fluid, bore);
    const double bore_above = bore * sqrt(LEAST_EOTVOS / (4 * bond));
    const double slow = rise_near_threshold(fluid, NEAR_THRESHOLD);
    const double fast = rise_by_froude(fluid, bore_above);
    const double along = (bond - NEAR_THRESHOLD) / (LEAST_EOTVOS / 4 - NEAR_THRESHOLD);
    return slow * pow(fast / slow, along);
}

double bubble_rise_limit(double bore)
{
    return bore > 0 ? 0.46 * sqrt(STANDARD_GRAVITY * bore / 2) : NAN;
}

double bubble_rise_small(const struct bubble_fluid *fluid, double diameter)
{
    if (!known(fluid) || !(diameter >= 0))
        return NAN;
    return STANDARD_GRAVITY * diameter * diameter / (18 * fluid->viscosity);
}

double bubble_rise_small_mobile(const struct bubble_fluid *fluid, double diameter)
{
    return 1.5 * bubble_rise_small(fluid, diameter);
}

double bubble_film(double capillary)
{
    if (!(capillary >= 0))
        return NAN;
    const double root = cbrt(capillary);
    return 1.34 * root * root / (1 + 3.35 * root * root);
}

double bubble_film_share(double capillary)
{
    const double film = bubble_film(capillary);
    return film * (2 - film);
}

double bubble_carried(double capillary)
{
    return 1 / (1 - bubble_film_share(capillary));
}

double bubble_drag(const struct bubble_fluid *fluid, double bore, double capillary)
{
    if (!(fluid->tension > 0) || !(bore > 0) || !(capillary >= 0))
        return NAN;
    const double root = cbrt(3 * capillary);
    return 3.58 * root * root * fluid->tension / (bore / 2);
}

double bubble_trapped_share(double bore, double below)
{
    const double radius = bore / 2;
    if (!(radius > 0) || !(below >= 0) || !(below <= bore))
        return NAN;
    const double up = radius - below; /* of the hole over the middle */
    const double area = radius * radius * acos(up / radius) -
                        up * sqrt(fmax(2 * radius * below - below * below, 0));
    return fmin(area / (PI * radius * radius), 1);
}
