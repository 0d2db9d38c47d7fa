/* Published rules: whom they concern, and the car's number beside the rule's. */
#include "advice/rules/rules.h"

#include <math.h>
#include <string.h>

#include "advice/figures/grip_rates.h"
#include "advice_car.h"
#include "base/text.h"

/* A car whose numbers can be had by hand: all brakes are discs of one piston each side, there is no
 * servo, nothing is lost to friction. */
static const char *car_of(struct arena *arena, const char *vehicle, const char *circuits)
{
    return text_print(
        arena,
        "[vehicle]\n"
        "%s\n"
        "front axle = independent\n"
        "rear axle = live\n"
        "mass = 1000 kg\n"
        "weight on front = 50 %%\n"
        "wheelbase = 2.5 m\n"
        "height of mass centre = 0.5 m\n"
        "front tyre radius = 0.3 m\n"
        "rear tyre radius = 0.3 m\n"
        "grip = 0.8\n"
        "[brake fluid]\ngrade = DOT 4\n"
        "[reservoir]\ncapacity = 200 mL\n"
        "[brake pedal]\n"
        "works = brake master\nratio = 5\ntravel = 150 mm\neffort = 300 N\n"
        "efficiency = 1\n"
        "[brake master]\n"
        "type = %s\nbore = 20 mm\nstroke = 40 mm\nefficiency = 1\n"
        "primary spring = 0 N\n"
        "%s"
        "[front disc]\n"
        "caliper = fixed\nbore = 2 of 40 mm\ndisc diameter = 220 mm\n"
        "pad height = 20 mm\nfriction = 0.4\nefficiency = 1\nthreshold = 0 bar\n"
        "pad left = 8 mm\n"
        "[rear disc]\n"
        "caliper = fixed\nbore = 2 of 20 mm\ndisc diameter = 220 mm\n"
        "pad height = 20 mm\nfriction = 0.4\nefficiency = 1\nthreshold = 0 bar\n"
        "pad left = 8 mm\n"
        "[axle tee]\non = rear axle\n"
        "[runs]\n"
        "front feed = brake master%s, 0.4 m pipe, front tee\n"
        "front right = front tee, 0.3 m pipe, 0.3 m hose, front right disc\n"
        "front left = front tee, 1 m pipe, 0.3 m hose, front left disc\n"
        "rear feed = brake master%s, 2 m pipe, 0.3 m hose, axle tee\n"
        "rear right = axle tee, 0.5 m pipe, rear right disc\n"
        "rear left = axle tee, 0.7 m pipe, rear left disc\n",
        vehicle, strcmp(circuits, "two") == 0 ? "tandem" : "single",
        strcmp(circuits, "two") == 0 ? "primary outlets = front\nsecondary outlets = rear\n"
                                       "secondary spring = 0 N\n"
                                     : "",
        strcmp(circuits, "two") == 0 ? ".front" : "", strcmp(circuits, "two") == 0 ? ".rear" : "");
}

static struct advice_car car_weighing(const char *vehicle, const char *mass)
{
    struct arena *arena = arena_create();
    const char *text = car_of(arena, vehicle, "two");
    const char *said = strstr(text, "mass = 1000 kg");
    assert_non_null(said);
    text = text_print(arena, "%.*smass = %s%s", (int)(said - text), text, mass,
                      said + strlen("mass = 1000 kg"));
    struct advice_car car = advice_car_read(text, NULL);
    arena_destroy(arena);
    return car;
}

static struct advice_car car_used(const char *vehicle)
{
    return car_weighing(vehicle, "1000 kg");
}

static const struct ruling *ruling_of(const struct advice_car *car, const char *id)
{
    for (int i = 0; i < car->result->rulings.count; i++)
        if (strcmp(car->result->rulings.items[i].rule->id, id) == 0)
            return &car->result->rulings.items[i];
    fail_msg("no rule %s", id);
    return NULL;
}

static void every_rule_says_where_for_whom_and_by_whom(void **state)
{
    (void)state;
    size_t count;
    const struct rule_row *rows = rule_rows(&count);
    assert_true(count >= 30);
    for (size_t i = 0; i < count; i++) {
        assert_ptr_equal(rule_row(rows[i].id), &rows[i]);
        assert_non_null(rows[i].title);
        assert_true(isfinite(rows[i].value) && rows[i].dimension != DIMENSION_NUMBER);
        assert_true(strlen(rows[i].where) > 3 && strlen(rows[i].scope) > 5);
        assert_true(strlen(rows[i].source) > 5 && strlen(rows[i].clause) > 2);
        assert_non_null(rows[i].measure);
        assert_true(rows[i].figure == NULL || figure_row(rows[i].figure) != NULL);
        assert_true(!date_known(rows[i].from) || !date_known(rows[i].until) ||
                    date_compare(rows[i].from, rows[i].until) < 0);
        /* what an inspection says is not ours to say */
        static const char *const never[] = {"legal", "passes", "approved", "roadworthy"};
        for (size_t w = 0; w < sizeof never / sizeof *never; w++) {
            assert_null(strstr(rows[i].title, never[w]));
            assert_null(strstr(rows[i].scope, never[w]));
        }
    }
    assert_null(rule_row("no such rule"));
}

