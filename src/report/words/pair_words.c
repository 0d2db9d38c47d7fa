#include "report/words/pair_words.h"

#include <string.h>

#include "base/text.h"

/* A name without a side; NULL when it does not say that side. */
static const char *without_side(struct arena *arena, const char *name, const char *side)
{
    const char *at = strstr(name, side);
    if (at == NULL || (at > name && at[-1] != ' '))
        return NULL;
    return text_print(arena, "%.*s%s", (int)(at - name), name, at + strlen(side));
}

static bool same(const char *a, const char *b)
{
    return a != NULL && b != NULL && strcmp(a, b) == 0;
}

const char *pair_words(struct arena *arena, const char *one, const char *other)
{
    const char *left = without_side(arena, one, "left ");
    const char *right = without_side(arena, other, "right ");
    if (!same(left, right)) {
        left = without_side(arena, one, "right ");
        right = without_side(arena, other, "left ");
    }
    return same(left, right) ? text_print(arena, "%ss", left) : NULL;
}

const char *words_renamed(struct arena *arena, const char *words, const char *from, const char *to)
{
    struct text out = text_start(arena);
    if (strstr(words, from) == NULL)
        return words;
    for (const char *at; (at = strstr(words, from)) != NULL; words = at + strlen(from)) {
        text_add_bytes(&out, words, (size_t)(at - words));
        text_add(&out, "%s", to);
    }
    text_add(&out, "%s", words);
    return out.items;
}

/* Words in which "X of the left drum and X of the right drum" is "X of the drums". */
static const char *led_paired(struct arena *arena, const char *words, const char *one,
                              const char *other, const char *pair)
{
    const char *at = strstr(words, text_print(arena, "%s and ", one));
    if (at == NULL)
        return words;
    const char *lead = at + strlen(one) + strlen(" and ");
    const char *end = strstr(lead, other);
    size_t length = end == NULL ? 0 : (size_t)(end - lead);
    if (length == 0 || (size_t)(at - words) < length || strncmp(at - length, lead, length) != 0)
        return words;
    return text_print(arena, "%.*s%s%s", (int)(at - words), words, pair, end + strlen(other));
}

const char *words_paired(struct arena *arena, const struct system *system, const char *words)
{
    static const char *const joins[] = {" and ", ", "};
    for (int i = 0; i < system->part_count; i++)
        for (int k = 0; k < system->part_count; k++) {
            const char *one = system->parts[i].name, *other = system->parts[k].name;
            if (i == k || strstr(words, one) == NULL || strstr(words, other) == NULL)
                continue;
            const char *pair = pair_words(arena, one, other);
            for (int join = 0; pair != NULL && join < 2; join++)
                words = words_renamed(arena, words,
                                      text_print(arena, "%s%s%s", one, joins[join], other), pair);
            if (pair != NULL)
                words = led_paired(arena, words, one, other, pair);
        }
    return words;
}
