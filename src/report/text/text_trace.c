#include <math.h>
#include <string.h>

#include "advice/figures/trace.h"
#include "report/words/input_words.h"
#include "report/text/text_frame.h"
#include "report/text/text_report.h"

enum { LABEL_WIDTH = 12 };

static void add_labelled(struct text *into, const char *label, const char *words)
{
    if (words == NULL || *words == '\0')
        return;
    text_add(into, "  %-*s", LABEL_WIDTH, label);
    text_add_wrapped(into, words, LABEL_WIDTH + 2, LABEL_WIDTH + 2, FRAME_WIDTH);
}

static const char *of_comma(const struct figure *figure)
{
    return *figure->of != '\0' ? ", " : "";
}

/* What is missing, with what to write and where to put the tape. */
static void add_needs(struct text *into, const struct result *result, const struct figure *figure)
{
    for (int i = 0; i < figure->needs_count; i++) {
        const struct cited_key *need = &figure->needs[i];
        add_labelled(into, i == 0 ? "needs" : "",
                     text_print(into->arena, "%s: %s; for example %s = %s",
                                cited_words(into->arena, result->system, need), need->key->help,
                                need->key->name,
                                need->key->example != NULL ? need->key->example : "?"));
    }
    if (figure->needs_count == 0)
        add_labelled(into, "because", figure->reason);
}

static void add_unusual(struct text *into, const struct result *result, const struct trace *trace)
{
    struct text words = text_start(into->arena);
    for (int i = 0; i < trace->input_count; i++)
        if (trace->inputs[i].unusual)
            text_add(&words, "%s%s", words.count > 0 ? ", " : "",
                     cited_words(into->arena, result->system, &trace->inputs[i].cited));
    if (words.count > 0)
        add_labelled(into, "unusual", words.items);
}

static void add_head(struct text *into, const struct result *result, const struct trace *trace)
{
    struct arena *arena = into->arena;
    const struct figure *figure = trace->figure;
    frame_heading(into,
                  text_print(arena, "%s%s%s", figure->row->title, of_comma(figure), figure->of));
    add_labelled(into, "value",
                 figure->state == FIGURE_NOT_COMPUTED
                     ? "not computed"
                     : text_print(arena, "%s, %s", figure_value_words(arena, figure, result->units),
                                  figure_state_word(figure)));
    if (figure->state == FIGURE_NOT_COMPUTED)
        add_needs(into, result, figure);
    add_labelled(into, "name", figure->row->id);
    add_labelled(into, "how", figure->row->formula);
    add_labelled(into, "more", text_print(arena, "docs/physics.md#%s", figure->row->anchor));
    add_labelled(into, "holds for", figure->row->limits);
    size_t count;
    const struct hold_row *rows = hold_rows(&count);
    for (size_t i = 0; i < count; i++)
        if ((figure->holds & rows[i].bit) != 0) {
            bool broken = (figure->holds_broken & rows[i].bit) != 0;
            add_labelled(into, broken ? "NOT MET" : "met here",
                         broken ? rows[i].broken : rows[i].words);
        }
    add_unusual(into, result, trace);
    if (!isnan(trace->effort.n))
        add_labelled(into, "effort",
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

static void add_cases(struct text *into, const struct result *result, const struct trace *trace)
{
    struct arena *arena = into->arena;
    if (trace->branch_count == 0)
        return;
    frame_heading(into, "Which case of each law holds now");
    for (int i = 0; i < trace->branch_count; i++) {
        const struct branch *branch = &trace->branches[i];
        text_add(into, "  ");
        text_add_wrapped(into,
                         text_print(arena, "%s: %s%s", result->system->parts[branch->part].name,
                                    branch->words, range_words(arena, branch, result->units)),
                         2, 6, FRAME_WIDTH);
    }
    for (int i = 0; i < trace->knee_count; i++) {
        const struct trace_knee *knee = &trace->knees[i];
        text_add(into, "  ");
        text_add_wrapped(
            into,
            text_print(arena,
                       "Another case begins at %.2f times this effort: up to there the %s "
                       "is %s.",
                       knee->effort, result->system->parts[knee->branch.part].name,
                       knee->branch.words),
            2, 6, FRAME_WIDTH);
    }
}

static void add_step(struct text *into, const struct result *result, const struct trace *trace,
                     const struct trace_step *step)
{
    struct arena *arena = into->arena;
    const struct figure *figure = step->figure;
    int indent = 2 + 2 * step->depth;
    text_add(into, "%*s", indent, "");
    text_add_wrapped(into,
                     text_print(arena, "%s%s%s = %s%s", figure->row->id, of_comma(figure),
                                figure->of,
                                figure->state == FIGURE_NOT_COMPUTED
                                    ? "not computed"
                                    : figure_value_words(arena, figure, result->units),
                                step->again ? " (see above)" : ""),
                     indent, indent + 4, FRAME_WIDTH);
    if (step->again)
        return;
    text_add(into, "%*s", indent + 4, "");
    text_add_wrapped(into, text_print(arena, "= %s", figure->row->formula), indent + 4, indent + 6,
                     FRAME_WIDTH);
    for (int i = 0; i < step->input_count; i++) {
        const struct trace_input *input = &trace->inputs[step->inputs[i]];
        const char *place = place_words(arena, input->origin.place);
        text_add(into, "%*s", indent + 4, "");
        text_add_wrapped(into,
                         text_print(arena, "%s = %s, %s%s",
                                    cited_words(arena, result->system, &input->cited),
                                    input_value_words(arena, input, result->units),
                                    input->origin.kind == ORIGIN_ASSUMED || *place == '\0'
                                        ? origin_words(input->origin.kind)
                                        : place,
                                    step->only_beyond[i] ? " (only beyond a knee)" : ""),
                         indent + 4, indent + 8, FRAME_WIDTH);
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

static void add_input(struct text *into, const struct result *result, const struct trace *trace,
                      int i)
{
    struct arena *arena = into->arena;
    const struct trace_input *input = &trace->inputs[i];
    text_add(into, "%4d  ", i + 1);
    text_add_wrapped(into,
                     text_print(arena, "%s = %s", cited_words(arena, result->system, &input->cited),
                                input_value_words(arena, input, result->units)),
                     6, 10, FRAME_WIDTH);
    const char *place = place_words(arena, input->origin.place);
    bool assumed = input->origin.kind == ORIGIN_ASSUMED;
    text_add(into, "      ");
    text_add_wrapped(into,
                     text_print(arena, "%s%s%s%s%s", origin_words(input->origin.kind),
                                *place != '\0' && !assumed ? ", " : "", assumed ? "" : place,
                                assumed && input->cited.key->assumed_source != NULL ? ": " : "",
                                assumed && input->cited.key->assumed_source != NULL
                                    ? input->cited.key->assumed_source
                                    : ""),
                     6, 10, FRAME_WIDTH);
    text_add(into, "      ");
    text_add_wrapped(into, weight_words(arena, trace, input, result->units), 6, 10, FRAME_WIDTH);
}

void text_trace(struct text *into, const struct result *result)
{
    const struct trace *trace = result->trace;
    frame_title(into, result);
    add_head(into, result, trace);
    add_cases(into, result, trace);
    frame_heading(into, "The way down, each value where it first comes in");
    for (int i = 0; i < trace->step_count; i++)
        add_step(into, result, trace, &trace->steps[i]);
    if (trace->input_count > 0)
        frame_heading(into, "What it rests on, most telling first");
    for (int i = 0; i < trace->input_count; i++)
        add_input(into, result, trace, i);
    frame_deference(into);
}
