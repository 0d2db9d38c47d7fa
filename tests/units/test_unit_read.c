#include "units/unit.h"

#include <stdio.h>
#include <string.h>

#include "support/near.h"

static struct reading fine(const char *text, enum dimension wanted, double expected)
{
    struct reading reading = unit_read(text, wanted);
    if (reading.outcome != READING_FINE)
        fail_msg("%s: outcome %d at %zu+%zu", text, reading.outcome, reading.start, reading.length);
    near_rel(reading.value, expected, 1e-14);
    return reading;
}

/* offending: the letters that start and length must name. */
static struct reading refused(const char *text, enum dimension wanted, enum reading_outcome outcome,
                              const char *offending)
{
    struct reading reading = unit_read(text, wanted);
    if (reading.outcome != outcome || reading.length != strlen(offending) ||
        reading.start + reading.length > strlen(text) ||
        memcmp(text + reading.start, offending, reading.length) != 0)
        fail_msg("%s: outcome %d at %zu+%zu", text, reading.outcome, reading.start, reading.length);
    near_unknown(reading.value);
    near_unknown(reading.tolerance);
    return reading;
}

/* 1 in = 25.4 mm, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s2. */
static void values_of_every_form_are_read_in_si(void **state)
{
    (void)state;
    fine("19.05 mm", DIMENSION_LENGTH, 0.01905);
    fine("  19.05mm \t", DIMENSION_LENGTH, 0.01905);
    fine("5/8 in", DIMENSION_LENGTH, 0.015875);
    fine("1-1/16 in", DIMENSION_LENGTH, 0.0269875);
    fine("1 1/16 in", DIMENSION_LENGTH, 0.0269875);
    fine("3/4-inch", DIMENSION_LENGTH, 0.01905);
    fine("7/8\"", DIMENSION_LENGTH, 0.022225);
    fine("60 bar", DIMENSION_PRESSURE, 6e6);
    fine("1000 psi", DIMENSION_PRESSURE, 6894757.2931683594);
    fine("-0.8 bar", DIMENSION_PRESSURE, -8e4);
    fine("2.5 g/cm3", DIMENSION_DENSITY, 2500);
    fine("20 °C", DIMENSION_TEMPERATURE, 20);
    fine("50 degF", DIMENSION_TEMPERATURE, 10);
    fine("-40 F", DIMENSION_TEMPERATURE, -40);
    fine("293.15 K", DIMENSION_TEMPERATURE, 20);
    fine("1e3 mm", DIMENSION_LENGTH, 1);
    fine("90°", DIMENSION_ANGLE, 1.5707963267948966);
}

static void a_number_takes_no_unit_and_may_be_a_ratio(void **state)
{
    (void)state;
    fine("0.38", DIMENSION_NUMBER, 0.38);
    fine("4:1", DIMENSION_NUMBER, 4);
    fine("4.2 : 1", DIMENSION_NUMBER, 4.2);
    fine("9:2", DIMENSION_NUMBER, 4.5);
    fine("5/8", DIMENSION_NUMBER, 0.625);
    refused("4:0", DIMENSION_NUMBER, READING_OUT_OF_RANGE, "4:0");
    refused("4:", DIMENSION_NUMBER, READING_NO_NUMBER, "");
    refused("4:x", DIMENSION_NUMBER, READING_NO_NUMBER, "x");
    refused("4:1:1", DIMENSION_NUMBER, READING_REST, ":1");
    refused("4:1 m", DIMENSION_LENGTH, READING_REST, ":1 m");
    refused("0.38 to one", DIMENSION_NUMBER, READING_REST, "to one");
    assert_int_equal(refused("4 mm", DIMENSION_NUMBER, READING_WRONG_KIND, "mm").other,
                     DIMENSION_LENGTH);
    assert_int_equal(refused("40 %", DIMENSION_NUMBER, READING_WRONG_KIND, "%").other,
                     DIMENSION_SHARE);
}

