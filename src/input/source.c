/* O_CLOEXEC and friends */
#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include "input/source.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/text.h"
#include "input/mistakes.h"

enum { SOURCE_MOST = 1 << 20 };

/* Reads up to count bytes; the number read, or -1. */
static ssize_t read_fully(int descriptor, char *into, size_t count)
{
    size_t done = 0;
    while (done < count) {
        ssize_t got = read(descriptor, into + done, count - done);
        if (got < 0 && errno == EINTR)
            continue;
        if (got < 0)
            return -1;
        if (got == 0)
            break;
        done += (size_t)got;
    }
    return (ssize_t)done;
}

/* Opens and reads; -1 with errno when it cannot. Takes nothing from the arena, since running out
 * of memory would jump away from an open file. */
static ssize_t read_path(const char *path, char *into, size_t count)
{
    /* Without O_NONBLOCK opening a pipe that nobody writes to would wait for ever. */
    int descriptor = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
    if (descriptor < 0)
        return -1;
    ssize_t got = read_fully(descriptor, into, count);
    int reason = errno;
    close(descriptor);
    errno = reason;
    return got;
}

static bool is_standard_input(const char *path)
{
    return strcmp(path, "-") == 0;
}

const char *source_on_disk(const char *path)
{
    return is_standard_input(path) ? "/dev/stdin" : path;
}

static bool too_big(struct input *input)
{
    mistake_of_file(input, MISTAKE_FILE_TOO_BIG,
                    "is larger than 1 MiB; a description has some hundred lines");
    return false;
}

/* Standard input may be a pipe or a terminal, whose size shows only at its end. */
static bool load_standard_input(struct input *input, struct source *into)
{
    char *bytes = arena_new(input->arena, SOURCE_MOST + 1);
    ssize_t count = read_fully(STDIN_FILENO, bytes, SOURCE_MOST + 1);
    if (count < 0) {
        mistake_of_file(input, MISTAKE_CANNOT_READ, "cannot be read: %s", strerror(errno));
        return false;
    }
    if (count > SOURCE_MOST)
        return too_big(input);
    *into = (struct source){input->file, bytes, (size_t)count};
    return true;
}

bool source_load(const char *path, struct arena *arena, struct messages *messages,
                 struct source *into)
{
    bool from_standard_input = is_standard_input(path);
    struct input input = {arena, messages,
                          text_copy(arena, from_standard_input ? "standard input" : path)};
    if (from_standard_input)
        return load_standard_input(&input, into);
    struct stat about;
    if (stat(path, &about) != 0) {
        mistake_of_file(&input, MISTAKE_CANNOT_READ, "cannot be read: %s", strerror(errno));
        return false;
    }
    if (!S_ISREG(about.st_mode)) {
        mistake_of_file(&input, MISTAKE_NOT_A_FILE, "is %s, not a file with text",
                        S_ISDIR(about.st_mode) ? "a folder" : "a device or pipe");
        return false;
    }
    if (about.st_size > SOURCE_MOST)
        return too_big(&input);
    size_t room = (size_t)about.st_size;
    char *bytes = arena_new(arena, room + 1);
    ssize_t count = read_path(path, bytes, room);
    if (count < 0) {
        mistake_of_file(&input, MISTAKE_CANNOT_READ, "cannot be read: %s", strerror(errno));
        return false;
    }
    *into = (struct source){input.file, bytes, (size_t)count};
    return true;
}
