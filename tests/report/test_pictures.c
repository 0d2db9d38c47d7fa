/* What stands in the files of a picture, beside its lines. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "report/diagram/diagram.h"
#include "report/paint/inks.h"
#include "report/paint/png.h"
#include "report/paint/svg.h"
#include "support/fixture_result.h"
#include "support/near.h"
#include "support/ready_cars.h"

static double width_of(void *context, const char *words, struct font font)
{
    return fixed_width(context, words, font.size);
}
static const struct ruler ruler = {width_of, NULL};

static const char *svg_of(struct arena *arena, const struct result *result)
{
    struct bytes bytes = {.arena = arena};
    const char *error = NULL;
    assert_true(diagram_picture(result, PICTURE_SVG, 0, &bytes, &error));
    return text_copy_part(arena, (const char *)bytes.items, bytes.count);
}

static void an_svg_has_words_title_and_description(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const char *svg =
        svg_of(arena, ready_result(arena, "systems/village-van.ini", "demo/village-van-work.ini"));
    assert_non_null(strstr(svg, "<title>Village van</title>"));
    assert_non_null(strstr(svg, "<desc>The wet side in plan view"));
    assert_non_null(strstr(svg, "front circuit: brake master, front tee, front left disc"));
    assert_non_null(strstr(svg, ">OLD 2008</text>"));
    assert_non_null(strstr(svg, ">load valve</text>"));
    arena_destroy(arena);
}

static void ids_follow_the_cars_names_and_are_each_given_once(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result =
        ready_result(arena, "systems/village-van.ini", "demo/village-van-work.ini");
    const char *svg = svg_of(arena, result);
    int parts = 0;
    for (int i = 0; i < result->system->part_count; i++) {
        const char *name = result->system->parts[i].name;
        enum part_kind kind = result->system->parts[i].kind;
        if (kind != KIND_PIPE && kind != KIND_HOSE && !kind_is_brake(kind) && kind != KIND_MASTER)
            continue;
        if (kind == KIND_HOSE && result->system->parts[i].as.hose.use != HOSE_PRESSURE)
            continue;
        char *id = text_print(arena, "<g id=\"%s\"", name);
        for (char *at = id + 7; *at; at++)
            *at = *at == ' ' ? '-' : *at;
        assert_non_null(strstr(svg, id));
        parts++;
    }
    assert_true(parts > 12);
    for (const char *at = svg; (at = strstr(at, "<g id=\"")); at += 7) {
        const char *end = strchr(at + 7, '"');
        assert_null(strstr(end, text_copy_part(arena, at, (size_t)(end - at) + 1)));
    }
    arena_destroy(arena);
}

/* The title on the page is cut where there is no room; the file has it whole. What XML uses itself
 * is written otherwise. */
static void a_long_title_is_whole_in_the_text(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, "systems/family-saloon.ini", NULL);
    struct vehicle *vehicle = NULL;
    for (int i = 0; i < result->system->part_count; i++)
        if (result->system->parts[i].kind == KIND_VEHICLE)
            vehicle = &result->system->parts[i].as.vehicle;
    assert_non_null(vehicle);
    vehicle->title = "Saloon <of my aunt & her neighbour> that stood in the barn behind the house "
                     "at the end of the long lane for all of twenty-seven winters";
    const char *svg = svg_of(arena, result);
    assert_non_null(strstr(svg,
                           "<title>Saloon &lt;of my aunt &amp; her neighbour&gt; that stood in "
                           "the barn behind the house at the end of the long lane for all of "
                           "twenty-seven winters</title>"));
    assert_null(strstr(svg, "winters</text>"));
    assert_non_null(strstr(svg, "\u2026</text>"));
    arena_destroy(arena);
}

static void names_that_are_alike_as_ids_get_ids_of_their_own(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct sketch sketch = sketch_start(arena, 50, 50);
    static const char *const names[] = {"rear tee", "rear-tee", "3rd tee"};
    for (int i = 0; i < 3; i++) {
        sketch.group = names[i];
        sketch_line(&sketch, 0, i, 10, i, pen_of(1, INK_BLACK));
    }
    struct bytes bytes = {.arena = arena};
    const char *error = NULL;
    assert_true(paint_svg(&sketch, &ruler, &bytes, &error));
    const char *svg = text_copy_part(arena, (const char *)bytes.items, bytes.count);
    assert_non_null(strstr(svg, "id=\"rear-tee\""));
    assert_non_null(strstr(svg, "id=\"rear-tee_2\""));
    assert_non_null(strstr(svg, "id=\"n-3rd-tee\""));
    arena_destroy(arena);
}

/* 72 dots an inch are 2,835 a metre; the chunk with its check sum as it stands in many files
 * (W3C, Portable Network Graphics, 11.3.5.3; the sum by the crc32 of another library). */
static void a_png_states_its_resolution(void **state)
{
    (void)state;
    static const unsigned char chunk[] = {0,    0, 0, 9,    'p',  'H', 'Y', 's',  0,    0,   0x0b,
                                          0x13, 0, 0, 0x0b, 0x13, 1,   0,   0x9a, 0x9c, 0x18};
    struct arena *arena = arena_create();
    struct sketch sketch = sketch_start(arena, 20, 20);
    struct bytes bytes = {.arena = arena};
    const char *error = NULL;
    assert_true(paint_png(&sketch, 72, &bytes, &error));
    assert_true(bytes.count > 60);
    assert_memory_equal(bytes.items + 33, chunk, sizeof chunk);
    struct bytes none = {.arena = arena, .items = (unsigned char *)"no picture", .count = 10};
    png_state_resolution(&none, 72);
    assert_int_equal(none.count, 10);
    arena_destroy(arena);
}

/* Circuits in grey: whatever the eye or the printer makes of their inks, dashes tell them apart,
 * and each ink is dark enough on paper: a contrast of 4.5 to 1 (WCAG 2.1, 1.4.3). */
static void circuits_are_told_apart_without_colour(void **state)
{
    (void)state;
    for (int ink = INK_FIRST; ink <= INK_FOURTH; ink++) {
        struct colour colour = ink_colour((enum ink)ink);
        const double channels[] = {colour.red, colour.green, colour.blue};
        const double weights[] = {0.2126, 0.7152, 0.0722};
        double luminance = 0;
        for (int i = 0; i < 3; i++)
            luminance +=
                weights[i] * (channels[i] <= 0.03928 ? channels[i] / 12.92
                                                     : pow((channels[i] + 0.055) / 1.055, 2.4));
        assert_true(1.05 / (luminance + 0.05) >= 4.5);
    }
    for (int a = 0; a < DASH_COUNT; a++)
        for (int b = 0; b < a; b++)
            assert_true(memcmp(dash_lengths((enum dash)a), dash_lengths((enum dash)b),
                               DASH_MOST * sizeof(double)) != 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_svg_has_words_title_and_description),
        cmocka_unit_test(ids_follow_the_cars_names_and_are_each_given_once),
        cmocka_unit_test(a_long_title_is_whole_in_the_text),
        cmocka_unit_test(names_that_are_alike_as_ids_get_ids_of_their_own),
        cmocka_unit_test(a_png_states_its_resolution),
        cmocka_unit_test(circuits_are_told_apart_without_colour),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
