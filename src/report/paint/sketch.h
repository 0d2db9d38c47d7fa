#ifndef FIRMPEDAL_REPORT_PAINT_SKETCH_H
#define FIRMPEDAL_REPORT_PAINT_SKETCH_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"

/* A drawn page as a plain value: lines, arcs and texts in millimetres, x to the right, y down.
 * Layout makes it, tests read it, paint paints it. */

struct point {
    double x, y;
};
struct box {
    double left, top, right, bottom;
};

/* Inks are dark enough to stay apart from paper when printed in black and white. */
enum ink {
    INK_NONE,
    INK_BLACK,
    INK_DARK,
    INK_GREY,
    INK_LIGHT,
    INK_PALE,
    INK_WHITE,
    INK_FIRST, /* circuits, in order */
    INK_SECOND,
    INK_THIRD,
    INK_FOURTH,
    INK_COUNT
};

enum dash {
    DASH_SOLID,
    DASH_LONG,
    DASH_CHAIN, /* long, dot */
    DASH_DOUBLE_CHAIN,
    DASH_TRIPLE_CHAIN,
    DASH_LONG_SHORT,
    DASH_PAIRS, /* of dots */
    DASH_SHORT,
    DASH_DOTS,
    DASH_COUNT
};

struct pen {
    double width; /* mm; 0: no line */
    enum ink ink;
    enum dash dash;
};

struct font {
    double size; /* points */
    bool bold;
    bool slanted;
    bool mono;
};

enum align { ALIGN_LEFT, ALIGN_MIDDLE, ALIGN_RIGHT };

enum shape_kind { SHAPE_PATH, SHAPE_ARC, SHAPE_WORDS };

struct shape {
    enum shape_kind kind;
    struct pen pen;
    enum ink fill;
    struct point *points; /* path: its corners; arc: the centre; words: where their baseline is */
    int count;
    bool closed;
    double rounding; /* path: radius of its corners, mm */
    double radius;   /* arc */
    double from, to; /* arc: angles, rad, clockwise from x; a whole turn is a circle */
    const char *words;
    struct font font;
    enum align align;
    const char *group; /* the name of what it belongs to, or NULL */
};

struct sketch {
    struct arena *arena;
    double width, height;    /* mm */
    const char *title;       /* what it shows, or NULL */
    const char *description; /* the same in words, for those who do not see it, or NULL */
    const char *group;       /* given to every shape that is added */
    struct shape *items;
    size_t count;
    size_t capacity;
};

/* How wide words are in a font, mm. Paint has one that asks the real fonts; tests pass a fixed
 * one, so that what they expect does not depend on fonts. */
struct ruler {
    double (*width)(void *context, const char *words, struct font font);
    void *context;
};
double ruler_width(const struct ruler *ruler, const char *words, struct font font);

struct sketch sketch_start(struct arena *arena, double width, double height);

struct pen pen_of(double width, enum ink ink);

/* Add one shape each. The points are copied. */
void sketch_path(struct sketch *sketch, const struct point *points, int count, struct pen pen);
void sketch_rounded_path(struct sketch *sketch, const struct point *points, int count,
                         double rounding, struct pen pen);
void sketch_polygon(struct sketch *sketch, const struct point *points, int count, struct pen pen,
                    enum ink fill);
void sketch_line(struct sketch *sketch, double x1, double y1, double x2, double y2, struct pen pen);
void sketch_box(struct sketch *sketch, struct box box, double rounding, struct pen pen,
                enum ink fill);
void sketch_circle(struct sketch *sketch, struct point centre, double radius, struct pen pen,
                   enum ink fill);
void sketch_arc(struct sketch *sketch, struct point centre, double radius, double from, double to,
                struct pen pen);
/* y is the baseline. */
void sketch_words(struct sketch *sketch, double x, double y, const char *words, struct font font,
                  enum align align, enum ink ink);

/* A corner rounded: a curve from in to out, with the points that bend it. */
struct corner {
    struct point in, first, second, out;
};
struct corner sketch_corner(struct point before, struct point corner, struct point after,
                            double radius);

/* Whether a sketch is larger than any paper, or has no size. */
bool sketch_absurd(const struct sketch *sketch);

/* Adds all shapes of one sketch to another, moved and scaled (texts keep their size when the scale
 * is 1 only). */
void sketch_place(struct sketch *sketch, const struct sketch *part, double x, double y);

/* Breaks words into lines that are no wider than width; a single longer word stands alone. A line
 * end in the words ends a line. Lives in the arena. */
struct lines {
    const char **items;
    int count;
};
struct lines sketch_wrap(struct arena *arena, const struct ruler *ruler, const char *words,
                         struct font font, double width);

/* Words up to where they fit, with three dots where something is left out. */
const char *sketch_shortened(struct arena *arena, const struct ruler *ruler, const char *words,
                             struct font font, double width);

/* Millimetres that a size in points is high. */
double points_to_mm(double points);

bool boxes_meet(struct box a, struct box b);
/* The box made larger on all sides. */
struct box box_wider(struct box box, double by);

#endif
