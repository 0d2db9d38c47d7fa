#include "purge/purge.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

static int circuit_of(const struct driven_car *driven, int part)
{
    const int vertex = network_vertex(driven->network, part, 0);
    return driven->network->vertices[vertex].circuit;
}

static int nipple_of(const struct purge_net *net, int part)
{
    for (int i = 0; i < net->nipple_count; i++) {
        if (net->nipples[i].nipple.part == part)
            return i;
    }
    return -1;
}

static void path_volumes_are_those_of_the_network(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct arena *arena = driven.car.arena;
    const int brakes[] = {driven.usual.front_left, driven.usual.rear_left, driven.usual.rear_right,
                          driven.usual.slave};
    for (int i = 0; i < 4; i++) {
        bool complete = false;
        const struct purge_net *net =
            purge_net_of(driven.car.system, driven.network, circuit_of(&driven, brakes[i]), arena);
        const double expected =
            network_path_volume(driven.car.system, driven.network,
                                network_vertex(driven.network, brakes[i], 0), &complete);
        assert_true(complete);
        /* what joins the halves of an opposed caliper: 1.5 mL, from memory */
        const bool halves = brakes[i] == driven.usual.front_left;
        near_rel(purge_path_volume(net, nipple_of(net, brakes[i])),
                 expected + (halves ? 1.5e-6 : 0), 1e-12);
    }
    driven_finish(&driven);
}

static void what_another_circuit_reaches_is_on_no_leg(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int others = 0, own = 0;
    for (int c = 0; c < driven.network->circuit_count; c++) {
        const struct purge_net *net =
            purge_net_of(driven.car.system, driven.network, c, driven.car.arena);
        for (int v = 0; v < driven.network->vertex_count; v++) {
            bool of_it = driven.network->vertices[v].circuit == c;
            assert_int_equal(net->leg_at[v] >= 0, of_it);
            (*(of_it ? &own : &others))++;
        }
    }
    assert_true(own > 10 && others > 10);
    driven_finish(&driven);
}

static void a_dry_circuit_is_full_of_air_and_can_be_bled(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct arena *arena = driven.car.arena;
    for (int c = 0; c < driven.network->circuit_count; c++) {
        struct purge_net *net = purge_net_of(driven.car.system, driven.network, c, arena);
        purge_net_dry(net, driven.network, driven.car.system, driven.network->circuits[c].source);
        for (int i = 0; i < net->leg_count; i++)
            near_rel(net->legs[i].air, net->legs[i].volume, 1e-15);
        for (int i = 0; i < net->pot_count; i++)
            near_rel(net->pots[i].air, net->pots[i].volume, 1e-15);
        const struct purge_way way = {.method = METHOD_PEDAL,
                                      .stroke = 8e-6,
                                      .stroke_time = 1,
                                      .pause_time = 2,
                                      .reservoir = NAN,
                                      .most_strokes = 400};
        struct purge_turn turns[4];
        for (int i = 0; i < net->nipple_count; i++)
            turns[i] = (struct purge_turn){i, -1};
        struct purge_room *room = purge_room(net, 4, false, arena);
        const struct purge_result *result = purge_run(net, &way, turns, net->nipple_count, room);
        near(result->air_left, 0, 1e-12);
        assert_true(result->strokes > 1 && result->strokes < 40);
        assert_true(result->worst_balance < 1e-15);
    }
    driven_finish(&driven);
}

static void what_is_dried_begins_at_the_vertex(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct arena *arena = driven.car.arena;
    const int rear = circuit_of(&driven, driven.usual.rear_left);
    struct purge_net *net = purge_net_of(driven.car.system, driven.network, rear, arena);
    const int left = network_vertex(driven.network, driven.usual.rear_left, 0);
    purge_net_dry(net, driven.network, driven.car.system, left);
    double legs = 0, pots = 0;
    for (int i = 0; i < net->leg_count; i++)
        legs += net->legs[i].air;
    for (int i = 0; i < net->pot_count; i++)
        pots += net->pots[i].air;
    near(legs, 0, 1e-18);
    const int pot = net->nipples[nipple_of(net, driven.usual.rear_left)].pot;
    near_rel(pots, net->pots[pot].volume, 1e-15);
    driven_finish(&driven);
}

