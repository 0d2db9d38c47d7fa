#include "parts/disc_brake.h"

#include <math.h>

#include "support/near.h"

#define BORE_OF_1000_MM2 0.0356824823230554 /* sqrt(4 * 1000 / pi) mm */

static struct disc disc(enum caliper_type caliper, int count)
{
    return (struct disc){.caliper = caliper,
                         .bores = {count, {BORE_OF_1000_MM2}},
                         .second_bores = {0, {NAN}},
                         .inlets = 1,
                         .disc_outer = {0.25},
                         .pad_height = {0.05},
                         .effective_radius = {NAN},
                         .friction = {0.4},
                         .efficiency = {0.9},
                         .threshold = {1e5},
                         .roll_back = {0.2e-3},
                         .pad_squash = {0.1e-3},
                         .body_opening = {0.3e-3},
                         .run_out = {0.25e-3},
                         .bearing_play = {0.05e-3},
                         .pad_left = {8e-3},
                         .pad_new = {10e-3},
                         .pad_worn = {2e-3}};
}

static double side_mm2(struct disc d, int inlet)
{
    return disc_side_area(&d, inlet).m2 * 1e6;
}

static void opposed_pistons_count_once(void **state)
{
    (void)state;
    near(side_mm2(disc(CALIPER_FIXED, 2), -1), 1000, 1e-9);
    near(side_mm2(disc(CALIPER_FIXED, 4), -1), 2000, 1e-9);
    near(side_mm2(disc(CALIPER_SLIDING, 1), -1), 1000, 1e-9);
    near(side_mm2(disc(CALIPER_SLIDING, 2), 0), 2000, 1e-9);
}

static void pistons_of_another_size_are_added(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    d.second_bores = (struct bores){2, {2 * BORE_OF_1000_MM2}};
    near(side_mm2(d, -1), 5000, 1e-9);
    near(side_mm2(d, 0), 5000, 1e-9);
}

static void two_inlets_share_the_pistons(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 4);
    d.inlets = 2;
    near(side_mm2(d, -1), 2000, 1e-9);
    near(side_mm2(d, 0), 1000, 1e-9);
    near(side_mm2(d, 1), 1000, 1e-9);
    d.bores.count = 2;
    d.second_bores = (struct bores){2, {2 * BORE_OF_1000_MM2}};
    near(side_mm2(d, 0), 1000, 1e-9);
    near(side_mm2(d, 1), 4000, 1e-9);
    near(side_mm2(d, -1), 5000, 1e-9);
}

static void an_inlet_that_is_not_there_has_no_area(void **state)
{
    (void)state;
    near_unknown(side_mm2(disc(CALIPER_FIXED, 2), 1));
    near_unknown(side_mm2(disc(CALIPER_FIXED, 2), -2));
    near_unknown(side_mm2(disc(CALIPER_FIXED, 0), -1));
    near_unknown(side_mm2(disc(CALIPER_FIXED, -1), -1));
    near_unknown(side_mm2(disc(CALIPER_NOT_SAID, 2), -1));
    struct disc d = disc(CALIPER_FIXED, 2);
    d.inlets = 2;
    near_unknown(side_mm2(d, 2));
}

static double clamp(struct disc d, double first, double second)
{
    return disc_clamp(&d, (struct pressure[2]){{first}, {second}}).n;
}

static void clamp_begins_at_the_threshold(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    near(clamp(d, 0, NAN), 0, 0);
    near(clamp(d, 1e5, NAN), 0, 0);
    near(clamp(d, 1.1e6, NAN), 900, 1e-9); /* 0.9 * 1 MPa * 1000 mm2 */
}

static void two_circuits_clamp_together_and_one_alone_clamps_with_its_own(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 4);
    d.inlets = 2;
    near(clamp(d, 1.1e6, 1.1e6), 1800, 1e-9);
    near(clamp(d, 1.1e6, 0), 900, 1e-9);
    near(clamp(d, 0, 2.1e6), 1800, 1e-9);
    near_unknown(clamp(d, 1e6, NAN));
}

