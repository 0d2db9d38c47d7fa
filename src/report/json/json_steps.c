#include "report/json/json_pieces.h"

/* What is particular to a bleeding step. */
static json_t *detail_object(const struct bleed_detail *detail)
{
    const struct {
        const char *name;
        double value;
    } rows[] = {
        {"path", detail->path.m3},
        {"branch", detail->branch.m3},
        {"purge", detail->purge.m3},
        {"purge_strokes", detail->purge_strokes},
        {"stroke_in_air", detail->stroke_in_air.m3},
        {"renewal", detail->renewal.m3},
        {"renewal_strokes", detail->renewal_strokes},
        {"by_gravity", detail->by_gravity.s},
        {"by_pressure", detail->by_pressure.s},
        {"flow_by_gravity", detail->flow_by_gravity},
        {"flow_by_pressure", detail->flow_by_pressure},
        {"reservoir_after", detail->reservoir_after.m3},
        {"trapped", detail->trapped.m3},
        {"trapped_pedal", detail->trapped_pedal.m},
        {"air_left", detail->air_left.m3},
    };
    json_t *object = json_object();
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        json_object_set_new(object, rows[i].name, real_or_null(rows[i].value));
    json_object_set_new(object, "trapped_to_floor", json_boolean(detail->trapped_to_floor));
    json_object_set_new(object, "gave_up", json_boolean(detail->gave_up));
    json_object_set_new(object, "top_up_every", json_integer(detail->top_up_every));
    json_object_set_new(object, "way_up", string_or_null(detail->way_up));
    return object;
}

static void set_nipple(json_t *object, struct arena *arena, const struct result *result,
                       const struct step *step)
{
    struct nipple nipple = {step->part, step->nipple};
    json_object_set_new(object, "nipple", json_string(nipple_words(result->system, nipple, arena)));
    json_object_set_new(object, "run", real_or_null(step->run.m));
    json_object_set_new(object, "volume", real_or_null(step->volume.m3));
    json_object_set_new(object, "volume_assumed", json_boolean(step->volume_assumed));
    json_object_set_new(object, "strokes", real_or_null(step->strokes));
    if (step->bleed == NULL)
        return;
    json_object_set_new(object, "detail", detail_object(step->bleed));
    if (step->bleed->with >= 0) {
        struct nipple with = {step->part, step->bleed->with};
        json_object_set_new(object, "with", json_string(nipple_words(result->system, with, arena)));
    }
}

static void set_boxes(json_t *object, const struct step *step)
{
    const char *names[STEP_MOST_BOXES];
    int count = step_boxes(step, names);
    if (count == 0)
        return;
    json_t *boxes = json_array();
    for (int i = 0; i < count; i++)
        json_array_append_new(boxes, json_string(names[i]));
    json_object_set_new(object, "boxes", boxes);
}

static void set_done(json_t *object, const struct step *step)
{
    json_object_set_new(object, "done", json_boolean(step->done));
    if (!step->done)
        return;
    char date[16] = "";
    if (date_known(step->done_on))
        date_write(step->done_on, date);
    json_object_set_new(object, "done_on", string_or_null(*date != '\0' ? date : NULL));
    json_object_set_new(object, "noted", string_or_null(step->done_words));
}

/* Where a step stands in the plan. */
static void set_stand(json_t *object, const struct result *result, const struct step *step)
{
    const struct plan_joint *joint =
        result->plan != NULL ? plan_joint_of(result->plan, step) : NULL;
    json_object_set_new(object, "name", json_string(step->name));
    json_object_set_new(object, "phase", json_string(phase_id(step->row->phase)));
    if (step->turn > 0)
        json_object_set_new(object, "turn", json_integer(step->turn));
    if (joint != NULL)
        json_object_set_new(object, "joint", json_string(joint->letter));
    set_done(object, step);
}

static void set_why(json_t *object, struct arena *arena, const struct result *result,
                    const struct step *step)
{
    const char *why = step->row->why;
    if (step->reason != NULL) {
        json_object_set_new(object, "reason", json_string(step->reason->id));
        why = step->reason->words;
    }
    if (why != NULL)
        json_object_set_new(object, "why", json_string(step_words(arena, result, step, why)));
}

static void set_undoing(json_t *object, const struct step *step)
{
    if (step->row->undo[0] == STEP_NONE)
        return;
    json_t *rows = json_array();
    for (int i = 0; i < STEP_MOST_UNDOING && step->row->undo[i] != STEP_NONE; i++)
        json_array_append_new(rows, json_string(step_row_of(step->row->undo[i])->id));
    json_object_set_new(object, "undone_by", rows);
}

static json_t *step_object(struct arena *arena, const struct result *result,
                           const struct step *step)
{
    json_t *object = json_object();
    json_object_set_new(object, "number", json_integer(step->number));
    json_object_set_new(object, "id", json_string(step->row->id));
    if (step->name != NULL)
        set_stand(object, result, step);
    if (step->part >= 0)
        json_object_set_new(object, "part", json_string(result->system->parts[step->part].name));
    if (step->nipple >= 0 && step->part >= 0)
        set_nipple(object, arena, result, step);
    if (step->circuit >= 0)
        json_object_set_new(object, "circuit",
                            json_string(result->network->circuits[step->circuit].name));
    json_object_set_new(object, "words",
                        json_string(step_words(arena, result, step, step->row->words)));
    set_why(object, arena, result, step);
    set_undoing(object, step);
    set_boxes(object, step);
    if (step->row->expect != NULL)
        json_object_set_new(object, "expect",
                            json_string(step_words(arena, result, step, step->row->expect)));
    json_object_set_new(object, "source", string_or_null(step->row->source));
    return object;
}

json_t *steps_array(struct arena *arena, const struct result *result, const struct steps *steps)
{
    json_t *array = json_array();
    for (size_t i = 0; i < steps->count; i++)
        json_array_append_new(array, step_object(arena, result, &steps->items[i]));
    return array;
}
