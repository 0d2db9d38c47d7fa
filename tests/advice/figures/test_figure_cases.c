/* Figures of the pedal in other cases, of servos and of valves, from words to value. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "advice_car.h"
#include "base/text.h"

/* A tandem car with a warning shuttle, and in the rear line a load valve and a limiter in a row
 * behind a residual valve. Rod force 5 * 0.95 * 300 N, 0.95 of it on 285.0230 mm2: 4.74996 MPa. */
#define LINE_PRESSURE (0.95 * 0.95 * 5 * 300 / 285.0230e-6)

static const char text[] = "[vehicle]\ntitle = Valve car\nfront axle = independent\n"
                           "rear axle = live\n[fluid]\ngrade = DOT 4\n"
                           "[pedal]\nworks = master\nratio = 5\neffort = 300 N\ntravel = 160 mm\n"
                           "%s"
                           "[master]\ntype = tandem\nbore = 19.05 mm\nstroke = 36 mm\n"
                           "primary outlets = front\nsecondary outlets = rear\n%s"
                           "[warning valve]\ntype = shuttle\ntrips = 10 bar\n"
                           "[residual valve]\ntype = residual\nholds = 0.7 bar\n"
                           "[load valve]\ntype = load-sensing\nslope = 0.5\n%s"
                           "[limiter]\ntype = limiting\nlimit = 30 bar\ngap = 1 bar\n"
                           "[front disc]\ncaliper = sliding\nbore = 48 mm\n"
                           "disc diameter = 240 mm\npad height = 40 mm\nrun out = 0.3 mm\n"
                           "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\n"
                           "bore = 19.05 mm\ndrum diameter = 203 mm\n"
                           "[axle tee]\non = rear axle\n[runs]\n"
                           "f = master.front, 0.4 m pipe, warning valve.1, 0.4 m pipe, front tee\n"
                           "fl = front tee, 0.4 m pipe, 0.3 m hose, front left disc\n"
                           "fr = front tee, 0.4 m pipe, 0.3 m hose, front right disc\n"
                           "r = master.rear, 0.4 m pipe, warning valve.2, 0.4 m pipe, "
                           "residual valve, 0.1 m pipe, load valve, 0.1 m pipe, limiter, 2 m pipe, "
                           "0.3 m hose, axle tee\n"
                           "rl = axle tee, 0.5 m pipe, rear left drum\n"
                           "rr = axle tee, 0.5 m pipe, rear right drum\n";

static struct advice_car read_car(const char *pedal, const char *master, const char *valve)
{
    struct arena *arena = arena_create();
    /* without springs unless the test says some */
    const char *springs =
        strstr(master, "spring") ? "" : "primary spring = 0 N\nsecondary spring = 0 N\n";
    master = text_print(arena, "%s%s", springs, master);
    struct advice_car car = advice_car_read(text_print(arena, text, pedal, master, valve), NULL);
    arena_destroy(arena);
    return car;
}

static const struct figure *figure(const struct advice_car *car, const char *id, const char *of)
{
    return figures_find(&car->result->figures, id, of);
}

static double value(const struct advice_car *car, const char *id, const char *of)
{
    const struct figure *found = figure(car, id, of);
    assert_non_null(found);
    return found->value;
}

/* 20 bar knee, 0.5: 2 + 0.5 (4.75 - 2) = 3.375 MPa, of which the limiter lets 3 MPa through. With
 * the knee at 1 MPa: 2.875 MPa, which it lets through. */
static void valves_in_a_row_each_take_what_the_one_before_lets_through(void **state)
{
    (void)state;
    struct advice_car car = read_car("", "", "knee = 20 bar\n");
    near_rel(value(&car, "line-pressure", NULL), LINE_PRESSURE, 1e-6);
    near_rel(value(&car, "wheel-pressure", "rear left drum"), 3e6, 1e-12);
    near_rel(value(&car, "wheel-pressure", "front left disc"), LINE_PRESSURE, 1e-6);
    advice_car_finish(&car);
    car = read_car("", "", "knee = 10 bar\n");
    near_rel(value(&car, "wheel-pressure", "rear left drum"), 1e6 + 0.5 * (LINE_PRESSURE - 1e6),
             1e-6);
    advice_car_finish(&car);
}

