#include <math.h>
#include <string.h>

#include "report/text/text_frame.h"
#include "report/text/text_report.h"
#include "report/words/fit_words.h"
#include "units/unit.h"

static const char *value_words(struct arena *arena, double value, enum dimension dimension,
                               enum unit_system units)
{
    return isnan(value) ? "-" : unit_text(arena, value, dimension, units);
}

static void add_padded(struct text *into, const char *words, int width, bool right)
{
    int gap = width - text_letters(words);
    if (gap < 0)
        gap = 0;
    if (right)
        text_add(into, "%*s%s", gap, "", words);
    else
        text_add(into, "%s%*s", words, gap, "");
}

/* Every figure that the new bore changes. */
static void add_table(struct text *into, const struct result *result)
{
    const struct fit *fit = result->fit;
    struct arena *arena = into->arena;
    text_add(into, "\n");
    add_padded(into, "", 48, false);
    add_padded(into, "before", 14, true);
    add_padded(into, "after", 14, true);
    text_add(into, "\n");
    for (int i = 0; i < fit->line_count; i++) {
        const struct fit_line *line = &fit->lines[i];
        const char *title =
            line->of[0] != '\0' ? text_print(arena, "%s, %s", line->title, line->of) : line->title;
        add_padded(into, title, 48, false);
        add_padded(into, value_words(arena, line->before, line->dimension, result->units), 14,
                   true);
        add_padded(into, value_words(arena, line->after, line->dimension, result->units), 14, true);
        text_add(into, "%s\n", line->state == FIGURE_ASSUMED ? " *" : "");
    }
}

static const char *mark_of(enum fit_standing standing)
{
    static const char *const marks[] = {
        [FIT_FINE] = "ok", [FIT_CARE] = "! ", [FIT_CANNOT] = "? ", [FIT_AGAINST] = "!!"};
    return marks[standing];
}

static void add_answer(struct text *into, const struct result *result,
                       const struct fit_answer *answer)
{
    struct arena *arena = into->arena;
    const char *words = fit_lack_words(arena, result, answer);
    if (words != NULL)
        words = text_print(arena, "cannot say: %s", words);
    else if (answer->reason >= 0)
        words = fit_reason_words(arena, result, &result->fit->reasons[answer->reason]);
    else
        words = "no change";
    text_add(into, "  %s ", mark_of(answer->standing));
    text_add_wrapped(
        into, text_print(arena, "%s: %s", fit_question_words(result->fit, answer->question), words),
        5, 5, FRAME_WIDTH);
}

/* All that was judged, with the limit's name. */
static void add_reasons(struct text *into, const struct result *result)
{
    for (int i = 0; i < result->fit->reason_count; i++) {
        const struct fit_reason *reason = &result->fit->reasons[i];
        text_add(into, "  %s ", mark_of(reason->standing));
        const char *limit =
            reason->limit != NULL ? text_print(into->arena, " [%s]", reason->limit) : "";
        text_add_wrapped(into,
                         text_print(into->arena, "%s: %s%s",
                                    fit_question_words(result->fit, reason->question),
                                    fit_reason_words(into->arena, result, reason), limit),
                         5, 5, FRAME_WIDTH);
    }
}

static bool rests_on_assumed(const struct fit *fit)
{
    for (int i = 0; i < fit->reason_count; i++)
        if (fit->reasons[i].assumed)
            return true;
    return false;
}

/* The verdict stands in the third line, the worst answer comes first. */
void text_fit(struct text *into, const struct result *result, bool all)
{
    const struct fit *fit = result->fit;
    struct arena *arena = into->arena;
    frame_car(into, result);
    const char *was = isnan(fit->before.m) ? "a bore that is not said"
                                           : unit_show_bore(arena, fit->before.m, result->units);
    const struct part *parts = result->system->parts;
    if (fit->other >= 0)
        text_add(into, "%s and ", parts[fit->other].name);
    text_add(into, "%s: %s instead of %s\n", parts[fit->part].name,
             unit_show_bore(arena, fit->after.m, result->units), was);
    text_add_wrapped(into, fit_headline(arena, result), 0, 2, FRAME_WIDTH);
    frame_works(into, result);
    if (fit->verdict != FIT_NOTHING_CHANGES) {
        if (fit->nearest != NULL)
            text_add_wrapped(into, text_print(arena, "nearest standard bore: %s", fit->nearest), 0,
                             2, FRAME_WIDTH);
        text_add(into, "\n");
        for (int i = 0; i < fit->answer_count; i++)
            add_answer(into, result, &fit->answers[i]);
        if (all) {
            add_table(into, result);
            text_add(into, "\n");
            add_reasons(into, result);
        }
        if (rests_on_assumed(fit))
            text_add(into, "* rests on assumed values; `check` names them\n");
        if (!all)
            text_add(into, "`fit --all` shows every figure before and after.\n");
    }
    frame_deference(into);
}
