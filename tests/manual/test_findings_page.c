#include "manual/findings_page.h"

#include <string.h>

#include "base/text.h"
#include "support/cmocka_all.h"

static void what_is_explained_has_no_slots_left(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    size_t count;
    const char *const *ids = findings_ids(arena, &count);
    assert_true(count > 300);
    for (size_t i = 0; i < count; i++) {
        struct text words = text_start(arena);
        if (findings_explain(&words, ids[i]) && strpbrk(words.items, "{}") != NULL)
            fail_msg("%s", words.items);
    }
    arena_destroy(arena);
}

/* The limit of the check fills its slot: hoses are renewed after 6 years. */
static void the_limit_of_a_check_stands_in_its_words(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct text words = text_start(arena);
    assert_true(findings_explain(&words, "hose-old"));
    assert_non_null(strstr(words.items, "The part is of such a date, so many years old; hoses are "
                                        "renewed after\n    6 years."));
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_explained_has_no_slots_left),
        cmocka_unit_test(the_limit_of_a_check_stands_in_its_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
