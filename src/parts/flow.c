#include "parts/flow.h"

#include <math.h>

#include "units/constants.h"

#define ABSOLUTE_ZERO -273.15

struct passage passage_usual(void)
{
    return (struct passage){.bore = 1.5e-3, .length = 8e-3, .loss = 2};
}

double flow_reynolds(double flow, double bore, double viscosity)
{
    if (!(flow >= 0) || !(bore > 0) || !(viscosity > 0))
        return NAN;
    return 4 * flow / (PI * bore * viscosity);
}

double flow_pipe(double density, double viscosity, double length, double bore)
{
    if (!(density > 0) || !(viscosity >= 0) || !(length >= 0) || !(bore > 0))
        return NAN;
    return 128 * density * viscosity * length / (PI * bore * bore * bore * bore);
}

struct resistance flow_passage(double density, double viscosity, const struct passage *passage)
{
    const double area = PI / 4 * passage->bore * passage->bore;
    const double linear = flow_pipe(density, viscosity, passage->length, passage->bore);
    if (isnan(linear) || !(passage->loss >= 0))
        return (struct resistance){NAN, NAN};
    return (struct resistance){linear, passage->loss * density / (2 * area * area)};
}

double flow_driven(struct resistance through, double push)
{
    if (!(through.linear >= 0) || !(through.square >= 0) || isnan(push))
        return NAN;
    if (!(push > 0))
        return 0;
    /* the root written so that a small square loses no digits */
    double against =
        through.linear + sqrt(through.linear * through.linear + 4 * through.square * push);
    return against > 0 ? 2 * push / against : INFINITY;
}

double flow_cost(struct resistance through, double flow)
{
    if (!(through.linear >= 0) || !(through.square >= 0) || !(flow >= 0))
        return NAN;
    return flow * (through.linear + through.square * flow);
}

double flow_head(double density, double height)
{
    return density > 0 ? density * STANDARD_GRAVITY * height : NAN;
}

double flow_old_in_outflow(double volumes)
{
    if (!(volumes >= 0))
        return NAN;
    return volumes > 0.5 ? 1 / (4 * volumes * volumes) : 1;
}

double flow_old_left(double volumes)
{
    if (!(volumes >= 0))
        return NAN;
    return volumes > 0.5 ? 1 / (4 * volumes) : 1 - volumes;
}

struct viscosity flow_viscosity(double a, double b, struct temperature at)
{
    const double kelvin = at.celsius - ABSOLUTE_ZERO;
    if (!(kelvin > 0) || isnan(a) || isnan(b))
        return (struct viscosity){NAN};
    return (struct viscosity){1e-6 * (pow(10, pow(10, a - b * log10(kelvin))) - 0.7)};
}

struct viscosity flow_viscosity_of(enum fluid_grade grade, struct temperature at)
{
    const struct fluid_row *row = fluid_row(grade);
    if (!row)
        return (struct viscosity){NAN};
    return flow_viscosity(row->walther_a, row->walther_b, at);
}
