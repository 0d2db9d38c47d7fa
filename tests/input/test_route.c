#include "input/route.h"

#include "car_text.h"
#include "support/near.h"

static void a_run_becomes_pipes_and_connections(void **state)
{
    (void)state;
    struct car_text car = car_read_more("");
    const struct part *pipe = car_part(&car, "feed pipe");
    near(pipe->as.pipe.length.m, 0.6, 1e-12);
    assert_true(pipe->from_run);
    assert_int_equal(pipe->place.line, 17);
    assert_int_equal(pipe->place.column, 22);
    assert_int_equal(part_origin(pipe, FIELD(as.pipe.length))->kind, ORIGIN_GIVEN);
    assert_true(car_joined(&car, "brake master", "feed pipe"));
    assert_true(car_joined(&car, "feed pipe:1", "front tee"));
    car_finish(&car);
}

static void a_run_that_ends_on_both_sides_is_doubled_from_its_last_named_part(void **state)
{
    (void)state;
    struct car_text car = car_read_more("");
    assert_true(car_joined(&car, "front tee", "brakes left hose"));
    assert_true(car_joined(&car, "brakes left hose:1", "front left disc"));
    assert_true(car_joined(&car, "front tee", "brakes right hose"));
    assert_true(car_joined(&car, "brakes right hose:1", "front right disc"));
    car_finish(&car);
}

static void only_what_lies_behind_the_last_named_part_is_doubled(void **state)
{
    (void)state;
    struct car_text car = car_read_more(
        "more = front tee, 2 m pipe, axle tee, 0.4 m pipe, bracket, 0.3 m hose, rear drum\n"
        "[rear drum]\nshoes = two leading\nbore = 3/4 in\n");
    assert_true(car_joined(&car, "front tee", "more pipe"));
    assert_true(car_joined(&car, "more pipe:1", "axle tee"));
    assert_true(car_joined(&car, "axle tee", "more left pipe"));
    assert_true(car_joined(&car, "more left pipe:1", "more left bracket"));
    assert_true(car_joined(&car, "more right bracket", "more right hose"));
    assert_true(car_joined(&car, "more right hose:1", "rear right drum"));
    assert_int_equal(system_find(car.system, "more right pipe 2"), -1);
    car_finish(&car);
}

static void several_pieces_of_a_run_are_numbered(void **state)
{
    (void)state;
    struct car_text car =
        car_read_more("more = front tee, 0.2 m pipe, 0.3 m pipe, 0.4 m pipe, rear left drum\n"
                      "[rear left drum]\nshoes = two leading\nbore = 3/4 in\n");
    near(car_part(&car, "more pipe")->as.pipe.length.m, 0.2, 1e-12);
    near(car_part(&car, "more pipe 2")->as.pipe.length.m, 0.3, 1e-12);
    near(car_part(&car, "more pipe 3")->as.pipe.length.m, 0.4, 1e-12);
    const struct part *first = car_part(&car, "more union");
    const struct part *second = car_part(&car, "more union 2");
    assert_int_equal(first->as.joint.implied, 1);
    assert_int_equal(second->as.joint.implied, 1);
    assert_true(car_joined(&car, "more pipe:1", "more union"));
    assert_true(car_joined(&car, "more union", "more pipe 2"));
    assert_true(car_joined(&car, "more union 2", "more pipe 3"));
    car_finish(&car);
}

static void named_joints_are_no_implied_ones(void **state)
{
    (void)state;
    struct car_text car = car_read_more("");
    assert_int_equal(car_part(&car, "front tee")->as.joint.implied, 0);
    assert_true(car_part(&car, "front tee")->from_run);
    car_finish(&car);
}

static const char valve_car[] =
    "more = front tee, 0.2 m pipe, load valve, 0.3 m pipe, rear left drum\n"
    "[load valve]\ntype = limiting\nlimit = 30 bar\n"
    "[rear left drum]\nshoes = two leading\nbore = 3/4 in\n";

static void a_run_goes_in_and_out_of_a_valve(void **state)
{
    (void)state;
    struct car_text car = car_read_more(valve_car);
    assert_true(car_joined(&car, "more pipe:1", "load valve:0"));
    assert_true(car_joined(&car, "load valve:1", "more pipe 2"));
    car_finish(&car);
}

static void the_second_passage_of_a_valve_stands_behind_a_point(void **state)
{
    (void)state;
    struct car_text car = car_read_more(
        "more = front tee, pipe, warning valve.2, pipe, rear left drum\n"
        "last = front tee, pipe, warning valve.1\nlater = warning valve.1, pipe, rear right drum\n"
        "[warning valve]\ntype = shuttle\n"
        "[rear drum]\nshoes = two leading\nbore = 3/4 in\n");
    assert_true(car_joined(&car, "more pipe:1", "warning valve:2"));
    assert_true(car_joined(&car, "warning valve:3", "more pipe 2"));
    assert_true(car_joined(&car, "last pipe:1", "warning valve:0"));
    assert_true(car_joined(&car, "warning valve:1", "later pipe"));
    near_unknown(car_part(&car, "last pipe")->as.pipe.length.m);
    car_finish(&car);
}

