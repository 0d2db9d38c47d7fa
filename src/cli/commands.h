#ifndef FIRMPEDAL_CLI_COMMANDS_H
#define FIRMPEDAL_CLI_COMMANDS_H

#include <stddef.h>
#include <stdio.h>

#include "cli/options.h"

/* A command: its words, the options it takes besides --help, and what it does. */
struct command {
    const char *name;
    const char *usage;
    const char *help;
    unsigned options;
    size_t least_words, most_words;
    enum fp_outcome (*run)(struct fp_desk *desk, const struct request *request);
};

const struct command *commands_all(size_t *count);
const struct command *commands_find(const char *name);
/* width: columns that no line is longer than. */
void commands_print_help(FILE *into, int width);
void commands_print_usage(const struct command *command, FILE *into, int width);

#endif
