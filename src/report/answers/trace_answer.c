#include <math.h>
#include <string.h>

#include "advice/figures/trace.h"
#include "base/text.h"
#include "report/answers/answer.h"
#include "report/answers/answers.h"
#include "report/words/input_words.h"
#include "report/words/pair_words.h"
#include "report/words/words.h"

enum { MOST_TELLING = 5, MOST_MADE = 4 };

/* Words from an indent on, further lines further in. */
static void add_words(struct document *into, int indent, int hang, const char *words)
{
    struct block *block = document_words(into, words);
    block->indent = indent;
    block->hang = hang;
}

static const char *of_comma(const struct figure *figure)
{
    return *figure->of != '\0' ? ", " : "";
}

/* What is missing, with what to write and where to put the tape. */
static void add_needs(struct table *table, const struct result *result, const struct figure *figure)
{
    for (int i = 0; i < figure->needs_count; i++) {
        const struct cited_key *need = &figure->needs[i];
        answer_label(table, i == 0 ? "needs" : "",
                     text_print(table->arena, "%s: %s; for example %s = %s",
                                cited_words(table->arena, result->system, need), need->key->help,
                                need->key->name,
                                need->key->example != NULL ? need->key->example : "?"));
    }
    if (figure->needs_count == 0)
        answer_label(table, "because", figure->reason);
}

static void add_unusual(struct table *table, const struct result *result, const struct trace *trace)
{
    struct text words = text_start(table->arena);
    for (int i = 0; i < trace->input_count; i++)
        if (trace->inputs[i].unusual)
            text_add(&words, "%s%s", words.count > 0 ? ", " : "",
                     cited_words(table->arena, result->system, &trace->inputs[i].cited));
    answer_label(table, "unusual", words.items);
}

static void add_holds(struct table *table, const struct figure *figure, bool all)
{
    size_t count;
    const struct hold_row *rows = hold_rows(&count);
    for (size_t i = 0; i < count; i++) {
        bool broken = (figure->holds_broken & rows[i].bit) != 0;
        if ((figure->holds & rows[i].bit) != 0 && (all || broken))
            answer_label(table, broken ? "NOT MET" : "met here",
                         broken ? rows[i].broken : rows[i].words);
    }
}

static const char *value_words(struct arena *arena, const struct result *result,
                               const struct figure *figure)
{
    return figure->state == FIGURE_NOT_COMPUTED
               ? "not computed"
               : text_print(arena, "%s, %s", figure_value_words(arena, figure, result->units),
                            figure_state_word(figure));
}

static void add_head(struct document *into, const struct result *result, const struct trace *trace)
{
    struct arena *arena = into->arena;
    const struct figure *figure = trace->figure;
    document_head(into, 2,
                  text_print(arena, "%s%s%s", figure->row->title, of_comma(figure), figure->of));
    struct table *table = answer_labels(into, 1);
    answer_label(table, "value", value_words(arena, result, figure));
    if (figure->state == FIGURE_NOT_COMPUTED)
        add_needs(table, result, figure);
    answer_label(table, "name", figure->row->id);
    answer_label(table, "how", figure->row->formula);
    answer_label(table, "more", text_print(arena, "docs/physics.md#%s", figure->row->anchor));
    answer_label(table, "holds for", figure->row->limits);
    add_holds(table, figure, true);
    add_unusual(table, result, trace);
    if (!isnan(trace->effort.n))
        answer_label(table, "effort",
                     text_print(arena, "%s, as asked for; the efforts of the file do not count",
                                unit_text(arena, trace->effort.n, DIMENSION_FORCE, result->units)));
}

static const char *range_words(struct arena *arena, const struct branch *branch,
                               enum unit_system units)
{
    if (isnan(branch->now))
        return "";
    const char *now = unit_text(arena, branch->now, branch->dimension, units);
    const char *from = unit_text(arena, branch->from, branch->dimension, units);
    if (isinf(branch->to))
        return text_print(arena, " (%s into it; so from %s on)", now, from);
    return text_print(arena, " (%s into it; so from %s to %s)", now, from,
                      unit_text(arena, branch->to, branch->dimension, units));
}

