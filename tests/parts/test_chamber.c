#include "parts/part.h"

#include <math.h>

#include "parts/keys/key.h"
#include "support/cmocka_all.h"
#include "support/near.h"

static void wet_kinds_have_chambers_and_dry_ones_none(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        struct part part;
        bool assumed;
        part_blank(&part, (enum part_kind)kind, arena);
        if (kind != KIND_SERVO)
            assert_int_equal(part_chambers(&part) > 0, kind_is_wet((enum part_kind)kind));
        if (!kind_is_wet((enum part_kind)kind))
            assert_true(isnan(part_chamber_volume(&part, 0, &assumed).m3));
        assert_string_equal(part_chamber_word(&part, 9), "");
        assert_string_equal(part_chamber_word(&part, -1), "");
    }
    arena_destroy(arena);
}

static void chambers_follow_the_type(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_MASTER, arena);
    part.as.master.type = MASTER_TANDEM;
    assert_int_equal(part_chambers(&part), 2);
    assert_string_equal(part_chamber_word(&part, 1), "secondary");
    part.as.master.type = MASTER_SINGLE;
    assert_int_equal(part_chambers(&part), 1);
    assert_string_equal(part_chamber_word(&part, 0), "");
    part_blank(&part, KIND_SERVO, arena);
    part.as.servo.type = SERVO_REMOTE;
    assert_int_equal(part_chambers(&part), 2);
    part.as.servo.type = SERVO_DIRECT;
    assert_int_equal(part_chambers(&part), 0);
    part_blank(&part, KIND_VALVE, arena);
    part.as.valve.type = VALVE_SHUTTLE;
    part_assume(&part);
    assert_int_equal(part_chambers(&part), 4);
    assert_string_equal(part_chamber_word(&part, 3), "second out");
    part_blank(&part, KIND_DISC, arena);
    part.as.disc.inlets = 2;
    assert_int_equal(part_chambers(&part), 2);
    part_assume(&part);
    assert_int_equal(part.fitted.nipples, 2);
    arena_destroy(arena);
}

static void a_given_chamber_volume_wins(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    bool assumed = true;
    part_blank(&part, KIND_DRUM, arena);
    part.fitted.chamber.m3 = 3e-6;
    assert_true(part_chamber_volume(&part, 0, &assumed).m3 == 3e-6);
    assert_false(assumed);
    arena_destroy(arena);
}

static void a_master_s_chamber_is_its_bore_times_its_stroke(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    bool assumed = true;
    part_blank(&part, KIND_MASTER, arena);
    part.as.master.type = MASTER_SINGLE;
    part.as.master.bore.m = 20e-3;
    part.as.master.stroke.m = 30e-3;
    /* pi/4 * 2 cm * 2 cm * 3 cm = 9.4248 mL */
    near(part_chamber_volume(&part, 0, &assumed).m3, 9.4248e-6, 1e-10);
    assert_false(assumed);
    part.as.master.stroke.m = NAN;
    assert_true(part_chamber_volume(&part, 0, &assumed).m3 > 0);
    assert_true(assumed);
    arena_destroy(arena);
}

/* 6 mm behind two pistons of 48 mm with new pads: 2 * 18.0956 cm2 * 0.6 cm = 21.7147 mL. Each
 * piston of a fixed caliper has followed 4 mm of wear, that of a sliding one the wear of both pads.
 */
static void a_caliper_fills_as_its_pads_wear(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    bool assumed;
    part_blank(&part, KIND_DISC, arena);
    struct disc *disc = &part.as.disc;
    disc->bores = (struct bores){2, {48e-3}};
    disc->caliper = CALIPER_FIXED;
    disc->pad_new.m = 10e-3;
    near(part_chamber_volume(&part, 0, &assumed).m3, 21.7147e-6, 1e-10);
    disc->pad_left.m = 6e-3;
    near(part_chamber_volume(&part, 0, &assumed).m3, 21.7147e-6 / 6 * 10, 1e-10);
    disc->caliper = CALIPER_SLIDING;
    near(part_chamber_volume(&part, 0, &assumed).m3, 21.7147e-6 / 6 * 14, 1e-10);
    assert_true(assumed);
    arena_destroy(arena);
}

/* A caliper holds 20 to 60 mL and a wheel cylinder 1 to 4 mL: common practice, no source. */
static void usual_chambers_are_of_the_usual_size_and_marked(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    bool assumed = false;
    part_blank(&part, KIND_DISC, arena);
    part.as.disc.bores = (struct bores){2, {48e-3}};
    double caliper = part_chamber_volume(&part, 0, &assumed).m3;
    assert_true(caliper > 20e-6 && caliper < 60e-6 && assumed);
    part_blank(&part, KIND_DRUM, arena);
    part.as.drum.bore.m = 19.05e-3;
    part.as.drum.shoes = SHOES_LEADING_TRAILING;
    part_assume(&part);
    assumed = false;
    double cylinder = part_chamber_volume(&part, 0, &assumed).m3;
    assert_true(cylinder > 1e-6 && cylinder < 4e-6 && assumed);
    arena_destroy(arena);
}