static void a_share_takes_percent_or_a_part_of_one(void **state)
{
    (void)state;
    fine("35 %", DIMENSION_SHARE, 0.35);
    fine("35%", DIMENSION_SHARE, 0.35);
    fine("0.35", DIMENSION_SHARE, 0.35);
    fine("1", DIMENSION_SHARE, 1);
    fine("120 %", DIMENSION_SHARE, 1.2);
    refused("35", DIMENSION_SHARE, READING_BARE_NUMBER, "35");
    refused("-0.1", DIMENSION_SHARE, READING_BARE_NUMBER, "-0.1");
}

static void tolerances_are_read_as_half_widths(void **state)
{
    (void)state;
    near_rel(fine("19.05 mm ± 0.05 mm", DIMENSION_LENGTH, 0.01905).tolerance, 5e-5, 1e-14);
    near_rel(fine("19.05 mm +- 0.05 mm", DIMENSION_LENGTH, 0.01905).tolerance, 5e-5, 1e-14);
    near_rel(fine("19.05 mm +/- 50e-3 mm", DIMENSION_LENGTH, 0.01905).tolerance, 5e-5, 1e-14);
    near_rel(fine("3/4 in±0.1mm", DIMENSION_LENGTH, 0.01905).tolerance, 1e-4, 1e-14);
    /* One unit may stand for both. */
    near_rel(fine("19.05 ± 0.05 mm", DIMENSION_LENGTH, 0.01905).tolerance, 5e-5, 1e-14);
    near_rel(fine("19.05 mm ± 0.05", DIMENSION_LENGTH, 0.01905).tolerance, 5e-5, 1e-14);
    near_rel(fine("0.38 ± 0.04", DIMENSION_NUMBER, 0.38).tolerance, 0.04, 1e-14);
    /* A difference of temperatures has no zero to move. */
    near_rel(fine("50 degF ± 9 degF", DIMENSION_TEMPERATURE, 10).tolerance, 5, 1e-14);
    near_unknown(fine("19.05 mm", DIMENSION_LENGTH, 0.01905).tolerance);
}

static void a_wrong_tolerance_is_refused(void **state)
{
    (void)state;
    refused("19.05 mm ±", DIMENSION_LENGTH, READING_NO_NUMBER, "");
    refused("19.05 mm ± x", DIMENSION_LENGTH, READING_NO_NUMBER, "x");
    refused("19.05 mm ± -1 mm", DIMENSION_LENGTH, READING_NO_NUMBER, "-1");
    refused("19.05 mm ± 0,05 mm", DIMENSION_LENGTH, READING_DECIMAL_COMMA, "0,05");
    refused("19.05 mm ± 1 %", DIMENSION_LENGTH, READING_WRONG_KIND, "%");
    refused("19.05 ± 0.05", DIMENSION_LENGTH, READING_BARE_NUMBER, "19.05");
    refused("19.05 mm ± 1 mm ± 2 mm", DIMENSION_LENGTH, READING_REST, "± 2 mm");
    refused("19.05 mm ± 1e308 m ", DIMENSION_PRESSURE, READING_WRONG_KIND, "mm");
}

static void nothing_and_no_number_are_told_apart(void **state)
{
    (void)state;
    refused("", DIMENSION_LENGTH, READING_EMPTY, "");
    refused("  ", DIMENSION_LENGTH, READING_EMPTY, "");
    refused("mm", DIMENSION_LENGTH, READING_NO_NUMBER, "mm");
    refused(" big one", DIMENSION_LENGTH, READING_NO_NUMBER, "big one");
    refused("nan mm", DIMENSION_LENGTH, READING_NO_NUMBER, "nan mm");
    refused("inf mm", DIMENSION_LENGTH, READING_NO_NUMBER, "inf mm");
    refused("0x10 mm", DIMENSION_LENGTH, READING_NO_NUMBER, "0x10 mm");
    refused("?", DIMENSION_LENGTH, READING_NO_NUMBER, "?");
}

