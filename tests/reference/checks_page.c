/* Makes docs/checks.md from what the tests against outside sources write down.
 *
 *     checks_page --write PAGE PROGRAM...     runs the programs and writes the page
 *     checks_page --compare PAGE PROGRAM...   runs them and fails unless the page is the same
 *
 * Each program is a test: one that fails, or an example that none of them checks, fails here. */
#define _GNU_SOURCE

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <math.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"

enum { FIELDS = 9, MOST_CHECKS = 2000 };
enum field { ID, SOURCE, STATUS, WHAT, UNIT, KIND, THEIRS, OURS, TOLERANCE };

struct check {
    char *field[FIELDS];
};

/* Examples by the letter that their ids begin with, in the order of the page; and how many of the
 * first numbers must be there. */
static const struct subject {
    char letter;
    const char *title;
    const char *ids; /* that must be there */
} subjects[] = {
    {'P', "Foot, lever and piston", "P1 P2 P3 P4 P5 P6"},
    {'D', "Drum brakes", "D1 D3 D4 D5 D6 D7"},
    {'C', "Disc brakes", "C1 C3"},
    {'B', "Fluid under pressure", "B1 B2 B3 B4 B5 B6 B7"},
    {'G', "Air", "G1 G2 G3"},
    {'E', "Walls of pipes", "E1 E2 E3 E4"},
    {'H', "Hoses", "H1 H2"},
    {'N', "Viscosity and boiling", "N1 N2"},
    {'F', "Flow in pipes", "F1 F2 F3 F4 F5"},
    {'A', "Bubbles", "A1 A2 A3 A4"},
    {'V', "The car", "V2 V3 V4 V5 V6"},
    {'T', "Heat", "T1 T2"},
    {'K', "Clutch", "K1"},
    {'X', "Worked through by hand", "X1 X3 X4 X6 X7"},
    {'U', "Tubes and threads", "U1 U2"},
    {'L', "General libraries", "L1 L2 L3 L4 L5 L6 L7 L8 L9"},
};
enum { SUBJECTS = sizeof subjects / sizeof subjects[0] };

static const char head[] =
    "# What has been checked against something outside\n\n"
    "This page is made by the tests from what they compare. Do not edit it: run\n"
    "`meson compile -C build checks-page`; a test compares it with a fresh run.\n\n"
    "*Printed* is what the source prints; it may be missed by half of its last digit (where more "
    "is\n"
    "allowed, the test says why). *Again* is the same sum done again elsewhere, by hand or in\n"
    "another program, with more digits. Titles, pages and the meaning of the words behind each\n"
    "source: `tests/reference/SOURCES.md`. *Off by* is ours less theirs; 0 stands for less than a\n"
    "thousandth of a millionth of it.\n";

static int by_id(const void *a, const void *b)
{
    const struct check *const *left = a, *const *right = b;
    int order = strverscmp((*left)->field[ID], (*right)->field[ID]);
    if (order == 0)
        order = strcmp((*left)->field[SOURCE], (*right)->field[SOURCE]);
    if (order == 0)
        order = *left < *right ? -1 : *left > *right; /* as the tests wrote them */
    return order;
}

static void run_programs(char *const *programs, const char *checks)
{
    setenv("OUTSIDE_CHECKS", checks, 1);
    for (int i = 0; programs[i] != NULL; i++) {
        const char *words[] = {programs[i], NULL};
        struct run run = run_program(NULL, words, NULL, 300);
        if (run.status != 0)
            fprintf(stderr, "%s failed:\n%s\n", programs[i], run.err);
        assert_int_equal(run.status, 0);
        run_finish(&run);
    }
    unsetenv("OUTSIDE_CHECKS");
}

/* Splits the lines where they stand. */
static size_t read_checks(char *text, struct check *checks)
{
    size_t count = 0;
    for (char *line = strtok(text, "\n"); line != NULL; line = strtok(NULL, "\n")) {
        assert_true(count < MOST_CHECKS);
        for (int i = 0; i < FIELDS; i++) {
            assert_non_null(line);
            checks[count].field[i] = line;
            line = strchr(line, '\t');
            if (line != NULL)
                *line++ = '\0';
        }
        assert_null(line);
        count++;
    }
    return count;
}

static void write_row(FILE *page, const struct check *check)
{
    double theirs = strtod(check->field[THEIRS], NULL), ours = strtod(check->field[OURS], NULL);
    double off = ours - theirs, within = strtod(check->field[TOLERANCE], NULL);
    fprintf(page, "| %s | %s | %.9g | %.9g | ", check->field[WHAT], check->field[KIND], theirs,
            ours);
    if (fabs(off) <= 1e-9 * fabs(theirs))
        fprintf(page, "0");
    else
        fprintf(page, "%+.2g", off);
    fprintf(page, " | %.2g | %s |\n", within, check->field[UNIT]);
}

