#include "base/text.h"

#include <string.h>

#include "support/cmocka_all.h"

static int start(void **state)
{
    *state = arena_create();
    return *state ? 0 : -1;
}

static int finish(void **state)
{
    arena_destroy(*state);
    return 0;
}

static void copies_are_equal_and_elsewhere(void **state)
{
    const char from[] = "brake master";
    char *copy = text_copy(*state, from);
    assert_string_equal(copy, from);
    assert_ptr_not_equal(copy, from);
    assert_string_equal(text_copy_part(*state, from, 5), "brake");
    assert_string_equal(text_copy_part(*state, from, 0), "");
}

static void printing_is_never_cut(void **state)
{
    char *printed = text_print(*state, "%s %d %5000s", "a", 12, "b");
    assert_int_equal(strlen(printed), 5005);
    assert_memory_equal(printed, "a 12 ", 5);
    assert_string_equal(text_print(*state, "%s", ""), "");
}

static void words_are_the_same_in_any_case_of_a_to_z(void **state)
{
    (void)state;
    assert_true(text_same("Front Left", "front LEFT"));
    assert_false(text_same("front", "fronts"));
    assert_false(text_same("fronts", "front"));
    assert_false(text_same("[", "{"));
    assert_false(text_same("@", "`"));
    assert_true(text_same("", ""));
    assert_false(text_same("Ä", "ä"));
}

static void beginnings_and_ends_are_found(void **state)
{
    (void)state;
    assert_true(text_begins("Rear drum", "rear"));
    assert_false(text_begins("rear", "rear drum"));
    assert_true(text_begins("rear", ""));
    assert_true(text_ends("rear DRUM", "drum"));
    assert_false(text_ends("rum", "drum"));
    assert_true(text_ends("rear", ""));
}

static void a_text_grows_and_always_ends(void **state)
{
    struct text text = text_start(*state);
    assert_string_equal(text.items, "");
    for (int i = 0; i < 1000; i++)
        text_add(&text, "%03d,", i);
    assert_int_equal(text.count, 4000);
    assert_int_equal(strlen(text.items), 4000);
    assert_memory_equal(text.items + 3996, "999,", 4);
    text_add_bytes(&text, "a\0b", 3);
    assert_int_equal(text.count, 4003);
    assert_memory_equal(text.items + 4000, "a\0b", 4);
}

static void a_text_that_just_fits_still_ends(void **state)
{
    for (size_t length = 50; length < 140; length++) {
        struct text text = text_start(*state);
        for (size_t i = 0; i < length; i++)
            text_add_bytes(&text, "x", 1);
        assert_int_equal(strlen(text.items), length);
        assert_true(text.capacity > text.count);
    }
}

static const char *wrapped(void *arena, const char *words, int first, int indent, int width)
{
    struct text text = text_start(arena);
    text_add_wrapped(&text, words, first, indent, width);
    return text.items;
}

static void words_are_wrapped_at_the_width_and_indented(void **state)
{
    assert_string_equal(wrapped(*state, "open the rear nipple first", 0, 2, 12),
                        "open the\n  rear\n  nipple\n  first\n");
    /* Exactly as wide as allowed still fits. */
    assert_string_equal(wrapped(*state, "12345 6789", 0, 0, 10), "12345 6789\n");
    assert_string_equal(wrapped(*state, "12345 67890", 0, 0, 10), "12345\n67890\n");
}

static void the_column_where_words_begin_counts(void **state)
{
    assert_string_equal(wrapped(*state, "aaa bbb", 4, 4, 11), "aaa bbb\n");
    assert_string_equal(wrapped(*state, "aaa bbb", 5, 4, 11), "aaa\n    bbb\n");
}

static void letters_are_counted_when_wrapping_not_bytes(void **state)
{
    /* Ten letters in twenty bytes. */
    assert_string_equal(wrapped(*state, "ÄÖÜÄ ÖÜÄÖÜ", 0, 0, 10), "ÄÖÜÄ ÖÜÄÖÜ\n");
}