static void a_remote_servo_is_left_by_its_outlet(void **state)
{
    (void)state;
    struct car_text car = car_read_more("more = front tee, pipe, remote servo\n"
                                        "last = remote servo, pipe, rear left drum\n"
                                        "[remote servo]\ntype = remote\nbore = 3/4 in\n"
                                        "[rear left drum]\nshoes = two leading\nbore = 3/4 in\n");
    assert_true(car_joined(&car, "more pipe:1", "remote servo:0"));
    assert_true(car_joined(&car, "remote servo:1", "last pipe"));
    car_finish(&car);
}

static void parts_may_stand_against_each_other(void **state)
{
    (void)state;
    struct car_text car = car_read_more("more = front tee, load valve, 0.3 m pipe, rear left drum\n"
                                        "[load valve]\ntype = limiting\n"
                                        "[rear left drum]\nshoes = two leading\nbore = 3/4 in\n");
    assert_true(car_joined(&car, "front tee", "load valve:0"));
    assert_true(car_joined(&car, "load valve:1", "more pipe"));
    car_finish(&car);
}

static void a_run_may_begin_at_a_brake(void **state)
{
    (void)state;
    struct car_text car = car_read_more("more = front tee, pipe, rear left drum\n"
                                        "across = rear left drum, 1 m pipe, rear right drum\n"
                                        "[rear drum]\nshoes = two leading\nbore = 3/4 in\n");
    assert_true(car_joined(&car, "rear left drum", "across pipe"));
    assert_true(car_joined(&car, "across pipe:1", "rear right drum"));
    car_finish(&car);
}

static void a_named_pipe_may_stand_in_a_run(void **state)
{
    (void)state;
    struct car_text car = car_read_more("more = front tee, long pipe, hose, rear left drum\n"
                                        "[long pipe]\nlength = 3 m\n"
                                        "[rear left drum]\nshoes = two leading\nbore = 3/4 in\n");
    assert_true(car_joined(&car, "front tee", "long pipe"));
    assert_true(car_joined(&car, "long pipe:1", "more union"));
    assert_false(car_part(&car, "long pipe")->from_run);
    car_finish(&car);
}

static void a_rough_length_is_given_with_its_words(void **state)
{
    (void)state;
    struct car_text car = car_read_more("more = front tee, about 2 m pipe, rear left drum\n"
                                        "[rear left drum]\nshoes = two leading\nbore = 3/4 in\n");
    const struct origin *origin = part_origin(car_part(&car, "more pipe"), FIELD(as.pipe.length));
    assert_int_equal(origin->kind, ORIGIN_GIVEN);
    assert_string_equal(origin->text, "about 2 m");
    near(origin->tolerance, 0.4, 1e-12);
    car_finish(&car);
}

static void both_inlets_of_a_disc_are_told_apart(void **state)
{
    (void)state;
    struct car_text car = car_read_more("more = front tee, 0.3 m hose, rear disc.1\n"
                                        "last = front tee, 0.3 m hose, rear disc.inlet 2\n"
                                        "[rear disc]\ncaliper = fixed\nbore = 4 of 38 mm\n"
                                        "inlets = 2\n");
    assert_true(car_joined(&car, "more left hose:1", "rear left disc:0"));
    assert_true(car_joined(&car, "last right hose:1", "rear right disc:1"));
    car_finish(&car);
}

static void a_run_made_piece_keeps_off_names_that_are_taken(void **state)
{
    (void)state;
    struct car_text car = car_read_more("brakes left = front tee, 0.3 m hose, rear left drum\n"
                                        "[rear left drum]\nshoes = two leading\nbore = 3/4 in\n");
    near(car_part(&car, "brakes left hose")->as.hose.length.m, 0.4, 1e-12);
    near(car_part(&car, "brakes left hose 2")->as.hose.length.m, 0.3, 1e-12);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_run_becomes_pipes_and_connections),
        cmocka_unit_test(a_run_that_ends_on_both_sides_is_doubled_from_its_last_named_part),
        cmocka_unit_test(only_what_lies_behind_the_last_named_part_is_doubled),
        cmocka_unit_test(several_pieces_of_a_run_are_numbered),
        cmocka_unit_test(named_joints_are_no_implied_ones),
        cmocka_unit_test(a_run_goes_in_and_out_of_a_valve),
        cmocka_unit_test(the_second_passage_of_a_valve_stands_behind_a_point),
        cmocka_unit_test(a_remote_servo_is_left_by_its_outlet),
        cmocka_unit_test(parts_may_stand_against_each_other),
        cmocka_unit_test(a_run_may_begin_at_a_brake),
        cmocka_unit_test(a_named_pipe_may_stand_in_a_run),
        cmocka_unit_test(a_rough_length_is_given_with_its_words),
        cmocka_unit_test(both_inlets_of_a_disc_are_told_apart),
        cmocka_unit_test(a_run_made_piece_keeps_off_names_that_are_taken),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
