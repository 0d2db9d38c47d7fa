#include "advice/bleeding/bleed_stroke.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"
#include "support/near.h"

/* A tandem of 20 mm, 314.159 mm2, pistons of 15 mm each, ports of 1 mm, springs of 120 and 70 N.
 * Old: a block stops the rod at two thirds, 10 mm. New: (125 - 5) mm of pedal over 5, 24 mm. */
#define PEDAL   "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 125 mm\nfree play = 5 mm\n"
#define STROKES "stroke = 30 mm\nprimary stroke = 15 mm\nsecondary stroke = 15 mm\n"
#define CAR_OF(pedal, strokes, springs)                                                            \
    "[vehicle]\ntitle = Case\ndriver = right\nfront axle = independent\n"                          \
    "[fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n" pedal                               \
    "[brake master]\ntype = tandem\nbore = 20 mm\n" strokes                                        \
    "cut off = 1 mm\nseal friction = 0 N\n" springs                                                \
    "primary outlets = front\nsecondary outlets = rear\n"                                          \
    "[front disc]\ncaliper = sliding\nbore = 48 mm\nchamber = 20 mL\n"                             \
    "[rear disc]\ncaliper = sliding\nbore = 34 mm\nchamber = 10 mL\n"                              \
    "[runs]\nfront = brake master.front, 1.0 m pipe, front tee\n"                                  \
    "fr = front tee, 0.5 m pipe, fr union, 0.4 m hose, front right disc\n"                         \
    "fl = front tee, 1.5 m pipe, fl union, 0.4 m hose, front left disc\n"                          \
    "rear = brake master.rear, 1.0 m pipe, rear tee\n"                                             \
    "rr = rear tee, 0.5 m pipe, rr union, 0.4 m hose, rear right disc\n"                           \
    "rl = rear tee, 1.5 m pipe, rl union, 0.4 m hose, rear left disc\n"
#define CAR(springs) CAR_OF(PEDAL, STROKES, springs)
#define STRONG       "primary spring = 120 N\nsecondary spring = 70 N\n"
#define WEAK         "primary spring = 70 N\nsecondary spring = 120 N\n"
#define WORK         "[work]\ncar = Case\ndate = 2026-11-20\n"
#define ML           1e-6

static double gives(const struct advice_car *car, int chamber, double air)
{
    const struct network *network = car->network;
    for (int c = 0; c < network->circuit_count; c++) {
        bool assumed = false;
        if (network->circuits[c].chamber == chamber) {
            return bleed_stroke_beside(car->system, &network->circuits[c], (struct volume){air},
                                       &assumed)
                .m3;
        }
    }
    return NAN;
}

/* Past its port each goes 9 mm: 2.8274 mL. With air shut in the second, its spring's spare 50 N
 * make 159155 Pa, by which air has lost 0.61101: of 2 mL 3.8898 mm of way, so the second
 * goes 4.8898 and the first 5.1102 mm; of 30 mL more than the 10 mm there are, and nothing is left.
 */
static void the_second_piston_takes_the_stroke_while_it_stands_against_air(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR(STRONG), NULL);
    near_rel(gives(&car, 0, 0), 2.8274e-6, 1e-4);
    near_rel(gives(&car, 1, 0), 2.8274e-6, 1e-4);
    near_rel(gives(&car, 0, 2 * ML), 1.6054e-6, 1e-4);
    near(gives(&car, 0, 30 * ML), 0, 0);
    near_rel(gives(&car, 1, 30 * ML), 2.8274e-6, 1e-4);
    advice_car_finish(&car);
}

/* The other way round nothing carries the second but the first's fluid or air: 1 mm of the first's
 * port, or 4.8898 mm, go before it moves. The first finds it standing. */
static void a_weak_first_spring_carries_nothing(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR(WEAK), NULL);
    near_rel(gives(&car, 0, 0), 2.8274e-6, 1e-4);
    near_rel(gives(&car, 0, 30 * ML), 2.8274e-6, 1e-4);
    near_rel(gives(&car, 1, 0), 2.5133e-6, 1e-4);
    near_rel(gives(&car, 1, 2 * ML), 1.2913e-6, 1e-4);
    near(gives(&car, 1, 30 * ML), 0, 0);
    advice_car_finish(&car);
}

