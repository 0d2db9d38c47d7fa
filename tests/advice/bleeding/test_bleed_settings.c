#include "advice/bleeding/bleed_settings.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

#define VAN  "systems/village-van.ini"
#define WORK "[work]\ncar = Village van\ndate = 2026-11-20\n"

static const struct step *setting(const struct advice_car *car, const char *id, const char *part)
{
    return advice_step(car, &car->result->plan->steps, id, part);
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
    struct advice_car car = advice_job_after(VAN, WORK "renewed = clutch slave\n");
    assert_null(setting(&car, "set-shoes-up", NULL));
    assert_null(setting(&car, "set-hand-brake-slack", NULL));
    assert_null(setting(&car, "set-load-valve", NULL));
    assert_null(setting(&car, "set-free-play", "brake pedal"));
    assert_non_null(setting(&car, "set-free-play", "clutch pedal"));
    advice_car_finish(&car);
}

/* Common practice, no source: rod to piston 0.5 to 1.5 mm; free play 3 to 6 mm without and 1 to
 * 3 mm with a servo. A servo's rod is gauged while its master is off. */
static void gaps_and_free_play_come_with_the_figures_wanted(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    near(step_said(setting(&car, "set-rod-gap-clutch", "clutch master"), "least"), 0.5e-3, 1e-12);
    near(step_said(setting(&car, "set-rod-gap-clutch", "clutch master"), "most"), 1.5e-3, 1e-12);
    near(step_said(setting(&car, "set-free-play", "brake pedal"), "least"), 1e-3, 1e-12);
    near(step_said(setting(&car, "set-free-play", "clutch pedal"), "least"), 3e-3, 1e-12);
    assert_null(setting(&car, "set-rod-gap", "brake master"));
    assert_null(setting(&car, "set-servo-rod-gap", NULL));
    advice_car_finish(&car);
}

/* With one circuit open its piston goes alone: of 34 mm each has 17, two thirds 11.33 mm. At a
 * ratio of 290/76 that is 43.2 mm at the pad, and 4 mm free play and the rod's gap before it. */
static void an_old_master_gets_a_block_under_its_pedal_a_new_one_none(void **state)
{
    (void)state;
    struct advice_car old = advice_car_load(VAN, NULL);
    struct advice_car new = advice_job_after(VAN, WORK "renewed = brake master\n");
    double said = old.system->parts[advice_part(&old, "servo")].as.servo.rod_gap.m;
    double gap = isnan(said) ? 0.8e-3 : said;
    double by_hand = 4e-3 + 290.0 / 76 * (gap + 2.0 / 3 * 17e-3);
    near(step_said(setting(&old, "set-pedal-block", "brake pedal"), "most"), by_hand, 0.01e-3);
    assert_in_range((int)(by_hand * 1000), 47, 51);
    assert_null(setting(&new, "set-pedal-block", "brake pedal"));
    /* the stroke counts what comes with that block: area times what the piston goes, less the port
     */
    const struct step *step = advice_step(&old, &old.result->bleed->steps, "bleed-nipple", NULL);
    double area = 3.14159265358979 / 4 * 20.6375e-3 * 20.6375e-3;
    double stroke = area * (2.0 / 3 * 17e-3 - 1.2e-3);
    assert_int_equal((int)step->strokes, (int)ceil(step->volume.m3 / stroke - 1e-6));
    advice_car_finish(&old);
    advice_car_finish(&new);
}

/* The bar tilts about the master that stands: the pad goes half of what the open one's rod goes.
 * 2/3 of 30 mm, ratio 5, arms alike: 3 mm play + 5/2 (0.8 + 20) = 55.0 mm; one block for both. */
