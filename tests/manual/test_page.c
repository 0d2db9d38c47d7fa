#include "manual/page.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "input/schema.h"
#include "parts/keys/key.h"
#include "support/cmocka_all.h"

static struct text print_page(struct arena *arena)
{
    struct text page = text_start(arena);
    page_input(&page);
    return page;
}

static char *load(struct arena *arena, const char *name, size_t *count)
{
    const char *root = getenv("SOURCE_ROOT");
    FILE *file = fopen(text_print(arena, "%s/%s", root != NULL ? root : ".", name), "rb");
    assert_non_null(file);
    enum { MOST = 1 << 20 };
    char *bytes = arena_new(arena, MOST);
    *count = fread(bytes, 1, MOST - 1, file);
    fclose(file);
    return bytes;
}

static void the_page_in_the_repository_is_in_step_with_the_tables(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct text page = print_page(arena);
    size_t count;
    const char *kept = load(arena, "docs/input.md", &count);
    if (count != page.count || memcmp(kept, page.items, count) != 0)
        fail_msg("docs/input.md is out of step: print it anew");
    arena_destroy(arena);
}

static void every_kind_and_key_is_on_the_page(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct text page = print_page(arena);
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        const char *from =
            strstr(page.items, text_print(arena, "## `[... %s]`", kind_word((enum part_kind)kind)));
        assert_non_null(from);
        size_t count;
        const struct key *rows = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++) {
            from = strstr(from, text_print(arena, "\n| `%s` |", rows[i].name));
            if (from == NULL)
                fail_msg("%s is not on the page", rows[i].name);
        }
    }
    arena_destroy(arena);
}

static void every_special_section_and_its_keys_are_on_the_page(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct text page = print_page(arena);
    size_t count;
    const struct special *rows = special_rows(&count);
    for (size_t i = 0; i < count; i++) {
        const char *from = strstr(page.items, text_print(arena, "### `[%s", rows[i].name));
        assert_non_null(from);
        for (size_t k = 0; k < rows[i].key_count; k++)
            assert_non_null(strstr(from, text_print(arena, "\n| `%s` |", rows[i].keys[k].name)));
    }
    arena_destroy(arena);
}

static void every_row_of_a_table_has_as_many_cells_as_its_head(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct text page = print_page(arena);
    int expected = 0;
    for (const char *line = page.items; line != NULL && *line != '\0';) {
        int cells = 0;
        const char *end = strchr(line, '\n');
        for (const char *at = line; at < end; at++)
            cells += *at == '|' && (at == line || at[-1] != '\\');
        if (*line != '|')
            expected = 0;
        else if (expected == 0)
            expected = cells;
        else
            assert_int_equal(cells, expected);
        line = end != NULL ? end + 1 : NULL;
    }
    arena_destroy(arena);
}

static void limits_are_written_in_the_units_of_the_bench(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct text page = print_page(arena);
    assert_non_null(strstr(page.items, "2 mm to 400 mm; usual 12 mm to 60 mm"));
    assert_non_null(strstr(page.items, "DOT 5.1"));
    assert_null(strstr(page.items, "nan"));
    assert_null(strstr(page.items, "(null)"));
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_page_in_the_repository_is_in_step_with_the_tables),
        cmocka_unit_test(every_kind_and_key_is_on_the_page),
        cmocka_unit_test(every_special_section_and_its_keys_are_on_the_page),
        cmocka_unit_test(every_row_of_a_table_has_as_many_cells_as_its_head),
        cmocka_unit_test(limits_are_written_in_the_units_of_the_bench),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
