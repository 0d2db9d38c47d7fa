#include "parts/drum_brake.h"

#include <math.h>

#include "support/near.h"

#define DEGREES         (3.14159265358979323846 / 180)
#define BORE_OF_300_MM2 0.0195441004761168 /* sqrt(4 * 300 / pi) mm */

/* Radius 0.1 m, tip and pin at 0.8 of it: sliding shoes pull 1.4511 and 0.5157 at friction 0.38
 * and half arc 55 deg (checked by small pieces in test_shoe.c); pinned ones 1.911 and 0.564. */
static struct drum drum(enum shoe_layout shoes, enum shoe_anchor anchor)
{
    return (struct drum){.shoes = shoes,
                         .anchor = anchor,
                         .cylinder = CYLINDER_TWO_PISTONS,
                         .bore = {BORE_OF_300_MM2},
                         .diameter = {0.2},
                         .pin_distance = {0.08},
                         .tip_distance = {0.08},
                         .lining_start = {NAN},
                         .lining_arc = {110 * DEGREES},
                         .friction = {0.38},
                         .efficiency = {0.9},
                         .threshold = {2e5},
                         .clearance = {0.4e-3},
                         .give = {0.3e-3},
                         .lining_squash = {0.1e-3},
                         .hot = {220},
                         .shoes_hot = {20},
                         .lining_left = {4e-3},
                         .lining_new = {5e-3},
                         .lining_worn = {1e-3}};
}

static double factor(enum shoe_layout shoes, enum shoe_anchor anchor, bool forward)
{
    struct drum d = drum(shoes, anchor);
    return drum_factor(&d, forward);
}

/* Sums over two million pieces of lining in Octave, the lifted ones taken away, at friction 0.38,
 * half arc 55 deg, arms 0.8: 1.477623 leading, 0.519005 trailing. */
static void a_leading_and_a_trailing_shoe_pull_alike_both_ways(void **state)
{
    (void)state;
    near(factor(SHOES_LEADING_TRAILING, ANCHOR_SLIDING, true), 1.996628, 2e-6);
    near(factor(SHOES_LEADING_TRAILING, ANCHOR_SLIDING, false), 1.996628, 2e-6);
    near(factor(SHOES_LEADING_TRAILING, ANCHOR_NOT_SAID, true), 1.996628, 2e-6);
    near(factor(SHOES_LEADING_TRAILING, ANCHOR_PIN, true), 2.475, 1e-3);
}

static void two_leading_shoes_both_trail_in_reverse(void **state)
{
    (void)state;
    near(factor(SHOES_TWO_LEADING, ANCHOR_SLIDING, true), 2 * 1.477623, 2e-6);
    near(factor(SHOES_TWO_LEADING, ANCHOR_SLIDING, false), 2 * 0.519005, 2e-6);
    near(factor(SHOES_TWO_LEADING, ANCHOR_PIN, true), 3.822, 1e-3);
    near(factor(SHOES_TWO_LEADING, ANCHOR_PIN, false), 1.128, 1e-3);
}

static void a_duo_servo_brake_pulls_most_and_alike_both_ways(void **state)
{
    (void)state;
    double forward = factor(SHOES_DUO_SERVO, ANCHOR_NOT_SAID, true);
    assert_true(forward > factor(SHOES_TWO_LEADING, ANCHOR_PIN, true));
    near(factor(SHOES_DUO_SERVO, ANCHOR_NOT_SAID, false), forward, 0);
    /* Evenly built: primary 1.4776; link (0.8 + 1.4776)/0.8 = 2.8470 of the tip force; that on a
     * shoe pinned at 0.8 with arm 1.6 (1.911, and the cylinder's line meets the pin). */
    near(forward, 1.4776 + 2.8470 * 1.911, 3e-3);
}

/* A hair of friction more makes a hair of torque more, over the whole range that is answered: no
 * place where one law hands over to another. */
