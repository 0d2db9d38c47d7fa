/* What is to be bled after which work: one circuit opened, that circuit; master off, the whole
 * system (maker's workshop text, make withheld); one wheel, that wheel; clutch alone; a valve in
 * one pipe, that pipe's circuit (common practice, no source). */
#include "advice/bleeding/bleed_scope.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

#define VAN          "systems/village-van.ini"
#define WORK         "[work]\ncar = Village van\ndate = 2026-11-20\n"
#define BRAKE_WHEELS "rear left drum; rear right drum; front left disc; front right disc"

/* The order after some work on the van, and that every other nipple is named as untouched. */
static void expect(const char *work, const char *order, int untouched)
{
    struct advice_car car = advice_job_after(VAN, work);
    assert_string_equal(advice_order(&car), order);
    assert_int_equal(car.result->bleed->untouched_count, untouched);
    const struct bleed_plan *plan = car.result->bleed;
    for (int i = 0; i < plan->untouched_count; i++) {
        for (size_t s = 0; s < plan->steps.count; s++) {
            assert_false(plan->steps.items[s].part == plan->untouched[i].part);
        }
    }
    advice_car_finish(&car);
}

static void without_work_every_nipple_is_bled(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    assert_int_equal(car.result->bleed->scope, BLEED_ALL);
    assert_string_equal(advice_order(&car), BRAKE_WHEELS "; clutch slave");
    advice_car_finish(&car);
}

static void after_one_wheel_only_that_wheel_is_bled(void **state)
{
    (void)state;
    expect(WORK "opened = front left disc\n", "front left disc", 4);
    expect(WORK "renewed = front left hose\n", "front left disc", 4);
}

static void after_the_axle_hose_both_rear_wheels_are_bled(void **state)
{
    (void)state;
    expect(WORK "renewed = rear feed hose\n", "rear left drum; rear right drum", 3);
    expect(WORK "opened = axle tee\n", "rear left drum; rear right drum", 3);
}

static void a_master_that_was_off_takes_all_that_it_feeds_and_itself_first(void **state)
{
    (void)state;
    expect(WORK "renewed = brake master\n", "brake master; " BRAKE_WHEELS, 1);
}

/* The van's stands in the rear pipe; front pistons and pipes stay as they were. */
static void a_valve_in_one_pipe_takes_its_circuit(void **state)
{
    (void)state;
    expect(WORK "renewed = load valve\n", "rear left drum; rear right drum", 3);
}

static double air_after(const char *work)
{
    struct advice_car car = advice_job_after(VAN, work);
    double air = car.result->bleed->curve[0].air;
    advice_car_finish(&car);
    return air;
}

/* 1.5 mL join the halves of an opposed caliper; from memory. */
static double chamber_of(struct advice_car *car, const char *name)
{
    const struct part *part = &car->system->parts[advice_part(car, name)];
    return part_chamber_volume(part, 0, &(bool){false}).m3 + (part->kind == KIND_DISC ? 1.5e-6 : 0);
}

/* A reservoir that ran dry empties masters and pipes. What stands behind pistons stays: a caliper
 * of two pistons of 48 mm holds tens of mL. */
static void brakes_stay_full_when_the_reservoir_ran_dry(void **state)
{
    (void)state;
    static const char *const brakes[] = {"rear left drum", "rear right drum", "front left disc",
                                         "front right disc", "clutch slave"};
    struct advice_car all = advice_car_load(VAN, NULL);
    double kept = 0;
    for (size_t i = 0; i < sizeof brakes / sizeof *brakes; i++) {
        kept += chamber_of(&all, brakes[i]);
    }
    assert_true(kept > 20e-6);
    near(all.result->bleed->curve[0].air - air_after(WORK "ran dry = brake reservoir\n"), kept,
         1e-12);
    /* one that was off as well is empty */
    near(air_after(WORK "ran dry = brake reservoir\nopened = front left disc\n") -
             air_after(WORK "ran dry = brake reservoir\n"),
         chamber_of(&all, "front left disc"), 1e-12);
    advice_car_finish(&all);
}

/* The front pipes of the van: 0.7, 0.5 and 1.4 m of 3/16 in pipe, inside 3.34 mm, 8.762 mm2, are
 * 22.78 mL; two hoses of 0.36 m and 1/8 in, 7.917 mm2, 5.70 mL. */
