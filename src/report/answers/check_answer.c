#include "report/answers/answers.h"

#include "base/text.h"
#include "report/answers/answer_figures.h"
#include "report/answers/answer_findings.h"
#include "report/answers/answer_rules.h"
#include "report/words/pair_words.h"

/* --- in short -------------------------------------------------------------------------------- */

static void add_verdicts(struct document *into, const struct result *result)
{
    document_words(into, summary_words(into->arena, result))->hang = 1;
    document_words(into, hoses_verdict_words(into->arena, &result->hoses))->hang = 1;
}

/* What was read at the car, each beside its figure. */
static void add_readings(struct document *into, const struct result *result)
{
    if (result->readings.count > 0)
        document_head(into, 2, "Readings");
    for (int i = 0; i < result->readings.count; i++) {
        const struct compared *compared = &result->readings.items[i];
        const struct figure *figure = compared->figure;
        const char *join = *figure->of != '\0' ? ", " : "";
        struct block *block = document_words(
            into, text_print(into->arena, "%s%s%s: %s", figure->row->title, join, figure->of,
                             reading_words(into->arena, result, compared)));
        block->indent = 1;
        block->hang = 2;
    }
}

/* The three values whose measuring tells most. */
static const char *measure_words(struct arena *arena, const struct result *result)
{
    enum { MOST_MEASURED = 3 };
    struct text words = text_start(arena);
    for (int i = 0; i < result->measure.count && i < MOST_MEASURED; i++)
        text_add(&words, "%s%s", i > 0 ? "; " : "",
                 words_paired(arena, result->system, result->measure.items[i].words));
    return words.items;
}

static void add_next(struct document *into, const struct result *result)
{
    struct table *next = answer_next(into);
    answer_label(next, "Measure first", measure_words(into->arena, result));
    answer_label(next, "Why, what to do, all figures", "the same with --all");
    answer_label(next, "How one figure comes about", "firmpedal trace CAR --figure NAME");
    answer_label(next, "Go on with", "firmpedal hoses, open, bleed; sheet prints it");
}

static void in_short(struct document *into, const struct result *result)
{
    answer_title(into, result);
    answer_notes(into, result);
    add_verdicts(into, result);
    answer_findings_in_short(into, result, SEVERITY_DANGER,
                             "Not on the road before this is mended");
    answer_findings_in_short(into, result, SEVERITY_WARNING, "Look at this first");
    add_readings(into, result);
    answer_figures(into, result);
    document_words(into, ANSWER_MARKS);
    add_next(into, result);
    answer_deference(into, false);
}

/* --- in full --------------------------------------------------------------------------------- */

#define FIGURES_INTRODUCTION                                                                       \
    "Value, mark, and the name to ask for: `firmpedal trace` leads from one figure down to the "   \
    "lines of the file, `firmpedal explain` says what it is. " ANSWER_MARKS "."

static void add_part_notes(struct document *into, const struct result *result)
{
    struct note *notes;
    size_t count = notes_of(result->system, into->arena, &notes);
    bool any = false;
    for (size_t i = 0; i < count; i++) {
        if (!notes[i].of_part)
            continue;
        if (!any)
            document_head(into, 2, "Notes");
        any = true;
        answer_note(into, &notes[i]);
    }
}

static void in_full(struct document *into, const struct result *result)
{
    answer_title_in_full(into, result);
    document_gap(into);
    add_verdicts(into, result);
    add_readings(into, result);
    document_head(into, 2, "Findings, worst first");
    answer_findings_in_full(into, result);
    document_head(into, 2, "Figures");
    document_words(into, FIGURES_INTRODUCTION);
    answer_all_figures(into, result);
    answer_all_rules(into, result);
    add_part_notes(into, result);
    answer_deference(into, true);
}

void answer_check(struct document *into, const struct result *result, bool all)
{
    if (all)
        in_full(into, result);
    else
        in_short(into, result);
}
