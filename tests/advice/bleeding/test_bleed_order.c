/* Orders against the customs of the trade: longest run first and, with the driver on the right,
 * left rear first (trade article, publisher withheld); circuit by circuit, a diagonal pair with its
 * rear wheel first, servo before wheels, clutch last (common practice, no source). */
#include "advice/bleeding/bleed_order.h"

#include <string.h>

#include "advice_car.h"
#include "base/text.h"

#define HEAD(side)                                                                                 \
    "[vehicle]\ndriver = " side "\nfront axle = independent\nrear axle = live\n"                   \
    "[fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n"                                     \
    "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 150 mm\n"                            \
    "[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\n"                                           \
    "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 3/4 in\n"
#define SINGLE "[brake master]\ntype = single\nbore = 3/4 in\nstroke = 30 mm\n"
#define TANDEM(first, second)                                                                      \
    "[brake master]\ntype = tandem\nbore = 3/4 in\nstroke = 30 mm\nprimary outlets = " first       \
    "\nsecondary outlets = " second "\n"
#define ONE_CIRCUIT(near_front, far_front, near_rear, far_rear)                                    \
    "[runs]\nfeed = brake master, 0.5 m pipe, front tee\n"                                         \
    "front near = front tee, 0.4 m pipe, 0.36 m hose, " near_front "\n"                            \
    "front far = front tee, 1.2 m pipe, 0.36 m hose, " far_front "\n"                              \
    "rear feed = front tee, 2.4 m pipe, 0.3 m hose, axle tee\n"                                    \
    "rear near = axle tee, 0.5 m pipe, " near_rear "\n"                                            \
    "rear far = axle tee, 0.7 m pipe, " far_rear "\n"

static void expect_order(const char *car, const char *work, const char *order)
{
    struct advice_car read = advice_car_read(car, work);
    assert_string_equal(advice_order(&read), order);
    advice_car_finish(&read);
}

static void a_single_circuit_driven_from_the_right_begins_at_the_left_rear(void **state)
{
    (void)state;
    expect_order(HEAD("right") SINGLE ONE_CIRCUIT("front right disc", "front left disc",
                                                  "rear right drum", "rear left drum"),
                 NULL, "rear left drum; rear right drum; front left disc; front right disc");
}

static void driven_from_the_left_it_is_the_mirror_image(void **state)
{
    (void)state;
    expect_order(HEAD("left") SINGLE ONE_CIRCUIT("front left disc", "front right disc",
                                                 "rear left drum", "rear right drum"),
                 NULL, "rear right drum; rear left drum; front right disc; front left disc");
}

static void the_pipe_run_decides_and_not_the_corner(void **state)
{
    (void)state;
    /* driven from the right, but piped round the other way */
    expect_order(HEAD("right") SINGLE ONE_CIRCUIT("front left disc", "front right disc",
                                                  "rear left drum", "rear right drum"),
                 NULL, "rear right drum; rear left drum; front right disc; front left disc");
}

#define UNMEASURED                                                                                 \
    "[runs]\nfeed = brake master, pipe, front tee\n"                                               \
    "front right = front tee, pipe, hose, front right disc\n"                                      \
    "front left = front tee, pipe, hose, front left disc\n"                                        \
    "rear feed = front tee, pipe, hose, axle tee\n"                                                \
    "rear right = axle tee, pipe, rear right drum\n"                                               \
    "rear left = axle tee, pipe, rear left drum\n"

static void without_lengths_the_far_corner_is_assumed_and_marked(void **state)
{
    (void)state;
    struct advice_car right = advice_car_read(HEAD("right") SINGLE UNMEASURED, NULL);
    struct advice_car left = advice_car_read(HEAD("left") SINGLE UNMEASURED, NULL);
    assert_string_equal(advice_order(&right),
                        "rear left drum; rear right drum; front left disc; front right disc");
    assert_string_equal(advice_order(&left),
                        "rear right drum; rear left drum; front right disc; front left disc");
    assert_true(right.result->bleed->steps.items[0].run_assumed);
    near_unknown(right.result->bleed->steps.items[0].run.m);
    near_unknown(right.result->bleed->fluid.m3);
    advice_car_finish(&right);
    advice_car_finish(&left);
}

