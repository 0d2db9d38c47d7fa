#include "input/letters.h"

#include <string.h>

#include "base/text.h"

bool letters_are_utf_16(const char *bytes, size_t count)
{
    if (count < 2)
        return false;
    const unsigned char *first = (const unsigned char *)bytes;
    bool has_mark =
        (first[0] == 0xFF && first[1] == 0xFE) || (first[0] == 0xFE && first[1] == 0xFF);
    return has_mark || (first[0] == 0) != (first[1] == 0);
}

static bool is_blank(char byte)
{
    return byte == ' ' || byte == '\t';
}

size_t letters_comment(const char *bytes, size_t count)
{
    size_t first = 0;
    while (first < count && is_blank(bytes[first]))
        first++;
    if (first < count && bytes[first] == '#')
        return first;
    for (size_t i = first; i < count; i++)
        if (bytes[i] == ';' && (i == first || is_blank(bytes[i - 1])))
            return i;
    return count;
}

/* Bytes of the letter there, 0 when it is no UTF-8; *code gets its number. */
static size_t letter_at(const char *bytes, size_t left, unsigned long *code)
{
    static const unsigned char lead_bits[5] = {0, 0x7F, 0x1F, 0x0F, 0x07};
    for (size_t length = 1; length <= 4 && length <= left; length++) {
        if (!text_is_utf8(bytes, length))
            continue;
        *code = (unsigned char)bytes[0] & lead_bits[length];
        for (size_t i = 1; i < length; i++)
            *code = *code << 6 | ((unsigned char)bytes[i] & 0x3F);
        return length;
    }
    return 0;
}

static bool is_control(unsigned long code)
{
    return (code < 0x20 && code != '\t') || (code >= 0x7F && code < 0xA0);
}

/* Blanks of other widths, and letters that show nothing or turn the direction of the text.
 * Source: The Unicode Standard, general categories Zs, Zl, Zp and Cf, those met in typed text. */
static bool is_strange_blank(unsigned long code)
{
    return code == 0xA0 || code == 0xAD || code == 0x1680 || (code >= 0x2000 && code <= 0x200F) ||
           (code >= 0x2028 && code <= 0x202F) || (code >= 0x205F && code <= 0x206F) ||
           code == 0x3000 || code == 0xFEFF;
}

/* A letter that was refused. */
struct trouble {
    bool found;
    enum mistake mistake;
    size_t at;
    unsigned long code;
};

static void note_trouble(struct trouble *trouble, enum mistake mistake, size_t at,
                         unsigned long code)
{
    if (!trouble->found)
        *trouble = (struct trouble){true, mistake, at, code};
}

static void report(const struct trouble *trouble, struct written line, struct input *input)
{
    struct written at = written_part(input->arena, line, trouble->at, 0);
    at.text = "?";
    switch (trouble->mistake) {
    case MISTAKE_NUL_BYTE:
        mistake_add(input, MISTAKE_NUL_BYTE, at, "a byte of value 0 stands here; delete it");
        break;
    case MISTAKE_NOT_UTF_8:
        mistake_add(input, MISTAKE_NOT_UTF_8, at,
                    "byte %02lX is no letter in UTF-8; save the file as UTF-8", trouble->code);
        break;
    case MISTAKE_STRANGE_BLANK:
        mistake_add(input, MISTAKE_STRANGE_BLANK, at,
                    "letter U+%04lX looks like a plain blank or like nothing; write a plain blank",
                    trouble->code);
        break;
    default:
        mistake_add(input, MISTAKE_CONTROL_CHARACTER, at,
                    "control character U+%04lX stands here; delete it", trouble->code);
        break;
    }
}

struct written letters_check(struct raw_line raw, size_t comment, struct input *input, bool *fine)
{
    char *safe = text_copy_part(input->arena, raw.bytes, raw.count);
    struct trouble trouble = {false, MISTAKE_COUNT, 0, 0};
    for (size_t at = 0; at < raw.count;) {
        unsigned long code = 0;
        size_t length = letter_at(raw.bytes + at, raw.count - at, &code);
        if (length == 0) {
            note_trouble(&trouble, MISTAKE_NOT_UTF_8, at, (unsigned char)raw.bytes[at]);
            length = 1;
            safe[at] = '?';
        } else if (is_control(code)) {
            note_trouble(&trouble, code == 0 ? MISTAKE_NUL_BYTE : MISTAKE_CONTROL_CHARACTER, at,
                         code);
            memset(safe + at, '?', length);
        } else if (is_strange_blank(code)) {
            if (at < comment)
                note_trouble(&trouble, MISTAKE_STRANGE_BLANK, at, code);
        }
        at += length;
    }
    struct written line = {safe, safe, {input->file, raw.number, 1}};
    if (trouble.found)
        report(&trouble, line, input);
    *fine = !trouble.found;
    return line;
}
