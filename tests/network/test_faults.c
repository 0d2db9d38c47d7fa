#include "network/faults.h"

#include <string.h>

#include "network/plumbing.h"
#include "support/build_car.h"
#include "support/near.h"

static int start(void **state)
{
    static struct car car;
    car = car_start();
    *state = &car;
    return 0;
}

static int finish(void **state)
{
    car_finish(*state);
    return 0;
}

static struct messages report(struct car *car)
{
    struct messages messages = messages_start(car->arena);
    network_build(car->system, car->arena, &messages);
    return messages;
}

/* One message and no more, with this id and words; and, unless NULL, with this advice. */
static void expect_only(struct car *car, const char *id, const char *words, const char *mend)
{
    const struct messages messages = report(car);
    for (size_t i = 0; i < messages.count && messages.count > 1; i++)
        print_error("[%s] %s\n", messages.items[i].id, messages.items[i].words);
    assert_int_equal(messages.count, 1);
    assert_string_equal(messages.items[0].id, id);
    assert_string_equal(messages.items[0].words, words);
    assert_true(messages.items[0].place.line > 0);
    if (mend)
        assert_string_equal(messages.items[0].mend, mend);
}

/* Takes the connection of one end of a part away. */
static void part_from(struct car *car, int part, int chamber)
{
    struct system *system = car->system;
    for (int i = 0; i < system->connection_count; i++) {
        const struct connection *c = &system->connections[i];
        if ((c->a.part == part && c->a.chamber == chamber) ||
            (c->b.part == part && c->b.chamber == chamber)) {
            system->connections[i] = system->connections[--system->connection_count];
            return;
        }
    }
    fail();
}

static void a_loose_end_and_what_it_should_feed_are_named(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    part_from(car, usual.axle_hose, 1);
    const struct messages messages = report(car);
    assert_int_equal(messages.count, 2);
    assert_string_equal(messages.items[0].id, "loose-end");
    assert_int_equal(messages.items[0].place.line, car_part(car, usual.axle_hose)->place.line);
    assert_string_equal(messages.items[1].id, "nobody-feeds");
}

static void a_hose_that_leads_on_from_a_wheel_to_nothing_is_one_mistake(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int hose = car_hose(car, usual.slave, 0, 1, usual.slave, 0);
    car_part(car, hose)->name = "bleed hose";
    part_from(car, hose, 1);
    expect_only(car, "loose-end", "one end of the bleed hose is loose",
                "name what it leads to in a run");
}

static void a_pipe_that_is_joined_to_nothing_is_reported(void **state)
{
    struct car *car = *state;
    car_usual(car);
    car_add(car, KIND_PIPE, "spare pipe");
    expect_only(car, "loose-end", "the spare pipe is joined to nothing", NULL);
}

static void two_things_at_one_end_need_a_tee(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_join(car, usual.axle_hose, 1, usual.front_tee, 0);
    car_part(car, usual.axle_hose)->name = "axle hose";
    expect_only(car, "end-used-twice", "one end of the axle hose is joined to two things", NULL);
}

static void pipe_against_hose_needs_a_joint(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int more = car_add(car, KIND_SLAVE, "second slave");
    const int pipe = car_add(car, KIND_PIPE, "long pipe");
    const int hose = car_add(car, KIND_HOSE, "short hose");
    car_join(car, usual.slave, 0, pipe, 0);
    car_join(car, pipe, 1, hose, 0);
    car_join(car, hose, 1, more, 0);
    expect_only(car, "no-joint-between", "the long pipe and the short hose meet without a joint",
                NULL);
}

static void a_run_to_a_dry_part_is_reported(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int lever = car_add(car, KIND_PARKING, "hand brake");
    car_pipe(car, usual.axle_tee, 0, 1, lever, 0);
    expect_only(car, "not-plumbing",
                "a run leads to the hand brake, which holds no fluid under pedal pressure", NULL);
}

static void a_run_from_the_reservoir_is_reported(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int pot = car_add(car, KIND_RESERVOIR, "brake reservoir");
    car_pipe(car, pot, 0, 1, usual.master, 0);
    expect_only(car, "not-plumbing",
                "the brake reservoir is not under pedal pressure, so no run leads to it", NULL);
}

