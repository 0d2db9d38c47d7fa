#include "report/words/step_words.h"

#include <ctype.h>
#include <string.h>

#include "base/text.h"
#include "report/words/pair_words.h"

const char *first_sentence(struct arena *arena, const char *words)
{
    for (const char *at = words; (at = strstr(at, ". ")) != NULL; at++)
        if (isupper((unsigned char)at[2]))
            return text_copy_part(arena, words, (size_t)(at - words + 1));
    return words;
}

/* Small at its beginning, but for "DOT". */
static const char *small(struct arena *arena, const char *words)
{
    char *copy = text_copy(arena, words);
    if (isupper((unsigned char)copy[0]) && !isupper((unsigned char)copy[1]))
        copy[0] = (char)tolower((unsigned char)copy[0]);
    return copy;
}

/* Up to the first full stop, colon or semicolon that a blank or the end follows. */
static const char *beginning(struct arena *arena, const char *words)
{
    for (const char *at = words; *at != '\0'; at++)
        if (strchr(".:;", *at) != NULL && (at[1] == ' ' || at[1] == '\0'))
            return text_copy_part(arena, words, (size_t)(at - words));
    return words;
}

const char *step_brief(struct arena *arena, const struct result *result, const struct step *step)
{
    const char *brief = step->row->brief;
    const char *words = step_words(arena, result, step, brief != NULL ? brief : step->row->words);
    if (brief == NULL)
        words = beginning(arena, words);
    return small(arena, words_paired(arena, result->system, words));
}

const char *phase_briefs(struct arena *arena, const struct result *result, enum step_phase phase,
                         int *count)
{
    struct text words = text_start(arena);
    *count = 0;
    for (size_t i = 0; i < result->plan->steps.count; i++) {
        const struct step *step = &result->plan->steps.items[i];
        if (step->row->phase != phase)
            continue;
        text_add(&words, "%s%s", *count > 0 ? "; " : "", step_brief(arena, result, step));
        ++*count;
    }
    return words.items;
}
