#include "report/paint/svg.h"

#include <math.h>
#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "report/paint/inks.h"
#include "units/constants.h"

struct writing {
    struct text text;
    const struct sketch *sketch;
    const struct ruler *ruler;
    const char *group; /* that is open, or NULL */
    struct {
        const char **items;
        size_t count;
        size_t capacity;
    } ids;
};

/* Words as XML has them; what is no letter to it becomes a question mark. */
static void add_words(struct text *text, const char *words)
{
    if (!text_is_utf8(words, strlen(words)))
        words = "?";
    for (const char *at = words; *at; at++) {
        unsigned char letter = (unsigned char)*at;
        if (letter == '&')
            text_add(text, "&amp;");
        else if (letter == '<')
            text_add(text, "&lt;");
        else if (letter == '>')
            text_add(text, "&gt;");
        else if (letter == '"')
            text_add(text, "&quot;");
        else
            text_add_bytes(text, letter < ' ' || letter == 0x7f ? "?" : at, 1);
    }
}

/* A number with as many places as a thousandth of a millimetre needs. */
static void add_number(struct text *text, double value)
{
    double rounded = round(value * 1000) / 1000;
    text_add(text, "%.10g", rounded == 0 ? 0.0 : rounded);
}

static void add_point(struct text *text, const char *before, struct point point)
{
    text_add(text, "%s", before);
    add_number(text, point.x);
    text_add(text, " ");
    add_number(text, point.y);
}

static void add_attribute(struct text *text, const char *name, double value)
{
    text_add(text, " %s=\"", name);
    add_number(text, value);
    text_add(text, "\"");
}

static void add_ink(struct text *text, const char *name, enum ink ink)
{
    struct colour colour = ink_colour(ink);
    text_add(text, " %s=\"#%02x%02x%02x\"", name, (unsigned)lround(colour.red * 255),
             (unsigned)lround(colour.green * 255), (unsigned)lround(colour.blue * 255));
}

static void add_pen(struct text *text, struct pen pen)
{
    if (!(pen.width > 0))
        return;
    add_ink(text, "stroke", pen.ink);
    add_attribute(text, "stroke-width", pen.width);
    const double *lengths = dash_lengths(pen.dash);
    for (int i = 0; lengths[i] > 0; i++) {
        text_add(text, i == 0 ? " stroke-dasharray=\"" : " ");
        add_number(text, lengths[i] * pen.width);
    }
    if (lengths[0] > 0)
        text_add(text, "\"");
}

static void add_fill(struct text *text, enum ink ink)
{
    if (ink == INK_NONE)
        text_add(text, " fill=\"none\"");
    else
        add_ink(text, "fill", ink);
}

static void add_path(struct text *text, const struct shape *shape)
{
    const struct point *p = shape->points;
    int n = shape->count;
    bool round_all = shape->closed && shape->rounding > 0;
    text_add(text, "<path d=\"");
    if (round_all)
        add_point(text, "M", (struct point){(p[0].x + p[n - 1].x) / 2, (p[0].y + p[n - 1].y) / 2});
    else
        add_point(text, "M", p[0]);
    for (int i = round_all ? 0 : 1; i < n; i++) {
        if (!(shape->rounding > 0 && (round_all || i < n - 1))) {
            add_point(text, "L", p[i]);
            continue;
        }
        struct corner corner =
            sketch_corner(p[(i + n - 1) % n], p[i], p[(i + 1) % n], shape->rounding);
        add_point(text, "L", corner.in);
        add_point(text, "C", corner.first);
        add_point(text, " ", corner.second);
        add_point(text, " ", corner.out);
    }
    text_add(text, shape->closed ? "Z\"" : "\"");
}

static void add_arc(struct text *text, const struct shape *shape)
{
    struct point c = shape->points[0];
    double r = shape->radius;
    if (shape->to - shape->from >= 2 * PI - 1e-9) {
        text_add(text, "<circle");
        add_attribute(text, "cx", c.x);
        add_attribute(text, "cy", c.y);
        add_attribute(text, "r", r);
        return;
    }
    add_point(text, "<path d=\"M",
              (struct point){c.x + r * cos(shape->from), c.y + r * sin(shape->from)});
    add_point(text, "A", (struct point){r, r});
    add_point(text, shape->to - shape->from > PI ? " 0 1 1 " : " 0 0 1 ",
              (struct point){c.x + r * cos(shape->to), c.y + r * sin(shape->to)});
    text_add(text, shape->closed ? "Z\"" : "\"");
}

