#include "report/answers/answers.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/answers/answer_findings.h"
#include "report/answers/answer_steps.h"
#include "report/words/pair_words.h"
#include "report/words/plan_words.h"
#include "report/words/step_words.h"
#include "units/unit.h"

#define CAUTIONS                                                                                   \
    (1u << CAUTION_ALWAYS | 1u << CAUTION_LIFTED | 1u << CAUTION_LININGS | 1u << CAUTION_DRUMS |   \
     1u << CAUTION_CLUTCH)

/* --- in short -------------------------------------------------------------------------------- */

static void put_line(struct document *into, const char *words)
{
    document_words(into, text_print(into->arena, "- %s", answer_capital(into->arena, words)))
        ->hang = 1;
}

/* The steps of a phase that stand in no table, in order; short ones share a line. */
static void add_phase(struct document *into, const struct result *result, enum step_phase phase)
{
    enum { LINE = 77 };
    const struct steps *steps = &result->plan->steps;
    struct arena *arena = into->arena;
    bool *done = ARENA_ARRAY(arena, steps->count + 1, bool);
    const char *line = NULL;
    for (size_t i = 0; i < steps->count; i++) {
        const struct step *step = &steps->items[i];
        if (step->row->phase != phase || step->row->table != TABLE_NONE || done[i] || step->done)
            continue;
        if (line == NULL)
            document_head(into, 2, phase_words(phase));
        const char *words = plan_brief(arena, result, i, done);
        const char *both = line != NULL ? text_print(arena, "%s; %s", line, words) : words;
        if (line != NULL && text_letters(both) > LINE) {
            put_line(into, line);
            both = words;
        }
        line = both;
    }
    if (line != NULL)
        put_line(into, line);
}

/* "front pipes at the front hoses" of two joints that are alike but for the side, or NULL. */
static const char *joints_pair(const struct result *result, struct arena *arena,
                               const struct plan_joint *one, const struct plan_joint *other)
{
    const struct part *parts = result->system->parts;
    const char *what = pair_words(arena, parts[one->part].name, parts[other->part].name);
    const char *where = one->at == other->at
                            ? parts[one->at].name
                            : pair_words(arena, parts[one->at].name, parts[other->at].name);
    if (what == NULL || where == NULL || one->plugged != other->plugged ||
        strcmp(plan_torque_words(arena, one, result->units),
               plan_torque_words(arena, other, result->units)) != 0)
        return NULL;
    return text_print(arena, "%s at the %s", what, where);
}

static void add_joint(struct table *table, const struct result *result, int at, bool *done)
{
    struct arena *arena = table->arena;
    const struct plan *plan = result->plan;
    const struct plan_joint *joint = &plan->joints[at];
    const char *letters = joint->letter, *name = plan_joint_words(result, arena, joint);
    for (int i = at + 1; i < plan->joint_count; i++) {
        const char *pair = done[i] ? NULL : joints_pair(result, arena, joint, &plan->joints[i]);
        if (pair == NULL)
            continue;
        done[i] = true;
        name = pair;
        letters = text_print(arena, "%s, %s", letters, plan->joints[i].letter);
        break;
    }
    table_row(table);
    table_cell(table, letters)->tone = TONE_STRONG;
    table_cell(table, name);
    table_cell(table, joint->plugged ? "yes" : "");
    table_cell(table, plan_torque_words(arena, joint, result->units));
}

static void add_joints(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {
        {"", CELL_FIGURE, CELL_LEFT, 0, 0, false},
        {"joint", CELL_WORDS, CELL_LEFT, 0, 0, false},
        {"plug", CELL_FIGURE, CELL_LEFT, 0, 0, false},
        {"tighten to", CELL_FIGURE, CELL_RIGHT, 0, 0, false}};
    const struct plan *plan = result->plan;
    bool *done = ARENA_ARRAY(into->arena, (size_t)plan->joint_count + 1, bool);
    if (plan->joint_count == 0)
        return;
    document_head(into, 2, "Joints")->aside =
        "brush, hold the hexagon, undo, plug at once; back by hand three turns";
    struct table *table = document_table(into, columns, 4);
    for (int i = 0; i < plan->joint_count; i++)
        if (!done[i])
            add_joint(table, result, i, done);
}

