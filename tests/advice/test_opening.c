#include "advice/opening.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

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
        fail_msg("no step %s about %s", id, part);
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

static void nipples_and_old_pressure_are_tried_before_anything_is_undone(void **state)
{
    (void)state;
    struct advice_car car = advice_car_after(
        VAN, WORK "renewed = rear left drum\n[found rear left drum]\npistons = stuck\n");
    int undone = number(&car, "open-pipe-nut", "rear left drum");
    assert_true(number(&car, "open-try-nipple", "rear left drum") < undone);
    assert_true(number(&car, "open-free-pistons", "rear left drum") < undone);
    advice_car_finish(&car);
}

static void what_is_known_of_a_nipple_is_not_tried_again(void **state)
{
    (void)state;
    struct advice_car car = advice_car_after(
        VAN, WORK "renewed = rear left drum\n[found rear left drum]\nnipple = sheared\n");
    assert_null(advice_step(&car, opening(&car), "open-try-nipple", NULL));
    assert_non_null(advice_step(&car, opening(&car), "open-nipple-known", "rear left drum"));
    advice_car_finish(&car);
}

/* Common practice, no source: hold the hexagon, the pipe's nut first, then the hose's other end. */
static void of_a_hose_the_pipe_nut_is_undone_first_and_done_up_last(void **state)
{
    (void)state;
    struct advice_car car = advice_car_after(VAN, WORK "renewed = front left hose\n");
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
        advice_car_after(VAN, WORK "renewed = clutch slave, clutch line hose\n");
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
        advice_car_after(VAN, WORK "renewed = clutch slave, rear left drum, front left disc\n");
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
    struct advice_car car = advice_car_after(VAN, WORK "renewed = brake master\n");
    assert_true(number(&car, "open-empty-reservoir", "brake reservoir") <
                number(&car, "open-off-servo", "brake master"));
    assert_null(advice_step(&car, opening(&car), "open-pedal-rod", NULL));
    advice_car_finish(&car);
}

/* Maker's workshop text (make withheld): 15 N m for 10 mm nuts, 13 N m at a hydraulic unit. */
static void closing_torques_come_with_their_source(void **state)
{
    (void)state;
    struct advice_car car = advice_car_after(VAN, WORK "renewed = rear left drum\n");
    const struct step *step = advice_step(&car, opening(&car), "close-pipe-nut", "rear left drum");
    assert_non_null(step);
    near(step->torque.nm, 13, 1e-9);
    near(step->torque_most.nm, 15, 1e-9);
    assert_non_null(strstr(step->torque_source, "make withheld"));
    advice_car_finish(&car);
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

static void a_missing_hose_is_to_be_fitted(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("tests/cases/findings/hose-missing.ini", NULL);
    const struct step *step = advice_step(&car, opening(&car), "close-missing-hose", NULL);
    assert_non_null(step);
    assert_non_null(strstr(step->text, "front left"));
    advice_car_finish(&car);
}

static void named_parts_can_be_opened_without_work(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load(VAN, NULL);
    int part = advice_part(&car, "rear left drum");
    struct steps steps = opening_of(car.system, car.network, &part, 1, car.arena);
    assert_non_null(advice_step(&car, &steps, "open-take-off", "rear left drum"));
    assert_null(advice_step(&car, &steps, "open-take-off", "rear right drum"));
    advice_car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(without_work_nothing_is_opened),
        cmocka_unit_test(nipples_and_old_pressure_are_tried_before_anything_is_undone),
        cmocka_unit_test(what_is_known_of_a_nipple_is_not_tried_again),
        cmocka_unit_test(of_a_hose_the_pipe_nut_is_undone_first_and_done_up_last),
        cmocka_unit_test(an_open_end_that_stays_on_the_car_is_plugged),
        cmocka_unit_test(pistons_are_held_before_their_part_is_moved),
        cmocka_unit_test(a_master_empties_its_reservoir_first_and_comes_off_its_servo),
        cmocka_unit_test(closing_torques_come_with_their_source),
        cmocka_unit_test(each_union_is_undone_once_and_closed_once),
        cmocka_unit_test(a_missing_hose_is_to_be_fitted),
        cmocka_unit_test(named_parts_can_be_opened_without_work),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
