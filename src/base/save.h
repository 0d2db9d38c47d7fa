#ifndef FIRMPEDAL_BASE_SAVE_H
#define FIRMPEDAL_BASE_SAVE_H

#include <stdbool.h>
#include <stddef.h>

#include "base/first_bytes.h"

/* What became of a file that was to be written. */
enum save_outcome {
    SAVE_DONE,
    SAVE_IS_AN_INPUT, /* the target is one of the files that were read */
    SAVE_EXISTS,      /* the target is there and was not to be replaced */
    SAVE_IS_FOREIGN,  /* the target is there and is no file of a kind that may be replaced */
    SAVE_CHANGED,     /* the target no longer holds what was read from it */
    SAVE_FAILED       /* the system said no; errno holds why */
};

/* A file whose bytes are to be replaced: inputs are protected, other files only when asked. */
struct save_rules {
    const char *const *inputs; /* paths of the files that were read */
    size_t input_count;
    bool replace;      /* whether a file that is already there may be replaced */
    unsigned kinds;    /* the kinds of file that may, as bits 1 << enum file_kind */
    const char **what; /* set to what the file is on SAVE_IS_FOREIGN */
    /* NULL, or the bytes that were read from the target: it is an input that is written back, and
     * only while it still holds them */
    const void *was;
    size_t was_count;
};

/* Writes a file whole or not at all: into a new file beside the target, then renamed over it.
 * A link as target is followed and kept. Compares device and inode with every input. On any
 * outcome but SAVE_DONE the old file, or no file, is there, and no other file is left behind. */
enum save_outcome save_file(const char *path, const void *bytes, size_t count,
                            const struct save_rules *rules);

/* Opens /dev/null for those of descriptors 0, 1 and 2 that are closed, so that no file takes their
 * place; for reading alone, so that there is nothing to read and writing still fails. */
void save_secure_streams(void);

#endif
