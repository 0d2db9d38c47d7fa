#define _GNU_SOURCE /* clock_gettime, isatty */

#include "cli/commands.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "cli/describe.h"
#include "cli/screen.h"

#define CAR_AND_WORKS  SIZE_MAX
#define MOST_CAR_WORDS 80 /* "front discs, rear drums, ..." are words of a command line each */
#define COMMON_OPTIONS (TAKES(WORK) | TAKES(UNITS) | TAKES(EFFORT) | TAKES(DATE))
#define BLEED_OPTIONS  (TAKES(ORDER) | TAKES(METHOD) | TAKES(SHUT_EARLY))

static void print_messages(struct fp_desk *desk, const struct request *request)
{
    const char *messages = fp_messages(desk, request->wishes.json);
    if (*messages != '\0')
        fputs(messages, stderr);
}

/* Work files may be the words behind the car, up to a number of words, or come with --work. */
static enum fp_outcome read_words(struct fp_desk *desk, const struct request *request, size_t words)
{
    size_t count = 0, dashes = strcmp(request->words[0], "-") == 0;
    const char **works = calloc(request->word_count + request->work_count, sizeof *works);
    if (works == NULL) {
        fputs("firmpedal: no memory\n", stderr);
        return FP_OUTPUT;
    }
    for (size_t i = 1; i < words; i++)
        works[count++] = request->words[i];
    for (size_t i = 0; i < request->work_count; i++)
        works[count++] = request->works[i];
    for (size_t i = 0; i < count; i++)
        dashes += strcmp(works[i], "-") == 0;
    if (dashes > 1) {
        free(works);
        fputs("firmpedal: - stands twice, but standard input can be read once\n", stderr);
        return FP_WRONG_USE;
    }
    enum fp_outcome outcome = fp_read(desk, request->words[0], works, count, request->wishes.date);
    free(works);
    print_messages(desk, request);
    return outcome;
}

static enum fp_outcome read_all(struct fp_desk *desk, const struct request *request)
{
    return read_words(desk, request, request->word_count);
}

static enum fp_outcome answer_question(struct fp_desk *desk, const struct request *request,
                                       enum fp_question question)
{
    enum fp_outcome outcome = read_all(desk, request);
    if (outcome != FP_FINE)
        return outcome;
    const char *answer = "";
    outcome = fp_ask(desk, question, &request->wishes, &answer);
    fputs(answer, outcome == FP_WRONG_USE ? stderr : stdout);
    return outcome;
}

static enum fp_outcome run_check(struct fp_desk *desk, const struct request *request)
{
    return answer_question(desk, request, FP_CHECK);
}

static enum fp_outcome run_bleed(struct fp_desk *desk, const struct request *request)
{
    return answer_question(desk, request, FP_BLEED);
}

static enum fp_outcome run_open(struct fp_desk *desk, const struct request *request)
{
    return answer_question(desk, request, FP_OPEN);
}

static enum fp_outcome run_hoses(struct fp_desk *desk, const struct request *request)
{
    return answer_question(desk, request, FP_HOSES);
}

static enum fp_outcome run_soft(struct fp_desk *desk, const struct request *request)
{
    return answer_question(desk, request, FP_SOFT);
}

static enum fp_outcome run_fit(struct fp_desk *desk, const struct request *request)
{
    bool cylinder = request->wishes.cylinder != NULL, bore = request->wishes.bore != NULL;
    if (cylinder != bore || (!bore && request->change_count + request->tried_count == 0)) {
        fputs("firmpedal: fit needs --cylinder NAME and --bore SIZE, --change or --try\n", stderr);
        return FP_WRONG_USE;
    }
    return answer_question(desk, request, FP_FIT);
}

