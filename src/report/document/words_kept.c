#include "report/document/document.h"

#include <string.h>

#include "base/text.h"
#include "units/unit.h"

static bool ends_word(const char *at)
{
    return *at == '\0' || strchr(" \n,;:.)?!\"'", *at) != NULL ||
           strncmp(at, KEPT_BLANK, strlen(KEPT_BLANK)) == 0;
}

/* Bytes of the longest unit that stands here as a whole word; 0: none. */
static size_t unit_here(const char *at)
{
    size_t count, longest = 0;
    const struct unit *units = unit_table(&count);
    for (size_t i = 0; i < count; i++) {
        size_t length = strlen(units[i].name);
        if (length > longest && strncmp(at, units[i].name, length) == 0 && ends_word(at + length))
            longest = length;
    }
    return longest;
}

/* What is kept to the number before it: a unit, or the fraction of "1 1/16 in". */
static size_t kept_here(const char *at)
{
    size_t digits = strspn(at, "0123456789");
    if (digits > 0 && at[digits] == '/')
        return digits;
    return unit_here(at);
}

static void add_kept(struct text *into, const char *from, size_t length)
{
    for (size_t i = 0; i < length; i++)
        if (from[i] == ' ')
            text_add(into, KEPT_BLANK);
        else
            text_add_bytes(into, &from[i], 1);
}

static bool after_number(const char *words, const char *at)
{
    return at > words && at[-1] >= '0' && at[-1] <= '9';
}

const char *words_kept(struct arena *arena, const char *words)
{
    struct text kept = text_start(arena);
    const char *at = words;
    while (*at != '\0') {
        size_t length = *at == ' ' && after_number(words, at) ? kept_here(at + 1) : 0;
        length = length > 0 ? length + 1 : 1;
        if (length > 1)
            add_kept(&kept, at, length);
        else
            text_add_bytes(&kept, at, 1);
        at += length;
    }
    return kept.items != NULL ? kept.items : "";
}
