#include "advice/result.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "advice_car.h"
#include "base/text.h"
#include "support/run_cli.h"

#define VAN  "systems/village-van.ini"
#define WORK "[work]\ncar = Village van\ndate = 2026-11-20\n"

static const struct step *test_step(const struct advice_car *car, const char *id, const char *part)
{
    return advice_step(car, &car->result->tests, id, part);
}

/* 49 CFR 570.55(b): 125 lbf for 10 s; (c): 50 lbf, no more than 80 % used. 1 lbf is 4.44822 N. */
static void the_pedal_is_held_with_the_force_and_time_of_the_rule(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    near(step_said(test_step(&car, "test-hold", "brake pedal"), "force"), 556.03, 0.01);
    near(step_said(test_step(&car, "test-hold", "brake pedal"), "time"), 10, 1e-9);
    near(step_said(test_step(&car, "test-hold-long", "brake pedal"), "time"), 300, 1e-9);
    near(step_said(test_step(&car, "test-reserve-assisted", "brake pedal"), "force"), 222.41, 0.01);
    assert_null(test_step(&car, "test-hold", "clutch pedal"));
    assert_string_equal(test_step(&car, "test-hold", NULL)->row->source, "49 CFR 570.55(b)");
    advice_car_finish(&car);
}

/* Ohio Administrative Code 4501:2-1-08 (B)(1): 40 to 60 lbf for a minute. */
static void another_rule_holds_less_for_longer_and_cups_are_left_alone_overnight(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    const struct step *minute = test_step(&car, "test-hold-minute", "brake pedal");
    near(step_said(minute, "force"), 177.93, 0.01);
    near(step_said(minute, "force_most"), 266.89, 0.01);
    near(step_said(minute, "time"), 60, 1e-9);
    assert_true(test_step(&car, "test-overnight", NULL)->number > minute->number);
    assert_non_null(test_step(&car, "finish-clutch", "clutch pedal"));
    assert_non_null(test_step(&car, "finish-levels", "brake reservoir"));
    advice_car_finish(&car);
}

/* A light foot, one rule's minute, the other rule's 556 N, and the servo's push last. By hand for
 * the van as its work leaves it, 556 N, ratio 290/76 = 3.816, pedal 0.95: rod 2016 N; the new
 * master of 7/8 in, 387.95 mm2, efficiency 0.95, less 60 N of the servo's spring and 120 N of the
 * master's: 0.95 (2016 - 60) - 120 N are 44.8 bar in the first circuit without the servo, and 46.1
 * in the second, behind 70 N. */
static void pressure_only_grows_from_test_to_test(void **state)
{
    (void)state;
    static const char *const rows[] = {"test-hold-long", "test-hold-minute", "test-hold",
                                       "test-hold-assisted"};
    struct advice_car car = advice_car_load(VAN, "demo/village-van-work.ini");
    const struct step *before = test_step(&car, "test-engine-off", "servo");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const struct step *step = test_step(&car, rows[i], "brake pedal");
        assert_non_null(step);
        assert_true(step->number > before->number);
        assert_true(i == 0 || step_said(step, "pressure") > step_said(before, "pressure"));
        before = step;
    }
    double rod = 0.95 * 290.0 / 76 * 556.03;
    double area = 3.14159265358979 / 4 * 22.225e-3 * 22.225e-3;
    near_rel(step_said(test_step(&car, "test-hold", NULL), "pressure"),
             (0.95 * (rod - 60) - 70) / area, 1e-4);
    assert_true(test_step(&car, "test-servo", "servo")->number <
                test_step(&car, "test-hold-assisted", NULL)->number);
    assert_true(test_step(&car, "test-hold", NULL)->pressure_assumed);
    advice_car_finish(&car);
}

