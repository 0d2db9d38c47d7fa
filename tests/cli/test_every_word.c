/* Every command, option and page that the program names is asked for by some test: a new one
 * without a test fails here. */
#define _GNU_SOURCE

#include <ctype.h>
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"

/* All sources of a folder one behind the other, without this one; to be freed. */
static char *sources_of(const char *folder)
{
    char *path = source_path(folder), *all = NULL;
    size_t size = 0;
    DIR *entries = opendir(path);
    FILE *into = open_memstream(&all, &size);
    assert_true(entries != NULL && into != NULL);
    for (struct dirent *entry = readdir(entries); entry != NULL; entry = readdir(entries)) {
        size_t length = strlen(entry->d_name);
        if (length < 3 || strcmp(entry->d_name + length - 2, ".c") != 0 ||
            strcmp(entry->d_name, "test_every_word.c") == 0)
            continue;
        char file[4096];
        snprintf(file, sizeof file, "%s/%s", path, entry->d_name);
        char *text = read_whole(file, NULL);
        fputs(text, into);
        free(text);
    }
    closedir(entries);
    assert_int_equal(fclose(into), 0);
    free(path);
    return all;
}

static bool is_quoted(const char *sources, const char *word, int length)
{
    char quoted[128];
    snprintf(quoted, sizeof quoted, "\"%.*s\"", length, word);
    return strstr(sources, quoted) != NULL;
}

/* A command stands two blanks in, before blanks and what it takes; what it does farther in. */
static void every_command_is_run_by_a_test(void **state)
{
    char *sources = *state;
    struct run run = run_cli("--help");
    int commands = 0, untried = 0;
    char *start = strstr(run.out, "\nCommands"), *end = strstr(run.out, "\nEvery answer");
    assert_true(start != NULL && end != NULL);
    *end = '\0';
    for (char *line = strtok(start, "\n"); line != NULL; line = strtok(NULL, "\n")) {
        if (strncmp(line, "  ", 2) != 0 || !islower((unsigned char)line[2]))
            continue;
        int length = (int)strcspn(line + 2, " ");
        commands++;
        if (!is_quoted(sources, line + 2, length))
            print_message("no test of tests/cli runs %.*s\n", length, line + 2);
        untried += !is_quoted(sources, line + 2, length);
    }
    assert_int_equal(untried, 0);
    assert_true(commands > 10);
    run_finish(&run);
}

/* An option stands behind its letter: "  -p, --paper". How many of a command no test gives. */
static int untried_options(const char *sources, const char *command, int *options)
{
    struct run run = run_cli("help", command);
    int untried = 0;
    for (char *at = strstr(run.out, ", --"); at != NULL; at = strstr(at + 1, ", --")) {
        int length = (int)strspn(at + 2, "abcdefghijklmnopqrstuvwxyz-");
        bool given = is_quoted(sources, at + 2, length) || is_quoted(sources, at - 2, 2);
        ++*options;
        if (!given)
            print_message("no test of tests/cli gives %.*s\n", length, at + 2);
        untried += !given;
    }
    run_finish(&run);
    return untried;
}

static void every_option_is_given_by_a_test(void **state)
{
    static const char *const commands[] = {"check", "bleed", "open",  "done",  "hoses", "soft",
                                           "fit",   "curve", "trace", "sheet", "show",  "diagram"};
    int options = 0, untried = 0;
    for (size_t i = 0; i < sizeof commands / sizeof *commands; i++)
        untried += untried_options(*state, commands[i], &options);
    assert_int_equal(untried, 0);
    assert_true(options > 50);
}

/* What there is of pages is said after a colon: "input and findings". */
static void every_page_is_compared_by_a_test(void **state)
{
    (void)state;
    char *sources = sources_of("tests/architecture");
    struct run run = run_cli("page", "no-such-page");
    char *names = strrchr(run.out_size > 0 ? run.out : run.err, ':');
    assert_non_null(names);
    int pages = 0;
    for (char *word = strtok(names + 1, " ,.\n"); word != NULL; word = strtok(NULL, " ,.\n")) {
        if (strcmp(word, "and") == 0)
            continue;
        pages++;
        if (!is_quoted(sources, word, (int)strlen(word)))
            fail_msg("no test of tests/architecture compares the page %s", word);
    }
    assert_true(pages >= 2);
    run_finish(&run);
    free(sources);
}

static int read_sources(void **state)
{
    *state = sources_of("tests/cli");
    return 0;
}

static int free_sources(void **state)
{
    free(*state);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_command_is_run_by_a_test),
        cmocka_unit_test(every_option_is_given_by_a_test),
        cmocka_unit_test(every_page_is_compared_by_a_test),
    };
    return cmocka_run_group_tests(tests, read_sources, free_sources);
}
