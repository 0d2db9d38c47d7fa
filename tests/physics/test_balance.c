#include "physics/balance.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

#define G  9.80665
#define PI 3.14159265358979323846

/* Four discs on one master, no threshold, so that the rear's share phi of the brake force is the
 * same at every pressure. */
struct four_discs {
    struct car car;
    int vehicle, pedal, discs[4];
    struct network *network;
    struct solution *room;
};

static struct four_discs build(double wheelbase, double rear_share, double height,
                               double front_radius, double rear_radius)
{
    struct four_discs built = {.car = car_start()};
    struct car *car = &built.car;
    built.vehicle = car_vehicle(car, AXLE_INDEPENDENT, AXLE_INDEPENDENT);
    int master = car_add(car, KIND_MASTER, "master"), block = car_add(car, KIND_JOINT, "block");
    car_part(car, master)->as.master.type = MASTER_SINGLE;
    car_part(car, master)->as.master.bore.m = 19e-3;
    car_pipe(car, master, 0, 1, block, 0);
    for (int i = 0; i < 4; i++) {
        built.discs[i] = car_brake(car, KIND_DISC, i < 2 ? AXLE_FRONT : AXLE_REAR,
                                   i % 2 == 0 ? SIDE_LEFT : SIDE_RIGHT);
        struct disc *disc = &car_part(car, built.discs[i])->as.disc;
        disc->caliper = CALIPER_FIXED;
        disc->bores = (struct bores){2, {40e-3}};
        disc->threshold.pa = 0;
        disc->effective_radius.m = i < 2 ? front_radius : rear_radius;
        car_pipe(car, block, 0, 1, built.discs[i], 0);
    }
    built.pedal = car_add(car, KIND_PEDAL, "pedal");
    struct pedal *pedal = &car_part(car, built.pedal)->as.pedal;
    pedal->type = PEDAL_FOOT;
    pedal->works = car_names(car, 1, &master);
    pedal->ratio.value = 6;
    struct vehicle *vehicle = &car_part(car, built.vehicle)->as.vehicle;
    vehicle->mass.kg = 1000;
    vehicle->front_share.of_1 = 1 - rear_share;
    vehicle->wheelbase.m = wheelbase;
    vehicle->centre_height.m = height;
    vehicle->front_tyre.m = vehicle->rear_tyre.m = 0.3;
    int fluid = car_add(car, KIND_FLUID, "fluid");
    car_part(car, fluid)->as.fluid.grade = GRADE_DOT4;
    for (int i = 0; i < car->system->part_count; i++)
        part_assume(car_part(car, i));
    struct messages messages = messages_start(car->arena);
    built.network = network_build(car->system, car->arena, &messages);
    built.room = solution_room(car->system, built.network, car->arena);
    return built;
}

static struct first_lock lock_at(struct four_discs *built, double grip)
{
    struct state state = state_usual();
    return balance_first_lock(built->car.system, built->network, &state, (struct number){grip},
                              built->room);
}

static struct vehicle *vehicle_of(struct four_discs *built)
{
    return &car_part(&built->car, built->vehicle)->as.vehicle;
}

/* J. Y. Wong, Theory of Ground Vehicles, example in the section on braking, from memory: wheelbase
 * 2.87 m, centre of mass 1.27 m behind the front axle and 0.508 m high, 60 % of the braking in
 * front. Without its rolling resistance and without turning parts, by g mu (1-psi)/(1-phi-mu chi)
 * and g mu psi/(phi+mu chi), psi = 1.27/2.87, chi = 0.508/2.87, phi = 0.4: at grip 0.8 front
 * 0.973114 g, rear 0.653648 g; at 0.2 front 0.197500 g, rear 0.203272 g. The book, from memory: the
 * rear first on the better road, the front first on the slippery one. The other axle: at 0.653648 g
 * the front asks for 0.6 * 0.653648/(0.557491 + 0.177003 * 0.653648) = 0.582569, 0.728211 of 0.8;
 * at 0.1975 g the rear for 0.4 * 0.1975/(0.442509 - 0.177003 * 0.1975) = 0.193822, 0.969110 of 0.2.
 */
