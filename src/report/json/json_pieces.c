#include "report/json/json_pieces.h"

#include <math.h>

#include "advice/figures/holds.h"
#include "base/text.h"
#include "report/words/words.h"

json_t *string_or_null(const char *words)
{
    return words == NULL ? json_null() : json_string(words);
}

json_t *real_or_null(double value)
{
    return isfinite(value) ? json_real(value) : json_null();
}

const char *si_unit(enum dimension dimension)
{
    static const char *const names[DIMENSION_COUNT] = {
        "",     "",  "m",   "m2",   "m3",  "Pa",    "N",    "N m",  "kg", "rad",
        "degC", "s", "m/s", "m/s2", "N/m", "kg/m3", "m2/s", "m3/m", "J",  "K"};
    return names[dimension];
}

void set_place(json_t *into, struct place place)
{
    if (place.line <= 0)
        return;
    json_object_set_new(into, "file", string_or_null(place.file));
    json_object_set_new(into, "line", json_integer(place.line));
}

void set_date(json_t *into, const char *key, struct date date)
{
    char words[16];
    if (date_known(date)) {
        date_write(date, words);
        json_object_set_new(into, key, json_string(words));
    } else {
        json_object_set_new(into, key, json_null());
    }
}

json_t *cited_array(struct arena *arena, const struct system *system, const struct cited_key *keys,
                    int count)
{
    json_t *array = json_array();
    for (int i = 0; i < count; i++)
        json_array_append_new(array, json_string(cited_words(arena, system, &keys[i])));
    return array;
}

/* What can be looked up of its limits, each with whether it is met here. */
static json_t *conditions_array(const struct figure *figure)
{
    size_t count;
    const struct hold_row *rows = hold_rows(&count);
    json_t *array = json_array();
    for (size_t i = 0; i < count; i++) {
        if ((figure->holds & rows[i].bit) == 0)
            continue;
        bool broken = (figure->holds_broken & rows[i].bit) != 0;
        json_t *object = json_object();
        json_object_set_new(object, "id", json_string(rows[i].id));
        json_object_set_new(object, "words", json_string(broken ? rows[i].broken : rows[i].words));
        json_object_set_new(object, "met", json_boolean(!broken));
        json_array_append_new(array, object);
    }
    return array;
}

json_t *figure_object(struct arena *arena, const struct result *result, const struct figure *figure)
{
    static const char *const states[] = {"computed", "assumed", "not computed"};
    json_t *object = json_object();
    json_object_set_new(object, "id", json_string(figure->row->id));
    json_object_set_new(object, "title", json_string(figure->row->title));
    json_object_set_new(object, "of", json_string(figure->of));
    if (figure->row->scope == SCOPE_CAUSE)
        json_object_set_new(object, "cause", json_string(cause_words((enum cause)figure->sub)));
    bool computed = figure->state != FIGURE_NOT_COMPUTED;
    json_object_set_new(object, "value", computed ? real_or_null(figure->value) : json_null());
    json_object_set_new(object, "unit", json_string(si_unit(figure->row->dimension)));
    json_object_set_new(object, "shown",
                        json_string(figure_value_words(arena, figure, result->units)));
    json_object_set_new(object, "state", json_string(states[figure->state]));
    json_object_set_new(object, "assumed_share", json_real(computed ? figure->assumed_share : 0));
    json_object_set_new(object, "given_values", json_integer(figure->given_here));
    json_object_set_new(object, "assumed_values", json_integer(figure->assumed_here));
    json_object_set_new(object, "mostly_assumed", json_boolean(figure_mostly_assumed(figure)));
    json_object_set_new(object, "assumed",
                        cited_array(arena, result->system, figure->assumed, figure->assumed_count));
    json_object_set_new(object, "needs",
                        cited_array(arena, result->system, figure->needs, figure->needs_count));
    if (!computed && figure->reason != NULL)
        json_object_set_new(object, "reason", json_string(figure->reason));
    json_object_set_new(object, "formula", string_or_null(figure->row->formula));
    json_object_set_new(object, "limits", string_or_null(figure->row->limits));
    json_object_set_new(object, "remark", string_or_null(figure->remark));
    json_object_set_new(object, "conditions", conditions_array(figure));
    json_object_set_new(object, "docs",
                        json_string(text_print(arena, "docs/physics.md#%s", figure->row->anchor)));
    return object;
}
