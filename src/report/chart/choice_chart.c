#include "report/chart/choice_chart.h"

#include <math.h>

#include "advice/common/bores.h"
#include "advice/figures/part_bore.h"
#include "base/text.h"
#include "report/chart/contour.h"
#include "report/words/choose_words.h"
#include "units/unit.h"

enum { WIDTH = 190, HEIGHT = 168, LINES = 7 };

struct chart {
    struct sketch *sketch;
    const struct result *result;
    const struct choice_group *group;
    const struct choice_map *map;
    struct box box; /* of the map itself */
};

static struct point place(const struct chart *chart, double across, double up)
{
    const struct choice_map *map = chart->map;
    double x = (across - map->least[0]) / (map->most[0] - map->least[0]);
    double y = (up - map->least[1]) / (map->most[1] - map->least[1]);
    return (struct point){chart->box.left + x * (chart->box.right - chart->box.left),
                          chart->box.bottom - y * (chart->box.bottom - chart->box.top)};
}

/* A cell suits when its middle does: each step is the middle of one. */
static void draw_region(const struct chart *chart)
{
    double wide = (chart->box.right - chart->box.left) / (CHOICE_MAP - 1);
    double high = (chart->box.bottom - chart->box.top) / (CHOICE_MAP - 1);
    for (int x = 0; x < CHOICE_MAP; x++)
        for (int y = 0; y < CHOICE_MAP; y++) {
            if (!chart->map->suits[x][y])
                continue;
            double left = chart->box.left + (x - 0.5) * wide;
            double bottom = chart->box.bottom - (y - 0.5) * high;
            struct box cell = {fmax(left, chart->box.left), fmax(bottom - high, chart->box.top),
                               fmin(left + wide, chart->box.right),
                               fmin(bottom, chart->box.bottom)};
            sketch_box(chart->sketch, cell, 0, pen_of(0.1, INK_PALE), INK_PALE);
        }
}

/* A step of 1, 2 or 5 times a power of ten that gives some lines over a span. */
static double step_for(double span)
{
    double power = pow(10, floor(log10(span / LINES))), times = span / LINES / power;
    return (times > 5 ? 10 : times > 2 ? 5 : times > 1 ? 2 : 1) * power;
}

/* row: of the numbers below the upper edge, so that those of two families do not meet. */
static void draw_lines(const struct chart *chart, const double *values, double unit, double from,
                       double to, struct pen pen, const char *name, int row)
{
    const struct field field = {values, CHOICE_MAP, CHOICE_MAP, chart->box};
    double step = step_for((to - from) / unit);
    struct font font = {.size = 8};
    for (double at = ceil(from / unit / step) * step; at * unit <= to; at += step) {
        struct point end = contour_draw(chart->sketch, &field, at * unit, pen);
        if (isnan(end.x))
            continue;
        end.y = fmax(end.y, chart->box.top + 3 + 4 * row);
        struct box back = {end.x - 11, end.y - 2.6, end.x - 1, end.y + 0.6};
        sketch_box(chart->sketch, back, 0, pen_of(0, INK_NONE), INK_WHITE);
        sketch_words(chart->sketch, end.x - 1.5, end.y,
                     text_print(chart->sketch->arena, "%g %s", at, name), font, ALIGN_RIGHT,
                     INK_BLACK);
    }
}

/* Least and most of what is finite and not 0, where the pedal is on the floor. */
static void span_of(const double *values, double *least, double *most)
{
    *least = INFINITY;
    *most = -INFINITY;
    for (int i = 0; i < CHOICE_MAP * CHOICE_MAP; i++) {
        if (!isfinite(values[i]) || !(values[i] > 0))
            continue;
        *least = fmin(*least, values[i]);
        *most = fmax(*most, values[i]);
    }
}