static void the_axle_that_locks_first_changes_with_the_road(void **state)
{
    (void)state;
    struct four_discs built = build(2.87, 1.27 / 2.87, 0.508, 0.120, 0.080);
    vehicle_of(&built)->rotating.of_1 = 0;
    struct first_lock dry = lock_at(&built, 0.8), icy = lock_at(&built, 0.2);
    assert_true(dry.known && dry.axle == AXLE_REAR && !dry.lifts);
    assert_true(icy.known && icy.axle == AXLE_FRONT);
    near_rel(dry.at.m_s2 / G, 0.8 * (1.27 / 2.87) / (0.4 + 0.8 * 0.508 / 2.87), 1e-6);
    near_rel(icy.at.m_s2 / G, 0.2 * (1.60 / 2.87) / (0.6 - 0.2 * 0.508 / 2.87), 1e-6);
    near(dry.rear, 1, 1e-6);
    near(dry.front, 0.728211, 2e-6);
    near(icy.front, 1, 1e-6);
    near(icy.rear, 0.969110, 2e-6);
    near_rel(icy.loads.rear.n, 1000 * G * (0.4425087 - 0.1770035 * 0.1975), 1e-5);
    near_rel(icy.loads.front.n + icy.loads.rear.n, 1000 * G, 1e-12);
    car_finish(&built.car);
}

/* The same with turning parts of 5 %, half of them on each axle: front mu (1-psi)/((1-phi) 1.05 -
 * 0.025 - mu chi), rear mu psi/(phi 1.05 - 0.025 + mu chi): 0.659719 g behind at 0.8, and the front
 * then asks for (0.6 * 1.05 - 0.025) 0.659719/(0.557491 + 0.177003 * 0.659719) = 0.591949, 0.739936
 * of it; 0.195749 g in front at 0.2. */
static void turning_parts_move_the_lock_a_little(void **state)
{
    (void)state;
    struct four_discs built = build(2.87, 1.27 / 2.87, 0.508, 0.120, 0.080);
    near(vehicle_of(&built)->rotating.of_1, 0.05, 0);
    struct first_lock dry = lock_at(&built, 0.8), icy = lock_at(&built, 0.2);
    near(dry.at.m_s2 / G, 0.659719, 2e-6);
    near(dry.front, 0.739936, 2e-6);
    near(icy.at.m_s2 / G, 0.195749, 2e-6);
    near_rel(dry.loads.front.n, 6612.269, 1e-6);
    car_finish(&built.car);
}

/* Rolling comes out of the same grip: the front locks at z with (1-phi)(z - f) + f (1-psi+chi z) =
 * mu (1-psi+chi z); at mu 0.2, f 0.02, no turning parts: z = (0.18 * 0.557491 + 0.6 * 0.02)/(0.6 -
 * 0.18 * 0.177003) = 0.197732. */
static void rolling_takes_its_part_of_the_grip(void **state)
{
    (void)state;
    struct four_discs built = build(2.87, 1.27 / 2.87, 0.508, 0.120, 0.080);
    vehicle_of(&built)->rotating.of_1 = 0;
    vehicle_of(&built)->rolling.value = 0.02;
    struct first_lock icy = lock_at(&built, 0.2);
    assert_int_equal(icy.axle, AXLE_FRONT);
    near(icy.at.m_s2 / G, (0.18 * 1.60 / 2.87 + 0.012) / (0.6 - 0.18 * 0.508 / 2.87), 1e-6);
    car_finish(&built.car);
}

/* One axle braked alone has its own lock: front mu (1-psi)/(1 - mu chi), as the same car's rear
 * discs do nothing. Height 1.3 m on a wheelbase of 1.4 m: the rear lifts at psi/chi = 0.47385, the
 * front would lock at 0.8 * 0.56/(1 - 0.8 * 0.92857) = 1.742. */
