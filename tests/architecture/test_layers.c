/* Who may include whom, held as a table; no folder too full, no circle of files. */
#include <dirent.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"
#include "support/source_tree.h"

/* The rooms in the order of their levels; a file may include its own room and the named ones. */
static const struct {
    const char *room;
    const char *may_include;
} rooms[] = {
    {"base", ""},
    {"units", "base"},
    {"parts", "base units parts/keys"},
    {"parts/keys", "base units parts"},
    {"network", "base units parts parts/keys"},
    {"physics", "base units parts network"},
    {"purge", "base units parts network"},
    {"advice/common", "base units parts network"},
    {"advice/figures", "base units parts parts/keys network physics advice/common"},
    {"advice/rules", "base units parts network physics advice/common advice/figures"},
    {"advice/checks",
     "base units parts parts/keys network physics advice/common advice/figures advice/rules"},
    {"advice/bleeding",
     "base units parts network physics purge advice/common advice/figures advice/checks"},
    {"advice/job", "base units parts network physics advice/common advice/figures advice/checks "
                   "advice/bleeding"},
    {"advice/fitting",
     "base units parts network physics advice/common advice/figures advice/rules advice/checks"},
    {"advice/choice", "base units parts parts/keys network physics advice/common advice/figures"},
    {"advice",
     "base units parts network physics advice/common advice/figures advice/rules advice/checks "
     "advice/bleeding advice/job advice/fitting advice/choice"},
    {"input", "base units parts parts/keys network"},
    {"report/words",
     "base units parts network advice advice/common advice/figures advice/bleeding"},
    {"report/document", "base units"},
    {"report/answers",
     "base units parts network advice advice/figures report/words report/document"},
    {"report/text", "base units parts network advice report/words report/document"},
    {"report/json", "base units parts network advice advice/figures report/words"},
    {"report/paint", "base units"},
    {"report/diagram", "base units parts network physics advice report/words report/paint"},
    {"report/chart",
     "base units parts network advice advice/common advice/figures report/words report/paint "
     "report/diagram"},
    {"report/sides", "base units report/document report/paint"},
    {"report/sheet",
     "base units parts network advice advice/figures report/words report/document report/answers "
     "report/sides report/paint report/chart report/diagram"},
    {"starters", "base parts parts/keys"},
    {"manual", "base units parts parts/keys network input starters advice report/words"},
    {"asking", "base units parts parts/keys network input starters manual"},
    {"api", " base units network input advice advice/common advice/figures advice/bleeding "
            "starters manual asking report/words "
            "report/document report/answers report/text report/json report/chart report/diagram "
            "report/sheet"},
    {"cli", ""},
};

/* The public header stands alone at the top; these may include it. */
static const char *const public_readers[] = {"api", "cli"};

/* Headers of libraries, and the only files that may include them (by beginning of the path). */
static const struct {
    const char *header;
    const char *only_in;
} libraries[] = {
    {"ini.h", "input/lines.c"},           {"jansson.h", "report/json/"},
    {"cairo", "report/paint/paint"},      {"pango", "report/paint/paint"},
    {"fontconfig", "report/paint/paint"},
};

/* More sources than these in one folder and nobody finds the one that answers a question. */
enum { ROOM_MOST_SOURCES = 25 };

static int violations;

static void complain(const char *file, int line, const char *what)
{
    fprintf(stderr, "src/%s:%d: %s\n", file, line, what);
    violations++;
}

static bool word_in(const char *words, const char *word)
{
    size_t length = strlen(word);
    for (const char *at = words; (at = strstr(at, word)) != NULL; at++) {
        bool starts = at == words || at[-1] == ' ';
        if (starts && (at[length] == ' ' || at[length] == '\0'))
            return true;
    }
    return false;
}

static const char *allowed_of(const char *room)
{
    for (size_t i = 0; i < sizeof rooms / sizeof rooms[0]; i++)
        if (strcmp(rooms[i].room, room) == 0)
            return rooms[i].may_include;
    return NULL;
}

static bool reads_public(const char *room)
{
    for (size_t i = 0; i < sizeof public_readers / sizeof public_readers[0]; i++)
        if (strcmp(public_readers[i], room) == 0)
            return true;
    return false;
}

