#include "report/answers/answers.h"

#include <ctype.h>
#include <math.h>

#include "report/answers/answer.h"
#include "report/words/fit_words.h"
#include "units/unit.h"

static const char *value_words(struct arena *arena, double value, enum dimension dimension,
                               enum unit_system units)
{
    return isnan(value) ? "-" : unit_text(arena, value, dimension, units);
}

/* Every figure that changes. */
static void add_figures(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {{"", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                                  {"before", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
                                                  {"after", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
                                                  {"", CELL_FIGURE, CELL_LEFT, 0, 0, true}};
    const struct fit *fit = result->fit;
    struct arena *arena = into->arena;
    document_gap(into);
    struct table *table = document_table(into, columns, 4);
    for (int i = 0; i < fit->line_count; i++) {
        const struct fit_line *line = &fit->lines[i];
        table_row(table);
        table_cell(table, line->of[0] != '\0' ? text_print(arena, "%s, %s", line->title, line->of)
                                              : line->title);
        table_cell(table, value_words(arena, line->before, line->dimension, result->units));
        table_cell(table, value_words(arena, line->after, line->dimension, result->units));
        table_cell(table, line->state == FIGURE_ASSUMED ? "*" : "");
    }
}

static const char *mark_of(enum fit_standing standing)
{
    static const char *const marks[] = {
        [FIT_FINE] = "ok", [FIT_CARE] = "!", [FIT_CANNOT] = "?", [FIT_AGAINST] = "!!"};
    return marks[standing];
}

static void add_judged(struct table *table, enum fit_standing standing, const char *words)
{
    table_row(table);
    table_cell(table, mark_of(standing))->tone =
        standing == FIT_AGAINST ? TONE_WARNING : TONE_PLAIN;
    table_cell(table, words);
}

static const char *answer_words(struct arena *arena, const struct result *result,
                                const struct fit_answer *answer)
{
    const char *words = fit_lack_words(arena, result, answer);
    if (words != NULL)
        words = text_print(arena, "cannot say: %s", words);
    else if (answer->reason >= 0)
        words = fit_reason_words(arena, result, &result->fit->reasons[answer->reason]);
    else
        words = "no change";
    return text_print(arena, "%s: %s", fit_question_words(result->fit, answer->question), words);
}

/* All that was judged, with the limit's name. */
static void add_reasons(struct document *into, const struct result *result)
{
    struct arena *arena = into->arena;
    document_gap(into);
    struct table *table = answer_labels(into, 1);
    for (int i = 0; i < result->fit->reason_count; i++) {
        const struct fit_reason *reason = &result->fit->reasons[i];
        const char *limit = reason->limit != NULL ? text_print(arena, " [%s]", reason->limit) : "";
        add_judged(table, reason->standing,
                   text_print(arena, "%s: %s%s", fit_question_words(result->fit, reason->question),
                              fit_reason_words(arena, result, reason), limit));
    }
}

static bool rests_on_assumed(const struct fit *fit)
{
    for (int i = 0; i < fit->reason_count; i++)
        if (fit->reasons[i].assumed)
            return true;
    return false;
}

/* The title, what is changed, and the verdict as the third line in any width: what comes before it
 * is not wrapped, so the changes stand with the verdict where they would not fit. */
static void add_head(struct document *into, const struct result *result)
{
    const struct fit *fit = result->fit;
    struct arena *arena = into->arena;
    answer_title(into, result);
    document_gap(into);
    document_words(into, fit_headline(arena, result))->tone = TONE_STRONG;
    for (int i = 0; i < fit->change_count; i++) {
        const struct fit_change *change = &fit->changes[i];
        document_words(into, fit_change_words(arena, result, change))->hang = 1;
        if (change->nearest != NULL)
            document_words(into, text_print(arena, "nearest standard bore: %s", change->nearest))
                ->hang = 1;
    }
}

void answer_fit(struct document *into, const struct result *result, bool all)
{
    const struct fit *fit = result->fit;
    add_head(into, result);
    if (fit->verdict == FIT_NOTHING_CHANGES) {
        answer_deference(into, all);
        return;
    }
    document_gap(into);
    struct table *answers = answer_labels(into, 0);
    for (int i = 0; i < fit->answer_count; i++)
        add_judged(answers, fit->answers[i].standing,
                   answer_words(into->arena, result, &fit->answers[i]));
    if (all) {
        add_figures(into, result);
        add_reasons(into, result);
    }
    document_gap(into);
    const char *assumed = rests_on_assumed(fit) ? "* rests on assumed values. " : "";
    document_words(into,
                   all ? assumed
                       : text_print(into->arena, "%sEvery figure: the same with --all", assumed));
    answer_deference(into, all);
}
