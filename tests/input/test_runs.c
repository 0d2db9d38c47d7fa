#include "input/runs.h"

#include <string.h>

#include "support/cmocka_all.h"

struct read {
    struct arena *arena;
    struct messages messages;
    struct run run;
};

static struct read read_run(const char *words)
{
    struct read read = {.arena = arena_create()};
    read.messages = messages_start(read.arena);
    struct input input = {read.arena, &read.messages, "car.ini"};
    struct entry entry = {.key = {.text = "feed"}, .value = {words, words, {"car.ini", 7, 8}}};
    read.run = run_read(&entry, &input);
    return read;
}

static void expect(struct read *read, size_t at, enum item_kind kind, const char *words,
                   const char *length)
{
    assert_true(at < read->run.count);
    const struct run_item *item = &read->run.items[at];
    assert_int_equal(item->kind, kind);
    assert_string_equal(item->words.text, words);
    if (length)
        assert_string_equal(item->length.text, length);
    else
        assert_null(item->length.text);
}

static void a_run_is_split_into_parts_pipes_and_hoses(void **state)
{
    (void)state;
    struct read read = read_run("brake master.rear, 2.9 m pipe,load valve , 0.32 m hose, axle tee");
    assert_int_equal(read.run.count, 5);
    expect(&read, 0, ITEM_PART, "brake master.rear", NULL);
    expect(&read, 1, ITEM_PIPE, "2.9 m pipe", "2.9 m");
    expect(&read, 2, ITEM_PART, "load valve", NULL);
    expect(&read, 3, ITEM_HOSE, "0.32 m hose", "0.32 m");
    expect(&read, 4, ITEM_PART, "axle tee", NULL);
    assert_int_equal(read.run.items[1].words.place.column, 8 + 19);
    assert_int_equal(read.messages.count, 0);
    arena_destroy(read.arena);
}

static void a_length_may_be_missing_rough_asked_for_or_american(void **state)
{
    (void)state;
    struct read read =
        read_run("pipe, hose, about 2.9 m pipe, ? hose, 11 ft line, 14 in flexible hose");
    expect(&read, 0, ITEM_PIPE, "pipe", NULL);
    expect(&read, 1, ITEM_HOSE, "hose", NULL);
    expect(&read, 2, ITEM_PIPE, "about 2.9 m pipe", "about 2.9 m");
    expect(&read, 3, ITEM_HOSE, "? hose", "?");
    expect(&read, 4, ITEM_PIPE, "11 ft line", "11 ft");
    expect(&read, 5, ITEM_HOSE, "14 in flexible hose", "14 in");
    arena_destroy(read.arena);
}

static void a_pipe_may_be_named(void **state)
{
    (void)state;
    struct read read = read_run("front tee, long pipe, rear feed hose 2, end block");
    expect(&read, 1, ITEM_PART, "long pipe", NULL);
    expect(&read, 2, ITEM_PART, "rear feed hose 2", NULL);
    arena_destroy(read.arena);
}

static void a_decimal_comma_makes_one_item_and_one_message(void **state)
{
    (void)state;
    static const char *const runs[] = {"a tee, 0,32 m hose, b tee",
                                       "a tee, about 0,32 m hose, b tee",
                                       "a tee, 0, 32 m hose, b tee"};
    for (size_t i = 0; i < sizeof runs / sizeof *runs; i++) {
        struct read read = read_run(runs[i]);
        assert_int_equal(read.run.count, 3);
        assert_int_equal(read.messages.count, 1);
        assert_string_equal(read.messages.items[0].id, "decimal-comma");
        assert_non_null(strstr(read.messages.items[0].write, "0.32 m hose"));
        assert_int_equal(read.messages.items[0].place.column, 8 + 7);
        arena_destroy(read.arena);
    }
}

static void empty_items_are_told_of_once(void **state)
{
    (void)state;
    struct read read = read_run("a tee, , b tee,");
    assert_int_equal(read.run.count, 2);
    assert_int_equal(read.messages.count, 1);
    assert_int_equal(read.messages.items[0].place.column, 8 + 7);
    arena_destroy(read.arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_run_is_split_into_parts_pipes_and_hoses),
        cmocka_unit_test(a_length_may_be_missing_rough_asked_for_or_american),
        cmocka_unit_test(a_pipe_may_be_named),
        cmocka_unit_test(a_decimal_comma_makes_one_item_and_one_message),
        cmocka_unit_test(empty_items_are_told_of_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
