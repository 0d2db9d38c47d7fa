/* What becomes of the trade's order by the simulation. */
#include "advice/bleeding/bleed_arrange.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

static const char *const cars[] = {
    "systems/diagonal-hatch.ini",       "systems/family-saloon.ini",
    "systems/hill-coupe.ini",           "systems/little-two-seater.ini",
    "systems/rear-engined-saloon.ini",  "systems/servo-estate.ini",
    "systems/twin-disc-motorcycle.ini", "systems/village-van.ini"};

static bool same_order(const struct order_cost *a, const struct order_cost *b)
{
    bool same = a->count == b->count;
    for (int i = 0; same && i < a->count; i++) {
        same = a->order[i].part == b->order[i].part && a->order[i].index == b->order[i].index;
    }
    return same;
}

/* Customs come out as the trade has them, or the plan says why not, in either practice. */
static void every_ready_car_keeps_the_trades_order_or_says_why_not(void **state)
{
    (void)state;
    for (size_t c = 0; c < sizeof cars / sizeof *cars; c++) {
        struct advice_car car = advice_car_load(cars[c], NULL);
        for (int shut = 0; shut < 2; shut++) {
            struct bleed_wishes wishes = {.shut_under_pressure = shut == 1};
            const struct bleed_plan *plan =
                bleed_plan_of(car.system, car.network, &wishes, car.arena);
            assert_int_equal(same_order(&plan->planned, &plan->trade), plan->departure == NULL);
            assert_true(plan->tried >= 2);
            assert_true(plan->planned.strokes <= plan->worst.strokes);
            assert_true(plan->planned.air_left.m3 <= plan->trade.air_left.m3 + 0.05e-6);
            /* the other practice's figures are those of a plan by it */
            assert_true(plan->planned.other_fluid.m3 > 0);
            assert_int_equal(plan->planned.other_strokes >= plan->planned.strokes,
                             shut == 0 || plan->planned.other_strokes == plan->planned.strokes);
        }
        advice_car_finish(&car);
    }
}

#define SINGLE                                                                                     \
    "[vehicle]\ntitle = Case\ndriver = right\nfront axle = independent\nrear axle = live\n"        \
    "[fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n"                                     \
    "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 150 mm\n"                            \
    "[brake master]\ntype = single\nbore = 3/4 in\nstroke = 30 mm\n"                               \
    "[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\n"                                           \
    "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 3/4 in\n"
#define SINGLE_RUNS                                                                                \
    "[runs]\nfeed = brake master, 0.5 m pipe, front tee\n"                                         \
    "front near = front tee, 0.4 m pipe, 0.36 m hose, front right disc\n"                          \
    "front far = front tee, 1.2 m pipe, 0.36 m hose, front left disc\n"                            \
    "rear feed = front tee, 2.4 m pipe, 0.3 m hose, axle tee\n"                                    \
    "rear near = axle tee, 0.5 m pipe, rear right drum\n"                                          \
    "rear far = axle tee, 0.7 m pipe, rear left drum\n"
#define WORK "[work]\ncar = Case\ndate = 2026-11-20\n"

/* Only what was opened has air: the caliper holds more of it than the wheel cylinder, though its
 * pipe run is shorter. */
static void after_work_here_and_there_the_wheel_with_most_air_comes_first(void **state)
{
    (void)state;
    struct advice_car car =
        advice_car_read(SINGLE SINGLE_RUNS, WORK "renewed = front left disc, rear left drum\n");
    assert_string_equal(advice_order(&car), "front left disc; rear left drum");
    assert_string_equal(advice_reasons(&car), "most-air-first; next-most-air");
    assert_non_null(car.result->bleed->departure);
    const struct bleed_detail *first = car.result->bleed->steps.items[0].bleed;
    const struct bleed_detail *second = car.result->bleed->steps.items[1].bleed;
    /* the air of a cylinder alone, not of the whole way */
    assert_true(car.result->bleed->steps.items[1].volume.m3 < 10e-6);
    assert_true(first->path.m3 > first->branch.m3 - 1e-12);
    assert_true(second->branch.m3 < second->path.m3);
    advice_car_finish(&car);
}

/* Trade article (publisher withheld): after one wheel that wheel alone. Maker's workshop text (make
 * withheld): of a diagonal split that circuit only; after the master or the regulating valve all.
 */
static void only_what_was_opened_is_bled(void **state)
{
    (void)state;
    struct advice_car one = advice_car_read(SINGLE SINGLE_RUNS, WORK "renewed = rear left drum\n");
    assert_string_equal(advice_order(&one), "rear left drum");
    assert_string_equal(advice_reasons(&one), "only-this-wheel");
    assert_int_equal(one.result->bleed->untouched_count, 3);
    advice_car_finish(&one);
    struct advice_car hatch = advice_car_load("systems/diagonal-hatch.ini", NULL);
    assert_int_equal(hatch.result->bleed->untouched_count, 0);
    advice_car_finish(&hatch);
    struct advice_car all = advice_car_read(SINGLE SINGLE_RUNS, WORK "renewed = brake master\n");
    assert_int_equal(all.result->bleed->untouched_count, 0);
    assert_string_equal(all.result->bleed->steps.items[0].row->id, "bleed-master");
    advice_car_finish(&all);
}

