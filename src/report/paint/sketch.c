#include "report/paint/sketch.h"

#include <math.h>
#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "units/constants.h"

const char *sketch_shortened(struct arena *arena, const struct ruler *ruler, const char *words,
                             struct font font, double width)
{
    size_t length = strlen(words);
    const char *cut = words;
    while (length > 1 && ruler_width(ruler, cut, font) > width) {
        do
            length--;
        while (length > 1 && ((unsigned char)words[length] & 0xC0) == 0x80);
        cut = text_print(arena, "%.*s\u2026", (int)length, words);
    }
    return cut;
}

double points_to_mm(double points)
{
    return points * 25.4 / 72.0;
}

bool boxes_meet(struct box a, struct box b)
{
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

struct box box_wider(struct box box, double by)
{
    return (struct box){box.left - by, box.top - by, box.right + by, box.bottom + by};
}

double ruler_width(const struct ruler *ruler, const char *words, struct font font)
{
    return ruler->width(ruler->context, words, font);
}

struct sketch sketch_start(struct arena *arena, double width, double height)
{
    return (struct sketch){.arena = arena, .width = width, .height = height};
}

struct pen pen_of(double width, enum ink ink)
{
    return (struct pen){width, ink, DASH_SOLID};
}

static struct shape *add_path(struct sketch *sketch, const struct point *points, int count)
{
    struct shape *shape = LIST_ADD(sketch->arena, sketch);
    shape->kind = SHAPE_PATH;
    shape->group = sketch->group;
    shape->points = ARENA_ARRAY(sketch->arena, (size_t)count, struct point);
    shape->count = count;
    if (count > 0)
        memcpy(shape->points, points, (size_t)count * sizeof *points);
    return shape;
}

void sketch_path(struct sketch *sketch, const struct point *points, int count, struct pen pen)
{
    add_path(sketch, points, count)->pen = pen;
}

void sketch_rounded_path(struct sketch *sketch, const struct point *points, int count,
                         double rounding, struct pen pen)
{
    struct shape *shape = add_path(sketch, points, count);
    shape->pen = pen;
    shape->rounding = rounding;
}

void sketch_polygon(struct sketch *sketch, const struct point *points, int count, struct pen pen,
                    enum ink fill)
{
    struct shape *shape = add_path(sketch, points, count);
    shape->pen = pen;
    shape->fill = fill;
    shape->closed = true;
}

void sketch_line(struct sketch *sketch, double x1, double y1, double x2, double y2, struct pen pen)
{
    sketch_path(sketch, (struct point[]){{x1, y1}, {x2, y2}}, 2, pen);
}

void sketch_box(struct sketch *sketch, struct box box, double rounding, struct pen pen,
                enum ink fill)
{
    struct point corners[] = {
        {box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}};
    sketch_polygon(sketch, corners, 4, pen, fill);
    sketch->items[sketch->count - 1].rounding = rounding;
}

void sketch_arc(struct sketch *sketch, struct point centre, double radius, double from, double to,
                struct pen pen)
{
    struct shape *shape = add_path(sketch, &centre, 1);
    shape->kind = SHAPE_ARC;
    shape->radius = radius;
    shape->from = from;
    shape->to = to;
    shape->pen = pen;
}

void sketch_circle(struct sketch *sketch, struct point centre, double radius, struct pen pen,
                   enum ink fill)
{
    sketch_arc(sketch, centre, radius, 0, 2 * PI, pen);
    sketch->items[sketch->count - 1].fill = fill;
    sketch->items[sketch->count - 1].closed = true;
}

void sketch_words(struct sketch *sketch, double x, double y, const char *words, struct font font,
                  enum align align, enum ink ink)
{
    if (!words || !*words)
        return;
    struct point at = {x, y};
    struct shape *shape = add_path(sketch, &at, 1);
    shape->kind = SHAPE_WORDS;
    shape->words = text_copy(sketch->arena, words);
    shape->font = font;
    shape->align = align;
    shape->fill = ink;
}

static double distance(struct point a, struct point b)
{
    return hypot(b.x - a.x, b.y - a.y);
}

static struct point towards(struct point from, struct point to, double by)
{
    double whole = distance(from, to);
    double part = whole > 0 ? by / whole : 0;
    return (struct point){from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part};
}

struct corner sketch_corner(struct point before, struct point corner, struct point after,
                            double radius)
{
    const double bend = 0.45; /* near enough to a quarter circle */
    double room = fmin(distance(before, corner), distance(corner, after)) / 2;
    double r = fmin(radius, room);
    return (struct corner){towards(corner, before, r), towards(corner, before, r * bend),
                           towards(corner, after, r * bend), towards(corner, after, r)};
}

bool sketch_absurd(const struct sketch *sketch)
{
    return !(sketch->width > 0 && sketch->width < 2000 && sketch->height > 0 &&
             sketch->height < 2000);
}

void sketch_place(struct sketch *sketch, const struct sketch *part, double x, double y)
{
    for (size_t i = 0; i < part->count; i++) {
        const struct shape *from = &part->items[i];
        struct shape *shape = add_path(sketch, from->points, from->count);
        struct point *points = shape->points;
        *shape = *from;
        shape->points = points;
        for (int k = 0; k < shape->count; k++) {
            points[k].x += x;
            points[k].y += y;
        }
    }
}

struct line_list {
    const char **items;
    size_t count;
    size_t capacity;
};

/* The longest beginning of words, up to a blank or line end, that fits. At least one word. */
static size_t fitting(struct arena *arena, const struct ruler *ruler, const char *words,
                      struct font font, double width)
{
    size_t fits = 0;
    size_t at = 0;
    while (words[at] && words[at] != '\n') {
        size_t end = at;
        while (words[end] == ' ')
            end++;
        while (words[end] && words[end] != ' ' && words[end] != '\n')
            end++;
        const char *part = text_copy_part(arena, words, end);
        if (fits > 0 && ruler_width(ruler, part, font) > width)
            return fits;
        fits = at = end;
    }
    return fits;
}

struct lines sketch_wrap(struct arena *arena, const struct ruler *ruler, const char *words,
                         struct font font, double width)
{
    struct line_list list = {0};
    const char *rest = words ? words : "";
    while (*rest) {
        while (*rest == ' ')
            rest++;
        size_t length = fitting(arena, ruler, rest, font, width);
        *LIST_ADD(arena, &list) = text_copy_part(arena, rest, length);
        rest += length;
        while (*rest == ' ')
            rest++;
        if (*rest == '\n')
            rest++;
    }
    return (struct lines){list.items, (int)list.count};
}
