#ifndef FIRMPEDAL_TESTS_SUPPORT_RUN_CLI_H
#define FIRMPEDAL_TESTS_SUPPORT_RUN_CLI_H

#include <stdbool.h>
#include <stddef.h>

/* What a program wrote and how it ended. */
struct run {
    int status;     /* exit status; -1 when it did not exit by itself */
    int signal;     /* the signal that ended it, 0 when none did */
    bool timed_out; /* it took longer than allowed and was ended */
    char *out;      /* stdout, ends with NUL */
    size_t out_size;
    char *err; /* stderr, ends with NUL */
    size_t err_size;
};

/* Runs the built program (FIRMPEDAL in the environment), in the root of the sources (SOURCE_ROOT),
 * with the given arguments and an empty stdin:
 *
 *     struct run run = run_cli("check", "systems/demo_van.ini");
 *     assert_int_equal(run.status, 0);
 *     run_finish(&run);
 *
 * Fails the test when the program cannot be started or is not told. Ends it after 60 seconds. */
#define run_cli(...) run_cli_in(NULL, __VA_ARGS__)
/* The same in another folder. */
#define run_cli_in(folder, ...) run_cli_list((folder), (const char *const[]){__VA_ARGS__, NULL})

/* The same with the arguments as a list that ends with NULL; folder may be NULL. */
struct run run_cli_list(const char *folder, const char *const *arguments);

/* Runs any program: words[0] is its path or its name in PATH. input (may be NULL) is its stdin. */
struct run run_program(const char *folder, const char *const *words, const char *input,
                       int seconds);

void run_finish(struct run *run);

/* Whether words stand in a text, wherever its lines end: blanks and line ends count as one blank.
 */
bool says(const char *text, const char *words);

/* Puts a path together from SOURCE_ROOT and a path below it; the caller frees it. */
char *source_path(const char *below);

/* Reads a whole file, NUL added; the caller frees it. Fails the test when it cannot. */
char *read_whole(const char *path, size_t *size);

#endif
