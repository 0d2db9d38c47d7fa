#include "report/words/fit_words.h"

#include <string.h>

#include "base/text.h"
#include "report/words/words.h"
#include "units/unit.h"

enum { MOST_NEEDS = 3 };

static const char *needs_words(struct arena *arena, const struct result *result,
                               const struct cited_key *needs, int count)
{
    return text_print(arena, "needs %s",
                      cited_list(arena, result->system, needs, count, MOST_NEEDS));
}

const char *fit_lack_words(struct arena *arena, const struct result *result,
                           const struct fit_answer *answer)
{
    if (answer->standing != FIT_CANNOT)
        return NULL;
    return answer->needs_count > 0 ? needs_words(arena, result, answer->needs, answer->needs_count)
                                   : (answer->why != NULL ? answer->why : "not computed");
}

const char *fit_headline(struct arena *arena, const struct result *result)
{
    const struct fit *fit = result->fit;
    const char *words = fit_verdict_words(fit->verdict);
    if (fit->verdict != FIT_CANNOT_SAY)
        return words;
    if (fit->needs_count > 0)
        return text_print(arena, "%s: %s", words,
                          needs_words(arena, result, fit->needs, fit->needs_count));
    for (int i = 0; i < fit->answer_count; i++)
        if (fit->answers[i].standing == FIT_CANNOT)
            return text_print(arena, "%s: %s", words,
                              fit_lack_words(arena, result, &fit->answers[i]));
    return words;
}

const char *fit_reason_words(struct arena *arena, const struct result *result,
                             const struct fit_reason *reason)
{
    const struct limit_row *limit = reason->limit != NULL ? limit_find(reason->limit) : NULL;
    bool memory = limit != NULL && limit->value != 0 &&
                  strstr(limit->source, "(from memory)") != NULL &&
                  strstr(reason->words, "{limit}") != NULL;
    return text_print(
        arena, "%s%s%s",
        fill_words(arena, reason->words, reason->quantities, reason->quantity_count, result->units),
        memory ? " (from memory)" : "", reason->assumed ? " *" : "");
}

/* "!! effort: 220 N, then 271 N for the same stop: 23 % more, and you will feel it *" */
