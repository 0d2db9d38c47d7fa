/* docs/physics.md keeps its promises: every section with a formula says its limits, its source and
 * the tests that check it; those tests exist; every figure points to a section. */
#define _GNU_SOURCE

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "advice/figures.h"
#include "support/cmocka_all.h"
#include "support/run_cli.h"

static char *page;
static int wrong;

static void complain(const char *section, const char *what)
{
    fprintf(stderr, "docs/physics.md, %s: %s\n", section, what);
    wrong++;
}

/* Names of test files in a "Checked by" passage: those with a folder as they are, others in the
 * folder of the one before. */
static int check_tests(const char *section, const char *passage)
{
    char folder[256] = "";
    int named = 0;
    for (const char *at = passage; *at != '\0';) {
        size_t length = strcspn(at, " ,;\n");
        char word[256];
        snprintf(word, sizeof word, "%.*s", (int)length, at);
        at += length + strspn(at + length, " ,;\n");
        size_t size = strlen(word);
        if (size > 0 && word[size - 1] == '.')
            word[--size] = '\0';
        if (size < 3 || strcmp(word + size - 2, ".c") != 0)
            continue;
        char below[512];
        char *slash = strrchr(word, '/');
        if (slash != NULL)
            snprintf(folder, sizeof folder, "%.*s", (int)(slash - word + 1), word);
        snprintf(below, sizeof below, "%s%s", slash != NULL ? "" : folder, word);
        char *path = source_path(below);
        if (access(path, R_OK) != 0)
            complain(section, below);
        free(path);
        named++;
    }
    return named;
}

static void check_section(const char *title, char *body)
{
    static const char *const needed[] = {"\nLimits: ", "\nSource: ", "\nChecked by: "};
    bool formula = strstr(body, "\n    ") != NULL;
    for (int i = 0; i < 3; i++)
        if (formula && strstr(body, needed[i]) == NULL)
            complain(title, needed[i] + 1);
    const char *tests = strstr(body, needed[2]);
    if (tests != NULL && check_tests(title, tests + strlen(needed[2])) == 0)
        complain(title, "names no test");
}

static void every_formula_has_limits_source_and_tests(void **state)
{
    (void)state;
    wrong = 0;
    int sections = 0;
    char *text = strdup(page);
    for (char *at = strstr(text, "\n## "); at != NULL;) {
        char *next = strstr(at + 1, "\n## ");
        if (next != NULL)
            *next = '\0';
        char title[128];
        snprintf(title, sizeof title, "%.*s", (int)strcspn(at + 4, "\n"), at + 4);
        check_section(title, at + 4);
        sections++;
        at = next;
        if (at != NULL)
            *at = '\n';
    }
    free(text);
    assert_true(sections > 20);
    assert_int_equal(wrong, 0);
}

/* As a page's links are made of its headings. */
static bool has_heading(const char *anchor)
{
    for (const char *at = strstr(page, "\n#"); at != NULL; at = strstr(at + 1, "\n#")) {
        const char *title = at + 1 + strspn(at + 1, "# ");
        size_t length = strcspn(title, "\n"), i = 0;
        if (length != strlen(anchor))
            continue;
        while (i < length &&
               (title[i] == ' ' ? '-' : tolower((unsigned char)title[i])) == anchor[i])
            i++;
        if (i == length)
            return true;
    }
    return false;
}

static void every_figure_points_to_a_section(void **state)
{
    (void)state;
    size_t count;
    const struct figure_row *rows = figure_rows(&count);
    assert_true(count > 30);
    wrong = 0;
    for (size_t i = 0; i < count; i++)
        if (!has_heading(rows[i].anchor))
            complain(rows[i].id, "its anchor has no heading");
    assert_int_equal(wrong, 0);
}

static void every_link_in_the_page_leads_somewhere(void **state)
{
    (void)state;
    wrong = 0;
    int links = 0;
    for (const char *at = strstr(page, "](#"); at != NULL; at = strstr(at + 1, "](#")) {
        char anchor[128];
        snprintf(anchor, sizeof anchor, "%.*s", (int)strcspn(at + 3, ")"), at + 3);
        if (!has_heading(anchor))
            complain(anchor, "is linked and has no heading");
        links++;
    }
    assert_true(links > 20);
    assert_int_equal(wrong, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_formula_has_limits_source_and_tests),
        cmocka_unit_test(every_figure_points_to_a_section),
        cmocka_unit_test(every_link_in_the_page_leads_somewhere),
    };
    char *path = source_path("docs/physics.md");
    size_t size = 0;
    page = read_whole(path, &size);
    free(path);
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    free(page);
    return failed;
}
