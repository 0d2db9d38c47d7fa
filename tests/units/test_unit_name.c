#include "units/unit_name.h"

#include <string.h>

#include "support/cmocka_all.h"

static void found_as(const char *written, enum dimension wanted, const char *name)
{
    const struct unit *unit = unit_find(written, strlen(written), wanted);
    if (!unit)
        fail_msg("%s is not found", written);
    assert_string_equal(unit->name, name);
    assert_int_equal(unit->dimension, wanted);
}

static void spellings_of_the_trade_are_understood(void **state)
{
    (void)state;
    static const struct {
        const char *written;
        enum dimension wanted;
        const char *name;
    } rows[] = {
        {"inch", DIMENSION_LENGTH, "in"},
        {"inches", DIMENSION_LENGTH, "in"},
        {"Inches", DIMENSION_LENGTH, "in"},
        {"\"", DIMENSION_LENGTH, "in"},
        {"″", DIMENSION_LENGTH, "in"},
        {"''", DIMENSION_LENGTH, "in"},
        {"in.", DIMENSION_LENGTH, "in"},
        {"-inch", DIMENSION_LENGTH, "in"},
        {"'", DIMENSION_LENGTH, "ft"},
        {"MM", DIMENSION_LENGTH, "mm"},
        {"millimetres", DIMENSION_LENGTH, "mm"},
        {"mm²", DIMENSION_AREA, "mm2"},
        {"mm^2", DIMENSION_AREA, "mm2"},
        {"sq in", DIMENSION_AREA, "in2"},
        {"sq. in.", DIMENSION_AREA, "in2"},
        {"ml", DIMENSION_VOLUME, "mL"},
        {"cc", DIMENSION_VOLUME, "cm3"},
        {"cm³", DIMENSION_VOLUME, "cm3"},
        {"cu in", DIMENSION_VOLUME, "in3"},
        {"imp fl oz", DIMENSION_VOLUME, "imp fl-oz"},
        {"US fl. oz.", DIMENSION_VOLUME, "US fl-oz"},
        {"PSI", DIMENSION_PRESSURE, "psi"},
        {"lbf/in²", DIMENSION_PRESSURE, "psi"},
        {"lb/sq.in.", DIMENSION_PRESSURE, "psi"},
        {"Bar", DIMENSION_PRESSURE, "bar"},
        {"mpa", DIMENSION_PRESSURE, "MPa"},
        {"kg/cm²", DIMENSION_PRESSURE, "kgf/cm2"},
        {"mm Hg", DIMENSION_PRESSURE, "mmHg"},
        {"in. Hg", DIMENSION_PRESSURE, "inHg"},
        {"kp", DIMENSION_FORCE, "kgf"},
        {"Nm", DIMENSION_TORQUE, "N m"},
        {"N·m", DIMENSION_TORQUE, "N m"},
        {"N.m", DIMENSION_TORQUE, "N m"},
        {"lb ft", DIMENSION_TORQUE, "lbf ft"},
        {"ft-lb", DIMENSION_TORQUE, "lbf ft"},
        {"lbf·ft", DIMENSION_TORQUE, "lbf ft"},
        {"in-lbf", DIMENSION_TORQUE, "lbf in"},
        {"lb in", DIMENSION_TORQUE, "lbf in"},
        {"mkg", DIMENSION_TORQUE, "kgf m"},
        {"lbs", DIMENSION_MASS, "lb"},
        {"°", DIMENSION_ANGLE, "deg"},
        {"°C", DIMENSION_TEMPERATURE, "degC"},
        {"° C", DIMENSION_TEMPERATURE, "degC"},
        {"deg C", DIMENSION_TEMPERATURE, "degC"},
        {"C", DIMENSION_TEMPERATURE, "degC"},
        {"°F", DIMENSION_TEMPERATURE, "degF"},
        {"min", DIMENSION_DURATION, "min"},
        {"hours", DIMENSION_DURATION, "h"},
        {"kph", DIMENSION_SPEED, "km/h"},
        {"m/s²", DIMENSION_ACCELERATION, "m/s2"},
        {"kg/m³", DIMENSION_DENSITY, "kg/m3"},
        {"cst", DIMENSION_VISCOSITY, "cSt"},
        {"ml/m", DIMENSION_SWELLING, "mL/m"},
        {"percent", DIMENSION_SHARE, "%"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        found_as(rows[i].written, rows[i].wanted, rows[i].name);
}

static void a_letter_of_two_meanings_goes_by_the_wanted_kind(void **state)
{
    (void)state;
    found_as("g", DIMENSION_ACCELERATION, "g");
    found_as("g", DIMENSION_MASS, "g");
    found_as("'", DIMENSION_LENGTH, "ft");
}

/* As it is written in the table, and with a blank before it, which does not count but is written
 * nowhere: the quick way and the long way through the table must find the same row. */
static void found_both_ways(const char *letters, size_t length, const struct unit *row)
{
    char blank_first[64] = " ";
    assert_true(length + 1 < sizeof blank_first);
    memcpy(blank_first + 1, letters, length);
    if (unit_find(letters, length, row->dimension) != row ||
        unit_find(blank_first, length + 1, row->dimension) != row)
        fail_msg("%.*s is not %s", (int)length, letters, row->name);
}

static void no_spelling_within_a_kind_means_two_units(void **state)
{
    (void)state;
    size_t count;
    const struct unit *table = unit_table(&count);
    for (size_t i = 0; i < count; i++) {
        found_both_ways(table[i].name, strlen(table[i].name), &table[i]);
        const char *other = table[i].other_names ? table[i].other_names : "";
        while (*other) {
            size_t length = strcspn(other, " ");
            found_both_ways(other, length, &table[i]);
            other += length;
            other += strspn(other, " ");
        }
    }
}

static void what_is_no_unit_is_not_found(void **state)
{
    (void)state;
    const char *const wrong[] = {
        "",    " ", "furlong", "fl oz", "mm 3",
        "mmm", "-", "°",       ".",     "a name that is far longer than any unit could ever be"};
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        const struct unit *unit = unit_find(wrong[i], strlen(wrong[i]), DIMENSION_LENGTH);
        if (unit && unit->dimension == DIMENSION_LENGTH)
            fail_msg("%s is %s", wrong[i], unit->name);
    }
}

static void a_mistyped_unit_finds_its_neighbour(void **state)
{
    (void)state;
    assert_string_equal(unit_nearest("psu", 3, DIMENSION_PRESSURE), "psi");
    assert_string_equal(unit_nearest("fl oz", 5, DIMENSION_VOLUME), "US fl-oz");
    assert_null(unit_nearest("elephant", 8, DIMENSION_PRESSURE));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(spellings_of_the_trade_are_understood),
        cmocka_unit_test(a_letter_of_two_meanings_goes_by_the_wanted_kind),
        cmocka_unit_test(no_spelling_within_a_kind_means_two_units),
        cmocka_unit_test(what_is_no_unit_is_not_found),
        cmocka_unit_test(a_mistyped_unit_finds_its_neighbour),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
