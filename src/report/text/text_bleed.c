#include "report/text/text_report.h"

#include <math.h>

#include "report/words/bleed_words.h"
#include "report/text/text_frame.h"
#include "units/unit.h"

static void add_scope(struct text *into, const struct bleed_plan *plan)
{
    static const char *const words[] = {"Nothing needs bleeding", "Only what was opened is bled",
                                        "Every nipple is bled"};
    const char *order = plan->makers_order  ? " The order is the one the description gives as the "
                                              "maker's."
                        : plan->asked_order ? " You asked for this order."
                                            : "";
    text_add_wrapped(
        into, text_print(into->arena, "%s: %s.%s", words[plan->scope], plan->scope_reason, order),
        0, 0, FRAME_WIDTH);
}

static void add_way(struct text *into, const struct result *result, const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    struct arena *arena = into->arena;
    if (isnan(step->run.m))
        frame_line(into, "Pipe run", "not known; needs the lengths of pipes and hoses");
    else
        frame_line(into, "Pipe run",
                   text_print(arena, "%s%s",
                              unit_text(arena, step->run.m, DIMENSION_LENGTH, result->units),
                              step->run_assumed ? " (assumed)" : ""));
    if (detail != NULL && !isnan(detail->path.m3))
        frame_line(into, "Way from master",
                   text_print(arena, "%s, of it not drawn through yet: %s",
                              bleed_volume(arena, result, detail->path.m3),
                              bleed_volume(arena, result, detail->branch.m3)));
    if (detail != NULL && detail->way_up != NULL)
        frame_line(into, "Nipple", detail->way_up);
}

static void add_flows(struct text *into, const struct result *result, const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    struct arena *arena = into->arena;
    frame_line(into, "Without a helper",
               text_print(arena, "all of it by gravity %s, with a pressure kit %s",
                          bleed_time(arena, detail->by_gravity.s, "it does not run"),
                          bleed_time(arena, detail->by_pressure.s, "it does not run")));
    if (detail->flow_by_gravity > 0)
        frame_line(into, "",
                   text_print(arena, "flow without air: %s and %s a minute",
                              bleed_volume(arena, result, detail->flow_by_gravity * 60),
                              bleed_volume(arena, result, detail->flow_by_pressure * 60)));
}

/* "49 mL, 8 strokes"; without the strokes where nobody strokes. */
static const char *drawn_words(struct arena *arena, const struct result *result,
                               struct volume volume, double strokes)
{
    const char *drawn = bleed_volume(arena, result, volume.m3);
    return result->bleed->method == METHOD_PEDAL
               ? text_print(arena, "%s, %s strokes", drawn, bleed_strokes(arena, strokes))
               : drawn;
}

static void add_level(struct text *into, const struct result *result, const struct step *step)
{
    struct arena *arena = into->arena;
    const struct bleed_detail *detail = step->bleed;
    const char *when = bleed_top_up(arena, result->bleed, step);
    if (result->bleed->method == METHOD_REVERSE)
        frame_line(into, "Reservoir", when);
    else if (isnan(detail->reservoir_after.m3))
        frame_line(into, "Reservoir", text_print(arena, "top up: %s; its size is not known", when));
    else
        frame_line(into, "Reservoir",
                   text_print(arena, "top up: %s; %s in it after this step", when,
                              bleed_volume(arena, result, detail->reservoir_after.m3)));
}

static void add_amounts(struct text *into, const struct result *result, const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    struct arena *arena = into->arena;
    frame_line(into, "Until it is clear",
               detail->gave_up
                   ? "never, by the simulation"
                   : text_print(arena, "%s, by the simulation",
                                drawn_words(arena, result, detail->purge, detail->purge_strokes)));
    frame_line(into, "To renew fluid",
               drawn_words(arena, result, detail->renewal, detail->renewal_strokes));
    if (result->bleed->method != METHOD_REVERSE)
        add_flows(into, result, step);
    add_level(into, result, step);
    if (!isnan(detail->air_left.m3))
        frame_line(into, "Air left after it",
                   text_print(arena, "%s in this circuit, by the simulation",
                              bleed_volume(arena, result, detail->air_left.m3)));
}