static void add_cases(struct document *into, const struct result *result, const struct trace *trace)
{
    struct arena *arena = into->arena;
    if (trace->branch_count == 0)
        return;
    document_head(into, 2, "Which case of each law holds now");
    for (int i = 0; i < trace->branch_count; i++) {
        const struct branch *branch = &trace->branches[i];
        add_words(into, 1, 2,
                  text_print(arena, "%s: %s%s", result->system->parts[branch->part].name,
                             branch->words, range_words(arena, branch, result->units)));
    }
    for (int i = 0; i < trace->knee_count; i++) {
        const struct trace_knee *knee = &trace->knees[i];
        add_words(into, 1, 2,
                  text_print(arena,
                             "Another case begins at %.2f times this effort: up to there the %s "
                             "is %s.",
                             knee->effort, result->system->parts[knee->branch.part].name,
                             knee->branch.words));
    }
}

static const char *origin_or_place(struct arena *arena, const struct trace_input *input)
{
    const char *place = place_words(arena, input->origin.place);
    return input->origin.kind == ORIGIN_ASSUMED || *place == '\0' ? origin_words(input->origin.kind)
                                                                  : place;
}

/* How far in a step of the way stands: no narrower than half a small screen. */
static int step_indent(const struct trace_step *step)
{
    enum { DEEPEST = 6 };
    return 1 + (step->depth < DEEPEST ? step->depth : DEEPEST);
}

static void add_step(struct document *into, const struct result *result, const struct trace *trace,
                     const struct trace_step *step)
{
    struct arena *arena = into->arena;
    const struct figure *figure = step->figure;
    int indent = step_indent(step);
    add_words(into, indent, 2,
              text_print(arena, "%s%s%s = %s%s", figure->row->id, of_comma(figure), figure->of,
                         figure->state == FIGURE_NOT_COMPUTED
                             ? "not computed"
                             : figure_value_words(arena, figure, result->units),
                         step->again ? " (see above)" : ""));
    if (step->again)
        return;
    add_words(into, indent + 2, 1, text_print(arena, "= %s", figure->row->formula));
    for (int i = 0; i < step->input_count; i++) {
        const struct trace_input *input = &trace->inputs[step->inputs[i]];
        add_words(into, indent + 2, 2,
                  text_print(
                      arena, "%s = %s, %s%s", cited_words(arena, result->system, &input->cited),
                      input_value_words(arena, input, result->units), origin_or_place(arena, input),
                      step->only_beyond[i] ? " (only beyond a knee)" : ""));
    }
}

/* By how much the figure moves with the value. */
static const char *weight_words(struct arena *arena, const struct trace *trace,
                                const struct trace_input *input, enum unit_system units)
{
    const struct weight *weight = input->weight;
    const struct key *key = input->cited.key;
    struct text words = text_start(arena);
    if (!isnan(weight->more))
        text_add(&words, "1 %% %s: %s", weight->less_by > 0 ? "less" : "more",
                 change_words(arena, trace->figure, weight->more, units));
    else if (!isnan(weight->other) && key->form == FORM_CHOICE)
        text_add(&words, "another word: up to %s",
                 change_words(arena, trace->figure, weight->other, units));
    else if (!isnan(weight->other))
        text_add(&words, "%s: %s", key->example != NULL ? key->example : "a usual value",
                 change_words(arena, trace->figure, weight->other, units));
    if (input->origin.kind == ORIGIN_ASSUMED && !isnan(weight->least))
        text_add(&words, "%s%s: %s", words.count > 0 ? "; " : "",
                 key_value_words(arena, key, key->usual_least, units),
                 change_words(arena, trace->figure, weight->least, units));
    if (input->origin.kind == ORIGIN_ASSUMED && !isnan(weight->most))
        text_add(&words, "%s%s: %s", words.count > 0 ? "; " : "",
                 key_value_words(arena, key, key->usual_most, units),
                 change_words(arena, trace->figure, weight->most, units));
    if (weight->beyond)
        text_add(&words, "%smatters only beyond a knee", words.count > 0 ? "; " : "");
    return words.items;
}

