#include "report/answers/answers.h"

#include <math.h>

#include "base/text.h"
#include "report/answers/answer_findings.h"
#include "report/answers/answer_steps.h"
#include "report/words/bleed_words.h"
#include "report/words/pair_words.h"
#include "report/words/step_words.h"
#include "units/unit.h"

#define CAUTIONS                                                                                   \
    (1u << CAUTION_ALWAYS | 1u << CAUTION_BLEEDING | 1u << CAUTION_GLYCOL | 1u << CAUTION_OIL |    \
     1u << CAUTION_SILICONE | 1u << CAUTION_MOTORCYCLE)

static const char *scope_words(const struct bleed_plan *plan)
{
    static const char *const words[] = {"Nothing needs bleeding", "Only what was opened is bled",
                                        "Every nipple is bled"};
    return words[plan->scope];
}

/* Whose order it is, where it is not the plan's own. */
static const char *order_words(const struct bleed_plan *plan)
{
    return plan->makers_order  ? " The order is the one the description gives as the maker's."
           : plan->asked_order ? " You asked for this order."
                               : "";
}

static void add_left_out(struct document *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    struct arena *arena = into->arena;
    for (int i = 0; plan->makers_order && i < plan->left_out_count; i++)
        document_caution(into, "WARNING",
                         text_print(arena, "The order given leaves out: %s.",
                                    nipple_words(result->system, plan->left_out[i], arena)));
    for (int i = 0; i < plan->asked_left_out_count; i++)
        document_caution(into, "WARNING",
                         text_print(arena, "The order asked for leaves out: %s.",
                                    nipple_words(result->system, plan->asked_left_out[i], arena)));
}

void answer_bleed_order(struct document *into, const struct result *result)
{
    const char *whose = order_words(result->bleed);
    if (*whose != '\0')
        document_words(into, whose + 1); /* without the blank before it */
    add_left_out(into, result);
}

/* --- in full --------------------------------------------------------------------------------- */

static void add_line(struct document *into, const char *label, const char *words)
{
    struct block *block = document_words(
        into, text_print(into->arena, "%s%s%s", label, *label != '\0' ? ": " : "", words));
    block->indent = 2;
    block->hang = 1;
}

static void add_way(struct document *into, const struct result *result, const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    struct arena *arena = into->arena;
    if (isnan(step->run.m))
        add_line(into, "Pipe run", "not known; needs the lengths of pipes and hoses");
    else
        add_line(into, "Pipe run",
                 text_print(arena, "%s%s",
                            unit_text(arena, step->run.m, DIMENSION_LENGTH, result->units),
                            step->run_assumed ? " (assumed)" : ""));
    if (detail != NULL && !isnan(detail->path.m3))
        add_line(into, "Way from master",
                 text_print(arena, "%s, of it not drawn through yet: %s",
                            bleed_volume(arena, result, detail->path.m3),
                            bleed_volume(arena, result, detail->branch.m3)));
    if (detail != NULL && detail->way_up != NULL)
        add_line(into, "Nipple", detail->way_up);
}

