#include "input/value.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "car_text.h"
#include "support/near.h"

struct read {
    struct arena *arena;
    struct messages messages;
    struct part part;
    struct origin origin;
    bool fine;
};

static struct read read_value(enum part_kind kind, const char *name, const char *value)
{
    struct read read = {.arena = arena_create(), .origin = {.tolerance = NAN}};
    read.messages = messages_start(read.arena);
    struct input input = {read.arena, &read.messages, "car.ini"};
    part_blank(&read.part, kind, read.arena);
    const struct key *key = key_find(kind, name);
    assert_non_null(key);
    struct entry entry = {.key = {.text = name}, .value = {value, value, {"car.ini", 1, 1}}};
    read.fine = value_read(key, &entry, &read.part, &read.origin, &input);
    input.messages = NULL;
    return read;
}

static void a_bore_in_inches_is_read_as_metres(void **state)
{
    (void)state;
    struct read read = read_value(KIND_MASTER, "bore", "13/16 in");
    assert_true(read.fine);
    near(read.part.as.master.bore.m, 0.0254 * 13 / 16, 1e-15);
    assert_int_equal(read.origin.kind, ORIGIN_GIVEN);
    assert_string_equal(read.origin.text, "13/16 in");
    near_unknown(read.origin.tolerance);
    arena_destroy(read.arena);
}

static void a_tolerance_is_kept(void **state)
{
    (void)state;
    struct read read = read_value(KIND_MASTER, "bore", "19.05 mm ± 0.05 mm");
    assert_true(read.fine);
    near(read.part.as.master.bore.m, 0.01905, 1e-12);
    near(read.origin.tolerance, 5e-5, 1e-12);
    arena_destroy(read.arena);
}

static void about_is_a_fifth_up_or_down(void **state)
{
    (void)state;
    struct read read = read_value(KIND_PIPE, "length", "about 2.5 m");
    assert_true(read.fine);
    near(read.part.as.pipe.length.m, 2.5, 1e-12);
    near(read.origin.tolerance, 0.5, 1e-12);
    arena_destroy(read.arena);
}

static void a_question_mark_is_asked_and_not_said(void **state)
{
    (void)state;
    struct read read = read_value(KIND_MASTER, "bore", "?");
    assert_true(read.fine);
    near_unknown(read.part.as.master.bore.m);
    assert_int_equal(read.origin.kind, ORIGIN_ASKED);
    arena_destroy(read.arena);
}

static void pistons_are_counted_with_their_bore(void **state)
{
    (void)state;
    struct read read = read_value(KIND_DISC, "bore", "2 of 48 mm");
    assert_true(read.fine);
    assert_int_equal(read.part.as.disc.bores.count, 2);
    near(read.part.as.disc.bores.bore.m, 0.048, 1e-12);
    arena_destroy(read.arena);
    read = read_value(KIND_DISC, "bore", "48 mm");
    assert_true(read.fine);
    assert_int_equal(read.part.as.disc.bores.count, 1);
    arena_destroy(read.arena);
    static const char *const bad[] = {"0 of 48 mm", "13 of 48 mm", "of 48 mm", "2 of ",
                                      "-2 of 4 mm"};
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        read = read_value(KIND_DISC, "bore", bad[i]);
        assert_false(read.fine);
        assert_int_equal(read.messages.count, 1);
        arena_destroy(read.arena);
    }
}

static void choices_are_found_by_other_words_and_without_hyphens(void **state)
{
    (void)state;
    static const char *const words[] = {"self-adjusting", "Self adjusting", "selfadjusting"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        struct read read = read_value(KIND_DRUM, "adjuster", words[i]);
        assert_true(read.fine);
        assert_int_equal(read.part.as.drum.adjuster, ADJUSTER_SELF);
        arena_destroy(read.arena);
    }
}

static void dates_are_days_months_or_years(void **state)
{
    (void)state;
    struct read read = read_value(KIND_HOSE, "renewed", "2008");
    assert_true(read.fine);
    assert_int_equal(read.part.as.hose.renewed.year, 2008);
    assert_int_equal(read.part.as.hose.renewed.month, 0);
    arena_destroy(read.arena);
    read = read_value(KIND_HOSE, "renewed", "14.3.2008");
    assert_false(read.fine);
    assert_string_equal(read.messages.items[0].id, "not-a-date");
    arena_destroy(read.arena);
}

