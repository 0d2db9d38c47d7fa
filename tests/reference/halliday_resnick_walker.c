/* D. Halliday, R. Resnick and J. Walker, Fundamentals of Physics, 8th edition, chapter 12, problem
 * of a car that locks all wheels. Statement read; the book's answer was not seen, so the sums are
 * from moments about the axles by hand. Friction 0.40, axles 4.2 m apart, centre of mass 1.8 m
 * behind the front one and 0.75 m high, 11 kN. */
#include "physics/grip_use.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside book = {
    "V2", "D. Halliday, R. Resnick and J. Walker, Fundamentals of Physics, 8th edition, chapter 12",
    "inputs read"};

static const struct vehicle car = {.mass = {11000 / 9.80665},
                                   .front_share = {2.4 / 4.2},
                                   .wheelbase = {4.2},
                                   .centre_height = {0.75}};

static void each_wheel_carries_what_the_moments_say(void **state)
{
    (void)state;
    struct axle_loads loads = vehicle_axle_loads(&car, 0.40);
    /* front (11000 * 2.4 + 0.4 * 11000 * 0.75)/4.2, rear (11000 * 1.8 - 3300)/4.2; half each */
    outside_again(&book, "load of a front wheel", "N", 3535.71, loads.front.n / 2, 0.005);
    outside_again(&book, "load of a rear wheel", "N", 1964.29, loads.rear.n / 2, 0.005);
    outside_again(&book, "friction of a front wheel", "N", 1414.29, 0.40 * loads.front.n / 2,
                  0.005);
    outside_again(&book, "friction of a rear wheel", "N", 785.71, 0.40 * loads.rear.n / 2, 0.005);
}

/* All wheels at the limit: each axle asks for all the grip and none of it is lost. */
static void with_all_wheels_at_the_limit_no_grip_is_lost(void **state)
{
    (void)state;
    struct grip_use use =
        grip_use(&car, (struct force){2 * 1414.2857}, (struct force){2 * 785.7143});
    near(use.front, 0.40, 1e-6);
    near(use.rear, 0.40, 1e-6);
    near(use.efficiency, 1, 1e-6);
    outside_again(&book, "deceleration, at the 9.8 m/s2 of the book", "m/s2", 3.92, use.z * 9.8,
                  0.005);
}

/* An answer of 4400 N and 2516.67 N a wheel goes about on a question site; its wheels carry more
 * than the car weighs. Ours must add up, and must not be that. */
static void wheels_carry_the_weight_and_no_more(void **state)
{
    (void)state;
    struct axle_loads loads = vehicle_axle_loads(&car, 0.40);
    near_rel(loads.front.n + loads.rear.n, 11000, 1e-12);
    assert_true(fabs(2 * 4400 + 2 * 2516.67 - 11000) > 2800);
    assert_true(fabs(loads.front.n / 2 - 4400) > 800);
    assert_true(fabs(loads.rear.n / 2 - 2516.67) > 500);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_wheel_carries_what_the_moments_say),
        cmocka_unit_test(with_all_wheels_at_the_limit_no_grip_is_lost),
        cmocka_unit_test(wheels_carry_the_weight_and_no_more),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
