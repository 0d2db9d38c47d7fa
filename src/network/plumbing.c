#include "network/plumbing.h"

#include <stdarg.h>
#include <stdio.h>

#include "base/text.h"

static const struct plumbing_row rows[] = {
#define PLUMBING(symbol, id, severity, what) {id, severity, what},
#include "network/plumbing.def"
#undef PLUMBING
};

const struct plumbing_row *plumbing_rows(size_t *count)
{
    *count = PLUMBING_COUNT;
    return rows;
}

void plumbing_say(struct messages *messages, enum plumbing_mistake mistake, struct place place,
                  const char *write, const char *words, ...)
{
    if (!messages)
        return;
    va_list values;
    va_start(values, words);
    const int length = vsnprintf(NULL, 0, words, values);
    va_end(values);
    if (length < 0)
        return;
    char *said = arena_new(messages->arena, (size_t)length + 1);
    va_start(values, words);
    vsnprintf(said, (size_t)length + 1, words, values);
    va_end(values);
    struct message *message =
        messages_add(messages, rows[mistake].severity, rows[mistake].id, place);
    message->words = said;
    message->write = write;
}