static void a_supply_hose_from_the_reservoir_is_no_mistake(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int pot = car_add(car, KIND_RESERVOIR, "brake reservoir");
    const int hose = car_hose(car, pot, 0, 0.3, usual.master, 0);
    car_part(car, hose)->as.hose.use = HOSE_SUPPLY;
    assert_int_equal(report(car).count, 0);
}

static void a_port_that_is_not_there_is_reported(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_pipe(car, usual.axle_tee, 0, 1, usual.slave, 1);
    expect_only(car, "not-plumbing", "the clutch slave has no such port", NULL);
}

static void what_nobody_feeds_is_named_together(void **state)
{
    struct car *car = *state;
    car_usual(car);
    const int tee = car_add(car, KIND_JOINT, "far tee");
    const int drum = car_add(car, KIND_DRUM, "trailer left drum");
    const int other = car_add(car, KIND_DRUM, "trailer right drum");
    car_pipe(car, tee, 0, 1, drum, 0);
    car_pipe(car, tee, 0, 1, other, 0);
    expect_only(car, "nobody-feeds",
                "no master feeds the far tee, the trailer left drum and the trailer right drum",
                NULL);
}

static void a_mistyped_tee_in_the_feed_is_one_mistake_with_the_right_name(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int mistyped = car_add(car, KIND_JOINT, "axel tee");
    part_from(car, usual.axle_hose, 1);
    car_join(car, usual.axle_hose, 1, mistyped, 0);
    expect_only(car, "joint-used-once", "the axel tee leads nowhere: it is named only once",
                "did you mean axle tee?");
}

static void a_mistyped_tee_in_a_branch_is_one_mistake_too(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int mistyped = car_add(car, KIND_JOINT, "axel tee");
    const int drum = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_NONE);
    car_pipe(car, mistyped, 0, 1, drum, 0);
    (void)usual;
    expect_only(car, "joint-used-once", "the axel tee leads nowhere: it is named only once",
                "did you mean axle tee?");
}

static void a_joint_in_no_run_is_reported(void **state)
{
    struct car *car = *state;
    car_usual(car);
    car_add(car, KIND_JOINT, "bulkhead union");
    expect_only(car, "joint-used-once", "no run leads to the bulkhead union", NULL);
}

static void a_dead_leg_with_a_lamp_switch_is_no_mistake(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int block = car_add(car, KIND_JOINT, "switch block");
    car_pipe(car, usual.front_tee, 0, 0.2, block, 0);
    car_part(car, block)->as.joint.blanked = 1;
    assert_int_equal(report(car).count, 0);
    car_part(car, block)->as.joint.blanked = 0;
    expect_only(car, "joint-used-once", "the switch block leads nowhere: it is named only once",
                NULL);
}

static int add_valve(struct car *car, int in, int in_chamber, int drum)
{
    const int valve = car_add(car, KIND_VALVE, "load valve");
    car_part(car, valve)->as.valve.type = VALVE_LOAD_SENSING;
    car_part(car, valve)->as.valve.passages = 1;
    car_pipe(car, in, in_chamber, 1, valve, 0);
    if (drum >= 0)
        car_pipe(car, valve, 1, 1, drum, 0);
    return valve;
}

static void a_valve_that_leads_nowhere_is_reported(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    add_valve(car, usual.axle_tee, 0, -1);
    expect_only(car, "port-left-open", "port \"out\" of the load valve is joined to nothing", NULL);
}

static void a_valve_the_wrong_way_round_is_reported(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int valve = car_add(car, KIND_VALVE, "load valve");
    car_part(car, valve)->as.valve.passages = 1;
    const int drum = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_NONE);
    car_pipe(car, usual.axle_tee, 0, 1, valve, 1);
    car_pipe(car, valve, 0, 1, drum, 0);
    expect_only(car, "valve-backwards", "the load valve is fed at its outlet", NULL);
}

static void half_a_shuttle_is_reported(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int drum = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_NONE);
    const int valve = add_valve(car, usual.axle_tee, 0, drum);
    car_part(car, valve)->as.valve.passages = 2;
    expect_only(car, "port-left-open", "port \"second in\" of the load valve is joined to nothing",
                NULL);
}

