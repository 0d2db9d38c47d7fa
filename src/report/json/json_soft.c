#include "report/json/json_soft.h"

#include "report/json/json_pieces.h"

json_t *soft_array(const struct soft_list *list)
{
    json_t *array = json_array();
    for (int i = 0; i < list->count; i++) {
        const struct soft_line *line = &list->items[i];
        json_t *object = json_object();
        json_object_set_new(object, "id", json_string(line->row->id));
        json_object_set_new(object, "feel", json_string(line->row->feel));
        json_object_set_new(object, "first", json_string(line->first));
        json_object_set_new(object, "then", string_or_null(line->then));
        json_object_set_new(object, "source", json_string("common practice, no source"));
        json_array_append_new(array, object);
    }
    return array;
}
