#include "parts/disc_brake.h"

#include <math.h>
#include <stdbool.h>

#include "parts/master.h"
#include "units/constants.h"

/* Squash and opening are given at this line pressure. */
#define REFERENCE_PRESSURE 10e6
enum { ARCS = 400 }; /* of a round pad, far more than a radius needs */
/* Squash of a hot pad, as a multiple of a cold one's; from memory. */
#define SQUASH_HOT 2

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

struct length round_pad_radius(struct length middle, struct length pad)
{
    if (!(pad.m > 0) || !(middle.m > pad.m))
        return (struct length){NAN};
    /* Arcs about the axis at middle + pad sin(u); even steps of u end no sooner at the edges. */
    double inverse = 0, step = PI / ARCS, x = pad.m / middle.m;
    for (int i = 0; i < ARCS; i++) {
        double u = -PI / 2 + (i + 0.5) * step, r = 1 + x * sin(u);
        double half_arc = acos((r * r + 1 - x * x) / (2 * r));
        inverse += 2 * half_arc * x * cos(u) * step;
    }
    return (struct length){middle.m * PI * x * x / inverse};
}

struct length disc_radius(const struct disc *disc)
{
    if (!isnan(disc->effective_radius.m))
        return (struct length){disc->effective_radius.m > 0 ? disc->effective_radius.m : NAN};
    if (!(disc->pad_height.m > 0))
        return (struct length){NAN};
    struct length outer = {disc->disc_outer.m / 2};
    struct length inner = {outer.m - disc->pad_height.m};
    switch (disc->contact) {
    case PADS_NOT_SAID:
    case PADS_WORN_IN:
        break;
    case PADS_NEW:
        return annulus_radius_pressure(inner, outer);
    case PADS_ROUND:
        return round_pad_radius((struct length){(inner.m + outer.m) / 2},
                                (struct length){disc->pad_height.m / 2});
    }
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

struct pad_pressure disc_pad_pressure(const struct disc *disc, const struct pressure p[2])
{
    double clamp = disc_clamp(disc, p).n, height = disc->pad_height.m, arc = disc->pad_arc.rad;
    double outer = disc->disc_outer.m / 2, inner = outer - height;
    if (disc->contact == PADS_ROUND)
        return (struct pad_pressure){{height > 0 ? clamp / circle_area(disc->pad_height).m2 : NAN},
                                     {NAN}};
    if (!(height > 0) || !(inner > 0) || !(arc > 0))
        return (struct pad_pressure){{NAN}, {NAN}};
    double mean = clamp / (arc / 2 * (outer * outer - inner * inner));
    double worn = clamp / (arc * inner * height);
    return (struct pad_pressure){{mean}, {disc->contact == PADS_NEW ? mean : worn}};
}

/* A figure that must not be negative, else NaN. */
static double at_least_0(double value)
{
    return value >= 0 ? value : NAN;
}

/* Thickness of a pad as it is now: as measured, or new. */
static double pad_now(const struct disc *disc)
{
    double now = isnan(disc->pad_left.m) ? disc->pad_new.m : disc->pad_left.m;
    return now > 0 ? now : NAN;
}

static double pad_as(const struct disc *disc, const struct brake_case *as)
{
    switch (as == NULL ? LININGS_AS_SAID : as->linings) {
    case LININGS_AS_SAID:
        break;
    case LININGS_NEW:
        return disc->pad_new.m > 0 ? disc->pad_new.m : NAN;
    case LININGS_WORN:
        return disc->pad_worn.m > 0 ? disc->pad_worn.m : NAN;
    }
    return pad_now(disc);
}

static bool as_described(const struct brake_case *as)
{
    return as == NULL || as->linings == LININGS_AS_SAID;
}

static double squash_as(const struct disc *disc, const struct brake_case *as)
{
    double squash = at_least_0(disc->pad_squash.m);
    if (!as_described(as))
        squash *= pad_as(disc, as) / pad_now(disc);
    return as != NULL && as->hot ? SQUASH_HOT * squash : squash;
}

/* The gaps that the pistons of one side's area must close before both pads touch. */
static double gaps(const struct disc *disc, const struct brake_case *as)
{
    bool fixed = disc->caliper == CALIPER_FIXED;
    double roll_back = at_least_0(disc->roll_back.m), rest = fixed ? 2 * roll_back : roll_back;
    if (as == NULL || !as->knocked_back)
        return rest;
    double swept = at_least_0(disc->run_out.m) + at_least_0(disc->bearing_play.m);
    double knocked = fixed ? swept + roll_back : swept;
    return knocked > rest || isnan(knocked) ? knocked : rest;
}

/* Squash and opening as a measured travel of the pistons has them. */
static struct disc by_travel(const struct disc *disc)
{
    struct disc measured = *disc;
    if (!(disc->piston_travel.m > 0))
        return measured;
    double pistons = disc->caliper == CALIPER_FIXED ? 2 : 1;
    double elastic = fmax(pistons * (disc->piston_travel.m - disc->roll_back.m), 0);
    measured.body_opening.m = fmin(elastic, disc->body_opening.m);
    measured.pad_squash.m = (elastic - measured.body_opening.m) / 2;
    return measured;
}

struct disc_volumes disc_volume(const struct disc *described, int inlet, struct pressure p,
                                const struct brake_case *as)
{
    struct disc measured = by_travel(described), *disc = &measured;
    struct disc_volumes volumes = {{NAN}, {NAN}, {NAN}};
    if (!(p.pa >= 0) || !(disc->threshold.pa >= 0))
        return volumes;
    double side = disc_side_area(disc, inlet).m2;
    double taken_up = p.pa < disc->threshold.pa ? p.pa / disc->threshold.pa : p.pa > 0;
    double load = p.pa / REFERENCE_PRESSURE;
    if (isnan(side))
        return volumes;
    volumes.roll_back.m3 = side * gaps(disc, as) * taken_up;
    /* Both pads give way; a sliding caliper's pistons follow both, a fixed one's their own. */
    volumes.pads.m3 = 2 * side * squash_as(disc, as) * load;
    volumes.body.m3 = side * at_least_0(disc->body_opening.m) * load;
    return volumes;
}

struct volume disc_fluid_followed(const struct disc *disc, int inlet, const struct brake_case *as)
{
    if (as_described(as))
        return (struct volume){0};
    double worn = pad_now(disc) - pad_as(disc, as);
    return (struct volume){2 * disc_side_area(disc, inlet).m2 * worn};
}
