#include "report/text/text_report.h"

#include "report/text/text_frame.h"

static void add_line_with_mark(struct text *into, const struct message *message)
{
    text_add(into, "  %s\n  ", message->line);
    int column = 1;
    for (const char *letter = message->line; *letter != '\0' && column < message->place.column;
         letter++) {
        if (((unsigned char)*letter & 0xC0) == 0x80)
            continue;
        text_add(into, *letter == '\t' ? "\t" : " ");
        column++;
    }
    for (int i = 0; i < (message->length > 0 ? message->length : 1); i++)
        text_add(into, "^");
    text_add(into, "\n");
}

void text_messages(struct text *into, const struct messages *messages)
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
            add_line_with_mark(into, message);
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
