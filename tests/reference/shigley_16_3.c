/* R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, chapter 16, example
 * 16-3: caliper with annular pads. From memory.
 *
 * Pads 3.875 to 5.50 in over 108 deg, friction 0.37, one cylinder of 1.5 in a pad, 13 000 lbf in.
 * Printed: radius 4.688 in, 3748 lbf, 2121 psi. By uniform pressure, recomputed: 4.73444 in,
 * 3710.587 lbf, 2099.763 psi. */
#include "parts/disc_brake.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define INCH 0.0254
#define LBF  4.4482216152605
#define PSI  (LBF / (INCH * INCH))

static const struct outside book = {
    "C1", "Budynas and Nisbett, Shigley's Mechanical Engineering Design, example 16-3",
    "from memory"};

static struct disc caliper(void)
{
    return (struct disc){.caliper = CALIPER_FIXED,
                         .bores = {2, {1.5 * INCH}},
                         .inlets = 1,
                         .disc_outer = {11.0 * INCH},
                         .pad_height = {1.625 * INCH},
                         .pad_arc = {108 * 3.14159265358979323846 / 180},
                         .effective_radius = {NAN},
                         .friction = {0.37},
                         .efficiency = {1},
                         .threshold = {0}};
}

static void check_against(struct disc disc, double psi, double lbf)
{
    struct pressure p[2] = {{psi * PSI}, {NAN}};
    outside_again(&book, "torque at the pressure", "lbf in", 13000,
                  disc_torque(&disc, p).nm / (LBF * INCH), 1e-6 * 13000);
    outside_again(&book, "clamp force at the pressure", "lbf", lbf, disc_clamp(&disc, p).n / LBF,
                  1e-6 * lbf);
}

static void worn_pads_need_2121_psi(void **state)
{
    (void)state;
    struct disc disc = caliper();
    outside_printed(&book, "radius, worn pads", "in", 4.688, disc_radius(&disc).m / INCH,
                    0.0005 + 1e-9);
    outside_again(&book, "radius, worn pads", "in", 4.6875, disc_radius(&disc).m / INCH, 1e-9);
    struct pressure printed[2] = {{2121 * PSI}, {NAN}};
    outside_printed(&book, "torque at 2121 psi", "lbf in", 13000,
                    disc_torque(&disc, printed).nm / (LBF * INCH), 13000 * 0.5 / 2121);
    outside_printed(&book, "clamp force at 2121 psi", "lbf", 3748,
                    disc_clamp(&disc, printed).n / LBF, 0.5);
    check_against(disc, 2120.791, 3747.748);
    /* worn: force = angle * pressure * ri * (ro - ri), and it acts at r (cos t1 - cos t2)/angle */
    double angle = disc.pad_arc.rad, start = 36 * acos(-1) / 180;
    outside_printed(&book, "greatest pressure on a pad", "psi", 315.8,
                    disc_pad_pressure(&disc, printed).greatest.pa / PSI, 0.1);
    outside_printed(&book, "where the force acts", "in", 4.024,
                    disc_radius(&disc).m / INCH * (cos(start) - cos(start + angle)) / angle, 5e-4);
}

static void new_pads_need_a_little_less(void **state)
{
    (void)state;
    struct disc disc = caliper();
    disc.contact = PADS_NEW;
    outside_again(&book, "radius, new pads", "in", 4.73444, disc_radius(&disc).m / INCH, 5e-6);
    check_against(disc, 2099.763, 3710.587);
    struct pressure p[2] = {{2099.763 * PSI}, {NAN}};
    outside_again(&book, "pressure on a new pad, everywhere", "psi", 258.432,
                  disc_pad_pressure(&disc, p).mean.pa / PSI, 1e-3);
    near(disc_pad_pressure(&disc, p).greatest.pa, disc_pad_pressure(&disc, p).mean.pa, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(worn_pads_need_2121_psi),
        cmocka_unit_test(new_pads_need_a_little_less),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