static void a_missing_unit_is_named(void **state)
{
    (void)state;
    refused("19.05", DIMENSION_LENGTH, READING_BARE_NUMBER, "19.05");
    refused("0", DIMENSION_LENGTH, READING_BARE_NUMBER, "0");
    refused(" 5/8 ", DIMENSION_LENGTH, READING_BARE_NUMBER, "5/8");
}

static void a_unit_of_another_kind_is_named(void **state)
{
    (void)state;
    struct reading wrong = refused("20 bar", DIMENSION_LENGTH, READING_WRONG_KIND, "bar");
    assert_int_equal(wrong.other, DIMENSION_PRESSURE);
    assert_string_equal(wrong.unit->name, "bar");
    assert_int_equal(refused("20 lb", DIMENSION_FORCE, READING_WRONG_KIND, "lb").other,
                     DIMENSION_MASS);
}

static void an_unknown_unit_gets_its_neighbour(void **state)
{
    (void)state;
    struct reading unknown = refused("20 psu", DIMENSION_PRESSURE, READING_UNKNOWN_UNIT, "psu");
    assert_string_equal(unknown.nearest, "psi");
    unknown = refused("20 elephants", DIMENSION_PRESSURE, READING_UNKNOWN_UNIT, "elephants");
    assert_null(unknown.nearest);
    /* 28.4 mL in Britain, 29.6 mL in America: it must be said which. */
    unknown = refused("20 fl oz", DIMENSION_VOLUME, READING_UNKNOWN_UNIT, "fl oz");
    assert_string_equal(unknown.nearest, "US fl-oz");
}

static void a_decimal_comma_is_seen(void **state)
{
    (void)state;
    refused("0,32 m", DIMENSION_LENGTH, READING_DECIMAL_COMMA, "0,32");
    refused("1.234,5 mm", DIMENSION_LENGTH, READING_DECIMAL_COMMA, "1.234,5");
}

static void numbers_too_large_are_refused(void **state)
{
    (void)state;
    refused("1e999 mm", DIMENSION_LENGTH, READING_OUT_OF_RANGE, "1e999");
    refused("1e308 MPa", DIMENSION_PRESSURE, READING_OUT_OF_RANGE, "1e308");
    refused("5/0 in", DIMENSION_LENGTH, READING_OUT_OF_RANGE, "5/0");
}

static void what_does_not_belong_to_it_is_named(void **state)
{
    (void)state;
    refused("19.05 mm about", DIMENSION_LENGTH, READING_REST, "about");
    refused("19.05 mm, two pistons", DIMENSION_LENGTH, READING_REST, ", two pistons");
    refused("10-12 mm", DIMENSION_LENGTH, READING_REST, "-12 mm");
    refused("19 05 mm", DIMENSION_LENGTH, READING_REST, "05 mm");
    refused("5..2 mm", DIMENSION_LENGTH, READING_REST, ".2 mm");
    refused("19 mm 3", DIMENSION_LENGTH, READING_REST, "3");
    refused("1-17/16 in", DIMENSION_LENGTH, READING_REST, "-17/16 in");
}

/* The first and last letters of the alphabet begin a word as well. */
static void every_letter_begins_a_word(void **state)
{
    (void)state;
    static const char *const words[] = {"aunes", "zolls", "Aunes", "Zolls"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        char text[32];
        snprintf(text, sizeof text, "3 %s", words[i]);
        refused(text, DIMENSION_LENGTH, READING_UNKNOWN_UNIT, words[i]);
        snprintf(text, sizeof text, "3/4-%s", words[i]);
        assert_int_equal(unit_read(text, DIMENSION_LENGTH).outcome, READING_UNKNOWN_UNIT);
    }
    refused("3 @in", DIMENSION_LENGTH, READING_REST, "@in");
    refused("3 [in", DIMENSION_LENGTH, READING_REST, "[in");
    refused("3 {in", DIMENSION_LENGTH, READING_REST, "{in");
}