static struct purge_net *net_of(struct driven_car *driven, int part)
{
    return purge_net_of(driven->car.system, driven->network, circuit_of(driven, part),
                        driven->car.arena);
}

static void two_nipples_on_one_inlet_are_two_pots_the_outer_behind(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const int brake = driven.usual.front_left;
    struct part *part = car_part(&driven.car, brake);
    const double whole =
        purge_path_volume(net_of(&driven, brake), nipple_of(net_of(&driven, brake), brake));
    part->fitted.nipples = 2;
    part->fitted.nipple_names = "inner, outer";
    const struct purge_net *net = net_of(&driven, brake);
    const int inner = nipple_of(net, brake), outer = inner + 1;
    assert_int_equal(net->nipples[outer].nipple.index, 1);
    assert_int_equal(net->pots[net->nipples[outer].pot].behind, net->nipples[inner].pot);
    assert_int_equal(net->pots[net->nipples[inner].pot].behind, -1);
    near_rel(purge_path_volume(net, outer), whole, 1e-12);
    assert_true(purge_path_volume(net, inner) < whole);
    driven_finish(&driven);
}

/* Opposed pistons behind one nipple: half the volume each side, 1.5 mL between them. A sliding
 * caliper is one room, and a volume that was given holds all. */
static void an_opposed_caliper_with_one_nipple_is_two_rooms(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct part *part = car_part(&driven.car, driven.usual.front_left);
    const struct purge_net *net = net_of(&driven, driven.usual.front_left);
    bool assumed;
    const double whole = part_chamber_volume(part, 0, &assumed).m3;
    const struct purge_pot *far = &net->pots[net->nipples[0].pot], *near_half = far - 1;
    assert_int_equal(far->behind, near_half - net->pots);
    assert_true(near_half->open_above && !far->open_above);
    assert_int_equal(near_half->behind, -1);
    near(near_half->volume, whole / 2, 1e-15);
    near(far->volume, whole / 2 + 1.5e-6, 1e-15);
    assert_int_equal(purge_clears_too(net, net->nipples[0].pot), far->behind);
    assert_int_equal(purge_clears_too(net, far->behind), -1);
    part->fitted.chamber = (struct volume){30e-6};
    net = net_of(&driven, driven.usual.front_left);
    near(net->pots[net->nipples[0].pot].volume, 15e-6, 1e-15);
    part->as.disc.caliper = CALIPER_SLIDING;
    net = net_of(&driven, driven.usual.front_left);
    near(net->pots[net->nipples[0].pot].volume, 30e-6, 1e-15);
    assert_int_equal(purge_clears_too(net, net->nipples[0].pot), -1);
    driven_finish(&driven);
}

/* Pads 10 mm new, 4 mm left: two pistons of 48 mm have gone 6 mm each, 21.71 mL by hand; pushed
 * home that is no room. */
static void pistons_pushed_home_leave_less_room(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const int brake = driven.usual.front_left;
    struct part *part = car_part(&driven.car, brake);
    part->as.disc.bores = (struct bores){2, {48e-3}};
    part->as.disc.pad_new = part->as.disc.pad_left = (struct length){10e-3};
    const double home = purge_path_volume(net_of(&driven, brake), 0);
    part->as.disc.pad_left = (struct length){4e-3};
    part->fitted.nipple_below = (struct length){5e-3};
    struct purge_net *net = net_of(&driven, brake);
    near(purge_path_volume(net, 0), home + 21.7147e-6, 1e-10);
    const double trapped = purge_trapped_at(net, 0);
    purge_net_push_home(net, driven.car.system, brake);
    near(purge_path_volume(net, 0), home, 1e-12);
    near_rel(purge_trapped_at(net, 0), trapped / 2, 1e-9);
    purge_net_push_home(net, driven.car.system, driven.usual.rear_left); /* a drum: nothing */
    near(purge_path_volume(net, 0), home, 1e-12);
    part->fitted.chamber = (struct volume){30e-6};
    net = net_of(&driven, brake);
    const double given = purge_path_volume(net, 0);
    purge_net_push_home(net, driven.car.system, brake);
    near(purge_path_volume(net, 0), given, 1e-15);
    driven_finish(&driven);
}

