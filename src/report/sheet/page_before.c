#include "report/sheet/pages.h"

#include <math.h>
#include <string.h>

#include "base/text.h"

#define CAUTION_WORDS 21.0

static double caution_text(struct flow *flow, const struct caution_row *row, double x, double y,
                           double width, bool draw)
{
    y = flow_words(flow, x, y, width, row->hazard, flow_bold(), INK_BLACK, draw);
    struct font font = {.size = 7.6};
    const char *words = text_print(flow->arena, "%s %s", row->harm, row->avoid);
    return flow_words(flow, x, y, width, words, font, INK_BLACK, draw);
}

/* Cautions in two columns, each signal word first. */
static void cautions(struct flow *flow, const struct result *result)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    double width = flow_width(flow) / 2 - 4;
    double y[2] = {flow->y, flow->y};
    for (size_t i = 0; i < count; i++) {
        if (!caution_applies(&rows[i], result->system, &result->touched))
            continue;
        int column = y[1] < y[0] - 0.1;
        double text_width = width - CAUTION_WORDS;
        double height = caution_text(flow, &rows[i], 0, 0, text_width, false) + 2.8;
        if (y[column] + height > flow->y + flow_left_over(flow)) {
            column = 0;
            flow_new_page(flow);
            y[0] = y[1] = flow->y;
        }
        double x = FLOW_LEFT + column * (width + 8);
        bool grave =
            strcmp(rows[i].signal, "DANGER") == 0 || strcmp(rows[i].signal, "WARNING") == 0;
        pages_signal(flow, x, y[column], rows[i].signal, grave);
        caution_text(flow, &rows[i], x + CAUTION_WORDS, y[column], text_width, true);
        y[column] += height;
    }
    flow->y = fmax(y[0], y[1]);
}

static size_t steps_of(const struct steps *steps, enum step_phase phase)
{
    size_t count = 0;
    for (size_t i = 0; i < steps->count; i++)
        count += steps->items[i].row->phase == phase;
    return count;
}

static void steps_in(struct flow *flow, const struct result *result, const struct steps *steps,
                     enum step_phase phase)
{
    for (size_t i = 0; i < steps->count; i++)
        if (steps->items[i].row->phase == phase)
            pages_step(flow, result, steps, i);
}

void pages_before(struct flow *flow, const struct result *result)
{
    flow_heading(flow, "Before you start", 40);
    cautions(flow, result);
    struct steps before = plan_phases(result->plan, PHASE_BEFORE, PHASE_BEFORE);
    steps_in(flow, result, &before, PHASE_BEFORE);
}

void pages_settings(struct flow *flow, const struct result *result)
{
    const struct steps *settings = &result->bleed->settings;
    if (steps_of(settings, PHASE_SETTINGS) == 0)
        return;
    flow_heading(flow, "Settings for bleeding", 30);
    flow_paragraph(flow, "They decide whether bleeding can succeed. Write down what was measured.",
                   flow_plain(), INK_DARK);
    flow_rule(flow);
    steps_in(flow, result, settings, PHASE_SETTINGS);
}

static void chapter(struct flow *flow, const struct result *result, enum step_phase phase,
                    const char *heading)
{
    const struct steps *opening = &result->opening;
    if (steps_of(opening, phase) == 0)
        return;
    flow_heading(flow, heading, 35);
    flow_rule(flow);
    steps_in(flow, result, opening, phase);
}

/* At the bench stands between taking apart and putting together. */
void pages_opening(struct flow *flow, const struct result *result)
{
    chapter(flow, result, PHASE_APART, "Taking apart");
    pages_bench(flow, result);
    chapter(flow, result, PHASE_TOGETHER, "Putting together");
}