/* UK MOT inspection manual: cars and passenger vehicles, section 1 Brakes, 1.2.2, 1.4.2 and 1.2.1
 * (read); StVZO 41(4), (4a), (5) (read); UN Regulation No. 13, Rev.4, Annex 4, 2.2.1 (read);
 * Quebec, Regulation respecting safety standards for road vehicles, 135(9)(a) (read); UN Regulation
 * No. 13-H, Annex 3 (from memory); Ohio Administrative Code 4501:2-1-08 (read). */
static void numbers_are_those_of_their_sources(void **state)
{
    (void)state;
    near(rule_row("mot-service-2010")->value, 0.58, 1e-12);
    near(rule_row("mot-service")->value, 0.50, 1e-12);
    near(rule_row("mot-first-means")->value, 0.30, 1e-12);
    near(rule_row("mot-second-means")->value, 0.25, 1e-12);
    near(rule_row("mot-secondary")->value, 0.25, 1e-12);
    near(rule_row("mot-parking")->value, 0.16, 1e-12);
    near(rule_row("mot-imbalance")->value, 0.30, 1e-12);
    near(rule_row("stvzo-service")->value, 5.0, 1e-12);
    near(rule_row("stvzo-residual")->value, 0.44, 1e-12);
    near(rule_row("stvzo-parking")->value, 1.5, 1e-12);
    near(rule_row("r13-secondary")->value, 2.9, 1e-12);
    near(rule_row("r13h-service")->value, 6.43, 1e-12);
    near(rule_row("r13h-secondary")->value, 2.44, 1e-12);
    near(rule_row("fmvss135-cold")->value, 70, 1e-12);
    near(rule_row("quebec-lining")->value, 1.6e-3, 1e-12);
    near(rule_row("fmvss105-1968")->value, 6.096, 1e-9);
    near(rule_row("fmvss105-60mph")->value, 62.18, 0.005);
    near(rule_row("fmvss122-lever")->value, 244.7, 0.05);
    near(rule_row("fmvss122-lever-least")->value, 10.2, 0.05);
    assert_false(rule_row("fmvss122-lever-least")->at_most);
    near(rule_row("ohio-reserve")->value, 1 / 3.0, 1e-12);
    near(rule_row("gb7258-front")->value, 0.60, 1e-12);
}

/* By hand, at 500 N: rod 5 * 500 = 2500 N, pressure 2500/(pi 0.01^2) = 7.9577 MPa. Front: piston
 * pi 0.02^2 = 1.25664e-3 m2, clamp 10 000 N, radius 0.22/2 - 0.02/2 = 0.1 m, torque 2 * 0.4 * 10
 * 000
 * * 0.1 = 800 N m, at the tyre 2666.67 N, both 5333.3 N. Rear: a quarter of it, 1333.3 N. Sum
 * 6666.7 N over 1000 kg. On rollers a front wheel gives no more than 0.8 of what stands on it,
 * 0.8 * 4903.325 = 3922.66 N for the axle: (3922.66 + 1333.33)/9806.65 = 0.53596 of the weight. On
 * the road 5 % of turning parts are slowed too: (6666.7/1000)/1.05 = 6.3492 m/s2, but the front
 * wheels lock at z = 0.8 * 0.5/(0.8 * 1.05 - 0.025 - 0.8 * 0.2) = 0.610687, 5.98879 m/s2. With the
 * front lost 1333.3/1050 = 1.26984 m/s2. */
