#include "report/words/fit_words.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/words/pair_words.h"
#include "report/words/words.h"
#include "units/unit.h"

enum { MOST_NEEDS = 3 };

static const char *needs_words(struct arena *arena, const struct result *result,
                               const struct cited_key *needs, int count)
{
    return text_print(arena, "needs %s",
                      cited_list(arena, result->system, needs, count, MOST_NEEDS));
}

/* "rear drums"; "rear drums, drum diameter" where it is not the bore. */
static const char *what_words(struct arena *arena, const struct result *result,
                              const struct fit_change *change)
{
    const struct part *parts = result->system->parts;
    const char *what = parts[change->part].name;
    if (change->other >= 0) {
        const char *pair = pair_words(arena, what, parts[change->other].name);
        what =
            pair != NULL ? pair : text_print(arena, "%s and %s", parts[change->other].name, what);
    }
    return change->nearest != NULL ? what : text_print(arena, "%s, %s", what, change->key->name);
}

static const char *value_words(struct arena *arena, const struct result *result,
                               const struct fit_change *change, double value, int pistons)
{
    const struct key *key = change->key;
    if (isnan(value))
        return text_print(arena, "a %s that is not said", key->name);
    switch (key->form) {
    case FORM_CHOICE:
        return choice_of_value(key, (int)value)->word;
    case FORM_COUNT:
        return text_print(arena, "%.0f", value);
    case FORM_BORES:
        return change->pistons_before == change->pistons_after
                   ? unit_show_bore(arena, value, result->units)
                   : text_print(arena, "%d of %s", pistons,
                                unit_show_bore(arena, value, result->units));
    case FORM_QUANTITY:
    case FORM_TEXT:
    case FORM_DATE:
    case FORM_PART:
    case FORM_PARTS:
    case FORM_WORDS:
        break;
    }
    return change->nearest != NULL ? unit_show_bore(arena, value, result->units)
                                   : unit_text(arena, value, key->dimension, result->units);
}

const char *fit_change_words(struct arena *arena, const struct result *result,
                             const struct fit_change *change)
{
    return text_print(arena, "%s: %s instead of %s", what_words(arena, result, change),
                      value_words(arena, result, change, change->after, change->pistons_after),
                      value_words(arena, result, change, change->before, change->pistons_before));
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