static void air_follows_what_was_done_with_open_ends(void **state)
{
    (void)state;
    const char *hose = WORK "renewed = front left hose\n";
    struct advice_car said = advice_job_after(VAN, hose);
    double caliper = chamber_of(&said, "front left disc");
    assert_non_null(strstr(said.result->bleed->scope_reason, "drained (assumed)"));
    near(air_after(WORK "renewed = front left hose\nopen ends = drained\n"), air_after(hose), 0);
    near(air_after(WORK "renewed = front left hose\nopen ends = plugged\n"),
         air_after(hose) - caliper, 1e-12);
    near(air_after(WORK "renewed = front left hose\nopen ends = blown through\n"), 28.48e-6,
         1.5e-6);
    expect(WORK "renewed = front left hose\nopen ends = blown through\n",
           "front left disc; front right disc", 3);
    advice_car_finish(&said);
}

/* No pipe holds both. The van's rear, all off or new: what was full of air takes its volume; a
 * caliper that stayed on takes three volumes for its old fluid, Levenspiel as in docs/bleeding.md.
 * Plugged, only what is new holds air, and the pipes take three volumes. */
static void a_pipe_is_not_full_of_air_and_of_old_fluid(void **state)
{
    (void)state;
    struct advice_car van = advice_car_load(VAN, "demo/village-van-work.ini");
    const struct bleed_plan *plan = van.result->bleed;
    const struct step *rear = advice_step(&van, &plan->steps, "bleed-nipple", "rear left drum");
    const struct step *front = advice_step(&van, &plan->steps, "bleed-nipple", "front left disc");
    double master = rear->bleed->renewal.m3 - rear->bleed->path.m3;
    assert_true(master > 0 && master < 15e-6); /* its own chamber, new */
    near(rear->volume.m3, fmax(rear->bleed->renewal.m3, rear->bleed->purge.m3), 1e-12);
    near(front->bleed->renewal.m3 - front->bleed->path.m3,
         master + 2 * chamber_of(&van, "front left disc"), 1e-9);
    struct advice_car hose =
        advice_job_after(VAN, WORK "renewed = rear left drum\nfluid renewed = yes\n"
                                   "open ends = plugged\n");
    const struct step *step =
        advice_step(&hose, &hose.result->bleed->steps, "bleed-nipple", "rear left drum");
    master *= 13.0 * 13 / (14 * 14); /* the old one: 13/16 in where the new one has 14/16 in */
    near(step->bleed->renewal.m3,
         3 * (step->bleed->path.m3 + master) - 2 * chamber_of(&hose, "rear left drum"), 1e-9);
    advice_car_finish(&van);
    advice_car_finish(&hose);
}

static void a_clutch_that_was_opened_is_bled_alone_though_the_reservoir_is_shared(void **state)
{
    (void)state;
    expect(WORK "renewed = clutch slave\n", "clutch slave", 4);
    struct advice_car car = advice_job_after(VAN, WORK "renewed = clutch slave\n");
    assert_string_equal(advice_reasons(&car), "clutch-only");
    advice_car_finish(&car);
}

static void a_reservoir_that_ran_dry_brings_all_back(void **state)
{
    (void)state;
    expect(WORK "opened = front left disc\nran dry = brake reservoir\n",
           "brake master; " BRAKE_WHEELS "; clutch master; clutch slave", 0);
}

static void new_fluid_takes_every_nipple(void **state)
{
    (void)state;
    expect(WORK "fluid renewed = yes\n", BRAKE_WHEELS "; clutch slave", 0);
}

static void work_on_dry_parts_asks_for_no_bleeding(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "renewed = servo\n");
    assert_int_equal(car.result->bleed->scope, BLEED_NOTHING);
    assert_int_equal(car.result->bleed->steps.count, 0);
    assert_int_equal(car.result->bleed->untouched_count, 5);
    advice_car_finish(&car);
}

static void the_reason_names_what_was_done(void **state)
{
    (void)state;
    struct advice_car car =
        advice_job_after(VAN, WORK "renewed = rear left drum\nopened = axle tee\n");
    const char *reason = car.result->bleed->scope_reason;
    assert_non_null(strstr(reason, "the wheel cylinder of the rear left drum is new"));
    assert_non_null(strstr(reason, "the axle tee was opened"));
    advice_car_finish(&car);
}

