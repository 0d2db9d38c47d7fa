#include <locale.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "cli/commands.h"
#include "cli/options.h"
#include "cli/screen.h"
#include "firmpedal.h"

enum { LISTS = 6 }; /* of a request */

static enum fp_outcome wrong_use(const struct command *command)
{
    if (command != NULL)
        commands_print_usage(command, stderr, screen_of(stderr).columns);
    else
        fputs("firmpedal: `firmpedal --help` lists the commands\n", stderr);
    return FP_WRONG_USE;
}

static enum fp_outcome run(const struct request *request)
{
    const struct command *command =
        request->command != NULL ? commands_find(request->command) : NULL;
    if ((request->given & TAKES(VERSION)) != 0) {
        printf("firmpedal %s\n", fp_version());
        return FP_FINE;
    }
    if ((request->given & TAKES(HELP)) != 0) {
        if (command != NULL)
            commands_print_usage(command, stdout, screen_of(stdout).columns);
        else
            commands_print_help(stdout, screen_of(stdout).columns);
        return FP_FINE;
    }
    if (request->command == NULL) {
        commands_print_help(stderr, screen_of(stderr).columns);
        return FP_WRONG_USE;
    }
    if (command == NULL) {
        fprintf(stderr, "firmpedal: there is no command %s\n", request->command);
        return wrong_use(NULL);
    }
    if (request->word_count < command->least_words || request->word_count > command->most_words)
        return wrong_use(command);
    const char *foreign = options_first_name(request->given & ~command->options);
    if (foreign != NULL) {
        fprintf(stderr, "firmpedal: %s takes no option --%s\n", command->name, foreign);
        return wrong_use(command);
    }
    struct fp_desk *desk = fp_desk_create();
    if (desk == NULL) {
        fputs("firmpedal: no memory\n", stderr);
        return FP_OUTPUT;
    }
    struct screen screen = screen_of(stdout);
    fp_set_screen(desk, screen.columns, screen.lively);
    enum fp_outcome outcome = command->run(desk, request);
    fp_desk_destroy(desk);
    return outcome;
}

/* The day on this machine's calendar; the engine itself never asks a clock. */
static const char *today(char buffer[static 16])
{
    time_t now = time(NULL);
    struct tm day;
    if (localtime_r(&now, &day) == NULL || strftime(buffer, 16, "%Y-%m-%d", &day) == 0)
        return NULL;
    return buffer;
}

/* A full disk shows at any write, and the last of them happens only when the stream is closed. */
static bool all_written(FILE *stream)
{
    bool fine = fflush(stream) == 0 && !ferror(stream);
    return fclose(stream) == 0 && fine;
}

/* Letter where the locale says a country that prints on it (CLDR, territories of US letter, from
 * memory), A4 everywhere else. */
static enum fp_paper usual_paper(void)
{
    static const char *const letter[] = {"_US", "_CA", "_MX", "_PH", "_CL", "_CO", "_VE", "_PR"};
    static const char *const names[] = {"LC_ALL", "LC_PAPER", "LANG"};
    const char *locale = NULL;
    for (size_t i = 0; i < 3 && (locale == NULL || *locale == '\0'); i++)
        locale = getenv(names[i]);
    for (size_t i = 0; locale != NULL && i < sizeof letter / sizeof letter[0]; i++)
        if (strstr(locale, letter[i]) != NULL)
            return FP_LETTER;
    return FP_A4;
}

int main(int argc, char **argv)
{
    char date[16];
    fp_secure_streams();
    setlocale(LC_CTYPE, "");
    signal(SIGXFSZ, SIG_IGN);
    struct request request = {.wishes.paper = usual_paper()};
    request.wishes.date = today(date);
    size_t each = (size_t)argc + 1;
    const char **room = calloc(LISTS * each, sizeof *room);
    enum fp_outcome outcome = FP_OUTPUT;
    if (room != NULL) {
        request.words = room;
        request.works = room + each;
        request.changes = room + 2 * each;
        request.tried = room + 3 * each;
        request.at_hand = room + 4 * each;
        request.limits = room + 5 * each;
        outcome = options_read(argc, argv, &request, stderr) ? run(&request) : FP_WRONG_USE;
    }
    free(room);
    if (!all_written(stdout)) {
        fputs("firmpedal: the answer could not be written to its end; do not go by what there is\n",
              stderr);
        return FP_OUTPUT;
    }
    return (int)outcome;
}
