/* The bleed plan as it comes out: the same in text, JSON and on the sheet, one step to a small
 * screen, and figures that can be worked out by hand from the description. */
#include <jansson.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/near.h"
#include "support/run_cli.h"
#include "support/sanitized.h"

/* What the phone shows: common practice, no source, is 20 lines of 40 columns. */
enum { MOST_SCREEN_LINES = 20, MOST_SCREEN_COLUMNS = 40 };

static const char *const cars[] = {"systems/village-van.ini", "systems/hill-coupe.ini",
                                   "systems/servo-estate.ini", "systems/diagonal-hatch.ini",
                                   "systems/twin-disc-motorcycle.ini"};
enum { CARS = sizeof cars / sizeof *cars };

/* What stands under a key of an answer. */
static json_t *object_of_run(struct run *run, const char *key)
{
    json_error_t error;
    json_t *root = json_loads(run->out, 0, &error);
    if (root == NULL)
        fail_msg("%s", error.text);
    json_t *plan = json_incref(json_object_get(root, key));
    json_decref(root);
    run_finish(run);
    assert_non_null(plan);
    return plan;
}

static json_t *plan_of_run(struct run *run)
{
    return object_of_run(run, "bleed");
}

/* The steps of the whole job. */
static json_t *job_of(const char *car)
{
    struct run run = run_cli("bleed", car, "--json", "--date", "2026-11-25");
    return object_of_run(&run, "plan");
}

static json_t *plan_of(const char *car)
{
    struct run run = run_cli("bleed", car, "--json", "--date", "2026-11-25");
    return plan_of_run(&run);
}

static const char *string_at(const json_t *object, const char *key)
{
    const char *words = json_string_value(json_object_get(object, key));
    if (words == NULL)
        fail_msg("no %s", key);
    return words;
}

static double number_at(const json_t *object, const char *key)
{
    json_t *value = json_object_get(object, key);
    if (!json_is_number(value))
        fail_msg("no number %s", key);
    return json_number_value(value);
}

static double detail_at(const json_t *step, const char *key)
{
    return number_at(json_object_get(step, "detail"), key);
}

static size_t letters_in(const char *line, size_t bytes)
{
    size_t letters = 0;
    for (size_t i = 0; i < bytes; i++)
        letters += ((unsigned char)line[i] & 0xC0) != 0x80;
    return letters;
}

static void assert_fits_the_screen(const char *text, const char *car, size_t step)
{
    int lines = 0;
    for (const char *line = text; *line != '\0'; lines++) {
        size_t bytes = strcspn(line, "\n");
        if (letters_in(line, bytes) > MOST_SCREEN_COLUMNS)
            fail_msg("%s step %zu: too wide: %.*s", car, step, (int)bytes, line);
        line += bytes + (line[bytes] == '\n');
    }
    if (lines > MOST_SCREEN_LINES)
        fail_msg("%s step %zu: %d lines", car, step, lines);
}

/* The whole job, not the nipples alone. */
static void each_step_fits_a_phone_and_names_what_comes_next(void **state)
{
    (void)state;
    for (size_t c = 0; c < CARS; c++) {
        json_t *job = job_of(cars[c]), *step;
        size_t i, nipples = 0, count = json_array_size(json_object_get(job, "steps"));
        assert_true(count > 20);
        json_array_foreach(json_object_get(job, "steps"), i, step)
        {
            if (SANITIZED && (i + c) % 6 != 0)
                continue;
            char number[24], head[64];
            snprintf(number, sizeof number, "%zu", i + 1);
            snprintf(head, sizeof head, "STEP %zu OF %zu\n", i + 1, count);
            struct run run = run_cli("bleed", cars[c], "--step", number, "--date", "2026-11-25");
            assert_int_equal(run.status, 0);
            assert_fits_the_screen(run.out, cars[c], i + 1);
            assert_int_equal(strncmp(run.out, head, strlen(head)), 0);
            if (json_object_get(step, "turn") != NULL && json_object_get(step, "nipple") != NULL) {
                assert_non_null(strstr(run.out, "STROKES"));
                assert_non_null(strstr(run.out, string_at(step, "circuit")));
                nipples++;
            }
            if (json_object_get(step, "expect") != NULL)
                assert_non_null(strstr(run.out, "READ "));
            const char *next = strstr(run.out, "NEXT      ");
            assert_non_null(next);
            snprintf(number, sizeof number, "--step=%zu\n", i + 2);
            assert_true(i + 1 == count || strstr(next, number) != NULL);
            run_finish(&run);
        }
        assert_true(SANITIZED || nipples >= 2);
        json_decref(job);
    }
}