static void add_text(struct writing *writing, const struct shape *shape)
{
    static const char *const anchors[] = {"start", "middle", "end"};
    struct text *text = &writing->text;
    text_add(text, "<text");
    add_attribute(text, "x", shape->points[0].x);
    add_attribute(text, "y", shape->points[0].y);
    add_attribute(text, "font-size", points_to_mm(shape->font.size));
    add_attribute(text, "textLength", ruler_width(writing->ruler, shape->words, shape->font));
    text_add(text, " text-anchor=\"%s\"%s%s%s", anchors[shape->align],
             shape->font.bold ? " font-weight=\"bold\"" : "",
             shape->font.slanted ? " font-style=\"oblique\"" : "",
             shape->font.mono ? " font-family=\"DejaVu Sans Mono, monospace\"" : "");
    add_fill(text, shape->fill);
    text_add(text, ">");
    add_words(text, shape->words);
    text_add(text, "</text>\n");
}

static void add_shape(struct writing *writing, const struct shape *shape)
{
    struct text *text = &writing->text;
    if (shape->kind == SHAPE_WORDS) {
        add_text(writing, shape);
        return;
    }
    if (shape->kind == SHAPE_ARC)
        add_arc(text, shape);
    else
        add_path(text, shape);
    add_fill(text, shape->fill);
    add_pen(text, shape->pen);
    text_add(text, "/>\n");
}

static bool is_letter(unsigned char byte)
{
    return byte >= 0x80 || (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
}

/* A name as an id: what an id may not hold becomes a hyphen, one for all that stand together. It
 * begins with a letter. Letters beyond ASCII may stay. */
static const char *tidy_id(struct arena *arena, const char *name)
{
    bool sound = text_is_utf8(name, strlen(name));
    char *id = text_print(arena, "%s%s", sound && is_letter((unsigned char)*name) ? "" : "n-",
                          sound ? name : "");
    size_t count = 0;
    for (const char *at = id; *at; at++)
        if (is_letter((unsigned char)*at) || (*at >= '0' && *at <= '9'))
            id[count++] = *at;
        else if (count > 0 && id[count - 1] != '-')
            id[count++] = '-';
    id[count] = '\0';
    return id;
}

static bool is_given_away(const struct writing *writing, const char *id)
{
    for (size_t i = 0; i < writing->ids.count; i++)
        if (strcmp(writing->ids.items[i], id) == 0)
            return true;
    return false;
}

/* An id that was given away gets a number behind it. */
static const char *id_of(struct writing *writing, const char *name)
{
    struct arena *arena = writing->text.arena;
    const char *id = tidy_id(arena, name), *own = id;
    for (int same = 2; is_given_away(writing, own); same++)
        own = text_print(arena, "%s_%d", id, same);
    *LIST_ADD(arena, &writing->ids) = own;
    return own;
}

static void open_group(struct writing *writing, const char *group)
{
    if (writing->group == group)
        return;
    if (writing->group)
        text_add(&writing->text, "</g>\n");
    writing->group = group;
    if (!group)
        return;
    text_add(&writing->text, "<g id=\"%s\"><title>", id_of(writing, group));
    add_words(&writing->text, group);
    text_add(&writing->text, "</title>\n");
}

static void add_head(struct writing *writing)
{
    struct text *text = &writing->text;
    const struct sketch *sketch = writing->sketch;
    text_add(text, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                   "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\"");
    text_add(text, " width=\"%.10gmm\" height=\"%.10gmm\"", sketch->width, sketch->height);
    text_add(text, " viewBox=\"0 0 %.10g %.10g\"", sketch->width, sketch->height);
    text_add(text, " font-family=\"DejaVu Sans, sans-serif\" stroke-linejoin=\"round\">\n");
    if (sketch->title) {
        text_add(text, "<title>");
        add_words(text, sketch->title);
        text_add(text, "</title>\n");
    }
    if (sketch->description) {
        text_add(text, "<desc>");
        add_words(text, sketch->description);
        text_add(text, "</desc>\n");
    }
    text_add(text, "<rect width=\"100%%\" height=\"100%%\" fill=\"#ffffff\"/>\n");
}

bool paint_svg(const struct sketch *sketch, const struct ruler *ruler, struct bytes *out,
               const char **error)
{
    if (sketch_absurd(sketch)) {
        *error = "the drawing would be too large";
        return false;
    }
    struct writing writing = {.text = text_start(out->arena), .sketch = sketch, .ruler = ruler};
    add_head(&writing);
    for (size_t i = 0; i < sketch->count; i++) {
        const struct shape *shape = &sketch->items[i];
        if (shape->count == 0)
            continue;
        open_group(&writing, shape->group);
        add_shape(&writing, shape);
    }
    open_group(&writing, NULL);
    text_add(&writing.text, "</svg>\n");
    out->items = (unsigned char *)writing.text.items;
    out->count = writing.text.count;
    out->capacity = out->count;
    return true;
}
