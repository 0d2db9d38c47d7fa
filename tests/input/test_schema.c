#include "input/schema.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "car_text.h"
#include "support/cmocka_all.h"

static void special_sections_are_found_by_their_words(void **state)
{
    (void)state;
    const char *part;
    assert_int_equal(special_kind_of(special_find("Bleed  Order", &part)), SPECIAL_BLEED_ORDER);
    assert_null(part);
    assert_int_equal(special_kind_of(special_find("found rear left drum", &part)), SPECIAL_FOUND);
    assert_string_equal(part, "rear left drum");
    assert_null(special_find("foundry drum", &part));
    assert_null(special_find("brake master", &part));
}

static void every_row_has_a_name_an_example_and_help(void **state)
{
    (void)state;
    size_t count;
    const struct special *rows = special_rows(&count);
    assert_int_equal(count, SPECIAL_COUNT);
    for (size_t i = 0; i < count; i++) {
        assert_true(strlen(rows[i].help) > 10);
        assert_true(rows[i].key_count > 0 || rows[i].example);
        assert_true((rows[i].left != NULL) == (rows[i].right != NULL));
        for (size_t j = 0; j < rows[i].key_count; j++) {
            assert_true(strlen(rows[i].keys[j].help) > 5);
            assert_non_null(rows[i].keys[j].example);
            assert_true(isnan(rows[i].keys[j].least) && isnan(rows[i].keys[j].assumed));
        }
    }
}

static void every_choice_of_the_special_tables_is_found_by_its_words(void **state)
{
    (void)state;
    size_t count;
    const struct special *rows = special_rows(&count);
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < rows[i].key_count; j++)
            for (const struct choice *choice = rows[i].keys[j].choices; choice && choice->word;
                 choice++)
                assert_ptr_equal(choice_find(&rows[i].keys[j], choice->word), choice);
}

static void only_pipes_hoses_and_joints_have_keys_for_their_ends(void **state)
{
    (void)state;
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *rows = ends_keys((enum part_kind)kind, &count);
        bool expected = kind == KIND_PIPE || kind == KIND_HOSE || kind == KIND_JOINT;
        assert_int_equal(count > 0, expected);
        for (size_t i = 0; i < count; i++)
            assert_null(key_find((enum part_kind)kind, rows[i].name));
    }
}

static void every_row_that_names_parts_says_of_which_kinds(void **state)
{
    (void)state;
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *rows = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++)
            if (rows[i].form == FORM_PART || rows[i].form == FORM_PARTS)
                assert_true(key_names_kinds((enum part_kind)kind, &rows[i]) != 0);
    }
}

static void no_kind_is_called_like_a_special_section(void **state)
{
    (void)state;
    size_t count;
    const struct special *rows = special_rows(&count);
    for (size_t i = 0; i < count; i++) {
        enum part_kind kind;
        bool shares = i == SPECIAL_ALL_PIPES || i == SPECIAL_ALL_HOSES;
        if (!shares)
            assert_false(kind_of_words(rows[i].name, &kind));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(special_sections_are_found_by_their_words),
        cmocka_unit_test(every_row_has_a_name_an_example_and_help),
        cmocka_unit_test(every_choice_of_the_special_tables_is_found_by_its_words),
        cmocka_unit_test(only_pipes_hoses_and_joints_have_keys_for_their_ends),
        cmocka_unit_test(every_row_that_names_parts_says_of_which_kinds),
        cmocka_unit_test(no_kind_is_called_like_a_special_section),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