static void add_trapped(struct text *into, const struct result *result, const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    if (!(detail->trapped.m3 > 0))
        return;
    const char *cost =
        isnan(detail->trapped_pedal.m)
            ? ""
            : text_print(
                  into->arena,
                  detail->trapped_to_floor ? " and cost %s of pedal, more than it has: it goes to "
                                             "the floor,"
                                           : " and cost %s of pedal",
                  unit_text(into->arena, detail->trapped_pedal.m, DIMENSION_LENGTH, result->units));
    frame_line(into, "WARNING",
               text_print(into->arena, "%s of air stay above the nipple%s unless it is turned up",
                          bleed_volume(into->arena, result, detail->trapped.m3), cost));
}

static void add_gave_up(struct text *into, const struct step *step)
{
    if (step->bleed->gave_up)
        frame_line(into, "WARNING", bleed_gave_up);
}

static void add_steps(struct text *into, const struct result *result)
{
    const struct steps *steps = &result->bleed->steps;
    if (steps->count > 0) {
        frame_heading(into, "Bleeding, in this order");
        text_add_wrapped(into, bleed_how(into->arena, result->bleed), 0, 0, FRAME_WIDTH);
        text_add(into, "\n");
        text_add_wrapped(
            into, text_print(into->arena, "%s %s", bleed_amount_words(result->bleed), bleed_ideal),
            0, 0, FRAME_WIDTH);
        text_add(into, "\n");
    }
    for (size_t i = 0; i < steps->count; i++) {
        const struct step *step = &steps->items[i];
        const char *stage = bleed_stage(into->arena, result, i);
        if (stage != NULL)
            text_add(into, "%s%s:\n", i > 0 ? "\n" : "", stage);
        frame_step(into, result, steps, i);
        bool drawn = step->bleed == NULL || (bleed_draws(step) && !isnan(step->volume.m3));
        if (step->bleed != NULL && step->row == step_row_of(STEP_BLEED_CLEAR))
            add_trapped(into, result, step);
        if (step->nipple < 0 || !drawn)
            continue;
        add_way(into, result, step);
        if (step->bleed != NULL) {
            add_amounts(into, result, step);
            add_trapped(into, result, step);
            add_gave_up(into, step);
        }
    }
}

static void add_after(struct text *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    if (plan->untouched_count > 0) {
        struct text names = text_start(into->arena);
        for (int i = 0; i < plan->untouched_count; i++)
            text_add(&names, "%s%s", i > 0 ? ", " : "",
                     nipple_words(result->system, plan->untouched[i], into->arena));
        text_add(into, "\nStay shut: ");
        text_add_wrapped(into, names.items, 12, 4, FRAME_WIDTH);
    }
    const char *fluid = bleed_fluid_words(into->arena, result);
    if (fluid != NULL) {
        text_add(into, "\n");
        text_add_wrapped(into,
                         text_print(into->arena,
                                    "Fluid to have ready: %s: all that is drawn off, the clear "
                                    "strokes in both rounds, and what fills reservoirs that were "
                                    "emptied.",
                                    fluid),
                         0, 0, FRAME_WIDTH);
    }
}

static void add_cost(struct text *into, const struct result *result,
                     const struct bleed_cost_row *row)
{
    struct arena *arena = into->arena;
    const struct order_cost *cost = row->cost;
    text_add(into, "  %-28s %9s %7s %9s   %7s %9s\n", row->name,
             bleed_volume(arena, result, cost->fluid.m3), bleed_strokes(arena, cost->strokes),
             bleed_volume(arena, result, cost->air_left.m3),
             bleed_strokes(arena, cost->other_strokes),
             bleed_volume(arena, result, cost->other_air_left.m3));
}