/* 12 and 32 bar: with half of the load 22 bar. */
static void the_load_moves_the_knee_and_with_it_the_rear_brakes(void **state)
{
    (void)state;
    struct advice_car car =
        read_car("", "", "knee unladen = 12 bar\nknee laden = 32 bar\nload = 50 %\n");
    near_rel(value(&car, "valve-knee", "load valve"), 22e5, 1e-12);
    assert_null(figure(&car, "valve-knee", "limiter"));
    advice_car_finish(&car);
    car = read_car("", "", "knee unladen = 4 bar\nknee laden = 32 bar\n");
    near_rel(value(&car, "wheel-pressure", "rear left drum"), 4e5 + 0.5 * (LINE_PRESSURE - 4e5),
             1e-6);
    advice_car_finish(&car);
}

/* Half of the line pressure is 2.375 MPa, and the residual valve keeps 0.07 MPa more than that
 * behind it: the load valve gives 2 + 0.5 (2.445 + 0.2 - 2) = 2.3225 MPa, 0.2 MPa late; the
 * limiter, which had come to 3 MPa of 3.375, lets it back. */
static void on_release_the_rear_brakes_follow_late(void **state)
{
    (void)state;
    struct advice_car car = read_car("", "", "knee = 20 bar\n");
    near_rel(value(&car, "release-pressure", "rear left drum"),
             2e6 + 0.5 * (LINE_PRESSURE / 2 + 0.7e5 + 2e5 - 2e6), 1e-6);
    assert_null(figure(&car, "release-pressure", "front left disc"));
    near_rel(value(&car, "residual-pressure", "rear circuit"), 0.7e5, 1e-12);
    assert_null(figure(&car, "residual-pressure", "front circuit"));
    advice_car_finish(&car);
}

/* Springs of 150 and 60 N set the circuits 90 N / 285 mm2 apart; with one lost all of the other's
 * pressure is the difference. */
static void a_shuttle_sees_springs_and_losses(void **state)
{
    (void)state;
    struct advice_car car =
        read_car("", "primary spring = 150 N\nsecondary spring = 60 N\n", "knee = 20 bar\n");
    near_rel(value(&car, "shuttle-difference", "warning valve"), 90 / 285.0230e-6, 1e-6);
    assert_false(advice_finds(&car, "warning-lamp-lit", NULL));
    assert_false(advice_finds(&car, "warning-lamp-dark", NULL));
    near_rel(value(&car, "shuttle-difference-lost", "warning valve"),
             LINE_PRESSURE - 150 / 285.0230e-6, 1e-6);
    advice_car_finish(&car);
    car = read_car("", "primary spring = 400 N\nsecondary spring = 0 N\n", "knee = 20 bar\n");
    /* 14 bar apart */
    assert_true(advice_finds(&car, "warning-lamp-lit", "warning valve"));
    advice_car_finish(&car);
}

static void cases_of_the_pedal_are_farther_than_the_usual_one(void **state)
{
    (void)state;
    struct advice_car car = read_car("", "", "knee = 20 bar\n");
    static const char *const ids[] = {"pedal-travel-hot", "pedal-travel-knocked-back",
                                      "pedal-travel-worn-hoses"};
    double usual = value(&car, "pedal-travel", NULL);
    for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++)
        assert_true(value(&car, ids[i], NULL) > usual + 1e-3);
    near(value(&car, "pedal-left-hot", NULL), 160e-3 - value(&car, "pedal-travel-hot", NULL),
         1e-12);
    advice_car_finish(&car);
}

/* Which floor is met only when hot, or nearer than a twentieth of the travel, follows from the
 * travels themselves. */
