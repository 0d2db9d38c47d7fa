/* Which method suits, against what stands in its way. Thresholds are worked by hand beside the
 * tests; the rows' own sources stand with them. */
#include "advice/bleeding/bleed_plan.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

/* One circuit to the two rear drums; heights, pipes and extra parts by the test. */
#define CAR(fluid, reservoir, hump, pipe, extra)                                                   \
    "[vehicle]\ntitle = Case\ndriver = right\nfront axle = independent\nrear axle = live\n"        \
    "[fluid]\ngrade = " fluid "\n[reservoir]\ncapacity = 200 mL\n" reservoir                       \
    "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 150 mm\n"                            \
    "[brake master]\ntype = single\nbore = 20 mm\nstroke = 25 mm\nheight = 0.5 m\n"                \
    "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 3/4 in\n"           \
    "height = 0.35 m\n"                                                                            \
    "[axle tee]\non = rear axle\n" hump "[all pipes]\nsize = " pipe "\n" extra
#define RUNS                                                                                       \
    "[runs]\nfeed = brake master, 2.5 m pipe, 0.3 m hose, axle tee\n"                              \
    "left = axle tee, 0.7 m pipe, rear left drum\n"                                                \
    "right = axle tee, 0.5 m pipe, rear right drum\n"
#define PLAIN(fluid) CAR(fluid, "", "", "3/16 in", RUNS)

static const struct method_verdict *verdict(const struct advice_car *car, enum bleed_method method)
{
    const struct bleed_plan *plan = car->result->bleed;
    assert_int_equal(plan->verdict_count, METHOD_COUNT);
    assert_int_equal(plan->verdicts[method].row->method, method);
    return &plan->verdicts[method];
}

static const struct method_note *noted(const struct advice_car *car, enum bleed_method method,
                                       const char *id)
{
    const struct method_verdict *of = verdict(car, method);
    for (int i = 0; i < of->note_count; i++) {
        if (strcmp(of->notes[i].reason->id, id) == 0) {
            return &of->notes[i];
        }
    }
    return NULL;
}

static double quantity(const struct method_note *note, const char *name)
{
    for (int i = 0; i < note->quantity_count; i++) {
        if (strcmp(note->quantities[i].name, name) == 0) {
            return note->quantities[i].value;
        }
    }
    fail_msg("%s has no %s", note->reason->id, name);
    return NAN;
}

static void expect(const char *words, enum bleed_method method, bool suits, const char *id)
{
    struct advice_car car = advice_car_read(words, NULL);
    if (verdict(&car, method)->suits != suits) {
        fail_msg("%s: the method %s", id, suits ? "does not suit" : "suits");
    }
    if (id != NULL) {
        assert_non_null(noted(&car, method, id));
    }
    advice_car_finish(&car);
}

/* The tee at 0.70 m lies over the reservoir at 0.60 m: the pipe falls 0.35 m to the drum at 0.35 m,
 * the head is 0.25 m. With the tee at 0.50 m and the reservoir at 0.80 m it flows. */
static void a_hump_above_the_reservoir_locks_gravity(void **state)
{
    (void)state;
#define OVER(reservoir, hump)                                                                      \
    CAR("DOT 4", "height = " reservoir "\n", "height = " hump "\n", "3/16 in", RUNS)
    struct advice_car car = advice_car_read(OVER("0.60 m", "0.70 m"), NULL);
    const struct method_note *note = noted(&car, METHOD_GRAVITY, "gas-lock");
    assert_non_null(note);
    near(quantity(note, "drop"), 0.35, 1e-9);
    near(quantity(note, "head"), 0.25, 1e-9);
    assert_false(verdict(&car, METHOD_GRAVITY)->suits);
    assert_true(verdict(&car, METHOD_PRESSURE)->suits);
    assert_true(verdict(&car, METHOD_PEDAL)->suits);
    assert_non_null(noted(&car, METHOD_PEDAL, "high-point"));
    advice_car_finish(&car);
    struct advice_car low = advice_car_read(OVER("0.80 m", "0.50 m"), NULL);
    assert_true(verdict(&low, METHOD_GRAVITY)->suits);
    assert_null(noted(&low, METHOD_GRAVITY, "gas-lock"));
    assert_null(noted(&low, METHOD_GRAVITY, "gas-lock-unknown"));
    advice_car_finish(&low);
}

/* The pipe itself climbs to 0.95 m, over a reservoir at 0.80 m. */
static void a_pipe_that_states_a_high_point_locks_gravity_as_well(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR("DOT 4", "height = 0.80 m\n", "height = 0.50 m\n",
                                                "3/16 in", "[feed pipe]\nhighest = 0.95 m\n" RUNS),
                                            NULL);
    assert_non_null(noted(&car, METHOD_GRAVITY, "gas-lock"));
    assert_non_null(noted(&car, METHOD_PEDAL, "high-point-in-pipe"));
    assert_null(noted(&car, METHOD_PEDAL, "high-point"));
    advice_car_finish(&car);
}

