#include "report/answers/answer_findings.h"

#include <ctype.h>
#include <string.h>

#include "base/text.h"
#include "report/words/step_words.h"
#include "report/words/words.h"

static const char *filled(struct arena *arena, const struct result *result,
                          const struct finding *finding, const char *words)
{
    return words == NULL ? NULL
                         : fill_words(arena, words, finding->quantities, finding->quantity_count,
                                      result->units);
}

static bool same_words(const char *a, const char *b)
{
    return a == b || (a != NULL && b != NULL && strcmp(a, b) == 0);
}

static const char *signal_of(struct arena *arena, const struct finding *finding)
{
    char *signal = text_copy(arena, severity_word(finding->severity));
    for (char *letter = signal; *letter != '\0'; letter++)
        *letter = (char)toupper((unsigned char)*letter);
    return signal;
}

static const char *mark_of(const struct finding *finding)
{
    return finding->guess != NULL ? KEPT_BLANK "**" : finding->assumed ? KEPT_BLANK "*" : "";
}

/* --- in short -------------------------------------------------------------------------------- */

static bool says(struct arena *arena, const char *words, const char *name)
{
    return strstr(words, text_print(arena, "{%s}", name)) != NULL;
}

/* The one name in which another finding of the same check differs; NULL when it differs in more. */
static const char *other_name(struct arena *arena, const struct result *result,
                              const struct finding *a, const struct finding *b)
{
    if (a->check != b->check || a->severity != b->severity || strcmp(mark_of(a), mark_of(b)) != 0 ||
        a->quantity_count != b->quantity_count)
        return NULL;
    struct finding mixed = *a;
    const char *name = NULL;
    for (int i = 0; i < a->quantity_count; i++) {
        const char *theirs = b->quantities[i].text;
        if (a->quantities[i].text == NULL || same_words(a->quantities[i].text, theirs) ||
            !says(arena, a->check->what, a->quantities[i].name))
            continue;
        if (name != NULL || theirs == NULL)
            return NULL;
        name = theirs;
        mixed.quantities[i].text = theirs;
    }
    bool alike = same_words(filled(arena, result, &mixed, a->check->what),
                            filled(arena, result, b, b->check->what));
    return alike ? name : NULL;
}

static const char *brief_words(struct arena *arena, const struct result *result, size_t at,
                               bool *done)
{
    const struct findings *findings = &result->findings;
    const struct finding *finding = &findings->items[at];
    struct text also = text_start(arena);
    for (size_t i = at + 1; i < findings->count; i++) {
        const char *name = done[i] ? NULL : other_name(arena, result, finding, &findings->items[i]);
        if (name == NULL)
            continue;
        done[i] = true;
        text_add(&also, "%s%s", also.count > 0 ? ", " : " The same: ", name);
    }
    return text_print(arena, "%s%s%s%s",
                      first_sentence(arena, filled(arena, result, finding, finding->check->what)),
                      mark_of(finding), also.items, also.count > 0 ? "." : "");
}

bool answer_findings_in_short(struct document *into, const struct result *result,
                              enum severity severity, const char *heading)
{
    const struct findings *findings = &result->findings;
    struct arena *arena = into->arena;
    bool *done = ARENA_ARRAY(arena, findings->count + 1, bool);
    bool any = false;
    for (size_t i = 0; i < findings->count; i++) {
        if (done[i] || findings->items[i].severity != severity)
            continue;
        if (!any && heading != NULL)
            document_head(into, 2, heading);
        any = true;
        document_caution(into, signal_of(arena, &findings->items[i]),
                         brief_words(arena, result, i, done));
    }
    return any;
}

/* --- in full --------------------------------------------------------------------------------- */

/* Whether two findings say the same of two places: why and what to do are then said once. */
static bool alike(struct arena *arena, const struct result *result, const struct finding *a,
                  const struct finding *b)
{
    return a->check == b->check && a->severity == b->severity && a->assumed == b->assumed &&
           same_words(a->measure, b->measure) &&
           same_words(filled(arena, result, a, a->check->why),
                      filled(arena, result, b, b->check->why)) &&
           same_words(filled(arena, result, a, a->check->remedy),
                      filled(arena, result, b, b->check->remedy));
}

static void add_led(struct document *into, const char *lead, const char *words)
{
    if (words == NULL)
        return;
    struct block *block = document_words(into, text_print(into->arena, "%s%s", lead, words));
    block->indent = 2;
    block->hang = 1;
}

static const char *what_words(struct arena *arena, const struct result *result,
                              const struct finding *finding)
{
    const char *what = filled(arena, result, finding, finding->check->what);
    return finding->place.line > 0
               ? text_print(arena, "%s (%s:%d)", what, finding->place.file, finding->place.line)
               : what;
}

static void add_finding(struct document *into, const struct result *result, size_t at, bool *done)
{
    const struct findings *findings = &result->findings;
    const struct finding *finding = &findings->items[at];
    struct arena *arena = into->arena;
    document_caution(into, signal_of(arena, finding), finding->check->id);
    if (finding->guess != NULL)
        add_led(into, "Measure first: ",
                text_print(arena, "the %s; this rests mostly on assumed values.",
                           finding->measure == NULL ? "values that the figures below name"
                                                    : finding->measure));
    for (size_t i = at; i < findings->count; i++) {
        if (done[i] || !alike(arena, result, finding, &findings->items[i]))
            continue;
        done[i] = true;
        add_led(into, "", what_words(arena, result, &findings->items[i]));
    }
    add_led(into, "Why: ", filled(arena, result, finding, finding->check->why));
    add_led(into, "Do: ", filled(arena, result, finding, finding->check->remedy));
    add_led(into, "Source: ", finding->check->source);
    if (finding->assumed && finding->guess == NULL)
        add_led(into, "", "Rests on assumed values; see the figures below.");
}

void answer_findings_in_full(struct document *into, const struct result *result)
{
    bool *done = ARENA_ARRAY(into->arena, result->findings.count + 1, bool);
    for (size_t i = 0; i < result->findings.count; i++)
        if (!done[i])
            add_finding(into, result, i, done);
}

void answer_unsettled(struct document *into, const struct result *result)
{
    struct arena *arena = into->arena;
    for (size_t i = 0; i < result->unsettled.count; i++) {
        const struct finding *finding = &result->unsettled.items[i];
        document_caution(into, signal_of(arena, finding),
                         text_print(arena, "NOT SETTLED. %s It stays on the car. %s [%s]",
                                    filled(arena, result, finding, finding->check->what),
                                    filled(arena, result, finding, finding->check->remedy),
                                    finding->check->id));
    }
}
