#include "advice/bleeding/bleed_bench.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

#define SUSPECTED                                                                                  \
    "[found rear feed pipe]\nbore surface = stained\n[found front right pipe]\nbore surface = "    \
    "pitted\n[found rear right pipe]\nbore surface = pitted\n[found rear left pipe]\nbore "        \
    "surface = pitted\n"
#define VAN  "systems/village-van.ini"
#define WORK "[work]\ncar = Village van\ndate = 2026-11-20\n"

static const struct step *bench(const struct advice_car *car, const char *id, const char *part)
{
    return advice_step(car, &car->result->bleed->bench, id, part);
}

/* Bore 13/16 in = 20.64 mm, 334.5 mm2; both chambers 34 mm: 11.37 mL. Three volumes leave e^-3 =
 * 5 % (O. Levenspiel, Chemical Reaction Engineering, mixed flow), by thirds of the stroke 9
 * strokes. Common practice, no source, says 8 to 15. */
static void a_new_master_is_bled_in_strokes_that_the_trade_would_know(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "renewed = brake master\n");
    const struct step *step = bench(&car, "bench-master", "brake master");
    assert_non_null(step);
    near(step->volume.m3, 3 * 11.373e-6, 0.01e-6);
    near(step->strokes, 9, 1e-9);
    assert_in_range((int)step->strokes, 8, 15);
    near(step_said(step, "least"), 34e-3 / 3, 1e-6);
    assert_true(step_said(step, "angle") > 0);
    assert_null(bench(&car, "bench-master-cup", NULL));
    advice_car_finish(&car);
}

static void a_master_without_a_reservoir_of_its_own_needs_a_cup(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "renewed = clutch master\n");
    assert_non_null(bench(&car, "bench-master", "clutch master"));
    assert_non_null(bench(&car, "bench-master-cup", "clutch master"));
    advice_car_finish(&car);
}

static void a_master_that_stays_on_the_car_is_not_taken_to_the_bench(void **state)
{
    (void)state;
    struct advice_car dry = advice_job_after(VAN, WORK "ran dry = brake reservoir\n");
    assert_null(bench(&dry, "bench-master", NULL));
    assert_non_null(advice_step(&dry, &dry.result->bleed->steps, "bleed-master", "brake master"));
    struct advice_car wheel = advice_job_after(VAN, WORK "opened = rear left drum\n");
    assert_int_equal(wheel.result->bleed->bench.count, 0);
    advice_car_finish(&dry);
    advice_car_finish(&wheel);
}

/* Hagen and Poiseuille, pi D^4 g h/(128 nu L) (Massey and Ward-Smith, Mechanics of Fluids, section
 * 6.2): a pipe of 3/16 in with the usual wall, bore 3.34 mm, 2.6 m long, at a head of 0.5 m,
 * nu 16.3 mm2/s (DOT 4 at 20 degC): 0.354 mL/s, 21 mL a minute. */
static void a_pipe_that_stays_is_tried_for_the_flow_of_its_bore(void **state)
{
    (void)state;
    struct advice_car plain = advice_car_load(VAN, NULL);
    for (size_t i = 0; i < plain.result->bleed->bench.count; i++) {
        assert_string_not_equal(plain.result->bleed->bench.items[i].row->id, "bench-flow");
    }
    advice_car_finish(&plain);
    struct advice_car car = advice_job_after(
        VAN, WORK "opened = rear feed pipe, front right pipe, rear right pipe\n" SUSPECTED);
    const struct steps *steps = &car.result->bleed->bench;
    const struct step *longest = NULL;
    for (size_t i = 0; i < steps->count; i++) {
        if (strcmp(steps->items[i].row->id, "bench-flow") == 0 &&
            (longest == NULL ||
             step_said(&steps->items[i], "minute") < step_said(longest, "minute"))) {
            longest = &steps->items[i];
        }
    }
    assert_non_null(longest);
    near(step_said(longest, "least"), 0.5, 1e-12);
    near(step_said(longest, "temperature"), 20, 0);
    double by_hand = 3.14159265 * pow(3.3401e-3, 4) * 9.80665 * 0.5 / (128 * 16.3e-6 * 2.6);
    near(step_said(longest, "minute"), 60 * by_hand, 0.6 * by_hand);
    /* 0.5 m at the front right, at the rear right: one step */
    int pipes = 0;
    for (size_t i = 0; i < steps->count; i++) {
        pipes += strstr(steps->items[i].text, " and ") != NULL;
    }
    assert_true(pipes >= 1);
    advice_car_finish(&car);
}

static void a_new_pipe_is_not_tried(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "renewed = axle tee\n" SUSPECTED);
    struct advice_car new = advice_job_after(
        VAN, WORK "renewed = axle tee, rear left pipe, rear right pipe\n" SUSPECTED);
    assert_true(car.result->bleed->bench.count > new.result->bleed->bench.count);
    advice_car_finish(&car);
    advice_car_finish(&new);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_new_master_is_bled_in_strokes_that_the_trade_would_know),
        cmocka_unit_test(a_master_without_a_reservoir_of_its_own_needs_a_cup),
        cmocka_unit_test(a_master_that_stays_on_the_car_is_not_taken_to_the_bench),
        cmocka_unit_test(a_pipe_that_stays_is_tried_for_the_flow_of_its_bore),
        cmocka_unit_test(a_new_pipe_is_not_tried),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