static void draw_values(const struct chart *chart)
{
    bool imperial = chart->result->units == UNITS_IMPERIAL;
    const double *foot = &chart->map->foot[0][0], *left = &chart->map->left[0][0];
    double least, most, usual = chart->group->limits[CHOICE_FOOT];
    double pound = unit_read("1 lbf", DIMENSION_FORCE).value;
    double inch = unit_read("1 in", DIMENSION_LENGTH).value;
    span_of(left, &least, &most);
    draw_lines(chart, left, imperial ? inch : 1e-3, least, most,
               (struct pen){0.3, INK_DARK, DASH_SHORT}, imperial ? "in" : "mm", 1);
    span_of(foot, &least, &most);
    draw_lines(chart, foot, imperial ? pound : 1, least, fmin(most, 2.5 * usual),
               pen_of(0.4, INK_BLACK), imperial ? "lbf" : "N", 0);
}

/* The bore of a car on an axis of the group. */
static double bore_of(const struct chart *chart, const struct choice_car *car, int axis)
{
    const struct bore_axis *of = &chart->result->chosen->asked->axes[chart->group->axes[axis]];
    int at = car->at[chart->group->axes[axis]];
    return at < 0 ? part_bore(&chart->result->system->parts[of->parts[0]]).m : of->bores[at].m;
}

static bool is_within(const struct chart *chart, struct point point)
{
    const struct box *box = &chart->box;
    return point.x >= box->left && point.x <= box->right && point.y >= box->top &&
           point.y <= box->bottom;
}

static void draw_tried(const struct chart *chart)
{
    const struct bore_axis *across = &chart->result->chosen->asked->axes[chart->group->axes[0]];
    const struct bore_axis *up = &chart->result->chosen->asked->axes[chart->group->axes[1]];
    for (int a = 0; a < across->count; a++)
        for (int b = 0; b < up->count; b++) {
            struct point at = place(chart, across->bores[a].m, up->bores[b].m);
            if (chart->map->tried[a * up->count + b] && is_within(chart, at))
                sketch_circle(chart->sketch, at, 0.6, pen_of(0.15, INK_BLACK), INK_DARK);
        }
}

static void draw_marks(const struct chart *chart)
{
    const struct choice_group *group = chart->group;
    struct point now =
        place(chart, bore_of(chart, &group->before, 0), bore_of(chart, &group->before, 1));
    if (is_within(chart, now)) {
        struct pen cross = pen_of(0.7, INK_BLACK);
        sketch_line(chart->sketch, now.x - 2.2, now.y, now.x + 2.2, now.y, cross);
        sketch_line(chart->sketch, now.x, now.y - 2.2, now.x, now.y + 2.2, cross);
    }
    if (group->best_count > 0)
        sketch_circle(
            chart->sketch,
            place(chart, bore_of(chart, &group->best[0], 0), bore_of(chart, &group->best[0], 1)), 2,
            pen_of(0.7, INK_BLACK), INK_NONE);
}

/* Standard bores along an edge, those left out whose names would meet. */
static void draw_edge(const struct chart *chart, int axis)
{
    size_t count;
    const struct bore_row *rows = bore_rows(&count);
    struct font font = {.size = 8};
    double taken = axis == 0 ? -INFINITY : INFINITY;
    for (size_t i = 0; i < count; i++) {
        double m = rows[i].bore.m;
        if (m < chart->map->least[axis] - 1e-9 || m > chart->map->most[axis] + 1e-9)
            continue;
        struct point at = axis == 0 ? place(chart, m, chart->map->least[1])
                                    : place(chart, chart->map->least[0], m);
        struct pen pen = pen_of(0.25, INK_BLACK);
        if (axis == 0 && at.x - taken >= 15) {
            sketch_line(chart->sketch, at.x, at.y, at.x, at.y + 1.2, pen);
            sketch_words(chart->sketch, at.x, at.y + 4.2, rows[i].name, font, ALIGN_MIDDLE,
                         INK_BLACK);
            taken = at.x;
        } else if (axis == 1 && taken - at.y >= 3.4) {
            sketch_line(chart->sketch, at.x - 1.2, at.y, at.x, at.y, pen);
            sketch_words(chart->sketch, at.x - 2, at.y + 0.9, rows[i].name, font, ALIGN_RIGHT,
                         INK_BLACK);
            taken = at.y;
        }
    }
}

