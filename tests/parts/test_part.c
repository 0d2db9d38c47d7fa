#include "parts/part.h"

#include <math.h>
#include <string.h>

#include "parts/key.h"
#include "parts/words.h"
#include "support/cmocka_all.h"
#include "support/near.h"

static void headers_name_their_kind_by_last_or_first_words(void **state)
{
    (void)state;
    static const struct {
        const char *header;
        enum part_kind kind;
    } rows[] = {
        {"rear left drum", KIND_DRUM},
        {"drum rear left", KIND_DRUM},
        {"Rear Drum", KIND_DRUM},
        {"hand brake", KIND_PARKING},
        {"handbrake", KIND_PARKING},
        {"parking brake", KIND_PARKING},
        {"hand brake lever", KIND_PARKING},
        {"brake booster", KIND_SERVO},
        {"clutch booster", KIND_SERVO},
        {"load valve", KIND_VALVE},
        {"axle tee", KIND_JOINT},
        {"warning shuttle", KIND_VALVE},
        {"brake lever", KIND_PEDAL},
        {"hand lever", KIND_PEDAL},
        {"clutch master cylinder", KIND_MASTER},
        {"front feed line", KIND_PIPE},
        {"clutch line hose", KIND_HOSE},
        {"front calliper", KIND_DISC},
        {"vehicle", KIND_VEHICLE},
        {"fluid", KIND_FLUID},
        {"brake fluid", KIND_FLUID},
        {"disc brake front", KIND_DISC},
        {"clutch slave", KIND_SLAVE},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        enum part_kind kind = KIND_COUNT;
        bool found = kind_of_words(rows[i].header, &kind);
        if (kind != rows[i].kind || found != (rows[i].kind != KIND_COUNT))
            fail_msg("[%s] is taken for kind %d", rows[i].header, (int)kind);
    }
}

static void part_of_a_word_names_no_kind(void **state)
{
    (void)state;
    enum part_kind kind;
    assert_false(kind_of_words("humdrum", &kind));
    assert_false(kind_of_words("drums", &kind));
    assert_false(kind_of_words("runs", &kind));
    assert_false(kind_of_words("", &kind));
}

static void every_word_for_a_kind_names_one(void **state)
{
    (void)state;
    size_t count;
    const char *const *words = kind_all_words(&count);
    assert_true(count > KIND_COUNT);
    for (size_t i = 0; i < count; i++) {
        enum part_kind kind = KIND_COUNT;
        assert_true(kind_of_words(words[i], &kind));
        if (i < KIND_COUNT)
            assert_int_equal(kind, i);
        for (size_t j = 0; j < i; j++)
            assert_false(words_same(words[i], words[j]));
    }
}

static struct part named(enum part_kind kind, const char *name, struct arena *arena)
{
    struct part part;
    part_blank(&part, kind, arena);
    part.name = name;
    part_read_name(&part);
    return part;
}

static void a_name_says_axle_side_and_type(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part drum = named(KIND_DRUM, "rear left drum", arena);
    assert_int_equal(drum.axle, AXLE_REAR);
    assert_int_equal(drum.side, SIDE_LEFT);
    assert_int_equal(part_origin(&drum, FIELD(side))->kind, ORIGIN_DERIVED);
    struct part disc = named(KIND_DISC, "front disc", arena);
    assert_int_equal(disc.axle, AXLE_FRONT);
    assert_int_equal(disc.side, SIDE_NONE);
    assert_int_equal(named(KIND_JOINT, "axle tee", arena).as.joint.type, JOINT_TEE);
    assert_int_equal(named(KIND_JOINT, "front block", arena).as.joint.type, JOINT_BLOCK);
    assert_int_equal(named(KIND_PEDAL, "brake lever", arena).as.pedal.type, PEDAL_HAND);
    assert_int_equal(named(KIND_PEDAL, "brake pedal", arena).as.pedal.type, PEDAL_FOOT);
    arena_destroy(arena);
}

static void what_is_said_stands_against_the_name(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_DRUM, arena);
    part.name = "left drum";
    part.side = SIDE_RIGHT;
    part_read_name(&part);
    assert_int_equal(part.side, SIDE_RIGHT);
    arena_destroy(arena);
}

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

static void every_mount_axle_and_side_has_words(void **state)
{
    (void)state;
    const struct key *on = key_find(KIND_DRUM, "on");
    for (int mount = MOUNT_UNKNOWN; mount < MOUNT_COUNT; mount++) {
        assert_non_null(mount_words((enum mount)mount));
        assert_int_equal(choice_of_value(on, mount) != NULL, mount != MOUNT_UNKNOWN);
    }
    assert_string_equal(side_word(SIDE_LEFT), "left");
    assert_string_equal(side_word(SIDE_NONE), "");
    assert_string_equal(axle_word(AXLE_REAR), "rear");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(headers_name_their_kind_by_last_or_first_words),
        cmocka_unit_test(part_of_a_word_names_no_kind),
        cmocka_unit_test(every_word_for_a_kind_names_one),
        cmocka_unit_test(a_name_says_axle_side_and_type),
        cmocka_unit_test(what_is_said_stands_against_the_name),
        cmocka_unit_test(wet_kinds_have_chambers_and_dry_ones_none),
        cmocka_unit_test(chambers_follow_the_type),
        cmocka_unit_test(a_given_chamber_volume_wins),
        cmocka_unit_test(a_master_s_chamber_is_its_bore_times_its_stroke),
        cmocka_unit_test(usual_chambers_are_of_the_usual_size_and_marked),
        cmocka_unit_test(every_mount_axle_and_side_has_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
