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

static size_t printed_length(const char *words, va_list values)
{
    const int length = vsnprintf(NULL, 0, words, values);
    return length > 0 ? (size_t)length : 0;
}

void plumbing_say(struct messages *messages, enum plumbing_mistake mistake, struct place place,
                  const char *mend, const char *words, ...)
{
    if (!messages || !words)
        return;
    va_list values;
    va_start(values, words);
    const size_t length = printed_length(words, values);
    va_end(values);
    char *said = arena_new(messages->arena, length + 1);
    va_start(values, words);
    vsnprintf(said, length + 1, words, values);
    va_end(values);
    struct message *message =
        messages_add(messages, rows[mistake].severity, rows[mistake].id, place);
    message->words = said;
    message->mend = mend;
}