/* Strokes are counted with the pedal only; what runs by itself takes time. */
static void without_a_pedal_a_step_says_time_or_what_to_push_in(void **state)
{
    (void)state;
    static const char *const methods[] = {"pressure", "gravity", "reverse"};
    static const char *const wanted[] = {"TIME", "TIME", "PUSH IN"};
    for (size_t i = 0; i < 3; i++) {
        struct run run =
            run_cli("bleed", cars[0], "--step",
                    i == 2 ? "bleed-backwards rear left drum" : "bleed-steady rear left drum",
                    "--date", "2026-11-25", "--method", methods[i]);
        assert_int_equal(run.status, 0);
        assert_fits_the_screen(run.out, cars[0], 1);
        assert_non_null(strstr(run.out, wanted[i]));
        assert_null(strstr(run.out, "STROKES"));
        run_finish(&run);
    }
}

static void a_step_that_is_not_there_is_said_so(void **state)
{
    (void)state;
    struct run run = run_cli("bleed", cars[0], "--step", "999", "--date", "2026-11-25");
    assert_int_equal(run.status, 2);
    assert_non_null(strstr(run.err, "no step 999"));
    run_finish(&run);
}

static char *sheet_words(const char *car)
{
    char pdf[] = "/tmp/firmpedal-plan-XXXXXX.pdf";
    int file = mkstemps(pdf, (int)strlen(".pdf"));
    assert_true(file >= 0);
    close(file);
    struct run run =
        run_cli("sheet", car, "-o", pdf, "--replace", "--annex", "all", "--date", "2026-11-25");
    assert_int_equal(run.status, 0);
    run_finish(&run);
    const char *const words[] = {"pdftotext", pdf, "-", NULL};
    run = run_program(NULL, words, NULL, 60);
    assert_int_equal(run.status, 0);
    char *text = strdup(run.out);
    run_finish(&run);
    unlink(pdf);
    return text;
}

/* Letters only, small: lines are broken elsewhere on the sheet. */
static char *bare(const char *words)
{
    char *copy = strdup(words), *into = copy;
    for (const char *from = words; *from != '\0'; from++)
        if (*from > ' ')
            *into++ = *from >= 'A' && *from <= 'Z' ? (char)(*from + 32) : *from;
    *into = '\0';
    return copy;
}

static void assert_holds(const char *where, const char *text, const char *words)
{
    char *needle = bare(words);
    if (strstr(text, needle) == NULL)
        fail_msg("%s lacks: %s", where, words);
    free(needle);
}

/* "86.7 mL a minute to expect. ..." */
static void assert_figure_held(const char *sheet, const char *sum)
{
    const char *end = strstr(sum, " to expect");
    assert_non_null(end);
    char *figure = strndup(sum, (size_t)(end - sum));
    assert_holds("sheet", sheet, figure);
    free(figure);
}

