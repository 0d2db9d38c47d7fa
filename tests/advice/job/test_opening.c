#include "advice/job/opening.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "advice_car.h"
#include "base/text.h"

#define VAN  "systems/village-van.ini"
#define WORK "[work]\ncar = Village van\ndate = 2026-11-20\n"

static const struct steps *opening(const struct advice_car *car)
{
    return &car->result->opening;
}

static int number(const struct advice_car *car, const char *id, const char *part)
{
    const struct step *step = advice_step(car, opening(car), id, part);
    if (step == NULL) {
        fail_msg("no step %s about %s", id, part != NULL ? part : "any part");
    }
    return step->number;
}

static void without_work_nothing_is_opened(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    assert_int_equal(opening(&car)->count, 0);
    advice_car_finish(&car);
}

/* What is renewed takes its nipple and its pistons with it: only what stays is tried. */
static void nipples_and_old_pressure_are_tried_of_what_stays(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(
        VAN, WORK "renewed = front left hose\n[found rear left drum]\npistons = stuck\n");
    int undone = number(&car, "open-hose-nut", "front left hose");
    assert_true(number(&car, "open-try-nipple", NULL) < undone);
    assert_true(number(&car, "open-pistons-early", NULL) < undone);
    assert_true(number(&car, "open-free-pistons", "rear left drum") < undone);
    assert_string_equal(advice_step(&car, opening(&car), "open-try-nipple", NULL)->text,
                        "front left disc");
    struct advice_car new = advice_job_after(
        VAN, WORK "renewed = rear left drum\n[found rear left drum]\npistons = stuck\n"
                  "nipple = sheared\n");
    assert_null(advice_step(&new, opening(&new), "open-try-nipple", NULL));
    assert_null(advice_step(&new, opening(&new), "open-nipple-known", NULL));
    assert_null(advice_step(&new, opening(&new), "open-free-pistons", NULL));
    advice_car_finish(&car);
    advice_car_finish(&new);
}

/* Through their own nipples, so before the first union; what is new, stuck or does not open cannot.
 * Where nothing is undone it stands among the settings. */
static void pistons_that_stay_are_pushed_home_first_and_come_out_again(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "renewed = front left hose\n");
    const struct step *home = advice_step(&car, opening(&car), "open-pistons-home", NULL);
    assert_string_equal(home->text, "front left disc");
    assert_true(home->number < number(&car, "open-hose-nut", "front left hose"));
    assert_non_null(advice_step(&car, &car.result->tests, "undo-pistons-home", NULL));
    advice_car_finish(&car);
    static const char *const without[] = {
        WORK "renewed = front left disc\n",
        WORK "renewed = front left hose\n[found front left disc]\npistons = stuck\n",
        WORK "renewed = front left hose\n[found front left disc]\nnipple = sheared\n",
        WORK "renewed = rear left drum\n"};
    for (size_t i = 0; i < sizeof without / sizeof *without; i++) {
        struct advice_car other = advice_job_after(VAN, without[i]);
        assert_null(advice_step(&other, opening(&other), "open-pistons-home", NULL));
        assert_null(advice_step(&other, &other.result->tests, "undo-pistons-home", NULL));
        advice_car_finish(&other);
    }
    struct advice_car fluid = advice_job_after(VAN, WORK "fluid renewed = yes\n");
    assert_non_null(advice_step(&fluid, &fluid.result->bleed->settings, "open-pistons-home", NULL));
    assert_non_null(advice_step(&fluid, &fluid.result->tests, "undo-pistons-home", NULL));
    advice_car_finish(&fluid);
}

static void what_is_known_of_a_nipple_is_not_tried_again(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(
        VAN, WORK "opened = rear left drum\n[found rear left drum]\nnipple = sheared\n");
    assert_null(advice_step(&car, opening(&car), "open-try-nipple", NULL));
    assert_non_null(advice_step(&car, opening(&car), "open-nipple-known", "rear left drum"));
    advice_car_finish(&car);
}

