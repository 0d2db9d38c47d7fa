#include "report/pages.h"

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
        if (!caution_applies(&rows[i], result->system))
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

void pages_before(struct flow *flow, const struct result *result)
{
    flow_heading(flow, "Before you start", 40);
    cautions(flow, result);
    const struct steps *settings = &result->bleed->settings;
    if (settings->count == 0)
        return;
    flow_heading(flow, "Settings first", 30);
    flow_paragraph(flow, "They decide whether bleeding can succeed. Write down what was measured.",
                   flow_plain(), INK_DARK);
    flow_rule(flow);
    for (size_t i = 0; i < settings->count; i++)
        pages_step(flow, result, &settings->items[i], false);
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
            pages_step(flow, result, &steps->items[i], false);
}

void pages_opening(struct flow *flow, const struct result *result)
{
    const struct steps *opening = &result->opening;
    if (steps_of(opening, PHASE_OPENING) > 0) {
        flow_heading(flow, "Taking apart", 35);
        flow_rule(flow);
        steps_in(flow, result, opening, PHASE_OPENING);
    }
    if (steps_of(opening, PHASE_CLOSING) > 0) {
        flow_heading(flow, "Putting together", 35);
        flow_rule(flow);
        steps_in(flow, result, opening, PHASE_CLOSING);
    }
}

static const char *untouched_words(struct arena *arena, const struct result *result)
{
    struct text words = text_start(arena);
    text_add(&words, "Stay shut, nothing was opened there: ");
    for (int i = 0; i < result->bleed->untouched_count; i++)
        text_add(&words, "%s%s", i > 0 ? ", " : "",
                 nipple_words(result->system, result->bleed->untouched[i], arena));
    text_add(&words, ".");
    return words.items;
}

static const char *left_out_words(struct arena *arena, const struct result *result)
{
    struct text words = text_start(arena);
    text_add(&words, "The maker's order leaves out: ");
    for (int i = 0; i < result->bleed->left_out_count; i++)
        text_add(&words, "%s%s", i > 0 ? ", " : "",
                 nipple_words(result->system, result->bleed->left_out[i], arena));
    text_add(&words, ".");
    return words.items;
}

void pages_bleeding(struct flow *flow, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    struct arena *arena = flow->arena;
    /* All of it on one page where one page holds it: it is what lies beside the car. */
    double height = 28;
    for (size_t i = 0; i < plan->steps.count; i++)
        height += pages_step_height(flow, result, &plan->steps.items[i]);
    flow_heading(flow, "Bleeding", height < 230 ? height : 40);
    if (plan->refused) {
        flow_paragraph(flow, text_print(arena, "No order can be given: %s", plan->refusal),
                       flow_bold(), INK_BLACK);
        return;
    }
    if (plan->scope == BLEED_NOTHING) {
        flow_paragraph(flow, "Nothing was opened: nothing to bleed.", flow_plain(), INK_BLACK);
        return;
    }
    struct text words = text_start(arena);
    text_add(&words, "%s.", pages_sentence(arena, plan->scope_reason));
    if (plan->makers_order)
        text_add(&words, " The order is the maker's own, from the description.");
    if (plan->fluid.m3 > 0)
        text_add(&words, " Fluid to have ready: %s%s.",
                 unit_text(arena, plan->fluid.m3, DIMENSION_VOLUME, result->units),
                 plan->fluid_assumed ? " (assumed)" : "");
    text_add(&words, " The numbers are those on the diagram.");
    flow_paragraph(flow, words.items, flow_plain(), INK_BLACK);
    if (plan->left_out_count > 0)
        flow_paragraph(flow, left_out_words(arena, result), flow_bold(), INK_BLACK);
    flow_rule(flow);
    for (size_t i = 0; i < plan->steps.count; i++)
        pages_step(flow, result, &plan->steps.items[i], true);
    flow_skip(flow, 1.5);
    if (plan->untouched_count > 0)
        flow_paragraph(flow, untouched_words(arena, result), flow_plain(), INK_BLACK);
}