static void clamp_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    near_unknown(clamp(d, -1, 0));
    near_unknown(clamp(d, NAN, 0));
    d.efficiency.value = 1.1;
    near_unknown(clamp(d, 1e6, 0));
    d = disc(CALIPER_FIXED, 2);
    d.threshold.pa = NAN;
    near_unknown(clamp(d, 1e6, 0));
}

static void the_radius_given_wins_and_else_it_is_mid_pad(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    near(disc_radius(&d).m, 0.1, 1e-12);
    d.effective_radius.m = 0.11;
    near(disc_radius(&d).m, 0.11, 0);
    d.effective_radius.m = 0;
    near_unknown(disc_radius(&d).m);
    d.effective_radius.m = NAN;
    d.pad_height.m = 0.126; /* more than there is disc */
    near_unknown(disc_radius(&d).m);
    d.pad_height.m = 0;
    near_unknown(disc_radius(&d).m);
    d.pad_height.m = NAN;
    near_unknown(disc_radius(&d).m);
}

static void a_whole_round_pad_acts_at_two_thirds(void **state)
{
    (void)state;
    near(annulus_radius_pressure((struct length){0}, (struct length){0.3}).m, 0.2, 1e-15);
    near(annulus_radius_wear((struct length){0}, (struct length){0.3}).m, 0.15, 1e-15);
    near(annulus_radius_pressure((struct length){0.1}, (struct length){0.1 + 1e-9}).m, 0.1, 1e-8);
    near_unknown(annulus_radius_pressure((struct length){0.2}, (struct length){0.2}).m);
    near_unknown(annulus_radius_wear((struct length){-0.1}, (struct length){0.2}).m);
}

/* Ring of 75 to 125 mm: worn in (75 + 125)/2; new 2/3 (125^3 - 75^3)/(125^2 - 75^2) = 102.0833 mm;
 * a round pad of 25 mm at 100 mm 0.9921 of its middle. */
static void pads_press_at_another_radius_new_or_round(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    d.contact = PADS_WORN_IN;
    near(disc_radius(&d).m, 0.1, 1e-12);
    d.contact = PADS_NEW;
    near(disc_radius(&d).m, 0.1020833, 5e-8);
    d.contact = PADS_ROUND;
    near(disc_radius(&d).m, 0.09921, 5e-6);
    d.effective_radius.m = 0.11;
    near(disc_radius(&d).m, 0.11, 0);
    near_unknown(round_pad_radius((struct length){0.1}, (struct length){0.1}).m);
    near_unknown(round_pad_radius((struct length){0.1}, (struct length){0}).m);
}

static void torque_acts_on_both_faces(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    struct pressure p[2] = {{1.1e6}, {NAN}};
    near(disc_torque(&d, p).nm, 72, 1e-9); /* 2 * 0.4 * 900 N * 0.1 m */
    d.friction.value = 0;
    near_unknown(disc_torque(&d, p).nm);
}

/* At 5 MPa half of squash and opening. Fixed, 2 x 1000 mm2: roll back 2000 * 0.2, pads 2 * 1000 *
 * 0.05, body 1000 * 0.15 mm3. Sliding, 1000 mm2: 1000 * 0.2, the rest the same. */
static void each_cause_takes_the_volume_that_its_pistons_must_follow(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    struct disc_volumes v = disc_volume(&d, 0, (struct pressure){5e6}, NULL);
    near(v.roll_back.m3, 400e-9, 1e-18);
    near(v.pads.m3, 100e-9, 1e-18);
    near(v.body.m3, 150e-9, 1e-18);
    d = disc(CALIPER_SLIDING, 1);
    v = disc_volume(&d, 0, (struct pressure){5e6}, NULL);
    near(v.roll_back.m3, 200e-9, 1e-18);
    near(v.pads.m3, 100e-9, 1e-18);
    near(v.body.m3, 150e-9, 1e-18);
}