static void two_masters_on_one_circuit_are_named(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_pipe(car, usual.slave, 0, 1, usual.axle_tee, 0);
    expect_only(car, "two-masters", "the brake master and the clutch master feed the same pipes",
                NULL);
}

static void the_two_chambers_of_a_master_on_one_circuit_are_named(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_pipe(car, usual.front_tee, 0, 1, usual.master, 1);
    car_pipe(car, usual.front_left, 0, 1, usual.master, 1);
    expect_only(car, "two-masters", "both chambers of the brake master feed the same pipes", NULL);
}

static void a_loop_is_a_warning(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_pipe(car, usual.rear_left, 0, 1, usual.rear_right, 0);
    const struct messages messages = report(car);
    assert_int_equal(messages.count, 1);
    assert_string_equal(messages.items[0].id, "loop");
    assert_int_equal(messages.items[0].severity, SEVERITY_WARNING);
}

static void a_pipe_from_a_tee_to_itself_is_a_loop(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_pipe(car, usual.axle_tee, 0, 1, usual.axle_tee, 0);
    assert_string_equal(report(car).items[0].id, "loop");
    assert_int_equal(report(car).count, 1);
}

static void a_second_inlet_without_a_run_is_reported(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.front_left)->as.disc.inlets = 2;
    expect_only(car, "nipple-unreachable",
                "no circuit reaches inlet 2 of the front left disc, nor the nipple that bleeds it",
                NULL);
}

static void a_bleed_order_with_a_dry_part_is_reported(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    struct nipple order[2] = {{usual.rear_left, 0}, {usual.vehicle, 0}};
    car->system->own_order =
        (struct own_order){.items = order, .count = 2, .place = {"car.ini", 99, 1}};
    expect_only(car, "nipple-unreachable",
                "the bleed order names the vehicle, which no circuit reaches", NULL);
}

static void a_master_that_feeds_nothing_is_reported(void **state)
{
    struct car *car = *state;
    car_usual(car);
    car_add(car, KIND_MASTER, "trailer master");
    expect_only(car, "feeds-nothing", "the trailer master feeds nothing", NULL);
}

static void an_idle_chamber_of_a_tandem_is_reported(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.clutch_master)->as.master.type = MASTER_TANDEM;
    expect_only(car, "feeds-nothing", "the secondary chamber of the clutch master feeds nothing",
                NULL);
}

static void an_empty_car_has_no_mistakes_of_plumbing(void **state)
{
    struct car *car = *state;
    assert_int_equal(report(car).count, 0);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(a_loose_end_and_what_it_should_feed_are_named),
        TEST(a_hose_that_leads_on_from_a_wheel_to_nothing_is_one_mistake),
        TEST(a_pipe_that_is_joined_to_nothing_is_reported),
        TEST(two_things_at_one_end_need_a_tee),
        TEST(pipe_against_hose_needs_a_joint),
        TEST(a_run_to_a_dry_part_is_reported),
        TEST(a_run_from_the_reservoir_is_reported),
        TEST(a_supply_hose_from_the_reservoir_is_no_mistake),
        TEST(a_port_that_is_not_there_is_reported),
        TEST(what_nobody_feeds_is_named_together),
        TEST(a_mistyped_tee_in_the_feed_is_one_mistake_with_the_right_name),
        TEST(a_mistyped_tee_in_a_branch_is_one_mistake_too),
        TEST(a_joint_in_no_run_is_reported),
        TEST(a_dead_leg_with_a_lamp_switch_is_no_mistake),
        TEST(a_valve_that_leads_nowhere_is_reported),
        TEST(a_valve_the_wrong_way_round_is_reported),
        TEST(half_a_shuttle_is_reported),
        TEST(two_masters_on_one_circuit_are_named),
        TEST(the_two_chambers_of_a_master_on_one_circuit_are_named),
        TEST(a_loop_is_a_warning),
        TEST(a_pipe_from_a_tee_to_itself_is_a_loop),
        TEST(a_second_inlet_without_a_run_is_reported),
        TEST(a_bleed_order_with_a_dry_part_is_reported),
        TEST(a_master_that_feeds_nothing_is_reported),
        TEST(an_idle_chamber_of_a_tandem_is_reported),
        TEST(an_empty_car_has_no_mistakes_of_plumbing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
