/* What the road takes of the brakes: figures, conditions and findings on a car whose numbers can be
 * had by hand. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "advice/figures/holds.h"
#include "advice_car.h"
#include "base/text.h"
#include "support/run_cli.h"

/* Discs of one piston a side, no servo, nothing lost: a newton at the pad gives 25/pi * 2000 Pa
 * and, with 40 mm in front and 20 mm behind, friction 0.4 at 0.1 m and tyres of 0.3 m, 16/3 N at a
 * front tyre and 4/3 N at a rear one. */
static const char sizes[] =
    "mass = 1000 kg\nweight on front = 50 %\nwheelbase = 2.5 m\nheight of mass centre = 0.5 m\n"
    "front tyre radius = 0.3 m\nrear tyre radius = 0.3 m\ngrip = 0.8\ngrip wet = 0.4\n"
    "front axle = independent\nrear axle = independent\n";
#define DISC(axle, bore)                                                                           \
    "[" axle " disc]\ncaliper = fixed\nbore = 2 of " bore "\ndisc diameter = 220 mm\n"             \
    "pad height = 20 mm\nfriction = 0.4\nefficiency = 1\nthreshold = 0 bar\n"
#define FRONT                                                                                      \
    "front feed = brake master.front, 0.4 m pipe, front tee\n"                                     \
    "front right = front tee, 0.3 m pipe, 0.3 m hose, front right disc\n"                          \
    "front left = front tee, 1 m pipe, 0.3 m hose, front left disc\n"
#define REAR                                                                                       \
    "rear feed = brake master.rear, 2 m pipe, rear tee\n"                                          \
    "rear right = rear tee, 0.5 m pipe, 0.3 m hose, rear right disc\n"                             \
    "rear left = rear tee, 0.7 m pipe, 0.3 m hose, rear left disc\n"
#define DIAGONAL                                                                                   \
    "front right = brake master.front, 0.3 m pipe, 0.3 m hose, front right disc\n"                 \
    "front left = brake master.rear, 1 m pipe, 0.3 m hose, front left disc\n"                      \
    "rear right = brake master.rear, 2.5 m pipe, 0.3 m hose, rear right disc\n"                    \
    "rear left = brake master.front, 2.7 m pipe, 0.3 m hose, rear left disc\n"

struct told {
    const char *vehicle; /* more keys of it */
    const char *effort, *outlets, *discs, *runs;
};

static struct advice_car car_told(struct told told)
{
    struct arena *arena = arena_create();
    const char *text =
        text_print(arena,
                   "[vehicle]\n%s%s\n[brake fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n"
                   "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 150 mm\neffort = %s\n"
                   "efficiency = 1\n[brake master]\nbore = 20 mm\nstroke = 30 mm\n"
                   "efficiency = 1\nprimary spring = 0 N\n%s%s[runs]\n%s",
                   sizes, told.vehicle, told.effort, told.outlets, told.discs, told.runs);
    struct advice_car car = advice_car_read(text, NULL);
    arena_destroy(arena);
    return car;
}

#define SPLIT                                                                                      \
    "type = tandem\nprimary outlets = front\nsecondary outlets = rear\nsecondary spring = 0 N\n"
#define ALL_FOUR DISC("front", "40 mm") DISC("rear", "20 mm")

static const struct figure *figure_of(const struct advice_car *car, const char *id, const char *of)
{
    return figures_find(&car->result->figures, id, of);
}

static double value_of(const struct advice_car *car, const char *id, const char *of)
{
    const struct figure *figure = figure_of(car, id, of);
    assert_non_null(figure);
    return figure->value;
}

static const struct finding *finding_of(const struct advice_car *car, const char *id)
{
    for (size_t i = 0; i < car->result->findings.count; i++)
        if (strcmp(car->result->findings.items[i].check->id, id) == 0)
            return &car->result->findings.items[i];
    return NULL;
}

