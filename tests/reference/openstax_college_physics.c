/* OpenStax, College Physics, section 11.5, example of a hydraulic brake, and exercise 24 of the
 * chapter. Read. A foot of 100 N becomes 500 N at a pedal cylinder of 0.500 cm; four wheel
 * cylinders of 2.50 cm. Printed: 1.25e4 N from each; 2.5e7 Pa. */
#include "parts/master.h"
#include "parts/pedal.h"

#include "support/near.h"
#include "support/outside.h"

static const struct outside book = {
    "P1", "OpenStax, College Physics, section 11.5, hydraulic brake, and exercise 24", "read"};

static void a_foot_of_100_n_becomes_12500_n_at_each_wheel_cylinder(void **state)
{
    (void)state;
    struct pedal pedal = {.ratio = {5}, .efficiency = {1}};
    struct force rod = pedal_rod_force(&pedal, (struct force){100});
    outside_printed(&book, "force on the master's rod", "N", 500, rod.n, 1e-9);
    struct master master = {.bore = {0.00500}, .efficiency = {1}};
    double pressure = master_pressure(&master, rod).pa;
    outside_printed(&book, "pressure", "Pa", 2.5e7, pressure, 0.05e7);
    outside_again(&book, "pressure", "Pa", 25.4648e6, pressure, 50);
    double wheel = pressure * circle_area((struct length){0.0250}).m2;
    outside_printed(&book, "force of each wheel cylinder", "N", 1.25e4, wheel, 0.005e4);
    outside_again(&book, "force of each wheel cylinder", "N", 12500, wheel, 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_foot_of_100_n_becomes_12500_n_at_each_wheel_cylinder),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