static void torque_never_jumps_with_friction(void **state)
{
    (void)state;
    const enum shoe_layout layouts[] = {SHOES_LEADING_TRAILING, SHOES_TWO_LEADING, SHOES_DUO_SERVO};
    for (int i = 0; i < 3; i++) {
        struct drum d = drum(layouts[i], ANCHOR_SLIDING);
        double step = 1e-7, slope = NAN;
        for (double mu = 0.10; mu < 0.45; mu += 0.0005) {
            d.friction.value = mu;
            double before = drum_factor(&d, true);
            d.friction.value = mu + step;
            double now = (drum_factor(&d, true) - before) / step;
            assert_true(now > 0);
            assert_false(now > 1.02 * slope || now < 0.98 * slope);
            slope = now;
        }
    }
}

static void a_given_lining_start_moves_a_pinned_lining(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_PIN);
    double middle = drum_factor(&d, true);
    d.lining_start.rad = 35 * DEGREES;
    near(drum_factor(&d, true), middle, 1e-9);
    d.lining_start.rad = 20 * DEGREES;
    assert_true(fabs(drum_factor(&d, true) - middle) > 0.01);
}

/* Our own sums: a face that leans 20 deg, 1.774 and 0.513; friction 0.2 on it, 1.618 and 0.524. */
static void the_face_under_the_heel_counts(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    d.abutment_angle.rad = 20 * DEGREES;
    near(drum_factor(&d, true), 1.774 + 0.513, 1e-3);
    d.shoes = SHOES_TWO_LEADING;
    near(drum_factor(&d, false), 2 * 0.513, 1e-3);
    d.abutment_angle.rad = 0;
    d.abutment_friction.value = 0.2;
    near(drum_factor(&d, true), 2 * 1.618, 1e-3);
    near(drum_factor(&d, false), 2 * 0.524, 1e-3);
    d.abutment_friction.value = NAN;
    near_unknown(drum_factor(&d, true));
    d.anchor = ANCHOR_PIN;
    near(drum_factor(&d, true), 3.822, 1e-3);
}

/* The same sums at friction 0.418. */
static void another_friction_is_on_the_same_curve(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_TWO_LEADING, ANCHOR_SLIDING);
    near(drum_factor_with(&d, (struct number){0.418}, true), 2 * 1.715702, 2e-6);
    near(drum_factor_with(&d, d.friction, true), drum_factor(&d, true), 0);
    near_unknown(drum_factor_with(&d, (struct number){NAN}, true));
}

static void a_shoe_that_nearly_locks_is_told_from_one_that_is_not_known(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_PIN); /* locks at 0.698 */
    assert_false(drum_near_lock(&d, (struct number){0.55}, true));
    assert_true(drum_near_lock(&d, (struct number){0.57}, true));
    assert_false(drum_near_lock(&d, (struct number){NAN}, true));
    d.shoes = SHOES_TWO_LEADING;
    assert_true(drum_near_lock(&d, (struct number){0.57}, true));
    assert_false(drum_near_lock(&d, (struct number){0.57}, false)); /* both trail */
    d.pin_distance.m = NAN;
    assert_false(drum_near_lock(&d, (struct number){0.57}, true));
}

static void a_factor_is_unknown_without_its_figures(void **state)
{
    (void)state;
    const size_t fields[] = {offsetof(struct drum, diameter), offsetof(struct drum, pin_distance),
                             offsetof(struct drum, tip_distance), offsetof(struct drum, lining_arc),
                             offsetof(struct drum, friction)};
    for (int shoes = SHOES_LEADING_TRAILING; shoes <= SHOES_DUO_SERVO; shoes++)
        for (int anchor = ANCHOR_PIN; anchor <= ANCHOR_SLIDING; anchor++)
            for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++) {
                struct drum d = drum((enum shoe_layout)shoes, (enum shoe_anchor)anchor);
                *(double *)((char *)&d + fields[i]) = NAN;
                near_unknown(drum_factor(&d, true));
                near_unknown(drum_torque(&d, (struct pressure){5e6}, true).nm);
            }
    near_unknown(factor(SHOES_NOT_SAID, ANCHOR_SLIDING, true));
}

static void pistons_are_counted_by_layout(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_TWO_LEADING, ANCHOR_SLIDING);
    assert_int_equal(drum_pistons(&d), 2);
    d.cylinder = CYLINDER_ONE_EACH;
    assert_int_equal(drum_pistons(&d), 2);
    d.cylinder = CYLINDER_SLIDING;
    assert_int_equal(drum_pistons(&d), 1);
    d.cylinder = CYLINDER_NOT_SAID;
    assert_int_equal(drum_pistons(&d), 0);
}