static void the_cars_numbers_are_those_of_a_sum_by_hand(void **state)
{
    (void)state;
    struct advice_car car = car_used("first used = 1990-05-01");
    near(ruling_of(&car, "mot-service")->value, 0.53596, 1e-5);
    assert_int_equal(ruling_of(&car, "mot-service")->outcome, RULE_MEETS);
    near(ruling_of(&car, "stvzo-service")->value, 5.98879, 1e-4);
    /* both sides are described alike, and that is no measurement */
    assert_int_equal(ruling_of(&car, "mot-imbalance")->outcome, RULE_NOT_COMPUTED);
    near(ruling_of(&car, "r13-secondary")->value, 1.26984, 1e-4);
    assert_int_equal(ruling_of(&car, "r13-secondary")->outcome, RULE_FALLS_SHORT);
    near(ruling_of(&car, "stvzo-residual")->value, 1.26984 / 5.98879, 1e-4);
    /* front over its standing load of 4903.3 N: 1.088, but the tyre grips 0.8 only */
    near(ruling_of(&car, "gb7258-front")->value, 0.8, 1e-9);
    near(ruling_of(&car, "gb7258-rear")->value, 1333.33 / 4903.325, 1e-4);
    /* from 27.778 m/s: 27.778 * 0.15 + 27.778^2/(2 * 5.98879) - 5.98879 * 0.09/24 = 68.56 m */
    near(ruling_of(&car, "fmvss135-cold")->value, 68.56, 0.01);
    /* pads of 8 mm: 2 * (2 pistons of 12.566 cm2 + 2 of 3.1416 cm2) * 8 mm = 50.27 mL of 200 mL */
    near(ruling_of(&car, "fmvss105-reservoir")->value, 200 / 50.265, 1e-3);
    advice_car_finish(&car);
}

static enum rule_concern concern_at(const char *vehicle, const char *mass, const char *id)
{
    struct advice_car car = car_weighing(vehicle, mass);
    enum rule_concern found = ruling_of(&car, id)->concern;
    advice_car_finish(&car);
    return found;
}

static enum rule_concern concern(const char *vehicle, const char *id)
{
    return concern_at(vehicle, "1000 kg", id);
}

/* UK MOT inspection manual, 1.2.2: 58 % from 1 September 2010, 50 % before. */
static void the_date_of_first_use_decides_which_number_is_asked(void **state)
{
    (void)state;
    assert_int_equal(concern("first used = 2010-08-31", "mot-service"), RULE_CONCERNS);
    assert_int_equal(concern("first used = 2010-08-31", "mot-service-2010"), RULE_OTHER_DATE);
    assert_int_equal(concern("first used = 2010-09-01", "mot-service"), RULE_OTHER_DATE);
    assert_int_equal(concern("first used = 2010-09-01", "mot-service-2010"), RULE_CONCERNS);
    /* a year or a month that holds the day is not enough */
    assert_int_equal(concern("first used = 2010", "mot-service"), RULE_NEEDS_DATE);
    assert_int_equal(concern("first used = 2010-08", "mot-service"), RULE_CONCERNS);
    assert_int_equal(concern("first used = 2010-09", "mot-service-2010"), RULE_CONCERNS);
    assert_int_equal(concern("title = Undated", "mot-service"), RULE_NEEDS_DATE);
    assert_int_equal(concern("title = Undated", "mot-imbalance"), RULE_CONCERNS);
    /* of new types, so only beside an old car */
    assert_int_equal(concern("first used = 1999-01", "r13h-service"), RULE_FOR_COMPARISON);
    assert_int_equal(concern("first used = 1978-05", "r13h-service"), RULE_OTHER_DATE);
    /* StVZO 72(1) (read): a vehicle of before 2021-07-03 keeps the rules of its registration. */
    assert_int_equal(concern("first used = 2021-07-02", "stvzo-service"), RULE_OTHER_DATE);
    assert_int_equal(concern("first used = 2021-07-03", "stvzo-service"), RULE_FOR_COMPARISON);
    /* Directive 71/320/EEC until UN Regulation No. 13-H. */
    assert_int_equal(concern("first used = 1998-05-10", "eec71-lock-order"), RULE_FOR_COMPARISON);
    assert_int_equal(concern("first used = 1998-05-10", "r13h-lock-order"), RULE_OTHER_DATE);
    assert_int_equal(concern("first used = 1998-05-11", "eec71-lock-order"), RULE_OTHER_DATE);
    assert_int_equal(concern("first used = 1998-05-11", "r13h-lock-order"), RULE_FOR_COMPARISON);
}

