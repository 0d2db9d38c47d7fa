#include "advice/bleeding/bleed_plan.h"

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

/* The same master behind a remote servo: bore 20 mm, rod 6 mm, 6 in of diaphragm. */
#define SERVO_CAR                                                                                  \
    "[vehicle]\ntype = van\ntitle = Case\n[fluid]\ngrade = DOT 4\n"                                \
    "[brake pedal]\nworks = brake master\nratio = 5.0\ntravel = 150 mm\n"                          \
    "[brake master]\ntype = single\nbore = 20 mm\nstroke = 25 mm\n"                                \
    "[remote servo]\ntype = remote\nbore = 20 mm\ndiameter = 150 mm\nratio = 2\nvacuum = 0.7 "     \
    "bar\n"                                                                                        \
    "efficiency = 0.8\nreturn spring = 60 N\nrod diameter = 6 mm\nnipples = 1\n"                   \
    "[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\nchamber = 20 mL\nnipples = 1\n"             \
    "[front tee]\nblanked = 1\nchamber = 2 mL\non = body\n"                                        \
    "[runs]\nfeed = brake master, 1.0 m pipe, remote servo, 1 m pipe, front tee\n"                 \
    "right = front tee, 0.5 m pipe, tap union, 0.4 m hose, front right disc\n"                     \
    "left = front tee, 1.5 m pipe, tip union, 0.4 m hose, front left disc\n"

#define WORK "[work]\ncar = Case\ndate = 2026-11-20\n"

static const struct step *step_at(const struct advice_car *car, size_t at)
{
    assert_true(at < car->result->bleed->steps.count);
    return &car->result->bleed->steps.items[at];
}

/* Ways of 53.072 and 28.548 mL full of air, an old master's strokes of 4.9218 mL: 11 and 6 whole
 * ones, 54.140 and 29.531 mL. */
static void the_shared_pipe_is_drawn_through_once(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR, NULL);
    near(step_at(&car, 0)->volume.m3, 54.140e-6, 0.01e-6);
    near(step_at(&car, 1)->volume.m3, 29.531e-6, 0.01e-6);
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

/* Bore 20 mm is 314.16 mm2. Old: two thirds of 25 mm less 1 mm for the port, 15.67 mm, are 4.922 mL
 * a stroke: 53.072 mL take 11 strokes. New: 24 mm, 7.540 mL: 8 strokes. */
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

/* Another day's fluid stays in the car of a work that does not renew it. The cylinder's three
 * volumes for one at each nipple are what renewing adds: never less than the work as it is. */
static void what_renewing_adds_is_told_unless_the_work_renews(void **state)
{
    (void)state;
    struct advice_car part = advice_car_read(CAR, WORK "renewed = brake master\n");
    struct advice_car all =
        advice_car_read(CAR, WORK "renewed = brake master\nfluid renewed = yes\n");
    const struct renewal *renewal = &part.result->bleed->renewal;
    assert_true(renewal->open);
    assert_false(all.result->bleed->renewal.open);
    struct advice_car whole = advice_car_read(CAR, NULL); /* without a work file as well */
    assert_true(whole.result->bleed->renewal.open);
    assert_true(whole.result->bleed->renewal.strokes >= whole.result->bleed->renewal.strokes_now);
    advice_car_finish(&whole);
    near(renewal->fluid.m3, all.result->bleed->fluid.m3, 1e-12);
    assert_true(renewal->strokes >= renewal->strokes_now);
    advice_car_finish(&part);
    advice_car_finish(&all);
}

/* 11 and 6 strokes and four clear ones at each nipple in two rounds, 33 of 4.9218 mL: 162.42 mL;
 * with a new master 8 and 4 and sixteen, 28 of 7.5398 mL: 211.11 mL, and the reservoir's 200 mL. To
 * have ready, in whole bottles: one of 250 mL, one of 500 mL (common practice, no source). */
static void the_fluid_to_have_ready_is_the_sum_with_clear_strokes_and_reservoir(void **state)
{
    (void)state;
    struct advice_car old = advice_car_read(CAR, NULL);
    struct advice_car new = advice_car_read(CAR, WORK "renewed = brake master\n");
    near(old.result->bleed->fluid.m3, 162.42e-6, 0.05e-6);
    near(new.result->bleed->fluid.m3, 411.11e-6, 0.05e-6);
    near(old.result->bleed->fluid_ready.m3, 250e-6, 1e-12);
    near(new.result->bleed->fluid_ready.m3, 500e-6, 1e-12);
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

/* From the outlet on, without the master's 5 mL; the right one's way shares pipe and tee. The
 * simulation goes by whole strokes, and air runs ahead of the fluid: it may stay below the volume
 * of air, but not by half, nor over it by more than a stroke. */
static void details_tell_way_and_branch_and_what_the_simulation_drew(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR, NULL);
    const struct bleed_detail *left = step_at(&car, 0)->bleed, *right = step_at(&car, 1)->bleed;
    near(left->path.m3, 48.072e-6, 0.01e-6);
    near(left->branch.m3, 48.072e-6, 0.01e-6);
    near(right->path.m3, 39.310e-6, 0.01e-6);
    near(right->branch.m3, 28.548e-6, 0.01e-6);
    near(left->renewal.m3, 3 * 53.072e-6, 0.03e-6);
    assert_true(left->purge.m3 > 26e-6 && left->purge.m3 < 53.1e-6 + 5.03e-6);
    assert_true(right->purge.m3 > 14e-6 && right->purge.m3 < 28.6e-6 + 5.03e-6);
    near(right->air_left.m3, 0, 1e-9);
    near(left->air_left.m3, 28.548e-6, 0.01e-6);
    assert_string_equal(left->way_up, "at the top of its chamber");
    assert_int_equal(left->with, -1);
    advice_car_finish(&car);
}