static void text_and_sheet_say_what_the_json_says(void **state)
{
    (void)state;
    for (size_t c = 0; c < 3; c++) {
        json_t *plan = plan_of(cars[c]), *item, *note;
        size_t i, k;
        struct run run = run_cli("bleed", cars[c], "--all", "--date", "2026-11-25");
        char *text = bare(run.out), *raw = sheet_words(cars[c]), *sheet = bare(raw);
        json_array_foreach(json_object_get(plan, "steps"), i, item)
        {
            if (json_object_get(item, "nipple") != NULL)
                assert_holds("sheet", sheet, string_at(item, "nipple"));
            assert_holds("text", text, string_at(item, "words"));
        }
        json_array_foreach(json_object_get(plan, "methods"), i, item)
        {
            assert_holds("text", text, string_at(item, "words"));
            assert_holds("sheet", sheet, string_at(item, "words"));
            json_array_foreach(json_object_get(item, "notes"), k, note)
            {
                assert_holds("text", text, string_at(note, "id"));
                assert_holds("sheet", sheet, string_at(note, "id"));
                assert_holds("text", text, string_at(note, "words"));
                assert_holds("sheet", sheet, string_at(note, "words"));
            }
        }
        json_t *job = job_of(cars[c]);
        json_array_foreach(json_object_get(job, "steps"), i, item)
        {
            const char *words = string_at(item, "words"), *sum = strstr(words, "above its end: ");
            if (json_object_get(item, "turn") != NULL)
                continue;
            assert_holds("text", text, words);
            /* on the sheet how a flow is tried stands once, its figure each time */
            if (sum == NULL)
                assert_holds("sheet", sheet, words);
            else
                assert_figure_held(sheet, sum + strlen("above its end: "));
        }
        json_decref(job);
        free(text);
        free(raw);
        free(sheet);
        run_finish(&run);
        json_decref(plan);
    }
}

static void the_curve_goes_down_to_what_the_plan_leaves(void **state)
{
    (void)state;
    for (size_t c = 0; c < CARS; c++) {
        json_t *plan = plan_of(cars[c]);
        json_t *planned = json_array_get(json_object_get(plan, "orders"), 0);
        json_t *curve = json_object_get(plan, "curve");
        assert_string_equal(string_at(planned, "id"), "planned");
        size_t count = json_array_size(curve);
        assert_true(count > 3 && count <= 5000);
        double fluid = 0, air = INFINITY;
        for (size_t i = 0; i < count; i++) {
            json_t *point = json_array_get(curve, i);
            double now = json_number_value(json_array_get(point, 0));
            double left = json_number_value(json_array_get(point, 1));
            assert_true(now >= fluid - 1e-15);
            assert_true(left <= air + 1e-12);
            fluid = now;
            air = left;
        }
        near(fluid, number_at(planned, "fluid"), 1e-9);
        near(air, number_at(planned, "air_left"), 1e-9);
        json_decref(plan);
    }
}

/* A car whose pipes and chambers are all said: 3/16 in pipe of 0.028 in wall has a bore of
 * 3.340 mm (SAE J527, from memory); volumes by pi/4 times the square of it. */
static const char measured[] =
    "[vehicle]\ntitle = Example\ndriver = left\nrear axle = live\n"
    "[fluid]\ngrade = DOT 4\n"
    "[reservoir]\ncapacity = 200 mL\n"
    "[pedal]\nworks = master\nratio = 5\ntravel = 150 mm\n"
    "[master]\ntype = single\nbore = 20 mm\nstroke = 30 mm\nchamber = 5 mL\n"
    "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 20 mm\n"
    "drum diameter = 200 mm\nchamber = 2 mL\n"
    "[tee]\non = rear axle\nchamber = 0.5 mL\n"
    "[all pipes]\nsize = 3/16 in\n"
    "[runs]\nfeed = master, 2 m pipe, tee\n"
    "left = tee, 0.5 m pipe, rear left drum\nright = tee, 1.2 m pipe, rear right drum\n";

static json_t *plan_of_text(const char *words, const char *option)
{
    char path[] = "/tmp/firmpedal-car-XXXXXX";
    int file = mkstemp(path);
    assert_true(file >= 0);
    assert_int_equal(write(file, words, strlen(words)), (ssize_t)strlen(words));
    close(file);
    struct run run = option == NULL
                         ? run_cli("bleed", path, "--json", "--date", "2026-11-25")
                         : run_cli("bleed", path, "--json", "--date", "2026-11-25", option);
    if (run.status > 1)
        fail_msg("%s", run.err);
    unlink(path);
    return plan_of_run(&run);
}

