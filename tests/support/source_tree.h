#ifndef TESTS_SUPPORT_SOURCE_TREE_H
#define TESTS_SUPPORT_SOURCE_TREE_H

#include <stddef.h>

/* All sources and headers below src/, as paths below it: "parts/keys/key.c". */

enum { SOURCE_MOST = 1000, SOURCE_PATH = 256 };

struct source_tree {
    char root[1024]; /* the folder src/ itself */
    char paths[SOURCE_MOST][SOURCE_PATH];
    size_t count;
};

/* Reads the tree below SOURCE_ROOT; to be freed by free(). */
struct source_tree *source_tree_read(void);

/* The folder of a path, "parts/keys"; "" at the top. Into at least SOURCE_PATH bytes. */
void source_folder(const char *path, char *folder);

#endif