static void a_loop_in_the_plumbing_is_refused(void **state)
{
    (void)state;
    struct advice_car car =
        advice_car_read("[vehicle]\ndriver = right\nfront axle = independent\n"
                        "[fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n"
                        "[brake pedal]\nworks = brake master\nratio = 5\n"
                        "[brake master]\ntype = single\nbore = 3/4 in\n"
                        "[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\n"
                        "[runs]\nfeed = brake master, 0.5 m pipe, front tee\n"
                        "right = front tee, 0.4 m pipe, right tee, 0.3 m hose, front right disc\n"
                        "left = front tee, 1.2 m pipe, left tee, 0.3 m hose, front left disc\n"
                        "across = left tee, 1 m pipe, right tee\n",
                        NULL);
    assert_true(car.result->bleed->refused);
    assert_non_null(strstr(car.result->bleed->refusal, "loop"));
    assert_int_equal(car.result->bleed->steps.count, 0);
    advice_car_finish(&car);
}

/* A new hose is empty itself, and so is what lies beyond it; what lies before it stays full. New
 * fluid alone lets no air in. */
static void air_is_only_where_the_work_let_it_in(void **state)
{
    (void)state;
    struct advice_car hose = advice_job_after(VAN, WORK "renewed = front left hose\n");
    const struct bleed_plan *plan = hose.result->bleed;
    /* 0.36 m of 1/8 in hose are 2.85 mL; the caliper holds tens of mL */
    double caliper = chamber_of(&hose, "front left disc");
    near(plan->curve[0].air, 2.85e-6 + caliper, 0.02e-6);
    assert_true(plan->steps.items[0].volume.m3 >= 2.8e-6 + caliper);
    struct advice_car fluid = advice_job_after(VAN, WORK "fluid renewed = yes\n");
    near(fluid.result->bleed->curve[0].air, 0, 1e-15);
    assert_true(fluid.result->bleed->steps.items[0].volume.m3 > 100e-6);
    advice_car_finish(&hose);
    advice_car_finish(&fluid);
}

/* It carries the fluid in: the master that it feeds sucks what came in with it. */
static void a_new_supply_hose_lets_air_into_its_master(void **state)
{
    (void)state;
    struct advice_car supply = advice_job_after(VAN, WORK "renewed = clutch master supply hose\n");
    assert_string_equal(supply.result->bleed->steps.items[0].row->id, "bleed-master");
    assert_int_equal(supply.result->bleed->steps.count, 2);
    struct advice_car vacuum = advice_job_after(VAN, WORK "renewed = servo vacuum hose\n");
    assert_int_equal(vacuum.result->bleed->scope, BLEED_NOTHING);
    assert_non_null(advice_step(&vacuum, &vacuum.result->tests, "test-servo", "servo"));
    assert_null(advice_step(&vacuum, &vacuum.result->tests, "test-hold", NULL));
    assert_non_null(
        advice_step(&vacuum, &vacuum.result->opening, "close-soft-hose", "servo vacuum hose"));
    advice_car_finish(&supply);
    advice_car_finish(&vacuum);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(without_work_every_nipple_is_bled),
        cmocka_unit_test(after_one_wheel_only_that_wheel_is_bled),
        cmocka_unit_test(after_the_axle_hose_both_rear_wheels_are_bled),
        cmocka_unit_test(a_master_that_was_off_takes_all_that_it_feeds_and_itself_first),
        cmocka_unit_test(a_valve_in_one_pipe_takes_its_circuit),
        cmocka_unit_test(brakes_stay_full_when_the_reservoir_ran_dry),
        cmocka_unit_test(air_follows_what_was_done_with_open_ends),
        cmocka_unit_test(a_pipe_is_not_full_of_air_and_of_old_fluid),
        cmocka_unit_test(a_clutch_that_was_opened_is_bled_alone_though_the_reservoir_is_shared),
        cmocka_unit_test(a_reservoir_that_ran_dry_brings_all_back),
        cmocka_unit_test(new_fluid_takes_every_nipple),
        cmocka_unit_test(work_on_dry_parts_asks_for_no_bleeding),
        cmocka_unit_test(the_reason_names_what_was_done),
        cmocka_unit_test(a_loop_in_the_plumbing_is_refused),
        cmocka_unit_test(a_new_supply_hose_lets_air_into_its_master),
        cmocka_unit_test(air_is_only_where_the_work_let_it_in),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
