#ifndef FIRMPEDAL_INPUT_SOURCE_H
#define FIRMPEDAL_INPUT_SOURCE_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/message.h"

/* A file's bytes in memory. */
struct source {
    const char *name; /* as messages show it */
    const char *bytes;
    size_t count;
};

/* Reads a whole file (at most 1 MiB; a directory, a device or an unreadable file is a message). The
 * path "-" reads standard input, from whatever it comes; its name in messages is "standard input".
 */
bool source_load(const char *path, struct arena *arena, struct messages *messages,
                 struct source *into);

/* The path of the file that source_load reads for a path: itself; for "-" that of standard input.
 */
const char *source_on_disk(const char *path);

#endif
