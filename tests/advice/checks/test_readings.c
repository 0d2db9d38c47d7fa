#include "advice/checks/readings.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"
#include "base/text.h"

#define WORK "[work]\ncar = %s\ndate = 2026-11-20\nrenewed = %s\n[readings]\n%s"

static struct advice_car read_at(const char *car, const char *title, const char *renewed,
                                 const char *readings)
{
    struct arena *arena = arena_create();
    struct advice_car read =
        advice_car_after(car, text_print(arena, WORK, title, renewed, readings));
    arena_destroy(arena);
    return read;
}

static const struct compared *compared(const struct advice_car *car, int index)
{
    assert_true(index < car->result->readings.count);
    return &car->result->readings.items[index];
}

/* Without a servo pressure rises evenly with the effort: from 150 to 300 N as from 300 to 450 N. */
static void a_reading_is_compared_at_its_own_effort(void **state)
{
    (void)state;
    struct advice_car car =
        read_at("systems/rear-engined-saloon.ini", "Rear-engined saloon", "brake master",
                "line pressure = 20 bar\n"
                "line pressure of brake circuit = 20 bar at 150 N\n"
                "line pressure = 60 bar at 450 N\n");
    assert_int_equal(car.result->readings.count, 3);
    double usual = compared(&car, 0)->computed;
    double low = compared(&car, 1)->computed, high = compared(&car, 2)->computed;
    near_rel(high - usual, usual - low, 1e-6);
    near_rel((usual - low) / usual, 0.5, 0.05); /* springs and friction take a little off each */
    assert_int_equal(compared(&car, 0)->outcome, COMPARED_OFF);
    assert_int_equal(compared(&car, 1)->outcome, COMPARED_AGREES);
    assert_int_equal(compared(&car, 2)->outcome, COMPARED_AGREES);
    int found = 0;
    for (size_t i = 0; i < car.result->findings.count; i++)
        found += strcmp(car.result->findings.items[i].check->id, "reading-off") == 0;
    assert_int_equal(found, 1);
    advice_car_finish(&car);
}

static void what_no_pedal_can_do_is_said_and_what_is_not_computed_stays(void **state)
{
    (void)state;
    struct advice_car car =
        read_at("systems/village-van.ini", "Village van", "clutch slave",
                "pedal travel = 160 mm\nside difference front = 6 %\nbearing travel = 30 mm\n");
    assert_int_equal(compared(&car, 0)->outcome, COMPARED_IMPOSSIBLE);
    near(compared(&car, 0)->end, 0.150, 1e-12);
    /* 6 % read, 0 % computed: rollers tell no better than 10 % */
    assert_int_equal(compared(&car, 1)->outcome, COMPARED_AGREES);
    /* the slave's 28 mm over the fork's 1.7 */
    near(compared(&car, 2)->end, 0.028 / 1.7, 1e-12);
    assert_true(advice_finds(&car, "reading-impossible", NULL));
    advice_car_finish(&car);
    car = advice_car_read("[vehicle]\ntitle = Bare\n[brake fluid]\ngrade = DOT 4\n"
                          "[brake pedal]\nworks = brake master\n"
                          "[brake master]\ntype = single\nbore = 3/4 in\n"
                          "[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\n"
                          "[runs]\nleft = brake master, pipe, hose, front left disc\n"
                          "right = brake master, pipe, hose, front right disc\n",
                          "[work]\ncar = Bare\ndate = 2026-11-20\nrenewed = brake master\n"
                          "[readings]\nline pressure = 40 bar\n");
    assert_int_equal(car.result->readings.count, 1);
    assert_int_equal(compared(&car, 0)->outcome, COMPARED_NOT);
    assert_true(compared(&car, 0)->figure->needs_count > 0);
    advice_car_finish(&car);
}

/* The table of readings and that of figures say the same of what each has. */
static void every_reading_is_of_a_figure_with_its_unit_and_place(void **state)
{
    (void)state;
    static const enum figure_scope scopes[] = {
        [READING_OF_CAR] = SCOPE_CAR,         [READING_OF_PEDAL] = SCOPE_PEDAL,
        [READING_OF_CIRCUIT] = SCOPE_CIRCUIT, [READING_OF_BRAKE] = SCOPE_BRAKE,
        [READING_OF_CLUTCH] = SCOPE_CLUTCH,   [READING_OF_HAND_BRAKE] = SCOPE_HAND_BRAKE,
        [READING_OF_SERVO] = SCOPE_SERVO};
    size_t count;
    const struct reading_row *rows = reading_rows(&count);
    for (size_t i = 0; i < count; i++) {
        const struct figure_row *figure = figure_row(rows[i].figure);
        assert_non_null(figure);
        assert_int_equal(figure->dimension, rows[i].key.dimension);
        assert_int_equal(figure->scope, scopes[rows[i].of]);
    }
}

/* A slave of 5 mm of stroke would leave its bore: what is computed is then no travel that a reading
 * could agree with. With its own 28 mm the same reading is judged. */
static void a_reading_is_not_judged_by_a_figure_beyond_its_law(void **state)
{
    (void)state;
    for (int beyond = 0; beyond < 2; beyond++) {
        struct advice_car car = advice_car_after(
            "systems/village-van.ini",
            beyond ? "[work]\ncar = Village van\ndate = 2026-11-20\n"
                     "[replaced clutch slave]\nstroke = 5 mm\n[readings]\nslave travel = 4.9 mm\n"
                   : "[work]\ncar = Village van\ndate = 2026-11-20\n"
                     "renewed = clutch slave\n[readings]\nslave travel = 4.9 mm\n");
        assert_int_equal(compared(&car, 0)->outcome == COMPARED_NOT, beyond);
        advice_car_finish(&car);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_reading_is_not_judged_by_a_figure_beyond_its_law),
        cmocka_unit_test(a_reading_is_compared_at_its_own_effort),
        cmocka_unit_test(what_no_pedal_can_do_is_said_and_what_is_not_computed_stays),
        cmocka_unit_test(every_reading_is_of_a_figure_with_its_unit_and_place),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
