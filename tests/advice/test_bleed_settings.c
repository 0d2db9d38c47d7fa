#include "advice/bleed_settings.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

#define VAN  "systems/village-van.ini"
#define WORK "[work]\ncar = Village van\ndate = 2026-11-20\n"

static const struct step *setting(const struct advice_car *car, const char *id, const char *part)
{
    return advice_step(car, &car->result->bleed->settings, id, part);
}

static void only_the_settings_of_this_car_are_asked_for(void **state)
{
    (void)state;
    struct advice_car van = advice_car_load(VAN, NULL);
    struct advice_car coupe = advice_car_load("systems/hill-coupe.ini", NULL);
    assert_non_null(setting(&van, "set-load-valve", "load valve"));
    assert_non_null(setting(&van, "set-servo-empty", "servo"));
    assert_non_null(setting(&van, "set-slave", "clutch slave"));
    assert_null(setting(&coupe, "set-load-valve", NULL));
    assert_null(setting(&coupe, "set-servo-empty", NULL));
    assert_null(setting(&coupe, "set-slave", NULL));
    assert_null(setting(&coupe, "set-shoes-up", NULL));
    advice_car_finish(&van);
    advice_car_finish(&coupe);
}

static void work_on_the_clutch_alone_asks_for_none_of_the_brakes_settings(void **state)
{
    (void)state;
    struct advice_car car = advice_car_after(VAN, WORK "renewed = clutch slave\n");
    assert_null(setting(&car, "set-shoes-up", NULL));
    assert_null(setting(&car, "set-hand-brake-slack", NULL));
    assert_null(setting(&car, "set-load-valve", NULL));
    assert_null(setting(&car, "set-free-play", "brake pedal"));
    assert_non_null(setting(&car, "set-free-play", "clutch pedal"));
    advice_car_finish(&car);
}

/* Common practice, no source: rod to piston 0.5 to 1.5 mm, a servo's output rod 0 to 0.5 mm; free
 * play 3 to 6 mm without and 1 to 3 mm with a servo. */
static void gaps_and_free_play_come_with_the_figures_wanted(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    near(setting(&car, "set-servo-rod-gap", "servo")->most.m, 0.5e-3, 1e-12);
    near(setting(&car, "set-rod-gap", "clutch master")->least.m, 0.5e-3, 1e-12);
    near(setting(&car, "set-rod-gap", "clutch master")->most.m, 1.5e-3, 1e-12);
    near(setting(&car, "set-free-play", "brake pedal")->least.m, 1e-3, 1e-12);
    near(setting(&car, "set-free-play", "clutch pedal")->least.m, 3e-3, 1e-12);
    assert_null(setting(&car, "set-rod-gap", "brake master"));
    advice_car_finish(&car);
}

/* The master's 34 mm at a ratio of 290/76 are 129.7 mm at the pad, two thirds of that 86.5 mm. */
static void an_old_master_gets_a_block_under_its_pedal_a_new_one_none(void **state)
{
    (void)state;
    struct advice_car old = advice_car_load(VAN, NULL);
    struct advice_car new = advice_car_after(VAN, WORK "renewed = brake master\n");
    near(setting(&old, "set-pedal-block", "brake master")->most.m, 86.5e-3, 0.05e-3);
    assert_null(setting(&new, "set-pedal-block", "brake master"));
    advice_car_finish(&old);
    advice_car_finish(&new);
}

static void a_caliper_whose_nipple_is_not_at_the_top_is_turned(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("tests/cases/findings/nipple-not-at-top.ini", NULL);
    near(setting(&car, "set-caliper-up", "front left disc")->least.m, 3e-3, 1e-12);
    advice_car_finish(&car);
}

static void the_reservoir_is_filled_once_with_the_fluid_of_the_car(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    assert_string_equal(setting(&car, "set-reservoir", "brake reservoir")->text, "DOT 4");
    int times = 0;
    for (size_t i = 0; i < car.result->bleed->settings.count; i++) {
        times += strcmp(car.result->bleed->settings.items[i].row->id, "set-reservoir") == 0;
    }
    assert_int_equal(times, 1);
    advice_car_finish(&car);
}

