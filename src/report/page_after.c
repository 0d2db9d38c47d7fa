#include "report/pages.h"

#include <string.h>

#include "base/text.h"

static void phase(struct flow *flow, const struct result *result, enum step_phase which,
                  const char *heading)
{
    const struct steps *tests = &result->tests;
    bool begun = false;
    for (size_t i = 0; i < tests->count; i++) {
        if (tests->items[i].row->phase != which)
            continue;
        if (!begun) {
            flow_heading(flow, heading, 30);
            flow_rule(flow);
        }
        begun = true;
        pages_step(flow, result, &tests->items[i], false);
    }
}

/* The gravest cautions once more, before the car goes on the road. */
static void cautions_again(struct flow *flow, const struct result *result)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    flow_heading(flow, "Before the road", 45);
    for (size_t i = 0; i < count; i++) {
        if (!caution_applies(&rows[i], result->system) || strcmp(rows[i].signal, "DANGER") != 0)
            continue;
        double x = FLOW_LEFT + 21;
        double width = flow_width(flow) - 21;
        const char *words = text_print(flow->arena, "%s: %s", rows[i].hazard, rows[i].avoid);
        double below = flow_words(flow, x, flow->y, width, words, flow_plain(), INK_BLACK, false);
        flow_need(flow, below - flow->y + 2);
        pages_signal(flow, FLOW_LEFT, flow->y, rows[i].signal, true);
        flow->y = flow_words(flow, x, flow->y, width, words, flow_plain(), INK_BLACK, true) + 2;
    }
    flow_paragraph(flow, caution_deference(), flow_bold(), INK_BLACK);
}

static void signature(struct flow *flow, double x, double width, const char *who, const char *what)
{
    struct sketch *page = flow_page(flow);
    struct box box = {x, flow->y, x + width, flow->y + 34};
    sketch_box(page, box, 1.2, pen_of(0.35, INK_BLACK), INK_WHITE);
    sketch_words(page, x + 3, flow->y + 5, who, flow_bold(), ALIGN_LEFT, INK_BLACK);
    flow_words(flow, x + 3, flow->y + 6.6, width - 6, what, flow_small(), INK_DARK, true);
    flow_blank(flow, x + 3, x + width - 3, flow->y + 20, "name");
    flow_blank(flow, x + 3, x + width - 40, flow->y + 29, "signature");
    flow_blank(flow, x + width - 37, x + width - 3, flow->y + 29, "date");
}

void pages_after(struct flow *flow, const struct result *result)
{
    phase(flow, result, PHASE_TEST, "Tests after the work");
    phase(flow, result, PHASE_LATER, "Later");
    cautions_again(flow, result);
    flow_need(flow, 38);
    flow_skip(flow, 2);
    double width = flow_width(flow) / 2 - 3;
    signature(flow, FLOW_LEFT, width, "Done by",
              "All steps above are done and ticked; the readings are mine.");
    signature(flow, FLOW_LEFT + width + 6, width, "Looked over by a second person",
              "I looked at every joint that was opened, under pressure and at rest.");
    flow_skip(flow, 36);
}