static void one_braked_axle_locks_or_lifts_the_other(void **state)
{
    (void)state;
    struct four_discs built = build(2.87, 0.44, 0.508, 0.120, 0.080);
    for (int i = 2; i < 4; i++) /* these never begin */
        car_part(&built.car, built.discs[i])->as.disc.threshold.pa = 1e12;
    vehicle_of(&built)->rotating.of_1 = 0;
    struct first_lock lock = lock_at(&built, 0.8);
    assert_true(lock.axle == AXLE_FRONT && !lock.lifts);
    near_rel(lock.at.m_s2 / G, 0.8 * 0.56 / (1 - 0.8 * 0.508 / 2.87), 1e-6);
    vehicle_of(&built)->wheelbase.m = 1.4;
    vehicle_of(&built)->centre_height.m = 1.3;
    lock = lock_at(&built, 0.8);
    assert_true(lock.known && lock.lifts && lock.axle == AXLE_NONE);
    near_unknown(lock.at.m_s2);
    near(vehicle_lifts_at(vehicle_of(&built)).m_s2 / G, 0.44 * 1.4 / 1.3, 1e-12);
    car_finish(&built.car);
}

static void without_a_wheelbase_nobody_knows_what_locks(void **state)
{
    (void)state;
    struct four_discs built = build(2.87, 0.44, 0.508, 0.120, 0.080);
    vehicle_of(&built)->wheelbase.m = NAN;
    struct first_lock lock = lock_at(&built, 0.8);
    assert_false(lock.known);
    assert_int_equal(lock.axle, AXLE_NONE);
    near_unknown(lock.at.m_s2);
    car_finish(&built.car);
}

static void brakes_too_weak_for_the_road_lock_nothing(void **state)
{
    (void)state;
    struct four_discs built = build(2.87, 0.44, 0.508, 0.012, 0.008);
    struct first_lock lock = lock_at(&built, 0.8);
    assert_true(lock.known && lock.axle == AXLE_NONE && !lock.lifts);
    assert_int_equal(lock_at(&built, 0.05).axle, AXLE_FRONT);
    car_finish(&built.car);
}

/* Four discs on one pedal are braked together. */
static void one_pedal_works_both_axles(void **state)
{
    (void)state;
    struct four_discs built = build(2.87, 0.44, 0.508, 0.120, 0.080);
    struct axle_pedals pedals = balance_axle_pedals(built.car.system, built.network);
    assert_int_equal(pedals.front, built.pedal);
    assert_int_equal(pedals.rear, built.pedal);
    assert_false(pedals.apart);
    car_finish(&built.car);
}

/* The wheel that is braked harder locks: with the left front disc at 1.3 times the right one's
 * friction it has 1.3/2.3 of the axle. */
static void the_harder_braked_wheel_of_an_axle_locks_it(void **state)
{
    (void)state;
    struct four_discs built = build(2.87, 0.44, 0.508, 0.120, 0.080);
    vehicle_of(&built)->rotating.of_1 = 0;
    car_part(&built.car, built.discs[0])->as.disc.friction.value = 0.39;
    car_part(&built.car, built.discs[1])->as.disc.friction.value = 0.30;
    car_part(&built.car, built.discs[2])->as.disc.friction.value = 0.345;
    car_part(&built.car, built.discs[3])->as.disc.friction.value = 0.345;
    /* front 0.6, of it 1.3/2.3 on the left: like a front of 0.6 * 2 * 1.3/2.3 = 0.678261 */
    struct first_lock lock = lock_at(&built, 0.2);
    assert_int_equal(lock.axle, AXLE_FRONT);
    near_rel(lock.at.m_s2 / G, 0.2 * 0.56 / (0.6 * 2.6 / 2.3 - 0.2 * 0.508 / 2.87), 1e-6);
    car_finish(&built.car);
}

static void sides_differ_by_their_friction(void **state)
{
    (void)state;
    struct four_discs built = build(2.87, 0.44, 0.508, 0.120, 0.080);
    car_part(&built.car, built.discs[0])->as.disc.friction.value = 0.40;
    car_part(&built.car, built.discs[1])->as.disc.friction.value = 0.30;
    struct state usual = state_usual();
    solve(built.car.system, built.network, &usual, built.room);
    near(balance_side_difference(built.car.system, built.room, AXLE_FRONT).of_1, 0.25, 1e-12);
    near(balance_side_difference(built.car.system, built.room, AXLE_REAR).of_1, 0, 1e-12);
    car_part(&built.car, built.discs[1])->as.disc.friction.value = NAN;
    solve(built.car.system, built.network, &usual, built.room);
    near_unknown(balance_side_difference(built.car.system, built.room, AXLE_FRONT).of_1);
    car_finish(&built.car);
}

