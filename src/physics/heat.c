#include "physics/heat.h"

#include <math.h>

#include "units/constants.h"

#define INTO_IRON     0.95
#define CONDUCTIVITY  50.0   /* W/(m K) */
#define DENSITY       7200.0 /* kg/m3 */
#define SPECIFIC_HEAT 460.0  /* J/(kg K), for the warm layer */
#define THICK         0.01   /* diffusivity * time / depth^2: no warmth comes to the far side */

/* Specific heat of grey iron, J/(kg K), on a line through two temperatures, degC. */
#define COOL      20.0
#define COOL_HEAT 420.0
#define WARM      300.0
#define WARM_HEAT 550.0

struct energy heat_of_stop(struct mass mass, struct speed from, struct speed to,
                           struct share rotating)
{
    if (!(mass.kg > 0) || !(to.m_s >= 0) || !(from.m_s >= to.m_s) || !(rotating.of_1 >= 0))
        return (struct energy){NAN};
    double straight = mass.kg / 2 * (from.m_s * from.m_s - to.m_s * to.m_s);
    return (struct energy){straight * (1 + rotating.of_1)};
}

struct warming heat_rise(struct energy heat, struct mass mass, double specific_heat)
{
    if (!(mass.kg > 0) || !(specific_heat > 0))
        return (struct warming){NAN};
    return (struct warming){heat.j / (mass.kg * specific_heat)};
}

struct warming heat_rise_iron(struct energy heat, struct mass mass, struct temperature at)
{
    const double slope = (WARM_HEAT - COOL_HEAT) / (WARM - COOL);
    double c = COOL_HEAT + slope * (at.celsius - COOL);
    if (!(heat.j >= 0) || !(mass.kg > 0) || !(c > 0))
        return (struct warming){NAN};
    /* c x + slope x^2/2 = heat/mass, put so that little heat loses no digits */
    double per_kg = heat.j / mass.kg;
    return (struct warming){2 * per_kg / (c + sqrt(c * c + 2 * slope * per_kg))};
}

/* A slab under a steady flow on one face: warming of that face, its growth, and its sum over time,
 * all in parts of flow * depth / conductivity; tau: diffusivity * time / depth^2. */
struct slab {
    double rise, growth, sum;
};

static struct slab slab_at(double tau)
{
    const double pi2 = PI * PI;
    struct slab slab = {tau + 1.0 / 3, 1, tau * tau / 2 + tau / 3 - 1.0 / 45};
    for (int n = 1; n * n * pi2 * tau < 40; n++) {
        double gone = exp(-n * n * pi2 * tau), n2 = n * n;
        slab.rise -= 2 / pi2 * gone / n2;
        slab.growth += 2 * gone;
        slab.sum += 2 / (pi2 * pi2) * gone / (n2 * n2);
    }
    return slab;
}

/* The most of it under a flow that falls evenly to nothing in the time last: between half of it, as
 * in thick iron, and all of it, as in thin. */
static double slab_peak(double last)
{
    double low = last / 2, high = last;
    for (int i = 0; i < 40; i++) {
        double middle = (low + high) / 2;
        struct slab slab = slab_at(middle);
        if (slab.growth * last > slab.rise)
            low = middle;
        else
            high = middle;
    }
    struct slab slab = slab_at(low);
    return slab.rise - slab.sum / last;
}

struct warming heat_surface_rise(struct energy heat, struct area swept, struct length depth,
                                 struct duration stop)
{
    if (!(heat.j >= 0) || !(swept.m2 > 0) || !(depth.m > 0) || !(stop.s > 0))
        return (struct warming){NAN};
    double flow = 2 * heat.j / (swept.m2 * stop.s);
    double last = CONDUCTIVITY / (DENSITY * SPECIFIC_HEAT) * stop.s / (depth.m * depth.m);
    if (last < THICK) {
        double most = 4 / (3 * sqrt(2 * PI));
        return (struct warming){most * flow *
                                sqrt(stop.s / (CONDUCTIVITY * DENSITY * SPECIFIC_HEAT))};
    }
    return (struct warming){flow * depth.m / CONDUCTIVITY * slab_peak(last)};
}

/* What the brakes' data say of heat, disc or drum. */
struct warmed {
    struct mass mass;
    struct area swept;
    struct length depth; /* of iron behind each bit of it */
    double cooling_s, to_fluid;
};

static struct warmed warmed_of(const struct part *part)
{
    if (part->kind == KIND_DISC) {
        const struct disc *disc = &part->as.disc;
        double outer = disc->disc_outer.m / 2, inner = outer - disc->pad_height.m;
        return (struct warmed){disc->mass,
                               {inner >= 0 ? 2 * PI * (outer * outer - inner * inner) : NAN},
                               {disc->thickness.m / 2},
                               disc->cooling.s,
                               disc->heat_to_fluid.of_1};
    }
    const struct drum *drum = &part->as.drum;
    return (struct warmed){drum->mass,
                           {PI * drum->diameter.m * drum->lining_width.m},
                           {DRUM_WALL},
                           drum->cooling.s,
                           drum->heat_to_fluid.of_1};
}

static double after_stops(struct energy heat, const struct warmed *warmed, double apart_s)
{
    if (!(warmed->cooling_s > 0) || !(apart_s > 0))
        return NAN;
    double kept = exp(-apart_s / warmed->cooling_s), celsius = HEAT_AIR;
    for (int stop = 0; stop < HEAT_STOPS; stop++) {
        celsius = HEAT_AIR + (celsius - HEAT_AIR) * kept;
        celsius += heat_rise_iron(heat, warmed->mass, (struct temperature){celsius}).k;
    }
    return celsius;
}

static struct duration time_of_stop(const struct vehicle *vehicle, struct acceleration braked)
{
    double most = vehicle->tyre_grip.value * STANDARD_GRAVITY;
    double slowed = braked.m_s2 > most ? most : braked.m_s2;
    return (struct duration){slowed > 0 ? vehicle->hot_stop_from.m_s / slowed : NAN};
}

struct heat_state heat_of_brake(const struct system *system, const struct solution *solution,
                                int brake)
{
    const struct vehicle *vehicle = system_vehicle(system);
    const struct warmed warmed = warmed_of(&system->parts[brake]);
    double all = solution->front.n + solution->rear.n;
    struct energy whole =
        heat_of_stop(vehicle->mass, vehicle->hot_stop_from, (struct speed){0}, vehicle->rotating);
    struct heat_state state;
    state.heat.j = all > 0 ? whole.j * solution->brakes[brake].force.n / all : NAN;
    struct energy iron = {INTO_IRON * state.heat.j};
    state.rise = heat_rise_iron(iron, warmed.mass, (struct temperature){HEAT_AIR});
    state.surface = heat_surface_rise(iron, warmed.swept, warmed.depth,
                                      time_of_stop(vehicle, solution->deceleration));
    state.after_ten.celsius = after_stops(iron, &warmed, vehicle->hot_stop_gap.s);
    state.fluid.celsius = HEAT_AIR + warmed.to_fluid * (state.after_ten.celsius - HEAT_AIR);
    return state;
}
