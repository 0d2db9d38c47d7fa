#include "report/text/text_report.h"

#include "report/text/text_frame.h"

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
    text_add_wrapped(into, hoses_verdict_words(into->arena, hoses), 0, 2, FRAME_WIDTH);
    text_add(into, "\n");
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
    frame_unsettled(into, result);
    if (result->opening.count == 0) {
        text_add_wrapped(into,
                         "Nothing to open: no work file renews or replaces a part. Name the parts "
                         "in a work file under [work] renewed, or in [replaced ...].",
                         0, 0, FRAME_WIDTH);
        return;
    }
    frame_cautions(into, result, CAUTION_ALWAYS);
    frame_cautions(into, result, CAUTION_LIFTED);
    frame_cautions(into, result, CAUTION_LININGS);
    frame_cautions(into, result, CAUTION_DRUMS);
    frame_cautions(into, result, CAUTION_CLUTCH);
    enum step_phase phase = PHASE_LATER;
    for (size_t i = 0; i < result->opening.count; i++) {
        const struct step *step = &result->opening.items[i];
        if (step->row->phase != phase)
            frame_heading(into, phase_words(step->row->phase));
        phase = step->row->phase;
        frame_step(into, result, &result->opening, i);
    }
    frame_deference(into);
}
