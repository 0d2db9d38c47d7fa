#include "advice/result.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

static void names_in_braces_are_filled_in_the_readers_units(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct named_quantity quantities[] = {
        {.name = "pressure", .value = 6894757.293168361, .dimension = DIMENSION_PRESSURE},
        {.name = "part", .text = "rear left drum"},
        {.name = "bore", .value = 0.022225, .dimension = DIMENSION_LENGTH, .bore_like = true}};
    const char *metric =
        fill_words(arena, "{part}: {pressure}, {bore}.", quantities, 3, UNITS_METRIC);
    const char *imperial =
        fill_words(arena, "{part}: {pressure}, {bore}.", quantities, 3, UNITS_IMPERIAL);
    /* 1000 psi are 68.95 bar by definition */
    assert_non_null(strstr(metric, "rear left drum: 68.9 bar"));
    assert_non_null(strstr(metric, "7/8 in"));
    assert_non_null(strstr(imperial, "1000 psi"));
    arena_destroy(arena);
}

static void unknown_names_and_open_braces_stay(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_string_equal(fill_words(arena, "a {b} c", NULL, 0, UNITS_METRIC), "a {b} c");
    assert_string_equal(fill_words(arena, "a {b", NULL, 0, UNITS_METRIC), "a {b");
    assert_string_equal(fill_words(arena, "", NULL, 0, UNITS_METRIC), "");
    arena_destroy(arena);
}

static const char *strokes_said(struct advice_car *car, double strokes)
{
    struct step step = car->result->bleed->steps.items[0];
    step.strokes = strokes;
    return step_words(car->arena, car->result, &step, "{strokes}");
}

static void one_stroke_is_no_strokes(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/hill-coupe.ini", NULL);
    assert_string_equal(strokes_said(&car, 1), "about 1 stroke");
    assert_string_equal(strokes_said(&car, 2), "about 2 strokes");
    assert_string_equal(strokes_said(&car, 14), "about 14 strokes");
    assert_string_equal(strokes_said(&car, NAN), "as many strokes as it takes");
    advice_car_finish(&car);
}

/* Every list of every ready car, and of the demo, in both systems of units. */
static void no_step_has_a_name_left_unfilled(void **state)
{
    (void)state;
    static const char *const cars[][2] = {{"systems/diagonal-hatch.ini", NULL},
                                          {"systems/family-saloon.ini", NULL},
                                          {"systems/hill-coupe.ini", NULL},
                                          {"systems/little-two-seater.ini", NULL},
                                          {"systems/rear-engined-saloon.ini", NULL},
                                          {"systems/servo-estate.ini", NULL},
                                          {"systems/twin-disc-motorcycle.ini", NULL},
                                          {"systems/village-van.ini", "demo/village-van-work.ini"},
                                          {"tests/cases/findings/nipple-not-at-top.ini", NULL},
                                          {"tests/cases/findings/hose-missing.ini", NULL}};
    for (size_t c = 0; c < sizeof cars / sizeof *cars; c++) {
        struct advice_car car = advice_car_load(cars[c][0], cars[c][1]);
        const struct steps *lists[] = {&car.result->bleed->settings, &car.result->bleed->steps,
                                       &car.result->opening, &car.result->tests};
        for (int units = 0; units < 2; units++) {
            car.result->units = units == 0 ? UNITS_METRIC : UNITS_IMPERIAL;
            for (int l = 0; l < 4; l++) {
                for (size_t i = 0; i < lists[l]->count; i++) {
                    const struct step *step = &lists[l]->items[i];
                    const char *words = step_words(car.arena, car.result, step, step->row->words);
                    if (strpbrk(words, "{}?") != NULL || strstr(words, "nan") != NULL) {
                        fail_msg("%s: %s: %s", cars[c][0], step->row->id, words);
                    }
                }
            }
        }
        advice_car_finish(&car);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(names_in_braces_are_filled_in_the_readers_units),
        cmocka_unit_test(unknown_names_and_open_braces_stay),
        cmocka_unit_test(one_stroke_is_no_strokes),
        cmocka_unit_test(no_step_has_a_name_left_unfilled),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