static void a_caliper_with_two_inlets_lies_in_two_nets(void **state)
{
    (void)state;
    struct car car = car_start();
    const int master = car_add(&car, KIND_MASTER, "brake master");
    car_part(&car, master)->as.master.type = MASTER_TANDEM;
    const int disc = car_brake(&car, KIND_DISC, AXLE_FRONT, SIDE_LEFT);
    car_part(&car, disc)->as.disc.inlets = 2;
    car_part(&car, disc)->fitted.nipples = 2;
    car_pipe(&car, master, 0, 1.0, disc, 0);
    car_pipe(&car, master, 1, 1.5, disc, 1);
    const struct network *network = network_build(car.system, car.arena, NULL);
    assert_int_equal(network->circuit_count, 2);
    for (int c = 0; c < 2; c++) {
        const struct purge_net *net = purge_net_of(car.system, network, c, car.arena);
        assert_int_equal(net->nipple_count, 1);
        assert_int_equal(net->pot_count, 1);
        assert_int_equal(net->pots[0].chamber, net->nipples[0].nipple.index);
    }
    car_finish(&car);
}

static void a_nipple_below_the_top_traps_a_segment(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct part *part = car_part(&driven.car, driven.usual.front_left);
    part->as.disc.bores = (struct bores){2, {54e-3}};
    part->fitted.chamber.m3 = 45.804e-6;
    part->fitted.nipple_below.m = 10e-3;
    const struct purge_net *net = net_of(&driven, driven.usual.front_left);
    near(purge_trapped_at(net, nipple_of(net, driven.usual.front_left)), 5.840e-6, 1e-9);
    driven_finish(&driven);
}

static double climb_to(const struct purge_net *net, int nipple, bool *assumed)
{
    double climb = 0;
    *assumed = false;
    for (int leg = net->nipples[nipple].leg; net->legs[leg].above >= 0;
         leg = net->legs[leg].above) {
        climb += net->legs[leg].climb;
        *assumed |= net->legs[leg].climb_assumed;
    }
    return climb;
}

static void climbs_come_from_heights_and_add_up(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const int brake = driven.usual.rear_left;
    bool assumed;
    const struct purge_net *level = net_of(&driven, brake);
    near(climb_to(level, nipple_of(level, brake), &assumed), 0, 0);
    assert_true(assumed);
    car_part(&driven.car, driven.usual.master)->fitted.height.m = 0.80;
    car_part(&driven.car, brake)->fitted.height.m = 0.35;
    const struct purge_net *net = net_of(&driven, brake);
    near(climb_to(net, nipple_of(net, brake), &assumed), -0.45, 1e-12);
    assert_false(assumed);
    driven_finish(&driven);
}

/* A pipe of 3 m over an axle: up from 0.3 m to 0.6 m and down again to 0.25 m. */
static void a_pipe_over_something_climbs_and_falls(void **state)
{
    (void)state;
    struct car car = car_start();
    const int master = car_add(&car, KIND_MASTER, "brake master");
    car_part(&car, master)->as.master.type = MASTER_SINGLE;
    car_part(&car, master)->fitted.height.m = 0.30;
    const int drum = car_brake(&car, KIND_DRUM, AXLE_REAR, SIDE_LEFT);
    car_part(&car, drum)->fitted.height.m = 0.25;
    const int pipe = car_pipe(&car, master, 0, 3.0, drum, 0);
    const struct network *network = network_build(car.system, car.arena, NULL);
    const double flat = purge_path_volume(purge_net_of(car.system, network, 0, car.arena), 0);
    car_part(&car, pipe)->as.pipe.highest.m = 0.60;
    struct purge_net *net = purge_net_of(car.system, network, 0, car.arena);
    assert_int_equal(net->leg_count, 3);
    near(net->legs[1].climb, 0.30, 1e-12);
    near(net->legs[2].climb, -0.35, 1e-12);
    near_rel(purge_path_volume(net, 0), flat, 1e-12);
    /* all of it is dried with what lies beyond the master */
    purge_net_dry(net, network, car.system, network->circuits[0].source);
    for (int i = 0; i < 3; i++)
        near_rel(net->legs[i].air, net->legs[i].volume, 1e-15);
    /* gravity from 0.2 m above the master cannot push air down from the hump */
    const struct purge_way way = {.method = METHOD_GRAVITY,
                                  .stroke = 8e-6,
                                  .stroke_time = 1,
                                  .push = net->density * 9.80665 * 0.25,
                                  .reservoir = NAN,
                                  .most_strokes = 100};
    const struct purge_turn turn = {0, -1};
    struct purge_room *room = purge_room(net, 1, false, car.arena);
    assert_true(purge_run(net, &way, &turn, 1, room)->turns[0].gave_up);
    car_part(&car, pipe)->as.pipe.highest.m = NAN;
    car_part(&car, pipe)->as.pipe.lowest.m = 0.10;
    net = purge_net_of(car.system, network, 0, car.arena);
    near(net->legs[1].climb, -0.20, 1e-12);
    near(net->legs[2].climb, 0.15, 1e-12);
    car_finish(&car);
}