static void roll_back_is_taken_up_on_the_way_to_the_threshold(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_SLIDING, 1);
    near(disc_volume(&d, 0, (struct pressure){0}, NULL).roll_back.m3, 0, 0);
    near(disc_volume(&d, 0, (struct pressure){5e4}, NULL).roll_back.m3, 100e-9, 1e-18);
    near(disc_volume(&d, 0, (struct pressure){1e5}, NULL).roll_back.m3, 200e-9, 1e-18);
    d.threshold.pa = 0;
    near(disc_volume(&d, 0, (struct pressure){0}, NULL).roll_back.m3, 0, 0);
    near(disc_volume(&d, 0, (struct pressure){1}, NULL).roll_back.m3, 200e-9, 1e-18);
}

static void an_unknown_cause_leaves_the_others_known(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_SLIDING, 1);
    d.roll_back.m = NAN;
    struct disc_volumes v = disc_volume(&d, 0, (struct pressure){5e6}, NULL);
    near_unknown(v.roll_back.m3);
    near(v.pads.m3, 100e-9, 1e-18);
    near_unknown(disc_volume(&d, 0, (struct pressure){NAN}, NULL).pads.m3);
    near_unknown(disc_volume(&d, 1, (struct pressure){5e6}, NULL).pads.m3);
    d.pad_squash.m = -1e-3;
    near_unknown(disc_volume(&d, 0, (struct pressure){5e6}, NULL).pads.m3);
}

static struct disc_volumes volumes(struct disc d, struct brake_case as)
{
    return disc_volume(&d, 0, (struct pressure){5e6}, &as);
}

/* A spring A E/t: 0.1 mm at 8 mm is 0.125 mm at 10 mm and 0.025 mm at 2 mm. */
/* 1000 mm2 a side, roll back 0.2 mm. Measured in all, 0.7 mm for each of a fixed caliper's pistons
 * at 10 MPa: 2 * 0.5 mm give way, of them the body's 0.15 mm; for one piston that follows both pads
 * 0.5 mm in all. Measured less than the roll back, nothing gives way. */
static void the_way_of_a_piston_measured_at_once_holds_squash_and_opening(void **state)
{
    (void)state;
    struct brake_case cold = {0};
    for (int sliding = 0; sliding < 2; sliding++) {
        struct disc d = sliding ? disc(CALIPER_SLIDING, 1) : disc(CALIPER_FIXED, 2);
        d.piston_travel.m = 0.7e-3;
        struct disc_volumes v = disc_volume(&d, 0, (struct pressure){10e6}, &cold);
        near(v.pads.m3 + v.body.m3, sliding ? 500e-9 : 1000e-9, 1e-18);
        near(v.body.m3, 1000e-6 * d.body_opening.m, 1e-18);
        near(v.roll_back.m3, sliding ? 200e-9 : 400e-9, 1e-18);
        d.piston_travel.m = 0.1e-3;
        v = disc_volume(&d, 0, (struct pressure){10e6}, &cold);
        near(v.pads.m3 + v.body.m3, 0, 0);
    }
}

static void a_thicker_pad_is_squashed_more(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_SLIDING, 1);
    near(volumes(d, (struct brake_case){.linings = LININGS_NEW}).pads.m3, 125e-9, 1e-18);
    near(volumes(d, (struct brake_case){.linings = LININGS_WORN}).pads.m3, 25e-9, 1e-18);
    near(volumes(d, (struct brake_case){.linings = LININGS_WORN}).body.m3, 150e-9, 1e-18);
    d.pad_left.m = NAN; /* the squash is then that of a new pad */
    near(volumes(d, (struct brake_case){.linings = LININGS_NEW}).pads.m3, 100e-9, 1e-18);
    near(volumes(d, (struct brake_case){.linings = LININGS_WORN}).pads.m3, 20e-9, 1e-18);
    d.pad_new.m = NAN;
    near(volumes(d, (struct brake_case){0}).pads.m3, 100e-9, 1e-18);
    near_unknown(volumes(d, (struct brake_case){.linings = LININGS_WORN}).pads.m3);
}

