#ifndef FIRMPEDAL_TESTS_SUPPORT_TERMINAL_H
#define FIRMPEDAL_TESTS_SUPPORT_TERMINAL_H

#include <stddef.h>
#include <sys/types.h>

/* The built program in a pseudo-terminal, as a person has it before them. */

struct terminal {
    pid_t program;
    int file;    /* what is typed and what is shown */
    char *shown; /* all so far, without CR; ends with NUL */
    size_t count;
    size_t capacity;
};

/* Starts the program in a folder, on a terminal of so many columns. words ends with NULL. */
struct terminal terminal_start(const char *folder, const char *const *words, int columns);

/* Waits until it asks ("> " at the beginning of a line and nothing behind it) and gives what it has
 * shown since the last time; "" once it has ended. Fails the test after 30 seconds. In the
 * terminal, until the next call. */
const char *terminal_asks(struct terminal *terminal);

/* Types a line, or bytes as they are: "\3" is Ctrl-C, "\4" Ctrl-D. */
void terminal_type(struct terminal *terminal, const char *line);
void terminal_press(struct terminal *terminal, const char *bytes);

/* Shuts the terminal while the program runs, as when a connection is lost. */
void terminal_hang_up(struct terminal *terminal);

/* Waits for the end; the exit status, or -1 when a signal ended it. Frees all. */
int terminal_finish(struct terminal *terminal);

#endif
