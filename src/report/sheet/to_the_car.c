#include "report/sheet/parts_of_sheet.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/answers/answer.h"
#include "report/answers/answer_findings.h"
#include "report/answers/answer_steps.h"
#include "report/answers/answers.h"
#include "report/words/bleed_words.h"
#include "report/words/plan_words.h"
#include "report/words/step_words.h"
#include "report/words/words.h"
#include "units/unit.h"

/* The worst cautions of this job, each in its few words, before anything else. */
static void put_strip(struct document *into, const struct result *result)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    struct text strip = text_start(into->arena);
    for (size_t i = 0; i < count; i++) {
        if (rows[i].strip != NULL && caution_applies(&rows[i], result->system, &result->touched))
            text_add(&strip, "%s%s", strip.count > 0 ? " \u00b7 " : "", rows[i].strip);
    }
    document_words(into, strip.items)->tone = TONE_DANGER;
}

static const char *fluid_line(struct arena *arena, const struct result *result)
{
    int fluid = system_first(result->system, KIND_FLUID);
    const struct fluid_row *row =
        fluid >= 0 ? fluid_row(result->system->parts[fluid].as.fluid.grade) : NULL;
    const char *ready = result->bleed->refused ? NULL : bleed_fluid_words(arena, result);
    return text_print(arena, "Fluid %s%s%s.", row != NULL ? row->name : "of a grade not said",
                      ready != NULL ? "; have ready " : "", ready != NULL ? ready : "");
}

static void put_front(struct document *into, const struct result *result)
{
    put_strip(into, result);
    document_words(into, fluid_line(into->arena, result))->tone = TONE_SMALL;
    struct note *notes;
    size_t count = notes_of(result->system, into->arena, &notes);
    for (size_t i = 0; i < count; i++)
        answer_note(into, &notes[i]);
    answer_unsettled(into, result);
    answer_findings_in_short(into, result, SEVERITY_DANGER, NULL);
    answer_findings_in_short(into, result, SEVERITY_WARNING, NULL);
    document_picture(into, "diagram", 0.78);
}

bool sheet_ticks(struct document *into, const struct result *result, enum step_phase first,
                 enum step_phase last, const char *head)
{
    const struct steps *steps = &result->plan->steps;
    struct arena *arena = into->arena;
    bool *done = ARENA_ARRAY(arena, steps->count + 1, bool);
    bool begun = false;
    for (size_t i = 0; i < steps->count; i++) {
        const struct step *step = &steps->items[i];
        if (step->row->phase < first || step->row->phase > last || step->row->table != TABLE_NONE ||
            step->turn > 0 || done[i])
            continue;
        if (!begun && head != NULL)
            document_head(into, 2, head);
        begun = true;
        const char *words = answer_capital(arena, plan_brief(arena, result, i, done));
        struct block *tick = document_tick(into, words, NULL);
        tick->done = step->done;
    }
    return begun;
}

/* A box where a step is to be ticked, its tick where it is noted as done, nothing where there is
 * none. */
static void put_box(struct table *table, const struct result *result, int step)
{
    if (step < 0) {
        table_skip(table);
        return;
    }
    table_ask(table, NULL)->done = result->plan->steps.items[step].done;
}

