#include "base/first_bytes.h"

#include <stdbool.h>
#include <string.h>

/* Beginnings by which kinds of file are told.
 * Sources: ISO 32000-1, 7.5.2 (PDF); W3C, Portable Network Graphics, 5.2; the others from memory.
 */
static const struct {
    const char *bytes;
    size_t count;
    enum file_kind kind;
    const char *words;
} rows[] = {
#define BEGINS(bytes, kind, words)                                                                 \
    {                                                                                              \
        bytes, sizeof(bytes) - 1, kind, words                                                      \
    }
    BEGINS("%PDF-", FILE_PDF, "a PDF"),
    BEGINS("\x89PNG\r\n\x1A\n", FILE_PNG, "a PNG picture"),
    BEGINS("\xFF\xD8\xFF", FILE_FOREIGN, "a JPEG picture"),
    BEGINS("GIF8", FILE_FOREIGN, "a GIF picture"),
    BEGINS("II*\0", FILE_FOREIGN, "a TIFF picture"),
    BEGINS("MM\0*", FILE_FOREIGN, "a TIFF picture"),
    BEGINS("PK\x03\x04", FILE_FOREIGN, "an archive or an office document"),
    BEGINS("\xD0\xCF\x11\xE0", FILE_FOREIGN, "an office document"),
    BEGINS("{\\rtf", FILE_FOREIGN, "a document of a word processor"),
    BEGINS("\x1F\x8B", FILE_FOREIGN, "a packed file"),
    BEGINS("\x7F"
           "ELF",
           FILE_FOREIGN, "a program"),
#undef BEGINS
};

/* The bytes of a word within the first so many; what stands before an <svg> is short. */
static bool has_word(const char *bytes, size_t count, const char *word)
{
    size_t length = strlen(word);
    for (size_t i = 0; i + length <= count; i++)
        if (memcmp(bytes + i, word, length) == 0)
            return true;
    return false;
}

static bool begins(const char *bytes, size_t count, const char *word)
{
    return count >= strlen(word) && memcmp(bytes, word, strlen(word)) == 0;
}

static bool is_svg(const char *bytes, size_t count)
{
    enum { PROLOGUE = 512 };
    if (begins(bytes, count, "<svg"))
        return true;
    return begins(bytes, count, "<?xml") &&
           has_word(bytes, count < PROLOGUE ? count : PROLOGUE, "<svg");
}

/* Whether it is no text at all: a few strange letters are a typing mistake, many are not. */
static bool is_text(const char *bytes, size_t count)
{
    size_t controls = 0;
    for (size_t i = 0; i < count; i++) {
        unsigned char byte = (unsigned char)bytes[i];
        controls += (byte < 0x20 && !strchr("\t\n\r\f", byte)) || byte == 0x7F || byte == 0;
    }
    return controls * 50 <= count || controls < 4;
}

enum file_kind first_bytes_kind(const char *bytes, size_t count, const char **words)
{
    if (count > FIRST_BYTES)
        count = FIRST_BYTES;
    *words = "an empty file";
    if (count == 0)
        return FILE_EMPTY;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (count >= rows[i].count && memcmp(bytes, rows[i].bytes, rows[i].count) == 0) {
            *words = rows[i].words;
            return rows[i].kind;
        }
    if (is_svg(bytes, count)) {
        *words = "an SVG picture";
        return FILE_SVG;
    }
    *words = "text";
    if (is_text(bytes, count))
        return FILE_TEXT;
    *words = "a file of an unknown kind";
    return FILE_UNKNOWN;
}