static void a_front_rear_split_takes_the_rear_circuit_first(void **state)
{
    (void)state;
    expect_order(
        HEAD("right") TANDEM(
            "front", "rear") "[runs]\n"
                             "front feed = brake master.front, 0.4 m pipe, front tee\n"
                             "front right = front tee, 0.3 m pipe, 0.36 m hose, front right disc\n"
                             "front left = front tee, 5 m pipe, 0.36 m hose, front left disc\n"
                             "rear feed = brake master.rear, 2.4 m pipe, 0.3 m hose, axle tee\n"
                             "rear left = axle tee, 0.7 m pipe, rear left drum\n"
                             "rear right = axle tee, 0.5 m pipe, rear right drum\n",
        NULL, "rear left drum; rear right drum; front left disc; front right disc");
}

#define DIAGONAL(near, far)                                                                        \
    TANDEM("a, b", "c, d")                                                                         \
    "[runs]\n"                                                                                     \
    "one = brake master.a, 0.5 m pipe, 0.36 m hose, front " near " disc\n"                         \
    "two = brake master.b, 3.2 m pipe, 0.36 m hose, rear " far " drum\n"                           \
    "three = brake master.c, 1.3 m pipe, 0.36 m hose, front " far " disc\n"                        \
    "four = brake master.d, 2.6 m pipe, 0.36 m hose, rear " near " drum\n"

static void a_diagonal_split_goes_pair_by_pair_with_the_rear_wheel_first(void **state)
{
    (void)state;
    struct advice_car right = advice_car_read(HEAD("right") DIAGONAL("right", "left"), NULL);
    assert_string_equal(advice_order(&right),
                        "rear left drum; front right disc; rear right drum; front left disc");
    assert_string_equal(advice_reasons(&right),
                        "rear-of-pair-first; front-of-pair; rear-of-pair-first; front-of-pair");
    advice_car_finish(&right);
    expect_order(HEAD("left") DIAGONAL("left", "right"), NULL,
                 "rear right drum; front left disc; rear left drum; front right disc");
}

static void a_remote_servo_comes_before_the_wheels_that_it_feeds(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/servo-estate.ini", NULL);
    assert_string_equal(
        advice_order(&car),
        "remote servo; rear left drum; rear right drum; front left disc; front right disc");
    assert_string_equal(car.result->bleed->steps.items[0].reason->id, "upstream-first");
    advice_car_finish(&car);
}

static void the_clutch_comes_last(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/little-two-seater.ini", NULL);
    const struct steps *steps = &car.result->bleed->steps;
    assert_string_equal(
        advice_order(&car),
        "rear left drum; rear right drum; front left drum; front right drum; clutch slave");
    assert_string_equal(steps->items[steps->count - 1].reason->id, "clutch-last");
    advice_car_finish(&car);
}

#define NAMED(names)                                                                               \
    "[front left disc]\nnipples = 2\nnipple names = " names                                        \
    "\n" ONE_CIRCUIT("front right disc", "front left disc", "rear right drum", "rear left drum")

static void of_several_nipples_the_lower_or_outer_one_comes_first(void **state)
{
    (void)state;
    expect_order(HEAD("right") SINGLE NAMED("upper, lower"), NULL,
                 "rear left drum; rear right drum; front left disc, lower nipple; front left disc, "
                 "upper nipple; front right disc");
    expect_order(HEAD("right") SINGLE NAMED("outer, inner"), NULL,
                 "rear left drum; rear right drum; front left disc, outer nipple; front left disc, "
                 "inner nipple; front left disc, outer nipple; front right disc");
    expect_order(HEAD("right") SINGLE NAMED("inner, outer"), NULL,
                 "rear left drum; rear right drum; front left disc, outer nipple; front left disc, "
                 "inner nipple; front left disc, outer nipple; front right disc");
}

#define OWN(order)                                                                                 \
    "[bleed order]\norder = " order                                                                \
    "\n" ONE_CIRCUIT("front right disc", "front left disc", "rear right drum", "rear left drum")

