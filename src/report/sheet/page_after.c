#include "report/sheet/pages.h"

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
        pages_step(flow, result, tests, i);
    }
}

#define SIGNATURES 40.0 /* mm that they take */

static double caution_line(struct flow *flow, const struct caution_row *row, double y, bool draw)
{
    const char *words = text_print(flow->arena, "%s: %s", row->hazard, row->avoid);
    return flow_words(flow, FLOW_LEFT + 21, y, flow_width(flow) - 21, words, flow_plain(),
                      INK_BLACK, draw);
}

static bool said_again(const struct caution_row *row, const struct result *result)
{
    return caution_applies(row, result->system, &result->touched) &&
           strcmp(row->signal, "DANGER") == 0;
}

/* The gravest cautions once more, before the car goes on the road; on one page with the
 * signatures, which must not stand alone. */
static void cautions_again(struct flow *flow, const struct result *result)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    double height = 10 + SIGNATURES;
    for (size_t i = 0; i < count; i++)
        if (said_again(&rows[i], result))
            height += caution_line(flow, &rows[i], 0, false) + 2;
    flow_heading(flow, "Before the road", height);
    for (size_t i = 0; i < count; i++) {
        if (!said_again(&rows[i], result))
            continue;
        double below = caution_line(flow, &rows[i], flow->y, false);
        flow_need(flow, below - flow->y + 2);
        pages_signal(flow, FLOW_LEFT, flow->y, rows[i].signal, true);
        flow->y = caution_line(flow, &rows[i], flow->y, true) + 2;
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

/* Signed before the car moves; what comes on the road and later stands below. */
void pages_after(struct flow *flow, const struct result *result)
{
    phase(flow, result, PHASE_BLEEDING, "After the nipples");
    phase(flow, result, PHASE_UNDOING, "Settings undone");
    phase(flow, result, PHASE_RESTING, "Tests after the work");
    phase(flow, result, PHASE_SECOND, "A second person");
    cautions_again(flow, result);
    flow_need(flow, SIGNATURES - 2);
    flow_skip(flow, 2);
    double width = flow_width(flow) / 2 - 3;
    signature(flow, FLOW_LEFT, width, "Done by",
              "All steps above are done and ticked; the readings are mine.");
    signature(flow, FLOW_LEFT + width + 6, width, "Looked over by a second person",
              "I looked at every joint that was opened, under pressure and at rest.");
    flow_skip(flow, 36);
    phase(flow, result, PHASE_DRIVE, "On the road");
    phase(flow, result, PHASE_LATER, "Later");
}