static void add_costs(struct text *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    struct arena *arena = into->arena;
    struct bleed_cost_row rows[BLEED_MOST_COSTS];
    int count = bleed_cost_rows(plan, rows);
    const char *same = bleed_same_cost_words(arena, result);
    if (count == 0)
        return;
    if (same != NULL) {
        text_add(into, "\n");
        text_add_wrapped(into, same, 0, 0, FRAME_WIDTH);
        return;
    }
    frame_heading(into, "What the order costs, by the simulation");
    if (bleed_guess_words(plan) != NULL)
        text_add_wrapped(into, bleed_guess_words(plan), 0, 0, FRAME_WIDTH);
    text_add(into, "  %-28s %-27s   %s\n", "",
             plan->shut_under_pressure ? "nipples shut early" : "nipples held open",
             bleed_other_words(plan));
    text_add(into, "  %-28s %9s %7s %9s   %7s %9s\n", "", "drawn off", "strokes", "air left",
             "strokes", "air left");
    for (int i = 0; i < count; i++)
        add_cost(into, result, &rows[i]);
    for (int i = 1; i < count; i++) {
        const char *words = bleed_cost_words(arena, result, &rows[i]);
        text_add(into, "  %s: ", rows[i].name);
        text_add_wrapped(into, words, text_letters(rows[i].name) + 4, 6, FRAME_WIDTH);
    }
    if (plan->departure != NULL) {
        text_add(into, "  Why not the trade's order: ");
        text_add_wrapped(into, plan->departure->words, 29, 6, FRAME_WIDTH);
    }
    if (plan->tried > 0)
        text_add(into, "  Orders tried: %d.\n", plan->tried);
}

static void add_methods(struct text *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    if (plan->verdict_count == 0)
        return;
    frame_heading(into, "Which way of bleeding suits this car");
    for (int i = 0; i < plan->verdict_count; i++) {
        const struct method_verdict *verdict = &plan->verdicts[i];
        bool counted = verdict->row->method == plan->method;
        text_add(into, "  %s  %s%s\n",
                 !verdict->suits    ? "NO"
                 : verdict->unknown ? "? "
                                    : "ok",
                 verdict->row->words, counted ? "  (strokes and order above are for this)" : "");
        text_add(into, "      ");
        text_add_wrapped(into, text_print(into->arena, "needs %s", verdict->row->kit), 6, 6,
                         FRAME_WIDTH);
        for (int k = 0; k < verdict->note_count; k++) {
            const struct method_reason *reason = verdict->notes[k].reason;
            text_add(into, "      %s ",
                     reason->against   ? "no:"
                     : reason->unknown ? "cannot say:"
                                       : "mind:");
            text_add_wrapped(into,
                             text_print(into->arena, "%s [%s]",
                                        bleed_note_words(into->arena, result, &verdict->notes[k]),
                                        verdict->notes[k].reason->id),
                             reason->against   ? 10
                             : reason->unknown ? 18
                                               : 12,
                             8, FRAME_WIDTH);
        }
    }
}

static void add_list(struct text *into, const struct result *result, const char *heading,
                     const struct steps *steps)
{
    if (steps->count > 0)
        frame_heading(into, heading);
    for (size_t i = 0; i < steps->count; i++)
        frame_step(into, result, steps, i);
}

void text_bleed(struct text *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    frame_title(into, result);
    text_add(into, "\n");
    frame_unsettled(into, result);
    if (plan->refused) {
        text_add_wrapped(into, plan->refusal, 0, 0, FRAME_WIDTH);
        return;
    }
    add_scope(into, plan);
    for (int i = 0; plan->makers_order && i < plan->left_out_count; i++)
        text_add(into, "WARNING  The order given leaves out: %s.\n",
                 nipple_words(result->system, plan->left_out[i], into->arena));
    for (int i = 0; i < plan->asked_left_out_count; i++)
        text_add(into, "WARNING  The order asked for leaves out: %s.\n",
                 nipple_words(result->system, plan->asked_left_out[i], into->arena));
    text_add(into, "\n");
    frame_cautions(into, result, CAUTION_ALWAYS);
    frame_cautions(into, result, CAUTION_BLEEDING);
    frame_cautions(into, result, CAUTION_GLYCOL);
    frame_cautions(into, result, CAUTION_OIL);
    frame_cautions(into, result, CAUTION_SILICONE);
    frame_cautions(into, result, CAUTION_MOTORCYCLE);
    add_list(into, result, "At the bench, and pipes that stay, before they go on", &plan->bench);
    add_list(into, result, "Settings without which bleeding cannot succeed", &plan->settings);
    add_steps(into, result);
    add_after(into, result);
    add_costs(into, result);
    add_methods(into, result);
    add_list(into, result, "Then: settings undone, levels, is it tight?", &result->tests);
    frame_deference(into);
}
