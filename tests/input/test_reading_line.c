#include "input/reading_line.h"

#include <stdio.h>

#include "support/near.h"

static struct taken_reading read_line(const char *key, const char *value)
{
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    struct input input = {arena, &messages, "work.ini"};
    struct entry entry = {{key, key, {"work.ini", 7, 1}}, {value, value, {"work.ini", 7, 20}}};
    static char kept[2][64];
    struct taken_reading reading = {0};
    bool fine = reading_line_read(&entry, &reading, &input);
    assert_true(fine);
    assert_int_equal(messages.count, 0);
    snprintf(kept[0], sizeof kept[0], "%s", reading.figure);
    snprintf(kept[1], sizeof kept[1], "%s", reading.of ? reading.of : "");
    reading.figure = kept[0];
    reading.of = reading.of ? kept[1] : NULL;
    arena_destroy(arena);
    return reading;
}

static void a_figure_is_its_words_with_hyphens(void **state)
{
    (void)state;
    struct taken_reading reading = read_line("Pedal  travel", "66 mm");
    assert_string_equal(reading.figure, "pedal-travel");
    assert_null(reading.of);
    assert_int_equal(reading.dimension, DIMENSION_LENGTH);
    near(reading.value, 0.066, 1e-12);
    near_unknown(reading.effort.n);
    assert_int_equal(reading.place.line, 7);
}

static void what_it_is_of_and_the_effort_may_follow(void **state)
{
    (void)state;
    struct taken_reading reading = read_line("line pressure of front circuit", "60 bar at 300 N");
    assert_string_equal(reading.figure, "line-pressure");
    assert_string_equal(reading.of, "front circuit");
    assert_int_equal(reading.dimension, DIMENSION_PRESSURE);
    near(reading.value, 60e5, 1e-6);
    near(reading.effort.n, 300, 1e-9);
}

static void a_number_without_unit_is_a_number(void **state)
{
    (void)state;
    struct taken_reading reading = read_line("clicks", "6");
    assert_int_equal(reading.dimension, DIMENSION_NUMBER);
    near(reading.value, 6, 1e-12);
    reading = read_line("brake balance", "35 %");
    assert_int_equal(reading.dimension, DIMENSION_SHARE);
    near(reading.value, 0.35, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_figure_is_its_words_with_hyphens),
        cmocka_unit_test(what_it_is_of_and_the_effort_may_follow),
        cmocka_unit_test(a_number_without_unit_is_a_number),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