static void only_what_the_work_touched_is_tested(void **state)
{
    (void)state;
    struct advice_car car = advice_car_after(VAN, WORK "renewed = clutch slave\n");
    static const char *const brakes[] = {"test-shoes",       "test-hand-brake", "test-hold",
                                         "test-servo",       "test-circuits",   "test-wheel-nuts",
                                         "test-free-wheels", "test-bed-in",     "test-first-drive"};
    for (size_t i = 0; i < sizeof brakes / sizeof *brakes; i++) {
        assert_null(test_step(&car, brakes[i], NULL));
    }
    assert_non_null(test_step(&car, "test-clutch", "clutch slave"));
    assert_non_null(test_step(&car, "test-first-drive-clutch", NULL));
    assert_int_equal(test_step(&car, "test-clutch-gear", "clutch pedal")->row->phase,
                     PHASE_RESTING);
    advice_car_finish(&car);
    struct advice_car hose = advice_car_after(VAN, WORK "renewed = front left hose\n");
    assert_null(test_step(&hose, "test-shoes", NULL));
    assert_null(test_step(&hose, "test-hand-brake", NULL));
    assert_null(test_step(&hose, "test-circuits", NULL));
    assert_null(test_step(&hose, "test-bed-in", NULL));
    assert_non_null(test_step(&hose, "test-hold", "brake pedal"));
    advice_car_finish(&hose);
}

/* What was set for the bleeding still stands in the second round. */
static void a_second_round_comes_before_all_else(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    int round = test_step(&car, "test-second-round", NULL)->number;
    assert_true(test_step(&car, "undo-load-valve", "load valve")->number > round);
    advice_car_finish(&car);
    struct advice_car servo = advice_car_after(VAN, WORK "renewed = servo\n");
    assert_null(test_step(&servo, "test-second-round", NULL));
    advice_car_finish(&servo);
}

static void shoes_are_back_before_the_pedal_is_judged(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    assert_true(test_step(&car, "test-shoes", NULL)->number <
                test_step(&car, "finish-pedal", "brake pedal")->number);
    assert_true(test_step(&car, "undo-pedal-block", "brake pedal")->number <
                test_step(&car, "test-shoes", NULL)->number);
    advice_car_finish(&car);
}

static void a_servo_is_tried_only_where_there_is_one(void **state)
{
    (void)state;
    struct advice_car with = advice_car_load(VAN, NULL);
    struct advice_car without = advice_car_load("systems/little-two-seater.ini", NULL);
    assert_non_null(test_step(&with, "test-servo", "servo"));
    assert_null(test_step(&without, "test-servo", NULL));
    /* one circuit cannot be tried by itself */
    assert_non_null(test_step(&with, "test-circuits", NULL));
    assert_null(test_step(&without, "test-circuits", NULL));
    advice_car_finish(&with);
    advice_car_finish(&without);
}

static void a_hand_lever_is_pulled_and_not_stamped_on(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/twin-disc-motorcycle.ini", NULL);
    assert_non_null(test_step(&car, "test-hold-lever", "hand lever"));
    assert_null(test_step(&car, "test-hold", "hand lever"));
    assert_non_null(test_step(&car, "test-hold", "rear brake pedal"));
    advice_car_finish(&car);
}

/* Common practice, no source: glycol fluid every two years. */
static void the_next_change_of_fluid_is_two_years_after_this_one(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, "demo/village-van-work.ini");
    struct date due = test_step(&car, "later-fluid", "brake fluid")->date;
    assert_int_equal(date_compare(due, (struct date){2028, 11, 20}), 0);
    advice_car_finish(&car);
}

static void fluid_of_unknown_age_is_due_today(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    struct date due = test_step(&car, "later-fluid", "brake fluid")->date;
    assert_int_equal(date_compare(due, (struct date){2026, 11, 25}), 0);
    advice_car_finish(&car);
}

