#include "report/json/json_rules.h"

#include "report/json/json_pieces.h"
#include "report/words/rule_words.h"
#include "units/unit.h"

static json_t *ruling_object(struct arena *arena, const struct result *result,
                             const struct ruling *ruling)
{
    const struct rule_row *rule = ruling->rule;
    bool known = ruling->outcome != RULE_NOT_COMPUTED;
    json_t *object = json_object();
    json_object_set_new(object, "id", json_string(rule->id));
    json_object_set_new(object, "title", json_string(rule->title));
    json_object_set_new(object, "asks", json_string(rule->at_most ? "at most" : "at least"));
    json_object_set_new(object, "number", json_real(rule->value));
    json_object_set_new(object, "value", known ? real_or_null(ruling->value) : json_null());
    json_object_set_new(object, "unit", json_string(si_unit(rule->dimension)));
    json_object_set_new(
        object, "shown",
        known ? json_string(unit_text(arena, ruling->value, rule->dimension, result->units))
              : json_null());
    json_object_set_new(object, "outcome", json_string(ruling_words(ruling)));
    json_object_set_new(object, "concern", json_string(ruling_concern_words(ruling->concern)));
    json_object_set_new(object, "why", string_or_null(ruling->why));
    if (!known)
        json_object_set_new(object, "lacks",
                            json_string(ruling_lack_words(arena, result->system, ruling)));
    json_object_set_new(
        object, "figure",
        string_or_null(ruling->rests_on != NULL ? ruling->rests_on->row->id : NULL));
    json_object_set_new(object, "rests_on_assumed",
                        json_boolean(*ruling_assumed_words(ruling) != '\0'));
    json_object_set_new(object, "class",
                        json_string(rule->of == RULE_CARS ? "cars" : "motorcycles"));
    json_object_set_new(object, "occasion",
                        json_string(rule->occasion == RULE_IN_USE
                                        ? "vehicles in use"
                                        : "new types, or a date not read"));
    set_date(object, "first_used_from", rule->from);
    set_date(object, "first_used_before", rule->until);
    json_object_set_new(object, "where", json_string(rule->where));
    json_object_set_new(object, "scope", json_string(rule->scope));
    json_object_set_new(object, "source", json_string(rule->source));
    json_object_set_new(object, "clause", json_string(rule->clause));
    json_object_set_new(object, "known",
                        json_string(rule->known == RULE_READ ? "read" : "from memory"));
    return object;
}

json_t *rules_array(struct arena *arena, const struct result *result)
{
    json_t *array = json_array();
    for (int i = 0; i < result->rulings.count; i++)
        json_array_append_new(array, ruling_object(arena, result, &result->rulings.items[i]));
    return array;
}
