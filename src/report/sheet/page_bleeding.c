#include "report/sheet/pages.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/sheet/bleed_curve.h"
#include "report/words/bleed_words.h"
#include "report/diagram/symbols.h"
#include "report/words/words.h"
#include "units/unit.h"

#define WORDS 14.0 /* where a step's words begin, from the left margin */

/* Columns of the table, by their left edges from the right margin. */
enum column { WAY, DRAW, STROKES, TIME, RESERVOIR, AIR, WRITE, COLUMNS };
static const double edges[COLUMNS] = {115, 99, 78.5, 64, 50, 31, 15};
static const char *const heads[COLUMNS][2] = {
    {"way", "of it new"},     {"draw off", "to renew"}, {"strokes", "to renew"}, {"gravity", "kit"},
    {"top up", "then in it"}, {"air left", "circuit"},  {"drawn off", "here"},
};

static double column_x(const struct flow *flow, enum column column)
{
    return flow_right(flow) - edges[column];
}

static double words_width(const struct flow *flow)
{
    return flow_width(flow) - WORDS - edges[0] - 2;
}

static void table_head(struct flow *flow)
{
    for (int i = 0; i < COLUMNS; i++)
        for (int line = 0; line < 2; line++)
            sketch_words(flow_page(flow), column_x(flow, (enum column)i),
                         flow->y + 2.6 + line * 2.8, heads[i][line], flow_small(), ALIGN_LEFT,
                         INK_DARK);
    sketch_words(flow_page(flow), FLOW_LEFT + WORDS, flow->y + 2.6, "nipple", flow_small(),
                 ALIGN_LEFT, INK_DARK);
    flow_skip(flow, 6.8);
    flow_rule(flow);
}

static const char *trapped_words(struct arena *arena, const struct result *result,
                                 const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    if (detail != NULL && detail->gave_up)
        return pages_sentence(arena, bleed_gave_up);
    if (detail == NULL || !(detail->trapped.m3 > 0))
        return NULL;
    const char *volume = bleed_volume(arena, result, detail->trapped.m3);
    if (isnan(detail->trapped_pedal.m))
        return text_print(arena, "%s of air stay above it.", volume);
    return text_print(
        arena,
        detail->trapped_to_floor ? "%s of air stay above it: %s of pedal, more than it has."
                                 : "%s of air stay above it: %s of pedal.",
        volume, unit_text(arena, detail->trapped_pedal.m, DIMENSION_LENGTH, result->units));
}

static double step_words_column(struct flow *flow, const struct result *result,
                                const struct step *step, double y, bool draw)
{
    struct arena *arena = flow->arena;
    double x = FLOW_LEFT + WORDS, width = words_width(flow);
    bool again = step->bleed != NULL && !bleed_draws(step);
    const char *place = step->bleed != NULL && step->bleed->way_up != NULL
                            ? text_print(arena, "nipple %s", step->bleed->way_up)
                            : step->place_words;
    if (again)
        place = NULL;
    y = flow_words(flow, x, y, width, pages_sentence(arena, bleed_step_name(arena, result, step)),
                   flow_bold(), INK_BLACK, draw);
    y = flow_words(flow, x, y, width, bleed_with_words(arena, result, step), flow_bold(), INK_BLACK,
                   draw);
    if (again)
        y = flow_words(flow, x, y, width, "Once more", flow_bold(), INK_BLACK, draw);
    y = flow_words(flow, x, y, width, place ? pages_sentence(arena, place) : NULL, flow_small(),
                   INK_DARK, draw);
    if (step->reason != NULL)
        y = flow_words(flow, x, y, width,
                       pages_sentence(arena, step_words(arena, result, step, step->reason->words)),
                       (struct font){.size = 7.0, .slanted = true}, INK_DARK, draw);
    return flow_words(flow, x, y, width, trapped_words(arena, result, step),
                      (struct font){.size = 7.0, .bold = true}, INK_BLACK, draw);
}

struct cells {
    const char *items[COLUMNS][2];
};

static const char *top_up_cell(struct arena *arena, const struct bleed_plan *plan,
                               const struct step *step)
{
    if (plan->method == METHOD_REVERSE)
        return "draw low";
    if (plan->method != METHOD_PEDAL)
        return "at half";
    int every = bleed_top_up_every(step);
    return every > 0 ? text_print(arena, "every %d", every) : "-";
}

