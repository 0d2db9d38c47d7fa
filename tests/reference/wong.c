/* J. Y. Wong, Theory of Ground Vehicles, example in the section on braking. From memory. Wheelbase
 * 2.87 m, centre of mass 1.27 m behind the front axle and 0.508 m high, 21.24 kN, rolling
 * resistance 0.02. Shares of load on the front, which the braking should follow: recomputed 70.263
 * % on a road of friction 0.8 and 59.643 % on one of 0.2. */
#include "parts/vehicle.h"

#include "support/near.h"

static void the_front_carries_more_on_the_better_road(void **state)
{
    (void)state;
    struct vehicle car = {.mass = {21240 / 9.80665},
                          .front_share = {1.60 / 2.87},
                          .wheelbase = {2.87},
                          .centre_height = {0.508}};
    near(vehicle_axle_loads(&car, 0.82).front.n / 21240, 0.70263, 5e-6);
    near(vehicle_axle_loads(&car, 0.22).front.n / 21240, 0.59643, 5e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_front_carries_more_on_the_better_road)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