static double slope_facing(struct driven_car *driven, enum facing facing)
{
    struct solution *room = solution_room(driven->car.system, driven->network, driven->car.arena);
    return balance_hand_brake_slope(driven->car.system, driven->parking, facing, room);
}

static double slope(struct driven_car *driven)
{
    return slope_facing(driven, FACING_UP);
}

/* Hand 60 N * 7 * (1 - 0.25) / 2 * 4.5 = 708.75 N at the strut of each drum, 3.5/4.5 of
 * it at the pivot; the rear shoe, where the lever hangs, leads when the car rolls back: 0.519005 +
 * 3.5/4.5 * 1.477623 = 1.668267 (sliding shoes, 0.8 of the radius, half arc 55 deg, friction 0.38,
 * summed in Octave); 708.75 * 1.668267 * 0.1015 / 0.285 = 421.09 N at each wheel; 842.19/(1320 g) =
 * 0.0650610, tangent 0.0651991. Facing down 1.477623 + 3.5/4.5 * 0.519005 = 1.881294, sine
 * 0.0733686. */
static void a_slope_is_held_by_shoes_and_lever(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.parking, "effort", 60);
    near(slope(&driven), 0.0651991, 1e-6);
    near(slope_facing(&driven, FACING_DOWN), tan(asin(0.0733686)), 1e-6);
    driven_finish(&driven);
}

/* A strong hand slides the rear wheels: 0.8 * 0.46/(1 - 0.8 * 0.68/2.44) = 0.47359. */
static void a_steep_slope_is_held_by_the_grip_of_the_wheels(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    near(slope(&driven), 0.8 * 0.46 / (1 - 0.8 * 0.68 / 2.44), 1e-9);
    driven_say(&driven, driven.usual.vehicle, "grip", 0.4);
    near(slope(&driven), 0.4 * 0.46 / (1 - 0.4 * 0.68 / 2.44), 1e-9);
    driven_finish(&driven);
}

/* Two-leading shoes both trail when the car rolls back: (1 + 3.5/4.5) * 0.519005. */
static void facing_up_the_wheels_turn_backwards(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.parking, "effort", 60);
    const int drums[] = {driven.usual.rear_left, driven.usual.rear_right};
    for (int i = 0; i < 2; i++) {
        driven_say(&driven, drums[i], "shoes", SHOES_TWO_LEADING);
        driven_say(&driven, drums[i], "cylinder", CYLINDER_ONE_EACH);
    }
    double sine = 2 * 708.75 * (1 + 3.5 / 4.5) * 0.519005 * 0.1015 / 0.285 / (1320 * G);
    near(slope(&driven), tan(asin(sine)), 1e-5);
    driven_finish(&driven);
}

/* Facing down they lead: (1 + 3.5/4.5) * 1.477623; and the rear wheels carry less. */
static void facing_down_the_wheels_turn_forwards(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    near(slope_facing(&driven, FACING_DOWN), 0.8 * 0.46 / (1 + 0.8 * 0.68 / 2.44), 1e-9);
    driven_say(&driven, driven.parking, "effort", 60);
    const int drums[] = {driven.usual.rear_left, driven.usual.rear_right};
    for (int i = 0; i < 2; i++) {
        driven_say(&driven, drums[i], "shoes", SHOES_TWO_LEADING);
        driven_say(&driven, drums[i], "cylinder", CYLINDER_ONE_EACH);
    }
    double sine = 2 * 708.75 * (1 + 3.5 / 4.5) * 1.477623 * 0.1015 / 0.285 / (1320 * G);
    near(slope_facing(&driven, FACING_DOWN), tan(asin(sine)), 1e-5);
    driven_finish(&driven);
}

