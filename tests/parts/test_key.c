#include "parts/keys/key.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "parts/words.h"
#include "support/cmocka_all.h"
#include "support/near.h"
#include "units/unit.h"

/* A visit to every row of every kind. */
typedef void visit(enum part_kind kind, const struct key *key);

static void each_row(visit *check)
{
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *rows = key_table((enum part_kind)kind, &count);
        assert_true(count > 0);
        for (size_t i = 0; i < count; i++)
            check((enum part_kind)kind, &rows[i]);
    }
}

static void fail_row(enum part_kind kind, const struct key *key, const char *what)
{
    fail_msg("[%s] %s: %s", kind_word(kind), key->name, what);
}

static void check_words(enum part_kind kind, const struct key *key)
{
    if (key->help == NULL || key->help[0] == '\0' || strlen(key->help) > 88)
        fail_row(kind, key, "help is missing or long");
    if (key->example == NULL || key->example[0] == '\0')
        fail_row(kind, key, "no example");
    if (strpbrk(key->name, ",=[];.") != NULL)
        fail_row(kind, key, "a name with signs that mean something in the file");
}

static void every_row_has_help_and_an_example(void **state)
{
    (void)state;
    each_row(check_words);
}

/* The value of a quantity's example, read as its own dimension. */
static double example_value(enum part_kind kind, const struct key *key)
{
    const char *text = key->example;
    int pistons;
    if (key->form == FORM_BORES) {
        const char *of = strstr(text, " of ");
        if (of == NULL || sscanf(text, "%d", &pistons) != 1 || pistons < 1)
            fail_row(kind, key, "the example has no count of pistons");
        text = of + 4;
    }
    struct reading reading = unit_read(text, key->dimension);
    if (reading.outcome != READING_FINE)
        fail_row(kind, key, "the example is not of its dimension");
    return reading.value;
}

static void check_example(enum part_kind kind, const struct key *key)
{
    double value = NAN;
    struct date date;
    switch (key->form) {
    case FORM_QUANTITY:
    case FORM_BORES:
        value = example_value(kind, key);
        break;
    case FORM_COUNT:
        value = atof(key->example);
        break;
    case FORM_CHOICE:
        if (choice_find(key, key->example) == NULL)
            fail_row(kind, key, "the example is none of the choices");
        return;
    case FORM_DATE:
        if (!date_read(key->example, &date))
            fail_row(kind, key, "the example is no date");
        return;
    case FORM_TEXT:
    case FORM_PART:
    case FORM_PARTS:
    case FORM_WORDS:
        return;
    }
    if (value < key->least || value > key->most)
        fail_row(kind, key, "the example is outside the limits");
    if (value < key->usual_least || value > key->usual_most)
        fail_row(kind, key, "the example is unusual");
}

static void every_example_reads_and_lies_within_the_limits(void **state)
{
    (void)state;
    each_row(check_example);
}

static void check_limits(enum part_kind kind, const struct key *key)
{
    bool measure = key->form == FORM_QUANTITY || key->form == FORM_COUNT || key->form == FORM_BORES;
    if (measure && !(key->least <= key->most))
        fail_row(kind, key, "a number without limits");
    if (key->usual_least < key->least || key->usual_most > key->most)
        fail_row(kind, key, "the usual range leaves the limits");
    if (key->form == FORM_BORES && !(key->least > 0))
        fail_row(kind, key, "a bore of nothing");
}

static void every_number_has_limits_and_its_usual_range_lies_within(void **state)
{
    (void)state;
    each_row(check_limits);
}

static void check_assumed(enum part_kind kind, const struct key *key)
{
    bool assumes = !isnan(key->assumed) || key->assume_by != NULL;
    if (assumes != (key->assumed_source != NULL))
        fail_row(kind, key, "a typical value and its source do not go together");
    if (assumes && key->required)
        fail_row(kind, key, "required, yet assumed");
    if (assumes && strstr(key->assumed_source, "no source") == NULL &&
        strstr(key->assumed_source, "from memory") == NULL &&
        strstr(key->assumed_source, "quoted") == NULL &&
        strstr(key->assumed_source, "from its name") == NULL)
        fail_row(kind, key, "a typical value without a source");
    if (key->form == FORM_CHOICE && !isnan(key->assumed) &&
        choice_of_value(key, (int)key->assumed) == NULL)
        fail_row(kind, key, "the typical value is none of the choices");
    if (key->assumed < key->least || key->assumed > key->most || key->assumed < key->usual_least ||
        key->assumed > key->usual_most)
        fail_row(kind, key, "the typical value is not usual");
}

