/* Several values changed together. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "advice/fitting/fit.h"
#include "advice_car.h"
#include "base/message.h"
#include "input/read.h"

static struct fit *tried(const struct advice_car *car, const char *words)
{
    struct source source = {"tried", words, strlen(words)};
    struct messages messages = messages_start(car->arena);
    struct work_file changes;
    if (!read_tried(&source, car->system, car->arena, &messages, &changes))
        fail_msg("%s", messages.items[0].words);
    return fit_of(car->system, car->network, &changes, (struct force){NAN}, car->arena);
}

static const struct fit_line *line_of(const struct fit *fit, const char *id, const char *of)
{
    for (int i = 0; i < fit->line_count; i++)
        if (strcmp(fit->lines[i].id, id) == 0 && strcmp(fit->lines[i].of, of) == 0)
            return &fit->lines[i];
    fail_msg("no line %s of %s", id, of);
    return NULL;
}

static bool is_asked(const struct fit *fit, enum fit_question question)
{
    for (int i = 0; i < fit->answer_count; i++)
        if (fit->answers[i].question == question)
            return true;
    return false;
}

/* clang-format off */
static const char five[] =
    "[replaced brake master]\n"
    "bore = 7/8 in\n"
    "stroke = 36 mm\n"
    "[replaced rear drum]\n"
    "bore = 11/16 in\n"
    "[replaced servo]\n"
    "ratio = 3.1\n"
    "[replaced clutch slave]\n"
    "bore = 13/16 in\n";
/* clang-format on */

/* What was tried is what the work file with the same lines makes of the car: every figure of it. */
static void what_was_tried_is_what_the_work_makes(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *fit = tried(&car, five);
    const char *head = "[work]\ncar = Village van\ndate = 2026-11-20\n";
    char work[1024];
    snprintf(work, sizeof work, "%s%s", head, five);
    struct advice_car after = advice_car_after("systems/village-van.ini", work);
    assert_true(fit->line_count > 20);
    int compared = 0;
    for (int i = 0; i < fit->line_count; i++) {
        const struct fit_line *line = &fit->lines[i];
        if (strncmp(line->id, "effort-for-same", 15) == 0)
            continue;
        near_rel(line->after, figures_find(&after.result->figures, line->id, line->of)->value,
                 1e-12);
        near_rel(line->before, figures_find(&car.result->figures, line->id, line->of)->value,
                 1e-12);
        compared++;
    }
    assert_true(compared > 20);
    advice_car_finish(&after);
    advice_car_finish(&car);
}

/* Both sides are one change; each key of a part is its own. */
static void each_change_is_listed_once(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *fit = tried(&car, five);
    assert_int_equal(fit->change_count, 5);
    assert_int_equal(fit->changes[0].part, advice_part(&car, "brake master"));
    assert_string_equal(fit->changes[1].key->name, "stroke");
    assert_int_not_equal(fit->changes[2].other, -1);
    assert_non_null(strstr(fit->changes[2].nearest, "11/16 in"));
    assert_null(fit->changes[3].nearest);
    advice_car_finish(&car);
}

/* A change of brake and clutch answers the questions of both, and each figure is what the change of
 * its own side alone makes it, for they share no fluid under pressure. */
static void brake_and_clutch_are_both_asked(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *both = tried(&car, "[replaced clutch slave]\nbore = 13/16 in\n"
                                   "[replaced rear drum]\nbore = 7/8 in\n");
    struct fit *clutch = tried(&car, "[replaced clutch slave]\nbore = 13/16 in\n");
    struct fit *brake = tried(&car, "[replaced rear drum]\nbore = 7/8 in\n");
    assert_true(is_asked(both, FIT_CLUTCH) && is_asked(both, FIT_BALANCE));
    assert_true(is_asked(clutch, FIT_CLUTCH) && !is_asked(clutch, FIT_BALANCE));
    assert_true(!is_asked(brake, FIT_CLUTCH) && is_asked(brake, FIT_BALANCE));
    near_rel(line_of(both, "slave-travel", "clutch slave")->after,
             line_of(clutch, "slave-travel", "clutch slave")->after, 1e-12);
    near_rel(line_of(both, "pedal-travel", "brake pedal")->after,
             line_of(brake, "pedal-travel", "brake pedal")->after, 1e-12);
    advice_car_finish(&car);
}

/* A pad arm longer by a tenth: the same moment about the pivot takes 1/1.1 of the force.
 * Source: moment balance. */
static void a_longer_arm_takes_less_of_the_foot(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *longer = tried(&car, "[replaced brake pedal]\npad to pivot = 319 mm\n");
    const struct fit_line *effort = line_of(longer, "effort-for-same-stop", "");
    near_rel(effort->after / effort->before, 1 / 1.1, 1e-6);
    assert_true(is_asked(longer, FIT_LOST) && !is_asked(longer, FIT_BALANCE));
    advice_car_finish(&car);
}

/* Of answers that stand alike, those that get worse come first. */
static void what_gets_worse_is_said_first(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *fit = tried(&car, five);
    int mixed = 0;
    for (int i = 1; i < fit->answer_count; i++) {
        const struct fit_answer *one = &fit->answers[i - 1], *next = &fit->answers[i];
        assert_true(one->standing >= next->standing);
        bool worse = one->reason >= 0 && fit->reasons[one->reason].worse;
        bool next_worse = next->reason >= 0 && fit->reasons[next->reason].worse;
        if (one->standing == next->standing)
            assert_true(worse || !next_worse);
        mixed += worse && !next_worse;
    }
    assert_true(mixed > 0);
    /* less of 500 N without the servo is worse, less travel is better */
    assert_true(fit->reasons[fit->answers[0].reason].worse);
    advice_car_finish(&car);
}

/* A new hose in the place of an old one is a change, though no number of it is said. */
static void a_new_hose_is_a_change(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *fit = tried(&car, "[replaced front left hose]\nrenewed = 2026\n");
    assert_int_equal(fit->change_count, 1);
    assert_int_equal(fit->verdict, FIT_SUITS);
    const struct fit_line *travel = line_of(fit, "pedal-travel", "brake pedal");
    assert_true(travel->after < travel->before);
    advice_car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_was_tried_is_what_the_work_makes),
        cmocka_unit_test(each_change_is_listed_once),
        cmocka_unit_test(brake_and_clutch_are_both_asked),
        cmocka_unit_test(a_longer_arm_takes_less_of_the_foot),
        cmocka_unit_test(what_gets_worse_is_said_first),
        cmocka_unit_test(a_new_hose_is_a_change),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
