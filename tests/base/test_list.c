#include "base/list.h"

#include <stdint.h>

#include "support/cmocka_all.h"

struct numbers {
    int *items;
    size_t count;
    size_t capacity;
};

static void a_list_keeps_what_was_added_while_it_grows(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct numbers numbers = {0};
    for (int i = 0; i < 1000; i++) {
        int *item = LIST_ADD(arena, &numbers);
        assert_int_equal(*item, 0);
        *item = i;
    }
    assert_int_equal(numbers.count, 1000);
    assert_true(numbers.capacity >= 1000);
    for (int i = 0; i < 1000; i++)
        assert_int_equal(numbers.items[i], i);
    arena_destroy(arena);
}

static void an_item_that_was_dropped_comes_back_zeroed(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct numbers numbers = {0};
    *LIST_ADD(arena, &numbers) = 7;
    numbers.count = 0;
    assert_int_equal(*LIST_ADD(arena, &numbers), 0);
    arena_destroy(arena);
}

static void a_list_that_cannot_grow_further_is_no_memory(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    jmp_buf point;
    arena_escape_to(arena, &point);
    volatile int jumped = 0;
    if (setjmp(point) == 0) {
        size_t capacity = SIZE_MAX / 2 + 1;
        list_room(arena, NULL, capacity, &capacity, sizeof(int));
    } else {
        jumped = 1;
    }
    assert_int_equal(jumped, 1);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_list_keeps_what_was_added_while_it_grows),
        cmocka_unit_test(an_item_that_was_dropped_comes_back_zeroed),
        cmocka_unit_test(a_list_that_cannot_grow_further_is_no_memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
