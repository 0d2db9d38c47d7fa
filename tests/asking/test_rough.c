#include "asking/rough.h"

#include <string.h>

#include "support/cmocka_all.h"

static const char text[] = "; a car\n"
                           "[vehicle]\n"
                           "title = ?\n"
                           "[brake pedal]\n"
                           "works = brake master\n"
                           "; centre of the pad to the pivot, square to the push of the foot\n"
                           "pad to pivot = ? ; by Monday\n"
                           "[brake master]\n"
                           "type = single\n"
                           "bore = ? ; cast in, says Anna\n"
                           "[rear drum]\n"
                           "shoes = two leading\n"
                           "bore = 3/4 in\n"
                           "[fluid]\n"
                           "grade = DOT 4\n"
                           "[reservoir]\n"
                           "capacity = 200 mL\n"
                           "[runs]\n"
                           "feed = brake master, pipe, tee\n"
                           "rear left = tee, 0.5 m pipe, hose, rear left drum\n"
                           "rear right = tee, pipe, hose, rear right drum";

static struct rough read_in(struct arena *arena)
{
    struct rough rough;
    rough_read(&rough, text, arena);
    assert_non_null(rough.system);
    return rough;
}

/* The text with a value of a key of a section. */
static const char *with(const char *header, const char *name, const char *value,
                        struct arena *arena)
{
    struct rough rough = read_in(arena);
    struct blank blank = {.header = header};
    for (size_t s = 0; s < rough.lines.count; s++)
        if (strcmp(rough.lines.items[s].name.text, header) == 0)
            blank.section = &rough.lines.items[s];
    if (blank.section != NULL)
        assert_true(section_kind(blank.section, &blank.kind));
    else
        blank.kind = KIND_PIPE;
    blank.key = key_find(blank.kind, name);
    assert_non_null(blank.key);
    for (size_t i = 0; blank.section != NULL && i < blank.section->count; i++)
        if (key_find(blank.kind, blank.section->items[i].key.text) == blank.key)
            blank.entry = &blank.section->items[i];
    return rough_with(&rough, &blank, value, arena);
}

static void has(const char *whole, const char *part)
{
    if (strstr(whole, part) == NULL)
        fail_msg("%s\nis not in\n%s", part, whole);
}

static void a_value_takes_the_place_of_the_old_one_and_of_its_help(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    has(with("vehicle", "title", "Van", arena), "[vehicle]\ntitle = Van\n[brake pedal]\n");
    /* The program's own help goes, words of a person stay. */
    has(with("brake pedal", "pad to pivot", "290 mm", arena),
        "works = brake master\npad to pivot = 290 mm ; by Monday\n");
    has(with("brake master", "bore", "7/8 in", arena), "bore = 7/8 in ; cast in, says Anna\n");
    arena_destroy(arena);
}

static void a_new_line_stands_where_its_row_does(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    has(with("rear drum", "cylinder", "sliding", arena),
        "shoes = two leading\ncylinder = sliding\nbore = 3/4 in\n");
    has(with("rear drum", "axle", "rear", arena),
        "[rear drum]\naxle = rear\nshoes = two leading\n");
    has(with("rear drum", "note", "odd", arena), "bore = 3/4 in\nnote = odd\n[fluid]\n");
    has(with("all pipes", "size", "6 mm", arena), "\n[all pipes]\nsize = 6 mm\n\n[runs]\n");
    arena_destroy(arena);
}

static void a_length_stands_before_its_pipe_or_hose(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct rough rough = read_in(arena);
    const struct section *runs = &rough.lines.items[rough.lines.count - 1];
    struct messages messages = messages_start(arena);
    struct input input = {arena, &messages, ""};
    struct run run = run_read(&runs->items[2], &input);
    struct blank blank = {.header = "runs",
                          .kind = KIND_HOSE,
                          .key = key_find(KIND_HOSE, "length"),
                          .entry = &runs->items[2],
                          .piece = &run.items[2]};
    has(rough_with(&rough, &blank, "0.3 m", arena),
        "\nrear right = tee, pipe, 0.3 m hose, rear right drum");
    blank.kind = KIND_PIPE;
    blank.piece = &run.items[1];
    has(rough_with(&rough, &blank, "14 in", arena),
        "\nrear right = tee, 14 in pipe, hose, rear right drum");
    arena_destroy(arena);
}

static void each_question_mark_gets_its_help_once(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct rough rough = read_in(arena);
    const char *once = rough_with_help(&rough, arena);
    has(once, "\ntitle = ?                       ; what the sheet calls the car\n");
    has(once, "\npad to pivot = ? ; by Monday\n");
    struct rough again;
    rough_read(&again, once, arena);
    assert_string_equal(rough_with_help(&again, arena), once);
    /* Beside what is said there is none. */
    has(once, "\nbore = 3/4 in\n");
    arena_destroy(arena);
}

static void a_mistake_leaves_no_car(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct rough rough;
    rough_read(&rough, with("brake master", "bore", "7/8", arena), arena);
    assert_null(rough.system);
    assert_true(messages_reach(&rough.messages, SEVERITY_DANGER));
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_value_takes_the_place_of_the_old_one_and_of_its_help),
        cmocka_unit_test(a_new_line_stands_where_its_row_does),
        cmocka_unit_test(a_length_stands_before_its_pipe_or_hose),
        cmocka_unit_test(each_question_mark_gets_its_help_once),
        cmocka_unit_test(a_mistake_leaves_no_car),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