static void masters_on_a_balance_bar_share_a_block(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/hill-coupe.ini", NULL);
    const struct step *block = setting(&car, "set-pedal-block", "brake pedal");
    /* One rod at a time, half of it at the bearing: 5 * 0.5 (0.8 mm of gap + 2/3 of 30 mm) = 52 mm;
     * no free play was felt. */
    near(step_said(block, "most"), 52e-3, 0.01e-3);
    assert_string_equal(block->text, "front master and rear master");
    advice_car_finish(&car);
}

static void self_adjusters_are_left_alone(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(
        VAN, WORK "renewed = rear left drum\n[replaced rear right drum]\nadjuster = self\n");
    assert_non_null(strstr(setting(&car, "set-shoes-up", NULL)->text, "rear left drum"));
    assert_null(strstr(setting(&car, "set-shoes-up", NULL)->text, "rear right"));
    assert_non_null(strstr(setting(&car, "set-shoes-self", NULL)->text, "rear right drum"));
    advice_car_finish(&car);
}

static void a_concentric_slave_is_not_unbolted(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(
        VAN, WORK "[replaced clutch slave]\ntype = concentric\ninner bore = 15 mm\n");
    assert_non_null(setting(&car, "set-slave-inside", "clutch slave"));
    assert_null(setting(&car, "set-slave", NULL));
    assert_null(advice_step(&car, &car.result->tests, "undo-slave", NULL));
    assert_null(advice_step(&car, &car.result->tests, "test-clutch", NULL));
    assert_non_null(advice_step(&car, &car.result->opening, "open-bell-housing", NULL));
    assert_null(advice_step(&car, &car.result->opening, "open-strap-slave", NULL));
    advice_car_finish(&car);
}

static void a_caliper_whose_nipple_is_not_at_the_top_is_turned(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("tests/cases/findings/nipple-not-at-top.ini", NULL);
    near(step_said(setting(&car, "set-caliper-up", "front left disc"), "least"), 3e-3, 1e-12);
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
        advice_job_after(VAN, WORK "opened = clutch slave\n[found brake fluid]\nfound = mineral\n");
    struct advice_car grade =
        advice_job_after(VAN, WORK "opened = clutch slave\n[found brake fluid]\nfound = DOT 3\n");
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

/* Nobody says that mineral oil was found: another grade that goes in says it. */
static void another_grade_that_goes_in_is_a_fluid_found(void **state)
{
    (void)state;
    static const char silicone[] =
        WORK "opened = clutch slave\n[replaced brake fluid]\ngrade = DOT 5\n";
    static const char thinner[] =
        WORK "opened = clutch slave\n[replaced brake fluid]\ngrade = DOT 5.1\n";
    struct advice_car other = advice_car_after(VAN, silicone),
                      same = advice_car_after(VAN, thinner);
    const struct step *stop = setting(&other, "set-wrong-fluid", "brake fluid");
    assert_non_null(stop);
    assert_int_equal(stop->number, 1);
    assert_non_null(strstr(stop->text, "DOT 4 was found"));
    assert_true(advice_finds(&other, "fluid-wrong-found", "brake fluid"));
    assert_null(setting(&same, "set-wrong-fluid", NULL));
    assert_null(setting(&same, "set-other-grade", NULL)); /* it is being changed */
    assert_false(advice_finds(&same, "fluid-wrong-found", NULL));
    assert_false(advice_finds(&same, "fluid-other-grade-found", NULL));
    advice_car_finish(&other);
    advice_car_finish(&same);
}

/* Mineral oil does not dissolve in alcohol (Gildemeister and Hoffmann, The Volatile Oils, vol. 1),
 * silicone poorly; glycol does. */
static void what_was_found_says_what_cleans_it_out(void **state)
{
    (void)state;
    struct advice_car oil =
        advice_job_after(VAN, WORK "opened = clutch slave\n[found brake fluid]\nfound = mineral\n");
    struct advice_car castor =
        advice_job_after(VAN, WORK "opened = clutch slave\n[found brake fluid]\nfound = castor\n");
    assert_non_null(strstr(step_said_words(setting(&oil, "set-wrong-fluid", NULL), "of_fluid"),
                           "white spirit"));
    assert_null(strstr(step_said_words(setting(&castor, "set-wrong-fluid", NULL), "of_fluid"),
                       "white spirit"));
    assert_non_null(
        strstr(step_said_words(setting(&castor, "set-wrong-fluid", NULL), "of_fluid"), "alcohol"));
    advice_car_finish(&oil);
    advice_car_finish(&castor);
}

static void a_change_of_fluid_draws_the_old_out_of_its_reservoir_first(void **state)
{
    (void)state;
    struct advice_car changed = advice_job_after(VAN, WORK "fluid renewed = yes\n");
    struct advice_car opened = advice_job_after(VAN, WORK "opened = clutch slave\n");
    const struct step *draw = setting(&changed, "set-draw-old", "brake reservoir");
    assert_non_null(draw);
    assert_true(draw->number < setting(&changed, "set-reservoir", "brake reservoir")->number);
    assert_null(setting(&opened, "set-draw-old", NULL));
    advice_car_finish(&changed);
    advice_car_finish(&opened);
}

static struct steps by_method(const struct advice_car *car, enum bleed_method method)
{
    struct bleed_wishes wishes = {.method = method};
    return result_asked(car->system, car->network, (struct force){NAN}, (struct date){2026, 11, 25},
                        RESULT_PLAN, &wishes, car->arena)
        ->plan->steps;
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
        /* nobody presses a pedal, and what fills from below is not filled first */
        assert_int_equal(advice_step(&car, &settings, "set-servo-empty", NULL) != NULL,
                         m == METHOD_PEDAL);
        assert_int_equal(advice_step(&car, &settings, "set-reservoir", NULL) != NULL,
                         m != METHOD_REVERSE);
    }
    struct steps settings = by_method(&car, METHOD_PRESSURE);
    const struct step *kit = advice_step(&car, &settings, "set-kit-pressure", "brake reservoir");
    assert_true(step_said(kit, "pressure") >= 0.7e5 && step_said(kit, "pressure_most") <= 1.4e5);
    assert_true(kit->number > advice_step(&car, &settings, "set-reservoir", NULL)->number);
    advice_car_finish(&car);
}