/* The feed falls to 0.30 m, climbs to 0.75 m and falls again: no place reaches the reservoir's
 * 0.80 m, 0.45 m over the nipple, so fluid from the master pushes on; but both falls full of air
 * would be more than that. */
static void two_falls_that_add_up_to_the_head_are_minded(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR("DOT 4", "height = 0.80 m\n", "height = 0.75 m\n",
                                                "3/16 in", "[feed pipe]\nlowest = 0.30 m\n" RUNS),
                                            NULL);
    const struct method_note *note = noted(&car, METHOD_GRAVITY, "gas-lock-may");
    assert_non_null(note);
    near(quantity(note, "head"), 0.45, 1e-9);
    assert_true(quantity(note, "drop") > 0.45);
    assert_null(noted(&car, METHOD_GRAVITY, "gas-lock"));
    assert_true(verdict(&car, METHOD_GRAVITY)->suits);
    advice_car_finish(&car);
}

static void without_heights_nobody_can_tell_and_that_is_said(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    assert_true(verdict(&car, METHOD_GRAVITY)->suits && verdict(&car, METHOD_GRAVITY)->unknown);
    assert_false(verdict(&car, METHOD_PRESSURE)->unknown);
    assert_non_null(noted(&car, METHOD_GRAVITY, "gas-lock-unknown"));
    advice_car_finish(&car);
}

static void a_reservoir_below_the_nipple_gives_no_head(void **state)
{
    (void)state;
    expect(CAR("DOT 4", "height = 0.30 m\n", "", "3/16 in", RUNS), METHOD_GRAVITY, false,
           "no-head");
}

/* A column of half a metre is 1050 kg/m3 9.80665 m/s2 0.5 m = 0.05 bar, in the middle of what
 * residual valves open at (0.01 to 0.1 bar, from memory). It keeps 0.6 to 0.8 bar on what comes
 * back. */
static void a_residual_valve_stops_gravity_and_a_syringe(void **state)
{
    (void)state;
#define RESIDUAL                                                                                   \
    CAR("DOT 4", "", "", "3/16 in",                                                                \
        "[outlet valve]\ntype = residual\nholds = 0.7 bar\n[runs]\n"                               \
        "feed = brake master, 0.1 m pipe, outlet valve, 2.4 m pipe, 0.3 m hose, axle tee\n"        \
        "left = axle tee, 0.7 m pipe, rear left drum\n"                                            \
        "right = axle tee, 0.5 m pipe, rear right drum\n")
    expect(RESIDUAL, METHOD_GRAVITY, false, "residual-in-way");
    expect(RESIDUAL, METHOD_REVERSE, false, "residual-against");
    expect(RESIDUAL, METHOD_PRESSURE, true, NULL);
    expect(RESIDUAL, METHOD_PEDAL, true, NULL);
}

static void a_hold_off_valve_is_minded_by_all_but_the_pedal(void **state)
{
    (void)state;
#define HOLD_OFF                                                                                   \
    CAR("DOT 4", "", "", "3/16 in",                                                                \
        "[hold-off valve]\ntype = hold-off\nopens = 8 bar\nequal above = 20 bar\n[runs]\n"         \
        "feed = brake master, 0.1 m pipe, hold-off valve, 2.4 m pipe, 0.3 m hose, axle tee\n"      \
        "left = axle tee, 0.7 m pipe, rear left drum\n"                                            \
        "right = axle tee, 0.5 m pipe, rear right drum\n")
    struct advice_car car = advice_car_read(HOLD_OFF, NULL);
    assert_null(noted(&car, METHOD_PEDAL, "hold-off-in-way"));
    near(quantity(noted(&car, METHOD_PRESSURE, "hold-off-in-way"), "pressure"), 8e5, 1);
    advice_car_finish(&car);
}

/* No way past it at rest: what the master pushes comes back, and no method brings fresh fluid. */
static void a_servo_that_is_shut_at_rest_stops_every_method(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(
        CAR("DOT 4", "", "", "3/16 in",
            "[remote servo]\ntype = remote\npasses at rest = no\n[runs]\n"
            "feed = brake master, 1 m pipe, remote servo, 1.5 m pipe, 0.3 m hose, axle tee\n"
            "left = axle tee, 0.7 m pipe, rear left drum\n"
            "right = axle tee, 0.5 m pipe, rear right drum\n"),
        NULL);
    for (int m = 0; m < METHOD_COUNT; m++) {
        assert_false(verdict(&car, (enum bleed_method)m)->suits);
        assert_non_null(noted(&car, (enum bleed_method)m, "servo-shut"));
    }
    const struct bleed_detail *detail = car.result->bleed->steps.items[0].bleed;
    assert_true(detail->gave_up);
    near(detail->flow_by_pressure, 0, 1e-15);
    assert_true(isnan(detail->by_gravity.s));
    advice_car_finish(&car);
}