static void check_library(const char *file, int line, const char *header)
{
    for (size_t i = 0; i < sizeof libraries / sizeof libraries[0]; i++)
        if (strncmp(header, libraries[i].header, strlen(libraries[i].header)) == 0 &&
            strncmp(file, libraries[i].only_in, strlen(libraries[i].only_in)) != 0)
            complain(file, line, "includes a library that belongs elsewhere");
}

static void check_own(const char *file, int line, const char *included)
{
    char own[SOURCE_PATH], other[SOURCE_PATH];
    source_folder(file, own);
    source_folder(included, other);
    if (strcmp(own, other) == 0)
        return;
    if (*other == '\0' ? !reads_public(own) : !word_in(allowed_of(own), other))
        complain(file, line, "includes a folder that its level may not");
}

/* What a line of a source includes of ours; false when it does not. */
static bool included_by(const char *line, char *included)
{
    return sscanf(line, "#include \"%255[^\"]\"", included) == 1;
}

static FILE *open_source(const struct source_tree *tree, size_t at)
{
    char path[2048];
    snprintf(path, sizeof path, "%s/%s", tree->root, tree->paths[at]);
    FILE *in = fopen(path, "r");
    assert_non_null(in);
    return in;
}

static void check_file(const struct source_tree *tree, size_t at)
{
    const char *file = tree->paths[at];
    char line[1024], included[SOURCE_PATH];
    FILE *in = open_source(tree, at);
    for (int number = 1; fgets(line, sizeof line, in) != NULL; number++) {
        if (sscanf(line, "#include <%255[^>]>", included) == 1)
            check_library(file, number, included);
        else if (included_by(line, included)) {
            check_own(file, number, included);
            check_library(file, number, included);
        }
    }
    fclose(in);
}

static void every_file_includes_only_its_level_or_lower(void **state)
{
    (void)state;
    struct source_tree *tree = source_tree_read();
    violations = 0;
    for (size_t i = 0; i < tree->count; i++) {
        char room[SOURCE_PATH];
        source_folder(tree->paths[i], room);
        if (*room == '\0')
            continue;
        if (allowed_of(room) == NULL)
            complain(tree->paths[i], 1, "stands in a folder that is in no layer");
        else
            check_file(tree, i);
    }
    assert_true(tree->count > 300);
    free(tree);
    assert_int_equal(violations, 0);
}

static void the_public_header_stands_alone_at_the_top(void **state)
{
    (void)state;
    struct source_tree *tree = source_tree_read();
    for (size_t i = 0; i < tree->count; i++)
        if (strchr(tree->paths[i], '/') == NULL)
            assert_string_equal(tree->paths[i], "firmpedal.h");
    free(tree);
}

/* Whoever opens the folder sees these and no more, hidden files and built folders aside. */
static void the_top_holds_what_a_reader_expects(void **state)
{
    (void)state;
    static const char expected[] =
        " README.md DEVELOPERS.md LICENSE meson.build src tests systems demo docs SAFETY.md ";
    char *root = source_path("");
    DIR *top = opendir(root);
    assert_non_null(top);
    int seen = 0;
    for (struct dirent *entry; (entry = readdir(top)) != NULL;) {
        if (entry->d_name[0] == '.' || strncmp(entry->d_name, "build", 5) == 0)
            continue;
        char word[sizeof entry->d_name + 2];
        snprintf(word, sizeof word, " %s ", entry->d_name);
        if (strstr(expected, word) == NULL)
            fail_msg("%s does not belong at the top", entry->d_name);
        seen++;
    }
    closedir(top);
    free(root);
    assert_int_equal(seen, 10);
}

static void no_room_is_too_full(void **state)
{
    (void)state;
    struct source_tree *tree = source_tree_read();
    violations = 0;
    for (size_t r = 0; r < sizeof rooms / sizeof rooms[0]; r++) {
        int sources = 0;
        for (size_t i = 0; i < tree->count; i++) {
            char room[SOURCE_PATH];
            source_folder(tree->paths[i], room);
            if (strcmp(room, rooms[r].room) == 0 && strstr(tree->paths[i], ".c") != NULL)
                sources++;
        }
        if (sources > ROOM_MOST_SOURCES)
            complain(rooms[r].room, 1, "has more sources than one looks through");
        assert_true(sources > 0);
    }
    free(tree);
    assert_int_equal(violations, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_file_includes_only_its_level_or_lower),
        cmocka_unit_test(the_public_header_stands_alone_at_the_top),
        cmocka_unit_test(the_top_holds_what_a_reader_expects),
        cmocka_unit_test(no_room_is_too_full),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
