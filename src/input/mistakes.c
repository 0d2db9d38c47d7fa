#include "input/mistakes.h"

#include <assert.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "base/text.h"

static const struct mistake_row rows[] = {
#define MISTAKE(symbol, id, severity, help) {id, severity, help},
#include "input/mistakes.def"
#undef MISTAKE
};

const struct mistake_row *mistake_rows(size_t *count)
{
    *count = MISTAKE_COUNT;
    return rows;
}

static char *print_words(struct arena *arena, const char *format, va_list values)
{
    va_list again;
    va_copy(again, values);
    int length = vsnprintf(NULL, 0, format, again);
    va_end(again);
    assert(length >= 0);
    size_t room = length > 0 ? (size_t)length + 1 : 1;
    char *words = arena_new(arena, room);
    vsnprintf(words, room, format, values);
    return words;
}

/* The same message, if it is among the last ones. */
static struct message *find_same(struct messages *messages, const char *id, struct place place,
                                 const char *words)
{
    enum { LOOK_BACK = 32 };
    size_t from = messages->count > LOOK_BACK ? messages->count - LOOK_BACK : 0;
    for (size_t i = from; i < messages->count; i++) {
        struct message *before = &messages->items[i];
        if (before->place.line == place.line && before->place.column == place.column &&
            strcmp(before->id, id) == 0 && strcmp(before->words, words) == 0)
            return before;
    }
    return NULL;
}

static struct message *add(struct input *input, enum mistake mistake, struct place place,
                           const char *words)
{
    struct message *same = find_same(input->messages, rows[mistake].id, place, words);
    if (same)
        return same;
    struct message *message =
        messages_add(input->messages, rows[mistake].severity, rows[mistake].id, place);
    message->words = words;
    return message;
}

struct message *mistake_add(struct input *input, enum mistake mistake, struct written at,
                            const char *format, ...)
{
    va_list values;
    va_start(values, format);
    const char *words = print_words(input->arena, format, values);
    va_end(values);
    struct message *message = add(input, mistake, at.place, words);
    message->line = at.line;
    message->length = at.text ? text_letters(at.text) : 0;
    return message;
}

struct message *mistake_of_file(struct input *input, enum mistake mistake, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    const char *words = print_words(input->arena, format, values);
    va_end(values);
    return add(input, mistake, (struct place){.file = input->file}, words);
}

void mistake_suggest(struct message *message, const char *words, const char *nearest,
                     const char *line)
{
    if (nearest == NULL)
        return;
    if (text_mistyped(words, nearest))
        message->write = line;
    else
        message->example = line;
}
