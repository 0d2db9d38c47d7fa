#include "cli/options.h"

#include <getopt.h>
#include <stdlib.h>
#include <string.h>

#include "cli/screen.h"

static const struct {
    const char *name;
    char letter;
    const char *argument;
    enum { ONCE, ANY_TIMES } times;
    const char *help;
} rows[OPTION_TOTAL] = {
#define OPTION(symbol, name, letter, argument, times, help) {name, letter, argument, times, help},
#include "cli/options.def"
#undef OPTION
};

/* getopt_long takes any beginning of an option for the option; a typing mistake must not. */
static bool long_names_are_whole(int argc, char **argv, FILE *errors)
{
    for (int i = 1; i < argc && strcmp(argv[i], "--") != 0; i++) {
        if (strncmp(argv[i], "--", 2) != 0)
            continue;
        size_t length = strcspn(argv[i] + 2, "=");
        bool known = false;
        for (int row = 0; row < OPTION_TOTAL; row++)
            known = known || (strlen(rows[row].name) == length &&
                              strncmp(rows[row].name, argv[i] + 2, length) == 0);
        if (!known) {
            fprintf(errors, "firmpedal: there is no option %.*s; `firmpedal --help` lists them\n",
                    (int)length + 2, argv[i]);
            return false;
        }
    }
    return true;
}

static bool one_of(const char *given, const char *const *words, int count, int *index)
{
    for (int i = 0; i < count; i++)
        if (strcmp(given, words[i]) == 0) {
            *index = i;
            return true;
        }
    return false;
}

static bool take(struct request *request, enum option_symbol option, const char *value,
                 FILE *errors)
{
    static const char *const units[] = {"metric", "imperial"};
    static const char *const severities[] = {"note", "advice", "warning", "danger"};
    static const char *const papers[] = {"a4", "letter"};
    static const char *const methods[] = {"pedal", "pressure", "vacuum", "gravity", "reverse"};
    int index = 0;
    bool fine = true;
    switch (option) {
    case OPTION_WORK:
        request->works[request->work_count++] = value;
        break;
    case OPTION_UNITS:
        fine = one_of(value, units, 2, &index);
        request->wishes.imperial = index == 1;
        break;
    case OPTION_JSON:
        request->wishes.json = true;
        break;
    case OPTION_EFFORT:
        request->wishes.effort = value;
        break;
    case OPTION_DATE:
        request->wishes.date = value;
        break;
    case OPTION_FAIL_AT:
        fine = one_of(value, severities, 4, &index);
        request->wishes.fail_at = (enum fp_severity)index;
        break;
    case OPTION_CYLINDER:
        request->wishes.cylinder = value;
        break;
    case OPTION_BORE:
        request->wishes.bore = value;
        break;
    case OPTION_CHANGE:
        request->changes[request->change_count++] = value;
        break;
    case OPTION_TRY:
        request->tried[request->tried_count++] = value;
        break;
    case OPTION_AMONG:
        request->wishes.among = value;
        break;
    case OPTION_AT_HAND:
        request->at_hand[request->at_hand_count++] = value;
        break;
    case OPTION_LIMIT:
        request->limits[request->limit_count++] = value;
        break;
    case OPTION_ALL:
        request->wishes.all = true;
        break;
    case OPTION_RULES:
        request->wishes.rules = true;
        break;
    case OPTION_COUNTRY:
        request->wishes.rules = true;
        request->wishes.country = value;
        break;
    case OPTION_FIGURE:
        request->wishes.figure = value;
        break;
    case OPTION_OF:
        request->wishes.of = value;
        break;
    case OPTION_STEP:
        fine = *value != '\0';
        request->wishes.step = value;
        break;
    case OPTION_NOTED:
        request->wishes.noted = value;
        break;
    case OPTION_ORDER:
        request->wishes.order = value;
        break;
    case OPTION_METHOD:
        fine = one_of(value, methods, 5, &index);
        request->wishes.method = (enum fp_method)index;
        break;
    case OPTION_SHUT_EARLY:
        request->wishes.shut_early = true;
        break;
    case OPTION_ANNEX:
        request->wishes.annexes = value;
        break;
    case OPTION_OUTPUT:
        request->output = value;
        break;
    case OPTION_PAPER:
        fine = one_of(value, papers, 2, &index);
        request->wishes.paper = index == 1 ? FP_LETTER : FP_A4;
        break;
    case OPTION_REPLACE:
        request->wishes.replace = true;
        break;
    case OPTION_HELP:
    case OPTION_VERSION:
    case OPTION_TOTAL:
        break;
    }
    if (!fine)
        fprintf(errors, "firmpedal: --%s takes %s, not %s\n", rows[option].name,
                rows[option].argument, value);
    return fine;
}

bool options_read(int argc, char **argv, struct request *request, FILE *errors)
{
    struct option table[OPTION_TOTAL + 1] = {0};
    char letters[2 * OPTION_TOTAL + 2] = ":"; /* stays ended by NUL */
    size_t used = 1;
    for (int i = 0; i < OPTION_TOTAL; i++) {
        bool takes = rows[i].argument != NULL;
        table[i] = (struct option){rows[i].name, takes ? required_argument : no_argument, NULL,
                                   rows[i].letter};
        letters[used++] = rows[i].letter;
        if (takes)
            letters[used++] = ':';
    }
    request->wishes.fail_at = FP_WARNING;
    if (!long_names_are_whole(argc, argv, errors))
        return false;
    opterr = 0;
    int letter;
    while ((letter = getopt_long(argc, argv, letters, table, NULL)) != -1) {
        if (letter == '?' || letter == ':') {
            fprintf(errors, "firmpedal: %s %s; `firmpedal --help` lists the options\n",
                    argv[optind - 1],
                    letter == ':' ? "needs a value" : "is no option or takes no value");
            return false;
        }
        for (int i = 0; i < OPTION_TOTAL; i++)
            if (rows[i].letter == letter) {
                if (rows[i].times == ONCE && (request->given & 1u << i) != 0) {
                    fprintf(errors, "firmpedal: --%s is given twice; give it once\n", rows[i].name);
                    return false;
                }
                request->given |= 1u << i;
                if (!take(request, (enum option_symbol)i, optarg, errors))
                    return false;
            }
    }
    request->wishes.changes = request->changes;
    request->wishes.change_count = request->change_count;
    request->wishes.tried = request->tried;
    request->wishes.tried_count = request->tried_count;
    request->wishes.at_hand = request->at_hand;
    request->wishes.at_hand_count = request->at_hand_count;
    request->wishes.limits = request->limits;
    request->wishes.limit_count = request->limit_count;
    if (optind < argc)
        request->command = argv[optind++];
    while (optind < argc)
        request->words[request->word_count++] = argv[optind++];
    return true;
}

void options_print(unsigned set, FILE *into, int width)
{
    enum { HELP_COLUMN = 22 };
    for (int i = 0; i < OPTION_TOTAL; i++) {
        if ((set & (1u << i)) == 0)
            continue;
        char left[80];
        snprintf(left, sizeof left, "-%c, --%s%s%s", rows[i].letter, rows[i].name,
                 rows[i].argument != NULL ? " " : "",
                 rows[i].argument != NULL ? rows[i].argument : "");
        screen_print_beside(into, left, 2, rows[i].help, HELP_COLUMN, width);
    }
}

const char *options_first_name(unsigned set)
{
    for (int i = 0; i < OPTION_TOTAL; i++)
        if ((set & (1u << i)) != 0)
            return rows[i].name;
    return NULL;
}
