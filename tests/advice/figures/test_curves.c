/* The curves of a car are those of its figures: the same travel, worked out another way. */
#include "advice/figures/curves.h"

#include <math.h>
#include <string.h>

#include "support/near.h"
#include "support/ready_cars.h"

#define VAN "systems/village-van.ini"

static double value_of(const struct result *result, const char *id, const char *of)
{
    const struct figure *figure = figures_find(&result->figures, id, of);
    assert_non_null(figure);
    return figure->value;
}

static const struct car_curve *curve_of(const struct curves *curves, const char *id, int lost)
{
    for (int i = 0; i < curves->items[0].count; i++)
        if (strcmp(curves->items[0].items[i].of->id, id) == 0 &&
            curves->items[0].items[i].lost == lost)
            return &curves->items[0].items[i];
    fail_msg("no case %s", id);
    return NULL;
}

static void a_curve_ends_where_the_figure_says(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, NULL);
    struct curves curves = curves_of(result->system, result->network, (struct force){NAN}, arena);
    assert_int_equal(curves.count, 1); /* the clutch pedal works no brake */
    const struct car_curve *usual = curve_of(&curves, "usual", -1);
    near_rel(usual->travel.m, value_of(result, "pedal-travel", "brake pedal"), 1e-9);
    near_rel(usual->curve->left.m, value_of(result, "pedal-left", "brake pedal"), 1e-9);
    near_rel(usual->left.of_1, value_of(result, "pedal-left", "brake pedal") / 0.150, 1e-9);
    near_rel(curve_of(&curves, "slack", -1)->travel.m,
             value_of(result, "pedal-travel-slack", "brake pedal"), 1e-9);
    for (int i = 0; i < usual->curve->circuit_count; i++) {
        int circuit = usual->curve->circuits[i];
        near_rel(curve_of(&curves, "lost", circuit)->travel.m,
                 value_of(result, "travel-circuit-lost", result->network->circuits[circuit].name),
                 1e-9);
    }
    arena_destroy(arena);
}

static void the_causes_of_every_point_of_every_ready_car_add_up_to_its_travel(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    int points = 0;
    for (const char **car = ready_cars(arena); *car != NULL; car++) {
        struct arena *of_car = arena_create();
        struct result *result = ready_result(of_car, *car, NULL);
        struct curves curves =
            curves_of(result->system, result->network, (struct force){NAN}, of_car);
        assert_true(curves.count > 0);
        for (int p = 0; p < curves.count; p++)
            for (int c = 0; c < curves.items[p].count; c++) {
                const struct pedal_curve *curve = curves.items[p].items[c].curve;
                for (int i = 0; i < curve->count; i++, points++) {
                    double sum = 0;
                    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++)
                        sum += curve->points[i].by_cause[cause].m;
                    near(sum, curve->points[i].travel.m, 1e-9);
                    assert_true(i == 0 ||
                                curve->points[i].travel.m >= curve->points[i - 1].travel.m - 1e-12);
                }
            }
        arena_destroy(of_car);
    }
    arena_destroy(arena);
    assert_true(points > 500);
}

static void an_asked_effort_is_where_the_curve_ends(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, NULL);
    struct curves curves = curves_of(result->system, result->network, (struct force){100}, arena);
    const struct pedal_curve *usual = curve_of(&curves, "usual", -1)->curve;
    near(usual->points[0].effort.n, 0, 1e-12);
    near(usual->points[usual->count - 1].effort.n, 100, 1e-9);
    arena_destroy(arena);
}

/* What knocks pads back is the run-out of their disc; the van does not say it. */
static void a_case_that_cannot_be_drawn_names_what_is_missing(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, NULL);
    struct curves curves = curves_of(result->system, result->network, (struct force){NAN}, arena);
    const struct car_curve *knocked = curve_of(&curves, "knocked-back", -1);
    near_unknown(knocked->travel.m);
    assert_int_equal(knocked->needs_count, 2);
    for (int i = 0; i < 2; i++) {
        assert_int_equal(result->system->parts[knocked->needs[i].part].kind, KIND_DISC);
        assert_string_equal(knocked->needs[i].key->name, "run out");
    }
    assert_int_equal(curve_of(&curves, "usual", -1)->needs_count, 0);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_curve_ends_where_the_figure_says),
        cmocka_unit_test(the_causes_of_every_point_of_every_ready_car_add_up_to_its_travel),
        cmocka_unit_test(a_case_that_cannot_be_drawn_names_what_is_missing),
        cmocka_unit_test(an_asked_effort_is_where_the_curve_ends),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