static void add_flows(struct document *into, const struct result *result, const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    struct arena *arena = into->arena;
    add_line(into, "Without a helper",
             text_print(arena, "all of it by gravity %s, with a pressure kit %s",
                        bleed_time(arena, detail->by_gravity.s, "it does not run"),
                        bleed_time(arena, detail->by_pressure.s, "it does not run")));
    if (detail->flow_by_gravity > 0)
        add_line(into, "",
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

static void add_level(struct document *into, const struct result *result, const struct step *step)
{
    struct arena *arena = into->arena;
    const struct bleed_detail *detail = step->bleed;
    const char *when = bleed_top_up(arena, result->bleed, step);
    if (result->bleed->method == METHOD_REVERSE)
        add_line(into, "Reservoir", when);
    else if (isnan(detail->reservoir_after.m3))
        add_line(into, "Reservoir", text_print(arena, "top up: %s; its size is not known", when));
    else
        add_line(into, "Reservoir",
                 text_print(arena, "top up: %s; %s in it after this step", when,
                            bleed_volume(arena, result, detail->reservoir_after.m3)));
}

static void add_amounts(struct document *into, const struct result *result, const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    struct arena *arena = into->arena;
    add_line(into, "Until it is clear",
             detail->gave_up
                 ? "never, by the simulation"
                 : text_print(arena, "%s, by the simulation",
                              drawn_words(arena, result, detail->purge, detail->purge_strokes)));
    if (result->bleed->method == METHOD_PEDAL && detail->stroke_in_air.m3 >= 0)
        add_line(into, "A stroke till then",
                 text_print(arena, "%s while the other circuit of the tandem holds its air",
                            bleed_volume(arena, result, detail->stroke_in_air.m3)));
    add_line(into, "To renew fluid",
             drawn_words(arena, result, detail->renewal, detail->renewal_strokes));
    if (result->bleed->method != METHOD_REVERSE)
        add_flows(into, result, step);
    add_level(into, result, step);
    if (!isnan(detail->air_left.m3))
        add_line(into, "Air left after it",
                 text_print(arena, "%s in this circuit, by the simulation",
                            bleed_volume(arena, result, detail->air_left.m3)));
}

static void add_steps(struct document *into, const struct result *result)
{
    const struct steps *steps = &result->bleed->steps;
    if (steps->count > 0) {
        document_head(into, 2, "Bleeding, in this order");
        document_words(into, bleed_how(into->arena, result->bleed));
        document_gap(into);
        document_words(
            into, text_print(into->arena, "%s %s", bleed_amount_words(result->bleed), bleed_ideal));
        document_gap(into);
    }
    for (size_t i = 0; i < steps->count; i++) {
        const struct step *step = &steps->items[i];
        const char *stage = bleed_stage(into->arena, result, i);
        if (stage != NULL)
            document_head(into, 2, text_print(into->arena, "%s:", stage));
        answer_step(into, result, steps, i);
        bool drawn = step->bleed == NULL || (bleed_draws(step) && !isnan(step->volume.m3));
        if (step->nipple >= 0 && drawn)
            add_way(into, result, step);
        if (step->nipple >= 0 && drawn && step->bleed != NULL)
            add_amounts(into, result, step);
        answer_bleed_warnings(into, result, step, (int)i + 1);
    }
}

static void add_after(struct document *into, const struct result *result)
{
    document_gap(into);
    if (result->bleed->untouched_count > 0)
        document_words(into, text_print(into->arena, "Stay shut: %s",
                                        bleed_untouched_words(into->arena, result)))
            ->hang = 2;
    const char *fluid = bleed_fluid_words(into->arena, result);
    if (fluid != NULL)
        document_words(into,
                       text_print(into->arena,
                                  "Fluid to have ready: %s: all that is drawn off, the clear "
                                  "strokes in both rounds, and what fills reservoirs that were "
                                  "emptied.",
                                  fluid));
}

static void add_cost_table(struct document *into, const struct result *result,
                           const struct bleed_cost_row *rows, int count)
{
    static const struct table_column columns[] = {
        {"", CELL_WORDS, CELL_LEFT, 0, 0, false},
        {"drawn off", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"strokes", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"air left", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"other strokes", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"other air left", CELL_FIGURE, CELL_RIGHT, 0, 0, false}};
    struct arena *arena = into->arena;
    document_words(into, text_print(arena, "With %s; other: %s.",
                                    result->bleed->shut_under_pressure ? "nipples shut early"
                                                                       : "nipples held open",
                                    bleed_other_words(result->bleed)));
    struct table *table = document_table(into, columns, 6);
    for (int i = 0; i < count; i++) {
        const struct order_cost *cost = rows[i].cost;
        table_row(table);
        table_cell(table, rows[i].name);
        table_cell(table, bleed_volume(arena, result, cost->fluid.m3));
        table_cell(table, bleed_strokes(arena, cost->strokes));
        table_cell(table, bleed_volume(arena, result, cost->air_left.m3));
        table_cell(table, bleed_strokes(arena, cost->other_strokes));
        table_cell(table, bleed_volume(arena, result, cost->other_air_left.m3));
    }
}

static void add_hung(struct document *into, const char *words)
{
    struct block *block = document_words(into, words);
    block->indent = 1;
    block->hang = 2;
}

static void add_costs(struct document *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    struct arena *arena = into->arena;
    struct bleed_cost_row rows[BLEED_MOST_COSTS];
    int count = bleed_cost_rows(plan, rows);
    const char *same = bleed_same_cost_words(arena, result);
    if (count == 0)
        return;
    if (same != NULL) {
        document_gap(into);
        document_words(into, same);
        return;
    }
    document_head(into, 2, "What the order costs, by the simulation");
    if (bleed_guess_words(plan) != NULL)
        document_words(into, bleed_guess_words(plan));
    add_cost_table(into, result, rows, count);
    for (int i = 1; i < count; i++)
        add_hung(into, text_print(arena, "%s: %s", rows[i].name,
                                  bleed_cost_words(arena, result, &rows[i])));
    if (plan->departure != NULL)
        add_hung(into, text_print(arena, "Why not the trade's order: %s", plan->departure->words));
    if (plan->tried > 0)
        add_hung(into, text_print(arena, "Orders tried: %d.", plan->tried));
}

static const char *suits_word(const struct method_verdict *verdict)
{
    return !verdict->suits ? "NO" : verdict->unknown ? "?" : "ok";
}

static void add_method_note(struct document *into, const struct result *result,
                            const struct method_note *note)
{
    const char *lead = note->reason->against ? "no" : note->reason->unknown ? "cannot say" : "mind";
    add_line(into, lead,
             text_print(into->arena, "%s [%s]", bleed_note_words(into->arena, result, note),
                        note->reason->id));
}

static void add_methods(struct document *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    if (plan->verdict_count == 0)
        return;
    document_head(into, 2, "Which way of bleeding suits this car");
    for (int i = 0; i < plan->verdict_count; i++) {
        const struct method_verdict *verdict = &plan->verdicts[i];
        bool counted = verdict->row->method == plan->method;
        document_words(into, text_print(into->arena, "%-2s  %s%s", suits_word(verdict),
                                        verdict->row->words,
                                        counted ? "  (strokes and order above are for this)" : ""))
            ->indent = 1;
        add_line(into, "needs", verdict->row->kit);
        for (int k = 0; k < verdict->note_count; k++)
            add_method_note(into, result, &verdict->notes[k]);
    }
}

void answer_ways(struct document *into, const struct result *result)
{
    if (result->bleed->refused)
        return;
    add_costs(into, result);
    add_methods(into, result);
}

static struct steps phase_of(const struct result *result, enum step_phase phase)
{
    return plan_phases(result->plan, phase, phase);
}

/* Whether the work opens anything: then `open` says what comes before. */
static bool opens(const struct result *result)
{
    return result->opening.count > phase_of(result, PHASE_BEFORE).count;
}

static void in_full(struct document *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    struct steps before = phase_of(result, PHASE_BEFORE), bench = phase_of(result, PHASE_BENCH),
                 settings = phase_of(result, PHASE_SETTINGS);
    document_words(into, text_print(into->arena, "%s: %s.%s", scope_words(plan), plan->scope_reason,
                                    order_words(plan)));
    add_left_out(into, result);
    document_gap(into);
    answer_cautions(into, result, CAUTIONS, true);
    if (!opens(result))
        answer_steps(into, result, phase_words(PHASE_BEFORE), &before);
    answer_steps(into, result, "At the bench, and pipes that stay, before they go on", &bench);
    answer_steps(into, result, "Settings without which bleeding cannot succeed", &settings);
    add_steps(into, result);
    add_after(into, result);
    answer_ways(into, result);
    answer_steps(into, result, "Then: settings undone, levels, is it tight?", &result->tests);
}

/* --- in short -------------------------------------------------------------------------------- */

/* "longest run first" of the reason with the id "longest-run-first". */
static const char *because(struct arena *arena, const struct step *step)
{
    char *words = text_copy(arena, step->reason != NULL ? step->reason->id : "");
    for (char *letter = words; *letter != '\0'; letter++)
        if (*letter == '-')
            *letter = ' ';
    return words;
}

/* Whether a bleeding step is noted as done in a work file: the plan knows it. */
static bool step_is_done(const struct result *result, const struct step *bleeding)
{
    const struct steps *steps = &result->plan->steps;
    for (size_t i = 0; i < steps->count; i++)
        if (steps->items[i].turn > 0 && steps->items[i].row == bleeding->row &&
            steps->items[i].part == bleeding->part && steps->items[i].nipple == bleeding->nipple)
            return steps->items[i].done;
    return false;
}

static void add_nipples(struct document *into, const struct result *result)
{
    const struct table_column columns[] = {
        {"", CELL_CIRCLE, CELL_RIGHT, 0, 0, false},
        {"nipple", CELL_WORDS, CELL_LEFT, 0, 0, false},
        {bleed_amount_head(result), CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"strokes", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"top up", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"because", CELL_WORDS, CELL_LEFT, 0, 0, false}};
    struct arena *arena = into->arena;
    const struct steps *steps = &result->bleed->steps;
    document_gap(into);
    struct table *table = document_table(into, columns, 6);
    for (size_t i = 0; i < steps->count; i++) {
        const struct step *step = &steps->items[i];
        const char *with = bleed_with_words(arena, result, step);
        table_row(table);
        table_cell(table, text_print(arena, "%zu", i + 1));
        table_cell(table, text_print(arena, "%s%s%s",
                                     words_renamed(arena, bleed_step_name(arena, result, step),
                                                   " nipple", ""),
                                     with != NULL ? ", " : "", with != NULL ? with : ""));
        table_cell(table, bleed_amount_short(arena, result, step));
        table_cell(table, bleed_strokes_short(arena, result, step));
        table_cell(table, bleed_top_up_short(arena, result, step));
        table_cell(table, step_is_done(result, step) ? "done" : because(arena, step));
    }
    for (size_t i = 0; i < steps->count; i++)
        answer_bleed_warnings(into, result, &steps->items[i], (int)i + 1);
}

/* The other ways that suit: "pressure, vacuum, reverse": words for --method. */
static const char *other_ways(struct arena *arena, const struct bleed_plan *plan)
{
    struct text words = text_start(arena);
    for (int i = 0; i < plan->verdict_count; i++) {
        const struct method_verdict *verdict = &plan->verdicts[i];
        if (verdict->suits && !verdict->unknown && verdict->row->method != plan->method)
            text_add(&words, "%s%s", words.count > 0 ? ", " : "", verdict->row->id);
    }
    return words.count > 0 ? words.items : "no other way";
}

/* "15 tests at rest, from --step 101 on; then 10 steps: second person, first drive, later" */
static const char *rest_words(struct arena *arena, const struct result *result)
{
    struct steps tests = phase_of(result, PHASE_RESTING);
    struct steps last = plan_phases(result->plan, PHASE_SECOND, PHASE_LATER);
    if (tests.count == 0)
        return "";
    return text_print(arena, "%zu tests at rest, --step %d on; %zu of second person, drive, later",
                      tests.count, tests.items[0].number, last.count);
}

static void add_round(struct document *into, const struct result *result)
{
    struct arena *arena = into->arena;
    const struct bleed_plan *plan = result->bleed;
    int count;
    document_gap(into);
    struct table *table = answer_labels(into, 0);
    answer_label(
        table, "Each",
        text_print(arena, "Tube on, its end under fluid. %s", bleed_how_short(arena, plan)));
    answer_label(table, "Stay shut", bleed_untouched_words(arena, result));
    if (!opens(result))
        answer_label(table, "Before", phase_briefs(arena, result, PHASE_BEFORE, &count));
    answer_label(table, "Set first", phase_briefs(arena, result, PHASE_SETTINGS, &count));
    answer_label(table, "Undo", phase_briefs(arena, result, PHASE_UNDOING, &count));
    answer_label(table, "Then", rest_words(arena, result));
    answer_label(table, "Suits too", other_ways(arena, plan));
    if (plan->departure != NULL)
        answer_label(table, "Order",
                     text_print(arena, "not the trade's: %s", plan->departure->words));
}

static void in_short(struct document *into, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    struct arena *arena = into->arena;
    const char *fluid = bleed_fluid_words(arena, result);
    document_words(into, text_print(arena, "%s.%s%s%s%s", scope_words(plan), order_words(plan),
                                    fluid != NULL ? " Fresh fluid to have ready: " : "",
                                    fluid != NULL ? fluid : "", fluid != NULL ? "." : ""));
    add_left_out(into, result);
    answer_cautions(into, result, CAUTIONS, false);
    if (plan->steps.count > 0)
        add_nipples(into, result);
    add_round(into, result);
    struct table *next = answer_next(into);
    answer_label(next, "Why, volumes, ways, all steps", "the same with --all");
    answer_label(next, "At the car", "--step 1 walks it, firmpedal sheet prints it");
}

void answer_bleed(struct document *into, const struct result *result, bool all)
{
    if (all) {
        answer_title_in_full(into, result);
    } else {
        answer_title(into, result);
        answer_notes(into, result);
    }
    answer_unsettled(into, result);
    if (result->bleed->refused) {
        document_words(into, result->bleed->refusal);
        return;
    }
    if (all)
        in_full(into, result);
    else
        in_short(into, result);
    answer_deference(into, all);
}