static void a_hot_pad_is_squashed_twice_as_far(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    near(volumes(d, (struct brake_case){.hot = true}).pads.m3, 200e-9, 1e-18);
    near(volumes(d, (struct brake_case){LININGS_NEW, false, true, false}).pads.m3, 250e-9, 1e-18);
    near(volumes(d, (struct brake_case){.hot = true}).roll_back.m3, 400e-9, 1e-18);
}

/* Run-out 0.25 and play 0.05: the disc sweeps 0.30 mm. Roll back 0.2 mm, 1000 mm2 on each side. Let
 * go with the disc at one end the one gap stays 0.2 mm and the other becomes 0.3: 0.5 mm in all,
 * not 0.3 on each side. With no roll back both together are what it sweeps. */
static void a_disc_that_sweeps_opens_both_gaps_of_a_fixed_caliper_together(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    struct brake_case knocked = {.knocked_back = true};
    near(volumes(d, knocked).roll_back.m3, 500e-9, 1e-18);
    d.roll_back.m = 0;
    near(volumes(d, knocked).roll_back.m3, 300e-9, 1e-18);
    struct disc sliding = disc(CALIPER_SLIDING, 1); /* its pins stuck: one gap, 0.3 over 0.2 mm */
    near(volumes(sliding, knocked).roll_back.m3, 300e-9, 1e-18);
    d.roll_back.m = 0.2e-3;
    d.run_out.m = 0.1e-3; /* 0.15 + 0.2 is less than the roll back leaves */
    near(volumes(d, knocked).roll_back.m3, 400e-9, 1e-18);
    d.run_out.m = NAN;
    near_unknown(volumes(d, knocked).roll_back.m3);
    near(volumes(d, (struct brake_case){0}).roll_back.m3, 400e-9, 1e-18);
}

/* Two pads by 6 mm of wear on 1000 mm2, or by 2 mm back to new. */
static void pistons_follow_the_wear_and_fluid_follows_them(void **state)
{
    (void)state;
    struct disc d = disc(CALIPER_FIXED, 2);
    struct brake_case as = {0};
    near(disc_fluid_followed(&d, 0, NULL).m3, 0, 0);
    near(disc_fluid_followed(&d, 0, &as).m3, 0, 0);
    as.linings = LININGS_WORN;
    near(disc_fluid_followed(&d, 0, &as).m3, 12e-6, 1e-15);
    as.linings = LININGS_NEW;
    near(disc_fluid_followed(&d, 0, &as).m3, -4e-6, 1e-15);
    d.pad_new.m = NAN;
    near_unknown(disc_fluid_followed(&d, 0, &as).m3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(opposed_pistons_count_once),
        cmocka_unit_test(pistons_of_another_size_are_added),
        cmocka_unit_test(two_inlets_share_the_pistons),
        cmocka_unit_test(an_inlet_that_is_not_there_has_no_area),
        cmocka_unit_test(clamp_begins_at_the_threshold),
        cmocka_unit_test(two_circuits_clamp_together_and_one_alone_clamps_with_its_own),
        cmocka_unit_test(clamp_is_unknown_outside_its_ranges),
        cmocka_unit_test(the_radius_given_wins_and_else_it_is_mid_pad),
        cmocka_unit_test(a_whole_round_pad_acts_at_two_thirds),
        cmocka_unit_test(pads_press_at_another_radius_new_or_round),
        cmocka_unit_test(torque_acts_on_both_faces),
        cmocka_unit_test(each_cause_takes_the_volume_that_its_pistons_must_follow),
        cmocka_unit_test(roll_back_is_taken_up_on_the_way_to_the_threshold),
        cmocka_unit_test(an_unknown_cause_leaves_the_others_known),
        cmocka_unit_test(the_way_of_a_piston_measured_at_once_holds_squash_and_opening),
        cmocka_unit_test(a_thicker_pad_is_squashed_more),
        cmocka_unit_test(a_hot_pad_is_squashed_twice_as_far),
        cmocka_unit_test(a_disc_that_sweeps_opens_both_gaps_of_a_fixed_caliper_together),
        cmocka_unit_test(pistons_follow_the_wear_and_fluid_follows_them),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
