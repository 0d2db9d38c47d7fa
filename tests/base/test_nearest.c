#include "base/text.h"

#include <string.h>

#include "support/cmocka_all.h"

static const char *const known[] = {"wheelbase", "bore", "stroke", "hose", "all", "Schlauchlänge"};

static const char *nearest(const char *word)
{
    return text_nearest(word, known, sizeof known / sizeof *known);
}

static void a_mistyped_word_finds_its_neighbour(void **state)
{
    (void)state;
    assert_string_equal(nearest("whelbase"), "wheelbase");
    assert_string_equal(nearest("wheelbases"), "wheelbase");
    assert_string_equal(nearest("wheel_base"), "wheelbase");
    assert_string_equal(nearest("strok"), "stroke");
    assert_string_equal(nearest("hoze"), "hose");
}

static void swapped_neighbours_count_as_one_mistake(void **state)
{
    (void)state;
    /* Two mistakes in four letters would be too many. */
    assert_string_equal(nearest("broe"), "bore");
    assert_string_equal(nearest("ohse"), "hose");
}

static void case_counts_not_at_all(void **state)
{
    (void)state;
    assert_string_equal(nearest("WHEELBASE"), "wheelbase");
}

static void more_than_a_third_wrong_is_not_near(void **state)
{
    (void)state;
    assert_null(nearest("bxxe"));
    assert_null(nearest("carburettor"));
    assert_null(nearest("x"));
    assert_null(nearest(""));
}

static void letters_are_counted_not_bytes(void **state)
{
    (void)state;
    /* One letter of three is a third; as bytes it would be two of six or worse. */
    assert_string_equal(nearest("Schlauchlonge"), "Schlauchlänge");
    static const char *const umlauts[] = {"äöü"};
    assert_string_equal(text_nearest("äöo", umlauts, 1), "äöü");
    assert_null(text_nearest("äoo", umlauts, 1));
}

static void a_word_of_any_length_and_bytes_is_survived(void **state)
{
    (void)state;
    char endless[5000];
    memset(endless, 'a', sizeof endless - 1);
    endless[sizeof endless - 1] = '\0';
    assert_null(nearest(endless));
    assert_null(nearest("\x80\x80\x80\xff\xfe"));
}

static void words_are_mistyped_only_when_each_of_them_is_near(void **state)
{
    (void)state;
    static const struct {
        const char *words, *known;
        bool meant;
    } cases[] = {{"front lefd disc", "front left disc", true},
                 {"front hose", "front disk", false},
                 {"secondary bore", "secondary stroke", false},
                 {"sinlge", "single", true},
                 {"rear feed pipe 2", "rear feed pipe 3", false},
                 {"drum dia", "drum diameter", true},
                 {"left drum", "right drum", false},
                 {"bore", "bore", true},
                 {"rear", "rear drum", false},
                 {"2800 pipe", "2.6 m pipe", false},
                 {"", "bore", false}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        if (text_mistyped(cases[i].words, cases[i].known) != cases[i].meant)
            fail_msg("%s, %s", cases[i].words, cases[i].known);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_mistyped_word_finds_its_neighbour),
        cmocka_unit_test(swapped_neighbours_count_as_one_mistake),
        cmocka_unit_test(case_counts_not_at_all),
        cmocka_unit_test(more_than_a_third_wrong_is_not_near),
        cmocka_unit_test(letters_are_counted_not_bytes),
        cmocka_unit_test(a_word_of_any_length_and_bytes_is_survived),
        cmocka_unit_test(words_are_mistyped_only_when_each_of_them_is_near),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
