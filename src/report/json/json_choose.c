#include "report/json/json_choose.h"

#include <math.h>

#include "report/words/choose_words.h"
#include "report/words/pair_words.h"

static json_t *values_object(struct arena *arena, const struct choice_group *group,
                             const double *values)
{
    json_t *object = json_object();
    for (int limit = 0; limit < CHOICE_LIMITS; limit++) {
        const struct choice_limit_row *row = choice_limit_row((enum choice_limit)limit);
        if (row->clutch == group->clutch)
            json_object_set_new(object, words_renamed(arena, row->name, " ", "_"),
                                real_or_null(values[limit]));
    }
    return object;
}

static json_t *car_object(struct arena *arena, const struct result *result,
                          const struct choice_group *group, const struct choice_car *car)
{
    json_t *object = json_object(), *bores = json_array();
    for (int a = 0; a < group->axis_count; a++)
        json_array_append_new(bores,
                              json_string(choose_bore_words(arena, result, car, group->axes[a])));
    json_object_set_new(object, "bores", bores);
    json_object_set_new(object, "values", values_object(arena, group, car->values));
    json_object_set_new(object, "words", json_string(choose_why_words(arena, result, group, car)));
    return object;
}

static json_t *cars_array(struct arena *arena, const struct result *result,
                          const struct choice_group *group, const struct choice_car *cars,
                          int count)
{
    json_t *array = json_array();
    for (int i = 0; i < count; i++)
        json_array_append_new(array, car_object(arena, result, group, &cars[i]));
    return array;
}

static json_t *obstacles_array(const struct choice_group *group)
{
    json_t *array = json_array();
    for (int limit = 0; limit < CHOICE_LIMITS; limit++) {
        if (group->broken[limit] == 0)
            continue;
        json_t *object = json_object();
        json_object_set_new(object, "limit",
                            json_string(choice_limit_row((enum choice_limit)limit)->name));
        json_object_set_new(object, "broken_by", json_integer(group->broken[limit]));
        json_object_set_new(object, "alone_by", json_integer(group->alone[limit]));
        json_object_set_new(
            object, "nearest",
            real_or_null(group->alone[limit] > 0 ? group->shift[limit] : (double)NAN));
        json_array_append_new(array, object);
    }
    return array;
}

static json_t *group_object(struct arena *arena, const struct result *result,
                            const struct choice_group *group)
{
    json_t *object = json_object(), *cylinders = json_array();
    for (int a = 0; a < group->axis_count; a++)
        json_array_append_new(cylinders,
                              json_string(choose_axis_words(arena, result, group->axes[a])));
    json_object_set_new(object, "cylinders", cylinders);
    json_object_set_new(object, "words", json_string(choose_headline(arena, result, group)));
    json_object_set_new(object, "tried", json_integer(group->count));
    json_object_set_new(object, "suit", json_integer(group->suits));
    json_object_set_new(object, "limits", values_object(arena, group, group->limits));
    json_object_set_new(object, "before", values_object(arena, group, group->before.values));
    json_object_set_new(object, "best",
                        cars_array(arena, result, group, group->best, group->best_count));
    json_object_set_new(object, "nearest_misses",
                        cars_array(arena, result, group, group->nearest, group->nearest_count));
    json_object_set_new(object, "in_the_way", obstacles_array(group));
    return object;
}

json_t *choose_object(struct arena *arena, const struct result *result)
{
    json_t *object = json_object(), *groups = json_array();
    for (int g = 0; g < result->chosen->group_count; g++)
        json_array_append_new(groups, group_object(arena, result, &result->chosen->groups[g]));
    json_object_set_new(object, "stop", real_or_null(result->chosen->stop.m_s2));
    json_object_set_new(object, "assumed", json_boolean(result->chosen->assumed));
    json_object_set_new(object, "groups", groups);
    return object;
}