static void the_makers_own_order_wins(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(
        HEAD("right") SINGLE OWN("front right disc, front left disc, rear right drum, "
                                 "rear left drum"),
        NULL);
    assert_string_equal(advice_order(&car),
                        "front right disc; front left disc; rear right drum; rear left drum");
    assert_true(car.result->bleed->makers_order);
    assert_int_equal(car.result->bleed->left_out_count, 0);
    advice_car_finish(&car);
}

static void a_nipple_may_come_up_again_in_the_makers_order(void **state)
{
    (void)state;
    struct advice_car car =
        advice_car_read(HEAD("right") SINGLE OWN("rear left drum, rear right drum, rear left drum, "
                                                 "front left disc, front right disc"),
                        NULL);
    assert_string_equal(
        advice_order(&car),
        "rear left drum; rear right drum; rear left drum; front left disc; front right disc");
    const struct step *again = &car.result->bleed->steps.items[2];
    assert_string_equal(again->row->id, "bleed-again");
    assert_string_equal(again->reason->id, "makers-order-again");
    assert_int_equal(car.result->bleed->makers.count, 5);
    assert_int_equal(car.result->bleed->left_out_count, 0);
    advice_car_finish(&car);
}

static void what_the_makers_order_leaves_out_is_bled_all_the_same(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(
        HEAD("right") SINGLE OWN("front right disc, front left disc, rear right drum"), NULL);
    assert_string_equal(advice_order(&car),
                        "front right disc; front left disc; rear right drum; rear left drum");
    assert_int_equal(car.result->bleed->left_out_count, 1);
    assert_string_equal(car.result->bleed->steps.items[3].reason->id, "left-out-of-makers-order");
    advice_car_finish(&car);
}

static void both_circuits_of_a_caliper_are_bled_in_step(void **state)
{
    (void)state;
    expect_order(HEAD("right") TANDEM(
                     "front, rear",
                     "second") "[front left disc]\ninlets = 2\nnipples = 2\n"
                               "[front right disc]\ninlets = 2\nnipples = 2\n[runs]\n"
                               "one = brake master.front, 0.4 m pipe, one tee\n"
                               "one right = one tee, 0.3 m pipe, 0.36 m hose, front right disc.1\n"
                               "one left = one tee, 1.1 m pipe, 0.36 m hose, front left disc.1\n"
                               "two = brake master.second, 0.4 m pipe, two tee\n"
                               "two right = two tee, 0.3 m pipe, 0.36 m hose, front right disc.2\n"
                               "two left = two tee, 1.1 m pipe, 0.36 m hose, front left disc.2\n"
                               "rear feed = brake master.rear, 2.4 m pipe, 0.3 m hose, axle tee\n"
                               "rear left = axle tee, 0.7 m pipe, rear left drum\n"
                               "rear right = axle tee, 0.5 m pipe, rear right drum\n",
                 NULL,
                 "rear left drum; rear right drum; front left disc, nipple 1; front left disc, "
                 "nipple 2; front right disc, nipple 1; front right disc, nipple 2");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_single_circuit_driven_from_the_right_begins_at_the_left_rear),
        cmocka_unit_test(driven_from_the_left_it_is_the_mirror_image),
        cmocka_unit_test(the_pipe_run_decides_and_not_the_corner),
        cmocka_unit_test(without_lengths_the_far_corner_is_assumed_and_marked),
        cmocka_unit_test(a_front_rear_split_takes_the_rear_circuit_first),
        cmocka_unit_test(a_diagonal_split_goes_pair_by_pair_with_the_rear_wheel_first),
        cmocka_unit_test(a_remote_servo_comes_before_the_wheels_that_it_feeds),
        cmocka_unit_test(the_clutch_comes_last),
        cmocka_unit_test(of_several_nipples_the_lower_or_outer_one_comes_first),
        cmocka_unit_test(the_makers_own_order_wins),
        cmocka_unit_test(a_nipple_may_come_up_again_in_the_makers_order),
        cmocka_unit_test(what_the_makers_order_leaves_out_is_bled_all_the_same),
        cmocka_unit_test(both_circuits_of_a_caliper_are_bled_in_step),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
