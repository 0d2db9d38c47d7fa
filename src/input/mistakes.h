#ifndef FIRMPEDAL_INPUT_MISTAKES_H
#define FIRMPEDAL_INPUT_MISTAKES_H

#include "base/arena.h"
#include "base/message.h"
#include "input/written.h"

enum mistake {
#define MISTAKE(symbol, id, severity, help) MISTAKE_##symbol,
#include "input/mistakes.def"
#undef MISTAKE
    MISTAKE_COUNT
};

/* A row of the table of mistakes, for pages and `explain`. */
struct mistake_row {
    const char *id;
    enum severity severity;
    const char *help;
};
const struct mistake_row *mistake_rows(size_t *count);

/* What every step of reading needs: where memory comes from and where messages go. */
struct input {
    struct arena *arena;
    struct messages *messages;
    const char *file;
};

/* Adds the message of a mistake: the words are underlined, the format says what is wrong and what
 * was expected. The pointer holds until the next message; write and earlier can be filled in.
 * One mistake, one message: the same words of the same place, as two sides of a car may give them,
 * are added once. */
struct message *mistake_add(struct input *input, enum mistake mistake, struct written at,
                            const char *format, ...) __attribute__((format(printf, 4, 5)));

/* Names in a message what is nearest to words that are not known: as what to write where it was
 * meant, as an example else. line: the line to write with it; nothing when nearest is NULL. */
void mistake_suggest(struct message *message, const char *words, const char *nearest,
                     const char *line);

/* The same for what has no place in the text but the file itself. */
struct message *mistake_of_file(struct input *input, enum mistake mistake, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

#endif
