#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include "base/save.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"

/* Every test works in a new folder, which is its working folder. */
static int start(void **state)
{
    char *folder = strdup("/tmp/firmpedal-save-XXXXXX");
    *state = folder;
    return folder && mkdtemp(folder) && chdir(folder) == 0 ? 0 : -1;
}

static int finish(void **state)
{
    const char *const words[] = {"rm", "-r", *state, NULL};
    struct run run = run_program("/", words, NULL, 20);
    int status = run.status;
    run_finish(&run);
    free(*state);
    return chdir("/") == 0 ? status : -1;
}

static void put(const char *path, const char *words)
{
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs(words, file);
    assert_int_equal(fclose(file), 0);
}

static void assert_holds(const char *path, const char *words)
{
    char *whole = read_whole(path, NULL);
    assert_string_equal(whole, words);
    free(whole);
}

static size_t files_in(const char *path)
{
    DIR *folder = opendir(path);
    assert_non_null(folder);
    size_t count = 0;
    while (readdir(folder))
        count++;
    closedir(folder);
    return count - 2;
}

static enum save_outcome save(const char *path, const char *words, bool replace)
{
    const char *what;
    struct save_rules rules = {.replace = replace, .kinds = ~0u, .what = &what};
    return save_file(path, words, strlen(words), &rules);
}

static mode_t mode_of(const char *path)
{
    struct stat found;
    assert_int_equal(stat(path, &found), 0);
    return found.st_mode & 07777;
}

static void a_new_file_has_its_bytes_and_the_mode_of_any_new_file(void **state)
{
    (void)state;
    mode_t before = umask(027);
    assert_int_equal(save("new", "words", false), SAVE_DONE);
    umask(before);
    assert_holds("new", "words");
    assert_int_equal(mode_of("new"), 0640);
    assert_int_equal(files_in("."), 1);
}

static void a_file_that_is_there_is_kept_unless_asked(void **state)
{
    (void)state;
    put("there", "old");
    assert_int_equal(save("there", "new", false), SAVE_EXISTS);
    assert_holds("there", "old");
    assert_int_equal(save("there", "new", true), SAVE_DONE);
    assert_holds("there", "new");
    assert_int_equal(files_in("."), 1);
}

/* An input may be written back while it holds what was read from it. */
static void a_file_that_was_read_is_written_back_only_while_it_is_the_same(void **state)
{
    (void)state;
    put("work", "old");
    const char *inputs[] = {"work"};
    struct save_rules rules = {
        .inputs = inputs, .input_count = 1, .replace = true, .was = "old", .was_count = 3};
    assert_int_equal(save_file("work", "new", 3, &rules), SAVE_DONE);
    assert_holds("work", "new");
    assert_int_equal(save_file("work", "newer", 5, &rules), SAVE_CHANGED);
    rules.was = "newest";
    rules.was_count = 6;
    assert_int_equal(save_file("work", "newer", 5, &rules), SAVE_CHANGED);
    rules.was_count = 2;
    assert_int_equal(save_file("work", "newer", 5, &rules), SAVE_CHANGED);
    assert_holds("work", "new");
    assert_int_equal(save_file("none", "new", 3, &rules), SAVE_CHANGED);
    assert_int_equal(files_in("."), 1);
}

static void the_mode_of_the_old_file_is_kept(void **state)
{
    (void)state;
    put("there", "old");
    assert_int_equal(chmod("there", 0604), 0);
    assert_int_equal(save("there", "new", true), SAVE_DONE);
    assert_int_equal(mode_of("there"), 0604);
}

static void an_input_is_never_replaced_by_whatever_name(void **state)
{
    (void)state;
    put("car.ini", "description");
    assert_int_equal(symlink("car.ini", "soft"), 0);
    assert_int_equal(link("car.ini", "hard"), 0);
    const char *const inputs[] = {"missing.ini", "car.ini"};
    const char *what;
    struct save_rules rules = {
        .inputs = inputs, .input_count = 2, .replace = true, .kinds = ~0u, .what = &what};
    const char *const names[] = {"car.ini", "./car.ini", "soft", "hard"};
    for (size_t i = 0; i < 4; i++)
        assert_int_equal(save_file(names[i], "x", 1, &rules), SAVE_IS_AN_INPUT);
    assert_holds("car.ini", "description");
    assert_int_equal(files_in("."), 3);
}

static void a_link_is_followed_and_kept(void **state)
{
    (void)state;
    assert_int_equal(mkdir("below", 0777), 0);
    put("below/real", "old");
    assert_int_equal(symlink("real", "below/second"), 0);
    assert_int_equal(symlink("below/second", "first"), 0);
    assert_int_equal(save("first", "new", true), SAVE_DONE);
    assert_holds("below/real", "new");
    struct stat found;
    assert_int_equal(lstat("first", &found), 0);
    assert_true(S_ISLNK(found.st_mode));
    assert_int_equal(lstat("below/second", &found), 0);
    assert_true(S_ISLNK(found.st_mode));
    assert_int_equal(files_in("below"), 2);
}

