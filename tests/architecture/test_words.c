/* No name of a ready car stands in src/, so nothing there can be made for one car. */
#define _GNU_SOURCE /* strcasestr */

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"
#include "support/source_tree.h"

static int found;

static void search_file(const char *path, const char *title)
{
    FILE *in = fopen(path, "r");
    assert_non_null(in);
    char line[4096];
    for (int number = 1; fgets(line, sizeof line, in) != NULL; number++)
        if (strcasestr(line, title) != NULL) {
            fprintf(stderr, "%s:%d names the ready car \"%s\"\n", path, number, title);
            found++;
        }
    fclose(in);
}

static void search_sources(const char *title)
{
    struct source_tree *tree = source_tree_read();
    for (size_t i = 0; i < tree->count; i++) {
        char file[2048];
        snprintf(file, sizeof file, "%s/%s", tree->root, tree->paths[i]);
        search_file(file, title);
    }
    free(tree);
}

static void no_ready_car_is_named_in_the_sources(void **state)
{
    (void)state;
    const char *root = getenv("SOURCE_ROOT");
    char path[1024];
    snprintf(path, sizeof path, "%s/systems", root);
    DIR *folder = opendir(path);
    assert_non_null(folder);
    int titles = 0;
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
        if (strstr(entry->d_name, ".ini") == NULL)
            continue;
        char file[2048], line[512], title[256];
        snprintf(file, sizeof file, "%s/%s", path, entry->d_name);
        FILE *in = fopen(file, "r");
        assert_non_null(in);
        while (fgets(line, sizeof line, in) != NULL)
            if (sscanf(line, "title = %255[^\n]", title) == 1) {
                search_sources(title);
                titles++;
            }
        fclose(in);
        title[0] = '\0';
        snprintf(title, sizeof title, "%.*s", (int)(strlen(entry->d_name) - 4), entry->d_name);
        search_sources(title);
    }
    closedir(folder);
    assert_true(titles >= 7);
    assert_int_equal(found, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_ready_car_is_named_in_the_sources),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