static void add_input(struct document *into, const struct result *result, const struct trace *trace,
                      int i)
{
    struct arena *arena = into->arena;
    const struct trace_input *input = &trace->inputs[i];
    const char *place = place_words(arena, input->origin.place);
    bool assumed = input->origin.kind == ORIGIN_ASSUMED;
    const char *source = assumed ? input->cited.key->assumed_source : NULL;
    add_words(into, 1, 4,
              text_print(arena, "%d  %s = %s", i + 1,
                         cited_words(arena, result->system, &input->cited),
                         input_value_words(arena, input, result->units)));
    add_words(into, 3, 2,
              text_print(arena, "%s%s%s%s%s", origin_words(input->origin.kind),
                         *place != '\0' && !assumed ? ", " : "", assumed ? "" : place,
                         source != NULL ? ": " : "", source != NULL ? source : ""));
    add_words(into, 3, 2, weight_words(arena, trace, input, result->units));
}

static void in_full(struct document *into, const struct result *result)
{
    const struct trace *trace = result->trace;
    answer_title_in_full(into, result);
    add_head(into, result, trace);
    add_cases(into, result, trace);
    document_head(into, 2, "The way down, each value where it first comes in");
    for (int i = 0; i < trace->step_count; i++)
        add_step(into, result, trace, &trace->steps[i]);
    if (trace->input_count > 0)
        document_head(into, 2, "What it rests on, most telling first");
    for (int i = 0; i < trace->input_count; i++)
        add_input(into, result, trace, i);
}

/* --- in short -------------------------------------------------------------------------------- */

/* One more of what a figure is made of, unless there were enough. */
static void add_made(struct text *words, int *count, const char *name, const char *value)
{
    if (*count < MOST_MADE)
        text_add(words, "%s%s %s", *count > 0 ? "; " : "", name, value);
    ++*count;
}

/* The figures one step down and the values that come in beside them. */
static const char *made_of(struct arena *arena, const struct result *result,
                           const struct trace *trace)
{
    struct text words = text_start(arena);
    int count = 0;
    const struct trace_step *top = &trace->steps[0];
    for (int i = 1; i < trace->step_count; i++) {
        const struct figure *figure = trace->steps[i].figure;
        if (trace->steps[i].depth == 1)
            add_made(&words, &count,
                     text_print(arena, "%s%s%s", figure->row->id, of_comma(figure), figure->of),
                     figure_value_words(arena, figure, result->units));
    }
    for (int i = 0; i < top->input_count; i++) {
        const struct trace_input *input = &trace->inputs[top->inputs[i]];
        if (!top->only_beyond[i])
            add_made(&words, &count, cited_words(arena, result->system, &input->cited),
                     input_value_words(arena, input, result->units));
    }
    if (count > MOST_MADE)
        text_add(&words, " and %d more", count - MOST_MADE);
    return words.items;
}

/* How a value is measured, without what stands in brackets and after a semicolon. */
static const char *help_words(struct arena *arena, const struct key *key)
{
    struct text words = text_start(arena);
    int depth = 0;
    for (const char *at = key->help; *at != '\0' && *at != ';'; at++) {
        depth += *at == '(';
        if (depth == 0 && !(*at == ' ' && at[1] == '('))
            text_add_bytes(&words, at, 1);
        depth -= *at == ')';
    }
    return words.items;
}

/* "[front discs] roll back" where both sides are alike and stand behind each other; next is then
 * the one after them. */