/* Backwards the reservoir rises: no level is foretold, nothing is topped up. */
static void backwards_nothing_is_topped_up(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    struct bleed_wishes wishes = {.method = METHOD_REVERSE};
    struct steps steps = bleed_plan_of(car.system, car.network, &wishes, car.arena)->steps;
    for (size_t i = 0; i < steps.count; i++) {
        near_unknown(steps.items[i].bleed->reservoir_after.m3);
        assert_int_equal(steps.items[i].bleed->top_up_every, 0);
    }
    advice_car_finish(&car);
}

/* A master that ran dry is bled by the pedal, or runs by itself; backwards its air goes up alone.
 */
static void outlets_are_cracked_as_the_method_has_it(void **state)
{
    (void)state;
    static const char *const rows[METHOD_COUNT] = {
        "bleed-master", "bleed-master-steady", "bleed-master-steady", "bleed-master-steady", NULL};
    struct advice_car car = advice_job_after(VAN, WORK "ran dry = brake reservoir\n");
    for (int m = 0; m < METHOD_COUNT; m++) {
        struct bleed_wishes wishes = {.method = (enum bleed_method)m};
        struct steps steps = bleed_plan_of(car.system, car.network, &wishes, car.arena)->steps;
        const char *first = steps.items[0].row->id;
        if (rows[m] != NULL) {
            assert_string_equal(first, rows[m]);
        } else {
            assert_null(strstr(first, "bleed-master"));
        }
    }
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

/* Wherever the pedal stands in the file, first or last; and by no other method than the pedal. */
static void an_old_masters_pedal_gets_its_block(void **state)
{
    (void)state;
#define PEDAL "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 150 mm\n"
#define REST                                                                                       \
    "[vehicle]\ntitle = Case\n[fluid]\ngrade = DOT 4\n"                                            \
    "[brake master]\ntype = single\nbore = 20 mm\nstroke = 25 mm\n"                                \
    "[front disc]\ncaliper = sliding\nbore = 48 mm\n"                                              \
    "[runs]\nfeed = brake master, 1.0 m pipe, front tee\n"                                         \
    "right = front tee, 0.5 m pipe, tap union, 0.4 m hose, front right disc\n"                     \
    "left = front tee, 1.5 m pipe, tip union, 0.4 m hose, front left disc\n"
    static const char *const cars[] = {PEDAL REST, REST PEDAL};
    for (size_t i = 0; i < 2; i++) {
        struct advice_car car = advice_car_read(cars[i], NULL);
        const struct step *block = setting(&car, "set-pedal-block", NULL);
        assert_non_null(block);
        assert_int_equal(block->part, advice_part(&car, "brake pedal"));
        advice_car_finish(&car);
    }
#undef PEDAL
#undef REST
}

/* Only by strokes, and only where both sides hold air: new fluid alone lets none in. */
static void two_circuits_on_one_rod_are_filled_together(void **state)
{
    (void)state;
    struct advice_car tandem = advice_job_after(VAN, WORK "renewed = brake master\n");
    const struct step *step = setting(&tandem, "set-tandem-together", "brake master");
    assert_non_null(step);
    assert_true(step->number > setting(&tandem, "set-reservoir", NULL)->number);
    advice_car_finish(&tandem);
    static const char *const without[] = {WORK "renewed = front left hose\n",
                                          WORK "fluid renewed = yes\n",
                                          WORK "renewed = clutch master\n"};
    for (size_t i = 0; i < sizeof without / sizeof *without; i++) {
        struct advice_car car = advice_job_after(VAN, without[i]);
        assert_null(setting(&car, "set-tandem-together", NULL));
        assert_null(setting(&car, "set-bar-together", NULL));
        advice_car_finish(&car);
    }
    struct advice_car bar = advice_car_load("systems/hill-coupe.ini", NULL);
    assert_non_null(setting(&bar, "set-bar-together", NULL));
    assert_null(setting(&bar, "set-tandem-together", NULL));
    advice_car_finish(&bar);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_old_masters_pedal_gets_its_block),
        cmocka_unit_test(only_the_settings_of_this_car_are_asked_for),
        cmocka_unit_test(work_on_the_clutch_alone_asks_for_none_of_the_brakes_settings),
        cmocka_unit_test(gaps_and_free_play_come_with_the_figures_wanted),
        cmocka_unit_test(an_old_master_gets_a_block_under_its_pedal_a_new_one_none),
        cmocka_unit_test(masters_on_a_balance_bar_share_a_block),
        cmocka_unit_test(self_adjusters_are_left_alone),
        cmocka_unit_test(a_concentric_slave_is_not_unbolted),
        cmocka_unit_test(backwards_nothing_is_topped_up),
        cmocka_unit_test(outlets_are_cracked_as_the_method_has_it),
        cmocka_unit_test(a_caliper_whose_nipple_is_not_at_the_top_is_turned),
        cmocka_unit_test(the_reservoir_is_filled_once_with_the_fluid_of_the_car),
        cmocka_unit_test(a_wrong_fluid_that_was_found_stops_the_bleeding_first),
        cmocka_unit_test(another_grade_that_goes_in_is_a_fluid_found),
        cmocka_unit_test(what_was_found_says_what_cleans_it_out),
        cmocka_unit_test(a_change_of_fluid_draws_the_old_out_of_its_reservoir_first),
        cmocka_unit_test(each_method_asks_for_its_kit_and_only_the_pedal_for_a_second_person),
        cmocka_unit_test(two_circuits_on_one_rod_are_filled_together),
        cmocka_unit_test(a_blanked_port_is_filled_or_cracked),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
