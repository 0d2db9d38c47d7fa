#include "base/date.h"

#include "support/cmocka_all.h"

static void the_three_iso_forms_are_read_and_written_alike(void **state)
{
    (void)state;
    const char *const forms[] = {"2026-03-14", "2026-03",    "2026",
                                 "2024-02-29", "0001-01-01", "9999-12-31"};
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
        struct date date;
        char written[16];
        assert_true(date_read(forms[i], &date));
        assert_true(date_known(date));
        date_write(date, written);
        assert_string_equal(written, forms[i]);
    }
}

static void what_is_no_date_is_refused_and_leaves_the_value(void **state)
{
    (void)state;
    const char *const wrong[] = {
        "",           "26",          "2026-3-14",   "2026-13-01",    "2026-00-01", "2026-02-29",
        "2026-04-31", "2026-03-14x", "14.3.2026",   "2026/03/14",    "2026-03-",   "2026-",
        "0000",       "1900-02-29",  " 2026-03-14", "2026-03-14-01", "-2026",      "20260314"};
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        struct date date = {1, 2, 3};
        if (date_read(wrong[i], &date))
            fail_msg("%s was read", wrong[i]);
        assert_int_equal(date.year, 1);
        assert_int_equal(date.day, 3);
    }
}

static void an_unknown_date_is_written_as_nothing(void **state)
{
    (void)state;
    char written[16] = "x";
    date_write((struct date){0, 0, 0}, written);
    assert_string_equal(written, "");
    assert_false(date_known((struct date){0, 0, 0}));
}

static void a_missing_month_or_day_counts_as_the_first(void **state)
{
    (void)state;
    assert_int_equal(date_compare((struct date){2026, 0, 0}, (struct date){2026, 1, 1}), 0);
    assert_true(date_compare((struct date){2026, 3, 0}, (struct date){2026, 3, 2}) < 0);
    assert_true(date_compare((struct date){2027, 0, 0}, (struct date){2026, 12, 31}) > 0);
    assert_true(date_compare((struct date){2026, 4, 1}, (struct date){2026, 3, 31}) > 0);
}

static void years_are_full_only_on_the_day(void **state)
{
    (void)state;
    struct date start = {2015, 6, 10};
    assert_int_equal(date_years_between(start, (struct date){2026, 6, 9}), 10);
    assert_int_equal(date_years_between(start, (struct date){2026, 6, 10}), 11);
    assert_int_equal(date_years_between(start, (struct date){2015, 6, 10}), 0);
    assert_int_equal(date_years_between(start, (struct date){2010, 1, 1}), 0);
}

static void the_29th_of_february_becomes_the_28th_where_there_is_none(void **state)
{
    (void)state;
    struct date leap = {2024, 2, 29};
    assert_int_equal(date_add_years(leap, 2).day, 28);
    assert_int_equal(date_add_years(leap, 2).year, 2026);
    assert_int_equal(date_add_years(leap, 4).day, 29);
    /* 2100 is no leap year. */
    assert_int_equal(date_add_years(leap, 76).day, 28);
    assert_int_equal(date_add_years((struct date){2024, 2, 0}, 2).day, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_three_iso_forms_are_read_and_written_alike),
        cmocka_unit_test(what_is_no_date_is_refused_and_leaves_the_value),
        cmocka_unit_test(an_unknown_date_is_written_as_nothing),
        cmocka_unit_test(a_missing_month_or_day_counts_as_the_first),
        cmocka_unit_test(years_are_full_only_on_the_day),
        cmocka_unit_test(the_29th_of_february_becomes_the_28th_where_there_is_none),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
