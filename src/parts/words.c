#include "parts/words.h"

#include <string.h>

static bool is_gap(char letter)
{
    return letter == ' ' || letter == '\t' || letter == '-' || letter == '_';
}

static char small(char letter)
{
    return letter >= 'A' && letter <= 'Z' ? (char)(letter - 'A' + 'a') : letter;
}

/* Compares the first a_length letters of a with the first b_length of b. */
static bool same_letters(const char *a, size_t a_length, const char *b, size_t b_length)
{
    size_t i = 0, j = 0;
    for (;;) {
        while (i < a_length && is_gap(a[i]))
            i++;
        while (j < b_length && is_gap(b[j]))
            j++;
        if (i == a_length || j == b_length)
            return i == a_length && j == b_length;
        if (small(a[i++]) != small(b[j++]))
            return false;
    }
}

bool words_same(const char *a, const char *b)
{
    return same_letters(a, strlen(a), b, strlen(b));
}

const char *words_next(const char **list, size_t *length)
{
    const char *item = *list;
    if (item == NULL)
        return NULL;
    item += strspn(item, " \t,");
    if (*item == '\0')
        return NULL;
    size_t letters = strcspn(item, ",");
    *list = item + letters;
    while (letters > 0 && (item[letters - 1] == ' ' || item[letters - 1] == '\t'))
        letters--;
    *length = letters;
    return item;
}

bool words_among(const char *words, const char *list)
{
    size_t length;
    for (const char *item; (item = words_next(&list, &length)) != NULL;)
        if (same_letters(words, strlen(words), item, length))
            return true;
    return false;
}

bool words_end_with(const char *words, const char *end, size_t *letters)
{
    size_t length = strlen(words);
    for (size_t from = 0; from < length; from++) {
        bool begins_word = !is_gap(words[from]) && (from == 0 || is_gap(words[from - 1]));
        if (begins_word && same_letters(words + from, length - from, end, strlen(end))) {
            *letters = length - from;
            return true;
        }
    }
    return false;
}

bool words_begin_with(const char *words, const char *beginning, size_t *letters)
{
    size_t length = strlen(words);
    for (size_t to = length; to > 0; to--) {
        bool ends_word = !is_gap(words[to - 1]) && (to == length || is_gap(words[to]));
        if (ends_word && same_letters(words, to, beginning, strlen(beginning))) {
            *letters = to;
            return true;
        }
    }
    return false;
}
