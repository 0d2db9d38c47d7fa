#include "support/run_cli.h"

#include <signal.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"

static void both_streams_and_the_status_are_caught(void **state)
{
    (void)state;
    const char *const words[] = {"sh", "-c", "echo out; echo err >&2; exit 3", NULL};
    struct run run = run_program(NULL, words, NULL, 20);
    assert_string_equal(run.out, "out\n");
    assert_string_equal(run.err, "err\n");
    assert_int_equal(run.out_size, 4);
    assert_int_equal(run.status, 3);
    assert_int_equal(run.signal, 0);
    assert_false(run.timed_out);
    run_finish(&run);
}

static void more_than_a_pipe_holds_is_caught(void **state)
{
    (void)state;
    const char *const words[] = {"head", "-c", "1000000", "/dev/zero", NULL};
    struct run run = run_program(NULL, words, NULL, 20);
    assert_int_equal(run.out_size, 1000000);
    run_finish(&run);
}

static void input_is_handed_over(void **state)
{
    (void)state;
    const char *const words[] = {"cat", NULL};
    struct run run = run_program("/", words, "a\nb\n", 20);
    assert_string_equal(run.out, "a\nb\n");
    run_finish(&run);
}

static void a_program_that_hangs_is_ended(void **state)
{
    (void)state;
    const char *const words[] = {"sleep", "30", NULL};
    struct run run = run_program(NULL, words, NULL, 1);
    assert_true(run.timed_out);
    assert_int_equal(run.signal, SIGKILL);
    assert_int_equal(run.status, -1);
    run_finish(&run);
}

static void a_program_that_is_not_there_gives_127(void **state)
{
    (void)state;
    const char *const words[] = {"/nowhere/at/all", NULL};
    struct run run = run_program(NULL, words, NULL, 20);
    assert_int_equal(run.status, 127);
    run_finish(&run);
}

static void a_file_of_the_sources_is_found(void **state)
{
    (void)state;
    char *path = source_path("meson.build");
    char *whole = read_whole(path, NULL);
    assert_int_equal(strncmp(whole, "project('firmpedal'", 19), 0);
    free(whole);
    free(path);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(both_streams_and_the_status_are_caught),
        cmocka_unit_test(more_than_a_pipe_holds_is_caught),
        cmocka_unit_test(input_is_handed_over),
        cmocka_unit_test(a_program_that_hangs_is_ended),
        cmocka_unit_test(a_program_that_is_not_there_gives_127),
        cmocka_unit_test(a_file_of_the_sources_is_found),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