static void the_first_of_two_signs_is_the_tolerance(void **state)
{
    (void)state;
    refused("19 mm +- 1 mm ± 2 mm", DIMENSION_LENGTH, READING_REST, "± 2 mm");
    refused("19 mm ± 1 mm +- 2 mm", DIMENSION_LENGTH, READING_REST, "+- 2 mm");
    refused("19 bar ± 1e308 MPa", DIMENSION_PRESSURE, READING_OUT_OF_RANGE, "19");
    near_rel(fine("19 mm ± 1/8 in", DIMENSION_LENGTH, 0.019).tolerance, 3.175e-3, 1e-14);
    near(fine("19 mm ± 0", DIMENSION_LENGTH, 0.019).tolerance, 0, 0);
}

static void a_good_unit_with_more_behind_it_keeps_the_rest(void **state)
{
    (void)state;
    refused("19.05 mm (worn)", DIMENSION_LENGTH, READING_REST, "(worn)");
    refused("19.05 mm [worn]", DIMENSION_LENGTH, READING_REST, "[worn]");
    refused("19.05 mm; worn", DIMENSION_LENGTH, READING_REST, "; worn");
    fine("0", DIMENSION_SHARE, 0);
    fine("19 mm\r\n", DIMENSION_LENGTH, 0.019);
    fine("-4:1", DIMENSION_NUMBER, -4);
    refused("4:-1", DIMENSION_NUMBER, READING_OUT_OF_RANGE, "4:-1");
    refused("1e300:1e-300", DIMENSION_NUMBER, READING_OUT_OF_RANGE, "1e300:1e-300");
}

/* A cheap search for what upsets the reader; the sanitizers watch. */
static void any_text_of_likely_letters_is_survived(void **state)
{
    (void)state;
    static const char *const bits[] = {"1",  "5/8", "-",  " ", ".",    ",",  ":",
                                       "mm", "±",   "+-", "°", "C",    "e9", "0x",
                                       "%",  "\"",  "'",  "²", "\xff", "in", "lbf"};
    unsigned seed = 1;
    for (int i = 0; i < 2000; i++) {
        char text[64] = "";
        for (int j = 0; j < 8; j++) {
            seed = seed * 1103515245u + 12345u;
            strcat(text, bits[(seed >> 16) % (sizeof bits / sizeof *bits)]);
        }
        for (int kind = 0; kind < DIMENSION_COUNT; kind++) {
            struct reading reading = unit_read(text, (enum dimension)kind);
            assert_true(reading.start + reading.length <= strlen(text));
            assert_true(reading.outcome == READING_FINE || reading.value != reading.value);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(values_of_every_form_are_read_in_si),
        cmocka_unit_test(a_number_takes_no_unit_and_may_be_a_ratio),
        cmocka_unit_test(a_share_takes_percent_or_a_part_of_one),
        cmocka_unit_test(tolerances_are_read_as_half_widths),
        cmocka_unit_test(a_wrong_tolerance_is_refused),
        cmocka_unit_test(nothing_and_no_number_are_told_apart),
        cmocka_unit_test(a_missing_unit_is_named),
        cmocka_unit_test(a_unit_of_another_kind_is_named),
        cmocka_unit_test(an_unknown_unit_gets_its_neighbour),
        cmocka_unit_test(a_decimal_comma_is_seen),
        cmocka_unit_test(numbers_too_large_are_refused),
        cmocka_unit_test(what_does_not_belong_to_it_is_named),
        cmocka_unit_test(every_letter_begins_a_word),
        cmocka_unit_test(the_first_of_two_signs_is_the_tolerance),
        cmocka_unit_test(a_good_unit_with_more_behind_it_keeps_the_rest),
        cmocka_unit_test(any_text_of_likely_letters_is_survived),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
