#include "physics/press.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

#define BORE_AREA 334.585e-6 /* of 20.64 mm, m2 */

static struct reach pressed(const struct driven_car *driven, const struct state *state,
                            double effort, struct solution *into)
{
    return press_travel(driven->car.system, driven->network, state, driven->brake_pedal,
                        (struct force){effort}, into);
}

static struct solution *room_of(const struct driven_car *driven)
{
    return solution_room(driven->car.system, driven->network, driven->car.arena);
}

static int circuit_at(const struct driven_car *driven, int part)
{
    return driven->network->vertices[network_vertex(driven->network, part, 0)].circuit;
}

static void only_the_pedal_of_a_brake_is_a_brake_pedal(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    assert_true(press_is_brake(driven.car.system, driven.network, driven.brake_pedal));
    assert_false(press_is_brake(driven.car.system, driven.network, driven.clutch_pedal));
    assert_false(press_is_brake(driven.car.system, driven.network, driven.usual.master));
    driven_finish(&driven);
}

/* Rod: 0.8 mm of gap, 1.2 mm for the ports of both pistons together, and their volumes over the
 * area. Pad: 3 mm of free play, 3.8 times that, and 220 N on 200 N/mm. */
static void a_tandem_adds_up_gap_cut_off_and_volumes(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    struct reach reach = pressed(&driven, &usual, 220, into);
    double volume = into->circuits[circuit_at(&driven, driven.usual.front_left)].volume.m3 +
                    into->circuits[circuit_at(&driven, driven.usual.rear_left)].volume.m3;
    near(reach.rod_travel.m, 0.8e-3 + 1.2e-3 + volume / BORE_AREA, 1e-7);
    near(reach.travel.m, 3e-3 + 3.8 * reach.rod_travel.m + 220 / 200e3, 1e-9);
    near(reach.past_floor.m, reach.travel.m - 150e-3, 1e-12);
    assert_false(reach.dead);
    near_unknown(reach.tilt.rad);
    driven_finish(&driven);
}

/* Hand sum on the limit case: the rod's way at no pressure at all is gap and ports alone. The
 * spring between the pistons moves the second one as long as it is as strong as the second spring
 * and the friction together; 1 N less and the first piston passes its port alone, 1.2 mm more. */
static void both_ports_are_passed_in_one_movement_by_the_stronger_spring(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    int master = driven.usual.master;
    near(pressed(&driven, &usual, 0, into).rod_travel.m, 0.8e-3 + 1.2e-3, 1e-12);
    driven_say(&driven, master, "secondary spring", 70);
    driven_say(&driven, master, "seal friction", 20);
    driven_say(&driven, master, "primary spring", 90);
    near(pressed(&driven, &usual, 0, into).rod_travel.m, 0.8e-3 + 1.2e-3, 1e-12);
    driven_say(&driven, master, "primary spring", 89);
    near(pressed(&driven, &usual, 0, into).rod_travel.m, 0.8e-3 + 2 * 1.2e-3, 1e-12);
    driven_finish(&driven);
}

/* Who feels for the free play of a pedal without servo closes the gap of its rod: 5 mm of play with
 * 0.8 mm of gap, 3.8:1, port 1.2 mm, no pressure. Behind a servo nobody feels it. Where no play was
 * felt the gap is all there is. */
static void the_gap_lies_within_the_free_play_but_not_behind_a_servo(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    driven_say(&driven, driven.brake_pedal, "free play", 5e-3);
    near(pressed(&driven, &usual, 0, into).travel.m, 5e-3 + 3.8 * (0.8e-3 + 1.2e-3), 1e-12);
    driven_say(&driven, driven.servo, "lost motion", 1e-3);
    driven_say(&driven, driven.servo, "lost motion without vacuum", 2e-3);
    near(pressed(&driven, &usual, 0, into).travel.m, 5e-3 + 3.8 * (1e-3 + 0.8e-3 + 1.2e-3), 1e-12);
    usual.assisted = false;
    near(pressed(&driven, &usual, 0, into).travel.m, 5e-3 + 3.8 * (2e-3 + 0.8e-3 + 1.2e-3), 1e-12);
    car_part(&driven.car, driven.brake_pedal)->as.pedal.works =
        car_names(&driven.car, 1, &driven.usual.master);
    car_part(&driven.car, driven.servo)->as.servo.works = -1;
    near(pressed(&driven, &usual, 0, into).travel.m, 5e-3 + 3.8 * 1.2e-3, 1e-12);
    driven_unsay(&driven, driven.brake_pedal, "free play");
    near(pressed(&driven, &usual, 0, into).travel.m, 3.8 * (0.8e-3 + 1.2e-3), 1e-12);
    driven_finish(&driven);
}

