#include "advice/bleed_plan.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

/* One circuit, two wheels, every volume given. Pipe of 3/16 in with a wall of 0.028 in is 0.1315 in
 * inside: 3.3401 mm, 8.7622 mm2, so 8.7622 mL a metre; hose of 1/8 in: 7.9173 mL a metre.
 *   tee and master 2 mL and 5 mL, unions 1 mL, calipers 20 mL
 *   left:  master 5 + 1.0 m pipe 8.7622 + tee 2 + 1.5 m pipe 13.1433 + union 1 + 0.4 m hose 3.1669
 *          + 20 = 53.072 mL
 *   right: 0.5 m pipe 4.3811 + union 1 + 0.4 m hose 3.1669 + 20 = 28.548 mL */
#define CAR                                                                                        \
    "[vehicle]\ntitle = Case\ndriver = right\nfront axle = independent\n"                          \
    "[fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n"                                     \
    "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 150 mm\n"                            \
    "[brake master]\ntype = single\nbore = 20 mm\nstroke = 25 mm\ncut off = 1 mm\nrod gap = 1 "    \
    "mm\n"                                                                                         \
    "chamber = 5 mL\n"                                                                             \
    "[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\nchamber = 20 mL\nnipples = 1\n"             \
    "[front tee]\nchamber = 2 mL\non = body\n"                                                     \
    "[all pipes]\nsize = 3/16 in\nwall = 0.028 in\n[all hoses]\ninside = 1/8 in\n"                 \
    "[runs]\nfeed = brake master, 1.0 m pipe, front tee\n"                                         \
    "right = front tee, 0.5 m pipe, tap union, 0.4 m hose, front right disc\n"                     \
    "left = front tee, 1.5 m pipe, tip union, 0.4 m hose, front left disc\n"                       \
    "[tap union]\nchamber = 1 mL\n[tip union]\nchamber = 1 mL\n"

#define WORK "[work]\ncar = Case\ndate = 2026-11-20\n"

static const struct step *step_at(const struct advice_car *car, size_t at)
{
    assert_true(at < car->result->bleed->steps.count);
    return &car->result->bleed->steps.items[at];
}

static void the_shared_pipe_is_drawn_through_once(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR, NULL);
    near(step_at(&car, 0)->volume.m3, 53.072e-6, 0.01e-6);
    near(step_at(&car, 1)->volume.m3, 28.548e-6, 0.01e-6);
    near(step_at(&car, 0)->run.m, 2.9, 1e-9);
    near(step_at(&car, 1)->run.m, 1.9, 1e-9);
    assert_false(step_at(&car, 0)->volume_assumed);
    advice_car_finish(&car);
}

/* Levenspiel: three volumes leave e^-3 = 5 % of the old fluid. */
static void changing_the_fluid_takes_three_volumes(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR, WORK "fluid renewed = yes\n");
    near(step_at(&car, 0)->volume.m3, 3 * 53.072e-6, 0.03e-6);
    advice_car_finish(&car);
}

/* Bore 20 mm is 314.16 mm2. Old: two thirds of (25 - 1) mm are 5.027 mL a stroke: 53.072 mL take 11
 * strokes. New: 24 mm, 7.540 mL: 8 strokes. */
static void an_old_master_is_stroked_over_two_thirds_a_new_one_over_all(void **state)
{
    (void)state;
    struct advice_car old = advice_car_read(CAR, NULL);
    struct advice_car new = advice_car_read(CAR, WORK "renewed = brake master\n");
    near(step_at(&old, 0)->strokes, 11, 1e-9);
    assert_string_equal(step_at(&new, 0)->row->id, "bleed-master");
    near(step_at(&new, 1)->strokes, 8, 1e-9);
    advice_car_finish(&old);
    advice_car_finish(&new);
}

/* Volumes 53.072 + 28.548 and four clear strokes of 5.027 mL at each nipple: 121.83 mL; with a new
 * master 81.620 + 8 * 7.540 = 141.94 mL, and the reservoir's 200 mL. */
static void the_fluid_to_have_ready_is_the_sum_with_clear_strokes_and_reservoir(void **state)
{
    (void)state;
    struct advice_car old = advice_car_read(CAR, NULL);
    struct advice_car new = advice_car_read(CAR, WORK "renewed = brake master\n");
    near(old.result->bleed->fluid.m3, 121.83e-6, 0.05e-6);
    near(new.result->bleed->fluid.m3, 341.94e-6, 0.05e-6);
    advice_car_finish(&old);
    advice_car_finish(&new);
}

static void a_volume_that_rests_on_an_assumed_chamber_is_marked(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    assert_true(step_at(&car, 0)->volume_assumed);
    assert_true(car.result->bleed->fluid_assumed);
    advice_car_finish(&car);
}

static void every_nipple_of_every_ready_car_comes_up_exactly_once(void **state)
{
    (void)state;
    static const char *const cars[] = {
        "systems/diagonal-hatch.ini",       "systems/family-saloon.ini",
        "systems/hill-coupe.ini",           "systems/little-two-seater.ini",
        "systems/rear-engined-saloon.ini",  "systems/servo-estate.ini",
        "systems/twin-disc-motorcycle.ini", "systems/village-van.ini"};
    for (size_t c = 0; c < sizeof cars / sizeof *cars; c++) {
        struct advice_car car = advice_car_load(cars[c], NULL);
        const struct steps *steps = &car.result->bleed->steps;
        size_t nipples = 0;
        for (int i = 0; i < car.system->part_count; i++) {
            const struct part *part = &car.system->parts[i];
            int count = part->fitted.nipples > 0 ? part->fitted.nipples : 0;
            nipples += kind_is_wet(part->kind) ? (size_t)count : 0;
        }
        assert_int_equal(steps->count, nipples);
        for (size_t i = 0; i < steps->count; i++) {
            for (size_t j = 0; j < i; j++) {
                assert_false(steps->items[i].part == steps->items[j].part &&
                             steps->items[i].nipple == steps->items[j].nipple);
            }
            assert_non_null(steps->items[i].reason);
            assert_int_equal(steps->items[i].number, (int)i + 1);
        }
        advice_car_finish(&car);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_shared_pipe_is_drawn_through_once),
        cmocka_unit_test(changing_the_fluid_takes_three_volumes),
        cmocka_unit_test(an_old_master_is_stroked_over_two_thirds_a_new_one_over_all),
        cmocka_unit_test(the_fluid_to_have_ready_is_the_sum_with_clear_strokes_and_reservoir),
        cmocka_unit_test(a_volume_that_rests_on_an_assumed_chamber_is_marked),
        cmocka_unit_test(every_nipple_of_every_ready_car_comes_up_exactly_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
