#include "report/text/wrap.h"

#include <string.h>

#include "base/list.h"

static size_t bytes_of_letters(const char *words, int letters)
{
    const char *at = words;
    while (*at != '\0' && letters > 0) {
        at++;
        while (((unsigned char)*at & 0xC0) == 0x80)
            at++;
        letters--;
    }
    return (size_t)(at - words);
}

static int letters_in(struct arena *arena, const char *from, size_t bytes)
{
    return text_letters(text_copy_part(arena, from, bytes));
}

/* Bytes of the line that begins here: words as long as they fit, at least a part of the first. */
static size_t line_length(struct arena *arena, const char *from, int width)
{
    size_t fits = 0;
    for (const char *at = from;;) {
        at += strspn(at, " ");
        at += strcspn(at, " \n");
        size_t length = (size_t)(at - from);
        if (letters_in(arena, from, length) > width)
            return fits > 0 ? fits : bytes_of_letters(from, width);
        fits = length;
        if (*at != ' ')
            return fits;
    }
}

struct set_lines wrap(struct arena *arena, const char *words, int first, int width)
{
    struct set_lines lines = {0};
    int room = width - first;
    do {
        words += strspn(words, " ");
        size_t length = line_length(arena, words, room > 0 ? room : 1);
        const char **line = LIST_ADD(arena, &lines);
        *line = text_copy_part(arena, words, length);
        words += length;
        words += *words == '\n';
        room = width > 0 ? width : 1;
    } while (words[strspn(words, " ")] != '\0');
    return lines;
}

static void wrap_line(struct text *into, const char *line, int width)
{
    enum { FURTHER_IN = 2 };
    int blanks = (int)strspn(line, " ");
    int column = blanks + FURTHER_IN < width / 2 ? blanks + FURTHER_IN : FURTHER_IN;
    if (text_letters(line) <= width) {
        text_add(into, "%s\n", line);
        return;
    }
    struct set_lines lines = wrap(into->arena, line, blanks - column, width - column);
    for (size_t i = 0; i < lines.count; i++)
        text_add(into, "%*s%s\n", i == 0 ? blanks : column, "", lines.items[i]);
}

void wrap_text(struct text *into, const char *finished, int width)
{
    while (*finished != '\0') {
        size_t length = strcspn(finished, "\n");
        wrap_line(into, text_copy_part(into->arena, finished, length), width);
        finished += length;
        finished += *finished == '\n';
    }
}

int wrap_longest_word(const char *words)
{
    int longest = 0, here = 0;
    for (const char *at = words; *at != '\0'; at++) {
        here = *at == ' ' || *at == '\n' ? 0 : here + (((unsigned char)*at & 0xC0) != 0x80);
        longest = here > longest ? here : longest;
    }
    return longest;
}

struct pen_line line_start(struct text *into, const struct setting *setting)
{
    return (struct pen_line){into, setting, 0, 0};
}

void line_move(struct pen_line *line, int column)
{
    if (column > line->column + line->blanks)
        line->blanks = column - line->column;
}

/* How a terminal shows a tone (ECMA-48, 5th edition, 8.3.117): 1 bold, 7 turned, 31 red. */
static const char *rendition(enum tone tone)
{
    switch (tone) {
    case TONE_DANGER:
        return "\033[1;7;31m";
    case TONE_WARNING:
        return "\033[1;31m";
    case TONE_STRONG:
    case TONE_ADVICE:
        return "\033[1m";
    case TONE_PLAIN:
    case TONE_SMALL:
        break;
    }
    return NULL;
}

static void put_words(struct pen_line *line, const char *words)
{
    const size_t kept = strlen(KEPT_BLANK);
    for (const char *at; (at = strstr(words, KEPT_BLANK)) != NULL; words = at + kept) {
        text_add_bytes(line->into, words, (size_t)(at - words));
        text_add_bytes(line->into, " ", 1);
    }
    text_add(line->into, "%s", words);
}

void line_put(struct pen_line *line, const char *words, enum tone tone)
{
    const char *shown = line->setting->lively ? rendition(tone) : NULL;
    if (*words == '\0')
        return;
    text_add(line->into, "%*s%s", line->blanks, "", shown != NULL ? shown : "");
    put_words(line, words);
    text_add(line->into, "%s", shown != NULL ? "\033[0m" : "");
    line->column += line->blanks + text_letters(words);
    line->blanks = 0;
}

void line_end(struct pen_line *line)
{
    text_add(line->into, "\n");
    line->column = line->blanks = 0;
}