static const char *telling_name(struct arena *arena, const struct result *result,
                                const struct trace *trace, int *next)
{
    const struct part *parts = result->system->parts;
    const struct trace_input *one = &trace->inputs[*next];
    *next += 1;
    const struct trace_input *other = *next < trace->input_count ? &trace->inputs[*next] : NULL;
    if (other == NULL || other->cited.key != one->cited.key || one->cited.part < 0 ||
        other->value != one->value || other->origin.kind != one->origin.kind)
        return cited_words(arena, result->system, &one->cited);
    const char *pair =
        pair_words(arena, parts[one->cited.part].name, parts[other->cited.part].name);
    if (pair == NULL)
        return cited_words(arena, result->system, &one->cited);
    *next += 1;
    return text_print(arena, "[%s] %s", pair, one->cited.key->name);
}

/* In few words by how much the figure moves with a value. */
static const char *effect_words(struct arena *arena, const struct trace *trace,
                                const struct trace_input *input, enum unit_system units)
{
    const struct weight *weight = input->weight;
    const struct key *key = input->cited.key;
    if (input->origin.kind == ORIGIN_ASSUMED && !isnan(weight->most))
        return text_print(arena, "at %s: %s", key_value_words(arena, key, key->usual_most, units),
                          change_words(arena, trace->figure, weight->most, units));
    if (!isnan(weight->more))
        return text_print(arena, "1 %% %s: %s", weight->less_by > 0 ? "less" : "more",
                          change_words(arena, trace->figure, weight->more, units));
    if (!isnan(weight->other))
        return text_print(arena, "else up to %s",
                          change_words(arena, trace->figure, weight->other, units));
    return "only beyond a knee";
}

static void add_telling(struct document *into, const struct result *result,
                        const struct trace *trace)
{
    static const struct table_column columns[] = {
        {"What tells most", CELL_WORDS, CELL_LEFT, 0, 0, false},
        {"value", CELL_FIGURE, CELL_LEFT, 0, 0, false},
        {"it moves by", CELL_FIGURE, CELL_LEFT, 0, 0, false}};
    struct arena *arena = into->arena;
    const struct key *measured[MOST_TELLING];
    int next = 0, count = 0;
    if (trace->input_count == 0)
        return;
    document_gap(into);
    struct table *table = document_table(into, columns, 3);
    while (count < MOST_TELLING && next < trace->input_count) {
        const struct trace_input *input = &trace->inputs[next];
        measured[count++] = input->cited.key;
        table_row(table);
        table_cell(table, telling_name(arena, result, trace, &next));
        table_cell(table, text_print(arena, "%s%s", input_value_words(arena, input, result->units),
                                     input->origin.kind == ORIGIN_ASSUMED ? " *" : ""));
        table_cell(table, effect_words(arena, trace, input, result->units));
    }
    document_words(into, "How to measure them")->tone = TONE_STRONG;
    for (int i = 0; i < count; i++) {
        bool again = false;
        for (int k = 0; k < i; k++)
            again = again || measured[k] == measured[i];
        if (!again)
            add_words(
                into, 1, 1,
                text_print(arena, "%s: %s", measured[i]->name, help_words(arena, measured[i])));
    }
}

static void in_short(struct document *into, const struct result *result)
{
    const struct trace *trace = result->trace;
    const struct figure *figure = trace->figure;
    struct arena *arena = into->arena;
    answer_title(into, result);
    document_words(into, text_print(arena, "%s%s%s: %s", figure->row->title, of_comma(figure),
                                    figure->of, value_words(arena, result, figure)))
        ->tone = TONE_STRONG;
    struct table *table = answer_labels(into, 0);
    if (figure->state == FIGURE_NOT_COMPUTED)
        add_needs(table, result, figure);
    answer_label(table, "Formula", figure->row->formula);
    answer_label(table, "Made of", made_of(arena, result, trace));
    if (!isnan(trace->effort.n))
        answer_label(table, "Effort",
                     text_print(arena, "%s, as asked for",
                                unit_text(arena, trace->effort.n, DIMENSION_FORCE, result->units)));
    add_holds(table, figure, false);
    add_telling(into, result, trace);
    document_words(into, "* assumed. The whole way down, all it rests on: the same with --all");
}

void answer_trace(struct document *into, const struct result *result, bool all)
{
    if (all)
        in_full(into, result);
    else
        in_short(into, result);
    answer_deference(into, all);
}
