#include "network/system.h"

#include <math.h>

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

static struct part_names one_part(struct car *car, int part)
{
    struct part_names names = {.count = 1};
    names.parts = ARENA_ARRAY(car->arena, 1, int);
    names.names = ARENA_ARRAY(car->arena, 1, const char *);
    names.parts[0] = part;
    names.names[0] = car_part(car, part)->name;
    return names;
}

static void a_part_is_found_whatever_its_case_and_blanks(void **state)
{
    struct car *car = *state;
    car_add(car, KIND_JOINT, "front tee");
    const int tee = car_add(car, KIND_JOINT, "axle tee");
    assert_int_equal(system_find(car->system, "Axle  Tee "), tee);
    assert_int_equal(system_find(car->system, "axel tee"), -1);
    assert_int_equal(system_first(car->system, KIND_JOINT), 0);
    assert_int_equal(system_first(car->system, KIND_DISC), -1);
}

static void a_car_without_a_vehicle_section_has_nothing_said(void **state)
{
    struct car *car = *state;
    const struct vehicle *vehicle = system_vehicle(car->system);
    assert_int_equal(vehicle->rear_axle, AXLE_TYPE_NOT_SAID);
    near_unknown(vehicle->mass.kg);
    near_unknown(vehicle->wheelbase.m);
    near_unknown(vehicle->tyre_grip.value);
}

static void the_only_fluid_is_in_every_master(void **state)
{
    struct car *car = *state;
    const int master = car_add(car, KIND_MASTER, "brake master");
    assert_int_equal(system_fluid_of(car->system, master), -1);
    const int fluid = car_add(car, KIND_FLUID, "brake fluid");
    assert_int_equal(system_fluid_of(car->system, master), fluid);
}

static void of_two_fluids_the_reservoir_decides(void **state)
{
    struct car *car = *state;
    const int master = car_add(car, KIND_MASTER, "clutch master");
    const int other = car_add(car, KIND_MASTER, "brake master");
    car_add(car, KIND_FLUID, "brake fluid");
    const int mineral = car_add(car, KIND_FLUID, "clutch fluid");
    const int pot = car_add(car, KIND_RESERVOIR, "clutch reservoir");
    car_add(car, KIND_RESERVOIR, "brake reservoir");
    car_part(car, pot)->as.reservoir.fluid = mineral;
    assert_int_equal(system_fluid_of(car->system, master), -1);
    car_part(car, master)->as.master.reservoir = pot;
    assert_int_equal(system_fluid_of(car->system, master), mineral);
    /* a master in the same casting drinks from the same pot */
    car_part(car, other)->as.master.casting = master;
    assert_int_equal(system_fluid_of(car->system, other), mineral);
}

static void moving_a_value_of_a_copy_leaves_the_car_alone(void **state)
{
    struct car *car = *state;
    const int master = car_add(car, KIND_MASTER, "brake master");
    car_part(car, master)->as.master.bore.m = 0.020;
    struct system *copy = system_copy(car->system, car->arena);
    copy->parts[master].as.master.bore.m = 0.022;
    near(car_part(car, master)->as.master.bore.m, 0.020, 0);
    assert_ptr_equal(copy->parts[master].name, car_part(car, master)->name);
}

static void parts_order_by_axle_then_the_side_away_from_the_driver(void **state)
{
    struct car *car = *state;
    const int vehicle = car_vehicle(car, AXLE_INDEPENDENT, AXLE_LIVE);
    const int rear_right = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_RIGHT);
    const int rear_left = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_LEFT);
    const int front = car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_RIGHT);
    const int tee = car_add(car, KIND_JOINT, "a tee");
    car_part(car, vehicle)->as.vehicle.driver = DRIVER_RIGHT;
    assert_true(system_compare(car->system, rear_left, rear_right) < 0);
    assert_true(system_compare(car->system, front, rear_left) < 0);
    assert_true(system_compare(car->system, tee, rear_right) > 0);
    car_part(car, vehicle)->as.vehicle.driver = DRIVER_LEFT;
    assert_true(system_compare(car->system, rear_left, rear_right) > 0);
}

/* What each kind of axle says of its brakes. Hand-made from the shape of the axles. */
static const struct {
    enum axle_type front, rear;
    enum mount front_left, rear_right;
} axle_cases[] = {
    {AXLE_INDEPENDENT, AXLE_INDEPENDENT, MOUNT_FRONT_LEFT_WHEEL, MOUNT_REAR_RIGHT_WHEEL},
    {AXLE_LIVE, AXLE_LIVE, MOUNT_FRONT_LEFT_WHEEL, MOUNT_REAR_AXLE},
    {AXLE_DEAD, AXLE_DEAD, MOUNT_FRONT_LEFT_WHEEL, MOUNT_REAR_AXLE},
    {AXLE_FORK, AXLE_ARM, MOUNT_FORK, MOUNT_REAR_AXLE},
    {AXLE_TYPE_NOT_SAID, AXLE_TYPE_NOT_SAID, MOUNT_UNKNOWN, MOUNT_UNKNOWN},
};