/* The reservoir's 200 mL with a third between its marks, 66.7 mL: a stroke of 4.922 mL leaves 13
 * strokes between fillings. The first nipple takes 11 and 4 clear ones: one filling, and after it
 * no less than 133.3 mL. */
static void the_reservoir_is_topped_up_before_it_falls_below_its_lower_mark(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR, NULL);
    const struct bleed_detail *left = step_at(&car, 0)->bleed, *right = step_at(&car, 1)->bleed;
    assert_int_equal(left->top_up_every, 13);
    near(left->reservoir_after.m3, 200e-6 - (15 * 4.9218e-6 - 66.667e-6), 0.02e-6);
    assert_true(right->reservoir_after.m3 >= 133.3e-6);
    advice_car_finish(&car);
}

/* What a step says to draw is what its strokes draw, clears by the simulation, and adds up to what
 * the order costs. */
static void the_figures_of_a_step_agree(void **state)
{
    (void)state;
    static const char *const cars[] = {"systems/diagonal-hatch.ini", "systems/servo-estate.ini",
                                       "systems/hill-coupe.ini"};
    for (size_t c = 0; c < sizeof cars / sizeof *cars; c++) {
        struct advice_car car = advice_car_load(cars[c], NULL);
        const struct bleed_plan *plan = car.result->bleed;
        double drawn = 0, strokes = 0;
        for (size_t i = 0; i < plan->steps.count; i++) {
            const struct step *step = &plan->steps.items[i];
            assert_true(step->volume.m3 >= step->bleed->purge.m3);
            assert_true(step->strokes >= step->bleed->purge_strokes);
            near(step->volume.m3, step->bleed->by_gravity.s * step->bleed->flow_by_gravity, 1e-9);
            drawn += step->bleed->purge.m3;
            strokes += step->bleed->purge_strokes;
        }
        near(drawn, plan->planned.fluid.m3, 1e-10);
        near(strokes, plan->planned.strokes, 1e-6);
        advice_car_finish(&car);
    }
}

/* Hagen and Poiseuille on the left way, master's chamber left out: 2.5 m of 3.3401 mm and 0.4 m of
 * 3.175 mm pipe, DOT 4 at 20 degC 16.3 mm2/s, usual head 0.5 m (common practice, no source), with
 * the nipple's loss: about 20 mL a minute. F. M. White, Fluid Mechanics, laminar pipe flow. */
static void gravity_takes_minutes_and_a_kit_seconds(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR, NULL);
    const struct bleed_detail *left = step_at(&car, 0)->bleed;
    double pipe = 128 * 16.3e-6 / 3.14159265 * (2.5 / pow(3.3401e-3, 4) + 0.4 / pow(3.175e-3, 4));
    double without_nipple = 9.80665 * 0.5 / pipe / 2; /* in practice: half (common practice) */
    assert_true(left->flow_by_gravity < without_nipple);
    assert_true(left->flow_by_gravity > 0.8 * without_nipple);
    near(left->by_gravity.s, left->purge.m3 / left->flow_by_gravity, 1e-6);
    near(left->by_pressure.s, left->purge.m3 / left->flow_by_pressure, 1e-6);
    assert_true(left->by_pressure.s < left->by_gravity.s / 8);
    advice_car_finish(&car);
}

/* A 48 mm bore, nipple 10 mm below its top: a segment of (24^2 acos(14/24) - 14 sqrt(480 - 100))
 * mm2 = 271.4 mm2 of 1809.6 mm2, 15.0 % of the 20 mL. At 50 bar 98 % of it is lost; ratio 5 on
 * 314.16 mm2 costs 15.9 mm of pedal a mL. */
static void air_above_a_nipple_stays_and_costs_pedal(void **state)
{
    (void)state;
    struct advice_car car =
        advice_car_read(CAR "[front left disc]\nnipple below top = 10 mm\n", NULL);
    const struct bleed_detail *left = step_at(&car, 0)->bleed;
    near(left->trapped.m3, 0.150 * 20e-6, 0.02e-6);
    near(left->trapped_pedal.m, 3.0 * 15.9e-3 * 0.98, 0.5e-3);
    assert_non_null(strstr(left->way_up, "10.0 mm below the top"));
    near(step_at(&car, 1)->bleed->air_left.m3, left->trapped.m3, 1e-9);
    near(car.result->bleed->planned.air_left.m3, 0, 1e-9);
    advice_car_finish(&car);
}