static void every_assumed_value_is_usual_and_has_a_source(void **state)
{
    (void)state;
    each_row(check_assumed);
}

static void check_choices(enum part_kind kind, const struct key *key)
{
    if ((key->form == FORM_CHOICE) != (key->choices != NULL))
        fail_row(kind, key, "choices and form do not go together");
    for (const struct choice *choice = key->choices; choice != NULL && choice->word; choice++) {
        if (choice->value == 0 || choice->help == NULL)
            fail_row(kind, key, "a choice without value or help");
        if (choice_find(key, choice->word) != choice ||
            choice_of_value(key, choice->value) != choice)
            fail_row(kind, key, "a choice that cannot be found");
        size_t length;
        const char *others = choice->others;
        for (const char *item; (item = words_next(&others, &length)) != NULL;) {
            char word[64];
            snprintf(word, sizeof word, "%.*s", (int)length, item);
            if (choice_find(key, word) != choice)
                fail_row(kind, key, "another word leads to another choice");
        }
    }
}

static void every_choice_is_found_by_each_of_its_words(void **state)
{
    (void)state;
    each_row(check_choices);
}

static void check_found(enum part_kind kind, const struct key *key)
{
    char name[64];
    const char *others = key->others;
    size_t length;
    if (key_find(kind, key->name) != key || key_of(kind, key->field) != key)
        fail_row(kind, key, "not found by its name or its field");
    for (const char *item; (item = words_next(&others, &length)) != NULL;) {
        snprintf(name, sizeof name, "%.*s", (int)length, item);
        if (key_find(kind, name) != key)
            fail_row(kind, key, "another name leads to another row");
    }
}

static void every_row_is_found_by_each_of_its_names_and_by_its_field(void **state)
{
    (void)state;
    each_row(check_found);
}

static void blanks_hyphens_and_case_of_a_name_do_not_matter(void **state)
{
    (void)state;
    const struct key *key = key_find(KIND_PEDAL, "pad to pivot");
    assert_non_null(key);
    assert_ptr_equal(key_find(KIND_PEDAL, "Pad-To  Pivot"), key);
    assert_ptr_equal(key_find(KIND_PEDAL, "padtopivot"), key);
    assert_null(key_find(KIND_PEDAL, "pad to pivo"));
    assert_null(key_find(KIND_PEDAL, ""));
}

static void american_words_are_understood(void **state)
{
    (void)state;
    assert_string_equal(key_find(KIND_DRUM, "bleeder screws")->name, "nipples");
    assert_string_equal(key_find(KIND_DISC, "rotor diameter")->name, "disc diameter");
    assert_string_equal(key_find(KIND_VEHICLE, "front tire radius")->name, "front tyre radius");
    assert_int_equal(choice_find(key_find(KIND_VALVE, "type"), "metering")->value, VALVE_HOLD_OFF);
    assert_int_equal(choice_find(key_find(KIND_DISC, "caliper"), "floating")->value,
                     CALIPER_SLIDING);
}

static void a_blank_part_says_nothing(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        struct part part;
        size_t count;
        part_blank(&part, (enum part_kind)kind, arena);
        const struct key *rows = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++) {
            assert_false(key_said(&part, &rows[i]));
            assert_int_equal(part.origins[i].kind, ORIGIN_NONE);
            assert_true(isnan(part.origins[i].tolerance));
        }
    }
    arena_destroy(arena);
}

static void check_text(enum part_kind kind, const struct key *key)
{
    if (key->form != FORM_TEXT)
        return;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, kind, arena);
    assert_false(key_said(&part, key));
    const char *text = "said";
    memcpy((char *)&part + key->field, &text, sizeof text);
    assert_true(key_said(&part, key));
    arena_destroy(arena);
}

static void a_text_is_said_once_it_is_there(void **state)
{
    (void)state;
    each_row(check_text);
}

/* All quantities of a kind's struct are doubles, so a field that no row blanks would be 0 there. */
static void no_quantity_of_a_blank_part_is_left_at_zero(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_DISC, arena);
    assert_true(isnan(part.as.disc.pad_left.m) && isnan(part.as.disc.second_bores.bore.m));
    part_blank(&part, KIND_DRUM, arena);
    assert_true(isnan(part.as.drum.give.m) && isnan(part.as.drum.lining_start.rad));
    part_blank(&part, KIND_JOINT, arena);
    assert_true(isnan(part.fitted.chamber.m3) && part.fitted.nipples == -1);
    part_blank(&part, KIND_FLUID, arena);
    assert_true(isnan(part.fitted.height.m) && part.fitted.nipples == -1);
    arena_destroy(arena);
}