/* 24 mm of rod: beside a firm circuit the first goes all its 15 mm, 4.7124 mL, since both ports are
 * passed together; beside one full of air the second goes to its end, and 9 mm are left. */
static void a_new_master_goes_to_the_end_of_its_second_piston(void **state)
{
    (void)state;
    struct advice_car car =
        advice_car_read(CAR(STRONG), WORK "renewed = brake master\nopen ends = drained\n");
    near_rel(gives(&car, 0, 0), 4.7124e-6, 1e-4);
    near_rel(gives(&car, 1, 0), 4.3982e-6, 1e-4);
    near_rel(gives(&car, 0, 30 * ML), 2.8274e-6, 1e-4);
    near_rel(gives(&car, 1, 30 * ML), 4.3982e-6, 1e-4);
    advice_car_finish(&car);
}

static const struct step *step_called(const struct advice_car *car, const char *id)
{
    const struct plan *plan = car->result->plan;
    for (size_t i = 0; i < plan->steps.count; i++) {
        if (strcmp(plan->steps.items[i].row->id, id) == 0) {
            return &plan->steps.items[i];
        }
    }
    return NULL;
}

static void strokes_that_are_not_known_are_not_said(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR_OF("", "", STRONG), NULL);
    assert_true(isnan(gives(&car, 0, 0)));
    assert_null(step_called(&car, "set-tandem-together"));
    assert_non_null(step_called(&car, "set-tandem-plain"));
    advice_car_finish(&car);
}

/* Nobody says what pedal: an old master's pistons go two thirds of their own 15 mm, a new one's
 * all.
 */
static void without_a_pedal_the_pistons_own_strokes_count(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR_OF("", STROKES, STRONG), NULL);
    near_rel(gives(&car, 0, 0), 2.8274e-6, 1e-4);
    near_rel(gives(&car, 1, 0), 2.8274e-6, 1e-4);
    advice_car_finish(&car);
    car = advice_car_read(CAR_OF("", STROKES, STRONG), WORK "renewed = brake master\n");
    near_rel(gives(&car, 0, 0), 4.3982e-6, 1e-4);
    advice_car_finish(&car);
}

/* Rear first, the second piston: the front's air takes nothing from it. When the front comes the
 * rear is firm. The other way round nothing comes from the front, and the plan says so. */
static void the_plan_says_what_a_stroke_gives(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(CAR(STRONG), NULL);
    const struct step *both = step_called(&car, "set-tandem-together");
    assert_non_null(both);
    near_rel(step_said(both, "first"), 2.8274e-6, 1e-4);
    near(step_said(both, "first_in_air"), 0, 0);
    near_rel(step_said(both, "second"), 2.8274e-6, 1e-4);
    near_rel(step_said(both, "second_in_air"), 2.8274e-6, 1e-4);
    assert_string_equal(step_said_words(both, "springs"), "by its springs");
    const struct steps *steps = &car.result->bleed->steps;
    for (size_t i = 0; i < steps->count; i++) {
        assert_true(isnan(steps->items[i].bleed->stroke_in_air.m3));
    }
    advice_car_finish(&car);
    car = advice_car_read(CAR(""), NULL);
    assert_string_equal(step_said_words(step_called(&car, "set-tandem-together"), "springs"),
                        "springs assumed");
    advice_car_finish(&car);
    car = advice_car_read(CAR(STRONG) "[bleed order]\norder = front left disc, front right disc, "
                                      "rear left disc, rear "
                                      "right disc\n",
                          NULL);
    near(car.result->bleed->steps.items[0].bleed->stroke_in_air.m3, 0, 0);
    advice_car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_second_piston_takes_the_stroke_while_it_stands_against_air),
        cmocka_unit_test(a_weak_first_spring_carries_nothing),
        cmocka_unit_test(a_new_master_goes_to_the_end_of_its_second_piston),
        cmocka_unit_test(without_a_pedal_the_pistons_own_strokes_count),
        cmocka_unit_test(strokes_that_are_not_known_are_not_said),
        cmocka_unit_test(the_plan_says_what_a_stroke_gives),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