static void each_method_has_words_of_its_own(void **state)
{
    (void)state;
    static const char *const rows[METHOD_COUNT] = {"bleed-nipple", "bleed-steady", "bleed-steady",
                                                   "bleed-steady", "bleed-backwards"};
    struct advice_car car = advice_car_read(CAR, NULL);
    for (int m = 0; m < METHOD_COUNT; m++) {
        struct bleed_wishes wishes = {.method = (enum bleed_method)m};
        const struct bleed_plan *plan = bleed_plan_of(car.system, car.network, &wishes, car.arena);
        assert_int_equal(plan->steps.count, 2);
        for (size_t i = 0; i < plan->steps.count; i++) {
            assert_string_equal(plan->steps.items[i].row->id, rows[m]);
        }
        near(plan->planned.air_left.m3, 0, 1e-9);
    }
    advice_car_finish(&car);
}

static void every_nipple_of_every_ready_car_comes_up_at_least_once(void **state)
{
    (void)state;
    static const char *const cars[] = {
        "systems/diagonal-hatch.ini",       "systems/family-saloon.ini",
        "systems/hill-coupe.ini",           "systems/little-two-seater.ini",
        "systems/rear-engined-saloon.ini",  "systems/servo-estate.ini",
        "systems/twin-disc-motorcycle.ini", "systems/village-van.ini"};
    for (size_t c = 0; c < sizeof cars / sizeof *cars; c++) {
        struct advice_car car = advice_car_load(cars[c], NULL);
        const struct bleed_plan *plan = car.result->bleed;
        for (int i = 0; i < car.system->part_count; i++) {
            const struct part *part = &car.system->parts[i];
            for (int n = 0; kind_is_wet(part->kind) && n < part->fitted.nipples; n++) {
                int times = 0;
                for (size_t s = 0; s < plan->steps.count; s++) {
                    times += plan->steps.items[s].part == i && plan->steps.items[s].nipple == n;
                }
                assert_in_range(times, 1, 2);
            }
        }
        for (size_t i = 0; i < plan->steps.count; i++) {
            assert_non_null(plan->steps.items[i].reason);
            assert_int_equal(plan->steps.items[i].number, (int)i + 1);
        }
        /* and all the air that can leave has left */
        near(plan->planned.air_left.m3, 0, 1e-9);
        near(plan->curve[plan->point_count - 1].air,
             plan->curve[0].air > 0 ? 0 : plan->curve[0].air, 1e-9);
        advice_car_finish(&car);
    }
}

/* At the master 50 bar, behind the servo a 50 bar + (0.8 * 0.017671 m2 * 70 kPa - 60 N)/314.16 mm2,
 * a = 1 - (6/20)^2 = 0.91: 75.09 bar, of which air has lost 98.67 %; the master sends 0.91 of it:
 * by hand 14.29 mm of pedal for each mL, where 15.60 are of a car without. */
static void air_behind_a_remote_servo_is_at_the_servos_pressure(void **state)
{
    (void)state;
    struct advice_car car =
        advice_car_read(SERVO_CAR "[front left disc]\nnipple below top = 10 mm\n", NULL);
    const struct step *left =
        advice_step(&car, &car.result->bleed->steps, "bleed-nipple", "front left disc");
    const double each = 5 / 314.159e-6, share = 0.91 * (1 - 1.01325 / (1.01325 + 75.0901));
    near_rel(left->bleed->trapped_pedal.m / left->bleed->trapped.m3, each * share, 1e-5);
    advice_car_finish(&car);

    car = advice_car_read(CAR "[front left disc]\nnipple below top = 10 mm\n", NULL);
    left = advice_step(&car, &car.result->bleed->steps, "bleed-nipple", "front left disc");
    near_rel(left->bleed->trapped_pedal.m / left->bleed->trapped.m3,
             each * (1 - 1.01325 / 51.01325), 1e-5);
    advice_car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_shared_pipe_is_drawn_through_once),
        cmocka_unit_test(changing_the_fluid_takes_three_volumes),
        cmocka_unit_test(an_old_master_is_stroked_over_two_thirds_a_new_one_over_all),
        cmocka_unit_test(what_renewing_adds_is_told_unless_the_work_renews),
        cmocka_unit_test(the_fluid_to_have_ready_is_the_sum_with_clear_strokes_and_reservoir),
        cmocka_unit_test(a_volume_that_rests_on_an_assumed_chamber_is_marked),
        cmocka_unit_test(details_tell_way_and_branch_and_what_the_simulation_drew),
        cmocka_unit_test(the_reservoir_is_topped_up_before_it_falls_below_its_lower_mark),
        cmocka_unit_test(the_figures_of_a_step_agree),
        cmocka_unit_test(air_behind_a_remote_servo_is_at_the_servos_pressure),
        cmocka_unit_test(gravity_takes_minutes_and_a_kit_seconds),
        cmocka_unit_test(air_above_a_nipple_stays_and_costs_pedal),
        cmocka_unit_test(each_method_has_words_of_its_own),
        cmocka_unit_test(every_nipple_of_every_ready_car_comes_up_at_least_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
