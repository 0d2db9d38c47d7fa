#include "cli/screen.h"

#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

static int columns_of(FILE *stream)
{
    const char *said = getenv("COLUMNS");
    char *end = NULL;
    long columns = said != NULL ? strtol(said, &end, 10) : 0;
    if (columns > 0 && *end == '\0')
        return columns < 1000 ? (int)columns : 1000;
    struct winsize size;
    int file = fileno(stream);
    if (file >= 0 && ioctl(file, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
        return size.ws_col;
    return SCREEN_USUAL;
}

static bool set(const char *name)
{
    const char *value = getenv(name);
    return value != NULL && *value != '\0';
}

struct screen screen_of(FILE *stream)
{
    const char *terminal = getenv("TERM");
    int columns = columns_of(stream);
    return (struct screen){.columns = columns < SCREEN_LEAST  ? SCREEN_LEAST
                                      : columns > SCREEN_MOST ? SCREEN_MOST
                                                              : columns,
                           .lively = isatty(fileno(stream)) && terminal != NULL &&
                                     strcmp(terminal, "dumb") != 0 && !set("NO_COLOR")};
}

/* Bytes of a word, or of a choice of "a|b|c" with its stroke. */
static size_t word_length(const char *words)
{
    size_t length = strcspn(words, " |");
    return length + (words[length] == '|');
}

/* Words from where the line is, which is already so far; further lines after hang blanks. */
static void print_from(FILE *into, const char *words, int at, int hang, int width)
{
    int between = 0; /* blanks before the word */
    while (*words != '\0') {
        size_t length = word_length(words);
        if (at > hang && at + between + (int)length > width) {
            fprintf(into, "\n%*s", hang, "");
            at = hang;
            between = 0;
        }
        fprintf(into, "%*s%.*s", between, "", (int)length, words);
        at += between + (int)length;
        words += length;
        between = (int)strspn(words, " ") > 0;
        words += strspn(words, " ");
    }
    fputs("\n", into);
}

void screen_print(FILE *into, const char *words, int first, int hang, int width)
{
    fprintf(into, "%*s", first, "");
    print_from(into, words, first, hang, width);
}

void screen_print_beside(FILE *into, const char *label, int indent, const char *words, int column,
                         int width)
{
    int end = indent + (int)strlen(label);
    if (end >= column) {
        screen_print(into, label, indent, indent + 4, width);
        screen_print(into, words, column, column, width);
        return;
    }
    fprintf(into, "%*s%s%*s", indent, "", label, column - end, "");
    print_from(into, words, column, column, width);
}
