/* V. B. Bhandari, Design of Machine Elements, example 12.13: round pads. Read in the FOSSEE
 * transcription. 1500 N m by three calipers of two pads, friction 0.35, 2 MPa, R/e 0.2; by the
 * book's table the friction acts at 0.9693 of e. Printed: pads of 28.625602 mm radius. */
#include "parts/disc_brake.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside book = {
    "C3", "V. B. Bhandari, Design of Machine Elements, example 12.13", "transcription"};

static double torque(double radius)
{
    struct disc disc = {.caliper = CALIPER_SLIDING,
                        .bores = {1, {2 * radius}},
                        .inlets = 1,
                        .effective_radius = {0.9693 * 5 * radius},
                        .friction = {0.35},
                        .efficiency = {1},
                        .threshold = {0}};
    struct pressure p[2] = {{2e6}, {NAN}};
    return disc_torque(&disc, p).nm;
}

/* Torque goes with the cube of the pad's radius. */
static void three_calipers_hold_1500_newton_metres(void **state)
{
    (void)state;
    outside_printed(&book, "torque of three calipers", "N m", 1500, 3 * torque(28.625602e-3),
                    1500 * 3 * 5e-7 / 28.6);
    double radius = 28.625602e-3 * cbrt(500 / torque(28.625602e-3));
    outside_printed(&book, "radius of the pads", "mm", 28.625602, radius * 1e3, 5e-7);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(three_calipers_hold_1500_newton_metres)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