/* z = 0.8 * 0.5/(0.8 * 1.05 - 0.025 - 0.8 * 0.2) = 0.610687 in front at 0.8, wet 0.4 * 0.5/(0.815 -
 * 0.08) = 0.272109; 13.3333 N a newton on 1050 kg: 5.98879 m/s2 at 471.617 N. The rear then asks
 * for (0.2 * 1.05 - 0.025) z/(0.5 - 0.2 z) = 0.298990: margin 1 - 0.373737. */
static void the_first_axle_bounds_stop_and_distance(void **state)
{
    (void)state;
    struct advice_car car = car_told((struct told){"", "480 N", SPLIT, ALL_FOUR, FRONT REAR});
    near(value_of(&car, "deceleration", NULL), 480 * 40.0 / 3 / 1050, 1e-9);
    near(value_of(&car, "front-locks-at", NULL), 5.98879, 2e-5);
    near(value_of(&car, "front-locks-effort", NULL), 471.617, 2e-3);
    near(value_of(&car, "front-load-at-lock", NULL), 9806.65 * (0.5 + 0.2 * 0.610687), 0.01);
    near(value_of(&car, "rear-load-at-lock", NULL), 9806.65 * (0.5 - 0.2 * 0.610687), 0.01);
    near(value_of(&car, "rear-lock-margin", NULL), 1 - 0.373737, 5e-6);
    near(value_of(&car, "front-locks-at-wet", NULL), 0.272109 * 9.80665, 1e-5);
    assert_null(figure_of(&car, "rear-locks-at", NULL));
    assert_null(figure_of(&car, "rear-locks-at-wet", NULL));
    double v = 50 / 3.6, dry = 5.98879, wet = 2.66848;
    near(value_of(&car, "stopping-distance", NULL), v * 1.15 + v * v / (2 * dry) - dry * 0.09 / 24,
         1e-4);
    near(value_of(&car, "stopping-distance-wet", NULL),
         v * 1.15 + v * v / (2 * wet) - wet * 0.09 / 24, 5e-4);
    /* the deceleration itself is told of a road with grip enough, and this one is not */
    assert_true(holds_spoiled(figure_of(&car, "deceleration", NULL)));
    advice_car_finish(&car);
    car = car_told((struct told){"", "470 N", SPLIT, ALL_FOUR, FRONT REAR});
    assert_false(holds_spoiled(figure_of(&car, "deceleration", NULL)));
    advice_car_finish(&car);
}

/* With a diagonal lost, at 300 N: 1600 N at one front wheel, 400 N at the other rear one,
 * (2000/1000)/ 1.05 = 1.90476 m/s2; the front wheel then asks for (1600 - 0.0125 * 1904.76)/(0.25 *
 * 9806.65 + 0.1
 * * 1904.76) = 0.597: it rolls on 0.8. At 450 N, 2400 and 600 N, it slides: Octave, halving the sum
 * over the wheels of min(T - k m a/4, mu N). */
static void one_wheel_of_each_axle_has_half_of_the_grip(void **state)
{
    (void)state;
    struct told told = {"", "300 N", SPLIT, ALL_FOUR, DIAGONAL};
    struct advice_car car = car_told(told);
    const char *lost = car.network->circuits[0].name;
    near(value_of(&car, "deceleration-circuit-lost", lost), 2.0 / 1.05, 1e-9);
    assert_false(holds_spoiled(figure_of(&car, "deceleration-circuit-lost", lost)));
    advice_car_finish(&car);
    told.effort = "450 N";
    car = car_told(told);
    near(value_of(&car, "deceleration-circuit-lost", car.network->circuits[0].name), 2.675018,
         1e-6);
    assert_true(
        holds_spoiled(figure_of(&car, "deceleration-circuit-lost", car.network->circuits[0].name)));
    /* nothing is built on it, and the rule's own stop is pressed no harder than the wheel rolls: */
    /* z (16/20 * 1.05 - 0.0125 - 0.8 * 0.1) = 0.8 * 0.25 */
    for (int i = 0; i < car.result->rulings.count; i++)
        if (strcmp(car.result->rulings.items[i].rule->id, "r13-secondary") == 0)
            near(car.result->rulings.items[i].value,
                 0.8 * 0.25 / (0.8 * 1.05 - 0.0125 - 0.08) * 9.80665, 1e-5);
    advice_car_finish(&car);
}