static void a_word_wider_than_the_line_stands_alone(void **state)
{
    assert_string_equal(wrapped(*state, "a bbbbbbbbbbbb c", 0, 1, 5), "a\n bbbbbbbbbbbb\n c\n");
}

static void line_ends_are_kept_and_blanks_are_not(void **state)
{
    assert_string_equal(wrapped(*state, " a   b \nc ", 0, 2, 20), "a b\n  c\n");
    assert_string_equal(wrapped(*state, "", 0, 2, 20), "\n");
}

static void letters_of_utf8_are_counted(void **state)
{
    (void)state;
    assert_int_equal(text_letters(""), 0);
    assert_int_equal(text_letters("20 °C"), 5);
    assert_int_equal(text_letters("€"), 1);
    assert_int_equal(text_letters("\xF0\x9F\x94\xA7"), 1);
}

static bool is_utf8(const char *bytes)
{
    return text_is_utf8(bytes, strlen(bytes));
}

/* The bounds of Unicode Standard, table 3-7, well-formed UTF-8. */
static void only_well_formed_utf8_is_taken(void **state)
{
    (void)state;
    assert_true(is_utf8("plain"));
    assert_true(is_utf8("\xC2\x80"));
    assert_true(is_utf8("\xE0\xA0\x80"));
    assert_true(is_utf8("\xED\x9F\xBF"));
    assert_true(is_utf8("\xEF\xBF\xBF"));
    assert_true(is_utf8("\xF0\x90\x80\x80"));
    assert_true(is_utf8("\xF4\x8F\xBF\xBF"));
    assert_true(text_is_utf8("a\0b", 3));

    assert_false(is_utf8("\x80"));             /* no lead */
    assert_false(is_utf8("\xC0\xAF"));         /* overlong */
    assert_false(is_utf8("\xC1\xBF"));         /* overlong */
    assert_false(is_utf8("\xE0\x9F\xBF"));     /* overlong */
    assert_false(is_utf8("\xF0\x8F\xBF\xBF")); /* overlong */
    assert_false(is_utf8("\xED\xA0\x80"));     /* surrogate */
    assert_false(is_utf8("\xF4\x90\x80\x80")); /* past U+10FFFF */
    assert_false(is_utf8("\xF5\x80\x80\x80"));
    assert_false(is_utf8("\xE2\x82")); /* cut */
    assert_false(is_utf8("\xE2\x82z"));
    assert_false(is_utf8("Gr\xFC"
                         "n")); /* Latin 1 */
    assert_false(text_is_utf8("\xE2\x82\xAC", 2));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(copies_are_equal_and_elsewhere, start, finish),
        cmocka_unit_test_setup_teardown(printing_is_never_cut, start, finish),
        cmocka_unit_test_setup_teardown(words_are_the_same_in_any_case_of_a_to_z, start, finish),
        cmocka_unit_test_setup_teardown(beginnings_and_ends_are_found, start, finish),
        cmocka_unit_test_setup_teardown(a_text_grows_and_always_ends, start, finish),
        cmocka_unit_test_setup_teardown(a_text_that_just_fits_still_ends, start, finish),
        cmocka_unit_test_setup_teardown(words_are_wrapped_at_the_width_and_indented, start, finish),
        cmocka_unit_test_setup_teardown(the_column_where_words_begin_counts, start, finish),
        cmocka_unit_test_setup_teardown(letters_are_counted_when_wrapping_not_bytes, start, finish),
        cmocka_unit_test_setup_teardown(a_word_wider_than_the_line_stands_alone, start, finish),
        cmocka_unit_test_setup_teardown(line_ends_are_kept_and_blanks_are_not, start, finish),
        cmocka_unit_test_setup_teardown(letters_of_utf8_are_counted, start, finish),
        cmocka_unit_test_setup_teardown(only_well_formed_utf8_is_taken, start, finish),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
