#include "report/paint/sketch.h"

#include <string.h>

#include "support/near.h"

/* Every letter is 1 mm wide. */
static double one_mm(void *context, const char *words, struct font font)
{
    (void)context;
    (void)font;
    return (double)strlen(words);
}
static const struct ruler ruler = {one_mm, NULL};
static const struct font font = {.size = 8};

static void words_are_broken_where_they_no_longer_fit(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct lines lines = sketch_wrap(arena, &ruler, "one two three", font, 7);
    assert_int_equal(lines.count, 2);
    assert_string_equal(lines.items[0], "one two");
    assert_string_equal(lines.items[1], "three");
    arena_destroy(arena);
}

static void a_word_wider_than_the_line_stands_alone(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct lines lines = sketch_wrap(arena, &ruler, "a reservoir b", font, 4);
    assert_int_equal(lines.count, 3);
    assert_string_equal(lines.items[1], "reservoir");
    arena_destroy(arena);
}

static void a_line_end_in_the_words_ends_a_line(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct lines lines = sketch_wrap(arena, &ruler, "one\ntwo", font, 100);
    assert_int_equal(lines.count, 2);
    assert_string_equal(lines.items[1], "two");
    assert_int_equal(sketch_wrap(arena, &ruler, "", font, 100).count, 0);
    assert_int_equal(sketch_wrap(arena, &ruler, NULL, font, 100).count, 0);
    arena_destroy(arena);
}

static void boxes_that_only_touch_do_not_meet(void **state)
{
    (void)state;
    struct box a = {0, 0, 10, 10};
    assert_false(boxes_meet(a, (struct box){10, 0, 20, 10}));
    assert_true(boxes_meet(a, (struct box){9.9, 9.9, 20, 20}));
    assert_true(boxes_meet(a, (struct box){2, 2, 3, 3}));
}

static void a_placed_sketch_is_moved_as_a_whole(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct sketch part = sketch_start(arena, 10, 10);
    sketch_line(&part, 1, 2, 3, 4, pen_of(0.5, INK_BLACK));
    sketch_words(&part, 5, 6, "tee", font, ALIGN_LEFT, INK_BLACK);
    struct sketch page = sketch_start(arena, 100, 100);
    sketch_place(&page, &part, 10, 20);
    assert_int_equal(page.count, 2);
    near(page.items[0].points[1].x, 13, 1e-12);
    near(page.items[0].points[1].y, 24, 1e-12);
    near(page.items[1].points[0].y, 26, 1e-12);
    near(part.items[0].points[0].x, 1, 1e-12); /* the part itself stays */
    arena_destroy(arena);
}

static void a_point_is_a_seventysecond_of_an_inch(void **state)
{
    (void)state;
    near(points_to_mm(72), 25.4, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(words_are_broken_where_they_no_longer_fit),
        cmocka_unit_test(a_word_wider_than_the_line_stands_alone),
        cmocka_unit_test(a_line_end_in_the_words_ends_a_line),
        cmocka_unit_test(boxes_that_only_touch_do_not_meet),
        cmocka_unit_test(a_placed_sketch_is_moved_as_a_whole),
        cmocka_unit_test(a_point_is_a_seventysecond_of_an_inch),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
