/* The tables that verdicts and sentences rest on: limits, checks, steps, reasons, cautions,
 * torques. */
#include <ctype.h>
#include <math.h>
#include <string.h>

#include "advice/result.h"
#include "support/near.h"

static bool is_id(const char *id)
{
    for (const char *letter = id; *letter != '\0'; letter++) {
        if (!islower((unsigned char)*letter) && !isdigit((unsigned char)*letter) &&
            *letter != '-') {
            return false;
        }
    }
    return *id != '\0';
}

static bool is_limit(const char *id)
{
    return !isnan(limit_value(id));
}

static void every_limit_has_words_source_and_value(void **state)
{
    (void)state;
    size_t count;
    const struct limit_row *rows = limit_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_true(is_id(rows[i].id));
        assert_true(isfinite(rows[i].value));
        assert_true(strlen(rows[i].words) > 10 && strlen(rows[i].source) > 5);
        near(limit_value(rows[i].id), rows[i].value, 0);
        for (size_t j = 0; j < i; j++) {
            assert_string_not_equal(rows[i].id, rows[j].id);
        }
    }
    near_unknown(limit_value("no such limit"));
}

/* Figures with a printed source: 49 CFR 570.55 and 570.59 (1 lbf = 4.4482216152605 N, 1 in =
 * 25.4 mm), UK MOT inspection manual 1.1.13, 1.2.1, 1.2.2, 1.4.2. */
static void limits_are_those_of_their_sources(void **state)
{
    (void)state;
    near(limit_value("pedal-used-most"), 0.80, 1e-12);
    near(limit_value("hold-force"), 556.03, 0.01);
    near(limit_value("hold-time"), 10, 1e-12);
    near(limit_value("reserve-force"), 222.41, 0.01);
    near(limit_value("lining-left-least"), 1.588e-3, 1e-6);
    near(limit_value("pad-left-least"), 1.5e-3, 1e-12);
    near(limit_value("side-difference-most"), 0.30, 1e-12);
    near(limit_value("side-difference-dangerous"), 0.50, 1e-12);
    near(limit_value("asked-stop"), 4.903325, 1e-9);
    near(limit_value("hand-brake-slope-least"), 0.16, 1e-12);
}

static void every_check_has_its_words_and_a_limit_that_exists(void **state)
{
    (void)state;
    size_t count;
    const struct check_row *rows = check_rows(&count);
    assert_true(count >= 35);
    for (size_t i = 0; i < count; i++) {
        assert_true(is_id(rows[i].id));
        assert_ptr_equal(check_row(rows[i].id), &rows[i]);
        assert_non_null(rows[i].what);
        assert_non_null(rows[i].remedy);
        assert_non_null(rows[i].source);
        assert_non_null(rows[i].test);
        assert_int_equal(rows[i].what[strlen(rows[i].what) - 1], '.');
        assert_int_equal(rows[i].remedy[strlen(rows[i].remedy) - 1], '.');
        assert_true(rows[i].limit == NULL || is_limit(rows[i].limit));
    }
    assert_null(check_row("no such check"));
}

static void every_step_and_reason_can_be_found_and_has_a_source(void **state)
{
    (void)state;
    size_t count;
    const struct step_row *steps = step_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_true(is_id(steps[i].id));
        assert_ptr_equal(step_row(steps[i].id), &steps[i]);
        assert_true(strlen(steps[i].words) > 10);
        assert_non_null(steps[i].source);
    }
    const struct reason_row *reasons = reason_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_true(is_id(reasons[i].id));
        assert_ptr_equal(reason_row(reasons[i].id), &reasons[i]);
        assert_non_null(reasons[i].source);
    }
    assert_null(step_row("no such step"));
    assert_null(reason_row("no such reason"));
}

static void steps_are_numbered_and_begin_about_nothing(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct steps steps = {.arena = arena};
    for (int i = 0; i < 40; i++) {
        struct step *step = steps_add(&steps, STEP_SET_LEVEL);
        assert_int_equal(step->number, i + 1);
        assert_int_equal(step->part, -1);
        assert_int_equal(step->nipple, -1);
        near_unknown(step->volume.m3);
        near_unknown(step->torque.nm);
    }
    assert_int_equal(steps.count, 40);
    arena_destroy(arena);
}

static void cautions_use_the_signal_words_and_say_how_to_avoid_harm(void **state)
{
    (void)state;
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_true(is_id(rows[i].id));
        assert_true(strcmp(rows[i].signal, "DANGER") == 0 ||
                    strcmp(rows[i].signal, "WARNING") == 0 ||
                    strcmp(rows[i].signal, "CAUTION") == 0);
        assert_true(strlen(rows[i].hazard) > 3 && strlen(rows[i].harm) > 5);
        assert_true(strlen(rows[i].avoid) > 10);
    }
    assert_non_null(strstr(caution_deference(), "manual"));
}

/* Makers' texts: 15 N m for M10 x 1 pipe nuts on steel, 6 and 8 on copper, 34 for a small banjo (54
 * is of a bolt whose thread nobody names), 9 to 9.8 and 7 N m for nipples of calipers and wheel
 * cylinders. Common practice, no source: 12 to 18 and 20 to 35. */
static void torques_are_those_of_their_source(void **state)
{
    (void)state;
    near(torque_row("pipe-nut")->least.nm, 12, 1e-9);
    near(torque_row("pipe-nut")->most.nm, 18, 1e-9);
    near(torque_row("pipe-nut-copper")->least.nm, 6, 1e-9);
    near(torque_row("pipe-nut-copper")->most.nm, 8, 1e-9);
    near(torque_row("banjo")->least.nm, 20, 1e-9);
    near(torque_row("banjo")->most.nm, 35, 1e-9);
    near(torque_row("nipple-cylinder")->least.nm, 7, 1e-9);
    near(torque_row("nipple-caliper")->most.nm, 9.8, 1e-9);
    assert_null(torque_row("no such joint"));
    size_t count;
    const struct torque_row *rows = torque_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_true(rows[i].most.nm >= rows[i].least.nm);
        assert_null(strstr(rows[i].source, "withheld")); /* nothing to a reader */
        assert_true(strlen(rows[i].words) > 5);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_limit_has_words_source_and_value),
        cmocka_unit_test(limits_are_those_of_their_sources),
        cmocka_unit_test(every_check_has_its_words_and_a_limit_that_exists),
        cmocka_unit_test(every_step_and_reason_can_be_found_and_has_a_source),
        cmocka_unit_test(steps_are_numbered_and_begin_about_nothing),
        cmocka_unit_test(cautions_use_the_signal_words_and_say_how_to_avoid_harm),
        cmocka_unit_test(torques_are_those_of_their_source),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
