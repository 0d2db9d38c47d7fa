#include "units/unit.h"

#include <math.h>
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

static void metric_values_read_as_the_workshop_reads_them(void **state)
{
    const enum unit_system metric = UNITS_METRIC;
    assert_string_equal(unit_text(*state, 0.0222, DIMENSION_LENGTH, metric), "22.2 mm");
    assert_string_equal(unit_text(*state, 0.00035, DIMENSION_LENGTH, metric), "0.35 mm");
    assert_string_equal(unit_text(*state, 0.1234, DIMENSION_LENGTH, metric), "123 mm");
    assert_string_equal(unit_text(*state, 2.9, DIMENSION_LENGTH, metric), "2.90 m");
    assert_string_equal(unit_text(*state, 0.99999, DIMENSION_LENGTH, metric), "1.00 m");
    assert_string_equal(unit_text(*state, 6.04e6, DIMENSION_PRESSURE, metric), "60.4 bar");
    assert_string_equal(unit_text(*state, -8e4, DIMENSION_PRESSURE, metric), "-0.80 bar");
    assert_string_equal(unit_text(*state, 445, DIMENSION_FORCE, metric), "445 N");
    assert_string_equal(unit_text(*state, 12500, DIMENSION_FORCE, metric), "12.5 kN");
    assert_string_equal(unit_text(*state, 1.234e-6, DIMENSION_VOLUME, metric), "1.23 mL");
    assert_string_equal(unit_text(*state, 1.5e-3, DIMENSION_VOLUME, metric), "1.50 L");
    assert_string_equal(unit_text(*state, 0.35, DIMENSION_SHARE, metric), "35 %");
    assert_string_equal(unit_text(*state, 0.035, DIMENSION_SHARE, metric), "3.5 %");
    assert_string_equal(unit_text(*state, 0.38, DIMENSION_NUMBER, metric), "0.38");
    assert_string_equal(unit_text(*state, 4, DIMENSION_NUMBER, metric), "4");
    assert_string_equal(unit_text(*state, 100, DIMENSION_NUMBER, metric), "100");
    assert_string_equal(unit_text(*state, 20, DIMENSION_TEMPERATURE, metric), "20 °C");
    assert_string_equal(unit_text(*state, 900, DIMENSION_DURATION, metric), "15 min");
    assert_string_equal(unit_text(*state, 1000 / 36.0, DIMENSION_SPEED, metric), "100 km/h");
}

/* 3/4 in = 0.75 x 25.4 mm = 19.05 mm; 7/8 in = 22.225 mm. A length that is no size of a tape keeps
 * its three figures. */
static void sizes_of_an_inch_tape_are_known_to_the_hundredth(void **state)
{
    const enum unit_system metric = UNITS_METRIC;
    assert_string_equal(unit_text(*state, 0.75 * 25.4e-3, DIMENSION_LENGTH, metric), "19.05 mm");
    assert_string_equal(unit_text(*state, 0.01905, DIMENSION_LENGTH, metric), "19.05 mm");
    assert_string_equal(unit_text(*state, 13 / 16.0 * 25.4e-3, DIMENSION_LENGTH, metric),
                        "20.64 mm");
    assert_string_equal(unit_text(*state, 25.4e-3, DIMENSION_LENGTH, metric), "25.4 mm");
    assert_string_equal(unit_text(*state, 0.0190, DIMENSION_LENGTH, metric), "19.0 mm");
    assert_string_equal(unit_text(*state, 0.0191, DIMENSION_LENGTH, metric), "19.1 mm");
    assert_string_equal(unit_text(*state, 0.0657, DIMENSION_LENGTH, metric), "65.7 mm");
    assert_string_equal(unit_text(*state, 0, DIMENSION_LENGTH, metric), "0.00 mm");
    assert_string_equal(unit_text(*state, 13, DIMENSION_TORQUE, metric), "13 N m");
    assert_string_equal(unit_text(*state, 7.5, DIMENSION_TORQUE, metric), "7.5 N m");
}

/* 1 in = 25.4 mm, 1 lbf = 4.4482216 N, 1 psi = 6894.757 Pa. */
static void imperial_values_read_as_the_workshop_reads_them(void **state)
{
    const enum unit_system imperial = UNITS_IMPERIAL;
    assert_string_equal(unit_text(*state, 0.0222, DIMENSION_LENGTH, imperial), "0.874 in");
    assert_string_equal(unit_text(*state, 3.048, DIMENSION_LENGTH, imperial), "10.0 ft");
    assert_string_equal(unit_text(*state, 6894757.29, DIMENSION_PRESSURE, imperial), "1000 psi");
    assert_string_equal(unit_text(*state, 444.82216, DIMENSION_FORCE, imperial), "100 lbf");
    assert_string_equal(unit_text(*state, 13.558179, DIMENSION_TORQUE, imperial), "10 lbf ft");
    assert_string_equal(unit_text(*state, 1.1298483, DIMENSION_TORQUE, imperial), "10 lbf in");
    assert_string_equal(unit_text(*state, 20, DIMENSION_TEMPERATURE, imperial), "68 °F");
}

