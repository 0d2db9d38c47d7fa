/* What was done is noted in the work file: whole or not at all, the rest of it as it was; the plan
 * goes on from there. */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"

#define CAR "systems/village-van.ini"
#define DAY "--date", "2026-11-25"

static char folder[] = "/tmp/firmpedal-done-XXXXXX";
static char work[512];

static int make_folder(void **state)
{
    (void)state;
    if (mkdtemp(folder) == NULL)
        return 1;
    snprintf(work, sizeof work, "%s/work.ini", folder);
    return 0;
}

static int remove_folder(void **state)
{
    (void)state;
    const char *const words[] = {"rm", "-rf", folder, NULL};
    struct run run = run_program(NULL, words, NULL, 10);
    run_finish(&run);
    return 0;
}

static void put(const char *path, const char *words)
{
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs(words, file);
    assert_int_equal(fclose(file), 0);
}

static void assert_file(const char *path, const char *words)
{
    char *whole = read_whole(path, NULL);
    assert_string_equal(whole, words);
    free(whole);
}

static size_t files_in_folder(void)
{
    const char *const words[] = {"ls", "-A", folder, NULL};
    struct run run = run_program(NULL, words, NULL, 10);
    size_t lines = 0;
    for (const char *at = run.out; *at != '\0'; at++)
        lines += *at == '\n';
    run_finish(&run);
    return lines;
}

static void expect(struct run run, int status, const char *words)
{
    if (run.status != status)
        fail_msg("status %d: %s%s", run.status, run.out, run.err);
    if (words != NULL && strstr(run.out, words) == NULL && strstr(run.err, words) == NULL)
        fail_msg("no %s in: %s%s", words, run.out, run.err);
    run_finish(&run);
}

#define HEAD                                                                                       \
    "; what was done\n[work]\ncar = Village van ; mine\ndate = 2026-11-20\n"                       \
    "renewed = rear left drum\n"

static void a_step_is_noted_behind_the_last_and_the_rest_stays(void **state)
{
    (void)state;
    put(work, HEAD "\n[done]\n; by hand\nset-level = 2026-11-24, level floor\n; kept\n\n"
                   "[readings]\npedal travel = 66 mm ; cold\n");
    expect(run_cli("done", CAR, work, DAY, "open-pipe-nut rear left pipe at rear left drum",
                   "close-drum rear left drum"),
           0, "noted: close-drum rear left drum");
    assert_file(work, HEAD "\n[done]\n; by hand\nset-level = 2026-11-24, level floor\n"
                           "open-pipe-nut rear left pipe at rear left drum = 2026-11-25\n"
                           "close-drum rear left drum = 2026-11-25\n; kept\n\n"
                           "[readings]\npedal travel = 66 mm ; cold\n");
    assert_int_equal(files_in_folder(), 1);
}

static void without_a_section_it_makes_one_at_the_end_with_the_ends_of_lines_there_are(void **state)
{
    (void)state;
    put(work, HEAD "fluid renewed = yes"); /* no end of line */
    expect(run_cli("done", CAR, work, DAY, "1", "--noted", "42 mm, 3 clicks"), 0, "of ");
    assert_file(work, HEAD "fluid renewed = yes\n\n[done]\n"
                           "before-read = 2026-11-25, 42 mm, 3 clicks\n");
    put(work, "[work]\r\ncar = Village van\r\ndate = 2026-11-20\r\nrenewed = clutch slave\r\n");
    expect(run_cli("done", CAR, work, DAY, "set-level"), 0, NULL);
    assert_file(work, "[work]\r\ncar = Village van\r\ndate = 2026-11-20\r\n"
                      "renewed = clutch slave\r\n\r\n[done]\r\nset-level = 2026-11-25\r\n");
}

static void what_is_noted_already_is_not_noted_twice(void **state)
{
    (void)state;
    put(work, HEAD);
    expect(run_cli("done", CAR, work, DAY, "set-level", "set-level"), 0, "noted: set-level");
    char *once = read_whole(work, NULL);
    expect(run_cli("done", CAR, work, "--date", "2026-11-26", "set-level"), 0,
           "noted already: set-level");
    assert_file(work, once);
    free(once);
}

static void without_steps_it_says_what_comes_next_and_writes_nothing(void **state)
{
    (void)state;
    put(work, HEAD);
    expect(run_cli("done", CAR, work, DAY), 0, "next: 1, before-read");
    assert_file(work, HEAD);
}

static void a_step_that_others_should_come_before_is_noted_and_told(void **state)
{
    (void)state;
    put(work, HEAD);
    expect(run_cli("done", CAR, work, DAY, "test-second-round"), 0, "before it come");
}

