/* One thing changed in a description or a work file, and exactly that follows from it. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"
#include "variant.h"

static long count_of(json_t *answer, const char *key)
{
    return (long)json_integer_value(json_object_get(json_object_get(answer, "hoses"), key));
}

/* Takes the first hose out of a run's line. false when there is none. */
static bool cut_hose(const char *line, char *out, size_t size)
{
    const char *hose = strstr(line, " hose");
    if (hose == NULL || strchr(line, '=') == NULL)
        return false;
    const char *start = hose;
    while (start > line && *start != ',')
        start--;
    if (*start != ',')
        return false;
    snprintf(out, size, "%.*s%s", (int)(start - line), line, hose + strlen(" hose"));
    return true;
}

static void a_hose_cut_out_of_a_run_is_missing(void **state)
{
    (void)state;
    char *paths[MOST_CARS];
    size_t cars = variant_cars(paths);
    int cuts = 0;
    for (size_t car = 0; car < cars; car++) {
        struct lines lines = variant_lines(paths[car]);
        json_t *before = ask_lines(&lines, -1, FP_HOSES);
        assert_non_null(before);
        assert_int_equal(count_of(before, "missing"), 0);
        bool in_runs = false;
        for (size_t i = 0; i < lines.count; i++) {
            if (lines.items[i][0] == '[')
                in_runs = strcmp(lines.items[i], "[runs]") == 0;
            char shorter[512];
            if (!in_runs || !cut_hose(lines.items[i], shorter, sizeof shorter))
                continue;
            char *kept = lines.items[i];
            lines.items[i] = shorter;
            json_t *after = ask_lines(&lines, -1, FP_HOSES);
            lines.items[i] = kept;
            assert_non_null(after);
            /* A run that ends on both sides of an axle loses one hose on each. */
            long lost = count_of(before, "there") - count_of(after, "there");
            if (count_of(after, "missing") != lost || lost < 1 || lost > 2)
                fprintf(stderr, "%s: %s\n", paths[car], shorter);
            assert_true(lost == 1 || lost == 2);
            assert_int_equal(count_of(after, "missing"), lost);
            assert_int_equal(count_of(after, "needed"), count_of(before, "needed"));
            json_decref(after);
            cuts++;
        }
        json_decref(before);
        variant_finish(&lines);
        free(paths[car]);
    }
    assert_true(cuts > 20);
}

static void a_slave_on_the_body_needs_no_hose(void **state)
{
    (void)state;
    char *path = source_path("systems/village-van.ini");
    struct lines lines = variant_lines(path);
    json_t *before = ask_lines(&lines, -1, FP_HOSES);
    for (size_t i = 0; i < lines.count; i++)
        if (strcmp(lines.items[i], "[clutch slave]") == 0) {
            free(lines.items[i]);
            lines.items[i] = strdup("[clutch slave]\non = body");
        }
    json_t *after = ask_lines(&lines, -1, FP_HOSES);
    assert_non_null(after);
    assert_int_equal(count_of(after, "needed"), count_of(before, "needed") - 1);
    assert_int_equal(count_of(after, "missing"), 0);
    json_decref(before);
    json_decref(after);
    variant_finish(&lines);
    free(path);
}

/* The bleed plan of the van after a work file with one more line. */
static json_t *plan_after(const char *deed)
{
    char path[] = "/tmp/firmpedal-work-XXXXXX";
    int file = mkstemp(path);
    assert_true(file >= 0);
    char text[512];
    int size =
        snprintf(text, sizeof text, "[work]\ncar = Village van\ndate = 2026-11-20\n%s\n", deed);
    assert_int_equal(write(file, text, (size_t)size), size);
    close(file);
    struct run run = run_cli("bleed", "systems/village-van.ini", path, "--json");
    unlink(path);
    if (run.status != 0)
        fprintf(stderr, "%s\n", run.err);
    assert_int_equal(run.status, 0);
    json_t *answer = json_loads(run.out, 0, NULL);
    run_finish(&run);
    assert_non_null(answer);
    return answer;
}

static size_t nipples_in(json_t *answer)
{
    json_t *steps = json_object_get(json_object_get(answer, "bleed"), "steps");
    size_t nipples = 0, index;
    json_t *step;
    json_array_foreach(steps, index, step) nipples += json_object_get(step, "nipple") != NULL;
    return nipples;
}

static void one_union_opened_leaves_the_other_nipples_shut(void **state)
{
    (void)state;
    json_t *answer = plan_after("opened = rear left drum");
    json_t *bleed = json_object_get(answer, "bleed");
    assert_int_equal(nipples_in(answer), 1);
    assert_string_equal(text_of(json_array_get(json_object_get(bleed, "steps"), 0), "part"),
                        "rear left drum");
    assert_int_equal(json_array_size(json_object_get(bleed, "untouched")), 4);
    json_decref(answer);
}

static void an_opened_clutch_leaves_the_brakes_shut(void **state)
{
    (void)state;
    json_t *answer = plan_after("opened = clutch slave");
    assert_int_equal(nipples_in(answer), 1);
    json_decref(answer);
}

static void a_reservoir_run_dry_brings_all_nipples_back(void **state)
{
    (void)state;
    json_t *answer = plan_after("opened = rear left drum\nran dry = brake reservoir");
    assert_int_equal(nipples_in(answer), 5);
    assert_int_equal(
        json_array_size(json_object_get(json_object_get(answer, "bleed"), "untouched")), 0);
    json_decref(answer);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_hose_cut_out_of_a_run_is_missing),
        cmocka_unit_test(a_slave_on_the_body_needs_no_hose),
        cmocka_unit_test(one_union_opened_leaves_the_other_nipples_shut),
        cmocka_unit_test(an_opened_clutch_leaves_the_brakes_shut),
        cmocka_unit_test(a_reservoir_run_dry_brings_all_nipples_back),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