static void a_link_to_nothing_makes_the_file_it_names(void **state)
{
    (void)state;
    char absolute[PATH_MAX];
    snprintf(absolute, sizeof absolute, "%s/made", (const char *)*state);
    assert_int_equal(symlink(absolute, "link"), 0);
    assert_int_equal(save("link", "new", false), SAVE_DONE);
    assert_holds("made", "new");
    assert_int_equal(files_in("."), 2);
}

static void links_in_a_circle_fail(void **state)
{
    (void)state;
    assert_int_equal(symlink("b", "a"), 0);
    assert_int_equal(symlink("a", "b"), 0);
    assert_int_equal(save("a", "new", true), SAVE_FAILED);
    assert_int_equal(errno, ELOOP);
}

static void a_folder_or_a_device_is_no_target(void **state)
{
    (void)state;
    assert_int_equal(mkdir("folder", 0777), 0);
    assert_int_equal(save("folder", "x", true), SAVE_FAILED);
    assert_int_equal(errno, EISDIR);
    assert_int_equal(mkfifo("pipe", 0666), 0);
    assert_int_equal(save("pipe", "x", true), SAVE_FAILED);
    struct stat found;
    assert_int_equal(stat("pipe", &found), 0);
    assert_true(S_ISFIFO(found.st_mode));
}

static void a_missing_folder_fails_and_says_why(void **state)
{
    (void)state;
    assert_int_equal(save("nowhere/file", "x", true), SAVE_FAILED);
    assert_int_equal(errno, ENOENT);
    assert_int_equal(save("", "x", true), SAVE_FAILED);
    assert_int_equal(files_in("."), 0);
}

static void a_path_that_is_too_long_fails(void **state)
{
    (void)state;
    static char path[3 * PATH_MAX];
    memset(path, 'a', sizeof path - 1);
    assert_int_equal(save(path, "x", true), SAVE_FAILED);
    assert_int_equal(errno, ENAMETOOLONG);
    assert_int_equal(files_in("."), 0);
}

/* A child that may write no file over 4 bytes stands for a full disk. */
static void a_disk_that_is_full_leaves_the_old_file_and_no_other(void **state)
{
    (void)state;
    put("there", "old");
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        signal(SIGXFSZ, SIG_IGN);
        setrlimit(RLIMIT_FSIZE, &(struct rlimit){4, 4});
        _exit(save("there", "longer than that", true) == SAVE_FAILED && errno == EFBIG ? 0 : 1);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_int_equal(status, 0);
    assert_holds("there", "old");
    assert_int_equal(files_in("."), 1);
}

static void no_bytes_at_all_make_an_empty_file(void **state)
{
    (void)state;
    const char *what;
    struct save_rules rules = {.replace = true, .kinds = ~0u, .what = &what};
    assert_int_equal(save_file("empty", NULL, 0, &rules), SAVE_DONE);
    assert_holds("empty", "");
}

static void closed_streams_are_taken_by_dev_null_and_go_on_failing(void **state)
{
    (void)state;
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        close(STDIN_FILENO);
        close(STDERR_FILENO);
        save_secure_streams();
        int next = open("/dev/null", O_RDONLY);
        struct stat null;
        struct stat second;
        char byte = 'x';
        bool fine = stat("/dev/null", &null) == 0 && fstat(STDERR_FILENO, &second) == 0 &&
                    null.st_rdev == second.st_rdev && fcntl(STDIN_FILENO, F_GETFD) >= 0 &&
                    next > STDERR_FILENO && read(STDIN_FILENO, &byte, 1) == 0 &&
                    write(STDERR_FILENO, &byte, 1) < 0;
        _exit(fine ? 0 : 1);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_int_equal(status, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_new_file_has_its_bytes_and_the_mode_of_any_new_file,
                                        start, finish),
        cmocka_unit_test_setup_teardown(a_file_that_is_there_is_kept_unless_asked, start, finish),
        cmocka_unit_test_setup_teardown(
            a_file_that_was_read_is_written_back_only_while_it_is_the_same, start, finish),
        cmocka_unit_test_setup_teardown(the_mode_of_the_old_file_is_kept, start, finish),
        cmocka_unit_test_setup_teardown(an_input_is_never_replaced_by_whatever_name, start, finish),
        cmocka_unit_test_setup_teardown(a_link_is_followed_and_kept, start, finish),
        cmocka_unit_test_setup_teardown(a_link_to_nothing_makes_the_file_it_names, start, finish),
        cmocka_unit_test_setup_teardown(links_in_a_circle_fail, start, finish),
        cmocka_unit_test_setup_teardown(a_folder_or_a_device_is_no_target, start, finish),
        cmocka_unit_test_setup_teardown(a_missing_folder_fails_and_says_why, start, finish),
        cmocka_unit_test_setup_teardown(a_path_that_is_too_long_fails, start, finish),
        cmocka_unit_test_setup_teardown(a_disk_that_is_full_leaves_the_old_file_and_no_other, start,
                                        finish),
        cmocka_unit_test_setup_teardown(no_bytes_at_all_make_an_empty_file, start, finish),
        cmocka_unit_test_setup_teardown(closed_streams_are_taken_by_dev_null_and_go_on_failing,
                                        start, finish),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
