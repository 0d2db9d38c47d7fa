#include "report/sheet/sheet.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "report/diagram/diagram.h"
#include "support/failing_arena.h"
#include "support/fixture_result.h"
#include "support/near.h"
#include "support/ready_cars.h"
#include "support/run_cli.h"

static struct bytes sheet_of(struct arena *arena, const struct result *result, enum paper paper)
{
    struct bytes bytes = {.arena = arena};
    const char *error = NULL;
    if (!sheet_pdf(result, paper, &bytes, &error))
        fail_msg("%s", error);
    return bytes;
}

/* What a program makes of the bytes as a file, handed over as /dev/stdin. */
static struct run ask(const char *program, const char *option, const struct bytes *bytes)
{
    char path[] = "/tmp/firmpedal-sheet-XXXXXX";
    int file = mkstemp(path);
    assert_true(file >= 0);
    assert_int_equal(write(file, bytes->items, bytes->count), (ssize_t)bytes->count);
    close(file);
    const char *words[] = {program, option ? option : path, option ? path : "-",
                           option ? "-" : NULL, NULL};
    if (strcmp(program, "pdfinfo") == 0)
        words[1] = path, words[2] = NULL;
    struct run run = run_program(NULL, words, "", 60);
    unlink(path);
    assert_int_equal(run.status, 0);
    return run;
}

static void assert_all_ids(const struct result *result, const char *text)
{
    for (int i = 0; i < result->figures.count; i++)
        if (!strstr(text, result->figures.items[i].row->id))
            fail_msg("no figure %s", result->figures.items[i].row->id);
    for (size_t i = 0; i < result->findings.count; i++)
        if (!strstr(text, result->findings.items[i].check->id))
            fail_msg("no finding %s", result->findings.items[i].check->id);
}

static void the_sheet_holds_every_figure_and_finding(void **state)
{
    (void)state;
    struct arena *names = arena_create();
    const char **cars = ready_cars(names);
    for (size_t i = 0; cars[i]; i++) {
        struct arena *arena = arena_create();
        struct result *result = ready_result(arena, cars[i], NULL);
        struct bytes bytes = sheet_of(arena, result, i % 2 ? PAPER_A4 : PAPER_LETTER);
        struct run run = ask("pdftotext", "-layout", &bytes);
        assert_all_ids(result, run.out);
        run_finish(&run);
        arena_destroy(arena);
    }
    arena_destroy(names);
}

static void the_sheet_of_the_demo_says_what_was_done(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result =
        ready_result(arena, "systems/village-van.ini", "demo/village-van-work.ini");
    struct bytes bytes = sheet_of(arena, result, PAPER_A4);
    struct run run = ask("pdftotext", "-layout", &bytes);
    assert_all_ids(result, run.out);
    static const char *const wanted[] = {
        "Village van",      "DOT 4",    "Not complete.", "Settings for bleeding", "Taking apart",
        "Putting together", "Bleeding", "66.0 mm",       "second person",         "page 1 of"};
    for (size_t i = 0; i < sizeof wanted / sizeof wanted[0]; i++)
        if (!strstr(run.out, wanted[i]))
            fail_msg("no words: %s", wanted[i]);
    run_finish(&run);
    arena_destroy(arena);
}

static void pages_are_of_the_asked_size(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct result *result = fixture_result(arena, (struct fixture_choice){0});
    struct bytes bytes = sheet_of(arena, result, PAPER_A4);
    struct run run = ask("pdfinfo", NULL, &bytes);
    assert_non_null(strstr(run.out, "A4"));
    run_finish(&run);
    bytes = sheet_of(arena, result, PAPER_LETTER);
    run = ask("pdfinfo", NULL, &bytes);
    assert_non_null(strstr(run.out, "612 x 792 pts"));
    run_finish(&run);
    arena_destroy(arena);
}

static double width_of(void *context, const char *words, struct font font)
{
    return fixed_width(context, words, font.size);
}

static void all_that_is_drawn_lies_on_the_page(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct ruler ruler = {width_of, NULL};
    struct result *result =
        ready_result(arena, "systems/village-van.ini", "demo/village-van-work.ini");
    size_t count;
    const struct sketch *pages = sheet_pages(result, PAPER_LETTER, &ruler, arena, &count);
    for (size_t i = 0; i < count; i++)
        for (size_t k = 0; k < pages[i].count; k++) {
            const struct shape *shape = &pages[i].items[k];
            for (int p = 0; p < shape->count; p++) {
                assert_true(shape->points[p].x >= 10 && shape->points[p].x <= 215.9 - 10);
                assert_true(shape->points[p].y >= 10 && shape->points[p].y <= 279.4 - 10);
            }
        }
    arena_destroy(arena);
}

static void the_same_result_gives_the_same_bytes(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct result *result = fixture_result(arena, (struct fixture_choice){0});
    const char *error = NULL;
    struct bytes pdf[2] = {sheet_of(arena, result, PAPER_A4), sheet_of(arena, result, PAPER_A4)};
    assert_int_equal(pdf[0].count, pdf[1].count);
    assert_memory_equal(pdf[0].items, pdf[1].items, pdf[0].count);
    struct bytes svg[2] = {{.arena = arena}, {.arena = arena}};
    struct bytes png[2] = {{.arena = arena}, {.arena = arena}};
    for (int i = 0; i < 2; i++) {
        assert_true(diagram_svg(result, &svg[i], &error));
        assert_true(diagram_png(result, 96, &png[i], &error));
    }
    assert_int_equal(svg[0].count, svg[1].count);
    assert_memory_equal(svg[0].items, svg[1].items, svg[0].count);
    assert_int_equal(png[0].count, png[1].count);
    assert_memory_equal(png[0].items, png[1].items, png[0].count);
    arena_destroy(arena);
}