/* All or none, and only into a work file of this car. */
static void nothing_is_written_where_something_is_wrong(void **state)
{
    (void)state;
    put(work, HEAD);
    expect(run_cli("done", CAR, work, DAY, "set-level", "close-drum"), 2,
           "nearest: close-drum rear left drum");
    expect(run_cli("done", CAR, work, DAY, "set-level", "--noted", "a\nb"), 2, "on one line");
    assert_file(work, HEAD);
    char other[600];
    snprintf(other, sizeof other, "%s/other.ini", folder);
    put(other, "[work]\ncar = Another\ndate = 2026-11-20\nrenewed = rear left drum\n");
    expect(run_cli("done", CAR, other, DAY, "set-level"), 3, "Village van");
    assert_file(other, "[work]\ncar = Another\ndate = 2026-11-20\nrenewed = rear left drum\n");
    put(other, "[work]\ncar = Village van\ndate = 2026-11-22\nrenewed = rear right drum\n");
    expect(run_cli("done", CAR, work, "--work", other, DAY, "set-level"), 2, "earlier day");
    expect(run_cli("done", CAR, CAR, DAY, "set-level"), 3, NULL);
    assert_file(work, HEAD);
    unlink(other);
}

static void a_folder_that_takes_no_file_leaves_the_work_file_whole(void **state)
{
    (void)state;
    if (getuid() == 0)
        skip(); /* root may write everywhere */
    put(work, HEAD);
    assert_int_equal(chmod(folder, 0500), 0);
    expect(run_cli("done", CAR, work, DAY, "set-level"), 4, "nothing is noted");
    assert_int_equal(chmod(folder, 0700), 0);
    assert_file(work, HEAD);
}

static json_t *plan_of(const char *file)
{
    struct run run = run_cli("bleed", CAR, file, DAY, "--json");
    json_t *root = json_loads(run.out, 0, NULL);
    assert_non_null(root);
    json_t *plan = json_incref(json_object_get(root, "plan"));
    json_decref(root);
    run_finish(&run);
    return plan;
}

static void the_plan_goes_on_from_what_is_noted_and_tells_of_strays(void **state)
{
    (void)state;
    put(work, HEAD "[done]\nbefore-read = 2026-11-24, 30 mm\nset-lvel = 2026-11-24\n");
    json_t *plan = plan_of(work), *step;
    size_t i, done = 0;
    json_array_foreach(json_object_get(plan, "steps"), i, step)
    {
        bool read = strcmp(json_string_value(json_object_get(step, "name")), "before-read") == 0;
        assert_int_equal(json_is_true(json_object_get(step, "done")), read);
        done += read;
        if (read)
            assert_string_equal(json_string_value(json_object_get(step, "noted")), "30 mm");
    }
    assert_int_equal(done, 1);
    assert_string_not_equal(json_string_value(json_object_get(plan, "next")), "before-read");
    json_t *strays = json_object_get(plan, "noted_but_no_step");
    assert_int_equal(json_array_size(strays), 1);
    assert_string_equal(json_string_value(json_object_get(json_array_get(strays, 0), "name")),
                        "set-lvel");
    json_decref(plan);
    expect(run_cli("bleed", CAR, work, DAY, "--step", "next"), 0, "STEP 2 OF");
    expect(run_cli("bleed", CAR, work, DAY, "--step", "1"), 0, "DONE");
    expect(run_cli("done", CAR, work, DAY), 0, "set-lvel is no step of this plan");
}

/* What an earlier work noted was of an earlier job. */
static void notes_of_an_earlier_work_do_not_count(void **state)
{
    (void)state;
    char before[600];
    snprintf(before, sizeof before, "%s/before.ini", folder);
    put(before, "[work]\ncar = Village van\ndate = 2025-03-01\nrenewed = clutch slave\n"
                "[done]\nset-level = 2025-03-01\n");
    put(work, HEAD);
    struct run run = run_cli("done", CAR, work, "--work", before, DAY);
    assert_int_equal(run.status, 0);
    assert_non_null(strstr(run.out, "0 of "));
    run_finish(&run);
    unlink(before);
}

static void a_note_without_its_day_is_a_mistake_where_it_stands(void **state)
{
    (void)state;
    put(work, HEAD "[done]\nset-level = yes\n");
    expect(run_cli("done", CAR, work, DAY), 3, "[not-a-date]");
    put(work, HEAD "[done]\nset-level = 2026-11-24\nset level = 2026-11-24\n"
                   "set-level = 2026-11-25\n");
    expect(run_cli("done", CAR, work, DAY), 3, "[duplicate-key]");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_step_is_noted_behind_the_last_and_the_rest_stays),
        cmocka_unit_test(
            without_a_section_it_makes_one_at_the_end_with_the_ends_of_lines_there_are),
        cmocka_unit_test(what_is_noted_already_is_not_noted_twice),
        cmocka_unit_test(without_steps_it_says_what_comes_next_and_writes_nothing),
        cmocka_unit_test(a_step_that_others_should_come_before_is_noted_and_told),
        cmocka_unit_test(nothing_is_written_where_something_is_wrong),
        cmocka_unit_test(a_folder_that_takes_no_file_leaves_the_work_file_whole),
        cmocka_unit_test(the_plan_goes_on_from_what_is_noted_and_tells_of_strays),
        cmocka_unit_test(notes_of_an_earlier_work_do_not_count),
        cmocka_unit_test(a_note_without_its_day_is_a_mistake_where_it_stands),
    };
    return cmocka_run_group_tests(tests, make_folder, remove_folder);
}
