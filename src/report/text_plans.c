#include "report/text_report.h"

#include <math.h>

#include "report/text_frame.h"
#include "units/unit.h"

static void add_cautions(struct text *into, const struct result *result, enum caution_when when)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    for (size_t i = 0; i < count; i++) {
        if (rows[i].when != when || !caution_applies(&rows[i], result->system))
            continue;
        const char *words = text_print(into->arena, "%s. %s: %s %s", rows[i].signal, rows[i].hazard,
                                       rows[i].harm, rows[i].avoid);
        text_add_wrapped(into, words, 0, 4, FRAME_WIDTH);
    }
}

/* The volume stands in the step's own words. */
static void add_run(struct text *into, const struct result *result, const struct step *step)
{
    if (isnan(step->run.m))
        text_add(into, "     Pipe run: not known; needs the lengths of pipes and hoses\n");
    else
        text_add(into, "     Pipe run: %s%s\n",
                 unit_text(into->arena, step->run.m, DIMENSION_LENGTH, result->units),
                 step->run_assumed ? " (assumed)" : "");
}

static void add_scope(struct text *into, const struct bleed_plan *plan)
{
    static const char *const words[] = {"Nothing needs bleeding", "Only what was opened is bled",
                                        "Every nipple is bled"};
    text_add_wrapped(into,
                     text_print(into->arena, "%s: %s.%s", words[plan->scope], plan->scope_reason,
                                plan->makers_order ? " The order is the one the description gives "
                                                     "as the maker's."
                                                   : ""),
                     0, 0, FRAME_WIDTH);
}

void text_bleed(struct text *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    frame_title(into, result);
    text_add(into, "\n");
    if (plan->refused) {
        text_add_wrapped(into, plan->refusal, 0, 0, FRAME_WIDTH);
        return;
    }
    add_scope(into, plan);
    for (int i = 0; i < plan->left_out_count; i++)
        text_add(into, "WARNING  The order given leaves out: %s.\n",
                 nipple_words(result->system, plan->left_out[i], into->arena));
    text_add(into, "\n");
    add_cautions(into, result, CAUTION_ALWAYS);
    add_cautions(into, result, CAUTION_BLEEDING);
    if (plan->settings.count > 0)
        frame_heading(into, "First: settings without which bleeding cannot succeed");
    for (size_t i = 0; i < plan->settings.count; i++)
        frame_step(into, result, &plan->settings.items[i]);
    if (plan->steps.count > 0)
        frame_heading(into, "Bleeding, in this order");
    for (size_t i = 0; i < plan->steps.count; i++) {
        frame_step(into, result, &plan->steps.items[i]);
        if (plan->steps.items[i].nipple >= 0)
            add_run(into, result, &plan->steps.items[i]);
    }
    if (plan->untouched_count > 0) {
        struct text names = text_start(into->arena);
        for (int i = 0; i < plan->untouched_count; i++)
            text_add(&names, "%s%s", i > 0 ? ", " : "",
                     nipple_words(result->system, plan->untouched[i], into->arena));
        text_add(into, "\nStay shut: ");
        text_add_wrapped(into, names.items, 12, 4, FRAME_WIDTH);
    }
    if (!isnan(plan->fluid.m3))
        text_add(into, "\nFluid to have ready: %s%s\n",
                 unit_text(into->arena, plan->fluid.m3, DIMENSION_VOLUME, result->units),
                 plan->fluid_assumed ? " (assumed)" : "");
    frame_deference(into);
}

void text_bleed_step(struct text *into, const struct result *result, int number)
{
    const struct bleed_plan *plan = result->bleed;
    if (plan->refused || number < 1 || (size_t)number > plan->steps.count) {
        text_add(into, "There is no step %d; the plan has %d.\n", number,
                 plan->refused ? 0 : (int)plan->steps.count);
        return;
    }
    const struct step *step = &plan->steps.items[number - 1];
    text_add(into, "STEP %d OF %d\n\n", number, (int)plan->steps.count);
    text_add_wrapped(into, step_words(into->arena, result, step, step->row->words), 0, 0, 40);
    if (step->reason != NULL) {
        text_add(into, "\n");
        text_add_wrapped(into, step_words(into->arena, result, step, step->reason->words), 0, 0,
                         40);
    }
    if (step->nipple >= 0 && !isnan(step->volume.m3)) {
        text_add(into, "\nDRAW OFF  %s%s\n",
                 unit_text(into->arena, step->volume.m3, DIMENSION_VOLUME, result->units),
                 step->volume_assumed ? " (assumed)" : "");
        if (!isnan(step->strokes))
            text_add(into, "STROKES   about %.0f\n", ceil(step->strokes));
    }
}

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
    add_cautions(into, result, CAUTION_ALWAYS);
    add_cautions(into, result, CAUTION_LIFTED);
    add_cautions(into, result, CAUTION_DRUMS);
    enum step_phase phase = PHASE_LATER;
    for (size_t i = 0; i < result->opening.count; i++) {
        const struct step *step = &result->opening.items[i];
        if (step->row->phase != phase)
            frame_heading(into, step->row->phase == PHASE_CLOSING ? "Closing" : "Opening");
        phase = step->row->phase;
        frame_step(into, result, step);
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