/* Front brakes alone: 0.8 * 0.5/(1.05 - 0.025 - 0.8 * 0.2) in front. */
static void a_car_braked_on_one_axle_has_its_lock(void **state)
{
    (void)state;
    struct advice_car car =
        car_told((struct told){"", "400 N", "type = single\n", DISC("front", "40 mm"),
                               "feed = brake master, 0.4 m pipe, front tee\n"
                               "front right = front tee, 0.3 m pipe, 0.3 m hose, front right disc\n"
                               "front left = front tee, 1 m pipe, 0.3 m hose, front left disc\n"});
    near(value_of(&car, "front-locks-at", NULL), 0.8 * 0.5 / (1.025 - 0.16) * 9.80665, 1e-5);
    assert_null(figure_of(&car, "rear-lock-margin", NULL));
    assert_true(isfinite(value_of(&car, "stopping-distance-wet", NULL)));
    advice_car_finish(&car);
}

/* Bores changed over: the rear has 0.8 of the braking. z = 0.8 * 0.5/(0.8 * 1.05 - 0.025 + 0.16) =
 * 0.410256 and the front asks for (0.21 - 0.025) z/(0.5 + 0.2 z) = 0.130396, so it keeps 0.837004;
 * 4.02324 m/s2 at 1050/13.3333 times that. */
static void rear_wheels_that_lock_first_are_told_with_rate_and_effort(void **state)
{
    (void)state;
    struct advice_car car = car_told((struct told){
        "", "300 N", SPLIT, DISC("front", "20 mm") DISC("rear", "40 mm"), FRONT REAR});
    near(value_of(&car, "rear-locks-at", NULL), 4.02324, 1e-5);
    near(value_of(&car, "rear-lock-margin", NULL), -0.837004, 5e-6);
    assert_null(figure_of(&car, "front-locks-at", NULL));
    double v = 50 / 3.6;
    near(value_of(&car, "stopping-distance", NULL),
         v * 1.15 + v * v / (2 * 300 * 40.0 / 3 / 1050) - 300 * 40.0 / 3 / 1050 * 0.09 / 24, 1e-6);
    const struct finding *found = finding_of(&car, "rear-locks-first");
    assert_non_null(found);
    assert_string_equal(found->quantities[0].text, "dry");
    near(found->quantities[1].value, 4.02324, 1e-5);
    near(found->quantities[2].value, 4.02324 * 1050 * 3 / 40, 1e-2);
    advice_car_finish(&car);
}

/* The motorcycle of systems/ without turning parts, each lever alone, at 0.8 of grip, psi 0.51, chi
 * 0.62/1.48: front 0.8 * 0.49/(1 - 0.8 chi) = 0.58960 g, rear 0.8 * 0.51/(1 + 0.8 chi) = 0.30559 g;
 * the rear wheel leaves the road at psi/chi = 1.21742 g. */
static void hand_and_foot_of_a_motorcycle_are_two_brakes(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/twin-disc-motorcycle.ini", NULL);
    double k = 0.05, chi = 0.62 / 1.48;
    near(value_of(&car, "its-wheels-lock-at", "hand lever"),
         0.8 * 0.49 / (1 + k / 2 - 0.8 * chi) * 9.80665, 1e-5);
    near(value_of(&car, "its-wheels-lock-at", "rear brake pedal"),
         0.8 * 0.51 / (1 + k / 2 + 0.8 * chi) * 9.80665, 1e-5);
    near(value_of(&car, "rear-lifts-at", NULL), 0.51 / chi * 9.80665, 1e-9);
    /* no order of locking, no grip that one shares with the other */
    static const char *const none[] = {"front-locks-at",  "rear-locks-at",   "rear-lock-margin",
                                       "grip-used-front", "grip-efficiency", "rear-load-at-lock"};
    for (size_t i = 0; i < sizeof none / sizeof *none; i++)
        assert_null(figure_of(&car, none[i], NULL));
    assert_null(finding_of(&car, "rear-locks-first"));
    /* half g is the hand's: 2 * 1103.664 N at 130 N without the piston's spring, which takes 0.2
     * MPa of 0.9025 * 5.5 * 130 N/239.498 mm2 less the threshold of 0.05 MPa, in front; behind of
     * 0.9025 * 4 * 200 N/153.938 mm2 */
    double front = 0.9025 * 5.5 * 130 / 239.4979, rear = 0.9025 * 4 * 200 / 153.9380;
    double effort = value_of(&car, "effort-for-half-g", NULL);
    double hand = value_of(&car, "deceleration-by-it", "hand lever");
    near(hand, 2 * 1103.66420304 * (1 - 0.2 / (front - 0.05)) / (300 * 1.05), 1e-5);
    assert_true(effort > 85 && effort < 130);
    near(value_of(&car, "deceleration-by-it", "rear brake pedal"),
         1451.82367065 * (1 - 0.2 / (rear - 0.05)) / 315, 1e-5);
    assert_true(holds_spoiled(figure_of(&car, "deceleration", NULL)));
    advice_car_finish(&car);
}

