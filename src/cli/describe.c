#include "cli/describe.h"

#include <errno.h>
#include <poll.h>
#include <signal.h>
#include <string.h>
#include <sys/signalfd.h>
#include <unistd.h>

/* Answers as they come in; a longer line than this is none. */
struct answers {
    char bytes[4096];
    size_t count;
    int signals; /* SIGINT and the like come as something to read */
    bool echo;   /* no terminal shows what is typed */
};

enum arrival { ARRIVAL_LINE, ARRIVAL_END, ARRIVAL_SIGNAL };

static int signals_to_read(void)
{
    sigset_t set;
    sigemptyset(&set);
    sigaddset(&set, SIGINT);
    sigaddset(&set, SIGTERM);
    sigaddset(&set, SIGHUP);
    if (sigprocmask(SIG_BLOCK, &set, NULL) != 0)
        return -1;
    return signalfd(-1, &set, SFD_CLOEXEC);
}

/* Waits until there is more to read: false when there is a signal instead. */
static bool wait_for_more(const struct answers *answers)
{
    struct pollfd files[2] = {{.fd = STDIN_FILENO, .events = POLLIN},
                              {.fd = answers->signals, .events = POLLIN}};
    while (poll(files, 2, -1) < 0 && errno == EINTR)
        continue;
    return (files[1].revents & POLLIN) == 0;
}

/* The next line, without its end; a byte of value 0 becomes one that no description takes. */
static enum arrival next_line(struct answers *answers, char line[static 4097])
{
    for (;;) {
        char *end = memchr(answers->bytes, '\n', answers->count);
        bool full = answers->count == sizeof answers->bytes;
        if (end != NULL || full) {
            size_t length = end != NULL ? (size_t)(end - answers->bytes) : answers->count;
            size_t taken = end != NULL ? length + 1 : length;
            memcpy(line, answers->bytes, length);
            line[length] = '\0';
            for (size_t i = 0; i < length; i++)
                line[i] = line[i] == '\0' ? '\1' : line[i];
            memmove(answers->bytes, answers->bytes + taken, answers->count - taken);
            answers->count -= taken;
            return ARRIVAL_LINE;
        }
        if (!wait_for_more(answers))
            return ARRIVAL_SIGNAL;
        ssize_t got = read(STDIN_FILENO, answers->bytes + answers->count,
                           sizeof answers->bytes - answers->count);
        if (got > 0)
            answers->count += (size_t)got;
        else if (answers->count > 0)
            answers->bytes[answers->count++] = '\n';
        else
            return ARRIVAL_END;
    }
}

/* What was answered must not be lost: where no file can hold it, it is printed. */
static enum fp_outcome leave_at_once(struct fp_desk *desk)
{
    const char *reply = "";
    enum fp_describing turn = fp_describe_answer(desk, "leave", &reply);
    printf("\n%s", reply);
    const char *text = turn == FP_UNWRITTEN ? fp_description(desk) : NULL;
    if (text != NULL)
        printf("What was answered:\n\n%s", text);
    return turn == FP_UNWRITTEN ? FP_OUTPUT : FP_FINE;
}

static enum fp_outcome ask_on(struct fp_desk *desk, struct answers *answers)
{
    enum fp_describing turn = FP_ASKS_ON;
    char line[sizeof answers->bytes + 1];
    while (turn == FP_ASKS_ON || turn == FP_UNWRITTEN) {
        const char *question = "", *reply = "";
        if (fp_describe_question(desk, &question) != FP_FINE)
            return FP_OUTPUT;
        printf("%s> ", question);
        fflush(stdout);
        if (next_line(answers, line) != ARRIVAL_LINE)
            return leave_at_once(desk);
        if (answers->echo)
            printf("%s\n", line);
        turn = fp_describe_answer(desk, line, &reply);
        fputs(reply, stdout);
    }
    return FP_FINE;
}

enum fp_outcome describe_car(struct fp_desk *desk, const struct request *request)
{
    char words[2048] = "";
    for (size_t i = 1; i < request->word_count; i++) {
        strncat(words, i > 1 ? " " : "", sizeof words - strlen(words) - 1);
        strncat(words, request->words[i], sizeof words - strlen(words) - 1);
    }
    const char *answer = "";
    if (strcmp(request->words[0], "-") == 0) {
        fputs("firmpedal: describe writes a file; its answers come from standard input\n", stderr);
        return FP_WRONG_USE;
    }
    enum fp_outcome outcome =
        fp_describe(desk, request->words[0], words, &request->wishes, &answer);
    fputs(fp_messages(desk, false), stderr);
    fputs(answer, stderr);
    if (outcome != FP_FINE)
        return outcome;
    struct answers answers = {.signals = signals_to_read(), .echo = !isatty(STDIN_FILENO)};
    if (answers.signals < 0) {
        perror("firmpedal");
        return FP_OUTPUT;
    }
    outcome = ask_on(desk, &answers);
    close(answers.signals);
    return outcome;
}
