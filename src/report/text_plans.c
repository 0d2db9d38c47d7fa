#include "report/text_report.h"

#include <math.h>

#include "report/text_frame.h"
#include "units/unit.h"

static void add_hose(struct text *into, const struct hose_line *line)
{
    char date[16] = "no date";
    if (date_known(line->renewed))
        date_write(line->renewed, date);
    text_add(into, "  [%c] %-32s %-9s %s\n", line->standing == HOSE_IS_NEW ? 'x' : ' ', line->name,
             line->use, line->hose >= 0 ? date : "");
    text_add(into, "      ");
    text_add_wrapped(
        into,
        text_print(into->arena, "%s: %s%s%s", line->where, hose_standing_words(line->standing),
                   line->reason != NULL ? ": " : "", line->reason != NULL ? line->reason : ""),
        6, 6, FRAME_WIDTH);
}

void text_hoses(struct text *into, const struct result *result)
{
    const struct hose_list *hoses = &result->hoses;
    text_add(into, "%s\n\n", hoses_verdict_words(into->arena, hoses));
    frame_title(into, result);
    text_add(into, "\n");
    for (int i = 0; i < hoses->count; i++)
        add_hose(into, &hoses->items[i]);
    text_add(into,
             "\n  needed %d, there %d, renewed in this work %d, old %d, age not known %d, "
             "missing %d\n",
             hoses->needed, hoses->has, hoses->renewed, hoses->old, hoses->unknown, hoses->missing);
    frame_deference(into);
}

void text_open(struct text *into, const struct result *result)
{
    frame_title(into, result);
    text_add(into, "\n");
    if (result->opening.count == 0) {
        text_add_wrapped(into,
                         "Nothing to open: no work file renews or replaces a part. Name the parts "
                         "in a work file under [work] renewed, or in [replaced ...].",
                         0, 0, FRAME_WIDTH);
        return;
    }
    frame_cautions(into, result, CAUTION_ALWAYS);
    frame_cautions(into, result, CAUTION_LIFTED);
    frame_cautions(into, result, CAUTION_DRUMS);
    enum step_phase phase = PHASE_LATER;
    for (size_t i = 0; i < result->opening.count; i++) {
        const struct step *step = &result->opening.items[i];
        if (step->row->phase != phase)
            frame_heading(into, step->row->phase == PHASE_CLOSING ? "Closing" : "Opening");
        phase = step->row->phase;
        frame_step(into, result, &result->opening, i);
    }
    frame_deference(into);
}

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

void text_fit(struct text *into, const struct result *result)
{
    const struct fit *fit = result->fit;
    struct arena *arena = into->arena;
    frame_title(into, result);
    text_add(into, "\n%s: %s instead of %s\n", result->system->parts[fit->part].name,
             unit_show_bore(arena, fit->after.m, result->units),
             unit_show_bore(arena, fit->before.m, result->units));
    if (fit->nearest != NULL)
        text_add_wrapped(into, fit->nearest, 0, 0, FRAME_WIDTH);
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
    text_add(into, "* rests on assumed values; `check` names them\n\n");
    text_add(into, "%s\n", fit_verdict_words(fit->verdict));
    for (int i = 0; i < fit->reason_count; i++) {
        const struct fit_reason *reason = &fit->reasons[i];
        text_add(into, "  %s ", reason->against ? (reason->grave ? "!!" : "! ") : "ok");
        text_add_wrapped(into,
                         text_print(arena, "%s [%s]",
                                    fill_words(arena, reason->words, reason->quantities,
                                               reason->quantity_count, result->units),
                                    reason->limit),
                         5, 5, FRAME_WIDTH);
    }
    frame_deference(into);
}
