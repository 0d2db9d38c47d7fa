#include "report/sheet/sheet.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/text.h"
#include "report/diagram/diagram.h"
#include "support/failing_arena.h"
#include "support/fixture_result.h"
#include "support/near.h"
#include "support/ready_cars.h"
#include "support/run_cli.h"

static struct bytes sheet_with(struct arena *arena, const struct result *result, enum paper paper,
                               unsigned annexes)
{
    struct bytes bytes = {.arena = arena};
    const char *error = NULL;
    struct sheet_order order = {
        .result = result, .paper = paper, .annexes = annexes, .version = "0"};
    if (!sheet_pdf(&order, &bytes, &error))
        fail_msg("%s", error);
    return bytes;
}

static struct bytes sheet_of(struct arena *arena, const struct result *result, enum paper paper)
{
    return sheet_with(arena, result, paper, 0);
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

static void its_annexes_hold_every_figure_and_finding(void **state)
{
    (void)state;
    struct arena *names = arena_create();
    const char **cars = ready_cars(names);
    for (size_t i = 0; cars[i]; i++) {
        struct arena *arena = arena_create();
        struct result *result = ready_result(arena, cars[i], NULL);
        struct bytes bytes = sheet_with(arena, result, i % 2 ? PAPER_A4 : PAPER_LETTER,
                                        1u << ANNEX_FIGURES | 1u << ANNEX_FINDINGS);
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
    static const char *const wanted[] = {
        "Village van",      "DOT 4",    "3 old",   "Settings for bleeding", "Taking apart",
        "Putting together", "Bleeding", "66.0 mm", "second person",         "measure first",
        "side 1 of"};
    for (size_t i = 0; i < sizeof wanted / sizeof wanted[0]; i++)
        if (!strstr(run.out, wanted[i]))
            fail_msg("no words: %s", wanted[i]);
    run_finish(&run);
    arena_destroy(arena);
}

static double width_of(void *context, const char *words, struct font font)
{
    return fixed_width(context, words, font.size);
}

/* --- how long it is -------------------------------------------------------------------------- */

static size_t sides_of_pdf(const struct bytes *bytes)
{
    struct run run = ask("pdfinfo", NULL, bytes);
    const char *at = strstr(run.out, "Pages:");
    assert_non_null(at);
    size_t sides = (size_t)strtol(at + sizeof "Pages:" - 1, NULL, 10);
    run_finish(&run);
    return sides;
}

static bool can_be_renewed(enum part_kind kind)
{
    return kind == KIND_MASTER || kind == KIND_SLAVE || kind == KIND_DISC || kind == KIND_DRUM ||
           kind == KIND_HOSE;
}

/* A work file that renews every cylinder, caliper, hose and the fluid; to be unlinked. */
static const char *renewing_all(struct arena *arena, const char *car)
{
    const struct system *system = ready_result(arena, car, NULL)->system;
    struct text words = text_start(arena);
    text_add(&words, "[work]\ncar = %s\ndate = 2026-11-20\nfluid renewed = yes\n",
             system_vehicle(system)->title);
    int line = 1;
    for (int i = 0; i < system->part_count; i++)
        if (can_be_renewed(system->parts[i].kind))
            text_add(&words, "renewed %d = %s\n", line++, system->parts[i].name);
    char *path = text_copy(arena, "/tmp/firmpedal-renewed-XXXXXX");
    int file = mkstemp(path);
    assert_true(file >= 0);
    assert_int_equal(write(file, words.items, words.count), (ssize_t)words.count);
    close(file);
    return path;
}

static void promise(const char *car, const char *work, enum paper paper, size_t most)
{
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, car, work);
    result->units = paper == PAPER_LETTER ? UNITS_IMPERIAL : UNITS_METRIC;
    struct bytes bytes = sheet_of(arena, result, paper);
    size_t sides = sides_of_pdf(&bytes);
    if (sides > most)
        fail_msg("%s %s: %zu sides, %zu are promised", car, work != NULL ? work : "", sides, most);
    arena_destroy(arena);
}

/* Promises to the user: what is taken to the car and stays with it is no book. */
static void the_sheet_is_short(void **state)
{
    (void)state;
    struct arena *names = arena_create();
    const char **cars = ready_cars(names);
    for (size_t i = 0; cars[i]; i++) {
        promise(cars[i], NULL, PAPER_A4, 4);
        promise(cars[i], NULL, PAPER_LETTER, 4);
        const char *all = renewing_all(names, cars[i]);
        promise(cars[i], all, PAPER_A4, 5);
        /* the van, of which all is renewed, has the most joints of all */
        promise(cars[i], all, PAPER_LETTER, strstr(cars[i], "village-van") != NULL ? 6 : 5);
        unlink(all);
    }
    promise("systems/village-van.ini", "demo/village-van-work.ini", PAPER_A4, 4);
    promise("systems/village-van.ini", "demo/village-van-work.ini", PAPER_LETTER, 4);
    arena_destroy(names);
}

/* Nothing below 8 pt; boxes of 5 mm where it is read under a car. */
static void it_is_large_enough_for_a_workshop(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct ruler ruler = {width_of, NULL};
    struct result *result =
        ready_result(arena, "systems/village-van.ini", "demo/village-van-work.ini");
    struct sheet_order order = {.result = result, .annexes = ~0u};
    size_t count, boxes = 0;
    const struct sketch *sides = sheet_sides(&order, &ruler, arena, &count);
    for (size_t i = 0; i < count; i++)
        for (size_t k = 0; k < sides[i].count; k++) {
            const struct shape *shape = &sides[i].items[k];
            if (shape->kind == SHAPE_WORDS && shape->font.size < 8)
                fail_msg("side %zu: %s in %g pt", i + 1, shape->words, shape->font.size);
            boxes += shape->kind == SHAPE_PATH && shape->closed && shape->count == 4 &&
                     fabs(shape->points[2].x - shape->points[0].x - 5) < 1e-9 &&
                     fabs(shape->points[2].y - shape->points[0].y - 5) < 1e-9;
        }
    assert_true(boxes > 100);
    arena_destroy(arena);
}

static void every_side_says_whose_it_is(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct ruler ruler = {width_of, NULL};
    struct result *result = ready_result(arena, "systems/hill-coupe.ini", NULL);
    result->system->parts[system_first(result->system, KIND_VEHICLE)].as.vehicle.registration =
        "ABC 123";
    struct sheet_order order = {.result = result, .version = "9.9"};
    size_t count;
    const struct sketch *sides = sheet_sides(&order, &ruler, arena, &count);
    for (size_t i = 0; i < count; i++) {
        static const char *const wanted[] = {"ABC 123", "chassis number", "side ", "9.9"};
        for (size_t w = 0; w < sizeof wanted / sizeof wanted[0]; w++) {
            bool said = false;
            for (size_t k = 0; k < sides[i].count; k++)
                said = said || (sides[i].items[k].kind == SHAPE_WORDS &&
                                strstr(sides[i].items[k].words, wanted[w]) != NULL);
            if (!said)
                fail_msg("side %zu does not say %s", i + 1, wanted[w]);
        }
    }
    arena_destroy(arena);
}

/* What is noted as done is ticked on paper. */
static void what_is_done_is_ticked(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result =
        ready_result(arena, "systems/village-van.ini", "demo/village-van-work.ini");
    struct sheet_order order = {.result = result};
    struct document before = sheet_document(&order, arena);
    for (size_t i = 0; i < result->plan->steps.count; i++)
        result->plan->steps.items[i].done = true;
    struct document after = sheet_document(&order, arena);
    size_t ticked[2] = {0, 0}, boxes = 0;
    const struct document *both[] = {&before, &after};
    for (int d = 0; d < 2; d++)
        for (size_t i = 0; i < both[d]->count; i++) {
            ticked[d] += both[d]->items[i].done;
            boxes += d == 1 && both[d]->items[i].kind == BLOCK_TICK;
        }
    assert_int_equal(ticked[0], 0);
    assert_true(boxes > 40);
    assert_int_equal(ticked[1], boxes);
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

static void all_that_is_drawn_lies_on_the_page(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct ruler ruler = {width_of, NULL};
    struct result *result =
        ready_result(arena, "systems/village-van.ini", "demo/village-van-work.ini");
    size_t count;
    struct sheet_order order = {.result = result, .paper = PAPER_LETTER, .annexes = ~0u};
    const struct sketch *pages = sheet_sides(&order, &ruler, arena, &count);
    for (size_t i = 0; i < count; i++)
        for (size_t k = 0; k < pages[i].count; k++) {
            const struct shape *shape = &pages[i].items[k];
            for (int p = 0; p < shape->count; p++) {
                double x = shape->points[p].x, y = shape->points[p].y;
                if (!(x >= 9.9 && x <= 215.9 - 9.9 && y >= 9.9 && y <= 279.4 - 9.9))
                    fail_msg("side %zu: %g, %g %s", i + 1, x, y,
                             shape->words != NULL ? shape->words : "");
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
        assert_true(diagram_picture(result, PICTURE_SVG, 0, &svg[i], &error));
        assert_true(diagram_picture(result, PICTURE_PNG, 96, &png[i], &error));
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
    assert_true(diagram_picture(result, PICTURE_SVG, 0, &bytes[0], &error));
    assert_true(diagram_picture(result, PICTURE_PNG, 96, &bytes[1], &error));
    assert_true(diagram_picture(result, PICTURE_PDF, 0, &bytes[2], &error));
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
    assert_false(diagram_picture(result, PICTURE_PNG, 1e6, &bytes, &error));
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
    struct sheet_order order = {.result = fixture_result(arena, (struct fixture_choice){0})};
    bool done = sheet_pdf(&order, &bytes, &error);
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
        struct sheet_order order = {.result = result};
        bool done = sheet_pdf(&order, &bytes, &error);
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
        cmocka_unit_test(its_annexes_hold_every_figure_and_finding),
        cmocka_unit_test(the_sheet_of_the_demo_says_what_was_done),
        cmocka_unit_test(the_sheet_is_short),
        cmocka_unit_test(it_is_large_enough_for_a_workshop),
        cmocka_unit_test(every_side_says_whose_it_is),
        cmocka_unit_test(what_is_done_is_ticked),
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
