#include "asking/asking.h"

#include <string.h>

#include "support/cmocka_all.h"

static enum asking_turn say(struct asking *asking, struct arena *arena, const char *answer)
{
    struct text into = text_start(arena);
    struct messages messages = messages_start(arena);
    const char *name = NULL;
    return asking_answer(asking, answer, &into, &messages, &name);
}

static const char *asks(struct asking *asking, struct arena *arena)
{
    struct text into = text_start(arena);
    asking_question(asking, &into);
    return into.items;
}

/* The drums car with all of its kind said. */
static struct asking *begun(struct arena *arena)
{
    struct text trouble = text_start(arena);
    picks said = 0;
    assert_true(picks_read(&trouble, "drums, right", &said));
    struct asking *asking = asking_start(picks_with_usual(said), 40, arena);
    assert_non_null(asking_text(asking));
    return asking;
}

static void the_kind_comes_first_and_back_undoes_it(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct asking *asking = asking_start(0, 40, arena);
    assert_non_null(strstr(asks(asking, arena), "What is it?"));
    assert_int_equal(say(asking, arena, "2"), ASKING_GOES_ON);
    assert_string_equal(asking_kind(asking), "motorcycle");
    say(asking, arena, "back");
    assert_string_equal(asking_kind(asking), "");
    say(asking, arena, "motorcycle, single front disc, rear brake without fluid");
    assert_null(asking_text(asking));
    say(asking, arena, "");
    assert_non_null(asking_text(asking));
    say(asking, arena, "back");
    assert_null(asking_text(asking));
    arena_destroy(arena);
}

/* Back to the very first, however far it went. */
static void back_takes_each_answer_back(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct asking *asking = begun(arena);
    const char *first = asking_text(asking);
    static const char *const answers[] = {"Van", "", "2", "", "3", "", "", "", ""};
    size_t count = sizeof answers / sizeof *answers;
    for (size_t i = 0; i < count; i++)
        say(asking, arena, answers[i]);
    assert_non_null(strstr(asking_text(asking), "title = Van"));
    for (size_t i = 0; i < count; i++)
        say(asking, arena, "back");
    assert_string_equal(asking_text(asking), first);
    say(asking, arena, "back");
    assert_string_equal(asking_text(asking), first);
    arena_destroy(arena);
}

static void a_refused_answer_changes_nothing(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct asking *asking = begun(arena);
    for (int i = 0; i < 5; i++)
        say(asking, arena, "");
    const char *before = asking_text(asking);
    struct text into = text_start(arena);
    struct messages messages = messages_start(arena);
    const char *name = NULL;
    asking_answer(asking, "290", &into, &messages, &name);
    assert_int_equal(messages.count, 1);
    assert_string_equal(messages.items[0].id, "bare-number");
    assert_string_equal(asking_text(asking), before);
    arena_destroy(arena);
}

static void after_a_dozen_values_it_is_time_to_show(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct asking *asking = begun(arena);
    int values = 0;
    enum asking_turn turn = ASKING_GOES_ON;
    for (int i = 0; i < 40 && turn == ASKING_GOES_ON; i++) {
        const char *question = asks(asking, arena);
        const char *as = strstr(question, "as: ");
        /* The example of each. */
        const char *answer =
            as != NULL ? text_copy_part(arena, as + 4, strcspn(as + 4, ";\n")) : "1";
        turn = say(asking, arena, answer);
        values++;
    }
    assert_int_equal(turn, ASKING_SHOWS);
    assert_int_equal(values, 12);
    arena_destroy(arena);
}

static void words_that_are_no_answer(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct asking *asking = begun(arena);
    struct text into = text_start(arena);
    struct messages messages = messages_start(arena);
    const char *name = NULL;
    assert_int_equal(say(asking, arena, " SHOW "), ASKING_SHOWS);
    assert_int_equal(say(asking, arena, "drop"), ASKING_DROPS);
    assert_int_equal(say(asking, arena, "leave"), ASKING_LEAVES);
    assert_int_equal(asking_answer(asking, "leave  other.ini", &into, &messages, &name),
                     ASKING_LEAVES);
    assert_string_equal(name, "other.ini");
    assert_int_equal(say(asking, arena, "explain"), ASKING_GOES_ON);
    assert_null(strstr(asking_text(asking), "explain"));
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_kind_comes_first_and_back_undoes_it),
        cmocka_unit_test(back_takes_each_answer_back),
        cmocka_unit_test(a_refused_answer_changes_nothing),
        cmocka_unit_test(after_a_dozen_values_it_is_time_to_show),
        cmocka_unit_test(words_that_are_no_answer),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
