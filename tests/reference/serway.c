/* R. A. Serway, Physics for Scientists and Engineers, example of a car lift. Read on a page that
 * reproduces it. Pistons of radius 5.00 and 15.0 cm, load 1.33e4 N. Printed: 1.48e3 N; 1.88e5 Pa.
 */
#include "parts/master.h"

#include "support/near.h"
#include "support/outside.h"

static const struct outside book = {
    "P2", "R. A. Serway, Physics for Scientists and Engineers, car lift", "quoted"};

static void a_small_piston_lifts_a_car(void **state)
{
    (void)state;
    struct master small = {.bore = {0.100}, .efficiency = {1}};
    double large = circle_area((struct length){0.300}).m2;
    double pressure = master_pressure(&small, (struct force){1477.7778}).pa;
    outside_printed(&book, "load that is lifted", "N", 1.33e4, pressure * large, 0.005e4);
    outside_printed(&book, "pressure", "Pa", 1.88e5, pressure, 0.005e5);
    outside_again(&book, "pressure", "Pa", 188156.5, pressure, 0.1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_small_piston_lifts_a_car)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
