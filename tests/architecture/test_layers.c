/* Who may include whom, held as a table. */
#include <dirent.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"

/* Folders in the order of their levels; a file may include its own folder and the named ones. */
static const struct {
    const char *folder;
    const char *may_include;
} layers[] = {
    {"base", "base"},
    {"units", "base units"},
    {"parts", "base units parts"},
    {"network", "base units parts network"},
    {"physics", "base units parts network physics"},
    {"advice", "base units parts network physics advice"},
    {"input", "base units parts network input"},
    {"report", "base units parts network physics advice report"},
    {"cli", "cli"},
};

/* Headers of libraries, and the only files that may include them (by beginning of the path). */
static const struct {
    const char *header;
    const char *only_in;
} libraries[] = {
    {"ini.h", "input/lines.c"}, {"jansson.h", "report/json"},   {"cairo", "report/paint"},
    {"pango", "report/paint"},  {"fontconfig", "report/paint"},
};

static int violations;

static bool word_in(const char *words, const char *word, size_t length)
{
    for (const char *at = words; (at = strstr(at, word)) != NULL; at++) {
        bool starts = at == words || at[-1] == ' ';
        if (starts && (at[length] == ' ' || at[length] == '\0'))
            return true;
    }
    return false;
}

static void complain(const char *file, int line, const char *what)
{
    fprintf(stderr, "src/%s:%d: %s\n", file, line, what);
    violations++;
}

static void check_library(const char *file, int line, const char *header)
{
    for (size_t i = 0; i < sizeof libraries / sizeof libraries[0]; i++)
        if (strncmp(header, libraries[i].header, strlen(libraries[i].header)) == 0 &&
            strncmp(file, libraries[i].only_in, strlen(libraries[i].only_in)) != 0)
            complain(file, line, "includes a library that belongs elsewhere");
}

static void check_own(const char *folder, const char *allowed, const char *file, int line,
                      const char *included)
{
    const char *slash = strchr(included, '/');
    char head[64];
    if (slash == NULL) {
        if (strcmp(folder, "cli") != 0 || strncmp(included, "firmpedal.h", 11) != 0)
            complain(file, line, "includes a header without its folder");
        return;
    }
    snprintf(head, sizeof head, "%.*s", (int)(slash - included), included);
    if (!word_in(allowed, head, strlen(head)))
        complain(file, line, "includes a folder that its level may not");
}

static void check_file(const char *root, const char *folder, const char *allowed, const char *name)
{
    char path[1024], file[512], line[1024];
    snprintf(file, sizeof file, "%s/%s", folder, name);
    snprintf(path, sizeof path, "%s/src/%s", root, file);
    FILE *in = fopen(path, "r");
    assert_non_null(in);
    for (int number = 1; fgets(line, sizeof line, in) != NULL; number++) {
        char included[256];
        if (sscanf(line, "#include <%255[^>]>", included) == 1)
            check_library(file, number, included);
        else if (sscanf(line, "#include \"%255[^\"]\"", included) == 1) {
            check_own(folder, allowed, file, number, included);
            check_library(file, number, included);
        }
    }
    fclose(in);
}

static void every_file_includes_only_its_level_or_lower(void **state)
{
    (void)state;
    const char *root = getenv("SOURCE_ROOT");
    assert_non_null(root);
    int files = 0;
    violations = 0;
    for (size_t i = 0; i < sizeof layers / sizeof layers[0]; i++) {
        char path[1024];
        snprintf(path, sizeof path, "%s/src/%s", root, layers[i].folder);
        DIR *folder = opendir(path);
        assert_non_null(folder);
        for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
            size_t length = strlen(entry->d_name);
            if (length < 3 || (strcmp(entry->d_name + length - 2, ".c") != 0 &&
                               strcmp(entry->d_name + length - 2, ".h") != 0))
                continue;
            check_file(root, layers[i].folder, layers[i].may_include, entry->d_name);
            files++;
        }
        closedir(folder);
    }
    assert_true(files > 60);
    assert_int_equal(violations, 0);
}

static void no_folder_stands_outside_the_table(void **state)
{
    (void)state;
    char path[1024];
    snprintf(path, sizeof path, "%s/src", getenv("SOURCE_ROOT"));
    DIR *folder = opendir(path);
    assert_non_null(folder);
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
        if (entry->d_name[0] == '.' || strchr(entry->d_name, '.') != NULL)
            continue;
        bool known = false;
        for (size_t i = 0; i < sizeof layers / sizeof layers[0]; i++)
            known = known || strcmp(layers[i].folder, entry->d_name) == 0;
        if (!known)
            fprintf(stderr, "src/%s is in no layer\n", entry->d_name);
        assert_true(known);
    }
    closedir(folder);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_file_includes_only_its_level_or_lower),
        cmocka_unit_test(no_folder_stands_outside_the_table),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
