#include "input/build.h"

#include "car_text.h"
#include "support/near.h"

static void a_brake_without_a_side_is_two_parts(void **state)
{
    (void)state;
    struct car_text car = car_read_more("");
    const struct part *left = car_part(&car, "front left disc");
    const struct part *right = car_part(&car, "front right disc");
    assert_int_equal(left->side, SIDE_LEFT);
    assert_int_equal(right->side, SIDE_RIGHT);
    assert_int_equal(left->axle, AXLE_FRONT);
    near(right->as.disc.bores.bore.m, 0.048, 1e-12);
    const struct origin *origin = part_origin(right, FIELD(as.disc.bores));
    assert_int_equal(origin->kind, ORIGIN_SHARED);
    assert_int_equal(origin->place.line, 15);
    assert_int_equal(left->place.line, 13);
    car_finish(&car);
}

static void a_section_of_one_side_overrides_in_either_order(void **state)
{
    (void)state;
    static const char *const sections[] = {
        "[rear drum]\nshoes = two leading\nbore = 3/4 in\n[rear left drum]\nbore = 1 in\n",
        "[rear left drum]\nbore = 1 in\n[rear drum]\nshoes = two leading\nbore = 3/4 in\n"};
    for (int i = 0; i < 2; i++) {
        struct car_text car = car_read_more(sections[i]);
        const struct part *left = car_part(&car, "rear left drum");
        near(left->as.drum.bore.m, 0.0254, 1e-12);
        assert_int_equal(left->as.drum.shoes, SHOES_TWO_LEADING);
        assert_int_equal(part_origin(left, FIELD(as.drum.bore))->kind, ORIGIN_GIVEN);
        assert_int_equal(part_origin(left, FIELD(as.drum.shoes))->kind, ORIGIN_SHARED);
        near(car_part(&car, "rear right drum")->as.drum.bore.m, 0.01905, 1e-12);
        car_finish(&car);
    }
}

static void a_section_of_one_side_alone_is_one_part(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[rear right disc]\ncaliper = fixed\nbore = 2 of 38 mm\n");
    car_part(&car, "rear right disc");
    assert_int_equal(system_find(car.system, "rear left disc"), -1);
    car_finish(&car);
}

static void side_and_axle_may_be_keys(void **state)
{
    (void)state;
    struct car_text car = car_read_more(
        "[middle disc]\naxle = rear\nside = left\ncaliper = fixed\nbore = 2 of 38 mm\n");
    const struct part *disc = car_part(&car, "middle disc");
    assert_int_equal(disc->axle, AXLE_REAR);
    assert_int_equal(disc->side, SIDE_LEFT);
    car_finish(&car);
}

static void what_all_share_is_overridden_by_a_section(void **state)
{
    (void)state;
    struct car_text car =
        car_read_more("[all hoses]\nrenewed = 2008\ninside = 3 mm\n[brakes left hose]\n"
                      "renewed = 2020\n[all pipes]\nsize = 1/4 in\n");
    const struct part *left = car_part(&car, "brakes left hose");
    assert_int_equal(left->as.hose.renewed.year, 2020);
    near(left->as.hose.inside.m, 0.003, 1e-12);
    assert_int_equal(part_origin(left, FIELD(as.hose.inside))->kind, ORIGIN_SHARED);
    assert_int_equal(part_origin(left, FIELD(as.hose.renewed))->kind, ORIGIN_GIVEN);
    near(left->as.hose.length.m, 0.4, 1e-12);
    assert_int_equal(car_part(&car, "brakes right hose")->as.hose.renewed.year, 2008);
    near(car_part(&car, "feed pipe")->as.pipe.size.m, 0.00635, 1e-12);
    car_finish(&car);
}

static void low_pressure_hoses_come_from_keys_of_their_part(void **state)
{
    (void)state;
    struct car_text car = car_read_more(
        "[all hoses]\nrenewed = 2008\ninside = 3 mm\n[clutch master]\ntype = single\n"
        "bore = 5/8 in\nsupply hose = 0.35 m\n[servo]\ntype = direct\nworks = brake master\n"
        "vacuum hose renewed = 2009\n");
    const struct part *supply = car_part(&car, "clutch master supply hose");
    assert_int_equal(supply->as.hose.use, HOSE_SUPPLY);
    near(supply->as.hose.length.m, 0.35, 1e-12);
    assert_int_equal(supply->as.hose.renewed.year, 2008);
    assert_int_equal(part_origin(supply, FIELD(as.hose.length))->place.line, 25);
    assert_int_equal(part_origin(supply, FIELD(as.hose.inside))->kind, ORIGIN_ASSUMED);
    const struct part *vacuum = car_part(&car, "servo vacuum hose");
    assert_int_equal(vacuum->as.hose.use, HOSE_VACUUM);
    near_unknown(vacuum->as.hose.length.m);
    assert_int_equal(vacuum->as.hose.renewed.year, 2009);
    for (int i = 0; i < car.system->connection_count; i++)
        assert_ptr_not_equal(&car.system->parts[car.system->connections[i].a.part], supply);
    car_finish(&car);
}

static void a_section_adds_to_a_low_pressure_hose(void **state)
{
    (void)state;
    struct car_text car =
        car_read_more("[clutch master]\ntype = single\nbore = 5/8 in\nsupply hose = 0.35 m\n"
                      "[clutch master supply hose]\nlength = 0.4 m\nstate = worn\n");
    const struct part *supply = car_part(&car, "clutch master supply hose");
    near(supply->as.hose.length.m, 0.4, 1e-12);
    assert_int_equal(supply->as.hose.state, HOSE_WORN);
    assert_int_equal(supply->as.hose.use, HOSE_SUPPLY);
    car_finish(&car);
}

static void what_is_not_said_is_assumed_and_marked(void **state)
{
    (void)state;
    struct car_text car = car_read_more("");
    const struct part *disc = car_part(&car, "front left disc");
    assert_int_equal(part_origin(disc, FIELD(as.disc.friction))->kind, ORIGIN_ASSUMED);
    near(disc->as.disc.friction.value, 0.38, 1e-12);
    const struct part *joint = car_part(&car, "front tee");
    assert_int_equal(joint->as.joint.type, JOINT_TEE);
    assert_int_equal(part_origin(joint, FIELD(as.joint.type))->kind, ORIGIN_DERIVED);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_brake_without_a_side_is_two_parts),
        cmocka_unit_test(a_section_of_one_side_overrides_in_either_order),
        cmocka_unit_test(a_section_of_one_side_alone_is_one_part),
        cmocka_unit_test(side_and_axle_may_be_keys),
        cmocka_unit_test(what_all_share_is_overridden_by_a_section),
        cmocka_unit_test(low_pressure_hoses_come_from_keys_of_their_part),
        cmocka_unit_test(a_section_adds_to_a_low_pressure_hose),
        cmocka_unit_test(what_is_not_said_is_assumed_and_marked),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
