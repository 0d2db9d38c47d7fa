#include "report/json/json_bleed.h"

#include "report/words/bleed_words.h"
#include "report/json/json_pieces.h"

static json_t *nipples_array(struct arena *arena, const struct result *result,
                             const struct nipple *nipples, int count)
{
    json_t *array = json_array();
    for (int i = 0; i < count; i++)
        json_array_append_new(array, json_string(nipple_words(result->system, nipples[i], arena)));
    return array;
}

static json_t *methods_array(struct arena *arena, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    json_t *array = json_array();
    for (int i = 0; i < plan->verdict_count; i++) {
        const struct method_verdict *verdict = &plan->verdicts[i];
        json_t *object = json_object();
        json_object_set_new(object, "id", json_string(verdict->row->id));
        json_object_set_new(object, "words", json_string(verdict->row->words));
        json_object_set_new(object, "needs", string_or_null(verdict->row->kit));
        json_object_set_new(object, "suits", json_boolean(verdict->suits && !verdict->unknown));
        json_object_set_new(object, "cannot_say", json_boolean(verdict->suits && verdict->unknown));
        json_t *notes = json_array();
        for (int k = 0; k < verdict->note_count; k++) {
            const struct method_note *note = &verdict->notes[k];
            json_t *item = json_object();
            json_object_set_new(item, "id", json_string(note->reason->id));
            json_object_set_new(item, "against", json_boolean(note->reason->against));
            json_object_set_new(item, "words", json_string(bleed_note_words(arena, result, note)));
            json_object_set_new(item, "source", string_or_null(note->reason->source));
            json_array_append_new(notes, item);
        }
        json_object_set_new(object, "notes", notes);
        json_array_append_new(array, object);
    }
    return array;
}

static json_t *costs_array(struct arena *arena, const struct result *result)
{
    struct bleed_cost_row rows[BLEED_MOST_COSTS];
    int count = bleed_cost_rows(result->bleed, rows);
    json_t *array = json_array();
    for (int i = 0; i < count; i++) {
        const struct order_cost *cost = rows[i].cost;
        json_t *object = json_object();
        json_object_set_new(object, "id", json_string(rows[i].id));
        json_object_set_new(object, "order",
                            nipples_array(arena, result, cost->order, cost->count));
        json_object_set_new(object, "fluid", real_or_null(cost->fluid.m3));
        json_object_set_new(object, "strokes", real_or_null(cost->strokes));
        json_object_set_new(object, "air_left", real_or_null(cost->air_left.m3));
        json_object_set_new(object, "other_fluid", real_or_null(cost->other_fluid.m3));
        json_object_set_new(object, "other_strokes", real_or_null(cost->other_strokes));
        json_object_set_new(object, "other_air_left", real_or_null(cost->other_air_left.m3));
        json_array_append_new(array, object);
    }
    return array;
}

/* Points as [fluid, air, strokes, number of the step]. */
static json_t *curve_array(const struct bleed_plan *plan)
{
    json_t *array = json_array();
    for (int i = 0; i < plan->point_count; i++) {
        const struct purge_point *point = &plan->curve[i];
        json_t *item = json_array();
        json_array_append_new(item, real_or_null(point->fluid));
        json_array_append_new(item, real_or_null(point->air));
        json_array_append_new(item, real_or_null(point->strokes));
        json_array_append_new(item, json_integer(point->turn + 1));
        json_array_append_new(array, item);
    }
    return array;
}

static void set_method(json_t *object, struct arena *arena, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    for (int i = 0; i < plan->verdict_count; i++)
        if (plan->verdicts[i].row->method == plan->method)
            json_object_set_new(object, "method", json_string(plan->verdicts[i].row->id));
    json_object_set_new(object, "shut_under_pressure", json_boolean(plan->shut_under_pressure));
    json_object_set_new(object, "how", json_string(bleed_how(arena, plan)));
    json_object_set_new(object, "methods", methods_array(arena, result));
}

json_t *bleed_object(struct arena *arena, const struct result *result)
{
    static const char *const scopes[] = {"nothing", "part", "all"};
    const struct bleed_plan *plan = result->bleed;
    json_t *object = json_object();
    json_object_set_new(object, "scope", json_string(scopes[plan->scope]));
    json_object_set_new(object, "scope_reason", string_or_null(plan->scope_reason));
    json_object_set_new(object, "refused", json_boolean(plan->refused));
    if (plan->refused)
        json_object_set_new(object, "refusal", string_or_null(plan->refusal));
    json_object_set_new(object, "makers_order", json_boolean(plan->makers_order));
    json_object_set_new(object, "asked_order", json_boolean(plan->asked_order));
    json_object_set_new(object, "left_out",
                        nipples_array(arena, result, plan->left_out, plan->left_out_count));
    json_object_set_new(object, "steps", steps_array(arena, result, &plan->steps));
    json_object_set_new(object, "untouched",
                        nipples_array(arena, result, plan->untouched, plan->untouched_count));
    json_object_set_new(object, "fluid", real_or_null(plan->fluid.m3));
    json_object_set_new(object, "fluid_ready", real_or_null(plan->fluid_ready.m3));
    json_object_set_new(object, "fluid_assumed", json_boolean(plan->fluid_assumed));
    set_method(object, arena, result);
    json_object_set_new(object, "orders", costs_array(arena, result));
    json_object_set_new(object, "orders_tried", json_integer(plan->tried));
    if (plan->departure != NULL)
        json_object_set_new(object, "departure", json_string(plan->departure->id));
    if (plan->asked.count > 0)
        json_object_set_new(
            object, "asked_left_out",
            nipples_array(arena, result, plan->asked_left_out, plan->asked_left_out_count));
    json_object_set_new(object, "curve", curve_array(plan));
    return object;
}
