#include "parts/parking_brake.h"

#include <math.h>

#include "support/near.h"
#include "units/constants.h"

static struct parking hand_brake(void)
{
    return (struct parking){.works = {NULL, NULL, 2},
                            .lever_ratio = {6},
                            .shoe_ratio = {5},
                            .cable_loss = {0.25},
                            .cable_bends = {NAN},
                            .cable_friction = {0.15},
                            .cable_slack = {2e-3},
                            .cable_stiff = {300e3},
                            .spreader = SPREADER_FLOATING,
                            .lever_on = LEVER_ON_REAR,
                            .holding = {1},
                            .travel_of_click = {20e-3},
                            .effort = {400}};
}

/* 400 * 6 * 0.75 = 1800 N, half of it each side, five times that at the shoe. */
static void two_brakes_share_the_pull(void **state)
{
    (void)state;
    struct parking p = hand_brake();
    near(parking_cable_force(&p).n, 900, 1e-9);
    near(parking_shoe_force(&p).n, 4500, 1e-9);
    p.works.count = 1;
    near(parking_cable_force(&p).n, 1800, 1e-9);
    p.cable_loss.of_1 = 0;
    near(parking_cable_force(&p).n, 2400, 1e-9);
    p.effort.n = 0;
    near(parking_cable_force(&p).n, 0, 0);
}

static void force_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    const struct {
        size_t field;
        double value;
    } bad[] = {
        {offsetof(struct parking, lever_ratio), NAN}, {offsetof(struct parking, effort), NAN},
        {offsetof(struct parking, cable_loss), NAN},  {offsetof(struct parking, cable_loss), 1},
        {offsetof(struct parking, cable_loss), -0.1}, {offsetof(struct parking, effort), -1},
        {offsetof(struct parking, lever_ratio), 0}};
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        struct parking p = hand_brake();
        *(double *)((char *)&p + bad[i].field) = bad[i].value;
        near_unknown(parking_cable_force(&p).n);
        near_unknown(parking_shoe_force(&p).n);
    }
    struct parking p = hand_brake();
    p.works.count = 0;
    near_unknown(parking_cable_force(&p).n);
    p = hand_brake();
    p.shoe_ratio.value = NAN;
    near_unknown(parking_shoe_force(&p).n);
}

/* 90 degrees of bend cost 15 % at friction 0.1 and 27 % at 0.2 (from memory). */
static void bends_of_the_cable_eat_up_pull(void **state)
{
    (void)state;
    struct parking p = hand_brake();
    near(parking_cable_loss(&p).of_1, 0.25, 0);
    p.cable_bends.rad = PI / 2;
    p.cable_friction.value = 0.1;
    near(parking_cable_loss(&p).of_1, 0.15, 0.005);
    near_rel(parking_cable_force(&p).n, 1200 * exp(-0.1 * PI / 2), 1e-12);
    p.cable_friction.value = 0.2;
    near(parking_cable_loss(&p).of_1, 0.27, 0.005);
    p.cable_bends.rad = 0;
    near(parking_cable_loss(&p).of_1, 0, 0);
    p.cable_bends.rad = -1;
    near_unknown(parking_cable_force(&p).n);
}

/* R. S. Khurmi and J. K. Gupta, Theory of Machines, internal expanding brake moved by a cam (from
 * memory): radius 150 mm, 25 to 125 deg, pin at 100/cos 25 deg mm, arm 200 mm, friction 0.4;
 * 686.834 and 2323.299 N recomputed, together 372.931 N m. */
static struct drum khurmi_drum(void)
{
    double pin = 0.1 / cos(25 * PI / 180);
    return (struct drum){.shoes = SHOES_LEADING_TRAILING,
                         .diameter = {0.3},
                         .anchor = ANCHOR_PIN,
                         .pin_distance = {pin},
                         .tip_distance = {0.2 - pin},
                         .lining_start = {25 * PI / 180},
                         .lining_arc = {100 * PI / 180},
                         .friction = {0.4},
                         .bore = {20e-3},
                         .clearance = {0.4e-3},
                         .give = {0.3e-3}};
}

static void a_cam_pushes_the_trailing_shoe_harder(void **state)
{
    (void)state;
    struct parking p = hand_brake();
    struct drum drum = khurmi_drum();
    struct shoe_factors shoes = drum_shoe_factors(&drum, drum.friction, true);
    double mean = (686.834 + 2323.299) / 2;
    p.spreader = SPREADER_CAM;
    double factor = parking_drum_factor(&p, shoes, drum.shoes, true);
    near(factor * mean * 0.150, 372.931, 1e-3);
    near(parking_drum_factor(&p, drum_shoe_factors(&drum, drum.friction, false), drum.shoes, false),
         factor, 1e-12);
    /* the same mean force pulled across helps the leading shoe more */
    p.spreader = SPREADER_CROSS;
    near_rel(parking_drum_factor(&p, shoes, drum.shoes, true), drum_factor(&drum, true), 1e-12);
    assert_true(parking_drum_factor(&p, shoes, drum.shoes, true) > 1.2 * factor);
}

