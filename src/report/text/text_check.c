#include "report/text/text_report.h"

#include <stdio.h>
#include <string.h>

#include "report/words/rule_words.h"
#include "report/text/text_figures.h"
#include "report/text/text_frame.h"

#define FIGURES_INTRODUCTION                                                                       \
    "Value, stars, and the name to ask for: `firmpedal trace` leads from one figure down to the "  \
    "lines of the file, `firmpedal explain` says what it is. One star: it rests on something "     \
    "assumed. Two: more than half of what moves it is assumed."

/* A finding's words with the quantities of this car. */
struct said {
    const char *what;
    const char *why;
    const char *remedy;
};

static struct said said_of(struct arena *arena, const struct result *result,
                           const struct finding *finding)
{
    const char *const rows[3] = {finding->check->what, finding->check->why, finding->check->remedy};
    const char *words[3];
    for (int i = 0; i < 3; i++)
        words[i] = rows[i] == NULL ? NULL
                                   : fill_words(arena, rows[i], finding->quantities,
                                                finding->quantity_count, result->units);
    return (struct said){words[0], words[1], words[2]};
}

static bool same_words(const char *a, const char *b)
{
    return a == b || (a != NULL && b != NULL && strcmp(a, b) == 0);
}

/* Whether two findings say the same of two places: why and what to do are then said once. */
static bool alike(struct arena *arena, const struct result *result, const struct finding *a,
                  const struct finding *b)
{
    if (a->check != b->check || a->severity != b->severity || a->assumed != b->assumed ||
        !same_words(a->measure, b->measure))
        return false;
    struct said first = said_of(arena, result, a), second = said_of(arena, result, b);
    return same_words(first.why, second.why) && same_words(first.remedy, second.remedy);
}

static void add_what(struct text *into, const struct finding *finding, const char *what)
{
    text_add(into, "    ");
    text_add_wrapped(into,
                     finding->place.line > 0 ? text_print(into->arena, "%s (%s:%d)", what,
                                                          finding->place.file, finding->place.line)
                                             : what,
                     4, 6, FRAME_WIDTH);
}

static void add_led(struct text *into, const char *lead, const char *words)
{
    if (words == NULL)
        return;
    text_add(into, "    %s: ", lead);
    text_add_wrapped(into, words, 6 + (int)strlen(lead), 6, FRAME_WIDTH);
}

/* A finding with all that are like it. */
static void add_finding(struct text *into, const struct result *result, size_t at, bool *done)
{
    const struct findings *findings = &result->findings;
    const struct finding *finding = &findings->items[at];
    char signal[16];
    snprintf(signal, sizeof signal, "%s", severity_word(finding->severity));
    for (char *letter = signal; *letter != '\0'; letter++)
        *letter = (char)(*letter - 'a' + 'A');
    text_add(into, "%-8s %s\n", signal, finding->check->id);
    if (finding->guess != NULL)
        add_led(into, "Measure first",
                text_print(into->arena, "the %s; this rests mostly on assumed values.",
                           finding->measure == NULL ? "values that the figures below name"
                                                    : finding->measure));
    for (size_t i = at; i < findings->count; i++) {
        if (done[i] || !alike(into->arena, result, finding, &findings->items[i]))
            continue;
        done[i] = true;
        add_what(into, &findings->items[i], said_of(into->arena, result, &findings->items[i]).what);
    }
    struct said said = said_of(into->arena, result, finding);
    add_led(into, "Why", said.why);
    add_led(into, "Do", said.remedy);
    add_led(into, "Source", finding->check->source);
    if (finding->assumed && finding->guess == NULL)
        text_add(into, "    Rests on assumed values; see the figures below.\n");
}

static void add_findings(struct text *into, const struct result *result)
{
    bool *done = ARENA_ARRAY(into->arena, result->findings.count + 1, bool);
    for (size_t i = 0; i < result->findings.count; i++)
        if (!done[i])
            add_finding(into, result, i, done);
}

