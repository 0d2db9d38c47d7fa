#include "parts/words.h"

#include <string.h>

#include "support/cmocka_all.h"

static void blanks_hyphens_and_case_do_not_matter(void **state)
{
    (void)state;
    assert_true(words_same("Self-adjusting", "self adjusting"));
    assert_true(words_same(" pad  to pivot ", "padtopivot"));
    assert_true(words_same("", " - "));
    assert_false(words_same("pad to pivot", "pad to pivots"));
    assert_false(words_same("pads", "pad"));
}

static void an_item_of_a_list_is_found_whole(void **state)
{
    (void)state;
    assert_true(words_among("metering", "metering, holdoff"));
    assert_true(words_among("Hold-Off", "metering, holdoff"));
    assert_false(words_among("meter", "metering, holdoff"));
    assert_false(words_among("metering, holdoff", "metering, holdoff"));
    assert_false(words_among("metering", NULL));
    assert_false(words_among("", "metering, holdoff"));
}

static void items_come_without_blanks_around_them(void **state)
{
    (void)state;
    const char *list = " a b ,, c ";
    size_t length;
    const char *item = words_next(&list, &length);
    assert_int_equal(length, 3);
    assert_memory_equal(item, "a b", 3);
    item = words_next(&list, &length);
    assert_int_equal(length, 1);
    assert_memory_equal(item, "c", 1);
    assert_null(words_next(&list, &length));
}

static void only_whole_words_count_at_an_end(void **state)
{
    (void)state;
    size_t letters = 0;
    assert_true(words_end_with("rear left drum", "drum", &letters));
    assert_int_equal(letters, 4);
    assert_true(words_end_with("the hand-brake", "hand brake", &letters));
    assert_int_equal(letters, 10);
    assert_false(words_end_with("humdrum", "drum", &letters));
    assert_true(words_begin_with("Drum rear left", "drum", &letters));
    assert_int_equal(letters, 4);
    assert_false(words_begin_with("drums rear", "drum", &letters));
    assert_false(words_begin_with("", "drum", &letters));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(blanks_hyphens_and_case_do_not_matter),
        cmocka_unit_test(an_item_of_a_list_is_found_whole),
        cmocka_unit_test(items_come_without_blanks_around_them),
        cmocka_unit_test(only_whole_words_count_at_an_end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
