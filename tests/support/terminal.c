#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include "support/terminal.h"

#include <errno.h>
#include <poll.h>
#include <pty.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "support/cmocka_all.h"

enum { PATIENCE = 30000 /* ms */, MOST_WORDS = 16 };

struct terminal terminal_start(const char *folder, const char *const *words, int columns)
{
    struct terminal terminal = {0};
    struct winsize size = {.ws_row = 24, .ws_col = (unsigned short)columns};
    const char *program = getenv("FIRMPEDAL");
    assert_non_null(program);
    char *arguments[MOST_WORDS + 2] = {strdup(program)};
    for (int i = 0; words[i] != NULL; i++) {
        assert_true(i < MOST_WORDS);
        arguments[i + 1] = strdup(words[i]);
    }
    terminal.program = forkpty(&terminal.file, NULL, NULL, &size);
    assert_true(terminal.program >= 0);
    if (terminal.program == 0) {
        unsetenv("COLUMNS");
        setenv("TERM", "dumb", 1);
        if (folder != NULL && chdir(folder) != 0)
            _exit(126);
        execv(program, arguments);
        _exit(127);
    }
    for (int i = 0; arguments[i] != NULL; i++)
        free(arguments[i]);
    return terminal;
}

/* Takes what is there; false when the program has ended. */
static bool take_some(struct terminal *terminal)
{
    if (terminal->capacity - terminal->count < 4097) {
        terminal->capacity = 2 * terminal->capacity + 8192;
        terminal->shown = realloc(terminal->shown, terminal->capacity);
        assert_non_null(terminal->shown);
    }
    struct pollfd file = {terminal->file, POLLIN, 0};
    if (poll(&file, 1, PATIENCE) <= 0)
        fail_msg("nothing came for long; shown so far: %.*s", (int)terminal->count,
                 terminal->shown);
    char *at = terminal->shown + terminal->count;
    ssize_t got = read(terminal->file, at, 4096);
    if (got <= 0)
        return false;
    for (ssize_t i = 0; i < got; i++)
        if (at[i] != '\r')
            terminal->shown[terminal->count++] = at[i];
    terminal->shown[terminal->count] = '\0';
    return true;
}

static bool is_asking(const struct terminal *terminal)
{
    size_t count = terminal->count;
    return count >= 3 && memcmp(terminal->shown + count - 3, "\n> ", 3) == 0;
}

const char *terminal_asks(struct terminal *terminal)
{
    terminal->count = 0;
    while (take_some(terminal))
        if (is_asking(terminal))
            return terminal->shown;
    terminal->shown[terminal->count] = '\0';
    return terminal->shown;
}

void terminal_press(struct terminal *terminal, const char *bytes)
{
    assert_int_equal(write(terminal->file, bytes, strlen(bytes)), strlen(bytes));
}

void terminal_type(struct terminal *terminal, const char *line)
{
    terminal_press(terminal, line);
    terminal_press(terminal, "\n");
}

void terminal_hang_up(struct terminal *terminal)
{
    close(terminal->file);
    terminal->file = -1;
}

int terminal_finish(struct terminal *terminal)
{
    int status = 0;
    while (terminal->file >= 0 && take_some(terminal))
        continue;
    while (waitpid(terminal->program, &status, 0) < 0 && errno == EINTR)
        continue;
    if (terminal->file >= 0)
        close(terminal->file);
    free(terminal->shown);
    *terminal = (struct terminal){.file = -1};
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}