static void check_round_trip(enum part_kind kind, const struct key *key)
{
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, kind, arena);
    double value = 7;
    if (key->form == FORM_CHOICE)
        value = key->choices[0].value;
    if (key->form == FORM_QUANTITY || key->form == FORM_BORES)
        value = 0.8125;
    key_set(&part, key, value);
    bool numeric = key->form != FORM_TEXT && key->form != FORM_DATE && key->form != FORM_PARTS &&
                   key->form != FORM_WORDS;
    if (numeric != (key_value(&part, key) == value) || numeric != key_said(&part, key))
        fail_row(kind, key, "what was set does not come back");
    size_t count;
    const struct key *rows = key_table(kind, &count);
    for (size_t i = 0; i < count; i++)
        if (&rows[i] != key && key_said(&part, &rows[i]))
            fail_row(kind, key, "setting it sets another");
    key_set(&part, key, NAN);
    if (key_said(&part, key))
        fail_row(kind, key, "cannot be unset");
    arena_destroy(arena);
}

static void what_is_set_by_a_row_comes_back_and_touches_no_other(void **state)
{
    (void)state;
    each_row(check_round_trip);
}

static void setting_a_caliper_s_bore_keeps_its_count(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_DISC, arena);
    part.as.disc.bores = (struct bores){4, {0.038}};
    key_set(&part, key_of(KIND_DISC, FIELD(as.disc.bores)), 0.041);
    assert_int_equal(part.as.disc.bores.count, 4);
    assert_true(part.as.disc.bores.bore.m == 0.041);
    arena_destroy(arena);
}

static struct part assumed_part(enum part_kind kind, struct arena *arena)
{
    struct part part;
    part_blank(&part, kind, arena);
    part_assume(&part);
    return part;
}

static void assuming_keeps_what_is_given_and_marks_the_rest(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_DISC, arena);
    part.as.disc.friction.value = 0.42;
    part.origins[key_index(KIND_DISC, key_find(KIND_DISC, "friction"))].kind = ORIGIN_GIVEN;
    part_assume(&part);
    assert_true(part.as.disc.friction.value == 0.42);
    assert_int_equal(part_origin(&part, FIELD(as.disc.friction))->kind, ORIGIN_GIVEN);
    assert_int_equal(part_origin(&part, FIELD(as.disc.efficiency))->kind, ORIGIN_ASSUMED);
    assert_int_equal(part_origin(&part, FIELD(as.disc.run_out))->kind, ORIGIN_NONE);
    assert_true(isnan(part.as.disc.run_out.m));
    assert_int_equal(part.fitted.nipples, 1);
    arena_destroy(arena);
}

static void a_shoe_s_arms_are_assumed_from_the_drum(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part = assumed_part(KIND_DRUM, arena);
    assert_true(isnan(part.as.drum.pin_distance.m));
    assert_int_equal(part_origin(&part, FIELD(as.drum.pin_distance))->kind, ORIGIN_NONE);
    part_blank(&part, KIND_DRUM, arena);
    part.as.drum.diameter.m = 0.200;
    part_assume(&part);
    /* 0.8 of a radius of 100 mm */
    near(part.as.drum.pin_distance.m, 0.080, 1e-12);
    near(part.as.drum.tip_distance.m, 0.080, 1e-12);
    assert_int_equal(part_origin(&part, FIELD(as.drum.tip_distance))->kind, ORIGIN_ASSUMED);
    assert_true(isnan(part.as.drum.lining_start.rad));
    arena_destroy(arena);
}

static void with_pins_the_lining_is_assumed_midway(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_DRUM, arena);
    part.as.drum.anchor = ANCHOR_PIN;
    part_assume(&part);
    /* (180 - 110) / 2 = 35 degrees */
    near(part.as.drum.lining_start.rad, 35 * 3.14159265358979 / 180, 1e-9);
    arena_destroy(arena);
}

