#include "report/sheet/pages.h"

#include <math.h>

#include "base/text.h"
#include "report/diagram/diagram.h"
#include "report/words/bleed_words.h"
#include "report/words/words.h"

#define VERDICT_WORDS 27.0

static const char *driver_words(const struct vehicle *vehicle)
{
    if (vehicle->type == VEHICLE_MOTORCYCLE)
        return "motorcycle";
    if (vehicle->driver == DRIVER_LEFT)
        return "left-hand drive";
    return vehicle->driver == DRIVER_RIGHT ? "right-hand drive" : NULL;
}

static const char *facts(struct arena *arena, const struct result *result)
{
    const struct vehicle *vehicle = system_vehicle(result->system);
    struct text words = text_start(arena);
    text_add(&words, "%s", pages_date(arena, result->today));
    int fluid = system_first(result->system, KIND_FLUID);
    const struct fluid_row *row =
        fluid >= 0 ? fluid_row(result->system->parts[fluid].as.fluid.grade) : NULL;
    text_add(&words, "   \u00b7   fluid %s", row ? row->name : "grade not said");
    if (driver_words(vehicle))
        text_add(&words, "   \u00b7   %s", driver_words(vehicle));
    if (date_known(vehicle->first_used))
        text_add(&words, "   \u00b7   first used %d", vehicle->first_used.year);
    if (result->system->work_count > 0)
        text_add(&words, "   \u00b7   with the work of %s",
                 pages_date(arena, result->system->works[result->system->work_count - 1].date));
    return words.items;
}

static void verdict(struct flow *flow, const char *what, const char *words, bool grave)
{
    struct sketch *page = flow_page(flow);
    double below = flow_words(flow, 0, flow->y, flow_width(flow) - VERDICT_WORDS - 3, words,
                              flow_plain(), INK_BLACK, false);
    double height = below - flow->y + 1.9;
    if (grave)
        sketch_box(page, (struct box){FLOW_LEFT, flow->y, FLOW_LEFT + 1.6, flow->y + height}, 0,
                   pen_of(0, INK_NONE), INK_BLACK);
    sketch_words(page, FLOW_LEFT + 3.4, flow->y + 4.0, what, flow_bold(), ALIGN_LEFT, INK_BLACK);
    flow_words(flow, FLOW_LEFT + VERDICT_WORDS, flow->y + 0.9, flow_width(flow) - VERDICT_WORDS - 3,
               words, flow_plain(), INK_BLACK, true);
    flow->y += height;
    flow_rule(flow);
}

static const char *worst_words(struct arena *arena, const struct result *result)
{
    const struct finding *worst = &result->findings.items[0];
    const char *what = fill_words(arena, worst->check->what, worst->quantities,
                                  worst->quantity_count, result->units);
    return text_print(arena, "%s: %s (%s) %s", pages_signal_word(worst->severity), what,
                      worst->check->id, summary_words(arena, result));
}

static const char *bleed_words(struct arena *arena, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    if (plan->refused)
        return text_print(arena, "No order can be given: %s", plan->refusal);
    if (plan->scope == BLEED_NOTHING)
        return "Nothing was opened: nothing to bleed.";
    const char *fluid =
        plan->fluid.m3 > 0 ? text_print(arena, " Have ready: %s.", bleed_fluid_words(arena, result))
                           : "";
    return text_print(arena, "%s: %zu step%s%s.%s", pages_sentence(arena, plan->scope_reason),
                      plan->steps.count, plan->steps.count == 1 ? "" : "s",
                      plan->untouched_count > 0
                          ? text_print(arena, ", %d nipple%s shut", plan->untouched_count,
                                       plan->untouched_count == 1 ? " stays" : "s stay")
                          : "",
                      fluid);
}

static void title(struct flow *flow, const struct result *result)
{
    const char *name = system_vehicle(result->system)->title;
    struct sketch *page = flow_page(flow);
    sketch_words(page, FLOW_LEFT, flow->y + 2.6, "WET SIDE SERVICE SHEET",
                 (struct font){.size = 7.4, .bold = true}, ALIGN_LEFT, INK_DARK);
    struct font large = {.size = 21, .bold = true};
    double wide = ruler_width(flow->ruler, name ? name : "Car without a title", large);
    if (wide > flow_width(flow))
        large.size *= fmax(0.45, flow_width(flow) / wide);
    sketch_words(page, FLOW_LEFT, flow->y + 11.4, name ? name : "Car without a title", large,
                 ALIGN_LEFT, INK_BLACK);
    sketch_words(page, FLOW_LEFT, flow->y + 16.8, facts(flow->arena, result), flow_plain(),
                 ALIGN_LEFT, INK_DARK);
    flow_skip(flow, 19.5);
    sketch_line(page, FLOW_LEFT, flow->y, flow_right(flow), flow->y, pen_of(0.7, INK_BLACK));
}

/* The diagram, or why there is none. */
static void diagram(struct flow *flow, const struct result *result)
{
    struct arena *arena = flow->arena;
    struct layout *layout =
        layout_within(result, flow->ruler, arena, LAYOUT_WIDTH, LAYOUT_LEAST, LAYOUT_LEAST);
    const char *refusal = layout_refusal(layout);
    if (refusal) {
        verdict(flow, "Diagram", text_print(arena, "Not drawn: %s.", refusal), true);
        return;
    }
    struct sketch drawing = diagram_sketch(layout, flow->ruler, arena);
    struct sketch legend = diagram_legend(layout, flow->ruler, arena, flow_width(flow));
    double spare = flow_left_over(flow) - drawing.height - legend.height;
    double gap = fmin(fmax(spare / 3, 0.5), 8);
    sketch_place(flow_page(flow), &drawing, (flow->width - drawing.width) / 2, flow->y + gap);
    flow_skip(flow, gap + drawing.height + gap);
    sketch_place(flow_page(flow), &legend, FLOW_LEFT, flow->y);
    flow_skip(flow, legend.height);
}

void pages_front(struct flow *flow, const struct result *result)
{
    struct arena *arena = flow->arena;
    title(flow, result);
    bool any = result->findings.count > 0;
    verdict(flow, "Findings", any ? worst_words(arena, result) : summary_words(arena, result),
            any && result->findings.items[0].severity >= SEVERITY_WARNING);
    verdict(flow, "Hoses", pages_hoses_verdict(arena, result),
            result->hoses.verdict != HOSES_COMPLETE);
    verdict(flow, "Bleeding", bleed_words(arena, result), result->bleed->refused);
    diagram(flow, result);
    flow_new_page(flow);
}