/* Force balance by hand: a cable of 900 N at 5 : 1 makes the strut push 4500 N, and its own 900 N
 * pull the lever the same way, so that the pivot pushes 3600 N. Factors 1.478 leading, 0.519
 * trailing: rolling forward the strut's shoe leads, rolling back the pivot's. */
static void a_floating_lever_pushes_its_own_shoe_less(void **state)
{
    (void)state;
    struct parking p = hand_brake();
    const struct shoe_factors ahead = {1.478, 0.519, 1.478}, back = {0.519, 1.478, 0.519};
    double strut = parking_shoe_force(&p).n;
    near(strut * parking_drum_factor(&p, ahead, SHOES_LEADING_TRAILING, true),
         4500 * 1.478 + 3600 * 0.519, 1e-9);
    near(strut * parking_drum_factor(&p, back, SHOES_LEADING_TRAILING, false),
         4500 * 0.519 + 3600 * 1.478, 1e-9);
    p.lever_on = LEVER_ON_FRONT;
    near(strut * parking_drum_factor(&p, ahead, SHOES_LEADING_TRAILING, true),
         3600 * 1.478 + 4500 * 0.519, 1e-9);
    /* at 1 : 1 the pivot pushes nothing; below that the lever would pull, and nobody knows */
    p.shoe_ratio.value = 1;
    near(parking_drum_factor(&p, ahead, SHOES_LEADING_TRAILING, true), 0.519, 1e-12);
    p.shoe_ratio.value = 0.9;
    near_unknown(parking_drum_factor(&p, ahead, SHOES_LEADING_TRAILING, true));
    near_unknown(parking_shoe_force(&p).n);
}

/* The strut pushes the primary shoe going forward; rolling back that shoe is the secondary one. */
static void a_duo_servo_brake_holds_better_forward(void **state)
{
    (void)state;
    struct parking p = hand_brake();
    const struct shoe_factors shoes = {5, 0.5, 1.4};
    near(parking_drum_factor(&p, shoes, SHOES_DUO_SERVO, true), 5 + 0.8 * 0.5, 1e-12);
    near(parking_drum_factor(&p, shoes, SHOES_DUO_SERVO, false), 0.5 + 0.8 * 5, 1e-12);
    p.spreader = SPREADER_CAM;
    near(parking_drum_factor(&p, shoes, SHOES_DUO_SERVO, true), 5.5, 1e-12);
}

/* Pull 900 N stretches 300 N/mm by 3 mm; 4500 N at the tip give 0.3 mm * 4500/(10 MPa * 314.159
 * mm2) = 0.42972 mm; both tips move 0.4 mm more; across, both times 5. From a floating lever the
 * pivot's shoe gives 0.8 of that, and moves the cable by 4 for each of its own. With 2 mm of slack
 * and a lever of 6 over clicks of 20 mm. */
static void clicks_follow_from_clearance_give_and_stretch(void **state)
{
    (void)state;
    struct parking p = hand_brake();
    struct drum drum = khurmi_drum();
    double pull = 5 * (0.4e-3 + 0.42972e-3) + 4 * (0.4e-3 + 0.8 * 0.42972e-3) + 3e-3;
    near(parking_drum_pull(&p, &drum).m, pull, 1e-7);
    struct parking across = p;
    across.spreader = SPREADER_CROSS;
    near(parking_drum_pull(&across, &drum).m, 5 * 2 * (0.4e-3 + 0.42972e-3) + 3e-3, 1e-7);
    near(parking_clicks(&p, parking_drum_pull(&p, &drum)), (pull + 2e-3) * 6 / 0.02, 1e-4);
    drum.clearance.m = NAN;
    near_unknown(parking_drum_pull(&p, &drum).m);
    p.travel_of_click.m = 0;
    near_unknown(parking_clicks(&p, (struct length){10e-3}));
}

/* Pads: 2 * 0.15 mm of roll back; 4500 N of 10 MPa * 1256.637 mm2 = 0.358099; 2 * 0.15 + 0.15 mm
 * times that. */
static void pads_are_followed_likewise(void **state)
{
    (void)state;
    struct parking p = hand_brake();
    const struct disc disc = {.caliper = CALIPER_SLIDING,
                              .bores = {1, {40e-3}},
                              .inlets = 1,
                              .roll_back = {0.15e-3},
                              .pad_squash = {0.15e-3},
                              .body_opening = {0.15e-3}};
    near(parking_disc_pull(&p, &disc).m, 5 * (0.3e-3 + 0.45e-3 * 0.358099) + 3e-3, 1e-8);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(two_brakes_share_the_pull),
        cmocka_unit_test(force_is_unknown_outside_its_ranges),
        cmocka_unit_test(bends_of_the_cable_eat_up_pull),
        cmocka_unit_test(a_cam_pushes_the_trailing_shoe_harder),
        cmocka_unit_test(a_floating_lever_pushes_its_own_shoe_less),
        cmocka_unit_test(a_duo_servo_brake_holds_better_forward),
        cmocka_unit_test(clicks_follow_from_clearance_give_and_stretch),
        cmocka_unit_test(pads_are_followed_likewise),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
