#include "units/unit.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/near.h"
#include "support/run_cli.h"
#include "units/constants.h"

/* GNU units gives what it computes in 17 digits; two ways of multiplying may differ in the last. */
#define ROUNDING 4e-16

/* The SI unit of each kind in the words of GNU units. */
static const char *const si[DIMENSION_COUNT] = {
    [DIMENSION_SHARE] = "1",
    [DIMENSION_LENGTH] = "m",
    [DIMENSION_AREA] = "m^2",
    [DIMENSION_VOLUME] = "m^3",
    [DIMENSION_PRESSURE] = "Pa",
    [DIMENSION_FORCE] = "N",
    [DIMENSION_TORQUE] = "N m",
    [DIMENSION_MASS] = "kg",
    [DIMENSION_ANGLE] = "radian",
    [DIMENSION_TEMPERATURE] = "tempC",
    [DIMENSION_DURATION] = "s",
    [DIMENSION_SPEED] = "m/s",
    [DIMENSION_ACCELERATION] = "m/s^2",
    [DIMENSION_STIFFNESS] = "N/m",
    [DIMENSION_DENSITY] = "kg/m^3",
    [DIMENSION_VISCOSITY] = "m^2/s",
    [DIMENSION_SWELLING] = "m^3/m",
    [DIMENSION_ENERGY] = "J",
    [DIMENSION_WARMING] = "K",
};

static double asked(const char *from, const char *to)
{
    const char *const words[] = {"units", "-t", "-o", "%.17g", from, to, NULL};
    struct run run = run_program(NULL, words, NULL, 20);
    char *end;
    double value = strtod(run.out, &end);
    if (run.status != 0 || end == run.out || *end != '\n')
        fail_msg("units cannot turn %s into %s: %s", from, to, run.out);
    run_finish(&run);
    return value;
}

static void every_factor_is_that_of_gnu_units(void **state)
{
    (void)state;
    size_t count;
    const struct unit *table = unit_table(&count);
    size_t compared = 0;
    for (size_t i = 0; i < count; i++) {
        if (table[i].dimension == DIMENSION_TEMPERATURE)
            continue;
        double expected = asked(table[i].checked_as, si[table[i].dimension]);
        if (!near_enough(table[i].factor, expected, ROUNDING, true))
            fail_msg("%s is %.17g, GNU units says %.17g", table[i].name, table[i].factor, expected);
        near(table[i].offset, 0, 0);
        compared++;
    }
    assert_int_equal(compared, count - 3);
}

static void every_temperature_scale_is_that_of_gnu_units(void **state)
{
    (void)state;
    size_t count;
    const struct unit *table = unit_table(&count);
    for (size_t i = 0; i < count; i++) {
        if (table[i].dimension != DIMENSION_TEMPERATURE)
            continue;
        for (int number = 0; number <= 500; number += 125) {
            char from[64];
            snprintf(from, sizeof from, "%s(%d)", table[i].checked_as, number);
            near(number * table[i].factor + table[i].offset, asked(from, "tempC"), 2e-13);
        }
    }
}

static void every_row_has_a_source_and_every_kind_its_si_unit(void **state)
{
    (void)state;
    size_t count;
    const struct unit *table = unit_table(&count);
    bool has_si[DIMENSION_COUNT] = {false};
    has_si[DIMENSION_NUMBER] = true;
    has_si[DIMENSION_SHARE] = true;
    for (size_t i = 0; i < count; i++) {
        assert_true(strlen(table[i].source) > 3);
        assert_true(table[i].factor > 0);
        if (table[i].factor == 1 && table[i].offset == 0)
            has_si[table[i].dimension] = true;
    }
    has_si[DIMENSION_SWELLING] = true; /* m3 per m of hose is nobody's unit */
    for (int kind = 0; kind < DIMENSION_COUNT; kind++)
        assert_true(has_si[kind]);
}

static void constants_are_those_of_gnu_units(void **state)
{
    (void)state;
    near_rel(STANDARD_GRAVITY, asked("gravity", "m/s^2"), ROUNDING);
    near_rel(STANDARD_ATMOSPHERE, asked("atm", "Pa"), ROUNDING);
    near_rel(PI, asked("pi", "1"), ROUNDING);
}

static void kinds_have_words_and_list_their_units(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_string_equal(dimension_words(DIMENSION_PRESSURE), "a pressure");
    for (int kind = 0; kind < DIMENSION_COUNT; kind++)
        assert_non_null(dimension_words((enum dimension)kind));
    assert_string_equal(dimension_units(arena, DIMENSION_LENGTH), "mm, cm, m, in, ft");
    assert_string_equal(dimension_units(arena, DIMENSION_NUMBER), "");
    arena_destroy(arena);
}

int main(void)
{
    if (system("units --version >/dev/null 2>&1") != 0) {
        fputs("SKIPPED: the program units is missing; no factor was compared\n", stderr);
        return 77;
    }
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_factor_is_that_of_gnu_units),
        cmocka_unit_test(every_temperature_scale_is_that_of_gnu_units),
        cmocka_unit_test(every_row_has_a_source_and_every_kind_its_si_unit),
        cmocka_unit_test(constants_are_those_of_gnu_units),
        cmocka_unit_test(kinds_have_words_and_list_their_units),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