/* Two reservoirs of the ready motorcycle, whose calipers hold more than half of one. */
static void reservoirs_get_the_kits_cap_in_turn_and_may_overflow(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/twin-disc-motorcycle.ini", NULL);
    assert_non_null(noted(&car, METHOD_PRESSURE, "kit-each"));
    assert_non_null(noted(&car, METHOD_PRESSURE, "old-reservoir"));
    assert_non_null(noted(&car, METHOD_REVERSE, "overflows"));
    assert_non_null(noted(&car, METHOD_REVERSE, "dirt-back"));
    assert_non_null(noted(&car, METHOD_GRAVITY, "trickles"));
    assert_non_null(noted(&car, METHOD_VACUUM, "thread-draws-air"));
    assert_non_null(noted(&car, METHOD_PEDAL, "stroke-limited"));
    assert_non_null(noted(&car, METHOD_PEDAL, "pedal-alone"));
    advice_car_finish(&car);
    struct advice_car van = advice_car_load("systems/village-van.ini", NULL);
    assert_null(noted(&van, METHOD_PRESSURE, "kit-each"));
    assert_non_null(noted(&van, METHOD_REVERSE, "with-buoyancy"));
    advice_car_finish(&van);
}

/* Of the two drums one has no nipple; its air stands in an open circuit. Wide pipe whose heights
 * are not given may let the bubble climb. */
static void a_drum_without_a_nipple_and_unknown_heights_are_minded(void **state)
{
    (void)state;
    expect(CAR("DOT 4", "", "", "3/16 in", "[rear right drum]\nnipples = 0\n" RUNS), METHOD_PEDAL,
           true, "no-nipple");
    expect(CAR("DOT 4", "", "", "3/16 in", "[rear right drum]\nnipples = 0\n" RUNS), METHOD_REVERSE,
           false, "no-nipple-to-push");
#define NO_HEIGHTS                                                                                 \
    "[vehicle]\ntitle = Case\ndriver = right\nfront axle = independent\nrear axle = live\n"        \
    "[fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n"                                     \
    "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 150 mm\n"                            \
    "[brake master]\ntype = single\nbore = 20 mm\nstroke = 25 mm\n"                                \
    "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 3/4 in\n"           \
    "[axle tee]\non = rear axle\n[all pipes]\nsize = 3/8 in\nwall = 0.028 in\n" RUNS
    expect(NO_HEIGHTS, METHOD_GRAVITY, true, "bubble-may-outrun");
}

/* Pipe of 3/8 in, bore about 8 mm, falling: its bubble climbs at 73 mm/s (F. Viana and others 2003)
 * and takes 3.8 mL/s, double when slanted. In 3/16 in pipe it stands (F. P. Bretherton 1961). */
static void a_wide_falling_pipe_lets_the_bubble_climb_against_gravitys_flow(void **state)
{
    (void)state;
#define FALLING                                                                                    \
    CAR("DOT 4", "height = 0.9 m\n", "height = 0.3 m\n", "3/8 in", "wall = 0.028 in\n" RUNS)
    struct advice_car wide = advice_car_read(FALLING, NULL);
    const struct method_note *note = noted(&wide, METHOD_GRAVITY, "bubble-outruns");
    assert_non_null(note);
    double least = quantity(note, "flow_least") / 60;
    assert_true(least > 6e-6 && least < 9e-6);
    assert_true(quantity(note, "flow") < quantity(note, "flow_least"));
    assert_false(verdict(&wide, METHOD_GRAVITY)->suits);
    advice_car_finish(&wide);
    struct advice_car narrow = advice_car_read(
        CAR("DOT 4", "height = 0.9 m\n", "height = 0.3 m\n", "3/16 in", RUNS), NULL);
    assert_null(noted(&narrow, METHOD_GRAVITY, "bubble-outruns"));
    assert_null(noted(&narrow, METHOD_GRAVITY, "bubble-may-outrun"));
    advice_car_finish(&narrow);
}

static void silicone_does_not_come_clear_under_suction(void **state)
{
    (void)state;
    expect(PLAIN("DOT 5"), METHOD_VACUUM, false, "silicone-outgasses");
    expect(PLAIN("DOT 5"), METHOD_PRESSURE, true, NULL);
    expect(PLAIN("DOT 4"), METHOD_VACUUM, true, "cups-draw-air");
}

