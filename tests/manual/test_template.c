#include "manual/template.h"

#include <string.h>

#include "parts/keys/key.h"
#include "support/cmocka_all.h"

static struct starter starter_in(struct arena *arena, const char *words)
{
    struct text trouble = text_start(arena);
    picks said = 0;
    if (!picks_read(&trouble, words, &said))
        fail_msg("%s: %s", words, trouble.items);
    return starter_of(said, arena);
}

static const char *started(struct arena *arena, const char *words)
{
    struct starter starter = starter_in(arena, words);
    struct text text = text_start(arena);
    template_start(&text, &starter);
    return text.items;
}

static void no_usual_starter_is_long_or_wide(void **state)
{
    (void)state;
    size_t count;
    const struct usual_set *sets = usual_sets(&count);
    assert_true(count >= 6);
    struct arena *arena = arena_create();
    for (size_t i = 0; i < count; i++) {
        int live = 0;
        for (const char *line = started(arena, sets[i].word); *line != '\0';) {
            size_t length = strcspn(line, "\n");
            assert_true(length <= 80);
            live += length > 0 && *line != ';';
            line += length + (line[length] == '\n');
        }
        int most = strstr(started(arena, sets[i].word), "[clutch slave]") != NULL ? 70 : 60;
        if (live > most || live < 20)
            fail_msg("%s has %d live lines", sets[i].word, live);
    }
    arena_destroy(arena);
}

static void what_was_said_and_what_was_taken_as_usual_stands_at_the_top(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char *text = started(arena, "drums, right");
    const char *said = strstr(text, "; Said: front drums, rear drums, ");
    const char *taken = strstr(text, "; Taken as usual, to be looked at: car, ");
    assert_non_null(said);
    assert_non_null(taken);
    assert_true(said < taken);
    assert_non_null(strstr(text, "\ndriver = right"));
    assert_non_null(strstr(started(arena, "drums"), "\ndriver = left"));
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_usual_starter_is_long_or_wide),
        cmocka_unit_test(what_was_said_and_what_was_taken_as_usual_stands_at_the_top),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
