#ifndef FIRMPEDAL_CLI_OPTIONS_H
#define FIRMPEDAL_CLI_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#include "firmpedal.h"

enum option_symbol {
#define OPTION(symbol, name, letter, argument, times, help) OPTION_##symbol,
#include "cli/options.def"
#undef OPTION
    OPTION_TOTAL
};
#define TAKES(symbol) (1u << OPTION_##symbol)

/* What stood on the command line. The strings belong to argv. */
struct request {
    const char *command;
    const char **words; /* what is no option, after the command */
    size_t word_count;
    const char **works;
    size_t work_count;
    const char **changes; /* --change */
    size_t change_count;
    const char **tried; /* --try */
    size_t tried_count;
    const char **at_hand; /* --at-hand */
    size_t at_hand_count;
    const char **limits; /* --limit */
    size_t limit_count;
    const char *output;
    unsigned given; /* bit set of options */
    struct fp_wishes wishes;
};

/* Reads the command line. The lists must have room for argc entries
 * each. false: a mistake was printed to errors. */
bool options_read(int argc, char **argv, struct request *request, FILE *errors);

/* Prints the options of a bit set, each with its help beside it; no line longer than width. */
void options_print(unsigned set, FILE *into, int width);
/* The name of the first option of a bit set, or NULL. */
const char *options_first_name(unsigned set);

#endif