static struct cells cells_of(struct arena *arena, const struct result *result,
                             const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    const char *mark = step->volume_assumed ? "*" : "";
    struct cells cells = {0};
    if (detail != NULL && !bleed_draws(step)) {
        if (result->bleed->method == METHOD_PEDAL)
            cells.items[STROKES][0] = "3 to 5";
        cells.items[STROKES][1] = "until clear";
        return cells;
    }
    if (isnan(step->volume.m3)) {
        cells.items[DRAW][0] = "not known";
        cells.items[DRAW][1] = "lengths missing";
        return cells;
    }
    cells.items[DRAW][0] =
        text_print(arena, "%s%s", bleed_volume(arena, result, step->volume.m3), mark);
    bool pedal = result->bleed->method == METHOD_PEDAL;
    if (pedal)
        cells.items[STROKES][0] = bleed_strokes(arena, step->strokes);
    if (detail == NULL)
        return cells;
    cells.items[WAY][0] =
        text_print(arena, "%s%s", bleed_volume(arena, result, detail->path.m3), mark);
    cells.items[WAY][1] = bleed_volume(arena, result, detail->branch.m3);
    cells.items[DRAW][1] = bleed_volume(arena, result, detail->renewal.m3);
    if (pedal)
        cells.items[STROKES][1] = bleed_strokes(arena, detail->renewal_strokes);
    if (result->bleed->method != METHOD_REVERSE) {
        cells.items[TIME][0] = bleed_time(arena, detail->by_gravity.s, "locked");
        cells.items[TIME][1] = bleed_time(arena, detail->by_pressure.s, "locked");
    }
    cells.items[RESERVOIR][0] = top_up_cell(arena, result->bleed, step);
    if (!isnan(detail->reservoir_after.m3))
        cells.items[RESERVOIR][1] = bleed_volume(arena, result, detail->reservoir_after.m3);
    cells.items[AIR][0] = bleed_volume(arena, result, detail->air_left.m3);
    return cells;
}

static double row_height(struct flow *flow, const struct result *result, const struct step *step)
{
    return fmax(step_words_column(flow, result, step, 0, false), 8.4) + 2.8;
}

static void nipple_row(struct flow *flow, const struct result *result, const struct step *step)
{
    if (flow_need(flow, row_height(flow, result, step)))
        table_head(flow);
    double y = flow->y + 1.4;
    struct sketch *page = flow_page(flow);
    struct cells cells = cells_of(flow->arena, result, step);
    flow_tick_box(flow, FLOW_LEFT, y - 0.1);
    symbol_nipple(page, (struct point){FLOW_LEFT + 8.7, y + 1.8}, step->number);
    double below = step_words_column(flow, result, step, y, true);
    for (int i = 0; i < COLUMNS; i++) {
        double x = column_x(flow, (enum column)i);
        bool main = i == DRAW || i == STROKES;
        if (cells.items[i][0] != NULL)
            sketch_words(page, x, y + 2.8, cells.items[i][0],
                         (struct font){.size = main ? 8.6 : 7.4, .bold = main}, ALIGN_LEFT,
                         INK_BLACK);
        if (cells.items[i][1] != NULL)
            sketch_words(page, x, y + 6.4, cells.items[i][1], flow_small(), ALIGN_LEFT, INK_DARK);
    }
    sketch_line(page, column_x(flow, WRITE), y + 6.6, flow_right(flow), y + 6.6,
                pen_of(0.25, INK_GREY));
    flow->y = fmax(below, y + 8.4) + 1.4;
    flow_rule(flow);
}

static void stage_head(struct flow *flow, const char *words, double keep)
{
    if (flow_need(flow, keep + 6))
        table_head(flow);
    sketch_words(flow_page(flow), FLOW_LEFT, flow->y + 4.4, words,
                 (struct font){.size = 9.0, .bold = true}, ALIGN_LEFT, INK_BLACK);
    flow_skip(flow, 6.0);
}

static double any_height(struct flow *flow, const struct result *result, size_t at)
{
    const struct steps *steps = &result->bleed->steps;
    return steps->items[at].nipple >= 0 ? row_height(flow, result, &steps->items[at])
                                        : pages_step_height(flow, result, steps, at);
}

static void table(struct flow *flow, const struct result *result)
{
    const struct steps *steps = &result->bleed->steps;
    bool assumed = false;
    table_head(flow);
    for (size_t i = 0; i < steps->count; i++) {
        const struct step *step = &steps->items[i];
        const char *stage = bleed_stage(flow->arena, result, i);
        if (stage != NULL)
            stage_head(flow, pages_sentence(flow->arena, stage), any_height(flow, result, i));
        if (step->nipple >= 0)
            nipple_row(flow, result, step);
        else
            pages_step(flow, result, steps, i);
        assumed = assumed || step->volume_assumed;
    }
    flow_skip(flow, 1);
    if (steps->count > 0)
        flow_paragraph(flow, bleed_ideal, flow_small(), INK_DARK);
    if (assumed)
        flow_paragraph(flow, "* rests on lengths or chambers that are assumed", flow_small(),
                       INK_DARK);
}

static const char *names_of(struct arena *arena, const struct result *result, const char *lead,
                            const struct nipple *nipples, int count)
{
    struct text words = text_start(arena);
    text_add(&words, "%s: ", lead);
    for (int i = 0; i < count; i++)
        text_add(&words, "%s%s", i > 0 ? ", " : "",
                 nipple_words(result->system, nipples[i], arena));
    text_add(&words, ".");
    return words.items;
}

