#include "physics/pedal_curve.h"

#include <math.h>

#include "physics/pressure.h"
#include "support/driven_car.h"
#include "support/near.h"

#define BORE_AREA 334.585e-6 /* of 20.64 mm, m2 */
#define RATIO     3.8

static struct pedal_curve *curve_of(const struct driven_car *driven, const struct state *state,
                                    int points)
{
    struct pedal_curve *curve =
        pedal_curve_room(driven->car.system, driven->network, points, driven->car.arena);
    pedal_curve_solve(driven->car.system, driven->network, driven->brake_pedal, state, curve);
    return curve;
}

static double sum_of(const struct curve_point *point)
{
    double sum = 0;
    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++)
        sum += point->by_cause[cause].m;
    return sum;
}

static const struct curve_point *last_of(const struct pedal_curve *curve)
{
    return &curve->points[curve->count - 1];
}

/* In every case, with each circuit lost too, on a car whose pedal keeps off the floor and on one
 * whose pedal meets it. */
static void the_causes_of_every_point_add_up_to_its_travel(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    size_t count;
    const struct curve_case *cases = curve_cases(&count);
    driven_say(&driven, driven.usual.master, "large bore", 26e-3);
    driven_say(&driven, driven.usual.front_left, "run out", 0.2e-3);
    driven_say(&driven, driven.usual.front_right, "run out", 0.3e-3);
    driven_say(&driven, driven.servo, "lost motion", 1e-3);
    driven_say(&driven, driven.servo, "lost motion without vacuum", 2e-3);
    for (int floor = 0; floor < 2; floor++) {
        driven_say(&driven, driven.brake_pedal, "travel", floor == 0 ? 150e-3 : 45e-3);
        for (size_t i = 0; i < count; i++) {
            for (int lost = cases[i].each_circuit ? 0 : -1; lost < 2; lost++) {
                struct state in = cases[i].state;
                in.lost_circuit = lost;
                struct pedal_curve *curve = curve_of(&driven, &in, CURVE_USUAL_POINTS);
                bool rests = floor == 1 && lost >= 0; /* a piston's whole stroke is 64.6 mm */
                assert_int_equal(curve->count, rests ? 1 : CURVE_USUAL_POINTS);
                for (int p = 0; p < curve->count; p++)
                    near(sum_of(&curve->points[p]), curve->points[p].travel.m, 1e-15);
                if (lost < 0)
                    break;
            }
        }
    }
    driven_finish(&driven);
}

static void it_begins_at_no_effort_and_ends_where_the_car_was_solved(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct state usual = state_usual();
    struct pedal_curve *curve = curve_of(&driven, &usual, CURVE_USUAL_POINTS);
    struct solution *room = solution_room(driven.car.system, driven.network, driven.car.arena);
    solve(driven.car.system, driven.network, &usual, room);
    /* At no effort: 3 mm of play and 3.8 times the gap of 0.8 mm and the ports of 1.2 mm. */
    near(curve->points[0].effort.n, 0, 0);
    near(curve->points[0].travel.m, 3e-3 + RATIO * (0.8e-3 + 1.2e-3), 1e-12);
    near(last_of(curve)->effort.n, 220, 0);
    near(last_of(curve)->travel.m, room->pedals[driven.brake_pedal].travel.m, 1e-15);
    near(curve->left.m, room->pedals[driven.brake_pedal].left.m, 1e-15);
    for (int c = 0; c < curve->circuit_count; c++)
        near(last_of(curve)->by_circuit[c].pa, room->circuits[curve->circuits[c]].pressure.pa, 0);
    assert_int_equal(curve->circuit_count, 2);
    assert_false(curve->on_floor);
    assert_false(curve->bottomed);
    near(curve->asked.n, 220, 0);
    driven_finish(&driven);
}

