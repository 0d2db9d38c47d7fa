/* renameat2 */
#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include "base/save.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* As many links in a row as Linux itself follows. */
#define MOST_LINKS 40

/* Puts folder and name of a path together: the folder of beside, then name. */
static bool join(char joined[static PATH_MAX], const char *beside, const char *name)
{
    const char *slash = strrchr(beside, '/');
    size_t folder = slash && name[0] != '/' ? (size_t)(slash - beside) + 1 : 0;
    size_t length = strlen(name);
    if (folder + length >= PATH_MAX) {
        errno = ENAMETOOLONG;
        return false;
    }
    memmove(joined, beside, folder);
    memcpy(joined + folder, name, length + 1);
    return true;
}

/* Follows links until a path that is none; that file need not be there. */
static bool follow_links(const char *path, char target[static PATH_MAX])
{
    if (!join(target, "", path))
        return false;
    for (int links = 0; links < MOST_LINKS; links++) {
        char next[PATH_MAX];
        ssize_t length = readlink(target, next, sizeof next - 1);
        if (length < 0)
            /* EINVAL: not a link; ENOENT: nothing there yet. */
            return errno == EINVAL || errno == ENOENT;
        next[length] = '\0';
        if (!join(target, target, next))
            return false;
    }
    errno = ELOOP;
    return false;
}

static bool is_an_input(const struct stat *target, const struct save_rules *rules)
{
    for (size_t i = 0; i < rules->input_count; i++) {
        struct stat input;
        if (stat(rules->inputs[i], &input) == 0 && input.st_dev == target->st_dev &&
            input.st_ino == target->st_ino)
            return true;
    }
    return false;
}

static bool write_all(int file, const char *bytes, size_t count)
{
    while (count > 0) {
        ssize_t written = write(file, bytes, count);
        if (written < 0 && errno == EINTR)
            continue;
        if (written < 0)
            return false;
        if (written == 0) {
            errno = EIO;
            return false;
        }
        bytes += written;
        count -= (size_t)written;
    }
    return true;
}

/* Gives the new file the owner and mode of the old one, or those of any new file. */
static bool take_over_mode(int file, const struct stat *old)
{
    if (!old) {
        mode_t mask = umask(0);
        umask(mask);
        return fchmod(file, 0666 & ~mask) == 0;
    }
    /* Only root may give files away; for others the file is theirs, as with any editor. */
    if (fchown(file, old->st_uid, old->st_gid) != 0)
        errno = 0;
    return fchmod(file, old->st_mode & 07777) == 0;
}

static bool put_in_place(const char *temporary, const char *target, bool replace)
{
    if (replace)
        return rename(temporary, target) == 0;
    /* Somebody may have made the file since we looked. */
    if (renameat2(AT_FDCWD, temporary, AT_FDCWD, target, RENAME_NOREPLACE) == 0)
        return true;
    /* A file system that cannot do that: the look before must do. */
    if (errno == EINVAL || errno == ENOSYS)
        return rename(temporary, target) == 0;
    return false;
}

/* Makes the new name last through a power cut. The file is in place by now, so a file system
 * that cannot do it is no failure. */
static void sync_folder(const char *target)
{
    char folder[PATH_MAX];
    if (!join(folder, target, "."))
        return;
    int file = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (file < 0)
        return;
    fsync(file);
    close(file);
}

static enum save_outcome write_beside(const char *target, const void *bytes, size_t count,
                                      const struct stat *old, bool replace)
{
    char temporary[PATH_MAX];
    if (!join(temporary, target, ".firmpedal-XXXXXX"))
        return SAVE_FAILED;
    int file = mkostemp(temporary, O_CLOEXEC);
    if (file < 0)
        return SAVE_FAILED;
    bool fine = write_all(file, bytes, count) && take_over_mode(file, old) && fsync(file) == 0;
    int why = errno;
    if (close(file) != 0 && fine) {
        fine = false;
        why = errno;
    }
    if (fine && !put_in_place(temporary, target, replace)) {
        fine = false;
        why = errno;
    }
    if (!fine) {
        unlink(temporary);
        errno = why;
        return why == EEXIST && !replace ? SAVE_EXISTS : SAVE_FAILED;
    }
    sync_folder(target);
    return SAVE_DONE;
}

/* Whether a file that is there may be replaced, by its first bytes. */
static enum save_outcome look_at_old(const char *path, const struct save_rules *rules)
{
    char bytes[FIRST_BYTES];
    int file = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
    if (file < 0)
        return SAVE_FAILED;
    ssize_t count;
    do
        count = read(file, bytes, sizeof bytes);
    while (count < 0 && errno == EINTR);
    int why = errno;
    close(file);
    errno = why;
    if (count < 0)
        return SAVE_FAILED;
    enum file_kind kind = first_bytes_kind(bytes, (size_t)count, rules->what);
    return (rules->kinds & 1u << kind) != 0 ? SAVE_DONE : SAVE_IS_FOREIGN;
}

/* Whether a file still holds these bytes. */
static bool still_holds(const char *path, const char *bytes, size_t count)
{
    FILE *file = fopen(path, "re");
    if (!file)
        return false;
    bool same = true;
    size_t at = 0;
    char part[4096];
    for (size_t got; same && (got = fread(part, 1, sizeof part, file)) > 0; at += got)
        same = at + got <= count && memcmp(part, bytes + at, got) == 0;
    same = same && at == count && !ferror(file);
    fclose(file);
    return same;
}

enum save_outcome save_file(const char *path, const void *bytes, size_t count,
                            const struct save_rules *rules)
{
    struct stat old;
    bool is_there = stat(path, &old) == 0;
    if (!is_there && errno != ENOENT)
        return SAVE_FAILED;
    if (is_there && !rules->was && is_an_input(&old, rules))
        return SAVE_IS_AN_INPUT;
    if (is_there && !S_ISREG(old.st_mode)) {
        /* Renaming over a device such as /dev/null would take it away from everyone. */
        errno = S_ISDIR(old.st_mode) ? EISDIR : EINVAL;
        return SAVE_FAILED;
    }
    if (rules->was && (!is_there || !still_holds(path, rules->was, rules->was_count)))
        return SAVE_CHANGED;
    if (is_there && !rules->replace)
        return SAVE_EXISTS;
    enum save_outcome old_is = is_there && !rules->was ? look_at_old(path, rules) : SAVE_DONE;
    if (old_is != SAVE_DONE)
        return old_is;
    char target[PATH_MAX];
    if (!follow_links(path, target))
        return SAVE_FAILED;
    return write_beside(target, bytes, count, is_there ? &old : NULL, rules->replace);
}

void save_secure_streams(void)
{
    /* In their order, so that each gets the lowest free number: its own. */
    for (int stream = STDIN_FILENO; stream <= STDERR_FILENO; stream++)
        if (fcntl(stream, F_GETFD) < 0)
            (void)open("/dev/null", O_RDONLY);
}