static void ways_and_branches_are_the_sums_of_the_description(void **state)
{
    (void)state;
    const double pi = acos(-1.0);
    const double pipe = pi / 4 * 3.340e-3 * 3.340e-3;
    const double shared = 2 * pipe + 0.5e-6;
    const double right = 1.2 * pipe + 2e-6, left = 0.5 * pipe + 2e-6;
    json_t *plan = plan_of_text(measured, NULL);
    json_t *steps = json_object_get(plan, "steps");
    assert_int_equal(json_array_size(steps), 2);
    json_t *first = json_array_get(steps, 0), *second = json_array_get(steps, 1);
    /* the longest run first (trade article, publisher withheld) */
    assert_string_equal(string_at(first, "part"), "rear right drum");
    near(detail_at(first, "path"), shared + right, 0.05e-6);
    near(detail_at(first, "branch"), shared + right, 0.05e-6);
    near(detail_at(second, "path"), shared + left, 0.05e-6);
    near(detail_at(second, "branch"), left, 0.05e-6);
    /* three volumes to renew, the master's own chamber among them: Levenspiel, Chemical Reaction
     * Engineering, 3rd ed., pp. 343-344 */
    near_rel(detail_at(first, "renewal"), 3 * (5e-6 + shared + right), 1e-3);
    near(detail_at(second, "air_left"), 0, 0.05e-6);
    json_decref(plan);
}

/* A stroke can move no more than the bore times the stroke: 9.42 mL. */
static void strokes_are_whole_and_no_larger_than_the_master(void **state)
{
    (void)state;
    const double stroke = acos(-1.0) / 4 * 20e-3 * 20e-3 * 30e-3;
    json_t *plan = plan_of_text(measured, NULL), *step;
    size_t i;
    json_array_foreach(json_object_get(plan, "steps"), i, step)
    {
        double strokes = number_at(step, "strokes");
        near(strokes, floor(strokes), 1e-12);
        assert_true(strokes * stroke >= number_at(step, "volume") * (1 - 1e-9));
        assert_true(detail_at(step, "top_up_every") * stroke <= 200e-6 ||
                    detail_at(step, "top_up_every") <= 0);
        assert_true(detail_at(step, "reservoir_after") <= 200e-6 + 1e-12);
        assert_true(detail_at(step, "reservoir_after") > 0);
    }
    json_decref(plan);
}

static void shutting_early_never_takes_fewer_strokes_than_holding_open(void **state)
{
    (void)state;
    json_t *open = plan_of_text(measured, NULL), *shut = plan_of_text(measured, "--shut-early");
    json_t *by_open = json_array_get(json_object_get(open, "orders"), 0);
    json_t *by_shut = json_array_get(json_object_get(shut, "orders"), 0);
    assert_false(json_is_true(json_object_get(open, "shut_under_pressure")));
    assert_true(json_is_true(json_object_get(shut, "shut_under_pressure")));
    assert_true(number_at(by_shut, "strokes") >= number_at(by_open, "strokes"));
    assert_true(number_at(by_open, "other_strokes") >= number_at(by_open, "strokes"));
    json_decref(open);
    json_decref(shut);
}

static void an_order_asked_for_gets_its_cost(void **state)
{
    (void)state;
    struct run run =
        run_cli("bleed", "systems/servo-estate.ini", "--json", "--date", "2026-11-25", "--order",
                "front right disc, front left disc, rear right drum, rear left drum");
    json_t *plan = plan_of_run(&run), *cost, *found = NULL;
    size_t i;
    json_array_foreach(json_object_get(plan, "orders"), i,
                       cost) if (strcmp(string_at(cost, "id"), "asked") == 0) found = cost;
    assert_non_null(found);
    assert_true(number_at(found, "strokes") > 0);
    assert_string_equal(
        json_string_value(json_array_get(json_object_get(plan, "asked_left_out"), 0)),
        "remote servo");
    json_decref(plan);
}

