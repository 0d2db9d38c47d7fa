#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>
#include <string.h>

#include "support/cmocka_all.h"
#include "support/failing_arena.h"

static void pieces_are_zeroed_and_aligned_for_any_type(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    for (size_t size = 0; size < 300; size++) {
        char *piece = arena_new(arena, size);
        assert_int_equal((uintptr_t)piece % _Alignof(max_align_t), 0);
        for (size_t i = 0; i < size; i++)
            assert_int_equal(piece[i], 0);
        memset(piece, 0xAA, size);
    }
    arena_destroy(arena);
}

static void pieces_do_not_overlap(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    unsigned char *pieces[200];
    for (size_t i = 0; i < 200; i++) {
        pieces[i] = arena_new(arena, 1 + i * 7);
        memset(pieces[i], (int)i, 1 + i * 7);
    }
    for (size_t i = 0; i < 200; i++)
        for (size_t at = 0; at < 1 + i * 7; at++)
            assert_int_equal(pieces[i][at], i);
    arena_destroy(arena);
}

static void a_piece_larger_than_a_block_is_given(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    char *piece = arena_new(arena, 1000000);
    memset(piece, 1, 1000000);
    char *next = arena_new(arena, 100);
    assert_true(next + 100 <= piece || next >= piece + 1000000);
    assert_int_equal(next[0], 0);
    assert_int_equal(piece[999999], 1);
    arena_destroy(arena);
}

static void pieces_after_a_mark_are_given_back_and_come_zeroed_again(void **state)
{
    (void)state;
    struct failing_arena blocks = {0};
    struct arena *arena = arena_create_on(failing_arena_source(&blocks));
    char *kept = arena_new(arena, 10);
    strcpy(kept, "kept");
    struct arena_mark mark = arena_mark(arena);
    size_t before = blocks.out;
    char *first = arena_new(arena, 100);
    memset(first, 0xFF, 100);
    for (int i = 0; i < 10; i++)
        arena_new(arena, 50000);
    assert_true(blocks.out > before);
    arena_release(arena, mark);
    assert_int_equal(blocks.out, before);
    char *again = arena_new(arena, 100);
    assert_ptr_equal(again, first);
    for (size_t i = 0; i < 100; i++)
        assert_int_equal(again[i], 0);
    assert_string_equal(kept, "kept");
    arena_destroy(arena);
    assert_int_equal(blocks.out, 0);
}

static void a_mark_of_an_empty_arena_frees_all(void **state)
{
    (void)state;
    struct failing_arena blocks = {0};
    struct arena *arena = arena_create_on(failing_arena_source(&blocks));
    struct arena_mark mark = arena_mark(arena);
    arena_new(arena, 10);
    arena_release(arena, mark);
    assert_int_equal(blocks.out, 1);
    arena_destroy(arena);
    assert_int_equal(blocks.out, 0);
}

static void no_memory_for_the_arena_itself_gives_null(void **state)
{
    (void)state;
    struct failing_arena blocks = {.fails_at = 1};
    assert_null(arena_create_on(failing_arena_source(&blocks)));
    arena_destroy(NULL);
}

/* Whether taking count times size from a fresh arena jumps out. */
static bool jumps_out(size_t fails_at, size_t count, size_t size)
{
    struct failing_arena blocks = {.fails_at = fails_at};
    struct arena *arena = arena_create_on(failing_arena_source(&blocks));
    jmp_buf point;
    volatile bool jumped = false;
    arena_escape_to(arena, &point);
    if (setjmp(point) == 0)
        arena_new_array(arena, count, size);
    else
        jumped = true;
    arena_destroy(arena);
    assert_int_equal(blocks.out, 0);
    return jumped;
}

static void running_out_jumps_to_the_point_that_was_set(void **state)
{
    (void)state;
    assert_true(jumps_out(2, 1, 8));
    assert_false(jumps_out(3, 1, 8));
}

static void a_product_that_overflows_counts_as_no_memory(void **state)
{
    (void)state;
    assert_true(jumps_out(0, SIZE_MAX / 2 + 1, 2));
    assert_true(jumps_out(0, SIZE_MAX, 1));
    assert_true(jumps_out(0, SIZE_MAX - 8, 1));
}

static void the_point_that_was_set_before_is_given_back(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    jmp_buf outer;
    jmp_buf inner;
    assert_null(arena_escape_to(arena, &outer));
    assert_ptr_equal(arena_escape_to(arena, &inner), &outer);
    assert_ptr_equal(arena_escape_to(arena, NULL), &inner);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pieces_are_zeroed_and_aligned_for_any_type),
        cmocka_unit_test(pieces_do_not_overlap),
        cmocka_unit_test(a_piece_larger_than_a_block_is_given),
        cmocka_unit_test(pieces_after_a_mark_are_given_back_and_come_zeroed_again),
        cmocka_unit_test(a_mark_of_an_empty_arena_frees_all),
        cmocka_unit_test(no_memory_for_the_arena_itself_gives_null),
        cmocka_unit_test(running_out_jumps_to_the_point_that_was_set),
        cmocka_unit_test(a_product_that_overflows_counts_as_no_memory),
        cmocka_unit_test(the_point_that_was_set_before_is_given_back),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
