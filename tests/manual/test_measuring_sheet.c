#include "manual/measuring_sheet.h"

#include <string.h>

#include "support/cmocka_all.h"

static const char *sheet_of(struct arena *arena, const char *car)
{
    struct text text = text_start(arena);
    picks said = 0;
    assert_true(picks_read(&text, car, &said));
    struct starter starter = starter_of(said, arena);
    measuring_sheet(&text, &starter);
    return text.items;
}

/* From a header to the next empty line. */
static const char *section_of(struct arena *arena, const char *sheet, const char *header)
{
    const char *from = strstr(sheet, header);
    assert_non_null(from);
    const char *end = strstr(from, "\n\n");
    return text_copy_part(arena, from, (size_t)(end - from));
}

static void no_sheet_is_wider_than_80_columns(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    size_t count;
    const struct usual_set *sets = usual_sets(&count);
    for (size_t i = 0; i < count; i++) {
        const char *line = sheet_of(arena, sets[i].word);
        while (*line != '\0') {
            size_t length = strcspn(line, "\n");
            assert_true(length <= 80);
            line += length + (line[length] == '\n');
        }
    }
    arena_destroy(arena);
}

static void a_pair_of_brakes_is_measured_on_both_sides(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char *drums = section_of(arena, sheet_of(arena, "drums"), "[rear drum]");
    assert_non_null(strstr(drums, "  bore                 left ____"));
    const char *one = section_of(arena, sheet_of(arena, "motorcycle"), "[rear right disc]");
    assert_null(strstr(one, "right ____"));
    arena_destroy(arena);
}

static void a_port_asks_for_thread_seat_and_outlet(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char *master = section_of(arena, sheet_of(arena, "drums"), "[brake master]");
    assert_non_null(strstr(master, "thread (pitch gauge)"));
    assert_non_null(strstr(master, "seat (flare)"));
    assert_non_null(strstr(master, "leads to"));
    arena_destroy(arena);
}

static void what_has_no_meaning_for_the_layout_is_not_asked(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char *single = section_of(arena, sheet_of(arena, "drums"), "[brake master]");
    assert_null(strstr(single, "primary stroke"));
    const char *sheet = sheet_of(arena, "front discs");
    assert_non_null(strstr(section_of(arena, sheet, "[brake master]"), "primary stroke"));
    assert_null(strstr(section_of(arena, sheet, "[brake pedal]"), "bar to first"));
    assert_null(strstr(section_of(arena, sheet, "[brake servo]"), "nipple"));
    sheet = sheet_of(arena, "twin masters");
    assert_non_null(strstr(section_of(arena, sheet, "[brake pedal]"), "bar to first"));
    arena_destroy(arena);
}

static void every_pipe_and_hose_of_a_run_has_its_line(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char *run = section_of(arena, sheet_of(arena, "rear engine"), "\nclutch line");
    assert_non_null(strstr(run, "  pipe  length"));
    assert_non_null(strstr(run, "  hose  length"));
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_sheet_is_wider_than_80_columns),
        cmocka_unit_test(a_pair_of_brakes_is_measured_on_both_sides),
        cmocka_unit_test(a_port_asks_for_thread_seat_and_outlet),
        cmocka_unit_test(what_has_no_meaning_for_the_layout_is_not_asked),
        cmocka_unit_test(every_pipe_and_hose_of_a_run_has_its_line),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