/* From the first undone union on; the note comes off last. */
static void nobody_touches_a_pedal_once_a_union_is_open(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, "demo/village-van-work.ini");
    const struct step *note = advice_step(&car, opening(&car), "open-no-pedal", NULL);
    assert_non_null(note);
    assert_string_equal(note->text, "brake pedal and clutch pedal");
    assert_string_equal(note->place_words, "steering wheel");
    assert_true(note->number < number(&car, "open-hose-nut", NULL));
    assert_true(number(&car, "open-empty-reservoir", NULL) < note->number);
    assert_true(advice_step(&car, &car.result->bleed->settings, "close-note", NULL)->number >
                advice_step(&car, &car.result->bleed->settings, "set-look", NULL)->number);
    struct advice_car bike = advice_job_after(
        "systems/twin-disc-motorcycle.ini",
        "[work]\ncar = Twin-disc motorcycle\ndate = 2026-11-20\nrenewed = fork tee\n");
    note = advice_step(&bike, opening(&bike), "open-no-pedal", NULL);
    assert_string_equal(note->text, "hand lever");
    assert_string_equal(note->place_words, "handlebar");
    advice_car_finish(&car);
    advice_car_finish(&bike);
}

/* The clutch's port is high up in the reservoir that the brakes share. */
static void for_the_clutch_alone_the_brakes_keep_their_fluid(void **state)
{
    (void)state;
    static const char *const works[] = {"renewed = clutch slave\n", "renewed = clutch master\n"};
    for (int i = 0; i < 2; i++) {
        struct arena *arena = arena_create();
        struct advice_car car = advice_job_after(VAN, text_print(arena, WORK "%s", works[i]));
        const struct step *lower =
            advice_step(&car, opening(&car), "open-lower-reservoir", "brake reservoir");
        assert_non_null(lower);
        assert_string_equal(lower->text, "clutch master");
        assert_null(advice_step(&car, opening(&car), "open-empty-reservoir", NULL));
        advice_car_finish(&car);
        arena_destroy(arena);
    }
}

static void what_was_only_opened_has_its_unions_and_stays_where_it_is(void **state)
{
    (void)state;
    struct advice_car car =
        advice_job_after(VAN, WORK "opened = rear left drum, front left hose\n");
    assert_non_null(advice_step(&car, opening(&car), "open-pipe-nut", "rear left drum"));
    assert_non_null(advice_step(&car, opening(&car), "close-pipe-nut", "rear left drum"));
    assert_non_null(advice_step(&car, opening(&car), "open-hose-nut", "front left hose"));
    assert_null(advice_step(&car, opening(&car), "open-take-off", NULL));
    assert_null(advice_step(&car, opening(&car), "open-measure", NULL));
    advice_car_finish(&car);
}

/* Moved when it is tight: only a steered hose from lock to lock. */
static void a_hose_is_moved_as_its_place_moves_and_after_its_nut_is_tight(void **state)
{
    (void)state;
    static const char *const hoses[][2] = {{"front left hose", "close-hose-steered"},
                                           {"rear feed hose", "close-hose-sprung"},
                                           {"clutch line hose", "close-hose-rocked"}};
    struct advice_car car =
        advice_job_after(VAN, WORK "renewed = front left hose, rear feed hose, clutch line hose\n");
    for (int i = 0; i < 3; i++) {
        int tight = number(&car, "close-pipe-nut", hoses[i][0]);
        int clip = number(&car, "close-hose-clip", hoses[i][0]);
        int moved = number(&car, hoses[i][1], hoses[i][0]);
        assert_true(number(&car, "close-hose", hoses[i][0]) < clip && clip < tight &&
                    tight < moved);
        for (int k = 0; k < 3; k++) {
            assert_true(k == i ||
                        advice_step(&car, opening(&car), hoses[k][1], hoses[i][0]) == NULL);
        }
    }
    advice_car_finish(&car);
}

static void a_servos_rod_is_gauged_while_its_master_is_off(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "renewed = brake master\n");
    const struct step *gap = advice_step(&car, opening(&car), "set-servo-rod-gap", "servo");
    assert_non_null(gap);
    assert_true(gap->number < number(&car, "close-master", "brake master"));
    assert_true(number(&car, "bench-master", "brake master") <
                number(&car, "close-master", "brake master"));
    near(step_said(gap, "least"), 0.1e-3, 1e-12);
    near(step_said(gap, "most"), 0.5e-3, 1e-12);
    advice_car_finish(&car);
}

