#include "report/json/json_plan.h"

#include "report/json/json_pieces.h"

static json_t *part_name(const struct result *result, int part)
{
    return json_string(result->system->parts[part].name);
}

/* Boxes of a row by the name of the step that each is. */
struct box {
    const char *name;
    int step;
};

static void set_steps(json_t *object, const struct plan *plan, const struct box *boxes, int count)
{
    for (int i = 0; i < count; i++)
        json_object_set_new(
            object, boxes[i].name,
            string_or_null(boxes[i].step >= 0 ? plan_step_name(plan, boxes[i].step) : NULL));
}

static json_t *joints_array(const struct result *result)
{
    const struct plan *plan = result->plan;
    json_t *array = json_array();
    for (int i = 0; i < plan->joint_count; i++) {
        const struct plan_joint *joint = &plan->joints[i];
        const struct box boxes[] = {
            {"undo", joint->undo}, {"clip", joint->clip}, {"tighten", joint->tighten}};
        json_t *object = json_object();
        json_object_set_new(object, "letter", json_string(joint->letter));
        json_object_set_new(object, "part", part_name(result, joint->part));
        json_object_set_new(object, "at", part_name(result, joint->at));
        set_steps(object, plan, boxes, 3);
        json_object_set_new(object, "plugged", json_boolean(joint->plugged));
        json_object_set_new(object, "torque_least", real_or_null(joint->least.nm));
        json_object_set_new(object, "torque_most", real_or_null(joint->most.nm));
        json_array_append_new(array, object);
    }
    return array;
}

static json_t *parts_array(const struct result *result)
{
    const struct plan *plan = result->plan;
    json_t *array = json_array();
    for (int i = 0; i < plan->part_count; i++) {
        const struct plan_part *part = &plan->parts[i];
        const struct box boxes[] = {{"off", part->off},
                                    {"measure", part->measure},
                                    {"fill", part->fill},
                                    {"fit", part->fit},
                                    {"nipple", part->nipple}};
        json_t *object = json_object();
        json_object_set_new(object, "part", part_name(result, part->part));
        json_object_set_new(object, "old_bore", real_or_null(part->old_bore.m));
        json_object_set_new(object, "new_bore", real_or_null(part->new_bore.m));
        set_steps(object, plan, boxes, 5);
        json_array_append_new(array, object);
    }
    return array;
}

static json_t *strays_array(const struct plan *plan)
{
    json_t *array = json_array();
    for (int i = 0; i < plan->stray_count; i++) {
        json_t *object = json_object();
        json_object_set_new(object, "name", json_string(plan->strays[i].name));
        set_place(object, plan->strays[i].place);
        json_array_append_new(array, object);
    }
    return array;
}

json_t *plan_object(struct arena *arena, const struct result *result)
{
    const struct plan *plan = result->plan;
    int next = plan_next(plan);
    json_t *object = json_object();
    json_object_set_new(object, "steps", steps_array(arena, result, &plan->steps));
    json_object_set_new(object, "joints", joints_array(result));
    json_object_set_new(object, "parts", parts_array(result));
    json_object_set_new(object, "next",
                        string_or_null(next >= 0 ? plan_step_name(plan, next) : NULL));
    json_object_set_new(object, "noted_but_no_step", strays_array(plan));
    return object;
}