/* Front wheels braked alone, on discs with 40 mm height from 247 mm: no more than their grip. */
static void the_front_wheels_hold_better_facing_down(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const int discs[] = {driven.usual.front_left, driven.usual.front_right};
    car_part(&driven.car, driven.parking)->as.parking.works = car_names(&driven.car, 2, discs);
    driven_say(&driven, driven.parking, "effort", 2000);
    near(slope(&driven), 0.8 * 0.54 / (1 + 0.8 * 0.68 / 2.44), 1e-9);
    near(slope_facing(&driven, FACING_DOWN), 0.8 * 0.54 / (1 - 0.8 * 0.68 / 2.44), 1e-9);
    driven_finish(&driven);
}

/* 0.9 of the friction of a disc holds 0.9 of the force. */
static void friction_at_rest_may_be_less(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const int discs[] = {driven.usual.front_left, driven.usual.front_right};
    car_part(&driven.car, driven.parking)->as.parking.works = car_names(&driven.car, 2, discs);
    driven_say(&driven, driven.parking, "effort", 60);
    double full = sin(atan(slope(&driven)));
    driven_say(&driven, driven.parking, "holding friction", 0.9);
    near_rel(sin(atan(slope(&driven))), 0.9 * full, 1e-12);
    driven_finish(&driven);
}

/* Four tips of 19.05 mm (285.023 mm2) go 0.3 mm further, a lever of 3.8 before the master. */
static void a_tight_cable_let_off_lengthens_the_pedal(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.parking, "cable holds off", 0.3e-3);
    double area = PI / 4 * pow(car_part(&driven.car, driven.usual.master)->as.master.bore.m, 2);
    double lost = 3.8 * 4 * 285.023e-6 * 0.3e-3 / area;
    near_rel(balance_pedal_lost(driven.car.system, driven.network, driven.parking).m, lost, 1e-5);
    driven_finish(&driven);
}

static void clicks_are_those_of_the_mean_of_both_cables(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const struct parking *parking = &car_part(&driven.car, driven.parking)->as.parking;
    double both = balance_hand_brake_clicks(driven.car.system, driven.parking);
    driven_say(&driven, driven.usual.rear_left, "clearance", 1.4e-3);
    double more = balance_hand_brake_clicks(driven.car.system, driven.parking);
    /* 1 mm more at two tips of one brake: 4.5 + 3.5 mm of its cable, half of that at the lever */
    near(more - both, 4e-3 * 7 / parking->travel_of_click.m, 1e-9);
    /* counted at 200 N, whatever the hand may do besides */
    driven_say(&driven, driven.parking, "effort", 60);
    near(balance_hand_brake_clicks(driven.car.system, driven.parking), more, 0);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_axle_that_locks_first_changes_with_the_road),
        cmocka_unit_test(turning_parts_move_the_lock_a_little),
        cmocka_unit_test(rolling_takes_its_part_of_the_grip),
        cmocka_unit_test(one_braked_axle_locks_or_lifts_the_other),
        cmocka_unit_test(one_pedal_works_both_axles),
        cmocka_unit_test(the_harder_braked_wheel_of_an_axle_locks_it),
        cmocka_unit_test(without_a_wheelbase_nobody_knows_what_locks),
        cmocka_unit_test(brakes_too_weak_for_the_road_lock_nothing),
        cmocka_unit_test(sides_differ_by_their_friction),
        cmocka_unit_test(a_slope_is_held_by_shoes_and_lever),
        cmocka_unit_test(a_steep_slope_is_held_by_the_grip_of_the_wheels),
        cmocka_unit_test(facing_up_the_wheels_turn_backwards),
        cmocka_unit_test(facing_down_the_wheels_turn_forwards),
        cmocka_unit_test(the_front_wheels_hold_better_facing_down),
        cmocka_unit_test(friction_at_rest_may_be_less),
        cmocka_unit_test(a_tight_cable_let_off_lengthens_the_pedal),
        cmocka_unit_test(clicks_are_those_of_the_mean_of_both_cables),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