/* A pad of 3.8:1 sinks by 3.8 times volume over area; 20.64 mm. */
static void volumes_of_both_circuits_become_travel_by_ratio_and_area(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct state usual = state_usual();
    driven_say(&driven, driven.fluid, "air", 0.4e-6);
    struct pedal_curve *curve = curve_of(&driven, &usual, CURVE_USUAL_POINTS);
    struct solution *room = solution_room(driven.car.system, driven.network, driven.car.arena);
    solve(driven.car.system, driven.network, &usual, room);
    const struct {
        enum cause cause;
        enum travel_cause at;
    } rows[] = {{CAUSE_CLEARANCE, TRAVEL_CLEARANCE},
                {CAUSE_LININGS, TRAVEL_LININGS},
                {CAUSE_BODY, TRAVEL_BODY},
                {CAUSE_HOSES, TRAVEL_HOSES},
                {CAUSE_FLUID, TRAVEL_FLUID},
                {CAUSE_PIPES, TRAVEL_PIPES},
                {CAUSE_AIR, TRAVEL_AIR}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double volume = room->circuits[curve->circuits[0]].by_cause[rows[i].cause].m3 +
                        room->circuits[curve->circuits[1]].by_cause[rows[i].cause].m3;
        assert_true(volume > 0);
        near_rel(last_of(curve)->by_cause[rows[i].at].m, RATIO * volume / BORE_AREA, 1e-5);
    }
    near(last_of(curve)->by_cause[TRAVEL_FLEXING].m, 220 / 200e3, 1e-12);
    near(last_of(curve)->by_cause[TRAVEL_FREE_PLAY].m, 3e-3, 0);
    near(last_of(curve)->by_cause[TRAVEL_ROD_GAP].m, RATIO * 0.8e-3, 1e-12);
    near(last_of(curve)->by_cause[TRAVEL_CUT_OFF].m, RATIO * 1.2e-3, 1e-12);
    near(last_of(curve)->by_cause[TRAVEL_LOST].m, 0, 0);
    driven_finish(&driven);
}

/* The bracket alone gives 1 mm for 200 N: no curve may rise more slowly than that. */
static void travel_rises_at_least_as_fast_as_the_bracket_bends(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    size_t count;
    const struct curve_case *cases = curve_cases(&count);
    for (size_t i = 0; i < count; i++) {
        struct pedal_curve *curve = curve_of(&driven, &cases[i].state, 64);
        for (int p = 1; p < curve->count; p++) {
            const struct curve_point *a = &curve->points[p - 1], *b = &curve->points[p];
            assert_true(b->effort.n > a->effort.n);
            double slope = (b->travel.m - a->travel.m) / (b->effort.n - a->effort.n);
            assert_true(slope >= (1 - 1e-9) / 200e3);
            for (int c = 0; c < curve->circuit_count; c++)
                assert_true(b->by_circuit[c].pa >= a->by_circuit[c].pa);
        }
    }
    driven_finish(&driven);
}

/* The servo cuts in at 40 N on its rod: 11.08 N at the pad, and gives 150 N at once. */
static void points_gather_where_the_curve_bends(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct state usual = state_usual();
    struct pedal_curve *curve = curve_of(&driven, &usual, CURVE_USUAL_POINTS);
    double cut_in = 40 / (RATIO * 0.95), below = -INFINITY, above = INFINITY;
    for (int p = 0; p < curve->count; p++) {
        double effort = curve->points[p].effort.n;
        if (effort < cut_in)
            below = fmax(below, effort);
        else
            above = fmin(above, effort);
    }
    assert_true(above - below < 220.0 / 200);
    driven_finish(&driven);
}

static void a_straight_curve_still_uses_all_its_points(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct state usual = state_usual();
    for (int points = 1; points < 70; points += 17) {
        struct pedal_curve *curve = curve_of(&driven, &usual, points);
        assert_int_equal(curve->count, points < CURVE_LEAST_POINTS ? CURVE_LEAST_POINTS : points);
        for (int p = 1; p < curve->count; p++)
            assert_true(curve->points[p].effort.n > curve->points[p - 1].effort.n);
    }
    driven_finish(&driven);
}

static void at_the_floor_it_ends(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.brake_pedal, "travel", 50e-3);
    struct state usual = state_usual();
    struct pedal_curve *curve = curve_of(&driven, &usual, CURVE_USUAL_POINTS);
    assert_true(curve->on_floor);
    near(curve->left.m, 0, 0);
    near(last_of(curve)->travel.m, 50e-3, 1e-9);
    assert_true(last_of(curve)->effort.n < 220);
    driven_say(&driven, driven.brake_pedal, "travel", 150e-3);
    driven_say(&driven, driven.brake_pedal, "stop", 50e-3);
    near(last_of(curve_of(&driven, &usual, CURVE_USUAL_POINTS))->travel.m, 50e-3, 1e-9);
    driven_finish(&driven);
}

/* 3 mm of play, 3.04 mm of gap, and of 4.56 mm for the ports only 1.96 mm. */
static void a_pedal_that_rests_on_the_floor_cuts_its_causes_short(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.brake_pedal, "travel", 8e-3);
    struct state usual = state_usual();
    struct pedal_curve *curve = curve_of(&driven, &usual, CURVE_USUAL_POINTS);
    assert_int_equal(curve->count, 1);
    near(curve->points[0].effort.n, 0, 0);
    near(sum_of(&curve->points[0]), 8e-3, 1e-15);
    near(curve->points[0].by_cause[TRAVEL_CUT_OFF].m, 8e-3 - 3e-3 - RATIO * 0.8e-3, 1e-12);
    near(curve->points[0].by_cause[TRAVEL_CLEARANCE].m, 0, 0);
    driven_finish(&driven);
}

