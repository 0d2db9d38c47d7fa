#include "report/paint/paint.h"

#include <cairo-pdf.h>
#include <cairo.h>
#include <math.h>
#include <pango/pangocairo.h>
#include <setjmp.h>
#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "report/paint/inks.h"
#include "report/paint/png.h"
#include "units/constants.h"

/* More than any sheet or picture needs; a bound, so that nothing grows without end. */
enum { MOST_BYTES = 64 * 1024 * 1024 };

/* Text is laid out in tenths of a point: pango's own steps are too coarse in millimetres. */
#define TENTHS_OF_A_POINT_PER_MM (720.0 / 25.4)

static const char no_font[] = "no font with the letters of \"%s\" is installed; "
                              "install the package fonts-dejavu-core";
static const char no_memory[] = "not enough memory to draw";
static const char too_large[] = "the drawing would be too large";

struct painter {
    cairo_t *cairo;
    PangoFontMap *map;
    PangoContext *context;
    PangoLayout *layout;
    const char *unknown; /* first words with letters that no font has */
};

static bool text_tools_open(struct painter *painter)
{
    painter->map = pango_cairo_font_map_new();
    if (!painter->map)
        return false;
    painter->context = pango_font_map_create_context(painter->map);
    /* Printed letters stand where they belong, not on whole dots. */
    pango_context_set_round_glyph_positions(painter->context, FALSE);
    cairo_font_options_t *options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(painter->context, options);
    cairo_font_options_destroy(options);
    painter->layout = pango_layout_new(painter->context);
    pango_layout_set_single_paragraph_mode(painter->layout, TRUE);
    return true;
}

static void text_tools_close(struct painter *painter)
{
    g_clear_object(&painter->layout);
    g_clear_object(&painter->context);
    g_clear_object(&painter->map);
}

