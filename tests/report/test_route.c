#include "report/diagram/route.h"

#include "support/near.h"

static const struct dock left = {{2, 5}, HEADING_RIGHT};
static const struct dock right = {{18, 5}, HEADING_LEFT};

static void a_free_way_is_straight(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct grid *grid = grid_create(arena, 20, 10);
    int cost;
    struct way way = route_find(grid, &left, 1, &right, 1, &cost);
    assert_int_equal(way.count, 17);
    for (int i = 0; i < way.count; i++)
        assert_int_equal(way.spots[i].y, 5);
    arena_destroy(arena);
}

static void a_way_goes_round_what_is_blocked(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct grid *grid = grid_create(arena, 20, 10);
    grid_block(grid, (struct spot){8, 2}, (struct spot){12, 10});
    int cost;
    struct way way = route_find(grid, &left, 1, &right, 1, &cost);
    assert_true(way.count > 17);
    for (int i = 0; i < way.count; i++)
        assert_false(way.spots[i].x >= 8 && way.spots[i].x <= 12 && way.spots[i].y >= 2);
    arena_destroy(arena);
}

static void there_is_no_way_through_a_wall(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct grid *grid = grid_create(arena, 20, 10);
    grid_block(grid, (struct spot){8, 0}, (struct spot){12, 10});
    int cost = 7;
    assert_int_equal(route_find(grid, &left, 1, &right, 1, &cost).count, 0);
    assert_int_equal(cost, 7);
    arena_destroy(arena);
}

static void a_second_way_crosses_straight_and_shares_no_line(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct grid *grid = grid_create(arena, 20, 10);
    int cost;
    struct way first = route_find(grid, &left, 1, &right, 1, &cost);
    grid_take(grid, &first);
    /* the first way lies between the two ends from rim to rim of the grid but for two points */
    grid_block(grid, (struct spot){0, 5}, (struct spot){1, 5});
    grid_block(grid, (struct spot){19, 5}, (struct spot){20, 5});
    const struct dock top = {{10, 1}, HEADING_DOWN};
    const struct dock bottom = {{10, 9}, HEADING_UP};
    struct way second = route_find(grid, &top, 1, &bottom, 1, &cost);
    assert_true(second.count >= 9);
    int shared = 0;
    for (int i = 1; i + 1 < second.count; i++)
        for (int k = 0; k < first.count; k++)
            if (second.spots[i].x == first.spots[k].x && second.spots[i].y == first.spots[k].y) {
                shared++;
                assert_int_equal(second.spots[i - 1].x, second.spots[i + 1].x);
            }
    assert_int_equal(shared, 1);
    arena_destroy(arena);
}

static void a_taken_dock_is_not_used_again(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct grid *grid = grid_create(arena, 20, 10);
    int cost;
    struct way first = route_find(grid, &left, 1, &right, 1, &cost);
    grid_take(grid, &first);
    assert_int_equal(route_find(grid, &left, 1, &right, 1, &cost).count, 0);
    grid_clear_ways(grid);
    assert_int_equal(route_find(grid, &left, 1, &right, 1, &cost).count, 17);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_free_way_is_straight),
        cmocka_unit_test(a_way_goes_round_what_is_blocked),
        cmocka_unit_test(there_is_no_way_through_a_wall),
        cmocka_unit_test(a_second_way_crosses_straight_and_shares_no_line),
        cmocka_unit_test(a_taken_dock_is_not_used_again),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