#define DISCS(below)                                                                               \
    "[vehicle]\ntitle = Case\ndriver = right\nfront axle = independent\n"                          \
    "[fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n"                                     \
    "[brake pedal]\nworks = brake master\nratio = 4\ntravel = 150 mm\n"                            \
    "[brake master]\ntype = single\nbore = 22.2 mm\nstroke = 25 mm\n"                              \
    "[front disc]\ncaliper = fixed\nbore = 2 of 54 mm\nchamber = 45.8 mL\n"                        \
    "nipple below top = " below "\n[front tee]\nblanked = 1\nchamber = 0.2 mL\n"                   \
    "[runs]\nfeed = brake master, 1.0 m pipe, front tee\n"                                         \
    "right = front tee, 0.5 m pipe, 0.4 m hose, front right disc\n"                                \
    "left = front tee, 1.5 m pipe, 0.4 m hose, front left disc\n"

/* A bore of 54 mm, hole 10 mm below its top: a segment of (27^2 acos(17/27) - 17 sqrt(540 - 100))
 * mm2 = 292 mm2 of 2290 mm2, 12.7 %: 5.8 mL of 45.8. Ratio 4 on 387.1 mm2: 10.3 mm a mL, 98 % of
 * it at 50 bar: 59 mm of pedal. The port's 0.2 mL cost 2 mm. */
static void air_above_the_nipple_and_in_dead_legs_is_told_with_its_price(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(DISCS("10 mm"), NULL);
    const struct method_note *note = noted(&car, METHOD_PEDAL, "nipple-below-top");
    assert_non_null(note);
    near(quantity(note, "volume"), 5.84e-6, 0.06e-6);
    near(quantity(note, "travel"), 59e-3, 1e-3);
    assert_true(verdict(&car, METHOD_PEDAL)->suits);
    near(quantity(noted(&car, METHOD_PEDAL, "dead-leg"), "travel"), 2.0e-3, 0.1e-3);
    assert_null(noted(&car, METHOD_PEDAL, "calipers-swapped"));
    advice_car_finish(&car);
}

static void a_nipple_at_the_bottom_is_taken_for_calipers_swapped(void **state)
{
    (void)state;
    expect(DISCS("50 mm"), METHOD_PEDAL, false, "calipers-swapped");
    expect(DISCS("50 mm"), METHOD_PRESSURE, false, "calipers-swapped");
    struct advice_car car = advice_car_read(DISCS("0 mm"), NULL);
    assert_null(noted(&car, METHOD_PEDAL, "nipple-below-top"));
    advice_car_finish(&car);
}

static void every_reason_has_words_an_id_of_its_own_and_a_source(void **state)
{
    (void)state;
    size_t count;
    const struct method_reason *rows = method_reasons(&count);
    for (size_t i = 0; i < count; i++) {
        assert_true(strlen(rows[i].words) > 20 && strlen(rows[i].source) > 5);
        for (size_t j = 0; j < i; j++) {
            assert_string_not_equal(rows[i].id, rows[j].id);
        }
    }
    const struct method_row *methods = method_rows(&count);
    assert_int_equal(count, METHOD_COUNT);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(methods[i].method, i);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_hump_above_the_reservoir_locks_gravity),
        cmocka_unit_test(a_pipe_that_states_a_high_point_locks_gravity_as_well),
        cmocka_unit_test(two_falls_that_add_up_to_the_head_are_minded),
        cmocka_unit_test(without_heights_nobody_can_tell_and_that_is_said),
        cmocka_unit_test(a_reservoir_below_the_nipple_gives_no_head),
        cmocka_unit_test(a_residual_valve_stops_gravity_and_a_syringe),
        cmocka_unit_test(a_hold_off_valve_is_minded_by_all_but_the_pedal),
        cmocka_unit_test(a_servo_that_is_shut_at_rest_stops_every_method),
        cmocka_unit_test(reservoirs_get_the_kits_cap_in_turn_and_may_overflow),
        cmocka_unit_test(a_drum_without_a_nipple_and_unknown_heights_are_minded),
        cmocka_unit_test(a_wide_falling_pipe_lets_the_bubble_climb_against_gravitys_flow),
        cmocka_unit_test(silicone_does_not_come_clear_under_suction),
        cmocka_unit_test(air_above_the_nipple_and_in_dead_legs_is_told_with_its_price),
        cmocka_unit_test(a_nipple_at_the_bottom_is_taken_for_calipers_swapped),
        cmocka_unit_test(every_reason_has_words_an_id_of_its_own_and_a_source),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