static enum fp_outcome write_file(struct fp_desk *desk, const struct request *request,
                                  enum fp_drawing drawing)
{
    if (request->output == NULL) {
        fprintf(stderr, "firmpedal: %s needs --output FILE\n", request->command);
        return FP_WRONG_USE;
    }
    const char *answer = "";
    enum fp_outcome outcome = fp_may_draw(desk, drawing, request->output, &answer);
    fputs(answer, stderr);
    if (outcome == FP_FINE)
        outcome = read_all(desk, request);
    if (outcome != FP_FINE)
        return outcome;
    const char *before = fp_messages(desk, false);
    size_t told = strlen(before);
    outcome = fp_draw(desk, drawing, request->output, &request->wishes);
    fputs(fp_messages(desk, false) + told, stderr);
    if (outcome == FP_FINE || outcome == FP_FINDINGS)
        printf("%s\n", request->output);
    return outcome;
}

/* Says how far it is, on a terminal and from a second on. */
struct waiting {
    struct timespec since;
    int told; /* whole parts of a hundred; -1: nothing yet */
};

static bool tell_progress(double done, void *context)
{
    struct waiting *waiting = context;
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    int part = (int)(100 * done);
    if (now.tv_sec - waiting->since.tv_sec < 2 || part == waiting->told)
        return true;
    fprintf(stderr, "\r%3d %%", part);
    waiting->told = part;
    return true;
}

static enum fp_outcome run_choose(struct fp_desk *desk, const struct request *request)
{
    struct waiting waiting = {.told = -1};
    struct request asked = *request;
    if (request->wishes.among == NULL) {
        fputs("firmpedal: choose needs --among NAMES\n", stderr);
        return FP_WRONG_USE;
    }
    if (request->output != NULL)
        return write_file(desk, request, FP_CHOICE);
    clock_gettime(CLOCK_MONOTONIC, &waiting.since);
    if (isatty(STDERR_FILENO)) {
        asked.wishes.progress = tell_progress;
        asked.wishes.progress_context = &waiting;
    }
    enum fp_outcome outcome = answer_question(desk, &asked, FP_CHOOSE);
    if (waiting.told >= 0)
        fputs("\n", stderr);
    return outcome;
}

static enum fp_outcome run_curve(struct fp_desk *desk, const struct request *request)
{
    return answer_question(desk, request, FP_CURVE);
}

static enum fp_outcome run_trace(struct fp_desk *desk, const struct request *request)
{
    return answer_question(desk, request, FP_TRACE);
}

static enum fp_outcome run_sheet(struct fp_desk *desk, const struct request *request)
{
    return write_file(desk, request, FP_SHEET);
}

static enum fp_outcome run_diagram(struct fp_desk *desk, const struct request *request)
{
    return write_file(desk, request, FP_DIAGRAM);
}

/* The car, the work file that is written, the steps. */
static enum fp_outcome run_done(struct fp_desk *desk, const struct request *request)
{
    const char *answer = "";
    enum fp_outcome outcome = read_words(desk, request, 2);
    if (outcome != FP_FINE)
        return outcome;
    outcome = fp_note(desk, request->words[1], request->words + 2, request->word_count - 2,
                      &request->wishes, &answer);
    fputs(answer, outcome == FP_FINE ? stdout : stderr);
    return outcome;
}

static enum fp_outcome run_show(struct fp_desk *desk, const struct request *request)
{
    enum fp_outcome outcome = read_all(desk, request);
    if (outcome != FP_FINE)
        return outcome;
    const char *answer = "";
    outcome = fp_show(desk, &answer);
    fputs(answer, stdout);
    return outcome;
}

static enum fp_outcome print_word(struct fp_desk *desk, const struct request *request,
                                  enum fp_outcome (*asker)(struct fp_desk *, const char *,
                                                           const char **))
{
    const char *answer = "";
    char words[2048] = "";
    for (size_t i = 0; i < request->word_count; i++) {
        strncat(words, i > 0 ? " " : "", sizeof words - strlen(words) - 1);
        strncat(words, request->words[i], sizeof words - strlen(words) - 1);
    }
    enum fp_outcome outcome = asker(desk, words, &answer);
    fputs(answer, outcome == FP_FINE ? stdout : stderr);
    return outcome;
}

static enum fp_outcome run_start(struct fp_desk *desk, const struct request *request)
{
    return print_word(desk, request, fp_starter);
}

static enum fp_outcome run_measure(struct fp_desk *desk, const struct request *request)
{
    return print_word(desk, request, fp_measuring_sheet);
}