/* A three wheeler whose maker goes against longest first: the front, then the left rear (maker's
 * workshop text, make withheld, section L). The maker's order wins, and its price is told. */
static void the_makers_order_wins_and_its_cost_stands_beside_the_trades(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(
        SINGLE "[bleed order]\norder = front left disc, rear left drum, rear right drum, front "
               "right disc\n" SINGLE_RUNS,
        NULL);
    const struct bleed_plan *plan = car.result->bleed;
    assert_string_equal(advice_order(&car),
                        "front left disc; rear left drum; rear right drum; front right disc");
    assert_true(same_order(&plan->planned, &plan->makers));
    assert_false(same_order(&plan->trade, &plan->makers));
    assert_true(plan->trade.fluid.m3 > 0 && plan->makers.fluid.m3 > 0);
    assert_int_equal(plan->trade.count, 4);
    assert_null(plan->departure);
    advice_car_finish(&car);
}

static void an_order_that_is_asked_for_is_tried_and_its_gaps_are_told(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(SINGLE SINGLE_RUNS, NULL);
    struct nipple order[] = {{advice_part(&car, "front right disc"), 0},
                             {advice_part(&car, "front left disc"), 0},
                             {advice_part(&car, "rear right drum"), 0}};
    struct bleed_wishes wishes = {.order = order, .order_count = 3};
    const struct bleed_plan *plan = bleed_plan_of(car.system, car.network, &wishes, car.arena);
    assert_int_equal(plan->asked.count, 3);
    assert_int_equal(plan->asked_left_out_count, 1);
    assert_int_equal(plan->asked_left_out[0].part, advice_part(&car, "rear left drum"));
    /* its 0.7 m of pipe and cylinder keep their air: 8.76 mL a metre and some 2 mL */
    assert_true(plan->asked.air_left.m3 > 6e-6 && plan->asked.air_left.m3 < 10e-6);
    near(plan->planned.air_left.m3, 0, 1e-9);
    /* the plan follows it and takes what it leaves out last; the own order stands beside it */
    assert_int_equal(plan->planned.count, 4);
    for (int i = 0; i < 3; i++)
        assert_int_equal(plan->planned.order[i].part, order[i].part);
    assert_int_equal(plan->planned.order[3].part, advice_part(&car, "rear left drum"));
    assert_true(same_order(&plan->own, &car.result->bleed->planned));
    advice_car_finish(&car);
}

static void both_nipples_of_a_caliper_of_two_circuits_know_each_other(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(
        "[vehicle]\ndriver = right\nfront axle = independent\nrear axle = live\n"
        "[fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n"
        "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 150 mm\n"
        "[brake master]\ntype = tandem\nbore = 3/4 in\nstroke = 30 mm\n"
        "primary outlets = front, rear\nsecondary outlets = second\n"
        "[front disc]\ncaliper = fixed\nbore = 4 of 36 mm\ninlets = 2\nnipples = 2\n"
        "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 3/4 in\n"
        "[runs]\none = brake master.front, 0.4 m pipe, one tee\n"
        "one right = one tee, 0.3 m pipe, 0.36 m hose, front right disc.1\n"
        "one left = one tee, 1.1 m pipe, 0.36 m hose, front left disc.1\n"
        "two = brake master.second, 0.4 m pipe, two tee\n"
        "two right = two tee, 0.3 m pipe, 0.36 m hose, front right disc.2\n"
        "two left = two tee, 1.1 m pipe, 0.36 m hose, front left disc.2\n"
        "rear feed = brake master.rear, 2.4 m pipe, 0.3 m hose, axle tee\n"
        "rear left = axle tee, 0.7 m pipe, rear left drum\n"
        "rear right = axle tee, 0.5 m pipe, rear right drum\n",
        NULL);
    const struct steps *steps = &car.result->bleed->steps;
    int pairs = 0;
    for (size_t i = 0; i < steps->count; i++) {
        int with = steps->items[i].bleed->with;
        bool caliper = car.system->parts[steps->items[i].part].kind == KIND_DISC;
        assert_int_equal(with >= 0, caliper);
        assert_int_equal(caliper ? with + steps->items[i].nipple : 1, 1);
        pairs += caliper;
    }
    assert_int_equal(pairs, 4);
    near(car.result->bleed->planned.air_left.m3, 0, 1e-9);
    advice_car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_ready_car_keeps_the_trades_order_or_says_why_not),
        cmocka_unit_test(after_work_here_and_there_the_wheel_with_most_air_comes_first),
        cmocka_unit_test(only_what_was_opened_is_bled),
        cmocka_unit_test(the_makers_order_wins_and_its_cost_stands_beside_the_trades),
        cmocka_unit_test(an_order_that_is_asked_for_is_tried_and_its_gaps_are_told),
        cmocka_unit_test(both_nipples_of_a_caliper_of_two_circuits_know_each_other),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
