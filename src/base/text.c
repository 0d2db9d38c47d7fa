#include "base/text.h"

#include <assert.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

char *text_copy(struct arena *arena, const char *from)
{
    return text_copy_part(arena, from, strlen(from));
}

char *text_copy_part(struct arena *arena, const char *from, size_t length)
{
    char *copy = arena_new_array(arena, length + 1, 1);
    if (length > 0)
        memcpy(copy, from, length);
    return copy;
}

/* Length of what a format makes; a format that cannot be printed makes nothing. */
static size_t printed_length(const char *format, va_list values)
{
    int length = vsnprintf(NULL, 0, format, values);
    assert(length >= 0);
    return length > 0 ? (size_t)length : 0;
}

char *text_print(struct arena *arena, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    size_t length = printed_length(format, values);
    va_end(values);
    char *printed = arena_new(arena, length + 1);
    va_start(values, format);
    vsnprintf(printed, length + 1, format, values);
    va_end(values);
    return printed;
}

static unsigned char lower(char letter)
{
    return (unsigned char)(letter >= 'A' && letter <= 'Z' ? letter - 'A' + 'a' : letter);
}

bool text_same(const char *a, const char *b)
{
    while (*a && lower(*a) == lower(*b)) {
        a++;
        b++;
    }
    return lower(*a) == lower(*b);
}

bool text_begins(const char *text, const char *beginning)
{
    for (; *beginning; text++, beginning++)
        if (lower(*text) != lower(*beginning))
            return false;
    return true;
}

bool text_ends(const char *text, const char *end)
{
    size_t length = strlen(text);
    size_t end_length = strlen(end);
    return end_length <= length && text_same(text + length - end_length, end);
}

struct text text_start(struct arena *arena)
{
    enum { FIRST_ROOM = 64 };
    return (struct text){arena, arena_new(arena, FIRST_ROOM), 0, FIRST_ROOM};
}

/* Makes room for count more bytes and the NUL. */
static void make_room(struct text *text, size_t count)
{
    size_t free_bytes = text->capacity - text->count;
    if (count < free_bytes)
        return;
    size_t wanted = count > SIZE_MAX / 4 || text->capacity > SIZE_MAX / 4
                        ? SIZE_MAX
                        : 2 * text->capacity + count + 1;
    char *grown = arena_new(text->arena, wanted);
    if (text->count > 0)
        memcpy(grown, text->items, text->count);
    text->items = grown;
    text->capacity = wanted;
}

void text_add(struct text *text, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    size_t length = printed_length(format, values);
    va_end(values);
    make_room(text, length);
    va_start(values, format);
    vsnprintf(text->items + text->count, length + 1, format, values);
    va_end(values);
    text->count += length;
}

void text_add_bytes(struct text *text, const char *bytes, size_t count)
{
    make_room(text, count);
    if (count > 0)
        memcpy(text->items + text->count, bytes, count);
    text->count += count;
    text->items[text->count] = '\0';
}

static int letters_in(const char *bytes, size_t count)
{
    int letters = 0;
    for (size_t i = 0; i < count; i++)
        letters += ((unsigned char)bytes[i] & 0xC0) != 0x80;
    return letters;
}

static void start_line(struct text *text, int indent, int *column)
{
    text_add(text, "\n%*s", indent, "");
    *column = indent;
}

void text_add_wrapped(struct text *text, const char *words, int first, int indent, int width)
{
    int column = first;
    bool line_is_empty = true;
    for (;;) {
        size_t gap = strspn(words, " ");
        words += gap;
        if (*words == '\0')
            break;
        if (*words == '\n') {
            start_line(text, indent, &column);
            line_is_empty = true;
            words++;
            continue;
        }
        size_t length = strcspn(words, " \n");
        int letters = letters_in(words, length);
        if (!line_is_empty && column + 1 + letters > width) {
            start_line(text, indent, &column);
            line_is_empty = true;
        }
        if (!line_is_empty) {
            text_add_bytes(text, " ", 1);
            column++;
        }
        text_add_bytes(text, words, length);
        column += letters;
        line_is_empty = false;
        words += length;
    }
    text_add_bytes(text, "\n", 1);
}

int text_letters(const char *utf8)
{
    return letters_in(utf8, strlen(utf8));
}

/* Bytes of the UTF-8 letter at bytes, or 0 when it is none. The bounds of the second byte keep
 * out overlong forms, surrogates and what lies past U+10FFFF (Unicode Standard, table 3-7). */
static size_t letter_length(const unsigned char *bytes, size_t left)
{
    unsigned char lead = bytes[0];
    if (lead < 0x80)
        return 1;
    if (lead < 0xC2 || lead > 0xF4)
        return 0;
    size_t length = lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
    if (length > left)
        return 0;
    unsigned char lowest = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
    unsigned char highest = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
    if (bytes[1] < lowest || bytes[1] > highest)
        return 0;
    for (size_t i = 2; i < length; i++)
        if ((bytes[i] & 0xC0) != 0x80)
            return 0;
    return length;
}

bool text_is_utf8(const char *bytes, size_t count)
{
    for (size_t at = 0; at < count;) {
        size_t length = letter_length((const unsigned char *)bytes + at, count - at);
        if (length == 0)
            return false;
        at += length;
    }
    return true;
}