static enum fp_outcome run_explain(struct fp_desk *desk, const struct request *request)
{
    return print_word(desk, request, fp_explain);
}

static enum fp_outcome run_page(struct fp_desk *desk, const struct request *request)
{
    return print_word(desk, request, fp_page);
}

static enum fp_outcome run_help(struct fp_desk *desk, const struct request *request)
{
    (void)desk;
    struct screen screen = screen_of(stdout);
    if (request->word_count == 0) {
        commands_print_help(stdout, screen.columns);
        return FP_FINE;
    }
    const struct command *command = commands_find(request->words[0]);
    if (command == NULL) {
        fprintf(stderr, "firmpedal: there is no command %s\n", request->words[0]);
        return FP_WRONG_USE;
    }
    commands_print_usage(command, stdout, screen.columns);
    return FP_FINE;
}

static const struct command table[] = {
    {"check", "CAR [WORK...]", "figures of the car, then findings, worst first",
     COMMON_OPTIONS | TAKES(JSON) | TAKES(ALL) | TAKES(RULES) | TAKES(COUNTRY) | TAKES(FAIL_AT), 1,
     CAR_AND_WORKS, run_check},
    {"bleed", "CAR [WORK...]", "the order in which to bleed, with reasons and volumes",
     COMMON_OPTIONS | TAKES(JSON) | TAKES(ALL) | TAKES(STEP) | BLEED_OPTIONS, 1, CAR_AND_WORKS,
     run_bleed},
    {"open", "CAR WORK...", "which unions to undo for the parts to be renewed, and how",
     COMMON_OPTIONS | TAKES(JSON) | TAKES(ALL), 1, CAR_AND_WORKS, run_open},
    {"done", "CAR WORK [STEP...]",
     "note steps as done in the work file, by number or name; without one: what comes next",
     TAKES(WORK) | TAKES(DATE) | TAKES(NOTED) | BLEED_OPTIONS, 2, CAR_AND_WORKS, run_done},
    {"hoses", "CAR [WORK...]", "which flexible hoses there must be, and which are still old",
     COMMON_OPTIONS | TAKES(JSON), 1, CAR_AND_WORKS, run_hoses},
    {"soft", "CAR [WORK...]",
     "the pedal does not come firm: what it feels like, what to do first, then",
     COMMON_OPTIONS | TAKES(JSON), 1, CAR_AND_WORKS, run_soft},
    {"fit", "CAR [WORK...] --cylinder NAME --bore SIZE | --change ... | --try FILE",
     "whether another bore, or several changes together, suit the car",
     COMMON_OPTIONS | TAKES(JSON) | TAKES(CYLINDER) | TAKES(BORE) | TAKES(CHANGE) | TAKES(TRY) |
         TAKES(ALL),
     1, CAR_AND_WORKS, run_fit},
    {"choose", "CAR [WORK...] --among NAMES [--at-hand BORES] [--limit \"NAME = SIZE\"]",
     "which bores would suit, out of all or of those at hand",
     COMMON_OPTIONS | TAKES(JSON) | TAKES(AMONG) | TAKES(AT_HAND) | TAKES(LIMIT) | TAKES(ALL) |
         TAKES(OUTPUT) | TAKES(REPLACE),
     1, CAR_AND_WORKS, run_choose},
    {"curve", "CAR [WORK...]", "travel of the pedal against effort, what takes it, in each case",
     COMMON_OPTIONS | TAKES(JSON) | TAKES(ALL), 1, CAR_AND_WORKS, run_curve},
    {"trace", "CAR [WORK...] --figure ID [--of NAME]",
     "how one figure comes about, down to the lines of the file",
     COMMON_OPTIONS | TAKES(JSON) | TAKES(ALL) | TAKES(FIGURE) | TAKES(OF), 1, CAR_AND_WORKS,
     run_trace},
    {"sheet", "CAR [WORK...] -o FILE", "the service sheet as PDF",
     COMMON_OPTIONS | TAKES(OUTPUT) | TAKES(PAPER) | TAKES(REPLACE) | TAKES(ANNEX) |
         TAKES(COUNTRY) | BLEED_OPTIONS,
     1, CAR_AND_WORKS, run_sheet},
    {"diagram", "CAR [WORK...] -o FILE", "the diagram alone, as .svg, .png or .pdf",
     COMMON_OPTIONS | TAKES(OUTPUT) | TAKES(REPLACE), 1, CAR_AND_WORKS, run_diagram},
    {"show", "CAR [WORK...]", "the car as it now stands, each value with its origin", TAKES(WORK),
     1, CAR_AND_WORKS, run_show},
    {"describe", "FILE [WORDS...]",
     "asks for one thing after the other and writes a description; goes on with one that is there",
     TAKES(DATE) | TAKES(UNITS), 1, MOST_CAR_WORDS, describe_car},
    {"start", "[WORDS...]",
     "a commented description to fill in, of a car said in words; without words: which there are",
     0, 0, MOST_CAR_WORDS, run_start},
    {"measure", "[WORDS...]", "a measuring sheet to fill in at the car", 0, 0, MOST_CAR_WORDS,
     run_measure},
    {"explain", "WORD...", "what a key, figure, finding or limit means", 0, 1, 16, run_explain},
    {"help", "[COMMAND]", "this, or how a command is used", 0, 0, 1, run_help},
    {"page", "NAME", "a page of the documents, printed from the tables", 0, 1, 1, run_page},
};

