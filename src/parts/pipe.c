#include "parts/pipe.h"

#include <math.h>

#include "parts/master.h"

struct length pipe_inside(const struct pipe *pipe)
{
    double inside = pipe->size.m - 2 * pipe->wall.m;
    if (!(pipe->size.m > 0) || !(pipe->wall.m > 0) || !(inside > 0))
        return (struct length){NAN};
    return (struct length){inside};
}

struct volume pipe_volume(const struct pipe *pipe)
{
    if (!(pipe->length.m >= 0))
        return (struct volume){NAN};
    return (struct volume){circle_area(pipe_inside(pipe)).m2 * pipe->length.m};
}

static bool strain_arguments_fine(struct length inner, struct length outer, struct pressure modulus,
                                  double poisson, struct pressure p)
{
    return inner.m > 0 && outer.m > inner.m && modulus.pa > 0 && poisson >= 0 && poisson <= 0.5 &&
           p.pa >= 0;
}

double pipe_hoop_strain(struct length inner, struct length outer, struct pressure modulus,
                        double poisson, struct pressure p)
{
    if (!strain_arguments_fine(inner, outer, modulus, poisson, p))
        return NAN;
    double a2 = inner.m * inner.m, b2 = outer.m * outer.m;
    return p.pa * ((1 + poisson) * b2 + (1 - 2 * poisson) * a2) / (modulus.pa * (b2 - a2));
}

double pipe_axial_strain(struct length inner, struct length outer, struct pressure modulus,
                         double poisson, struct pressure p)
{
    if (!strain_arguments_fine(inner, outer, modulus, poisson, p))
        return NAN;
    double a2 = inner.m * inner.m, b2 = outer.m * outer.m;
    return p.pa * (1 - 2 * poisson) * a2 / (modulus.pa * (b2 - a2));
}

struct volume pipe_swelling(const struct pipe *pipe, struct pressure p)
{
    /* Elastic constants from memory: low carbon steel; copper with 10 % nickel; copper. */
    bool copper = pipe->material == PIPE_COPPER, nickel = pipe->material == PIPE_COPPER_NICKEL;
    struct pressure modulus = {copper ? 117e9 : nickel ? 135e9 : 207e9};
    double poisson = copper || nickel ? 0.34 : 0.29;
    struct length inner = {pipe_inside(pipe).m / 2}, outer = {pipe->size.m / 2};
    double share = 2 * pipe_hoop_strain(inner, outer, modulus, poisson, p) +
                   pipe_axial_strain(inner, outer, modulus, poisson, p);
    return (struct volume){share * pipe_volume(pipe).m3};
}