static void put_joints(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {{"", CELL_FIGURE, CELL_LEFT, 0, 0, false},
                                                  {"joint", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                                  {"brushed", CELL_BOX, CELL_CENTRE, 0, 0, false},
                                                  {"undone", CELL_BOX, CELL_CENTRE, 0, 0, false},
                                                  {"plugged", CELL_BOX, CELL_CENTRE, 0, 0, false},
                                                  {"fitted", CELL_BOX, CELL_CENTRE, 0, 0, false},
                                                  {"tight", CELL_BOX, CELL_CENTRE, 0, 0, false},
                                                  {"to", CELL_FIGURE, CELL_RIGHT, 0, 0, false}};
    const struct plan *plan = result->plan;
    struct arena *arena = into->arena;
    if (plan->joint_count == 0)
        return;
    document_head(into, 2, "Joints")->aside =
        "brush, hold the hexagon, undo, plug at once; back by hand three turns";
    struct table *table = document_table(into, columns, 8);
    table->ruled = true;
    for (int i = 0; i < plan->joint_count; i++) {
        const struct plan_joint *joint = &plan->joints[i];
        table_row(table);
        table_cell(table, joint->letter)->tone = TONE_STRONG;
        table_cell(table, answer_capital(arena, plan_joint_words(result, arena, joint)));
        put_box(table, result, joint->undo);
        put_box(table, result, joint->undo);
        put_box(table, result, joint->plugged ? joint->undo : -1);
        put_box(table, result, joint->tighten);
        put_box(table, result, joint->tighten);
        table_cell(table, plan_torque_words(arena, joint, result->units));
    }
}

static void put_bore(struct table *table, const struct result *result, struct length bore)
{
    if (isnan(bore.m))
        table_skip(table);
    else
        table_ask(table, plan_bore_words(table->arena, bore, result->units));
}

static void put_parts(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {
        {"", CELL_WORDS, CELL_LEFT, 0, 0, false},
        {"old bore, read", CELL_LINE, CELL_LEFT, 0, 0.29, false},
        {"new bore, read", CELL_LINE, CELL_LEFT, 0, 0.29, false},
        {"filled", CELL_BOX, CELL_CENTRE, 0, 0, false},
        {"fitted", CELL_BOX, CELL_CENTRE, 0, 0, false}};
    const struct plan *plan = result->plan;
    struct table *table = NULL;
    for (int i = 0; i < plan->part_count; i++) {
        const struct plan_part *part = &plan->parts[i];
        if (!plan_part_has_row(part))
            continue;
        if (table == NULL) {
            document_head(into, 2, "Parts")->aside =
                "bore at three depths, two ways; the new part before it goes on";
            table = document_table(into, columns, 5);
            table->ruled = true;
        }
        table_row(table);
        table_cell(table, answer_capital(into->arena, result->system->parts[part->part].name));
        put_bore(table, result, part->old_bore);
        put_bore(table, result, part->new_bore);
        put_box(table, result, part->fill);
        put_box(table, result, part->fit);
    }
}

/* --- bleeding -------------------------------------------------------------------------------- */

/* Whether a nipple lies below the top of its chamber, so that the part must be turned. */
static bool has_to_be_turned(const struct result *result, const struct step *step)
{
    return step->part >= 0 && result->system->parts[step->part].fitted.nipple_below.m > 0;
}

static void put_nipple(struct table *table, const struct result *result, const struct step *step)
{
    struct arena *arena = table->arena;
    const char *with = bleed_with_words(arena, result, step);
    const char *way_up =
        step->bleed != NULL && has_to_be_turned(result, step) ? step->bleed->way_up : NULL;
    table_row(table);
    table_ask(table, NULL)->done = step->done;
    table_cell(table, text_print(arena, "%d", step->turn));
    table_cell(table, text_print(arena, "%s%s%s%s%s",
                                 answer_capital(arena, bleed_step_name(arena, result, step)),
                                 with != NULL ? ", " : "", with != NULL ? with : "",
                                 way_up != NULL ? "\nnipple " : "", way_up != NULL ? way_up : ""));
    table_cell(table, bleed_amount_short(arena, result, step))->tone = TONE_STRONG;
    table_cell(table, bleed_strokes_short(arena, result, step))->tone = TONE_STRONG;
    table_cell(table, bleed_top_up_short(arena, result, step));
    if (step->nipple >= 0)
        table_ask(table, NULL);
    else
        table_skip(table);
}

static void put_nipples(struct document *into, const struct result *result)
{
    const struct table_column columns[] = {
        {"", CELL_BOX, CELL_LEFT, 0, 0, false},
        {"", CELL_CIRCLE, CELL_LEFT, 0, 0, false},
        {"nipple", CELL_WORDS, CELL_LEFT, 0, 0, false},
        {bleed_amount_head(result), CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"strokes", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"top up", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"drawn off", CELL_LINE, CELL_LEFT, 0, 0.17, false}};
    const struct steps *steps = &result->plan->steps;
    struct table *table = document_table(into, columns, 7);
    table->ruled = true;
    for (size_t i = 0; i < steps->count; i++)
        if (steps->items[i].turn > 0)
            put_nipple(table, result, &steps->items[i]);
    for (size_t i = 0; i < steps->count; i++)
        answer_bleed_warnings(into, result, &steps->items[i], steps->items[i].turn);
}

static void put_bleeding(struct document *into, const struct result *result)
{
    struct arena *arena = into->arena;
    const struct bleed_plan *plan = result->bleed;
    document_head(into, 2, "Bleeding");
    if (plan->refused) {
        document_words(into, plan->refusal)->tone = TONE_STRONG;
        return;
    }
    if (plan->steps.count == 0) {
        document_words(into, "Nothing was opened: nothing to bleed.");
        return;
    }
    document_words(
        into, text_print(arena, "Tube on, its end under fluid. %s", bleed_how_short(arena, plan)));
    answer_bleed_order(into, result);
    put_nipples(into, result);
    const char *shut = bleed_untouched_words(arena, result);
    if (*shut != '\0')
        document_words(into, text_print(arena, "Stay shut: %s.", shut))->hang = 1;
    sheet_ticks(into, result, PHASE_BLEEDING, PHASE_BLEEDING, NULL);
}

void sheet_to_the_car(struct document *into, const struct result *result)
{
    put_front(into, result);
    sheet_ticks(into, result, PHASE_BEFORE, PHASE_BEFORE, phase_words(PHASE_BEFORE));
    sheet_ticks(into, result, PHASE_APART, PHASE_APART, phase_words(PHASE_APART));
    put_joints(into, result);
    put_parts(into, result);
    sheet_ticks(into, result, PHASE_BENCH, PHASE_BENCH, phase_words(PHASE_BENCH));
    sheet_ticks(into, result, PHASE_TOGETHER, PHASE_TOGETHER, phase_words(PHASE_TOGETHER));
    sheet_ticks(into, result, PHASE_SETTINGS, PHASE_SETTINGS, phase_words(PHASE_SETTINGS));
    put_bleeding(into, result);
    sheet_ticks(into, result, PHASE_UNDOING, PHASE_UNDOING, phase_words(PHASE_UNDOING));
}
