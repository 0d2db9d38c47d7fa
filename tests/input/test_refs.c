#include "input/refs.h"

#include "car_text.h"
#include "support/cmocka_all.h"

static void a_pedal_works_the_part_it_names(void **state)
{
    (void)state;
    struct car_text car = car_read_more("");
    const struct part_names *works = &car_part(&car, "brake pedal")->as.pedal.works;
    assert_int_equal(works->count, 1);
    assert_int_equal(works->parts[0], system_find(car.system, "brake master"));
    car_finish(&car);
}

static void the_hand_brake_works_both_sides(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[hand brake]\nworks = front disc\n");
    const struct part_names *works = &car_part(&car, "hand brake")->as.parking.works;
    assert_int_equal(works->count, 2);
    assert_string_equal(works->names[0], "front left disc");
    assert_int_equal(works->parts[1], system_find(car.system, "front right disc"));
    car_finish(&car);
}

static void the_only_reservoir_and_fluid_are_taken_and_marked_assumed(void **state)
{
    (void)state;
    struct car_text car = car_read_more("");
    const struct part *master = car_part(&car, "brake master");
    assert_int_equal(master->as.master.reservoir, system_find(car.system, "reservoir"));
    assert_int_equal(part_origin(master, FIELD(as.master.reservoir))->kind, ORIGIN_ASSUMED);
    const struct part *reservoir = car_part(&car, "reservoir");
    assert_int_equal(reservoir->as.reservoir.fluid, system_find(car.system, "fluid"));
    assert_int_equal(part_origin(reservoir, FIELD(as.reservoir.fluid))->kind, ORIGIN_ASSUMED);
    car_finish(&car);
}

static void a_named_reservoir_is_given(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[clutch master]\ntype = single\nbore = 5/8 in\n"
                                        "reservoir = reservoir\ncasting = brake master\n");
    const struct part *master = car_part(&car, "clutch master");
    assert_int_equal(part_origin(master, FIELD(as.master.reservoir))->kind, ORIGIN_GIVEN);
    assert_int_equal(master->as.master.casting, system_find(car.system, "brake master"));
    car_finish(&car);
}

static void a_direct_servo_takes_the_only_master(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[servo]\ntype = direct\n");
    assert_int_equal(car_part(&car, "servo")->as.servo.works,
                     system_find(car.system, "brake master"));
    car_finish(&car);
    car = car_read_more("[servo]\ntype = direct\n[clutch master]\ntype = single\nbore = 1 in\n");
    assert_null(car.system);
    assert_int_equal(car.messages.count, 1);
    assert_true(car_has(&car, "which-one"));
    car_finish(&car);
}

static void references_do_not_depend_on_the_order_of_sections(void **state)
{
    (void)state;
    struct car_text car =
        car_read("[hand brake]\nworks = rear drum\n"
                 "[runs]\nfeed = master, pipe, rear tee\n"
                 "rear = rear tee, hose, rear drum\n"
                 "[brake pedal]\nworks = master\n[master]\nreservoir = reservoir\n"
                 "type = single\nbore = 1 in\n[reservoir]\ncapacity = 100 mL\n"
                 "[rear drum]\nshoes = two leading\nbore = 3/4 in\n"
                 "[vehicle]\ntitle = Back to front\n");
    assert_int_equal(car_part(&car, "hand brake")->as.parking.works.count, 2);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_pedal_works_the_part_it_names),
        cmocka_unit_test(the_hand_brake_works_both_sides),
        cmocka_unit_test(the_only_reservoir_and_fluid_are_taken_and_marked_assumed),
        cmocka_unit_test(a_named_reservoir_is_given),
        cmocka_unit_test(a_direct_servo_takes_the_only_master),
        cmocka_unit_test(references_do_not_depend_on_the_order_of_sections),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