/* The motorcycle's centre at 0.67 m: the rear wheel leaves the road at 0.51 * 1.48/0.67 g = 11.048
 * m/s2, above the 10.888 that hand and foot make; at 0.69 m at 10.728. */
static void a_rear_wheel_in_the_air_breaks_a_limit(void **state)
{
    (void)state;
    static const char *const heights[] = {"0.67 m", "0.69 m"};
    char *path = source_path("systems/twin-disc-motorcycle.ini");
    char *text = read_whole(path, NULL), *at = strstr(text, "0.62 m");
    assert_non_null(at);
    for (int high = 0; high < 2; high++) {
        memcpy(at, heights[high], strlen(heights[high]));
        struct advice_car car = advice_car_read(text, NULL);
        const struct figure *slowing = figure_of(&car, "deceleration", NULL);
        near(slowing->value, 10.888, 1e-3);
        size_t count;
        const struct hold_row *rows = hold_rows(&count);
        int broken = -1;
        for (size_t i = 0; i < count; i++)
            if (strcmp(rows[i].id, "wheels-on-the-road") == 0)
                broken = (slowing->holds_broken & rows[i].bit) != 0;
        assert_int_equal(broken, high);
        advice_car_finish(&car);
    }
    free(text);
    free(path);
}

static double with_bore(double metres, const char *id)
{
    struct arena *arena = arena_create();
    const char *work = text_print(arena,
                                  "[work]\ncar = Case saloon\ndate = 2026-11-20\n"
                                  "[replaced brake master]\nbore = %.9g mm\n",
                                  metres * 1e3);
    struct advice_car car = advice_car_after("tests/cases/findings/pad-thin.not.ini", work);
    double value = figures_find(&car.result->figures, id, NULL)->value;
    advice_car_finish(&car);
    arena_destroy(arena);
    return value;
}

/* No leg does more than 2000 N (from memory): the larger the master the greater the effort, until
 * none is found any more. */
static void no_effort_is_looked_for_above_2000_n(void **state)
{
    (void)state;
    static const char *const ids[] = {"effort-for-half-g", "front-locks-effort"};
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++) {
        double found = 40e-3, not_found = 60e-3;
        while (not_found - found > 1e-5) {
            double bore = (found + not_found) / 2;
            *(isnan(with_bore(bore, ids[i])) ? &not_found : &found) = bore;
        }
        near(with_bore(found, ids[i]), 2000, 2);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_first_axle_bounds_stop_and_distance),
        cmocka_unit_test(one_wheel_of_each_axle_has_half_of_the_grip),
        cmocka_unit_test(a_car_braked_on_one_axle_has_its_lock),
        cmocka_unit_test(rear_wheels_that_lock_first_are_told_with_rate_and_effort),
        cmocka_unit_test(hand_and_foot_of_a_motorcycle_are_two_brakes),
        cmocka_unit_test(a_rear_wheel_in_the_air_breaks_a_limit),
        cmocka_unit_test(no_effort_is_looked_for_above_2000_n),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