static void set_words(struct painter *painter, const char *words, struct font font)
{
    PangoFontDescription *description = pango_font_description_new();
    pango_font_description_set_family_static(description, font.mono ? "DejaVu Sans Mono, monospace"
                                                                    : "DejaVu Sans, sans-serif");
    pango_font_description_set_weight(description,
                                      font.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_style(description,
                                     font.slanted ? PANGO_STYLE_OBLIQUE : PANGO_STYLE_NORMAL);
    pango_font_description_set_absolute_size(description, font.size * 10.0 * PANGO_SCALE);
    pango_layout_set_font_description(painter->layout, description);
    pango_font_description_free(description);
    /* One invalid byte would cost all that is drawn after it. */
    bool sound = text_is_utf8(words, strlen(words));
    pango_layout_set_text(painter->layout, sound ? words : "?", -1);
    if (pango_layout_get_unknown_glyphs_count(painter->layout) > 0 && !painter->unknown)
        painter->unknown = words;
}

static double words_width(struct painter *painter)
{
    PangoRectangle extents;
    pango_layout_get_extents(painter->layout, NULL, &extents);
    return (double)extents.width / PANGO_SCALE / TENTHS_OF_A_POINT_PER_MM;
}

static double measure(void *context, const char *words, struct font font)
{
    struct painter *painter = context;
    set_words(painter, words, font);
    return words_width(painter);
}

bool paint_ruler_open(struct ruler *ruler, const char **error)
{
    struct painter *painter = g_new0(struct painter, 1);
    *ruler = (struct ruler){measure, painter};
    if (!text_tools_open(painter)) {
        *error = no_memory;
        return false;
    }
    measure(painter, "Ab1", (struct font){.size = 8});
    if (painter->unknown) {
        *error = "no font is installed; install the package fonts-dejavu-core";
        return false;
    }
    return true;
}

void paint_ruler_close(struct ruler *ruler)
{
    struct painter *painter = ruler->context;
    if (!painter)
        return;
    text_tools_close(painter);
    g_free(painter);
    ruler->context = NULL;
}

static void set_ink(cairo_t *cairo, enum ink ink)
{
    struct colour colour = ink_colour(ink);
    cairo_set_source_rgb(cairo, colour.red, colour.green, colour.blue);
}

static void set_pen(cairo_t *cairo, struct pen pen)
{
    double lengths[DASH_MOST];
    int count = 0;
    for (const double *length = dash_lengths(pen.dash); length[count] > 0; count++)
        lengths[count] = length[count] * pen.width;
    cairo_set_dash(cairo, lengths, count, 0);
    cairo_set_line_width(cairo, pen.width);
    cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(cairo, CAIRO_LINE_CAP_BUTT);
    set_ink(cairo, pen.ink);
}

/* A corner as a curve that starts and ends a little before it. */
static void round_corner(cairo_t *cairo, struct point before, struct point corner,
                         struct point after, double radius)
{
    struct corner curve = sketch_corner(before, corner, after, radius);
    cairo_line_to(cairo, curve.in.x, curve.in.y);
    cairo_curve_to(cairo, curve.first.x, curve.first.y, curve.second.x, curve.second.y, curve.out.x,
                   curve.out.y);
}

static void trace_path(cairo_t *cairo, const struct shape *shape)
{
    const struct point *p = shape->points;
    int n = shape->count;
    bool round_all = shape->closed && shape->rounding > 0;
    struct point start = p[0];
    if (round_all)
        start = (struct point){(p[0].x + p[n - 1].x) / 2, (p[0].y + p[n - 1].y) / 2};
    cairo_move_to(cairo, start.x, start.y);
    for (int i = round_all ? 0 : 1; i < n; i++) {
        bool inner = round_all || i < n - 1;
        if (shape->rounding > 0 && inner)
            round_corner(cairo, p[(i + n - 1) % n], p[i], p[(i + 1) % n], shape->rounding);
        else
            cairo_line_to(cairo, p[i].x, p[i].y);
    }
    if (shape->closed)
        cairo_close_path(cairo);
}

static void paint_words(struct painter *painter, const struct shape *shape)
{
    cairo_t *cairo = painter->cairo;
    set_words(painter, shape->words, shape->font);
    double width = words_width(painter);
    double x = shape->points[0].x;
    if (shape->align == ALIGN_MIDDLE)
        x -= width / 2;
    else if (shape->align == ALIGN_RIGHT)
        x -= width;
    cairo_save(cairo);
    set_ink(cairo, shape->fill);
    cairo_translate(cairo, x, shape->points[0].y);
    cairo_scale(cairo, 1 / TENTHS_OF_A_POINT_PER_MM, 1 / TENTHS_OF_A_POINT_PER_MM);
    cairo_move_to(cairo, 0, 0);
    pango_cairo_show_layout_line(cairo, pango_layout_get_line_readonly(painter->layout, 0));
    cairo_restore(cairo);
}

static void paint_shape(struct painter *painter, const struct shape *shape)
{
    cairo_t *cairo = painter->cairo;
    if (shape->count == 0)
        return;
    if (shape->kind == SHAPE_WORDS) {
        paint_words(painter, shape);
        return;
    }
    cairo_new_path(cairo);
    if (shape->kind == SHAPE_ARC) {
        cairo_arc(cairo, shape->points[0].x, shape->points[0].y, shape->radius, shape->from,
                  shape->to);
        if (shape->closed)
            cairo_close_path(cairo);
    } else {
        trace_path(cairo, shape);
    }
    if (shape->fill != INK_NONE) {
        set_ink(cairo, shape->fill);
        cairo_fill_preserve(cairo);
    }
    if (shape->pen.width > 0) {
        set_pen(cairo, shape->pen);
        cairo_stroke(cairo);
    }
    cairo_new_path(cairo);
}

/* Takes bytes from cairo. An arena jumps when memory is out, which must not pass through cairo. */
static cairo_status_t take_bytes(void *closure, const unsigned char *data, unsigned int length)
{
    struct bytes *out = closure;
    if (out->count + length > MOST_BYTES)
        return CAIRO_STATUS_WRITE_ERROR;
    jmp_buf here;
    jmp_buf *before = arena_escape_to(out->arena, &here);
    if (setjmp(here) != 0) {
        arena_escape_to(out->arena, before);
        return CAIRO_STATUS_NO_MEMORY;
    }
    while (out->capacity - out->count < length)
        out->items = list_room(out->arena, out->items, out->capacity, &out->capacity, 1);
    arena_escape_to(out->arena, before);
    memcpy(out->items + out->count, data, length);
    out->count += length;
    return CAIRO_STATUS_SUCCESS;
}

/* Why a drawing failed, or NULL when it did not. */
static const char *complaint(const struct painter *painter, cairo_surface_t *surface,
                             struct arena *arena)
{
    cairo_status_t status = cairo_status(painter->cairo);
    if (status == CAIRO_STATUS_SUCCESS)
        status = cairo_surface_status(surface);
    if (status == CAIRO_STATUS_NO_MEMORY)
        return no_memory;
    if (status != CAIRO_STATUS_SUCCESS)
        return cairo_status_to_string(status);
    if (painter->unknown)
        return text_print(arena, no_font, painter->unknown);
    return NULL;
}

/* Paints all pages on a surface, then finishes and destroys it. scale: surface units per mm. */
static const char *paint_all(cairo_surface_t *surface, const struct sketch *pages, int count,
                             double scale, struct bytes *out)
{
    struct painter painter = {0};
    painter.cairo = cairo_create(surface);
    const char *error = text_tools_open(&painter) ? NULL : no_memory;
    cairo_surface_type_t type = cairo_surface_get_type(surface);
    for (int i = 0; i < count && !error; i++) {
        if (type == CAIRO_SURFACE_TYPE_PDF)
            cairo_pdf_surface_set_size(surface, pages[i].width * scale, pages[i].height * scale);
        cairo_save(painter.cairo);
        if (type == CAIRO_SURFACE_TYPE_IMAGE) {
            set_ink(painter.cairo, INK_WHITE);
            cairo_paint(painter.cairo);
        }
        cairo_scale(painter.cairo, scale, scale);
        for (size_t k = 0; k < pages[i].count; k++)
            paint_shape(&painter, &pages[i].items[k]);
        cairo_restore(painter.cairo);
        cairo_show_page(painter.cairo);
    }
    if (!error && type == CAIRO_SURFACE_TYPE_IMAGE) {
        cairo_status_t written = cairo_surface_write_to_png_stream(surface, take_bytes, out);
        if (written != CAIRO_STATUS_SUCCESS)
            error = written == CAIRO_STATUS_NO_MEMORY ? no_memory : cairo_status_to_string(written);
    } else {
        cairo_surface_finish(surface);
    }
    struct painter verdict = painter;
    text_tools_close(&painter);
    if (!error) {
        jmp_buf here;
        jmp_buf *before = arena_escape_to(out->arena, &here);
        error = setjmp(here) == 0 ? complaint(&verdict, surface, out->arena) : no_memory;
        arena_escape_to(out->arena, before);
    }
    cairo_destroy(painter.cairo);
    cairo_surface_destroy(surface);
    return error;
}

bool paint_pdf(const struct sketch *pages, int count, const char *title, struct date date,
               struct bytes *out, const char **error)
{
    for (int i = 0; i < count; i++)
        if (sketch_absurd(&pages[i])) {
            *error = too_large;
            return false;
        }
    const double scale = 72.0 / 25.4;
    cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(
        take_bytes, out, pages[0].width * scale, pages[0].height * scale);
    /* cairo would write the clock's time; a day is all that the result knows. */
    char day[] = "2000-01-01T00:00:00Z";
    if (date_known(date) && date.month > 0 && date.day > 0) {
        char words[16];
        date_write(date, words);
        memcpy(day, words, 10);
    }
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, day);
    if (title && text_is_utf8(title, strlen(title)))
        cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title);
    *error = paint_all(surface, pages, count, scale, out);
    return *error == NULL;
}

bool paint_png(const struct sketch *sketch, double dots, struct bytes *out, const char **error)
{
    double scale = dots / 25.4;
    double pixels = sketch->width * scale * sketch->height * scale;
    if (sketch_absurd(sketch) || !(dots >= 20 && dots <= 1200) || !(pixels < 2e8)) {
        *error = too_large;
        return false;
    }
    cairo_surface_t *surface = cairo_image_surface_create(
        CAIRO_FORMAT_RGB24, (int)ceil(sketch->width * scale), (int)ceil(sketch->height * scale));
    *error = paint_all(surface, sketch, 1, scale, out);
    if (*error == NULL)
        png_state_resolution(out, dots);
    return *error == NULL;
}
