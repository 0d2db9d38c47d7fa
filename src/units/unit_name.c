#include "units/unit_name.h"

#include <string.h>

#include "base/text.h"

/* Longer than any unit name; what does not fit is no unit. */
#define LONGEST 32

/* Signs that are understood for others, or for nothing. */
static const struct {
    const char *sign;
    const char *meant;
} signs[] = {
    {" ", ""},    {"\t", ""},   {"\u00a0", ""}, {"-", ""},   {".", ""},  {"*", ""},
    {"·", ""},    {"⋅", ""},    {"^", ""},      {"²", "2"},  {"³", "3"}, {"°", "deg"},
    {"º", "deg"}, {"''", "\""}, {"″", "\""},    {"”", "\""}, {"′", "'"}, {"’", "'"},
};

static const char *meaning(const char *letters, size_t left, size_t *length)
{
    *length = 1;
    /* Most letters mean themselves; the whole table is gone through for every unit read. */
    if ((*letters >= 'a' && *letters <= 'z') || (*letters >= 'A' && *letters <= 'Z'))
        return NULL;
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++) {
        *length = strlen(signs[i].sign);
        if (*length <= left && memcmp(letters, signs[i].sign, *length) == 0)
            return signs[i].meant;
    }
    *length = 1;
    return NULL;
}

static bool is_digit(char letter)
{
    return letter >= '0' && letter <= '9';
}

/* Brings a unit name into the form in which two spellings of it are equal. false when it is too
 * long, or holds a digit that stands alone: "mm 3" are not cubic millimetres. */
static bool straighten(const char *letters, size_t length, char plain[static LONGEST])
{
    size_t count = 0;
    for (size_t at = 0; at < length;) {
        size_t taken;
        const char *meant = meaning(letters + at, length - at, &taken);
        bool is_gap = strchr(" \t-", letters[at]) != NULL;
        if (is_gap && at + 1 < length && is_digit(letters[at + 1]))
            return false;
        size_t room = meant ? strlen(meant) : 1;
        if (count + room >= LONGEST)
            return false;
        memcpy(plain + count, meant ? meant : letters + at, room);
        count += room;
        at += taken;
    }
    plain[count] = '\0';
    return count > 0;
}

static bool matches(const char *plain, const char *letters, size_t length, bool exactly)
{
    char other[LONGEST];
    if (!straighten(letters, length, other))
        return false;
    return exactly ? strcmp(plain, other) == 0 : text_same(plain, other);
}

static bool is_called(const struct unit *unit, const char *plain, bool exactly)
{
    if (matches(plain, unit->name, strlen(unit->name), exactly))
        return true;
    const char *other = unit->other_names ? unit->other_names : "";
    for (;;) {
        other += strspn(other, " ");
        size_t length = strcspn(other, " ");
        if (length == 0)
            return false;
        if (matches(plain, other, length, exactly))
            return true;
        other += length;
    }
}

/* Whether one of the blank-separated words is these letters. */
static bool is_word_of(const char *words, const char *letters, size_t length)
{
    while (*words != '\0') {
        size_t word = strcspn(words, " ");
        if (word == length && memcmp(words, letters, length) == 0)
            return true;
        words += word + (words[word] == ' ');
    }
    return false;
}

/* The unit of that kind whose name is written letter by letter as in the table, or NULL. */
static const struct unit *find_as_written(const char *letters, size_t length, enum dimension wanted)
{
    size_t count;
    const struct unit *table = unit_table(&count);
    for (size_t i = 0; i < count; i++)
        if (table[i].dimension == wanted &&
            ((strlen(table[i].name) == length && memcmp(table[i].name, letters, length) == 0) ||
             (table[i].other_names != NULL && is_word_of(table[i].other_names, letters, length))))
            return &table[i];
    return NULL;
}

const struct unit *unit_find(const char *letters, size_t length, enum dimension wanted)
{
    /* No two units of a kind share a spelling, so this is what the long way would find. */
    const struct unit *as_written = find_as_written(letters, length, wanted);
    if (as_written != NULL)
        return as_written;
    char plain[LONGEST];
    if (!straighten(letters, length, plain))
        return NULL;
    size_t count;
    const struct unit *table = unit_table(&count);
    const struct unit *found[4] = {NULL, NULL, NULL, NULL};
    for (size_t i = 0; i < count; i++) {
        size_t other_kind = table[i].dimension == wanted ? 0 : 2;
        size_t other_case = is_called(&table[i], plain, true) ? 0 : 1;
        if (other_case == 1 && !is_called(&table[i], plain, false))
            continue;
        if (!found[other_kind + other_case])
            found[other_kind + other_case] = &table[i];
    }
    for (size_t i = 0; i < 4; i++)
        if (found[i])
            return found[i];
    return NULL;
}

const char *unit_nearest(const char *letters, size_t length, enum dimension wanted)
{
    enum { MOST = 16 };
    char word[LONGEST];
    if (!straighten(letters, length, word))
        return NULL;
    size_t count;
    const struct unit *table = unit_table(&count);
    char plain[MOST][LONGEST];
    const char *known[MOST];
    const char *names[MOST];
    size_t known_count = 0;
    for (size_t i = 0; i < count && known_count < MOST; i++) {
        const char *name = table[i].name;
        if (table[i].dimension != wanted || !straighten(name, strlen(name), plain[known_count]))
            continue;
        known[known_count] = plain[known_count];
        names[known_count++] = name;
    }
    const char *nearest = text_nearest(word, known, known_count);
    for (size_t i = 0; i < known_count; i++)
        if (known[i] == nearest)
            return names[i];
    return NULL;
}
