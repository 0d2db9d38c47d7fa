#include "units/number.h"

#include <locale.h>
#include <string.h>

#include "support/near.h"

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

static void read_as(const char *text, double expected, size_t length)
{
    struct number_found found = number_read(text);
    if (found.outcome != NUMBER_FINE || found.length != length)
        fail_msg("%s: outcome %d, length %zu", text, found.outcome, found.length);
    near(found.value, expected, 0);
}

static void refused_as(const char *text, enum number_outcome outcome)
{
    struct number_found found = number_read(text);
    if (found.outcome != outcome)
        fail_msg("%s: outcome %d, value %g", text, found.outcome, found.value);
    near_unknown(found.value);
}

static void decimals_are_read(void **state)
{
    (void)state;
    read_as("19.05", 19.05, 5);
    read_as("0", 0, 1);
    read_as("007", 7, 3);
    read_as(".5", 0.5, 2);
    read_as("5.", 5, 2);
    read_as("-3.25", -3.25, 5);
    read_as("+3", 3, 2);
    read_as("−3", -3, 4);
    read_as("2.5e3", 2500, 5);
    read_as("2E-3", 0.002, 4);
    read_as("19.05mm", 19.05, 5);
    read_as("0.1", 0.1, 3);
    read_as("123456789.123456789", 123456789.123456789, 19);
}

static void fractions_are_read(void **state)
{
    (void)state;
    read_as("5/8", 0.625, 3);
    read_as("1-1/16", 1.0625, 6);
    read_as("1 1/16", 1.0625, 6);
    read_as("1  1/16 in", 1.0625, 7);
    read_as("-1-1/2", -1.5, 6);
    read_as("13/16\"", 0.8125, 5);
    read_as("17/16", 1.0625, 5);
    read_as("0/8", 0, 3);
}

static void a_fraction_of_one_or_more_beside_a_whole_number_is_not_taken(void **state)
{
    (void)state;
    read_as("1-17/16", 1, 1);
    read_as("1 8/8", 1, 1);
    read_as("1.5-1/16", 1.5, 3);
}

static void what_looks_like_an_exponent_and_is_none_is_left(void **state)
{
    (void)state;
    read_as("5e", 5, 1);
    read_as("5e+", 5, 1);
    read_as("5 e3", 5, 1);
}

static void what_is_no_number_is_refused(void **state)
{
    (void)state;
    const char *const wrong[] = {"",     "mm",   "nan",   "NaN",   "inf", "infinity",
                                 "-inf", "0x10", "0X1p3", "-0x10", ".",   "-",
                                 "e5",   "/8",   " 5",    "--5",   "+-5"};
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++)
        refused_as(wrong[i], NUMBER_NONE);
}

static void numbers_out_of_range_are_refused(void **state)
{
    (void)state;
    refused_as("1e999", NUMBER_OUT_OF_RANGE);
    refused_as("-1e999", NUMBER_OUT_OF_RANGE);
    refused_as("1e-999", NUMBER_OUT_OF_RANGE);
    refused_as("1e99999999999999999999", NUMBER_OUT_OF_RANGE);
    refused_as("5/0", NUMBER_OUT_OF_RANGE);
    refused_as("1-5/0", NUMBER_OUT_OF_RANGE);
    read_as("0e999", 0, 5);
    read_as("0e-999", 0, 6);
    char endless[1000];
    memset(endless, '9', sizeof endless - 1);
    endless[sizeof endless - 1] = '\0';
    refused_as(endless, NUMBER_OUT_OF_RANGE);
}

static void a_decimal_comma_is_seen(void **state)
{
    (void)state;
    refused_as("0,32", NUMBER_DECIMAL_COMMA);
    refused_as("-0,32", NUMBER_DECIMAL_COMMA);
    refused_as(",5", NUMBER_DECIMAL_COMMA);
    refused_as("1.234,5", NUMBER_DECIMAL_COMMA);
    refused_as("1,000", NUMBER_DECIMAL_COMMA);
    assert_int_equal(number_read("0,32 m").length, 4);
    read_as("5, 6", 5, 1);
}

/* A locale with a decimal comma, when the machine has one; the test is of use without, too. */
static void the_locale_changes_nothing(void **state)
{
    const char *const names[] = {"de_DE.UTF-8", "de_DE", "fr_FR.UTF-8"};
    for (size_t i = 0; i < 3 && !setlocale(LC_ALL, names[i]); i++)
        continue;
    read_as("19.05", 19.05, 5);
    assert_string_equal(number_print(*state, 19.05, 2), "19.05");
    setlocale(LC_ALL, "C");
}

static void printing_has_no_exponent_and_no_minus_zero(void **state)
{
    assert_string_equal(number_print(*state, 1e15, 0), "1000000000000000");
    assert_string_equal(number_print(*state, 1e-9, 2), "0.00");
    assert_string_equal(number_print(*state, -0.001, 2), "0.00");
    assert_string_equal(number_print(*state, -0.0, 0), "0");
    assert_string_equal(number_print(*state, -0.01, 2), "-0.01");
    assert_int_equal(strlen(number_print(*state, 1e300, 0)), 301);
}

static void decimals_follow_the_significant_digits(void **state)
{
    (void)state;
    assert_int_equal(number_decimals(22.2, 3, 3), 1);
    assert_int_equal(number_decimals(222, 3, 3), 0);
    assert_int_equal(number_decimals(22222, 3, 3), 0);
    assert_int_equal(number_decimals(0.0222, 3, 3), 3);
    assert_int_equal(number_decimals(0.0222, 3, 9), 4);
    assert_int_equal(number_decimals(-2.22, 3, 3), 2);
    /* 9.996 is shown as 10.0, not as 10.00. */
    assert_int_equal(number_decimals(9.996, 3, 3), 1);
    assert_int_equal(number_decimals(0, 3, 1), 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(decimals_are_read, start, finish),
        cmocka_unit_test_setup_teardown(fractions_are_read, start, finish),
        cmocka_unit_test_setup_teardown(
            a_fraction_of_one_or_more_beside_a_whole_number_is_not_taken, start, finish),
        cmocka_unit_test_setup_teardown(what_looks_like_an_exponent_and_is_none_is_left, start,
                                        finish),
        cmocka_unit_test_setup_teardown(what_is_no_number_is_refused, start, finish),
        cmocka_unit_test_setup_teardown(numbers_out_of_range_are_refused, start, finish),
        cmocka_unit_test_setup_teardown(a_decimal_comma_is_seen, start, finish),
        cmocka_unit_test_setup_teardown(the_locale_changes_nothing, start, finish),
        cmocka_unit_test_setup_teardown(printing_has_no_exponent_and_no_minus_zero, start, finish),
        cmocka_unit_test_setup_teardown(decimals_follow_the_significant_digits, start, finish),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