static bool same_length(struct length a, struct length b)
{
    return a.m == b.m || (isnan(a.m) && isnan(b.m));
}

static void add_part(struct table *table, const struct result *result, int at, bool *done)
{
    struct arena *arena = table->arena;
    const struct plan *plan = result->plan;
    const struct plan_part *part = &plan->parts[at];
    const char *name = result->system->parts[part->part].name;
    for (int i = at + 1; i < plan->part_count; i++) {
        const struct plan_part *other = &plan->parts[i];
        const char *pair = pair_words(arena, name, result->system->parts[other->part].name);
        if (pair == NULL || !same_length(part->old_bore, other->old_bore) ||
            !same_length(part->new_bore, other->new_bore) || (part->fill < 0) != (other->fill < 0))
            continue;
        done[i] = true;
        name = pair;
        break;
    }
    table_row(table);
    table_cell(table, name);
    table_cell(table, plan_bore_words(arena, part->old_bore, result->units));
    table_cell(table, plan_bore_words(arena, part->new_bore, result->units));
    table_cell(table, part->fill >= 0 ? "fill" : "");
}

static void add_parts(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {{"part", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                                  {"old bore", CELL_FIGURE, CELL_LEFT, 0, 0, false},
                                                  {"new bore", CELL_FIGURE, CELL_LEFT, 0, 0, false},
                                                  {"bench", CELL_FIGURE, CELL_LEFT, 0, 0, false}};
    const struct plan *plan = result->plan;
    bool *done = ARENA_ARRAY(into->arena, (size_t)plan->part_count + 1, bool);
    struct table *table = NULL;
    for (int i = 0; i < plan->part_count; i++) {
        if (done[i] || !plan_part_has_row(&plan->parts[i]))
            continue;
        if (table == NULL) {
            document_head(into, 2, "Parts")->aside =
                "measure both bores before the new one goes on";
            table = document_table(into, columns, 4);
        }
        add_part(table, result, i, done);
    }
}

/* What a work file notes as done is left out above. */
static void add_noted(struct document *into, const struct result *result)
{
    size_t noted = 0;
    for (size_t i = 0; i < result->plan->steps.count; i++)
        noted += result->plan->steps.items[i].done;
    if (noted > 0)
        document_words(into,
                       text_print(into->arena,
                                  "Noted as done, and left out of the lists: %zu of %zu steps.",
                                  noted, result->plan->steps.count));
}

static void in_short(struct document *into, const struct result *result)
{
    answer_title(into, result);
    answer_notes(into, result);
    answer_unsettled(into, result);
    answer_cautions(into, result, CAUTIONS, false);
    add_noted(into, result);
    add_phase(into, result, PHASE_BEFORE);
    add_phase(into, result, PHASE_APART);
    add_joints(into, result);
    add_parts(into, result);
    add_phase(into, result, PHASE_BENCH);
    add_phase(into, result, PHASE_TOGETHER);
    struct table *next = answer_next(into);
    answer_label(next, "Every step in full, why", "the same with --all");
    answer_label(next, "Go on with", "firmpedal bleed, sheet; --step 1 walks all of it");
}

/* --- in full --------------------------------------------------------------------------------- */

static void in_full(struct document *into, const struct result *result)
{
    enum step_phase phase = PHASE_COUNT;
    answer_title_in_full(into, result);
    answer_unsettled(into, result);
    answer_cautions(into, result, CAUTIONS, true);
    for (size_t i = 0; i < result->opening.count; i++) {
        const struct step *step = &result->opening.items[i];
        if (step->row->phase != phase)
            document_head(into, 2, phase_words(step->row->phase));
        phase = step->row->phase;
        answer_step(into, result, &result->opening, i);
    }
}

void answer_open(struct document *into, const struct result *result, bool all)
{
    if (result->opening.count == 0) {
        answer_title(into, result);
        answer_unsettled(into, result);
        document_words(into, "Nothing to open: no work file renews or replaces a part. Name the "
                             "parts in a work file under [work] renewed, or in [replaced ...].");
        return;
    }
    if (all)
        in_full(into, result);
    else
        in_short(into, result);
    answer_deference(into, all);
}
