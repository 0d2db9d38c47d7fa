#include "input/bind.h"

#include <string.h>

#include "base/text.h"
#include "car_text.h"
#include "support/cmocka_all.h"

/* A section in which every required key of a kind stands, but one perhaps. */
static const char *section_of(struct arena *arena, enum part_kind kind, const struct key *without)
{
    struct text text = text_start(arena);
    const char *name = kind_is_brake(kind) ? "rear left " : "other ";
    text_add(&text, "[%s%s]\nnote = x\n", name, kind_word(kind));
    size_t count;
    const struct key *rows = key_table(kind, &count);
    for (size_t i = 0; i < count; i++) {
        if (!rows[i].required || &rows[i] == without)
            continue;
        bool names = rows[i].form == FORM_PARTS || rows[i].form == FORM_PART;
        text_add(&text, "%s = %s\n", rows[i].name,
                 !names                 ? rows[i].example
                 : kind == KIND_PARKING ? "front disc"
                                        : "brake master");
    }
    return text.items;
}

static int count_of(const struct car_text *car, const char *id)
{
    int count = 0;
    for (size_t i = 0; i < car->messages.count; i++)
        count += strcmp(car->messages.items[i].id, id) == 0;
    return count;
}

static void every_required_key_is_missed_when_it_is_not_there(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    int tried = 0;
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *rows = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++) {
            if (!rows[i].required)
                continue;
            struct car_text car = car_read_more(section_of(arena, (enum part_kind)kind, &rows[i]));
            if (count_of(&car, "missing-key") != 1)
                fail_msg("%s without %s", kind_word((enum part_kind)kind), rows[i].name);
            car_finish(&car);
            car = car_read_more(section_of(arena, (enum part_kind)kind, NULL));
            assert_int_equal(count_of(&car, "missing-key"), 0);
            car_finish(&car);
            tried++;
        }
    }
    assert_true(tried >= 10);
    arena_destroy(arena);
}

static void every_key_given_twice_is_told_of_with_the_first_place(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *rows = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++) {
            const char *name = kind_is_brake((enum part_kind)kind) ? "rear left " : "other ";
            struct car_text car = car_read_more(text_print(
                arena, "[%s%s]\n%s = %s\n%s = %s\n", name, kind_word((enum part_kind)kind),
                rows[i].name, rows[i].example, rows[i].name, rows[i].example));
            if (count_of(&car, "duplicate-key") != 1)
                fail_msg("%s %s", kind_word((enum part_kind)kind), rows[i].name);
            for (size_t j = 0; j < car.messages.count; j++)
                if (strcmp(car.messages.items[j].id, "duplicate-key") == 0)
                    assert_int_equal(car.messages.items[j].earlier.line, 20);
            car_finish(&car);
        }
    }
    arena_destroy(arena);
}

static void other_names_of_keys_are_understood(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[rear left drum]\nshoes = two leading\n"
                                        "bore = 3/4 in\nbleeder screws = 2\nmounted on = axle\n");
    const struct part *drum = car_part(&car, "rear left drum");
    assert_int_equal(drum->fitted.nipples, 2);
    assert_int_equal(drum->fitted.on, MOUNT_REAR_AXLE);
    car_finish(&car);
}

static void a_list_may_go_on_under_its_key_with_a_number(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[bleed order]\norder = front right disc\n"
                                        "order 2 = front left disc, front right disc\n");
    car_part(&car, "front tee");
    assert_int_equal(car.system->own_order.count, 3);
    car_finish(&car);
}

static void a_line_that_was_refused_leaves_no_second_message(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[rear left drum]\nshoes: two leading\nbore 3/4 in\n");
    assert_int_equal(car.messages.count, 2);
    assert_true(car_has(&car, "colon"));
    assert_true(car_has(&car, "no-separator"));
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_required_key_is_missed_when_it_is_not_there),
        cmocka_unit_test(every_key_given_twice_is_told_of_with_the_first_place),
        cmocka_unit_test(other_names_of_keys_are_understood),
        cmocka_unit_test(a_list_may_go_on_under_its_key_with_a_number),
        cmocka_unit_test(a_line_that_was_refused_leaves_no_second_message),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