static void what_is_not_known_is_a_question_mark(void **state)
{
    for (int kind = 0; kind < DIMENSION_COUNT; kind++)
        for (int system = UNITS_METRIC; system <= UNITS_IMPERIAL; system++) {
            assert_string_equal(
                unit_text(*state, NAN, (enum dimension)kind, (enum unit_system)system), "?");
            assert_string_equal(
                unit_show(*state, INFINITY, (enum dimension)kind, (enum unit_system)system).number,
                "?");
        }
    assert_string_equal(unit_show_bore(*state, NAN, UNITS_METRIC), "?");
}

static void what_is_shown_reads_back_within_its_digits(void **state)
{
    for (int kind = 0; kind < DIMENSION_COUNT; kind++) {
        /* Temperatures and shares have fewer digits than the three that are asked here. */
        if (kind == DIMENSION_TEMPERATURE || kind == DIMENSION_SHARE || kind == DIMENSION_DURATION)
            continue;
        if (kind == DIMENSION_WARMING) /* shown as K or °F, which are read as temperatures */
            continue;
        for (int system = UNITS_METRIC; system <= UNITS_IMPERIAL; system++) {
            struct arena_mark mark = arena_mark(*state);
            size_t count;
            const struct unit *table = unit_table(&count);
            double size = 1;
            struct shown shown =
                unit_show(*state, size, (enum dimension)kind, (enum unit_system)system);
            for (size_t i = 0; i < count; i++)
                if ((int)table[i].dimension == kind && strcmp(table[i].name, shown.unit) == 0)
                    size = 56.7 * table[i].factor;
            const char *text =
                unit_text(*state, size, (enum dimension)kind, (enum unit_system)system);
            struct reading reading = unit_read(text, (enum dimension)kind);
            assert_int_equal(reading.outcome, READING_FINE);
            near_rel(reading.value, size, 5e-3);
            arena_release(*state, mark);
        }
    }
}

static void bores_have_their_fraction_beside(void **state)
{
    /* 7/8 in = 22.225 mm; 0.02 mm beside still counts, 0.025 mm does not. */
    assert_string_equal(unit_show_bore(*state, 0.022225, UNITS_METRIC), "22.23 mm (7/8 in)");
    assert_string_equal(unit_show_bore(*state, 0.02221, UNITS_IMPERIAL), "22.21 mm (7/8 in)");
    assert_string_equal(unit_show_bore(*state, 0.0222, UNITS_METRIC), "22.20 mm");
    assert_string_equal(unit_show_bore(*state, 0.0222, UNITS_IMPERIAL), "22.20 mm (0.874 in)");
    assert_string_equal(unit_show_bore(*state, 0.01905, UNITS_METRIC), "19.05 mm (3/4 in)");
    assert_string_equal(unit_show_bore(*state, 0.0254, UNITS_METRIC), "25.40 mm (1 in)");
    assert_string_equal(unit_show_bore(*state, 0.0269875, UNITS_METRIC), "26.99 mm (1-1/16 in)");
    assert_string_equal(unit_show_bore(*state, 0.0381, UNITS_METRIC), "38.10 mm (1-1/2 in)");
    assert_string_equal(unit_show_bore(*state, 0.048, UNITS_METRIC), "48.00 mm");
}

static void sizes_that_make_no_sense_are_survived(void **state)
{
    unit_show_bore(*state, -1, UNITS_METRIC);
    unit_show_bore(*state, 0, UNITS_METRIC);
    unit_show_bore(*state, 1e300, UNITS_IMPERIAL);
    unit_show_bore(*state, INFINITY, UNITS_IMPERIAL);
    unit_text(*state, 1e308, DIMENSION_LENGTH, UNITS_METRIC);
    assert_string_equal(unit_text(*state, 0, DIMENSION_LENGTH, UNITS_METRIC), "0.00 mm");
    assert_string_equal(unit_text(*state, -1e-9, DIMENSION_LENGTH, UNITS_METRIC), "0.00 mm");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(metric_values_read_as_the_workshop_reads_them, start,
                                        finish),
        cmocka_unit_test_setup_teardown(sizes_of_an_inch_tape_are_known_to_the_hundredth, start,
                                        finish),
        cmocka_unit_test_setup_teardown(imperial_values_read_as_the_workshop_reads_them, start,
                                        finish),
        cmocka_unit_test_setup_teardown(what_is_not_known_is_a_question_mark, start, finish),
        cmocka_unit_test_setup_teardown(what_is_shown_reads_back_within_its_digits, start, finish),
        cmocka_unit_test_setup_teardown(bores_have_their_fraction_beside, start, finish),
        cmocka_unit_test_setup_teardown(sizes_that_make_no_sense_are_survived, start, finish),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