static void a_floor_that_only_a_hot_pedal_meets_is_a_danger(void **state)
{
    (void)state;
    struct advice_car car = read_car("", "", "knee = 20 bar\n");
    double hot = value(&car, "pedal-travel-hot", NULL);
    advice_car_finish(&car);
    struct arena *arena = arena_create();
    const struct {
        double travel;
        bool found;
    } rows[] = {{hot / 0.95 - 1e-4, true}, {hot / 0.95 + 1e-4, false}};
    for (int i = 0; i < 2; i++) {
        /* a stop counts like a floor */
        car = read_car(text_print(arena, "stop = %.6f m\n", rows[i].travel), "", "knee = 20 bar\n");
        assert_int_equal(advice_finds(&car, "floor-when-hot", "pedal"), rows[i].found);
        advice_car_finish(&car);
    }
    arena_destroy(arena);
}

static void each_piston_has_its_own_stroke_left(void **state)
{
    (void)state;
    struct advice_car car = read_car("", "", "knee = 20 bar\n"); /* 18 mm each by rule */
    for (int i = 0; i < 2; i++) {
        const char *of = i == 0 ? "front circuit" : "rear circuit";
        const char *other = i == 0 ? "rear circuit" : "front circuit";
        near(value(&car, "piston-stroke-left", of), 18e-3 - value(&car, "piston-stroke", of),
             1e-15);
        /* Without springs the other piston is where it was, unless the floor came first. */
        if (value(&car, "left-circuit-lost", other) > 0)
            near(value(&car, "stroke-left-circuit-lost", other),
                 value(&car, "piston-stroke-left", of), 1e-12);
    }
    advice_car_finish(&car);
}

/* A direct servo sweeps by the master's rod: the figure is the law at that stroke. 9 in, 0.7 bar,
 * 4 L, 15 to 20 mm: 615 to 820 mL a stroke. */
static void a_servo_counts_its_strokes_from_the_travel_of_the_rod(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    int at = advice_part(&car, "servo");
    struct length stroke = {value(&car, "rod-travel", NULL)};
    near(value(&car, "assisted-strokes-left", "servo"),
         servo_strokes_left(&car.system->parts[at].as.servo, stroke), 0);
    assert_true(value(&car, "assisted-strokes-left", "servo") >= 1);
    advice_car_finish(&car);
    car = advice_car_load("systems/servo-estate.ini", NULL);
    const struct figure *remote = figure(&car, "assisted-strokes-left", "remote servo");
    assert_non_null(remote);
    assert_true(remote->value >= 1);
    advice_car_finish(&car);
}

/* The stroke left times the lever's 290/76 is less pedal than is left to the floor. */
static void a_bore_that_ends_before_the_floor_is_said_beside_what_is_left(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    const struct figure *left = figures_find(&car.result->figures, "pedal-left", NULL);
    const struct figure *stroke = figures_find(&car.result->figures, "stroke-left", NULL);
    double share = stroke->value * 290 / 76 / left->value;
    assert_true(share > 0.5 && share < 1);
    assert_non_null(left->remark);
    near(strtod(strpbrk(left->remark, "0123456789"), NULL), 100 * share, 0.5);
    advice_car_finish(&car);
    car = advice_car_load("systems/rear-engined-saloon.ini", NULL);
    assert_null(figures_find(&car.result->figures, "pedal-left", NULL)->remark);
    advice_car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(valves_in_a_row_each_take_what_the_one_before_lets_through),
        cmocka_unit_test(the_load_moves_the_knee_and_with_it_the_rear_brakes),
        cmocka_unit_test(on_release_the_rear_brakes_follow_late),
        cmocka_unit_test(a_shuttle_sees_springs_and_losses),
        cmocka_unit_test(cases_of_the_pedal_are_farther_than_the_usual_one),
        cmocka_unit_test(a_floor_that_only_a_hot_pedal_meets_is_a_danger),
        cmocka_unit_test(each_piston_has_its_own_stroke_left),
        cmocka_unit_test(a_bore_that_ends_before_the_floor_is_said_beside_what_is_left),
        cmocka_unit_test(a_servo_counts_its_strokes_from_the_travel_of_the_rod),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
