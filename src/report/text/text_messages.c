#include "report/text/text_report.h"

#include "report/words/words.h"

/* Bytes of so many letters, at most those there are. */
static size_t letters_long(const char *words, int letters)
{
    size_t at = 0;
    while (words[at] != '\0' && letters > 0) {
        at++;
        while (((unsigned char)words[at] & 0xC0) == 0x80)
            at++;
        letters--;
    }
    return at;
}

/* The line with the marked letters underlined; of one that is too wide only what stands about the
 * mark. */
static void add_line_with_mark(struct text *into, const struct message *message, int width)
{
    enum { BEFORE = 16, INDENT = 2 };
    int room = width - INDENT, first = 0;
    int column = message->place.column - 1;
    if (text_letters(message->line) > room && column > BEFORE)
        first = column - BEFORE;
    const char *from = message->line + letters_long(message->line, first);
    text_add(into, "  %.*s\n  ", (int)letters_long(from, room), from);
    for (int i = first; i < column; i++) {
        text_add(into, *from == '\t' ? "\t" : " ");
        from += letters_long(from, 1);
    }
    int marks = message->length > 0 ? message->length : 1;
    int free_room = room - (column - first);
    for (int i = 0; i < marks && (i < free_room || i == 0); i++)
        text_add(into, "^");
    text_add(into, "\n");
}

void text_messages(struct text *into, const struct messages *messages, int width)
{
    for (size_t i = 0; i < messages->count; i++) {
        const struct message *message = &messages->items[i];
        if (message->place.file != NULL)
            text_add(into, "%s:", message->place.file);
        if (message->place.line > 0)
            text_add(into, "%d:", message->place.line);
        if (message->place.line > 0 && message->place.column > 0)
            text_add(into, "%d:", message->place.column);
        text_add(into, " %s: %s [%s]\n",
                 message->severity == SEVERITY_DANGER ? "mistake"
                                                      : severity_word(message->severity),
                 message->words, message->id);
        if (message->line != NULL && message->place.column > 0)
            add_line_with_mark(into, message, width);
        if (message->write != NULL)
            text_add(into, "  write: %s\n", message->write);
        if (message->example != NULL)
            text_add(into, "  for example: %s\n", message->example);
        if (message->mend != NULL)
            text_add(into, "  do: %s\n", message->mend);
        if (message->earlier.line > 0)
            text_add(into, "  the first one: %s:%d\n",
                     message->earlier.file != NULL ? message->earlier.file : message->place.file,
                     message->earlier.line);
    }
}