/* Depths from memory: 4 mm behind a wheel cylinder's piston, 15 mm of a master whose stroke is not
 * said, 20 mm of a slave; 0.2 mL in a joint, 1.5 mL in a valve, half of it before and half behind.
 * Bore 20 mm, 3.14159 cm2. */
static void what_is_not_said_of_a_chamber_is_the_usual_depth(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    bool assumed;
    part_blank(&part, KIND_MASTER, arena);
    part.as.master.bore.m = 20e-3;
    near(part_chamber_volume(&part, 0, &assumed).m3, 4.712389e-6, 1e-12);
    part_blank(&part, KIND_SLAVE, arena);
    part.as.slave.type = SLAVE_OUTSIDE;
    part.as.slave.bore.m = 20e-3;
    near(part_chamber_volume(&part, 0, &assumed).m3, 6.283185e-6, 1e-12);
    part.as.slave.stroke.m = 30e-3;
    near(part_chamber_volume(&part, 0, &assumed).m3, 9.424778e-6, 1e-12);
    assert_false(assumed);
    part_blank(&part, KIND_DRUM, arena);
    part.as.drum.bore.m = 20e-3;
    part.as.drum.shoes = SHOES_LEADING_TRAILING;
    part.as.drum.cylinder = CYLINDER_TWO_PISTONS;
    near(part_chamber_volume(&part, 0, &assumed).m3, 2 * 1.256637e-6, 1e-12);
    part_blank(&part, KIND_SERVO, arena);
    part.as.servo.type = SERVO_REMOTE;
    part.as.servo.bore.m = 20e-3;
    near(part_chamber_volume(&part, 1, &assumed).m3, 4.712389e-6, 1e-12);
    part_blank(&part, KIND_JOINT, arena);
    near(part_chamber_volume(&part, 0, &assumed).m3, 0.2e-6, 1e-15);
    part_blank(&part, KIND_VALVE, arena);
    near(part_chamber_volume(&part, 0, &assumed).m3, 0.75e-6, 1e-15);
    assert_true(assumed);
    arena_destroy(arena);
}

/* A tandem of 20 mm by 30 mm: each chamber by its own stroke, else by half of the whole. */
static void a_tandem_has_a_chamber_for_each_stroke(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    bool assumed;
    part_blank(&part, KIND_MASTER, arena);
    part.as.master.type = MASTER_TANDEM;
    part.as.master.bore.m = 20e-3;
    part.as.master.stroke.m = 30e-3;
    near(part_chamber_volume(&part, 0, &assumed).m3, 4.712389e-6, 1e-12);
    near(part_chamber_volume(&part, 1, &assumed).m3, 4.712389e-6, 1e-12);
    part.as.master.primary_stroke.m = 20e-3;
    part.as.master.secondary_stroke.m = 10e-3;
    near(part_chamber_volume(&part, 0, &assumed).m3, 6.283185e-6, 1e-12);
    near(part_chamber_volume(&part, 1, &assumed).m3, 3.141593e-6, 1e-12);
    arena_destroy(arena);
}

/* Two sizes of piston, and a caliper of two inlets: half of the pistons to each. */
static void every_piston_of_a_caliper_counts(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    bool assumed;
    part_blank(&part, KIND_DISC, arena);
    part.as.disc.caliper = CALIPER_FIXED;
    part.as.disc.bores = (struct bores){2, {20e-3}};
    part.as.disc.second_bores = (struct bores){2, {10e-3}};
    /* 2 * 3.14159 cm2 + 2 * 0.785398 cm2, 6 mm deep */
    near(part_chamber_volume(&part, 0, &assumed).m3, 4.712389e-6, 1e-12);
    part.as.disc.inlets = 2;
    near(part_chamber_volume(&part, 1, &assumed).m3, 2.356194e-6, 1e-12);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(wet_kinds_have_chambers_and_dry_ones_none),
        cmocka_unit_test(chambers_follow_the_type),
        cmocka_unit_test(a_given_chamber_volume_wins),
        cmocka_unit_test(a_master_s_chamber_is_its_bore_times_its_stroke),
        cmocka_unit_test(a_caliper_fills_as_its_pads_wear),
        cmocka_unit_test(usual_chambers_are_of_the_usual_size_and_marked),
        cmocka_unit_test(what_is_not_said_of_a_chamber_is_the_usual_depth),
        cmocka_unit_test(a_tandem_has_a_chamber_for_each_stroke),
        cmocka_unit_test(every_piston_of_a_caliper_counts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