/* A joint and a direct servo have no seals that fluid wets. */
static void only_what_has_seals_is_wetted(void **state)
{
    (void)state;
    struct advice_car car =
        advice_job_after(VAN, WORK "renewed = axle tee, servo, load valve, clutch slave\n");
    static const char *const dry[] = {"axle tee", "servo"};
    static const char *const wet[] = {"load valve", "clutch slave"};
    for (int i = 0; i < 2; i++) {
        assert_null(advice_step(&car, opening(&car), "close-part", dry[i]));
        assert_non_null(advice_step(&car, opening(&car), "close-plain", dry[i]));
        assert_non_null(advice_step(&car, opening(&car), "close-part", wet[i]));
    }
    assert_string_equal(advice_step(&car, opening(&car), "open-pedal-rod", "servo")->text,
                        "brake pedal");
    assert_true(number(&car, "close-plain", "servo") <
                number(&car, "close-master-back", "brake master"));
    advice_car_finish(&car);
}

static void a_cylinder_that_slides_is_tried_for_it(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(
        VAN, WORK "renewed = rear right drum\n[replaced rear left drum]\ncylinder = sliding\n");
    assert_non_null(advice_step(&car, opening(&car), "close-slides", "rear left drum"));
    assert_null(advice_step(&car, opening(&car), "close-slides", "rear right drum"));
    assert_true(number(&car, "close-drum", "rear left drum") >
                number(&car, "close-pipe-nut", "rear left drum"));
    advice_car_finish(&car);
}

/* Common practice, no source: hold the hexagon, the pipe's nut first, then the hose's other end. */
static void of_a_hose_the_pipe_nut_is_undone_first_and_done_up_last(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "renewed = front left hose\n");
    int nut = number(&car, "open-hose-nut", "front left hose");
    int end = number(&car, "open-hose-end", "front left hose");
    int in = number(&car, "close-hose-in-caliper", "front left hose");
    int last = number(&car, "close-pipe-nut", "front left hose");
    assert_true(nut < end && end < in && in < last);
    assert_string_equal(advice_step(&car, opening(&car), "open-hose-nut", NULL)->text,
                        "front left pipe");
    advice_car_finish(&car);
}

static void an_open_end_that_stays_on_the_car_is_plugged(void **state)
{
    (void)state;
    struct advice_car car =
        advice_job_after(VAN, WORK "renewed = clutch slave, clutch line hose\n");
    int plugs = 0;
    for (size_t i = 0; i < opening(&car)->count; i++) {
        const struct step *step = &opening(&car)->items[i];
        const char *boxes[STEP_MOST_BOXES];
        if (step->plug != NULL) {
            assert_string_equal(step->plug, "clutch line pipe");
            assert_int_equal(step_boxes(step, boxes), 3);
            assert_string_equal(boxes[2], "plugged");
            plugs++;
        }
    }
    assert_int_equal(plugs, 1);
    advice_car_finish(&car);
}

static void pistons_are_held_before_their_part_is_moved(void **state)
{
    (void)state;
    struct advice_car car =
        advice_job_after(VAN, WORK "renewed = clutch slave, rear left drum, front left disc\n");
    assert_true(number(&car, "open-strap-slave", "clutch slave") <
                number(&car, "open-take-off", "clutch slave"));
    assert_true(number(&car, "open-band-shoes", "rear left drum") <
                number(&car, "open-take-off", "rear left drum"));
    assert_true(number(&car, "open-block-pads", "front left disc") <
                number(&car, "open-take-off", "front left disc"));
    advice_car_finish(&car);
}

static void a_master_empties_its_reservoir_first_and_comes_off_its_servo(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "renewed = brake master\n");
    assert_true(number(&car, "open-empty-reservoir", "brake reservoir") <
                number(&car, "open-off-servo", "brake master"));
    assert_null(advice_step(&car, opening(&car), "open-pedal-rod", NULL));
    advice_car_finish(&car);
}

