/* Swelling of brake pipes, our own working, checked by another way: Lame's stresses from the pair
 * A + B/r^2, A - B/r^2 solved for the two walls in long double, Hooke's law at the inner wall, and
 * the volume of the strained bore itself in place of the sum of strains. */
#include "parts/pipe.h"

#include <stdio.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside own = {"E4", "Lame's cylinder on usual brake pipes, our own working",
                                   "constructed"};

static long double strained_share(long double a, long double b, long double e, long double nu,
                                  long double p)
{
    /* radial A - B/r^2: -p at a and 0 at b */
    long double big_b = p / (1 / (a * a) - 1 / (b * b)), big_a = big_b / (b * b);
    long double round = big_a + big_b / (a * a), radial = -p;
    long double along = p * a * a / (b * b - a * a);
    long double eps_round = (round - nu * (radial + along)) / e;
    long double eps_along = (along - nu * (round + radial)) / e;
    return (1 + eps_round) * (1 + eps_round) * (1 + eps_along) - 1;
}

/* Volume mL/m and E (dV/V)/p, as we worked them out for the usual tubes. */
static void usual_pipes_hold_and_swell_as_worked_out(void **state)
{
    (void)state;
    const struct {
        enum pipe_material material;
        double size, wall, ml_per_m, stiffness, e, nu;
    } rows[] = {
        {PIPE_STEEL, 4.7625e-3, 0.7112e-3, 8.76, 6.30, 207e9, 0.29},
        {PIPE_COPPER_NICKEL, 4.75e-3, 0.7e-3, 8.81, 6.28, 135e9, 0.34},
        {PIPE_STEEL, 6.35e-3, 0.7112e-3, 19.1, 8.39, 207e9, 0.29},
        {PIPE_STEEL, 7.9375e-3, 0.7112e-3, 33.3, 10.5, 207e9, 0.29},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct pipe pipe = {.length = {1},
                            .size = {rows[i].size},
                            .wall = {rows[i].wall},
                            .material = rows[i].material};
        double volume = pipe_volume(&pipe).m3;
        char what[80];
        const char *metal = rows[i].material == PIPE_STEEL ? "steel" : "copper-nickel";
        snprintf(what, sizeof what, "%s %g x %g mm, volume", metal, rows[i].size * 1e3,
                 rows[i].wall * 1e3);
        outside_again(&own, what, "mL/m", rows[i].ml_per_m, volume * 1e6,
                      rows[i].ml_per_m < 10 ? 0.005 : 0.05);
        double swelling = pipe_swelling(&pipe, (struct pressure){7e6}).m3;
        snprintf(what, sizeof what, "%s %g x %g mm, E dV/(V p)", metal, rows[i].size * 1e3,
                 rows[i].wall * 1e3);
        outside_again(&own, what, "-", rows[i].stiffness, rows[i].e * swelling / volume / 7e6,
                      rows[i].stiffness < 10 ? 0.005 : 0.05);
        long double share = strained_share(rows[i].size / 2 - rows[i].wall, rows[i].size / 2,
                                           rows[i].e, rows[i].nu, 7e6L);
        /* they part at the square of the strain, 1e-4 */
        near_rel(swelling / volume, (double)share, 3e-4);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(usual_pipes_hold_and_swell_as_worked_out)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