static void draw_words(const struct chart *chart)
{
    struct sketch *sketch = chart->sketch;
    struct arena *arena = sketch->arena;
    struct font font = {.size = 8}, large = {.size = 12, .bold = true};
    const char *title = system_vehicle(chart->result->system)->title;
    sketch_words(sketch, 8, 9, title != NULL ? title : "Car without a title", large, ALIGN_LEFT,
                 INK_BLACK);
    sketch_words(sketch, 8, 14, choose_headline(arena, chart->result, chart->group), font,
                 ALIGN_LEFT, INK_BLACK);
    sketch_words(
        sketch, 8, 19,
        text_print(arena, "up: %s", choose_axis_words(arena, chart->result, chart->group->axes[1])),
        font, ALIGN_LEFT, INK_BLACK);
    sketch_words(sketch, chart->box.right, chart->box.bottom + 9,
                 text_print(arena, "across: %s",
                            choose_axis_words(arena, chart->result, chart->group->axes[0])),
                 font, ALIGN_RIGHT, INK_BLACK);
    sketch_words(sketch, 8, HEIGHT - 8,
                 text_print(arena,
                            "whole lines: foot for a stop of %s; short dashes: pedal left; grey: "
                            "what suits",
                            unit_text(arena, chart->result->chosen->stop.m_s2,
                                      DIMENSION_ACCELERATION, chart->result->units)),
                 font, ALIGN_LEFT, INK_BLACK);
    sketch_words(sketch, 8, HEIGHT - 4,
                 chart->result->chosen->assumed
                     ? "cross: the car as it is; dots: what suits; ring: the best; rests on "
                       "values that are assumed"
                     : "cross: the car as it is; dots: what suits; ring: the best",
                 font, ALIGN_LEFT, INK_BLACK);
}

const struct choice_group *choice_chart_of(const struct result *result)
{
    for (int g = 0; result->chosen != NULL && g < result->chosen->group_count; g++) {
        const struct choice_map *map = result->chosen->groups[g].map;
        if (map != NULL && map->most[0] > map->least[0] && map->most[1] > map->least[1])
            return &result->chosen->groups[g];
    }
    return NULL;
}

struct sketch choice_chart(const struct result *result, const struct choice_group *group,
                           struct arena *arena)
{
    struct sketch sketch = sketch_start(arena, WIDTH, HEIGHT);
    struct chart chart = {&sketch, result, group, group->map, {26, 24, WIDTH - 8, HEIGHT - 24}};
    draw_region(&chart);
    draw_values(&chart);
    draw_tried(&chart);
    draw_marks(&chart);
    sketch_box(&sketch, chart.box, 0, pen_of(0.3, INK_BLACK), INK_NONE);
    draw_edge(&chart, 0);
    draw_edge(&chart, 1);
    draw_words(&chart);
    return sketch;
}

static bool make_page(const struct ruler *ruler, const void *of, struct arena *arena,
                      struct sketch *page, const char **error)
{
    const struct result *result = of;
    const struct choice_group *group = choice_chart_of(result);
    (void)ruler;
    if (group == NULL) {
        *error = "a picture is of two cylinders of the brakes, each with two bores at least, of "
                 "which all is known that their limits ask for";
        return false;
    }
    *page = choice_chart(result, group, arena);
    return true;
}

bool choice_picture(const struct result *result, enum picture_form form, double dots,
                    struct bytes *out, const char **error)
{
    const struct picture picture = {make_page,     result, system_vehicle(result->system)->title,
                                    result->today, form,   dots};
    return picture_bytes(&picture, out, error);
}