static void shoes_come_before_the_hand_brake_and_all_is_signed_before_the_road(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    int shoes = test_step(&car, "test-shoes", NULL)->number;
    int hand_brake = test_step(&car, "test-hand-brake", "hand brake")->number;
    int held = test_step(&car, "test-hold", NULL)->number;
    int signs = test_step(&car, "test-second-person", NULL)->number;
    int nuts = test_step(&car, "test-wheel-nuts", NULL)->number;
    int road = test_step(&car, "test-first-drive", NULL)->number;
    int slope = test_step(&car, "test-slope", "hand brake")->number;
    assert_true(shoes < hand_brake && hand_brake < held && held < signs && signs < road);
    assert_true(nuts < road && road < slope);
    for (size_t i = 0; i < car.result->tests.count; i++) {
        enum step_phase phase = car.result->tests.items[i].row->phase;
        assert_true(phase >= PHASE_DRIVE || car.result->tests.items[i].number < road);
    }
    assert_int_equal(test_step(&car, "later-100-km", NULL)->row->phase, PHASE_LATER);
    advice_car_finish(&car);
}

static void the_day_after_the_last_of_a_month_is_the_first_of_the_next(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    static const struct {
        struct date day, next;
    } days[] = {{{2026, 11, 25}, {2026, 11, 26}},
                {{2026, 12, 31}, {2027, 1, 1}},
                {{2028, 2, 28}, {2028, 2, 29}},
                {{2026, 2, 28}, {2026, 3, 1}}};
    for (size_t i = 0; i < sizeof days / sizeof *days; i++) {
        struct steps steps = tests_of(car.system, car.network, days[i].day, car.arena);
        struct date next = advice_step(&car, &steps, "later-next-day", NULL)->date;
        assert_int_equal(date_compare(next, days[i].next), 0);
    }
    advice_car_finish(&car);
}

static void the_clutch_is_told_what_to_measure(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    const struct step *step = test_step(&car, "test-clutch", "clutch slave");
    assert_non_null(step);
    /* the fork halves it, nearly: ratio 1.7 */
    near_rel(step_said(step, "most") / step_said(step, "least"), 1.7, 1e-6);
    advice_car_finish(&car);
}

/* What the test demands of a servo is what its figure says it can give: one number. With a shell of
 * 1 L, which a stroke nearly fills, it is less than the two strokes of the trade. */
static void a_servo_is_asked_for_no_more_strokes_than_it_has(void **state)
{
    (void)state;
    for (int small = 0; small < 2; small++) {
        char *path = source_path(VAN), *whole = read_whole(path, NULL);
        char *servo = strchr(strstr(whole, "[servo]"), '\n');
        struct arena *arena = arena_create();
        const char *text = text_print(arena, "%.*s\n%s%s", (int)(servo - whole), whole,
                                      small ? "vacuum volume = 1 L" : "vacuum volume = 5 L", servo);
        struct advice_car car = advice_car_read(text, NULL);
        const struct figure *left =
            figures_find(&car.result->figures, "assisted-strokes-left", NULL);
        const char *words = test_step(&car, "test-servo-holds", NULL)->text;
        assert_int_equal(words[0] - '0', small ? (int)left->value : 2);
        assert_true(small ? left->value < 2 : left->value >= 2);
        advice_car_finish(&car);
        arena_destroy(arena);
        free(whole);
        free(path);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_pedal_is_held_with_the_force_and_time_of_the_rule),
        cmocka_unit_test(another_rule_holds_less_for_longer_and_cups_are_left_alone_overnight),
        cmocka_unit_test(a_servo_is_asked_for_no_more_strokes_than_it_has),
        cmocka_unit_test(a_servo_is_tried_only_where_there_is_one),
        cmocka_unit_test(a_hand_lever_is_pulled_and_not_stamped_on),
        cmocka_unit_test(the_next_change_of_fluid_is_two_years_after_this_one),
        cmocka_unit_test(fluid_of_unknown_age_is_due_today),
        cmocka_unit_test(pressure_only_grows_from_test_to_test),
        cmocka_unit_test(only_what_the_work_touched_is_tested),
        cmocka_unit_test(a_second_round_comes_before_all_else),
        cmocka_unit_test(shoes_are_back_before_the_pedal_is_judged),
        cmocka_unit_test(shoes_come_before_the_hand_brake_and_all_is_signed_before_the_road),
        cmocka_unit_test(the_day_after_the_last_of_a_month_is_the_first_of_the_next),
        cmocka_unit_test(the_clutch_is_told_what_to_measure),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