/* Makers' workshop texts: 15 N m for M10 x 1 nuts; 12 to 18 is common practice, no source. */
static void closing_torques_come_with_their_source(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "renewed = rear left drum\n");
    const struct step *step = advice_step(&car, opening(&car), "close-pipe-nut", "rear left drum");
    assert_non_null(step);
    near(step->torque.nm, 12, 1e-9);
    near(step->torque_most.nm, 18, 1e-9);
    assert_non_null(strstr(step->torque_for, "steel"));
    advice_car_finish(&car);
}

/* A copper flare splits at what steel asks; of a size or thread that no source has, no figure. */
static void a_torque_is_told_for_its_material_and_thread_alone(void **state)
{
    (void)state;
    static const struct {
        const char *change;
        double least;
    } pipes[] = {{"material = copper\n", 6},
                 {"material = copper-nickel\nthread = 3/8-24 UNF\n", 12},
                 {"thread = M12 x 1\n", NAN},
                 {"size = 1/4 in\n", NAN}};
    for (int i = 0; i < 4; i++) {
        char work[400];
        snprintf(work, sizeof work, "%srenewed = rear left drum\n[replaced rear left pipe]\n%s",
                 WORK, pipes[i].change);
        struct advice_car car = advice_job_after(VAN, work);
        const struct step *told =
            advice_step(&car, opening(&car), "close-pipe-nut", "rear left drum");
        const struct step *plain =
            advice_step(&car, opening(&car), "close-pipe-nut-plain", "rear left drum");
        assert_true(isnan(pipes[i].least) ? told == NULL && plain != NULL
                                          : told != NULL && told->torque.nm == pipes[i].least);
        advice_car_finish(&car);
    }
}

/* Every union that is undone is closed again, and none twice. */
static void each_union_is_undone_once_and_closed_once(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, "demo/village-van-work.ini");
    int undone = 0, closed = 0;
    for (size_t i = 0; i < opening(&car)->count; i++) {
        const char *id = opening(&car)->items[i].row->id;
        undone += strcmp(id, "open-pipe-nut") == 0 || strcmp(id, "open-hose-nut") == 0 ||
                  strcmp(id, "open-hose-end") == 0;
        closed += strcmp(id, "close-pipe-nut") == 0 || strcmp(id, "close-hose-end") == 0 ||
                  strcmp(id, "close-hose-in-caliper") == 0;
        assert_int_equal(opening(&car)->items[i].number, (int)i + 1);
    }
    /* two drums 2, three hoses 6, master 2; the slave meets the clutch hose */
    assert_int_equal(undone, 10);
    assert_int_equal(closed, 10);
    advice_car_finish(&car);
}

/* A vacuum hose that is renewed with its servo comes off once, before the servo. */
static void a_soft_hose_that_is_renewed_is_not_pulled_off_twice(void **state)
{
    (void)state;
    struct advice_car car = advice_car_after(VAN, WORK "renewed = servo, servo vacuum hose\n");
    assert_null(advice_step(&car, opening(&car), "open-vacuum-hose", NULL));
    assert_null(advice_step(&car, opening(&car), "close-vacuum-hose", NULL));
    assert_true(number(&car, "open-soft-hose", "servo vacuum hose") <
                number(&car, "open-take-off-plain", "servo"));
    assert_true(number(&car, "close-soft-hose", "servo vacuum hose") >
                number(&car, "close-plain", "servo"));
    advice_car_finish(&car);
}

static void a_missing_hose_is_to_be_fitted(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("tests/cases/findings/hose-missing.ini", NULL);
    const struct step *step = advice_step(&car, opening(&car), "close-missing-hose", NULL);
    assert_non_null(step);
    assert_non_null(strstr(step->text, "front left"));
    advice_car_finish(&car);
}

static bool warned(const struct advice_car *car, const char *id)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    for (size_t i = 0; i < count; i++)
        if (strcmp(rows[i].id, id) == 0)
            return caution_applies(&rows[i], car->system, &car->result->touched);
    fail_msg("no caution %s", id);
    return false;
}

