#include "parts/master.h"

#include <math.h>

#include "support/near.h"

static double area(double diameter)
{
    return circle_area((struct length){diameter}).m2;
}

static void a_circle_has_its_area_and_no_circle_has_none(void **state)
{
    (void)state;
    near(area(2), 3.14159265358979, 1e-13);
    near(area(0.01905), 285.0229e-6, 0.0001e-6); /* 3/4 in: 0.441786 in2 */
    near_unknown(area(0));
    near_unknown(area(-1));
    near_unknown(area(NAN));
}

static double pressure(double bore, double efficiency, double rod)
{
    struct master m = {.bore = {bore}, .efficiency = {efficiency}};
    return master_pressure(&m, (struct force){rod}).pa;
}

static void pressure_is_force_over_area_less_what_the_seals_hold(void **state)
{
    (void)state;
    near(pressure(0.02, 1, 314.159265358979), 1e6, 1e-6);
    near(pressure(0.02, 0.95, 314.159265358979), 0.95e6, 1e-6);
    near(pressure(0.02, 0.95, 0), 0, 0);
    struct master m = {.bore = {0.02}};
    near(master_area(&m).m2, 3.14159265358979e-4, 1e-17);
}

static void pressure_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    near_unknown(pressure(0, 0.95, 100));
    near_unknown(pressure(NAN, 0.95, 100));
    near_unknown(pressure(0.02, 0, 100));
    near_unknown(pressure(0.02, 1.01, 100));
    near_unknown(pressure(0.02, NAN, 100));
    near_unknown(pressure(0.02, 0.95, -1));
    near_unknown(pressure(0.02, 0.95, NAN));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_circle_has_its_area_and_no_circle_has_none),
        cmocka_unit_test(pressure_is_force_over_area_less_what_the_seals_hold),
        cmocka_unit_test(pressure_is_unknown_outside_its_ranges),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
