#include "advice/figures/to_measure.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"
#include "support/cmocka_all.h"
#include "support/near.h"
#include "support/ready_cars.h"

/* Two discs, a drum; three figures put together by hand: what follows can be added up on paper. */
static void the_list_is_the_sum_over_the_figures(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part parts[] = {{.kind = KIND_DISC, .name = "front left disc"},
                           {.kind = KIND_DISC, .name = "front right disc"},
                           {.kind = KIND_DRUM, .name = "rear drum"}};
    struct system system = {.parts = parts, .part_count = 3};
    const struct key *run_out = key_find(KIND_DISC, "run out");
    const struct key *friction = key_find(KIND_DISC, "friction");
    const struct key *tip = key_find(KIND_DRUM, "tip distance");
    const struct key *pad_left = key_find(KIND_DISC, "pad left");
    assert_true(run_out->measured && tip->measured && pad_left->measured);
    assert_false(friction->measured);
    struct cited_key first[] = {{0, friction, 0.9}, {0, run_out, 0.4}, {1, run_out, 0.4}};
    struct cited_key second[] = {{2, tip, 0.3}, {0, run_out, 1.7}, {1, run_out, 1.7}};
    struct cited_key third[] = {{0, pad_left, 0}, {2, tip, 0}};
    struct figure items[] = {
        {.row = figure_row("pedal-travel"), .of = "", .assumed = first, .assumed_count = 3},
        {.row = figure_row("pedal-left"), .of = "", .assumed = second, .assumed_count = 3},
        {.row = figure_row("rise-per-stop"), .of = "", .needs = third, .needs_count = 2},
    };
    struct figures figures = {items, 3};
    struct measurings list = measurings_of(&system, &figures, arena);
    assert_int_equal(list.count, 3);
    /* run out: 0.4 + 1 (no figure tells more than the whole of itself), of each of two discs */
    assert_string_equal(list.items[0].words,
                        "run out of the front left disc and the front right disc");
    near(list.items[0].tells, 2.8, 1e-12);
    near(list.items[0].share, 1.7, 1e-12);
    assert_string_equal(list.items[0].most->row->id, "pedal-left");
    assert_int_equal(list.items[0].figures, 2);
    /* tip distance: 0.3, and half of a figure that lacks two values */
    assert_string_equal(list.items[1].words, "tip distance of the rear drum");
    near(list.items[1].tells, 0.8, 1e-12);
    assert_true(list.items[1].missing);
    assert_string_equal(list.items[2].words, "pad left of the front left disc");
    near(list.items[2].tells, 0.5, 1e-12);
    assert_true(isnan(list.items[2].share));
    arena_destroy(arena);
}

static bool lists(const struct measurings *list, const struct cited_key *cited)
{
    int times = 0;
    for (int i = 0; i < list->count; i++)
        for (int p = 0; p < list->items[i].part_count; p++)
            times += list->items[i].key == cited->key && list->items[i].parts[p] == cited->part;
    return times == 1;
}

static void check_car(const struct result *result)
{
    const struct measurings *list = &result->measure;
    for (int i = 0; i < list->count; i++) {
        assert_true(list->items[i].key->measured);
        assert_true(list->items[i].tells > 0);
        assert_true(i == 0 || list->items[i].tells <= list->items[i - 1].tells);
        for (int p = 0; p < list->items[i].part_count; p++) {
            const struct part *part = &result->system->parts[list->items[i].parts[p]];
            enum origin_kind origin = part->origins[key_index(part->kind, list->items[i].key)].kind;
            assert_int_not_equal(origin, ORIGIN_GIVEN);
        }
    }
    for (int f = 0; f < result->figures.count; f++) {
        const struct figure *figure = &result->figures.items[f];
        for (int k = 0; k < figure->assumed_count; k++)
            if (figure->assumed[k].key->measured && figure->assumed[k].share > 0)
                assert_true(lists(list, &figure->assumed[k]));
    }
}

/* Whatever a figure rests on and can be measured stands in the list once, and nothing that is
 * given. */
static void of_every_ready_car_all_that_tells_is_listed_once(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char **cars = ready_cars(arena);
    int count = 0;
    for (; cars[count] != NULL; count++)
        check_car(ready_result(arena, cars[count], NULL));
    assert_true(count >= 8);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_list_is_the_sum_over_the_figures),
        cmocka_unit_test(of_every_ready_car_all_that_tells_is_listed_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