static void write_subject(FILE *page, const struct subject *subject, struct check *const *sorted,
                          size_t count)
{
    const char *id = "", *source = "";
    bool begun = false;
    for (size_t i = 0; i < count; i++) {
        if (sorted[i]->field[ID][0] != subject->letter)
            continue;
        if (!begun)
            fprintf(page, "\n## %s\n", subject->title);
        begun = true;
        if (strcmp(id, sorted[i]->field[ID]) != 0 ||
            strcmp(source, sorted[i]->field[SOURCE]) != 0) {
            id = sorted[i]->field[ID];
            source = sorted[i]->field[SOURCE];
            fprintf(page, "\n%s: %s (%s)\n\n", id, source, sorted[i]->field[STATUS]);
            fputs("| what | | theirs | ours | off by | within | unit |\n"
                  "| --- | --- | --- | --- | --- | --- | --- |\n",
                  page);
        }
        write_row(page, sorted[i]);
    }
}

static void every_example_is_there(const struct check *checks, size_t count)
{
    int missing = 0;
    for (int i = 0; i < SUBJECTS; i++) {
        char ids[128], *rest = ids;
        snprintf(ids, sizeof ids, "%s", subjects[i].ids);
        for (char *id; (id = strtok_r(rest, " ", &rest)) != NULL;) {
            size_t at = 0;
            while (at < count && strcmp(checks[at].field[ID], id) != 0)
                at++;
            if (at == count) {
                fprintf(stderr, "no test checks example %s\n", id);
                missing++;
            }
        }
    }
    for (size_t i = 0; i < count; i++) {
        int subject = 0;
        while (subject < SUBJECTS && subjects[subject].letter != checks[i].field[ID][0])
            subject++;
        if (subject == SUBJECTS) {
            fprintf(stderr, "example %s belongs to no subject of the page\n", checks[i].field[ID]);
            missing++;
        }
    }
    assert_int_equal(missing, 0);
}

/* How many stand on what. */
static void write_count(FILE *page, const struct check *checks, size_t count)
{
    size_t printed = 0, from_memory = 0;
    for (size_t i = 0; i < count; i++) {
        printed += strcmp(checks[i].field[KIND], "printed") == 0;
        from_memory += strstr(checks[i].field[STATUS], "from memory") != NULL;
    }
    fprintf(page,
            "\n%zu comparisons: %zu with a printed figure, %zu with one done again. Of all of them "
            "%zu\nrest, wholly or in part, on a source that was known from memory and not read.\n",
            count, printed, count - printed, from_memory);
}

/* The page as text, to be freed. */
static char *make_page(char *const *programs)
{
    char path[] = "/tmp/firmpedal-checks-XXXXXX";
    int file = mkstemp(path);
    assert_true(file >= 0);
    close(file);
    run_programs(programs, path);
    size_t size = 0;
    char *text = read_whole(path, &size);
    unlink(path);
    struct check *checks = calloc(MOST_CHECKS, sizeof *checks);
    struct check **sorted = calloc(MOST_CHECKS, sizeof *sorted);
    assert_true(checks != NULL && sorted != NULL);
    size_t count = read_checks(text, checks);
    every_example_is_there(checks, count);
    for (size_t i = 0; i < count; i++)
        sorted[i] = &checks[i];
    qsort(sorted, count, sizeof *sorted, by_id);
    char *page_text = NULL;
    FILE *page = open_memstream(&page_text, &size);
    assert_non_null(page);
    fputs(head, page);
    write_count(page, checks, count);
    for (int i = 0; i < SUBJECTS; i++)
        write_subject(page, &subjects[i], sorted, count);
    assert_int_equal(fclose(page), 0);
    free(sorted);
    free(checks);
    free(text);
    return page_text;
}

static char **arguments;

static void the_page_of_outside_checks_is_in_step(void **state)
{
    (void)state;
    char *fresh = make_page(arguments + 3);
    size_t size = 0;
    char *kept = read_whole(arguments[2], &size);
    bool same = strcmp(kept, fresh) == 0;
    if (!same) {
        size_t at = 0, line = 1;
        for (; kept[at] != '\0' && kept[at] == fresh[at]; at++)
            line += kept[at] == '\n';
        fprintf(stderr, "%s is not what the tests write from line %zu on\n", arguments[2], line);
    }
    free(kept);
    free(fresh);
    assert_true(same);
}

static void the_page_is_written(void **state)
{
    (void)state;
    char *fresh = make_page(arguments + 3);
    FILE *file = fopen(arguments[2], "w");
    assert_non_null(file);
    assert_true(fputs(fresh, file) >= 0);
    assert_int_equal(fclose(file), 0);
    free(fresh);
}

int main(int count, char **words)
{
    const struct CMUnitTest compare[] = {cmocka_unit_test(the_page_of_outside_checks_is_in_step)};
    const struct CMUnitTest write[] = {cmocka_unit_test(the_page_is_written)};
    arguments = words;
    if (count > 3 && strcmp(words[1], "--write") == 0)
        return cmocka_run_group_tests(write, NULL, NULL);
    if (count > 3 && strcmp(words[1], "--compare") == 0)
        return cmocka_run_group_tests(compare, NULL, NULL);
    fputs("checks_page --write|--compare PAGE PROGRAM...\n", stderr);
    return 2;
}