static void a_lost_circuit_takes_its_pistons_whole_stroke(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    for (int lost = 0; lost < 2; lost++) {
        struct state in = curve_case("lost")->state;
        in.lost_circuit = lost;
        struct pedal_curve *curve = curve_of(&driven, &in, CURVE_USUAL_POINTS);
        near(last_of(curve)->by_cause[TRAVEL_LOST].m, RATIO * 17e-3, 1e-12);
        /* with the second lost the first has passed its port on the way */
        bool first_lost = driven.network->circuits[lost].chamber == 0;
        near(last_of(curve)->by_cause[TRAVEL_CUT_OFF].m, first_lost ? RATIO * 1.2e-3 : 0, 1e-12);
        near(last_of(curve)->by_circuit[lost].pa, 0, 0);
        assert_true(last_of(curve)->by_circuit[1 - lost].pa > 1e6);
    }
    driven_finish(&driven);
}

static void a_millilitre_of_air_in_each_circuit_costs_its_travel(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct pedal_curve *curve = curve_of(&driven, &curve_case("air")->state, CURVE_USUAL_POINTS);
    double p = last_of(curve)->by_circuit[0].pa, taken = 1e-6 * p / (101325 + p);
    near_rel(last_of(curve)->by_cause[TRAVEL_AIR].m, RATIO * 2 * taken / BORE_AREA, 1e-5);
    driven_finish(&driven);
}

static bool is_of(const struct driven_car *driven, const char *id)
{
    return curve_case_is_of(driven->car.system, driven->network, driven->brake_pedal,
                            curve_case(id));
}

static void a_case_is_left_out_where_the_car_has_nothing_of_it(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const char *const ids[] = {"usual",        "new",        "worn", "slack",      "hot",
                               "knocked-back", "worn-hoses", "air",  "unassisted", "lost"};
    size_t count;
    curve_cases(&count);
    assert_int_equal(count, sizeof ids / sizeof ids[0]);
    for (size_t i = 0; i < count; i++)
        assert_true(is_of(&driven, ids[i]));
    assert_null(curve_case("rainy"));
    car_part(&driven.car, driven.usual.rear_left)->kind = KIND_DISC;
    car_part(&driven.car, driven.usual.rear_right)->kind = KIND_DISC;
    assert_false(is_of(&driven, "slack"));
    car_part(&driven.car, driven.brake_pedal)->as.pedal.works =
        car_names(&driven.car, 1, &driven.usual.master);
    car_part(&driven.car, driven.servo)->as.servo.works = -1;
    assert_false(is_of(&driven, "unassisted"));
    driven_finish(&driven);
}

static void without_a_length_there_is_no_curve(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    car_part(&driven.car, driven.usual.front_left_hose)->as.hose.length.m = NAN;
    struct state usual = state_usual();
    struct pedal_curve *curve = curve_of(&driven, &usual, CURVE_USUAL_POINTS);
    assert_int_equal(curve->count, 0);
    near_unknown(curve->left.m);
    driven_finish(&driven);
}

static void every_cause_of_travel_has_its_own_words(void **state)
{
    (void)state;
    for (int a = 0; a < TRAVEL_CAUSE_COUNT; a++) {
        assert_true(travel_cause_words((enum travel_cause)a)[0] != '\0');
        for (int b = 0; b < a; b++)
            assert_string_not_equal(travel_cause_words((enum travel_cause)a),
                                    travel_cause_words((enum travel_cause)b));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_causes_of_every_point_add_up_to_its_travel),
        cmocka_unit_test(it_begins_at_no_effort_and_ends_where_the_car_was_solved),
        cmocka_unit_test(volumes_of_both_circuits_become_travel_by_ratio_and_area),
        cmocka_unit_test(travel_rises_at_least_as_fast_as_the_bracket_bends),
        cmocka_unit_test(points_gather_where_the_curve_bends),
        cmocka_unit_test(a_straight_curve_still_uses_all_its_points),
        cmocka_unit_test(at_the_floor_it_ends),
        cmocka_unit_test(a_pedal_that_rests_on_the_floor_cuts_its_causes_short),
        cmocka_unit_test(a_lost_circuit_takes_its_pistons_whole_stroke),
        cmocka_unit_test(a_millilitre_of_air_in_each_circuit_costs_its_travel),
        cmocka_unit_test(a_case_is_left_out_where_the_car_has_nothing_of_it),
        cmocka_unit_test(without_a_length_there_is_no_curve),
        cmocka_unit_test(every_cause_of_travel_has_its_own_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