/* A table of equal rows tells nothing; JSON keeps them. What is counted as no air left is a sum. */
static void costs_of_orders_are_a_table_only_where_they_differ(void **state)
{
    (void)state;
    static const struct {
        const char *car;
        bool differ;
    } rows[] = {{"systems/diagonal-hatch.ini", true}, {"systems/family-saloon.ini", false}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct run run = run_cli("bleed", rows[i].car, "--all", "--date", "2026-11-25");
        assert_true((strstr(run.out, "What the order costs") != NULL) == rows[i].differ);
        assert_true(!says(run.out, "order makes no difference") == rows[i].differ);
        assert_true(says(run.out, "ideal sum"));
        run_finish(&run);
        json_t *plan = plan_of(rows[i].car), *orders = json_object_get(plan, "orders");
        double least = 1, most = 0;
        for (size_t k = 0; k < json_array_size(orders); k++) {
            least = fmin(least, number_at(json_array_get(orders, k), "fluid"));
            most = fmax(most, number_at(json_array_get(orders, k), "fluid"));
        }
        assert_true((most - least > 5e-9) == rows[i].differ);
        json_decref(plan);
    }
}

/* Said before anything else, and not ended clean, though the part itself is left alone. */
static void what_was_found_bad_and_stays_comes_first(void **state)
{
    (void)state;
    static const char *const found[][2] = {{"pistons = stuck", "pistons-stuck"},
                                           {"leak = weeping", "leak-weeping"},
                                           {"bore surface = pitted", "bore-pitted"},
                                           {"nipple = sheared", "nipple-sheared"}};
    static const char *const commands[] = {"bleed", "open"};
    char folder[] = "/tmp/firmpedal-test-XXXXXX", path[64];
    assert_non_null(mkdtemp(folder));
    snprintf(path, sizeof path, "%s/work.ini", folder);
    for (size_t f = 0; f < 4; f++)
        for (int settled = 0; settled < 2; settled++) {
            FILE *work = fopen(path, "w");
            fprintf(work,
                    "[work]\ncar = Village van\ndate = 2026-11-20\nrenewed = %s\n"
                    "[found rear left drum]\n%s\n",
                    settled ? "rear left drum" : "front left hose", found[f][0]);
            fclose(work);
            for (int c = 0; c < 2; c++) {
                struct run run = run_cli(commands[c], cars[0], path, "--date", "2026-11-25");
                const char *said = strstr(run.out, found[f][1]);
                assert_int_equal(run.status, settled ? 0 : 1);
                assert_true(settled == (said == NULL));
                assert_true(settled || said < strstr(run.out, "Pistons fly"));
                run_finish(&run);
            }
        }
    unlink(path);
    rmdir(folder);
}

static void a_union_is_one_step_with_its_boxes(void **state)
{
    (void)state;
    struct run run = run_cli("open", "systems/village-van.ini", "demo/village-van-work.ini",
                             "--json", "--date", "2026-11-25");
    json_error_t error;
    json_t *root = json_loads(run.out, 0, &error), *step;
    assert_non_null(root);
    size_t i;
    int boxed = 0;
    json_array_foreach(json_object_get(json_object_get(root, "plan"), "steps"), i, step)
    {
        json_t *boxes = json_object_get(step, "boxes");
        if (boxes == NULL)
            continue;
        boxed++;
        bool plugs = strstr(string_at(step, "words"), "Plug the open end") != NULL;
        assert_int_equal(json_array_size(boxes), plugs ? 3 : 2);
    }
    /* two drums 2, three hoses 6, master 2 */
    assert_int_equal(boxed, 10);
    json_decref(root);
    run_finish(&run);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_step_fits_a_phone_and_names_what_comes_next),
        cmocka_unit_test(without_a_pedal_a_step_says_time_or_what_to_push_in),
        cmocka_unit_test(a_step_that_is_not_there_is_said_so),
        cmocka_unit_test(text_and_sheet_say_what_the_json_says),
        cmocka_unit_test(the_curve_goes_down_to_what_the_plan_leaves),
        cmocka_unit_test(ways_and_branches_are_the_sums_of_the_description),
        cmocka_unit_test(strokes_are_whole_and_no_larger_than_the_master),
        cmocka_unit_test(shutting_early_never_takes_fewer_strokes_than_holding_open),
        cmocka_unit_test(an_order_asked_for_gets_its_cost),
        cmocka_unit_test(costs_of_orders_are_a_table_only_where_they_differ),
        cmocka_unit_test(what_was_found_bad_and_stays_comes_first),
        cmocka_unit_test(a_union_is_one_step_with_its_boxes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
