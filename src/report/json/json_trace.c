#include "report/json/json_trace.h"

#include <math.h>

#include "base/text.h"
#include "report/words/input_words.h"
#include "report/json/json_pieces.h"
#include "report/words/words.h"

/* As a part of the figure; null where the figure is 0 or was not computed. */
static json_t *change_real(const struct trace *trace, double now)
{
    double base = trace->figure->value;
    return fabs(base) > 0 ? real_or_null((now - base) / fabs(base)) : json_null();
}

static json_t *input_object(struct arena *arena, const struct result *result,
                            const struct trace *trace, const struct trace_input *input)
{
    const struct key *key = input->cited.key;
    const struct weight *weight = input->weight;
    bool assumed = input->origin.kind == ORIGIN_ASSUMED;
    json_t *object = json_object();
    json_object_set_new(object, "part", json_string(result->system->parts[input->cited.part].name));
    json_object_set_new(object, "key", json_string(key->name));
    json_object_set_new(object, "value",
                        key->form == FORM_CHOICE ? json_null() : real_or_null(input->value));
    json_object_set_new(object, "unit", json_string(si_unit(key->dimension)));
    json_object_set_new(object, "shown",
                        json_string(key_value_words(arena, key, input->value, result->units)));
    json_object_set_new(object, "origin", json_string(origin_words(input->origin.kind)));
    if (!assumed) {
        set_place(object, input->origin.place);
        json_object_set_new(object, "column", json_integer(input->origin.place.column));
        json_object_set_new(object, "text", string_or_null(input->origin.text));
        json_object_set_new(object, "tolerance", real_or_null(input->origin.tolerance));
    } else {
        json_object_set_new(object, "source", string_or_null(key->assumed_source));
    }
    json_object_set_new(object, "usual", json_boolean(!input->unusual));
    json_object_set_new(object, "only_beyond_a_knee", json_boolean(weight->beyond));
    json_object_set_new(object, weight->less_by > 0 ? "for_1_percent_less" : "for_1_percent_more",
                        change_real(trace, weight->more));
    json_object_set_new(object, "at_usual_least", change_real(trace, weight->least));
    json_object_set_new(object, "at_usual_most", change_real(trace, weight->most));
    json_object_set_new(object, "at_another", change_real(trace, weight->other));
    return object;
}

static json_t *step_object(struct arena *arena, const struct result *result,
                           const struct trace *trace, const struct trace_step *step)
{
    json_t *object = json_object();
    json_object_set_new(object, "depth", json_integer(step->depth));
    json_object_set_new(object, "id", json_string(step->figure->row->id));
    json_object_set_new(object, "of", json_string(step->figure->of));
    json_object_set_new(object, "value", real_or_null(step->figure->value));
    json_object_set_new(object, "unit", json_string(si_unit(step->figure->row->dimension)));
    json_object_set_new(object, "shown",
                        json_string(figure_value_words(arena, step->figure, result->units)));
    json_object_set_new(object, "formula", string_or_null(step->figure->row->formula));
    json_object_set_new(object, "again", json_boolean(step->again));
    json_t *inputs = json_array();
    for (int i = 0; i < step->input_count; i++)
        json_array_append_new(
            inputs,
            json_string(cited_words(arena, result->system, &trace->inputs[step->inputs[i]].cited)));
    json_object_set_new(object, "inputs", inputs);
    return object;
}

static json_t *branch_object(const struct result *result, const struct branch *branch)
{
    json_t *object = json_object();
    json_object_set_new(object, "part", json_string(result->system->parts[branch->part].name));
    json_object_set_new(object, "case", json_string(branch->words));
    json_object_set_new(object, "now", real_or_null(branch->now));
    json_object_set_new(object, "from", real_or_null(branch->from));
    json_object_set_new(object, "to", real_or_null(branch->to));
    json_object_set_new(object, "unit", json_string(si_unit(branch->dimension)));
    return object;
}

json_t *trace_object(struct arena *arena, const struct result *result)
{
    const struct trace *trace = result->trace;
    json_t *object = json_object(), *inputs = json_array(), *steps = json_array();
    json_t *branches = json_array(), *knees = json_array();
    json_object_set_new(object, "figure", figure_object(arena, result, trace->figure));
    for (int i = 0; i < trace->branch_count; i++)
        json_array_append_new(branches, branch_object(result, &trace->branches[i]));
    for (int i = 0; i < trace->knee_count; i++) {
        json_t *knee = branch_object(result, &trace->knees[i].branch);
        json_object_set_new(knee, "times_effort", json_real(trace->knees[i].effort));
        json_array_append_new(knees, knee);
    }
    for (int i = 0; i < trace->step_count; i++)
        json_array_append_new(steps, step_object(arena, result, trace, &trace->steps[i]));
    for (int i = 0; i < trace->input_count; i++)
        json_array_append_new(inputs, input_object(arena, result, trace, &trace->inputs[i]));
    json_object_set_new(object, "cases", branches);
    json_object_set_new(object, "knees", knees);
    json_object_set_new(object, "steps", steps);
    json_object_set_new(object, "inputs", inputs);
    json_object_set_new(object, "effort_asked", real_or_null(trace->effort.n));
    return object;
}