static void opening_words(struct flow *flow, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    struct text words = text_start(flow->arena);
    text_add(&words, "%s.", pages_sentence(flow->arena, plan->scope_reason));
    if (plan->makers_order)
        text_add(&words, " The order is the maker's own, from the description.");
    if (plan->asked_order)
        text_add(&words, " You asked for this order.");
    const char *fluid = bleed_fluid_words(flow->arena, result);
    if (fluid != NULL)
        text_add(&words, " Fluid to have ready: %s.", fluid);
    if (bleed_method_words(plan) != NULL)
        text_add(&words, plan->method == METHOD_PEDAL ? " Strokes are for: %s." : " Bled by: %s.",
                 bleed_method_words(plan));
    text_add(&words, " The numbers are those on the diagram.");
    flow_paragraph(flow, words.items, flow_plain(), INK_BLACK);
    flow_paragraph(flow, bleed_how(flow->arena, plan), flow_slanted(), INK_DARK);
    if (plan->left_out_count > 0 && plan->makers_order)
        flow_paragraph(flow,
                       names_of(flow->arena, result, "The maker's order leaves out", plan->left_out,
                                plan->left_out_count),
                       flow_bold(), INK_BLACK);
    if (plan->asked_left_out_count > 0)
        flow_paragraph(flow,
                       names_of(flow->arena, result, "The order you asked for leaves out",
                                plan->asked_left_out, plan->asked_left_out_count),
                       flow_bold(), INK_BLACK);
}

static void curve(struct flow *flow, const struct result *result)
{
    enum { HEIGHT = 62 };
    if (result->bleed->point_count < 2)
        return;
    const char *guess = bleed_guess_words(result->bleed);
    flow_subheading(flow, "How the air goes, by the simulation", HEIGHT + (guess != NULL ? 8 : 2));
    if (guess != NULL)
        flow_paragraph(flow, guess, flow_bold(), INK_BLACK);
    bleed_curve_draw(flow_page(flow), result,
                     (struct box){FLOW_LEFT, flow->y, flow_right(flow), flow->y + HEIGHT});
    flow_skip(flow, HEIGHT + 2);
}

/* All of it on one page where one page holds it: it is what lies beside the car. */
static double chapter_height(struct flow *flow, const struct result *result)
{
    double height = 36;
    for (size_t i = 0; i < result->bleed->steps.count; i++)
        height +=
            any_height(flow, result, i) + (bleed_stage(flow->arena, result, i) != NULL ? 6.0 : 0);
    return height;
}

/* Another flow test in one line: how it is done stands in the first. */
static void flow_test_again(struct flow *flow, const struct result *result, const struct step *step)
{
    const double height = 7, x = FLOW_LEFT + WORDS, blank = 45;
    struct arena *arena = flow->arena;
    flow_need(flow, height);
    double y = flow->y + 1.4;
    struct sketch *page = flow_page(flow);
    flow_tick_box(flow, FLOW_LEFT, y - 0.1);
    sketch_words(page, FLOW_LEFT + 10.9, y + 3.0, text_print(arena, "%d", step->number),
                 flow_bold(), ALIGN_RIGHT, INK_BLACK);
    const char *words =
        step_words(arena, result, step, "The same with the {text}: {flow} to expect.");
    double below = flow_words(flow, x, y, flow_width(flow) - WORDS - blank, words, flow_plain(),
                              INK_BLACK, true);
    flow_blank(flow, flow_right(flow) - blank + 3, flow_right(flow), y + 3.6,
               step->row->expect ? pages_sentence(arena, step->row->expect) : NULL);
    flow->y = fmax(below, y + 4.2) + 1.4;
    flow_rule(flow);
}

void pages_bench(struct flow *flow, const struct result *result)
{
    const struct steps *steps = &result->bleed->bench;
    if (steps->count == 0)
        return;
    flow_heading(flow, "At the bench, and pipes that stay", 35);
    flow_rule(flow);
    for (size_t i = 0; i < steps->count; i++)
        if (strcmp(steps->items[i].row->id, "bench-flow") == 0 && !steps_first_of_row(steps, i))
            flow_test_again(flow, result, &steps->items[i]);
        else
            pages_step(flow, result, steps, i);
}

void pages_bleeding(struct flow *flow, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    double height = chapter_height(flow, result);
    flow_heading(flow, "Bleeding", height < 230 ? height : 60);
    if (plan->refused) {
        flow_paragraph(flow, text_print(flow->arena, "No order can be given: %s", plan->refusal),
                       flow_bold(), INK_BLACK);
        return;
    }
    if (plan->scope == BLEED_NOTHING) {
        flow_paragraph(flow, "Nothing was opened: nothing to bleed.", flow_plain(), INK_BLACK);
        return;
    }
    opening_words(flow, result);
    flow_rule(flow);
    table(flow, result);
    if (plan->untouched_count > 0)
        flow_paragraph(flow,
                       names_of(flow->arena, result, "Stay shut, nothing was opened there",
                                plan->untouched, plan->untouched_count),
                       flow_plain(), INK_BLACK);
    curve(flow, result);
}