static void a_servo_that_shuts_at_rest_shuts_its_net(void **state)
{
    (void)state;
    struct car car = car_start();
    const int master = car_add(&car, KIND_MASTER, "brake master");
    car_part(&car, master)->as.master.type = MASTER_SINGLE;
    const int servo = car_add(&car, KIND_SERVO, "remote servo");
    car_part(&car, servo)->as.servo.type = SERVO_REMOTE;
    const int drum = car_brake(&car, KIND_DRUM, AXLE_REAR, SIDE_LEFT);
    car_pipe(&car, master, 0, 1.0, servo, 0);
    car_pipe(&car, servo, 1, 2.0, drum, 0);
    const struct network *network = network_build(car.system, car.arena, NULL);
    for (int shut = 0; shut < 2; shut++) {
        car_part(&car, servo)->as.servo.passes = shut ? NO : YES;
        const struct purge_net *net = purge_net_of(car.system, network, 0, car.arena);
        bool any = false;
        for (int i = 0; i < net->leg_count; i++)
            any |= net->legs[i].shut;
        assert_true(any == shut);
    }
    car_finish(&car);
}

static void what_is_not_known_is_taken_as_usual_and_marked(void **state)
{
    (void)state;
    struct car car = car_start();
    const int master = car_add(&car, KIND_MASTER, "brake master");
    const int drum = car_brake(&car, KIND_DRUM, AXLE_REAR, SIDE_LEFT);
    car_pipe(&car, master, 0, NAN, drum, 0);
    const struct network *network = network_build(car.system, car.arena, NULL);
    const struct purge_net *net = purge_net_of(car.system, network, 0, car.arena);
    assert_true(net->any_assumed);
    for (int i = 0; i < net->leg_count; i++)
        assert_true(net->legs[i].volume > 0 && net->legs[i].bore > 0 && net->legs[i].length > 0);
    assert_true(net->viscosity > 0 && net->density > 0 && net->tension > 0);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(path_volumes_are_those_of_the_network),
        cmocka_unit_test(what_another_circuit_reaches_is_on_no_leg),
        cmocka_unit_test(a_dry_circuit_is_full_of_air_and_can_be_bled),
        cmocka_unit_test(what_is_dried_begins_at_the_vertex),
        cmocka_unit_test(an_opposed_caliper_with_one_nipple_is_two_rooms),
        cmocka_unit_test(pistons_pushed_home_leave_less_room),
        cmocka_unit_test(two_nipples_on_one_inlet_are_two_pots_the_outer_behind),
        cmocka_unit_test(a_caliper_with_two_inlets_lies_in_two_nets),
        cmocka_unit_test(a_nipple_below_the_top_traps_a_segment),
        cmocka_unit_test(climbs_come_from_heights_and_add_up),
        cmocka_unit_test(a_pipe_over_something_climbs_and_falls),
        cmocka_unit_test(a_servo_that_shuts_at_rest_shuts_its_net),
        cmocka_unit_test(what_is_not_known_is_taken_as_usual_and_marked),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
