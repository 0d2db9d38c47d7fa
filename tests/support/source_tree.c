#include "support/source_tree.h"

#include <dirent.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "support/cmocka_all.h"

static bool ends_with(const char *name, const char *end)
{
    size_t length = strlen(name);
    return length > strlen(end) && strcmp(name + length - strlen(end), end) == 0;
}

static bool is_folder(const char *path)
{
    struct stat status;
    return stat(path, &status) == 0 && S_ISDIR(status.st_mode);
}

static void read_folder(struct source_tree *tree, const char *below)
{
    char path[2048];
    snprintf(path, sizeof path, "%s/%s", tree->root, below);
    DIR *folder = opendir(path);
    assert_non_null(folder);
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
        if (entry->d_name[0] == '.')
            continue;
        char name[SOURCE_PATH];
        int length =
            snprintf(name, sizeof name, "%s%s%s", below, *below != '\0' ? "/" : "", entry->d_name);
        assert_in_range(length, 1, SOURCE_PATH - 1);
        snprintf(path, sizeof path, "%s/%s", tree->root, name);
        if (is_folder(path))
            read_folder(tree, name);
        else if (ends_with(name, ".c") || ends_with(name, ".h")) {
            assert_true(tree->count < SOURCE_MOST);
            memcpy(tree->paths[tree->count++], name, sizeof name);
        }
    }
    closedir(folder);
}

struct source_tree *source_tree_read(void)
{
    const char *root = getenv("SOURCE_ROOT");
    assert_non_null(root);
    struct source_tree *tree = calloc(1, sizeof *tree);
    assert_non_null(tree);
    snprintf(tree->root, sizeof tree->root, "%s/src", root);
    read_folder(tree, "");
    return tree;
}

void source_folder(const char *path, char *folder)
{
    const char *slash = strrchr(path, '/');
    snprintf(folder, SOURCE_PATH, "%.*s", slash != NULL ? (int)(slash - path) : 0, path);
}