/* Another family of fluid that was found stands before all else; another grade of the same family
 * is only changed. */
static void a_wrong_fluid_that_was_found_stops_the_bleeding_first(void **state)
{
    (void)state;
    struct advice_car wrong =
        advice_car_after(VAN, WORK "opened = clutch slave\n[found brake fluid]\nfound = mineral\n");
    struct advice_car grade =
        advice_car_after(VAN, WORK "opened = clutch slave\n[found brake fluid]\nfound = DOT 3\n");
    struct advice_car fine = advice_car_load(VAN, NULL);
    const struct step *first = setting(&wrong, "set-wrong-fluid", "brake fluid");
    assert_non_null(first);
    assert_int_equal(first->number, 1);
    assert_non_null(strstr(first->text, "mineral"));
    assert_null(setting(&wrong, "set-other-grade", NULL));
    assert_non_null(setting(&grade, "set-other-grade", "brake fluid"));
    assert_null(setting(&grade, "set-wrong-fluid", NULL));
    assert_null(setting(&fine, "set-other-grade", NULL));
    advice_car_finish(&wrong);
    advice_car_finish(&grade);
    advice_car_finish(&fine);
}

static struct steps by_method(const struct advice_car *car, enum bleed_method method)
{
    struct bleed_wishes wishes = {.method = method};
    return bleed_plan_of(car->system, car->network, &wishes, car->arena)->settings;
}

/* Common practice, no source: 0.7 to 1.4 bar (20 psi) on the reservoir. */
static void each_method_asks_for_its_kit_and_only_the_pedal_for_a_second_person(void **state)
{
    (void)state;
    static const char *const kits[METHOD_COUNT] = {"set-second-person", "set-kit-pressure",
                                                   "set-kit-vacuum", "set-kit-gravity",
                                                   "set-kit-reverse"};
    struct advice_car car = advice_car_load(VAN, NULL);
    for (int m = 0; m < METHOD_COUNT; m++) {
        struct steps settings = by_method(&car, (enum bleed_method)m);
        for (int kit = 0; kit < METHOD_COUNT; kit++) {
            assert_int_equal(advice_step(&car, &settings, kits[kit], NULL) != NULL, kit == m);
        }
        assert_int_equal(advice_step(&car, &settings, "set-pedal-block", NULL) != NULL,
                         m == METHOD_PEDAL);
    }
    struct steps settings = by_method(&car, METHOD_PRESSURE);
    const struct step *kit = advice_step(&car, &settings, "set-kit-pressure", "brake reservoir");
    assert_true(kit->pressure.pa >= 0.7e5 && kit->pressure_most.pa <= 1.4e5);
    advice_car_finish(&car);
}

static void a_blanked_port_is_filled_or_cracked(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("tests/cases/findings/dead-leg.ini", NULL);
    struct advice_car none = advice_car_load("tests/cases/findings/dead-leg.not.ini", NULL);
    assert_non_null(setting(&car, "set-dead-leg", NULL));
    assert_null(setting(&none, "set-dead-leg", NULL));
    advice_car_finish(&car);
    advice_car_finish(&none);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(only_the_settings_of_this_car_are_asked_for),
        cmocka_unit_test(work_on_the_clutch_alone_asks_for_none_of_the_brakes_settings),
        cmocka_unit_test(gaps_and_free_play_come_with_the_figures_wanted),
        cmocka_unit_test(an_old_master_gets_a_block_under_its_pedal_a_new_one_none),
        cmocka_unit_test(a_caliper_whose_nipple_is_not_at_the_top_is_turned),
        cmocka_unit_test(the_reservoir_is_filled_once_with_the_fluid_of_the_car),
        cmocka_unit_test(a_wrong_fluid_that_was_found_stops_the_bleeding_first),
        cmocka_unit_test(each_method_asks_for_its_kit_and_only_the_pedal_for_a_second_person),
        cmocka_unit_test(a_blanked_port_is_filled_or_cracked),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
