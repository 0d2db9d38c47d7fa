#include "input/naming.h"

#include <string.h>

#include "support/cmocka_all.h"

static bool alike(struct arena *arena, const char *a, const char *b)
{
    return strcmp(name_key(arena, a), name_key(arena, b)) == 0;
}

static void names_are_sets_of_words(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_true(alike(arena, "rear left drum", "Left  Rear drum"));
    assert_true(alike(arena, "rear left drum", "drum rear left"));
    assert_false(alike(arena, "rear left drum", "rear right drum"));
    assert_false(alike(arena, "rear left drum", "rear drum"));
    arena_destroy(arena);
}

static void other_words_for_a_kind_are_the_same_name(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_true(alike(arena, "brake master", "brake master cylinder"));
    assert_true(alike(arena, "rear left drum", "rear left wheel cylinder"));
    assert_true(alike(arena, "front disc", "front disk brake"));
    assert_true(alike(arena, "hand brake", "parking brake"));
    assert_true(alike(arena, "rear feed pipe", "rear feed line"));
    arena_destroy(arena);
}

static void the_words_of_joints_stay_apart(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_false(alike(arena, "front tee", "front union"));
    arena_destroy(arena);
}

static void a_number_behind_a_name_counts(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_false(alike(arena, "rear feed pipe", "rear feed pipe 2"));
    assert_true(alike(arena, "rear feed pipe 2", "feed rear pipe 2"));
    enum part_kind kind;
    assert_true(name_kind(arena, "rear feed pipe 2", &kind));
    assert_int_equal(kind, KIND_PIPE);
    assert_string_equal(name_stem(arena, "rear feed pipe 2"), "rear feed");
    arena_destroy(arena);
}

static void the_side_goes_before_the_word_of_the_kind(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_string_equal(name_with_side(arena, "rear drum", SIDE_LEFT), "rear left drum");
    assert_string_equal(name_with_side(arena, "front disc brake", SIDE_RIGHT),
                        "front right disc brake");
    assert_string_equal(name_with_side(arena, "drum rear", SIDE_LEFT), "drum rear left");
    arena_destroy(arena);
}

static void sides_and_axles_are_words_of_the_name(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_int_equal(name_side(arena, "front RIGHT disc"), SIDE_RIGHT);
    assert_int_equal(name_side(arena, "front disc"), SIDE_NONE);
    assert_int_equal(name_axle(arena, "front right disc"), AXLE_FRONT);
    assert_int_equal(name_axle(arena, "clutch slave"), AXLE_NONE);
    arena_destroy(arena);
}

static struct roll make_roll(struct arena *arena)
{
    static const char *const names[] = {"brake master", "rear left drum", "rear right drum",
                                        "front left disc", "axle tee"};
    struct roll roll = roll_start(arena);
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        roll_add(&roll, names[i]);
    return roll;
}

static void a_brake_without_a_side_means_both(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct roll roll = make_roll(arena);
    int found[2];
    assert_int_equal(roll_find_sides(&roll, "rear drum", found), 2);
    assert_int_equal(found[0], 1);
    assert_int_equal(found[1], 2);
    assert_int_equal(roll_find_sides(&roll, "left rear drum", found), 1);
    assert_int_equal(found[0], 1);
    assert_int_equal(roll_find_sides(&roll, "front disc", found), 1);
    assert_int_equal(found[0], 3);
    assert_int_equal(roll_find_sides(&roll, "front drum", found), 0);
    assert_int_equal(roll_find_sides(&roll, "master", found), 0);
    arena_destroy(arena);
}

static void the_nearest_name_is_found(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct roll roll = make_roll(arena);
    assert_string_equal(roll_nearest(&roll, "axel tee"), "axle tee");
    assert_string_equal(roll_nearest(&roll, "brake  mastre"), "brake master");
    assert_string_equal(roll_nearest(&roll, "raer drum"), "rear drum");
    assert_null(roll_nearest(&roll, "windscreen washer"));
    arena_destroy(arena);
}

static void a_plural_means_all_whose_names_have_its_words(void **state)
{
    (void)state;
    static const char *const names[] = {"front left disc", "front right disc", "rear left drum",
                                        "rear right drum", "front tee",        "axle tee",
                                        "rear union",      "front left hose",  "front feed hose",
                                        "rear feed hose",  "clutch line hose", "brake master",
                                        "clutch master"};
    static const struct {
        const char *words;
        int count;
        int first;
    } cases[] = {{"front hoses", 2, 7},       {"hoses", 4, 7},
                 {"Front Hoses", 2, 7},       {"rear cylinders", 2, 2},
                 {"rear drums", 2, 2},        {"rear wheel cylinders", 2, 2},
                 {"front calipers", 2, 0},    {"brakes", 4, 0},
                 {"rear brakes", 2, 2},       {"tees", 2, 4},
                 {"master cylinders", 2, 11}, {"front disc", 2, 0},
                 {"front left discs", 1, 0},  {"brake hoses", 0, 0},
                 {"rear discs", 0, 0},        {"front hose", 0, 0},
                 {"front left hose", 1, 7}};
    struct arena *arena = arena_create();
    struct roll roll = roll_start(arena);
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        roll_add(&roll, names[i]);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        int *found;
        int count = roll_find_group(&roll, cases[i].words, &found);
        if (count != cases[i].count)
            fail_msg("%s: %d", cases[i].words, count);
        if (count > 0)
            assert_int_equal(found[0], cases[i].first);
    }
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(names_are_sets_of_words),
        cmocka_unit_test(other_words_for_a_kind_are_the_same_name),
        cmocka_unit_test(the_words_of_joints_stay_apart),
        cmocka_unit_test(a_number_behind_a_name_counts),
        cmocka_unit_test(the_side_goes_before_the_word_of_the_kind),
        cmocka_unit_test(sides_and_axles_are_words_of_the_name),
        cmocka_unit_test(a_brake_without_a_side_means_both),
        cmocka_unit_test(the_nearest_name_is_found),
        cmocka_unit_test(a_plural_means_all_whose_names_have_its_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
