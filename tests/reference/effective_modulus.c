/* Chapter 28 of a handbook (Taylor and Francis, ISBN 9781482269895), the passage around equation
 * 4-49: liquid, air and pipe in series. The inputs were read; the printed total was not visible.
 * Steel pipe ten times as wide as its wall is thick (30e6 psi), liquid of 250 000 psi, one part of
 * air in a hundred at the working pressure of 500 psi absolute. Sums by hand: 4.0e-6, 2.0e-5 and
 * 3.333e-7 1/psi, in all 41 096 psi.
 *
 * The share of air is the one at working pressure: at one atmosphere there is more of it, by
 * Boyle. The handbook takes a thin wall; ours is thick with closed ends, which makes it 6 %
 * stiffer: a thousandth of the total. */
#include "parts/fluid.h"
#include "parts/pipe.h"

#include "support/near.h"
#include "support/outside.h"

#define PSI        6894.757293168361
#define ATMOSPHERE 101325.0

static const struct outside book = {
    "B5", "Handbook chapter, Taylor and Francis, ISBN 9781482269895, chapter 28, about eq. 4-49",
    "inputs read"};

/* Both give way per psi about a pressure, the other by a small step. */
static double air_gives_way(double absolute_psi)
{
    double p = absolute_psi * PSI - ATMOSPHERE, step = 1e-3 * PSI;
    struct volume at_rest = {0.01 * absolute_psi * PSI / ATMOSPHERE};
    return (air_compression(at_rest, (struct pressure){p + step}).m3 -
            air_compression(at_rest, (struct pressure){p - step}).m3) /
           2e-3;
}

static double liquid_gives_way(void)
{
    return fluid_compression((struct volume){1}, (struct pressure){250e3 * PSI}, 0,
                             (struct pressure){PSI})
        .m3;
}

static double wall_gives_way(void)
{
    struct length outer = {10}, inner = {8};
    struct pressure steel = {30e6 * PSI}, p = {PSI};
    return 2 * pipe_hoop_strain(inner, outer, steel, 0.3, p) +
           pipe_axial_strain(inner, outer, steel, 0.3, p);
}

static void air_makes_most_of_the_give(void **state)
{
    (void)state;
    double air = air_gives_way(500), liquid = liquid_gives_way(), wall = wall_gives_way();
    outside_again(&book, "air", "1/psi", 2.0e-5, air, 1e-11);
    outside_again(&book, "liquid", "1/psi", 4.0e-6, liquid, 1e-15);
    /* a thin wall in the sum, a thick one here */
    outside_again(&book, "wall", "1/psi", 3.333e-7, wall, 3.333e-7 * 0.07);
    outside_again(&book, "modulus of all three", "psi", 41096, 1 / (air + liquid + wall),
                  41096 * 0.001);
    outside_again(&book, "share of the air", "%", 82, 100 * air / (air + liquid + wall), 0.5);
    outside_again(&book, "share of the wall", "%", 1.4, 100 * wall / (air + liquid + wall), 0.15);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(air_makes_most_of_the_give)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