const struct command *commands_all(size_t *count)
{
    *count = sizeof table / sizeof table[0];
    return table;
}

const struct command *commands_find(const char *name)
{
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
        if (strcmp(table[i].name, name) == 0)
            return &table[i];
    return NULL;
}

void commands_print_usage(const struct command *command, FILE *into, int width)
{
    char usage[256];
    snprintf(usage, sizeof usage, "firmpedal %s %s", command->name, command->usage);
    screen_print(into, usage, 0, 4, width);
    screen_print(into, command->help, 4, 4, width);
    options_print(command->options, into, width);
}

/* What to type for what one most often asks. */
static void print_usual(FILE *into, int width)
{
    static const struct {
        const char *asked, *typed;
    } rows[] = {
        {"Is the car sound, and what does the pedal do?", "firmpedal check van.ini"},
        {"Which hoses are old?", "firmpedal hoses van.ini"},
        {"What do I open, in which order?", "firmpedal open van.ini work.ini"},
        {"How do I bleed it?", "firmpedal bleed van.ini work.ini"},
        {"Does another bore suit?",
         "firmpedal fit van.ini --cylinder \"brake master\" --bore \"7/8 in\""},
        {"Which bores would do?", "firmpedal choose van.ini --among \"brake master, rear drum\""},
        {"All of it on paper, for the car", "firmpedal sheet van.ini work.ini -o van.pdf"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        screen_print(into, rows[i].asked, 2, 4, width);
        screen_print(into, rows[i].typed, 6, 8, width);
    }
}

void commands_print_help(FILE *into, int width)
{
    screen_print(into,
                 "firmpedal: what is on the car, what to open, how to bleed it, what to expect.", 0,
                 2, width);
    fputs("\nWhat to type:\n", into);
    print_usual(into, width);
    screen_print(
        into, "No description of the car yet: firmpedal describe van.ini; or start, and measure.",
        2, 4, width);
    fputs("\nCommands (more: firmpedal help COMMAND):\n", into);
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
        screen_print_beside(into, table[i].name, 2, table[i].help, 12, width);
    fputs("\n", into);
    screen_print(into,
                 "Every answer is short; --all gives everything, --json the same for programs. "
                 "Lines are as long as the terminal is wide, 40 to 100 columns; colour goes with "
                 "NO_COLOR set.",
                 0, 0, width);
    screen_print(into,
                 "Exit status: 0 fine, 1 findings or hoses not complete, 2 wrong use, 3 a file "
                 "cannot be used, 4 output not written or no memory.",
                 0, 0, width);
    fputs("\n", into);
    screen_print(into,
                 "This work can hurt people: read SAFETY.md. The car's own manual, local rules and "
                 "licensed inspection come first.",
                 0, 0, width);
}
