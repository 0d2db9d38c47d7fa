#include "network/plumbing.h"

#include <string.h>

#include "support/cmocka_all.h"

static void every_mistake_has_an_id_of_its_own_and_words(void **state)
{
    (void)state;
    size_t count;
    const struct plumbing_row *rows = plumbing_rows(&count);
    assert_int_equal(count, PLUMBING_COUNT);
    for (size_t i = 0; i < count; i++) {
        assert_true(strlen(rows[i].id) > 0 && strlen(rows[i].what) > 0);
        for (size_t k = 0; k < i; k++)
            assert_string_not_equal(rows[i].id, rows[k].id);
    }
}

static void only_a_loop_leaves_the_description_usable(void **state)
{
    (void)state;
    size_t count;
    const struct plumbing_row *rows = plumbing_rows(&count);
    for (size_t i = 0; i < count; i++)
        assert_int_equal(rows[i].severity, i == PLUMBING_LOOP ? SEVERITY_WARNING : SEVERITY_DANGER);
}

static void a_message_carries_id_place_words_and_advice(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    plumbing_say(&messages, PLUMBING_LOOSE_END, (struct place){"car.ini", 7, 3}, "do this",
                 "the %s has %d ends", "rear pipe", 2);
    assert_int_equal(messages.count, 1);
    assert_string_equal(messages.items[0].id, "loose-end");
    assert_int_equal(messages.items[0].place.line, 7);
    assert_string_equal(messages.items[0].words, "the rear pipe has 2 ends");
    assert_string_equal(messages.items[0].mend, "do this");
    plumbing_say(NULL, PLUMBING_LOOP, (struct place){0}, NULL, "nobody hears this");
    assert_int_equal(messages.count, 1);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_mistake_has_an_id_of_its_own_and_words),
        cmocka_unit_test(only_a_loop_leaves_the_description_usable),
        cmocka_unit_test(a_message_carries_id_place_words_and_advice),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
