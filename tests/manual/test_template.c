#include "manual/template.h"

#include <string.h>

#include "manual/layouts.h"
#include "input/read.h"
#include "parts/keys/key.h"
#include "support/cmocka_all.h"

static struct text started(struct arena *arena, const struct car_layout *layout)
{
    struct text text = text_start(arena);
    template_start(&text, layout, DRIVER_RIGHT);
    return text;
}

static void every_starter_reads_without_a_mistake(void **state)
{
    (void)state;
    size_t count;
    const struct car_layout *layouts = layout_rows(&count);
    assert_true(count >= 6);
    for (size_t i = 0; i < count; i++) {
        struct arena *arena = arena_create();
        struct text text = started(arena, &layouts[i]);
        struct source source = {"starter.ini", text.items, text.count};
        struct messages messages = messages_start(arena);
        const struct system *system = read_car(&source, arena, &messages);
        for (size_t m = 0; m < messages.count; m++)
            if (messages.items[m].severity >= SEVERITY_ADVICE)
                print_error("%s:%d %s [%s]\n", layouts[i].word, messages.items[m].place.line,
                            messages.items[m].words, messages.items[m].id);
        assert_non_null(system);
        assert_false(messages_reach(&messages, SEVERITY_ADVICE));
        arena_destroy(arena);
    }
}

static void every_starter_has_at_most_60_live_lines_of_at_most_80_columns(void **state)
{
    (void)state;
    size_t count;
    const struct car_layout *layouts = layout_rows(&count);
    struct arena *arena = arena_create();
    for (size_t i = 0; i < count; i++) {
        struct text text = started(arena, &layouts[i]);
        int live = 0;
        for (const char *line = text.items; *line != '\0';) {
            size_t length = strcspn(line, "\n");
            assert_true(length <= 80);
            live += length > 0 && *line != ';';
            line += length + (line[length] == '\n');
        }
        if (live > 60 || live < 20)
            fail_msg("%s has %d live lines", layouts[i].word, live);
    }
    arena_destroy(arena);
}

static void every_line_of_an_outline_is_a_row_of_its_kind(void **state)
{
    (void)state;
    size_t count;
    const struct car_layout *layouts = layout_rows(&count);
    for (size_t i = 0; i < count; i++) {
        for (const struct outline *const *s = layouts[i].sections; *s != NULL; s++) {
            enum part_kind kind;
            assert_true(kind_of_words((*s)->header, &kind));
            for (size_t line = 0; line < (*s)->count; line++) {
                const struct key *key = key_of(kind, (*s)->lines[line].field);
                assert_non_null(key);
                if (key->form == FORM_CHOICE && (*s)->lines[line].value != NULL)
                    assert_non_null(choice_find(key, (*s)->lines[line].value));
            }
        }
    }
}

static void every_required_key_of_a_section_is_there(void **state)
{
    (void)state;
    size_t count, rows;
    const struct car_layout *layouts = layout_rows(&count);
    for (size_t i = 0; i < count; i++) {
        for (const struct outline *const *s = layouts[i].sections; *s != NULL; s++) {
            enum part_kind kind;
            assert_true(kind_of_words((*s)->header, &kind));
            const struct key *keys = key_table(kind, &rows);
            for (size_t k = 0; k < rows; k++) {
                bool there = !keys[k].required;
                for (size_t line = 0; line < (*s)->count; line++)
                    there = there || (*s)->lines[line].field == keys[k].field;
                if (!there)
                    fail_msg("%s [%s] has no %s", layouts[i].word, (*s)->header, keys[k].name);
            }
        }
    }
}

static void the_driver_s_side_is_filled_in(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct text left = text_start(arena), right = text_start(arena);
    template_start(&left, layout_find("drums"), DRIVER_LEFT);
    template_start(&right, layout_find("drums"), DRIVER_RIGHT);
    assert_non_null(strstr(left.items, "\ndriver = left\n"));
    assert_non_null(strstr(right.items, "\ndriver = right\n"));
    arena_destroy(arena);
}

static void layouts_are_found_by_their_word_and_near_it(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    assert_non_null(layout_find("Twin-Masters"));
    assert_null(layout_find("no such"));
    assert_string_equal(layout_nearest(arena, "digonal"), "diagonal");
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_starter_reads_without_a_mistake),
        cmocka_unit_test(every_starter_has_at_most_60_live_lines_of_at_most_80_columns),
        cmocka_unit_test(every_line_of_an_outline_is_a_row_of_its_kind),
        cmocka_unit_test(every_required_key_of_a_section_is_there),
        cmocka_unit_test(the_driver_s_side_is_filled_in),
        cmocka_unit_test(layouts_are_found_by_their_word_and_near_it),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