static void what_has_no_meaning_for_a_part_is_not_assumed(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_SERVO, arena);
    part.as.servo.type = SERVO_REMOTE;
    part_assume(&part);
    assert_true(isnan(part.as.servo.cut_in.n));
    near(part.as.servo.line_cut_in.pa, 4e5, 1e-9);
    assert_int_equal(part.as.servo.passes, YES);
    part_blank(&part, KIND_SERVO, arena);
    part.as.servo.type = SERVO_DIRECT;
    part_assume(&part);
    near(part.as.servo.cut_in.n, 40, 1e-9);
    assert_true(isnan(part.as.servo.line_cut_in.pa));
    assert_int_equal(part.as.servo.passes, YES_NO_NOT_SAID);
    part_blank(&part, KIND_VALVE, arena);
    part.as.valve.type = VALVE_LIMITING;
    part_assume(&part);
    assert_true(isnan(part.as.valve.slope.value));
    assert_false(key_applies(&part, key_find(KIND_VALVE, "slope")));
    assert_true(key_applies(&part, key_find(KIND_VALVE, "limit")));
    arena_destroy(arena);
}

static void a_pedal_is_assumed_by_who_works_it(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part = assumed_part(KIND_PEDAL, arena);
    near(part.as.pedal.effort.n, 300, 1e-9);
    near_unknown(part.as.pedal.free_play.m);
    part_blank(&part, KIND_PEDAL, arena);
    part.as.pedal.type = PEDAL_HAND;
    part_assume(&part);
    near(part.as.pedal.effort.n, 130, 1e-9);
    near_unknown(part.as.pedal.free_play.m);
    arena_destroy(arena);
}

static void a_tandem_master_is_assumed_to_share_its_stroke(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_MASTER, arena);
    part.as.master.type = MASTER_TANDEM;
    part.as.master.stroke.m = 34e-3;
    part_assume(&part);
    near(part.as.master.primary_stroke.m, 17e-3, 1e-12);
    near(part.as.master.primary_spring.n, 120, 1e-12);
    near(part.as.master.secondary_spring.n, 70, 1e-12);
    part_blank(&part, KIND_MASTER, arena);
    part.as.master.type = MASTER_SINGLE;
    part.as.master.bore.m = 16e-3; /* 201.062 mm2, times 0.2 MPa */
    part.as.master.stroke.m = 34e-3;
    part_assume(&part);
    assert_true(isnan(part.as.master.secondary_stroke.m));
    near(part.as.master.primary_spring.n, 40.2124, 1e-4);
    arena_destroy(arena);
}

static void what_was_asked_for_keeps_its_mark_when_it_is_assumed(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_PIPE, arena);
    struct origin *origin = &part.origins[key_index(KIND_PIPE, key_find(KIND_PIPE, "size"))];
    *origin = (struct origin){ORIGIN_ASKED, {"car.ini", 4, 8}, "?", NAN};
    part_assume(&part);
    assert_int_equal(origin->kind, ORIGIN_ASSUMED);
    assert_string_equal(origin->text, "?");
    assert_int_equal(origin->place.line, 4);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_row_has_help_and_an_example),
        cmocka_unit_test(every_example_reads_and_lies_within_the_limits),
        cmocka_unit_test(every_number_has_limits_and_its_usual_range_lies_within),
        cmocka_unit_test(every_assumed_value_is_usual_and_has_a_source),
        cmocka_unit_test(every_choice_is_found_by_each_of_its_words),
        cmocka_unit_test(every_row_is_found_by_each_of_its_names_and_by_its_field),
        cmocka_unit_test(blanks_hyphens_and_case_of_a_name_do_not_matter),
        cmocka_unit_test(american_words_are_understood),
        cmocka_unit_test(a_blank_part_says_nothing),
        cmocka_unit_test(a_text_is_said_once_it_is_there),
        cmocka_unit_test(no_quantity_of_a_blank_part_is_left_at_zero),
        cmocka_unit_test(what_is_set_by_a_row_comes_back_and_touches_no_other),
        cmocka_unit_test(setting_a_caliper_s_bore_keeps_its_count),
        cmocka_unit_test(assuming_keeps_what_is_given_and_marks_the_rest),
        cmocka_unit_test(a_shoe_s_arms_are_assumed_from_the_drum),
        cmocka_unit_test(with_pins_the_lining_is_assumed_midway),
        cmocka_unit_test(what_has_no_meaning_for_a_part_is_not_assumed),
        cmocka_unit_test(a_pedal_is_assumed_by_who_works_it),
        cmocka_unit_test(a_tandem_master_is_assumed_to_share_its_stroke),
        cmocka_unit_test(what_was_asked_for_keeps_its_mark_when_it_is_assumed),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