static double torque(double p)
{
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    return drum_torque(&d, (struct pressure){p}, true).nm;
}

static void torque_begins_at_the_threshold(void **state)
{
    (void)state;
    near(torque(0), 0, 0);
    near(torque(2e5), 0, 0);
    near_rel(torque(1.2e6), 1.996628 * 0.9 * 300 * 0.1, 1e-4); /* 1 MPa on 300 mm2 */
    near_unknown(torque(-1));
    near_unknown(torque(NAN));
}

static void torque_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    d.efficiency.value = 0;
    near_unknown(drum_torque(&d, (struct pressure){1e6}, true).nm);
    d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    d.threshold.pa = NAN;
    near_unknown(drum_torque(&d, (struct pressure){1e6}, true).nm);
    d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    d.bore.m = NAN;
    near_unknown(drum_torque(&d, (struct pressure){1e6}, true).nm);
}

/* 600 mm2 * 0.4 mm = 240 mm3; at 5 MPa half of 600 * 0.3 = 90 mm3. */
static void two_tips_are_followed_in_every_layout(void **state)
{
    (void)state;
    for (int layout = CYLINDER_TWO_PISTONS; layout <= CYLINDER_SLIDING; layout++) {
        struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
        d.cylinder = (enum cylinder_layout)layout;
        struct drum_volumes v = drum_volume(&d, (struct pressure){5e6}, NULL);
        near(v.clearance.m3, 240e-9, 1e-18);
        near(v.give.m3, 90e-9, 1e-18);
        v = drum_volume(&d, (struct pressure){5e6}, &(struct brake_case){.slack = true});
        near(v.clearance.m3, 720e-9, 1e-18);
        near(v.give.m3, 90e-9, 1e-18);
    }
}

static void clearance_is_taken_up_on_the_way_to_the_threshold(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    near(drum_volume(&d, (struct pressure){0}, NULL).clearance.m3, 0, 0);
    near(drum_volume(&d, (struct pressure){1e5}, NULL).clearance.m3, 120e-9, 1e-18);
    near(drum_volume(&d, (struct pressure){2e5}, NULL).clearance.m3, 240e-9, 1e-18);
    near(drum_volume(&d, (struct pressure){2.1e5}, NULL).clearance.m3, 240e-9, 1e-18);
}

static void volume_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    const size_t fields[] = {offsetof(struct drum, bore), offsetof(struct drum, threshold),
                             offsetof(struct drum, clearance), offsetof(struct drum, give)};
    for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++) {
        struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
        *(double *)((char *)&d + fields[i]) = NAN;
        near_unknown(drum_volume(&d, (struct pressure){5e6}, NULL).clearance.m3);
    }
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    d.cylinder = CYLINDER_NOT_SAID;
    near_unknown(drum_volume(&d, (struct pressure){5e6}, NULL).give.m3);
    d.cylinder = CYLINDER_SLIDING;
    near_unknown(drum_volume(&d, (struct pressure){-1}, NULL).give.m3);
    near_unknown(drum_volume(&d, (struct pressure){NAN}, NULL).give.m3);
}

static struct drum_volumes volumes(struct drum d, struct brake_case as)
{
    return drum_volume(&d, (struct pressure){5e6}, &as);
}

/* Pivot and tip 80 mm either side of the centre: the middle of the lining goes half as far. */
static void a_tip_goes_farther_than_its_lining(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    near(drum_tip_ratio(&d), 2, 1e-12);
    d.pin_distance.m = 0.16;
    near(drum_tip_ratio(&d), 1.5, 1e-12);
    d.shoes = SHOES_DUO_SERVO;
    near(drum_tip_ratio(&d), 2, 1e-12);
    d = drum(SHOES_LEADING_TRAILING, ANCHOR_PIN);
    near(drum_tip_ratio(&d), 2, 1e-12);
    d.lining_start.rad = 5 * DEGREES; /* middle at 60 deg from the pin */
    near(drum_tip_ratio(&d), 2 / sin(60 * DEGREES), 1e-12);
    d.tip_distance.m = NAN;
    near_unknown(drum_tip_ratio(&d));
}

