#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include "support/run_cli.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "support/cmocka_all.h"

/* What came through a pipe so far. */
struct catch
{
    int file;
    char *bytes;
    size_t count;
    size_t capacity;
};

static void need(bool fine, const char *what)
{
    if (!fine)
        fail_msg("%s: %s", what, strerror(errno));
}

/* Takes what is there; false at the end of it. */
static bool take_some(struct catch *from)
{
    if (from->capacity - from->count < 4096) {
        from->capacity = from->capacity * 2 + 8192;
        from->bytes = realloc(from->bytes, from->capacity);
        need(from->bytes != NULL, "realloc");
    }
    ssize_t got = read(from->file, from->bytes + from->count, from->capacity - from->count - 1);
    if (got < 0 && errno == EINTR)
        return true;
    if (got > 0)
        from->count += (size_t)got;
    return got > 0;
}

static long long milliseconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (long long)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

/* Reads both pipes to their end; false when that took too long. */
static bool take_all(struct catch catches[2], int seconds)
{
    long long end = milliseconds() + (long long)seconds * 1000;
    struct pollfd polled[2] = {{catches[0].file, POLLIN, 0}, {catches[1].file, POLLIN, 0}};
    while (polled[0].fd >= 0 || polled[1].fd >= 0) {
        long long left = end - milliseconds();
        if (left <= 0)
            return false;
        int ready = poll(polled, 2, (int)left);
        for (int i = 0; ready > 0 && i < 2; i++)
            if (polled[i].revents && !take_some(&catches[i]))
                polled[i].fd = -1;
    }
    return true;
}

/* The child's side: never comes back. */
static _Noreturn void become(const char *folder, const char *const *words, int input,
                             const int ends[2])
{
    if (folder && chdir(folder) != 0)
        _exit(126);
    dup2(input, STDIN_FILENO);
    dup2(ends[0], STDOUT_FILENO);
    dup2(ends[1], STDERR_FILENO);
    /* execvp changes nothing of them, its type is older than const. */
    execvp(words[0], (char *const *)(uintptr_t)words);
    _exit(127);
}

/* A file without a name that holds the input, so that nothing waits for the child to read it. */
static int input_file(const char *input)
{
    FILE *file = tmpfile();
    need(file != NULL, "tmpfile");
    if (input)
        fputs(input, file);
    need(fflush(file) == 0, "fflush");
    int copy = fcntl(fileno(file), F_DUPFD_CLOEXEC, 3);
    fclose(file);
    need(copy >= 0 && lseek(copy, 0, SEEK_SET) == 0, "input");
    return copy;
}

/* Waits for the child, which has closed its pipes or is to be ended now. */
static int wait_for(pid_t child, int seconds, bool *timed_out)
{
    int status = 0;
    long long end = milliseconds() + (long long)seconds * 1000;
    while (!*timed_out && waitpid(child, &status, WNOHANG) == 0) {
        *timed_out = milliseconds() > end;
        struct timespec moment = {0, 1000000};
        nanosleep(&moment, NULL);
    }
    if (*timed_out) {
        kill(child, SIGKILL);
        waitpid(child, &status, 0);
    }
    return status;
}

struct run run_program(const char *folder, const char *const *words, const char *input, int seconds)
{
    int out[2];
    int err[2];
    need(pipe2(out, O_CLOEXEC) == 0 && pipe2(err, O_CLOEXEC) == 0, "pipe");
    int in = input_file(input);
    pid_t child = fork();
    need(child >= 0, "fork");
    if (child == 0)
        become(folder, words, in, (const int[]){out[1], err[1]});
    close(in);
    close(out[1]);
    close(err[1]);
    struct catch catches[2] = {{out[0], NULL, 0, 0}, {err[0], NULL, 0, 0}};
    struct run run = {.timed_out = !take_all(catches, seconds)};
    int status = wait_for(child, seconds, &run.timed_out);
    for (int i = 0; i < 2; i++) {
        close(catches[i].file);
        if (!catches[i].bytes)
            catches[i].bytes = calloc(1, 1);
        need(catches[i].bytes != NULL, "calloc");
        catches[i].bytes[catches[i].count] = '\0';
    }
    run.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    run.signal = WIFSIGNALED(status) ? WTERMSIG(status) : 0;
    run.out = catches[0].bytes;
    run.out_size = catches[0].count;
    run.err = catches[1].bytes;
    run.err_size = catches[1].count;
    return run;
}

struct run run_cli_list(const char *folder, const char *const *arguments)
{
    const char *program = getenv("FIRMPEDAL");
    if (!program)
        fail_msg("FIRMPEDAL is not set: run this under meson test");
    size_t count = 0;
    while (arguments[count])
        count++;
    const char **words = calloc(count + 2, sizeof *words);
    need(words != NULL, "calloc");
    words[0] = program;
    memcpy(words + 1, arguments, count * sizeof *words);
    struct run run = run_program(folder ? folder : getenv("SOURCE_ROOT"), words, NULL, 60);
    free(words);
    /* Whatever a sanitizer found, no test of ours expects it. */
    if (run.status == 99 || run.status == 126 || run.status == 127)
        fail_msg("%s ended with %d: %s", program, run.status, run.err);
    return run;
}

void run_finish(struct run *run)
{
    free(run->out);
    free(run->err);
    *run = (struct run){0};
}

/* One blank for any run of blanks and line ends; the caller frees it. */
static char *in_one_line(const char *text)
{
    char *line = malloc(strlen(text) + 1), *end = line;
    assert_non_null(line);
    for (; *text != '\0'; text++) {
        bool blank = *text == ' ' || *text == '\n';
        if (!blank || end == line || end[-1] != ' ')
            *end++ = blank ? ' ' : *text;
    }
    *end = '\0';
    return line;
}

bool says(const char *text, const char *words)
{
    char *long_text = in_one_line(text), *long_words = in_one_line(words);
    bool said = strstr(long_text, long_words) != NULL;
    free(long_text);
    free(long_words);
    return said;
}

char *source_path(const char *below)
{
    const char *root = getenv("SOURCE_ROOT");
    if (!root)
        fail_msg("SOURCE_ROOT is not set: run this under meson test");
    char *path = NULL;
    need(asprintf(&path, "%s/%s", root, below) >= 0, "asprintf");
    return path;
}

char *read_whole(const char *path, size_t *size)
{
    struct catch file = {open(path, O_RDONLY | O_CLOEXEC), NULL, 0, 0};
    need(file.file >= 0, path);
    while (take_some(&file))
        continue;
    close(file.file);
    file.bytes[file.count] = '\0';
    if (size)
        *size = file.count;
    return file.bytes;
}
