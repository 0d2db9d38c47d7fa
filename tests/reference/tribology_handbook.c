/* M. J. Neale (editor), The Tribology Handbook, section B8, tables 8.3 and 8.4. Read in a poor
 * scan. At friction 0.35: spot disc 0.70, duo-servo drum 4.0. The geometry behind the second is not
 * given: it is a check of its order of magnitude only. */
#include "parts/disc_brake.h"
#include "parts/shoe.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define DEGREES (3.14159265358979323846 / 180)

static const struct outside book = {
    "D7", "M. J. Neale (ed.), The Tribology Handbook, B8, tables 8.3 and 8.4", "read, poor scan"};

static void a_disc_has_the_factor_0_70(void **state)
{
    (void)state;
    struct disc disc = {.caliper = CALIPER_SLIDING,
                        .bores = {1, {0.05}},
                        .inlets = 1,
                        .effective_radius = {0.1},
                        .friction = {0.35},
                        .efficiency = {1},
                        .threshold = {0}};
    struct pressure p[2] = {{5e6}, {NAN}};
    outside_printed(&book, "factor of a disc", "-", 0.70,
                    disc_torque(&disc, p).nm / (disc_clamp(&disc, p).n * 0.1), 0.005);
}

static void a_duo_servo_drum_has_a_factor_of_about_4(void **state)
{
    (void)state;
    struct shoe_factors shoes =
        duo_servo_factors(0.35, 1, 0.8, 0.8, 0.95, 50 * DEGREES, 60 * DEGREES);
    double factor = shoes.front + shoes.rear;
    outside_printed(&book, "factor of a duo-servo drum, order of magnitude", "-", 4.0, factor, 1.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_disc_has_the_factor_0_70),
        cmocka_unit_test(a_duo_servo_drum_has_a_factor_of_about_4),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