static void class_and_layout_decide_too(void **state)
{
    (void)state;
    assert_int_equal(concern("first used = 1981\ntype = motorcycle", "mot-service"),
                     RULE_OTHER_CLASS);
    assert_int_equal(concern("first used = 1981", "fmvss122-lever"), RULE_OTHER_CLASS);
    assert_int_equal(concern("first used = 1981", "mot-secondary"), RULE_SPARES);
    assert_int_equal(concern("first used = 1960", "mot-first-means"), RULE_SPARES);
    assert_int_equal(concern("first used = 1981", "us570-reserve"), RULE_SPARES);
    assert_int_equal(concern("first used = 1981", "us570-reserve-light"), RULE_CONCERNS);
    /* a lorry of 3.9 t is no car of class M1 */
    assert_int_equal(concern_at("first used = 1999-01", "3501 kg", "r13h-service"), RULE_SPARES);
    assert_int_equal(concern_at("first used = 1999-01", "3500 kg", "r13h-service"),
                     RULE_FOR_COMPARISON);
    assert_int_equal(concern_at("first used = 1981", "3900 kg", "mot-service"), RULE_SPARES);
    assert_int_equal(concern_at("first used = 1981", "3900 kg", "mot-imbalance"), RULE_CONCERNS);
    assert_int_equal(concern("first used = 1981", "ohio-reserve-power"), RULE_SPARES);
    struct arena *arena = arena_create();
    struct advice_car single = advice_car_read(car_of(arena, "first used = 1960", "one"), NULL);
    assert_int_equal(ruling_of(&single, "mot-secondary")->concern, RULE_CONCERNS);
    /* no hand brake is described, so its number is not known */
    assert_int_equal(ruling_of(&single, "mot-secondary")->outcome, RULE_NOT_COMPUTED);
    advice_car_finish(&single);
    arena_destroy(arena);
}

/* UN Regulation No. 13-H, annex 5, 3.1 (from memory): front above rear from 0.15 to 0.8. Directive
 * 71/320/EEC (read): from 0.3 to 0.45 the rear may be above, up to the rate + 0.05. */
static void the_order_of_locking_is_held_against_both_rules(void **state)
{
    (void)state;
    struct grip_use at = {.z = 0.30, .front = 0.25, .rear = 0.34};
    near(grip_order_spare(&at, GRIP_ORDER_13H), -0.09, 1e-12);
    near(grip_order_spare(&at, GRIP_ORDER_71_320), 0.01, 1e-12); /* 0.30 + 0.05 - 0.34 */
    at.rear = 0.36;
    near(grip_order_spare(&at, GRIP_ORDER_71_320), -0.01, 1e-12);
    at.z = 0.50;
    near(grip_order_spare(&at, GRIP_ORDER_71_320), -0.11, 1e-12);
    at.z = 0.10;
    near_unknown(grip_order_spare(&at, GRIP_ORDER_13H));
    /* 0.1 + 0.7 (0.4 - 0.2) = 0.24 and, by the older slope, 0.1 + 0.85 * 0.2 = 0.27 */
    at = (struct grip_use){.z = 0.25, .front = 0.40, .rear = 0.30};
    near(grip_band_spare(&at, 0.7), 0.01, 1e-12);
    near(grip_band_spare(&at, 0.85), -0.02, 1e-12);
    at.front = 0.81;
    near_unknown(grip_band_spare(&at, 0.7));
}

static void what_is_missing_for_a_rule_is_a_figures_need(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    const struct ruling *ruling = ruling_of(&car, "fmvss105-reservoir");
    assert_int_equal(ruling->outcome, RULE_NOT_COMPUTED);
    assert_non_null(ruling->rests_on);
    assert_string_equal(ruling->rests_on->needs[0].key->name, "pad left");
    advice_car_finish(&car);
}

/* The left front linings at 0.26, the right ones at the usual 0.38: the brakes differ by 1 -
 * 0.26/0.38 of the stronger one. Sides that are alike say nothing. */
static void an_imbalance_is_that_of_what_is_described(void **state)
{
    (void)state;
    static const char *const cars[] = {"tests/cases/findings/side-difference.ini",
                                       "tests/cases/findings/pad-thin.not.ini"};
    for (int c = 0; c < 2; c++) {
        struct advice_car car = advice_car_load(cars[c], NULL);
        double value = -1;
        for (int i = 0; i < car.result->rulings.count; i++)
            if (strcmp(car.result->rulings.items[i].rule->id, "mot-imbalance") == 0)
                value = car.result->rulings.items[i].value;
        if (c == 0)
            near(value, 1 - 0.26 / 0.38, 1e-6);
        else
            near_unknown(value);
        advice_car_finish(&car);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_rule_says_where_for_whom_and_by_whom),
        cmocka_unit_test(numbers_are_those_of_their_sources),
        cmocka_unit_test(the_cars_numbers_are_those_of_a_sum_by_hand),
        cmocka_unit_test(the_date_of_first_use_decides_which_number_is_asked),
        cmocka_unit_test(class_and_layout_decide_too),
        cmocka_unit_test(the_order_of_locking_is_held_against_both_rules),
        cmocka_unit_test(what_is_missing_for_a_rule_is_a_figures_need),
        cmocka_unit_test(an_imbalance_is_that_of_what_is_described),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