static void add_ruling(struct text *into, const struct result *result, const struct ruling *ruling)
{
    struct arena *arena = into->arena;
    const struct rule_row *rule = ruling->rule;
    text_add(into, "  %s\n      ", rule->title);
    const char *asks =
        text_print(arena, "%s: asks for %s %s; this car: %s%s", rule->id,
                   rule->at_most ? "at most" : "at least",
                   unit_text(arena, rule->value, rule->dimension, result->units),
                   ruling->outcome == RULE_NOT_COMPUTED
                       ? ruling_lack_words(arena, result->system, ruling)
                       : text_print(arena, "%s, %s",
                                    unit_text(arena, ruling->value, rule->dimension, result->units),
                                    ruling_words(ruling)),
                   ruling_assumed_words(ruling));
    text_add_wrapped(into, asks, 6, 6, FRAME_WIDTH);
    text_add(into, "      ");
    text_add_wrapped(into,
                     text_print(arena, "%s, %s; %s. %s, %s (%s)", rule->where,
                                rule_dates(rule, arena), rule->scope, rule->source, rule->clause,
                                rule->known == RULE_READ ? "read" : "from memory"),
                     6, 6, FRAME_WIDTH);
}

static void add_rulings_of(struct text *into, const struct result *result,
                           enum rule_concern concern, const char *heading)
{
    bool any = false;
    for (int i = 0; i < result->rulings.count; i++) {
        if (result->rulings.items[i].concern != concern)
            continue;
        if (!any)
            text_add_wrapped(into, heading, 0, 0, FRAME_WIDTH);
        any = true;
        add_ruling(into, result, &result->rulings.items[i]);
    }
}

static void add_rules(struct text *into, const struct result *result)
{
    frame_heading(into, "Measured against published rules");
    text_add_wrapped(into, RULES_INTRODUCTION, 0, 0, FRAME_WIDTH);
    add_rulings_of(into, result, RULE_CONCERNS, "Of vehicles in use, its class and date:");
    add_rulings_of(into, result, RULE_NEEDS_DATE,
                   "Hang on [vehicle] first used, which is not said exactly enough:");
    add_rulings_of(
        into, result, RULE_FOR_COMPARISON,
        "For comparison (asked of new types in its day, or of a date that was not read):");
    const char *others = rulings_elsewhere_words(into->arena, result);
    if (others != NULL)
        text_add_wrapped(into, others, 0, 0, FRAME_WIDTH);
}

static void add_part_notes(struct text *into, const struct result *result)
{
    struct note *notes;
    size_t count = notes_of(result->system, into->arena, &notes);
    bool any = false;
    for (size_t i = 0; i < count; i++) {
        if (!notes[i].of_part)
            continue;
        if (!any)
            frame_heading(into, "Notes");
        any = true;
        frame_note(into, &notes[i]);
    }
}

/* What was read at the car, each beside its figure. */
static void add_readings(struct text *into, const struct result *result)
{
    if (result->readings.count == 0)
        return;
    text_add(into, "Readings:\n");
    for (int i = 0; i < result->readings.count; i++) {
        const struct compared *compared = &result->readings.items[i];
        const struct figure *figure = compared->figure;
        const char *join = *figure->of != '\0' ? ", " : "";
        text_add(into, "  ");
        text_add_wrapped(into,
                         text_print(into->arena, "%s%s%s: %s", figure->row->title, join, figure->of,
                                    reading_words(into->arena, result, compared)),
                         2, 6, FRAME_WIDTH);
    }
}

static void add_verdicts(struct text *into, const struct result *result)
{
    text_add_wrapped(into, summary_words(into->arena, result), 0, 2, FRAME_WIDTH);
    text_add_wrapped(into, hoses_verdict_words(into->arena, &result->hoses), 0, 2, FRAME_WIDTH);
}

void text_check(struct text *into, const struct result *result)
{
    frame_title(into, result);
    text_add(into, "\n");
    add_verdicts(into, result);
    text_headlines(into, result);
    add_readings(into, result);
    text_add(into, "  * rests on something assumed; ** mostly assumed\n");
    frame_heading(into, "Findings, worst first");
    add_findings(into, result);
    frame_heading(into, "Figures");
    text_add_wrapped(into, FIGURES_INTRODUCTION, 0, 0, FRAME_WIDTH);
    text_figures(into, result);
    add_rules(into, result);
    add_part_notes(into, result);
    text_add(into, "\n");
    add_verdicts(into, result);
    frame_deference(into);
}