static void pictures_begin_as_their_formats_do(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct result *result = fixture_result(arena, (struct fixture_choice){0});
    const char *error = NULL;
    struct bytes bytes[3] = {{.arena = arena}, {.arena = arena}, {.arena = arena}};
    assert_true(diagram_svg(result, &bytes[0], &error));
    assert_true(diagram_png(result, 96, &bytes[1], &error));
    assert_true(diagram_pdf(result, &bytes[2], &error));
    assert_memory_equal(bytes[0].items, "<?xml", 5);
    assert_memory_equal(bytes[1].items, "\x89PNG", 4);
    assert_memory_equal(bytes[2].items, "%PDF", 4);
    arena_destroy(arena);
}

static void an_absurd_resolution_is_refused_in_words(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct result *result = fixture_result(arena, (struct fixture_choice){0});
    const char *error = NULL;
    struct bytes bytes = {.arena = arena};
    assert_false(diagram_png(result, 1e6, &bytes, &error));
    assert_non_null(error);
    assert_int_equal(bytes.count, 0);
    arena_destroy(arena);
}

static void letters_that_no_font_has_are_an_error_in_words(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct sketch sketch = sketch_start(arena, 50, 50);
    /* a code point that Unicode never assigns */
    sketch_words(&sketch, 10, 10, "ab \xf3\xb0\x80\x80", (struct font){.size = 8}, ALIGN_LEFT,
                 INK_BLACK);
    struct bytes bytes = {.arena = arena};
    const char *error = NULL;
    assert_false(paint_png(&sketch, 96, &bytes, &error));
    assert_non_null(strstr(error, "font"));
    arena_destroy(arena);
}

static void a_machine_without_fonts_is_told_so(void **state)
{
    (void)state;
    /* settings of fontconfig that name no folder */
    static const char settings[] = "<fontconfig></fontconfig>";
    char path[] = "/tmp/firmpedal-fonts-XXXXXX";
    int file = mkstemp(path);
    assert_true(file >= 0);
    assert_int_equal(write(file, settings, sizeof settings - 1), (ssize_t)sizeof settings - 1);
    close(file);
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        /* a process of its own: fontconfig reads its settings once */
        setenv("FONTCONFIG_FILE", path, 1);
        /* it ends while a thread of pango may still look for fonts */
        setenv("ASAN_OPTIONS", "detect_leaks=0", 1);
        char *words[] = {"test_sheet", "without-fonts", NULL};
        execv("/proc/self/exe", words);
        _exit(9);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    unlink(path);
    assert_true(WIFEXITED(status));
    assert_int_equal(WEXITSTATUS(status), 0);
}

static int look_without_fonts(void)
{
    struct arena *arena = arena_create();
    const char *error = NULL;
    struct bytes bytes = {.arena = arena};
    bool done =
        sheet_pdf(fixture_result(arena, (struct fixture_choice){0}), PAPER_A4, &bytes, &error);
    int status = !done && error && strstr(error, "fonts-dejavu-core") ? 0 : 1;
    arena_destroy(arena);
    return status;
}

/* Draws with the block of that number failing; gives how many were asked for. */
static size_t draw_with_failure(size_t fails_at)
{
    struct failing_arena blocks = {.fails_at = fails_at};
    struct arena *arena = arena_create_on(failing_arena_source(&blocks));
    if (!arena)
        return blocks.asked;
    jmp_buf here;
    arena_escape_to(arena, &here);
    if (setjmp(here) == 0) {
        const struct result *result = fixture_result(arena, (struct fixture_choice){0});
        struct bytes bytes = {.arena = arena};
        const char *error = NULL;
        bool done = sheet_pdf(result, PAPER_A4, &bytes, &error);
        assert_true(done || error);
    }
    arena_destroy(arena);
    assert_int_equal(blocks.out, 0);
    return blocks.asked;
}

static void memory_that_runs_out_while_drawing_leaks_nothing(void **state)
{
    (void)state;
    size_t total = draw_with_failure(0);
    for (size_t fails_at = 1; fails_at <= total; fails_at += fails_at < 8 ? 1 : 5)
        draw_with_failure(fails_at);
}

int main(int count, char **words)
{
    if (count == 2 && strcmp(words[1], "without-fonts") == 0)
        return look_without_fonts();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_sheet_holds_every_figure_and_finding),
        cmocka_unit_test(the_sheet_of_the_demo_says_what_was_done),
        cmocka_unit_test(pages_are_of_the_asked_size),
        cmocka_unit_test(all_that_is_drawn_lies_on_the_page),
        cmocka_unit_test(the_same_result_gives_the_same_bytes),
        cmocka_unit_test(pictures_begin_as_their_formats_do),
        cmocka_unit_test(an_absurd_resolution_is_refused_in_words),
        cmocka_unit_test(letters_that_no_font_has_are_an_error_in_words),
        cmocka_unit_test(a_machine_without_fonts_is_told_so),
        cmocka_unit_test(memory_that_runs_out_while_drawing_leaks_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
