#include "input/ends.h"

#include "base/text.h"
#include "car_text.h"
#include "support/near.h"

static const char parts[] = "[vehicle]\ntitle = Test car\n"
                            "[fluid]\ngrade = DOT 4\n"
                            "[reservoir]\ncapacity = 200 mL\n"
                            "[brake pedal]\nworks = brake master\nratio = 5\n"
                            "[brake master]\ntype = tandem\nbore = 3/4 in\n"
                            "primary outlets = front\nsecondary outlets = rear\n"
                            "[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\n"
                            "[rear drum]\nshoes = two leading\nbore = 3/4 in\n"
                            "[load valve]\ntype = limiting\n"
                            "[axle tee]\non = rear axle\n";

static const char runs[] = "[all hoses]\nrenewed = 2008\n[runs]\n"
                           "feed = brake master.front, 0.6 m pipe, front tee\n"
                           "brakes = front tee, 0.4 m hose, front disc\n"
                           "rear feed = brake master.rear, 2.6 m pipe, load valve, 0.3 m pipe, "
                           "0.31 m hose, axle tee\n"
                           "rear left = axle tee, pipe, rear left drum\n"
                           "rear right = axle tee, about 0.5 m pipe, rear right drum\n";

static const char sections[] =
    "[feed pipe]\nlength = 0.6 m\nfrom = brake master.front\nto = front tee\n"
    "[rear feed hose]\nlength = 0.31 m\nfrom = rear feed pipe 2\nto = axle tee\nrenewed = 2008\n"
    "[rear feed pipe]\nlength = 2.6 m\nfrom = master brake.rear\nto = valve load\n"
    "[rear feed pipe 2]\nlength = 0.3 m\nfrom = load valve\nto = rear feed hose\n"
    "[rear left pipe]\nfrom = axle tee\nto = rear left drum\n"
    "[rear right pipe]\nlength = about 0.5 m\nfrom = axle tee\nto = rear right drum\n"
    "[brakes left hose]\nlength = 0.4 m\nfrom = front tee\nto = front left disc\nrenewed = 2008\n"
    "[brakes right hose]\nlength = 0.4 m\nfrom = front tee\nto = front right disc\n"
    "renewed = 2008\n";

static struct car_text read_two(const char *a, const char *b)
{
    struct arena *arena = arena_create();
    struct car_text car = car_read(text_print(arena, "%s%s", a, b));
    arena_destroy(arena);
    return car;
}

static void runs_and_sections_give_equal_networks(void **state)
{
    (void)state;
    struct car_text by_runs = read_two(parts, runs);
    struct car_text by_sections = read_two(parts, sections);
    car_part(&by_runs, "rear feed union");
    car_part(&by_sections, "rear feed union");
    const char *difference = car_difference(by_runs.system, by_sections.system, by_runs.arena);
    if (difference)
        fail_msg("%s", difference);
    car_finish(&by_runs);
    car_finish(&by_sections);
}

static void one_of_two_pieces_may_say_that_they_meet(void **state)
{
    (void)state;
    static const char *const forms[] = {
        "[a pipe]\nfrom = front tee\nto = b hose\n[b hose]\nto = rear left drum\n",
        "[a pipe]\nfrom = front tee\n[b hose]\nfrom = a pipe\nto = rear left drum\n",
        "[b hose]\nfrom = a pipe\nto = rear left drum\n[a pipe]\nfrom = front tee\nto = b hose\n"};
    for (int i = 0; i < 3; i++) {
        struct arena *arena = arena_create();
        struct car_text car = car_read_more(
            text_print(arena, "[rear left drum]\nshoes = two leading\nbore = 1 in\n%s", forms[i]));
        assert_true(car_joined(&car, "front tee", "a pipe"));
        assert_true(car_joined(&car, "a pipe:1", "a union"));
        assert_true(car_joined(&car, "a union", "b hose"));
        assert_true(car_joined(&car, "b hose:1", "rear left drum"));
        assert_int_equal(car_part(&car, "a union")->as.joint.implied, 1);
        car_finish(&car);
        arena_destroy(arena);
    }
}

static void a_joint_word_in_from_or_to_makes_a_joint(void **state)
{
    (void)state;
    struct car_text car =
        car_read_more("[a pipe]\nfrom = front tee\nto = axle block\n[b pipe]\nfrom = axle block\n"
                      "to = rear left drum\n[rear left drum]\nshoes = two leading\nbore = 1 in\n");
    assert_int_equal(car_part(&car, "axle block")->as.joint.type, JOINT_BLOCK);
    assert_true(car_joined(&car, "a pipe:1", "axle block"));
    car_finish(&car);
}

static void a_low_pressure_hose_needs_no_ends(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[return hose]\nuse = supply\nlength = 0.3 m\n");
    near(car_part(&car, "return hose")->as.hose.length.m, 0.3, 1e-12);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(runs_and_sections_give_equal_networks),
        cmocka_unit_test(one_of_two_pieces_may_say_that_they_meet),
        cmocka_unit_test(a_joint_word_in_from_or_to_makes_a_joint),
        cmocka_unit_test(a_low_pressure_hose_needs_no_ends),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