static void a_brake_is_mounted_as_its_axle_says(void **state)
{
    struct car *car = *state;
    const int vehicle = car_vehicle(car, AXLE_INDEPENDENT, AXLE_LIVE);
    const int front = car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_LEFT);
    const int rear = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_RIGHT);
    for (size_t i = 0; i < sizeof axle_cases / sizeof axle_cases[0]; i++) {
        car_part(car, vehicle)->as.vehicle.front_axle = axle_cases[i].front;
        car_part(car, vehicle)->as.vehicle.rear_axle = axle_cases[i].rear;
        assert_int_equal(system_mount(car->system, front), axle_cases[i].front_left);
        assert_int_equal(system_mount(car->system, rear), axle_cases[i].rear_right);
    }
}

static void what_a_part_says_itself_wins(void **state)
{
    struct car *car = *state;
    car_vehicle(car, AXLE_INDEPENDENT, AXLE_INDEPENDENT);
    const int inboard = car_brake(car, KIND_DISC, AXLE_REAR, SIDE_LEFT);
    car_part(car, inboard)->fitted.on = MOUNT_BODY;
    assert_int_equal(system_mount(car->system, inboard), MOUNT_BODY);
}

static void controls_are_on_the_body_and_the_slave_on_the_engine(void **state)
{
    struct car *car = *state;
    const enum part_kind on_body[] = {KIND_PEDAL, KIND_SERVO, KIND_MASTER, KIND_RESERVOIR};
    car_vehicle(car, AXLE_INDEPENDENT, AXLE_LIVE);
    for (size_t i = 0; i < sizeof on_body / sizeof on_body[0]; i++) {
        const int part = car_add(car, on_body[i], "it");
        assert_int_equal(system_mount(car->system, part), MOUNT_BODY);
    }
    const int slave = car_add(car, KIND_SLAVE, "clutch slave");
    assert_int_equal(system_mount(car->system, slave), MOUNT_ENGINE);
}

static void joints_valves_pipes_and_hoses_do_not_tell(void **state)
{
    struct car *car = *state;
    const enum part_kind silent[] = {KIND_JOINT, KIND_VALVE, KIND_PIPE, KIND_HOSE};
    car_vehicle(car, AXLE_INDEPENDENT, AXLE_LIVE);
    for (size_t i = 0; i < sizeof silent / sizeof silent[0]; i++) {
        const int part = car_add(car, silent[i], "it");
        assert_int_equal(system_mount(car->system, part), MOUNT_UNKNOWN);
    }
}

static void a_hand_lever_and_what_it_works_are_on_the_handlebar(void **state)
{
    struct car *car = *state;
    const int vehicle = car_vehicle(car, AXLE_FORK, AXLE_ARM);
    const int front = car_add(car, KIND_MASTER, "front master");
    const int rear = car_add(car, KIND_MASTER, "rear master");
    const int pot = car_add(car, KIND_RESERVOIR, "front reservoir");
    const int other_pot = car_add(car, KIND_RESERVOIR, "rear reservoir");
    const int lever = car_add(car, KIND_PEDAL, "front lever");
    const int pedal = car_add(car, KIND_PEDAL, "rear pedal");
    car_part(car, front)->as.master.reservoir = pot;
    car_part(car, rear)->as.master.reservoir = other_pot;
    car_part(car, lever)->as.pedal.type = PEDAL_HAND;
    car_part(car, lever)->as.pedal.works = one_part(car, front);
    car_part(car, pedal)->as.pedal.type = PEDAL_FOOT;
    car_part(car, pedal)->as.pedal.works = one_part(car, rear);
    assert_int_equal(system_mount(car->system, lever), MOUNT_HANDLEBAR);
    assert_int_equal(system_mount(car->system, front), MOUNT_HANDLEBAR);
    assert_int_equal(system_mount(car->system, pot), MOUNT_HANDLEBAR);
    assert_int_equal(system_mount(car->system, rear), MOUNT_BODY);
    assert_int_equal(system_mount(car->system, other_pot), MOUNT_BODY);
    assert_int_equal(system_mount(car->system, pedal), MOUNT_BODY);
    /* a car with a hand lever has no handlebar */
    car_part(car, vehicle)->as.vehicle.front_axle = AXLE_INDEPENDENT;
    assert_int_equal(system_mount(car->system, front), MOUNT_BODY);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(a_part_is_found_whatever_its_case_and_blanks),
        TEST(a_car_without_a_vehicle_section_has_nothing_said),
        TEST(the_only_fluid_is_in_every_master),
        TEST(of_two_fluids_the_reservoir_decides),
        TEST(moving_a_value_of_a_copy_leaves_the_car_alone),
        TEST(parts_order_by_axle_then_the_side_away_from_the_driver),
        TEST(a_brake_is_mounted_as_its_axle_says),
        TEST(what_a_part_says_itself_wins),
        TEST(controls_are_on_the_body_and_the_slave_on_the_engine),
        TEST(joints_valves_pipes_and_hoses_do_not_tell),
        TEST(a_hand_lever_and_what_it_works_are_on_the_handlebar),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