static void cautions_go_by_the_job_and_not_by_the_car(void **state)
{
    (void)state;
    static const struct {
        const char *car, *work;
        bool dust, springs, slave;
    } jobs[] = {
        {VAN, NULL, true, true, true},
        {VAN, WORK "renewed = clutch slave\n", false, false, true},
        {VAN, WORK "renewed = rear left drum\n", true, true, false},
        {VAN, WORK "renewed = front left hose\n", true, false, false}, /* pads are linings too */
        /* the slave is inside the bell housing, with the clutch plate's dust */
        {"systems/diagonal-hatch.ini",
         "[work]\ncar = Diagonal hatch\ndate = 2026-11-20\nrenewed = clutch slave\n", true, false,
         true},
    };
    for (size_t i = 0; i < sizeof jobs / sizeof *jobs; i++) {
        struct advice_car car = jobs[i].work == NULL ? advice_car_load(jobs[i].car, NULL)
                                                     : advice_job_after(jobs[i].car, jobs[i].work);
        assert_int_equal(warned(&car, "dust"), jobs[i].dust);
        assert_int_equal(warned(&car, "springs"), jobs[i].springs);
        assert_int_equal(warned(&car, "slave-out"), jobs[i].slave);
        advice_car_finish(&car);
    }
}

static void a_pitted_caliper_that_stays_is_said_before_the_plan(void **state)
{
    (void)state;
    struct advice_car car =
        advice_job_after(VAN, WORK "[found front left disc]\nbore surface = pitted\n");
    assert_int_equal(car.result->unsettled.count, 1);
    assert_string_equal(car.result->unsettled.items[0].check->id, "caliper-pitted");
    advice_car_finish(&car);
}

/* Another family in the car stops the work even where nothing was opened yet. */
static void a_wrong_fluid_is_said_before_the_plan(void **state)
{
    (void)state;
    struct advice_car car = advice_job_after(VAN, WORK "[found brake fluid]\nfound = DOT 5\n");
    assert_int_equal(car.result->unsettled.count, 1);
    assert_string_equal(car.result->unsettled.items[0].check->id, "fluid-wrong-found");
    advice_car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(without_work_nothing_is_opened),
        cmocka_unit_test(nipples_and_old_pressure_are_tried_of_what_stays),
        cmocka_unit_test(nobody_touches_a_pedal_once_a_union_is_open),
        cmocka_unit_test(for_the_clutch_alone_the_brakes_keep_their_fluid),
        cmocka_unit_test(what_was_only_opened_has_its_unions_and_stays_where_it_is),
        cmocka_unit_test(a_hose_is_moved_as_its_place_moves_and_after_its_nut_is_tight),
        cmocka_unit_test(a_servos_rod_is_gauged_while_its_master_is_off),
        cmocka_unit_test(only_what_has_seals_is_wetted),
        cmocka_unit_test(a_cylinder_that_slides_is_tried_for_it),
        cmocka_unit_test(pistons_that_stay_are_pushed_home_first_and_come_out_again),
        cmocka_unit_test(what_is_known_of_a_nipple_is_not_tried_again),
        cmocka_unit_test(of_a_hose_the_pipe_nut_is_undone_first_and_done_up_last),
        cmocka_unit_test(an_open_end_that_stays_on_the_car_is_plugged),
        cmocka_unit_test(pistons_are_held_before_their_part_is_moved),
        cmocka_unit_test(a_master_empties_its_reservoir_first_and_comes_off_its_servo),
        cmocka_unit_test(closing_torques_come_with_their_source),
        cmocka_unit_test(a_torque_is_told_for_its_material_and_thread_alone),
        cmocka_unit_test(each_union_is_undone_once_and_closed_once),
        cmocka_unit_test(a_soft_hose_that_is_renewed_is_not_pulled_off_twice),
        cmocka_unit_test(a_missing_hose_is_to_be_fitted),
        cmocka_unit_test(cautions_go_by_the_job_and_not_by_the_car),
        cmocka_unit_test(a_pitted_caliper_that_stays_is_said_before_the_plan),
        cmocka_unit_test(a_wrong_fluid_is_said_before_the_plan),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
