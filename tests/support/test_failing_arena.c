#include "support/failing_arena.h"

#include "support/cmocka_all.h"

static void the_nth_block_and_all_after_it_are_refused(void **state)
{
    (void)state;
    struct failing_arena blocks = {.fails_at = 2};
    struct arena_source source = failing_arena_source(&blocks);
    void *first = source.give(8, source.context);
    assert_non_null(first);
    assert_null(source.give(8, source.context));
    assert_null(source.give(8, source.context));
    assert_int_equal(blocks.out, 1);
    source.take_back(first, source.context);
    assert_int_equal(blocks.out, 0);
    assert_int_equal(blocks.asked, 3);
}

static void without_a_number_none_is_refused(void **state)
{
    (void)state;
    struct failing_arena blocks = {0};
    struct arena *arena = arena_create_on(failing_arena_source(&blocks));
    assert_non_null(arena);
    assert_non_null(arena_new(arena, 100000));
    assert_true(blocks.out > 0);
    arena_destroy(arena);
    assert_int_equal(blocks.out, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_nth_block_and_all_after_it_are_refused),
        cmocka_unit_test(without_a_number_none_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