/* By hand: 11.5e-6 * 115 mm * 200 K = 0.2645 mm. */
static void a_drum_grows_as_it_warms(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    d.diameter.m = 0.23;
    near(drum_growth(&d, (struct temperature){220}).m, 0.2645e-3, 1e-12);
    near(drum_growth(&d, (struct temperature){20}).m, 0, 0);
    near_unknown(drum_growth(&d, (struct temperature){NAN}).m);
}

/* 600 mm2 * (0.4 mm + 2 * 0.23 mm); the lining's 0.1 of 0.3 mm doubles. */
static void a_hot_drum_takes_more(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    struct drum_volumes v = volumes(d, (struct brake_case){.hot = true});
    near(v.clearance.m3, 516e-9, 1e-18);
    near(v.give.m3, 120e-9, 1e-18);
    /* shoes at 90 degC follow by 70 of 200 K: 0.4 mm + 2 * 0.1495 mm */
    d.shoes_hot.celsius = 90;
    near(volumes(d, (struct brake_case){.hot = true}).clearance.m3, 419.4e-9, 1e-18);
    d.shoes_hot.celsius = 20;
    d.hot.celsius = -40; /* 0.138 mm less; the shoes would bind long before -400 */
    near(volumes(d, (struct brake_case){.hot = true}).clearance.m3, 157.2e-9, 1e-18);
    d.hot.celsius = NAN;
    near_unknown(volumes(d, (struct brake_case){.hot = true}).clearance.m3);
}

/* 0.1 mm at 4 mm is 0.125 mm at 5 mm and 0.025 mm at 1 mm. */
static void a_thinner_lining_is_squashed_less(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    struct drum_volumes v = volumes(d, (struct brake_case){.linings = LININGS_NEW});
    near(v.give.m3, 97.5e-9, 1e-18);
    near(v.clearance.m3, 240e-9, 1e-18);
    v = volumes(d, (struct brake_case){.linings = LININGS_WORN});
    near(v.give.m3, 67.5e-9, 1e-18);
    near(v.clearance.m3, 240e-9, 1e-18);
}

/* Worn by 3 mm without a turn of the adjusters: 600 mm2 * (0.4 + 2 * 3) mm. */
static void wear_that_was_never_taken_up_opens_the_clearance(void **state)
{
    (void)state;
    struct drum d = drum(SHOES_LEADING_TRAILING, ANCHOR_SLIDING);
    struct brake_case as = {.linings = LININGS_WORN, .slack = true};
    near(volumes(d, as).clearance.m3, 3840e-9, 1e-18);
    d.lining_left.m = 1.1e-3; /* 0.6 mm of wear is less than three times the clearance */
    near(volumes(d, as).clearance.m3, 720e-9, 1e-18);
    d.lining_left.m = d.lining_new.m = NAN;
    near_unknown(volumes(d, as).clearance.m3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_leading_and_a_trailing_shoe_pull_alike_both_ways),
        cmocka_unit_test(two_leading_shoes_both_trail_in_reverse),
        cmocka_unit_test(a_duo_servo_brake_pulls_most_and_alike_both_ways),
        cmocka_unit_test(torque_never_jumps_with_friction),
        cmocka_unit_test(a_given_lining_start_moves_a_pinned_lining),
        cmocka_unit_test(the_face_under_the_heel_counts),
        cmocka_unit_test(another_friction_is_on_the_same_curve),
        cmocka_unit_test(a_shoe_that_nearly_locks_is_told_from_one_that_is_not_known),
        cmocka_unit_test(a_factor_is_unknown_without_its_figures),
        cmocka_unit_test(pistons_are_counted_by_layout),
        cmocka_unit_test(torque_begins_at_the_threshold),
        cmocka_unit_test(torque_is_unknown_outside_its_ranges),
        cmocka_unit_test(two_tips_are_followed_in_every_layout),
        cmocka_unit_test(clearance_is_taken_up_on_the_way_to_the_threshold),
        cmocka_unit_test(volume_is_unknown_outside_its_ranges),
        cmocka_unit_test(a_tip_goes_farther_than_its_lining),
        cmocka_unit_test(a_drum_grows_as_it_warms),
        cmocka_unit_test(a_hot_drum_takes_more),
        cmocka_unit_test(a_thinner_lining_is_squashed_less),
        cmocka_unit_test(wear_that_was_never_taken_up_opens_the_clearance),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