static void the_gap_of_a_servos_rod_goes_before_that_of_the_master(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    double before = pressed(&driven, &usual, 220, into).rod_travel.m;
    driven_say(&driven, driven.servo, "output rod gap", 0.3e-3);
    near(pressed(&driven, &usual, 220, into).rod_travel.m, before - 0.5e-3, 1e-9);
    driven_unsay(&driven, driven.servo, "output rod gap"); /* assumed again: 0.3 mm */
    driven_settle(&driven);
    near(pressed(&driven, &usual, 220, into).rod_travel.m, before - 0.5e-3, 1e-9);
    driven_say(&driven, driven.usual.master, "rod gap", 1e-3); /* the only one that was measured */
    near(pressed(&driven, &usual, 220, into).rod_travel.m, before + 0.2e-3, 1e-9);
    driven_finish(&driven);
}

/* Full stroke of the lost piston is 17 mm, half of 34 mm. With the first lost the second passes its
 * port after that; with the second lost the first has passed its own on the way. */
static void a_lost_piston_goes_its_full_stroke(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    int front = circuit_at(&driven, driven.usual.front_left);
    int rear = circuit_at(&driven, driven.usual.rear_left);
    struct state lost = state_usual();
    for (int i = 0; i < 2; i++) {
        int other = i == 0 ? rear : front;
        lost.lost_circuit = i == 0 ? front : rear;
        struct reach reach = pressed(&driven, &lost, 220, into);
        double left_over = (i == 0 ? 1.2e-3 : 0) + into->circuits[other].volume.m3 / BORE_AREA;
        near(reach.rod_travel.m, 0.8e-3 + 17e-3 + left_over, 1e-7);
        near(into->circuits[lost.lost_circuit].pressure.pa, 0, 0);
        assert_true(into->circuits[other].pressure.pa > 6e6);
        assert_false(reach.dead);
    }
    driven_finish(&driven);
}

/* Without springs in it, both circuits of a tandem have the pressure of one piston: rod force of
 * 2261.76 N (test_pressure.c) times 0.95 over the area. */
static void both_circuits_of_a_tandem_have_one_pressure(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    struct force rod = press_pressures(driven.car.system, driven.network, &usual,
                                       driven.brake_pedal, (struct force){220}, into);
    near(rod.n, 2261.76, 1e-6);
    near_rel(into->circuits[circuit_at(&driven, driven.usual.front_left)].pressure.pa,
             0.95 * 2261.76 / BORE_AREA, 1e-5);
    near(into->circuits[circuit_at(&driven, driven.usual.rear_left)].pressure.pa,
         into->circuits[circuit_at(&driven, driven.usual.front_left)].pressure.pa, 0);
    driven_finish(&driven);
}

/* Springs of 120 and 70 N: 2261.76 N of rod force times 0.95, less 120, over the area; 50 N more in
 * the second. Lost, the first takes its spring with it. */
static void springs_between_the_pistons_set_the_circuits_apart(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.usual.master, "primary spring", 120);
    driven_say(&driven, driven.usual.master, "secondary spring", 70);
    struct solution *into = room_of(&driven);
    int front = circuit_at(&driven, driven.usual.front_left);
    int rear = circuit_at(&driven, driven.usual.rear_left);
    struct state pressed_state = state_usual();
    pressed(&driven, &pressed_state, 220, into);
    double rod = 0.95 * 2261.76;
    near_rel(into->circuits[front].pressure.pa, (rod - 120) / BORE_AREA, 1e-5);
    near_rel(into->circuits[rear].pressure.pa, (rod - 70) / BORE_AREA, 1e-5);
    pressed_state.lost_circuit = front;
    pressed(&driven, &pressed_state, 220, into);
    near_rel(into->circuits[rear].pressure.pa, (rod - 70) / BORE_AREA, 1e-5);
    pressed_state.lost_circuit = rear;
    pressed(&driven, &pressed_state, 220, into);
    near_rel(into->circuits[front].pressure.pa, (rod - 120) / BORE_AREA, 1e-5);
    driven_finish(&driven);
}

static double rod_parts(const struct circuit_state *taken)
{
    double sum = taken->rod_cut_off.m + taken->rod_lost.m;
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        sum += taken->rod_by_cause[cause].m;
    return sum;
}

