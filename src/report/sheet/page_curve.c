#include <math.h>

#include "base/text.h"
#include "report/sheet/pages.h"
#include "report/sheet/pedal_drawing.h"
#include "report/words/words.h"

#define DRAWING_HEIGHT 92.0
#define CAUSES_HEIGHT  52.0
#define ROW            4.3
#define TRAVEL_END     95.0
#define LEFT_END       125.0

static void case_rows(struct flow *flow, const struct result *result,
                      const struct pedal_curves *curves)
{
    for (int i = 0; i < curves->count; i++) {
        const struct car_curve *drawn = &curves->items[i];
        bool known = !isnan(drawn->travel.m);
        flow_need(flow, ROW);
        struct sketch *page = flow_page(flow);
        double base = flow->y + 3.1;
        sketch_words(page, FLOW_LEFT, base, drawn->words, flow_plain(), ALIGN_LEFT, INK_BLACK);
        sketch_words(page, FLOW_LEFT + TRAVEL_END, base,
                     isnan(drawn->travel.m)
                         ? "not computed"
                         : unit_text(flow->arena, drawn->travel.m, DIMENSION_LENGTH, result->units),
                     flow_bold(), ALIGN_RIGHT, INK_BLACK);
        sketch_words(
            page, FLOW_LEFT + LEFT_END, base,
            known ? unit_text(flow->arena, drawn->curve->left.m, DIMENSION_LENGTH, result->units)
                  : "-",
            flow_bold(), ALIGN_RIGHT, INK_BLACK);
        const char *end = drawn->curve->on_floor   ? "on the floor"
                          : drawn->curve->bottomed ? "at the bore's end"
                                                   : "";
        sketch_words(page, FLOW_LEFT + LEFT_END + 3, base, end, flow_bold(), ALIGN_LEFT, INK_BLACK);
        flow_skip(flow, ROW);
    }
}

static void cases_head(struct flow *flow)
{
    struct sketch *page = flow_page(flow);
    double base = flow->y + 2.6;
    sketch_words(page, FLOW_LEFT, base, "case", flow_small(), ALIGN_LEFT, INK_DARK);
    sketch_words(page, FLOW_LEFT + TRAVEL_END, base, "travel", flow_small(), ALIGN_RIGHT, INK_DARK);
    sketch_words(page, FLOW_LEFT + LEFT_END, base, "left to the floor", flow_small(), ALIGN_RIGHT,
                 INK_DARK);
    flow_skip(flow, 4.0);
    flow_rule(flow);
}

static void one_pedal(struct flow *flow, const struct result *result,
                      const struct pedal_curves *curves)
{
    const char *name = result->system->parts[curves->pedal].name;
    const struct figure *travel = figures_find(&result->figures, "pedal-travel", name);
    flow_subheading(flow, pages_sentence(flow->arena, name), DRAWING_HEIGHT + 8);
    if (curves->items[0].curve->count < 2) {
        flow_paragraph(flow,
                       travel != NULL ? figure_state_words(flow->arena, result->system, travel, 3)
                                      : "not computed",
                       flow_slanted(), INK_DARK);
        return;
    }
    if (travel != NULL && travel->state == FIGURE_ASSUMED)
        flow_paragraph(flow,
                       text_print(flow->arena, "Travel %s.",
                                  figure_state_words(flow->arena, result->system, travel, 3)),
                       flow_slanted(), INK_DARK);
    struct box box = {FLOW_LEFT, flow->y, flow_right(flow), flow->y + DRAWING_HEIGHT};
    pedal_drawing_curves(flow_page(flow), result, curves, box);
    flow_skip(flow, DRAWING_HEIGHT + 2);
    flow_need(flow, CAUSES_HEIGHT);
    flow_skip(flow, pedal_drawing_causes(flow_page(flow), result, curves, FLOW_LEFT, flow->y,
                                         flow_width(flow)) +
                        2);
    flow_need(flow, 12);
    cases_head(flow);
    case_rows(flow, result, curves);
    flow_skip(flow, 3);
}

void pages_curve(struct flow *flow, const struct result *result)
{
    if (result->curves == NULL || result->curves->count == 0)
        return;
    flow_heading(flow, "How far the pedal goes", DRAWING_HEIGHT + 20);
    for (int i = 0; i < result->curves->count; i++)
        one_pedal(flow, result, &result->curves->items[i]);
}