static void lists_are_split_at_commas(void **state)
{
    (void)state;
    struct read read = read_value(KIND_MASTER, "primary outlets", "front  left,rear right");
    assert_true(read.fine);
    const struct part_names *names = &read.part.as.master.primary_outlets;
    assert_int_equal(names->count, 2);
    assert_string_equal(names->names[0], "front left");
    assert_string_equal(names->names[1], "rear right");
    arena_destroy(read.arena);
}

static void none_is_a_count_of_nought(void **state)
{
    (void)state;
    struct read read = read_value(KIND_DRUM, "nipples", "none");
    assert_true(read.fine);
    assert_int_equal(read.part.fitted.nipples, 0);
    arena_destroy(read.arena);
}

/* A value of another kind of quantity than the row's. */
static const char *wrong_value(const struct key *key)
{
    return key->dimension == DIMENSION_PRESSURE ? "20 kg" : "20 bar";
}

static void expect_one(enum part_kind kind, const struct key *key, const char *value,
                       const char *id)
{
    struct read read = read_value(kind, key->name, value);
    if (read.messages.count != 1 || strcmp(read.messages.items[0].id, id) != 0)
        fail_msg("%s %s = %s: %zu messages, %s", kind_word(kind), key->name, value,
                 read.messages.count, read.messages.count > 0 ? read.messages.items[0].id : "none");
    arena_destroy(read.arena);
}

/* A value just outside a limit, in the unit of the dimension's first row that has factor 1. */
static void try_limits(enum part_kind kind, const struct key *key)
{
    struct arena *arena = arena_create();
    for (int high = 0; high < 2; high++) {
        double limit = high ? key->most : key->least;
        if (isnan(limit) || key->form != FORM_QUANTITY)
            continue;
        static const char *const units[DIMENSION_COUNT] = {
            [DIMENSION_LENGTH] = " m",      [DIMENSION_VOLUME] = " m3",
            [DIMENSION_PRESSURE] = " Pa",   [DIMENSION_FORCE] = " N",
            [DIMENSION_MASS] = " kg",       [DIMENSION_ANGLE] = " rad",
            [DIMENSION_STIFFNESS] = " N/m", [DIMENSION_TEMPERATURE] = " degC"};
        const char *unit = units[key->dimension];
        if (!unit && key->dimension != DIMENSION_NUMBER)
            continue;
        double outside = limit + (high ? 1 : -1) * (fabs(limit) * 0.01 + 1e-9);
        expect_one(kind, key, text_print(arena, "%.15g%s", outside, unit ? unit : ""),
                   "outside-limits");
    }
    arena_destroy(arena);
}

static void
every_quantity_of_every_kind_refuses_wrong_units_bare_numbers_and_its_limits(void **state)
{
    (void)state;
    int tried = 0;
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *rows = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++) {
            const struct key *key = &rows[i];
            if (key->form != FORM_QUANTITY && key->form != FORM_BORES)
                continue;
            tried++;
            bool plain = key->dimension == DIMENSION_NUMBER;
            expect_one((enum part_kind)kind, key, "large", "not-a-number");
            expect_one((enum part_kind)kind, key, wrong_value(key), "wrong-unit");
            if (!plain)
                expect_one((enum part_kind)kind, key, "20", "bare-number");
            try_limits((enum part_kind)kind, key);
        }
    }
    assert_true(tried > 80);
}

static void every_example_of_every_kind_is_read_without_a_word(void **state)
{
    (void)state;
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *rows = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++) {
            struct read read = read_value((enum part_kind)kind, rows[i].name, rows[i].example);
            if (!read.fine || read.messages.count > 0)
                fail_msg("%s %s = %s", kind_word((enum part_kind)kind), rows[i].name,
                         rows[i].example);
            arena_destroy(read.arena);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_bore_in_inches_is_read_as_metres),
        cmocka_unit_test(a_tolerance_is_kept),
        cmocka_unit_test(about_is_a_fifth_up_or_down),
        cmocka_unit_test(a_question_mark_is_asked_and_not_said),
        cmocka_unit_test(pistons_are_counted_with_their_bore),
        cmocka_unit_test(choices_are_found_by_other_words_and_without_hyphens),
        cmocka_unit_test(dates_are_days_months_or_years),
        cmocka_unit_test(lists_are_split_at_commas),
        cmocka_unit_test(none_is_a_count_of_nought),
        cmocka_unit_test(
            every_quantity_of_every_kind_refuses_wrong_units_bare_numbers_and_its_limits),
        cmocka_unit_test(every_example_of_every_kind_is_read_without_a_word),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