static void what_the_circuits_take_of_the_rods_travel_adds_up(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.fluid, "air", 0.3e-6);
    struct solution *into = room_of(&driven);
    int front = circuit_at(&driven, driven.usual.front_left);
    int rear = circuit_at(&driven, driven.usual.rear_left);
    for (int stepped = 0; stepped < 2; stepped++) {
        if (stepped)
            driven_say(&driven, driven.usual.master, "large bore", 28e-3);
        for (int lost = -1; lost < 2; lost++) {
            struct state pressed_state = state_usual();
            pressed_state.lost_circuit = lost < 0 ? -1 : lost == 0 ? front : rear;
            struct reach reach = pressed(&driven, &pressed_state, 220, into);
            double sum =
                0.8e-3 + rod_parts(&into->circuits[front]) + rod_parts(&into->circuits[rear]);
            near(reach.rod_travel.m, sum, 1e-15);
            double strokes = into->circuits[front].stroke.m + into->circuits[rear].stroke.m;
            near(reach.rod_travel.m, 0.8e-3 + strokes, 1e-15);
        }
    }
    driven_finish(&driven);
}

/* Large bore 28 mm (615.752 mm2): what both circuits take up to 6 bar is delivered by it, the rest
 * by the bore. Lost front: no help of the large bore. */
static void a_stepped_bore_shortens_the_travel_by_what_it_delivers(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    int circuits[] = {circuit_at(&driven, driven.usual.front_left),
                      circuit_at(&driven, driven.usual.rear_left)};
    struct state usual = state_usual();
    driven_say(&driven, driven.usual.master, "large bore", 28e-3);
    driven_say(&driven, driven.usual.master, "take-up pressure", 6e5);
    double after = pressed(&driven, &usual, 220, into).rod_travel.m, all = 0, early = 0;
    for (int i = 0; i < 2; i++)
        all += into->circuits[circuits[i]].volume.m3;
    /* An effort that makes just 6 bar with the plain bore: 0.6 MPa * 334.585 mm2 / 0.95 on the rod;
     * the servo makes 150 N and 2.8 times what is over 40 N of it. */
    driven_say(&driven, driven.usual.master, "large bore", NAN);
    double rod = 6e5 * BORE_AREA / 0.95, effort = ((rod - 150) / 2.8 + 40) / (3.8 * 0.95);
    pressed(&driven, &usual, effort, into);
    near_rel(into->circuits[circuits[0]].pressure.pa, 6e5, 1e-5);
    for (int i = 0; i < 2; i++)
        early += into->circuits[circuits[i]].volume.m3;
    near(after, 0.8e-3 + 1.2e-3 + early / 615.752e-6 + (all - early) / BORE_AREA, 2e-7);
    driven_finish(&driven);
}

/* A remote servo before one rigid caliper that only has to close its gaps: 2 pistons of 1809.557
 * mm2 by 0.15 mm, 542.867 mm3. They are closed at 0.5 bar, before the servo cuts in at 4 bar. Where
 * fluid passes it comes whole from the master, and 0.2 mL for the servo's valve; where the piston
 * pushes all of it the rod of 6 mm goes along: 1 - (6/19.05)^2 = 0.900800 of it. */
static void the_rod_of_a_remote_servo_goes_along(void **state)
{
    (void)state;
    struct car car = car_start();
    car_vehicle(&car, AXLE_INDEPENDENT, AXLE_INDEPENDENT);
    int master = car_add(&car, KIND_MASTER, "master");
    car_part(&car, master)->as.master = (struct master){.type = MASTER_SINGLE,
                                                        .bore = {16e-3},
                                                        .stroke = {30e-3},
                                                        .cut_off = {1e-3},
                                                        .efficiency = {1},
                                                        .take_up = {NAN},
                                                        .large_bore = {NAN},
                                                        .reservoir = -1,
                                                        .casting = -1};
    int servo = car_add(&car, KIND_SERVO, "servo");
    struct servo *helps = &car_part(&car, servo)->as.servo;
    helps->type = SERVO_REMOTE;
    helps->works = -1;
    helps->diameter.m = 0.15;
    helps->bore.m = 19.05e-3;
    int disc = car_brake(&car, KIND_DISC, AXLE_FRONT, SIDE_LEFT);
    struct disc *brake = &car_part(&car, disc)->as.disc;
    brake->caliper = CALIPER_FIXED;
    brake->bores = (struct bores){2, {48e-3}};
    brake->roll_back.m = 0.15e-3;
    brake->pad_squash.m = brake->body_opening.m = 0;
    car_pipe(&car, master, 0, 1e-12, servo, 0);
    car_pipe(&car, servo, 1, 1e-12, disc, 0);
    car_part(&car, car_add(&car, KIND_FLUID, "fluid"))->as.fluid.grade = GRADE_DOT4;
    int at = car_add(&car, KIND_PEDAL, "pedal");
    struct pedal *pedal = &car_part(&car, at)->as.pedal;
    pedal->type = PEDAL_FOOT;
    pedal->works = car_names(&car, 1, &master);
    pedal->ratio.value = 5;
    pedal->free_play.m = 2e-3;
    for (int i = 0; i < car.system->part_count; i++) {
        part_assume(car_part(&car, i));
        car_part(&car, i)->fitted.chamber.m3 = 1e-15;
    }
    struct messages messages = messages_start(car.arena);
    struct network *network = network_build(car.system, car.arena, &messages);
    struct solution *into = solution_room(car.system, network, car.arena);
    const double area = 201.061930e-6, gaps = 542.8672e-9, valve = 0.2e-6;
    const struct {
        enum yes_no passes;
        bool assisted;
        double volume;
    } rows[] = {{YES, true, gaps + valve},
                {YES, false, gaps},
                {NO, true, 0.900800 * gaps + valve},
                {NO, false, 0.900800 * gaps}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct state in = state_usual();
        in.assisted = rows[i].assisted;
        helps->passes = rows[i].passes;
        struct reach reach = press_travel(car.system, network, &in, at, (struct force){300}, into);
        near(reach.rod_travel.m, 1e-3 + rows[i].volume / area, 1e-8);
    }
    car_finish(&car);
}

