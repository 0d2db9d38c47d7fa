/* D. Halliday, R. Resnick and J. Walker, Fundamentals of Physics, 8th edition, chapter 12, problem
 * of a car that locks all wheels. Statement read; the book's answer was not seen, so the sums are
 * from moments about the axles by hand. Friction 0.40, axles 4.2 m apart, centre of mass 1.8 m
 * behind the front one and 0.75 m high, 11 kN. */
#include "parts/vehicle.h"

#include "support/near.h"

static void each_wheel_carries_what_the_moments_say(void **state)
{
    (void)state;
    struct vehicle car = {.mass = {11000 / 9.80665},
                          .front_share = {2.4 / 4.2},
                          .wheelbase = {4.2},
                          .centre_height = {0.75}};
    struct axle_loads loads = vehicle_axle_loads(&car, 0.40);
    /* front (11000 * 2.4 + 0.4 * 11000 * 0.75)/4.2, rear (11000 * 1.8 - 3300)/4.2; half each */
    near(loads.front.n / 2, 3535.714, 0.001);
    near(loads.rear.n / 2, 1964.286, 0.001);
    near(0.40 * loads.front.n / 2, 1414.29, 0.005);
    near(0.40 * loads.rear.n / 2, 785.71, 0.005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(each_wheel_carries_what_the_moments_say)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
