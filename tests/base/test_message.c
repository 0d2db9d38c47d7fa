#include "base/message.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"

static void a_message_holds_what_it_was_made_of_and_nothing_more(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    struct message *message =
        messages_add(&messages, SEVERITY_DANGER, "some-id", (struct place){"a.ini", 3, 4});
    assert_int_equal(messages.count, 1);
    assert_string_equal(message->id, "some-id");
    assert_int_equal(message->place.line, 3);
    assert_null(message->words);
    assert_null(message->write);
    assert_int_equal(message->earlier.line, 0);
    arena_destroy(arena);
}

static void the_worst_message_decides_what_is_reached(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    assert_false(messages_reach(&messages, SEVERITY_NOTE));
    messages_add(&messages, SEVERITY_WARNING, "a", (struct place){0});
    messages_add(&messages, SEVERITY_NOTE, "b", (struct place){0});
    assert_true(messages_reach(&messages, SEVERITY_ADVICE));
    assert_true(messages_reach(&messages, SEVERITY_WARNING));
    assert_false(messages_reach(&messages, SEVERITY_DANGER));
    arena_destroy(arena);
}

static void messages_are_ordered_by_file_as_met_then_line_then_column(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    /* The same name at another address is the same file. */
    char again[] = "z.ini";
    messages_add(&messages, SEVERITY_NOTE, "4", (struct place){"z.ini", 9, 1});
    messages_add(&messages, SEVERITY_NOTE, "5", (struct place){"a.ini", 1, 1});
    messages_add(&messages, SEVERITY_NOTE, "2", (struct place){again, 2, 8});
    messages_add(&messages, SEVERITY_NOTE, "1", (struct place){"z.ini", 2, 3});
    messages_add(&messages, SEVERITY_NOTE, "3", (struct place){"z.ini", 2, 8});
    messages_sort(&messages);
    const char *const expected[] = {"1", "2", "3", "4", "5"};
    for (size_t i = 0; i < 5; i++)
        assert_string_equal(messages.items[i].id, expected[i]);
    arena_destroy(arena);
}

static void many_messages_are_sorted_and_equal_ones_keep_their_order(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    unsigned seed = 12345;
    static const char *const files[] = {"b", "a", "c"};
    for (int i = 0; i < 1003; i++) {
        seed = seed * 1103515245u + 12345u;
        struct place place = {files[i < 3 ? i : (int)(seed >> 16) % 3], (int)(seed >> 20) % 40, 1};
        messages_add(&messages, SEVERITY_NOTE, "x", place)->length = i;
    }
    messages_sort(&messages);
    const char *const order = "bac";
    for (size_t i = 1; i < messages.count; i++) {
        const struct message *a = &messages.items[i - 1];
        const struct message *b = &messages.items[i];
        int rank_a = a->place.file[0] == order[0] ? 0 : a->place.file[0] == order[1] ? 1 : 2;
        int rank_b = b->place.file[0] == order[0] ? 0 : b->place.file[0] == order[1] ? 1 : 2;
        assert_true(rank_a <= rank_b);
        if (rank_a < rank_b)
            continue;
        assert_true(a->place.line <= b->place.line);
        if (a->place.line == b->place.line)
            assert_true(a->length < b->length);
    }
    arena_destroy(arena);
}

static void messages_without_a_file_can_be_sorted(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    messages_add(&messages, SEVERITY_NOTE, "first", (struct place){"a", 5, 1});
    messages_add(&messages, SEVERITY_NOTE, "second", (struct place){NULL, 0, 0});
    messages_add(&messages, SEVERITY_NOTE, "third", (struct place){NULL, 0, 0});
    messages_sort(&messages);
    assert_string_equal(messages.items[1].id, "second");
    assert_string_equal(messages.items[2].id, "third");
    arena_destroy(arena);
}

/* 100 remarks, then 50 mistakes: 40 are shown, all of them mistakes, and 110 more are told of. */
static void of_a_file_at_most_so_many_are_shown_the_worst_before_the_rest(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    for (int i = 1; i <= 150; i++)
        messages_add(&messages, i <= 100 ? SEVERITY_ADVICE : SEVERITY_DANGER, "x",
                     (struct place){"a.ini", i, 1});
    messages_add(&messages, SEVERITY_ADVICE, "y", (struct place){"b.ini", 1, 1});
    struct messages shown = messages_shown(&messages);
    assert_int_equal(messages.count, 151);
    assert_int_equal(shown.count, 42);
    assert_int_equal(shown.items[0].place.line, 101);
    assert_int_equal(shown.items[39].place.line, 140);
    assert_string_equal(shown.items[40].id, "more");
    assert_non_null(strstr(shown.items[40].words, "and 110 more"));
    assert_string_equal(shown.items[40].place.file, "a.ini");
    assert_string_equal(shown.items[41].id, "y");
    arena_destroy(arena);
}

static void remarks_fill_what_mistakes_leave_and_all_are_shown_where_they_fit(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    for (int i = 1; i <= 40; i++)
        messages_add(&messages, i % 2 ? SEVERITY_ADVICE : SEVERITY_DANGER, "x",
                     (struct place){"a.ini", i, 1});
    assert_int_equal(messages_shown(&messages).count, 40);
    messages_add(&messages, SEVERITY_DANGER, "x", (struct place){"a.ini", 41, 1});
    struct messages shown = messages_shown(&messages);
    assert_int_equal(shown.count, 41);
    assert_int_equal(shown.items[39].place.line, 41);
    assert_int_equal(shown.items[38].place.line, 40);
    assert_int_equal(shown.items[40].severity, SEVERITY_ADVICE);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_message_holds_what_it_was_made_of_and_nothing_more),
        cmocka_unit_test(the_worst_message_decides_what_is_reached),
        cmocka_unit_test(messages_are_ordered_by_file_as_met_then_line_then_column),
        cmocka_unit_test(many_messages_are_sorted_and_equal_ones_keep_their_order),
        cmocka_unit_test(messages_without_a_file_can_be_sorted),
        cmocka_unit_test(of_a_file_at_most_so_many_are_shown_the_worst_before_the_rest),
        cmocka_unit_test(remarks_fill_what_mistakes_leave_and_all_are_shown_where_they_fit),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