/* Two masters of one bore on a bar with arms of 30 and 50 mm, each with one disc; the second disc
 * is larger, so its rod goes farther. */
static void a_bar_goes_the_weighted_mean_of_its_rods(void **state)
{
    (void)state;
    struct car car = car_start();
    int masters[2], discs[2];
    car_vehicle(&car, AXLE_INDEPENDENT, AXLE_INDEPENDENT);
    for (int i = 0; i < 2; i++) {
        masters[i] = car_add(&car, KIND_MASTER, i == 0 ? "front master" : "rear master");
        discs[i] = car_brake(&car, KIND_DISC, i == 0 ? AXLE_FRONT : AXLE_REAR, SIDE_LEFT);
        struct master *master = &car_part(&car, masters[i])->as.master;
        master->type = MASTER_SINGLE;
        master->bore.m = 16e-3;
        master->stroke.m = 30e-3;
        struct disc *disc = &car_part(&car, discs[i])->as.disc;
        disc->caliper = CALIPER_FIXED;
        disc->bores = (struct bores){2, {i == 0 ? 36e-3 : 48e-3}};
        car_pipe(&car, masters[i], 0, 1, discs[i], 0);
    }
    int fluid = car_add(&car, KIND_FLUID, "fluid");
    car_part(&car, fluid)->as.fluid.grade = GRADE_DOT4;
    int at = car_add(&car, KIND_PEDAL, "pedal");
    struct pedal *pedal = &car_part(&car, at)->as.pedal;
    pedal->type = PEDAL_FOOT;
    pedal->works = car_names(&car, 2, masters);
    pedal->ratio.value = 5;
    pedal->bar_first.m = 30e-3;
    pedal->bar_second.m = 50e-3;
    for (int i = 0; i < car.system->part_count; i++)
        part_assume(car_part(&car, i));
    struct messages messages = messages_start(car.arena);
    struct network *network = network_build(car.system, car.arena, &messages);
    struct solution *into = solution_room(car.system, network, car.arena);
    struct state usual = state_usual();
    struct reach reach = press_travel(car.system, network, &usual, at, (struct force){300}, into);

    double travels[2], area = 201.062e-6; /* of 16 mm */
    for (int i = 0; i < 2; i++) {
        int circuit = network->vertices[network_vertex(network, discs[i], 0)].circuit;
        travels[i] = 0.8e-3 + 1.2e-3 + into->circuits[circuit].volume.m3 / area;
    }
    assert_true(travels[1] > travels[0] + 1e-3);
    /* The bearing lies 30 of 80 from the first rod: it goes 50/80 of the first's way. */
    near(reach.rod_travel.m, (50 * travels[0] + 30 * travels[1]) / 80, 1e-7);
    near(reach.tilt.rad, atan((travels[0] - travels[1]) / 80e-3), 1e-6);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(only_the_pedal_of_a_brake_is_a_brake_pedal),
        cmocka_unit_test(a_tandem_adds_up_gap_cut_off_and_volumes),
        cmocka_unit_test(both_ports_are_passed_in_one_movement_by_the_stronger_spring),
        cmocka_unit_test(the_gap_lies_within_the_free_play_but_not_behind_a_servo),
        cmocka_unit_test(the_gap_of_a_servos_rod_goes_before_that_of_the_master),
        cmocka_unit_test(a_lost_piston_goes_its_full_stroke),
        cmocka_unit_test(both_circuits_of_a_tandem_have_one_pressure),
        cmocka_unit_test(springs_between_the_pistons_set_the_circuits_apart),
        cmocka_unit_test(what_the_circuits_take_of_the_rods_travel_adds_up),
        cmocka_unit_test(a_stepped_bore_shortens_the_travel_by_what_it_delivers),
        cmocka_unit_test(the_rod_of_a_remote_servo_goes_along),
        cmocka_unit_test(a_bar_goes_the_weighted_mean_of_its_rods),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
