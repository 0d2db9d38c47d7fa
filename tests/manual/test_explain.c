#include "manual/explain.h"

#include <string.h>

#include "input/mistakes.h"
#include "parts/keys/key.h"
#include "support/cmocka_all.h"

static const char *explained(struct arena *arena, const char *word)
{
    struct text text = text_start(arena);
    bool known = explain_word(&text, word);
    assert_int_equal(known, text.count > 0);
    return known ? text.items : NULL;
}

static void every_key_kind_and_mistake_is_explained(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    size_t count;
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        const struct key *keys = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++)
            assert_non_null(explained(arena, keys[i].name));
        assert_non_null(explained(arena, kind_word((enum part_kind)kind)));
    }
    const struct mistake_row *rows = mistake_rows(&count);
    for (size_t i = 0; i < count; i++)
        assert_non_null(explained(arena, rows[i].id));
    arena_destroy(arena);
}

static void another_name_leads_to_the_key(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char *text = explained(arena, "rotor diameter");
    assert_non_null(text);
    assert_ptr_equal(strstr(text, "disc diameter, of a disc"), text);
    assert_non_null(strstr(text, "50 mm to 800 mm"));
    arena_destroy(arena);
}

static void a_key_of_several_kinds_is_explained_for_each(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char *text = explained(arena, "bore");
    assert_non_null(strstr(text, "bore, of a master"));
    assert_non_null(strstr(text, "bore, of a drum"));
    assert_non_null(strstr(text, "bore = 2 of 48 mm"));
    arena_destroy(arena);
}

static void rows_common_to_all_kinds_are_explained_once(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char *text = explained(arena, "note");
    const char *first = strstr(text, "note, of a");
    assert_non_null(first);
    assert_null(strstr(first + 1, "note, of a"));
    arena_destroy(arena);
}

static void words_of_work_files_are_explained(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_non_null(strstr(explained(arena, "bore surface"), "bore surface, of [found]"));
    assert_non_null(strstr(explained(arena, "readings"), "a section of a work file"));
    assert_non_null(strstr(explained(arena, "all pipes"), "a section of a description"));
    arena_destroy(arena);
}

static void an_unknown_word_gets_near_ones(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_null(explained(arena, "pad to pivo"));
    assert_non_null(strstr(explain_near(arena, "pad to pivo"), "pad to pivot"));
    assert_string_equal(explain_near(arena, "qqqqqqqqqqqqqqqqqqqqqqqqqqqqqqqqqqq"), "");
    arena_destroy(arena);
}

static void the_words_of_the_input_and_their_plurals_are_known(void **state)
{
    (void)state;
    static const struct {
        const char *word, *says;
    } cases[] = {{"sliding", "caliper = sliding"},      {"residual", "type = residual"},
                 {"strokes", "stroke, of a master"},    {"reading", "[readings], a section"},
                 {"readings", "[readings], a section"}, {"leading and trailing", "shoes = leading"},
                 {"floating", "caliper = sliding"},     {"hoses", "[... hose], a section"}};
    struct arena *arena = arena_create();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *text = explained(arena, cases[i].word);
        if (text == NULL || strstr(text, cases[i].says) == NULL)
            fail_msg("%s: %s", cases[i].word, text ? text : "not known");
    }
    arena_destroy(arena);
}

/* Every word that a key takes is explained with that key. */
static void every_word_of_a_choice_is_explained(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *keys = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++)
            for (const struct choice *c = keys[i].choices; c != NULL && c->word != NULL; c++)
                if (keys[i].field != FIELD(fitted.on) && explained(arena, c->word) == NULL)
                    fail_msg("%s", c->word);
    }
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_key_kind_and_mistake_is_explained),
        cmocka_unit_test(another_name_leads_to_the_key),
        cmocka_unit_test(a_key_of_several_kinds_is_explained_for_each),
        cmocka_unit_test(rows_common_to_all_kinds_are_explained_once),
        cmocka_unit_test(words_of_work_files_are_explained),
        cmocka_unit_test(an_unknown_word_gets_near_ones),
        cmocka_unit_test(the_words_of_the_input_and_their_plurals_are_known),
        cmocka_unit_test(every_word_of_a_choice_is_explained),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
