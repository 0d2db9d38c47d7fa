#include "report/sheet/pages.h"

#include <math.h>

#include "base/text.h"
#include "report/words/bleed_words.h"
#include "report/words/words.h"

#define METHOD_TAG    0.0 /* from the left margin */
#define METHOD_NAME   22.0
#define METHOD_REASON 72.0

static double method_text(struct flow *flow, const struct result *result,
                          const struct method_verdict *verdict, double y, bool draw)
{
    struct arena *arena = flow->arena;
    double left =
        flow_words(flow, FLOW_LEFT + METHOD_NAME, y, METHOD_REASON - METHOD_NAME - 3,
                   pages_sentence(arena, verdict->row->words), flow_bold(), INK_BLACK, draw);
    left = flow_words(flow, FLOW_LEFT + METHOD_NAME, left, METHOD_REASON - METHOD_NAME - 3,
                      verdict->row->kit, flow_small(), INK_DARK, draw);
    double right = y, width = flow_width(flow) - METHOD_REASON;
    for (int i = 0; i < verdict->note_count; i++) {
        const struct method_note *note = &verdict->notes[i];
        right = flow_words(flow, FLOW_LEFT + METHOD_REASON, right, width,
                           pages_sentence(arena, bleed_note_words(arena, result, note)),
                           note->reason->against ? flow_bold() : flow_plain(), INK_BLACK, draw);
        right = flow_words(flow, FLOW_LEFT + METHOD_REASON, right, width, note->reason->id,
                           flow_id(), INK_GREY, draw);
    }
    return fmax(left, right);
}

static void costs(struct flow *flow, const struct result *result)
{
    enum { CELLS = 5 };
    static const double columns[CELLS] = {56, 80, 98, 124, 142};
    static const char *const heads[CELLS] = {"drawn off", "strokes", "air left", "strokes",
                                             "air left"};
    struct bleed_cost_row rows[BLEED_MOST_COSTS];
    struct arena *arena = flow->arena;
    int count = bleed_cost_rows(result->bleed, rows);
    const char *same = bleed_same_cost_words(arena, result);
    if (same != NULL) {
        flow_paragraph(flow, same, flow_plain(), INK_BLACK);
        return;
    }
    if (count == 0)
        return;
    const char *guess = bleed_guess_words(result->bleed);
    flow_subheading(flow, "What the order costs, by the simulation",
                    (guess != NULL ? 22 : 16) + 9 * count);
    if (guess != NULL)
        flow_paragraph(flow, guess, flow_bold(), INK_BLACK);
    bool shut = result->bleed->shut_under_pressure;
    sketch_words(flow_page(flow), FLOW_LEFT + columns[0], flow->y + 2.6,
                 shut ? "nipples shut early" : "nipples held open", flow_small(), ALIGN_LEFT,
                 INK_DARK);
    sketch_words(flow_page(flow), FLOW_LEFT + columns[3], flow->y + 2.6,
                 bleed_other_words(result->bleed), flow_small(), ALIGN_LEFT, INK_DARK);
    flow_skip(flow, 3);
    for (int i = 0; i < CELLS; i++)
        sketch_words(flow_page(flow), FLOW_LEFT + columns[i], flow->y + 2.6, heads[i], flow_small(),
                     ALIGN_LEFT, INK_DARK);
    flow_skip(flow, 4);
    flow_rule(flow);
    for (int i = 0; i < count; i++) {
        const struct order_cost *cost = rows[i].cost;
        const char *cells[] = {bleed_volume(arena, result, cost->fluid.m3),
                               bleed_strokes(arena, cost->strokes),
                               bleed_volume(arena, result, cost->air_left.m3),
                               bleed_strokes(arena, cost->other_strokes),
                               bleed_volume(arena, result, cost->other_air_left.m3)};
        flow_need(flow, 9);
        double base = flow->y + 4;
        sketch_words(flow_page(flow), FLOW_LEFT, base, pages_sentence(arena, rows[i].name),
                     flow_bold(), ALIGN_LEFT, INK_BLACK);
        for (int k = 0; k < CELLS; k++)
            sketch_words(flow_page(flow), FLOW_LEFT + columns[k], base, cells[k], flow_plain(),
                         ALIGN_LEFT, INK_BLACK);
        const char *words = bleed_cost_words(arena, result, &rows[i]);
        flow->y = flow_words(flow, FLOW_LEFT, base + 1, flow_width(flow), words, flow_small(),
                             INK_DARK, true) +
                  1;
        flow_rule(flow);
    }
    if (result->bleed->departure != NULL)
        flow_paragraph(
            flow,
            text_print(arena, "Why not the trade's order: %s.", result->bleed->departure->words),
            flow_plain(), INK_BLACK);
}

void pages_methods(struct flow *flow, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    if (plan->refused || plan->scope == BLEED_NOTHING)
        return;
    costs(flow, result);
    if (plan->verdict_count == 0)
        return;
    flow_subheading(flow, "Which way of bleeding suits this car", 24);
    flow_rule(flow);
    for (int i = 0; i < plan->verdict_count; i++) {
        const struct method_verdict *verdict = &plan->verdicts[i];
        double below = method_text(flow, result, verdict, flow->y, false);
        flow_need(flow, below - flow->y + 3);
        double y = flow->y + 1.2;
        pages_signal(flow, FLOW_LEFT + METHOD_TAG, y,
                     !verdict->suits    ? "DOES NOT"
                     : verdict->unknown ? "CANNOT SAY"
                                        : "SUITS",
                     !verdict->suits);
        flow->y = method_text(flow, result, verdict, y, true) + 1.2;
        flow_rule(flow);
    }
}
