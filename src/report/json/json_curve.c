#include "report/json/json_curve.h"

#include "report/json/json_pieces.h"

static json_t *point_object(const struct result *result, const struct pedal_curve *curve,
                            const struct curve_point *point)
{
    json_t *object = json_object(), *causes = json_object(), *pressures = json_object();
    json_object_set_new(object, "effort", real_or_null(point->effort.n));
    json_object_set_new(object, "travel", real_or_null(point->travel.m));
    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++)
        json_object_set_new(causes, travel_cause_words((enum travel_cause)cause),
                            real_or_null(point->by_cause[cause].m));
    for (int c = 0; c < curve->circuit_count; c++)
        json_object_set_new(pressures, result->network->circuits[curve->circuits[c]].name,
                            real_or_null(point->by_circuit[c].pa));
    json_object_set_new(object, "taken_by", causes);
    json_object_set_new(object, "pressures", pressures);
    return object;
}

static json_t *case_object(struct arena *arena, const struct result *result,
                           const struct car_curve *drawn)
{
    const struct pedal_curve *curve = drawn->curve;
    json_t *object = json_object(), *points = json_array();
    json_object_set_new(object, "case", json_string(drawn->of->id));
    json_object_set_new(object, "words", json_string(drawn->words));
    json_object_set_new(
        object, "lost",
        string_or_null(drawn->lost >= 0 ? result->network->circuits[drawn->lost].name : NULL));
    json_object_set_new(object, "effort_asked", real_or_null(curve->asked.n));
    json_object_set_new(object, "travel", real_or_null(drawn->travel.m));
    json_object_set_new(object, "left",
                        curve->count > 0 ? real_or_null(curve->left.m) : json_null());
    json_object_set_new(object, "left_share",
                        curve->count > 0 ? real_or_null(drawn->left.of_1) : json_null());
    json_object_set_new(object, "needs",
                        cited_array(arena, result->system, drawn->needs, drawn->needs_count));
    json_object_set_new(object, "on_floor", json_boolean(curve->on_floor));
    json_object_set_new(object, "bottomed", json_boolean(curve->bottomed));
    for (int i = 0; i < curve->count; i++)
        json_array_append_new(points, point_object(result, curve, &curve->points[i]));
    json_object_set_new(object, "points", points);
    return object;
}

json_t *curves_array(struct arena *arena, const struct result *result)
{
    json_t *array = json_array();
    for (int i = 0; i < result->curves->count; i++) {
        const struct pedal_curves *of = &result->curves->items[i];
        const char *name = result->system->parts[of->pedal].name;
        const struct figure *travel = figures_find(&result->figures, "pedal-travel", name);
        json_t *object = json_object(), *cases = json_array();
        json_object_set_new(object, "pedal", json_string(name));
        json_object_set_new(object, "floor",
                            real_or_null(result->system->parts[of->pedal].as.pedal.travel.m));
        json_object_set_new(object, "mostly_assumed",
                            json_boolean(travel != NULL && figure_mostly_assumed(travel)));
        for (int c = 0; c < of->count; c++)
            json_array_append_new(cases, case_object(arena, result, &of->items[c]));
        json_object_set_new(object, "cases", cases);
        json_array_append_new(array, object);
    }
    return array;
}
