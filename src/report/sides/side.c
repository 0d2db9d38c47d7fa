#include "report/sides/side.h"

#include <math.h>

#include "base/text.h"

#define LINE_HEIGHT 1.28 /* lines of text apart, in sizes of the font */
#define FOOT        5.5

double side_left(void)
{
    return SIDE_MARGIN;
}

double side_right(const struct side *side)
{
    return side->width - SIDE_MARGIN;
}

double side_width(const struct side *side)
{
    return side->width - 2 * SIDE_MARGIN;
}

double side_over(const struct side *side)
{
    return side->height - SIDE_MARGIN - FOOT - side->y;
}

double side_box(const struct side *side)
{
    return side->size < 9.5 ? 4.0 : SIDE_BOX;
}

struct font side_font(const struct side *side, enum tone tone)
{
    struct font font = {.size = side->size};
    font.bold = tone == TONE_STRONG || tone == TONE_DANGER || tone == TONE_WARNING;
    if (tone == TONE_SMALL)
        font.size = fmax(SIDE_LEAST, side->size - 2);
    return font;
}

struct font side_small(void)
{
    return (struct font){.size = SIDE_LEAST};
}

double side_line(struct font font)
{
    return points_to_mm(font.size) * LINE_HEIGHT;
}

void side_need(struct side *side, double height)
{
    if (!side->measuring && height > side_over(side))
        side_turn(side);
}

static struct sketch *page_of(struct side *side)
{
    return &side->sides.items[side->sides.count - 1];
}

static double baseline(double y, struct font font)
{
    return y + points_to_mm(font.size) * 1.02;
}

void side_one_line(struct side *side, double x, double y, const char *words, struct font font,
                   enum align align)
{
    if (!side->measuring)
        sketch_words(page_of(side), x, baseline(y, font), words, font, align, INK_BLACK);
}

double side_words_aligned(struct side *side, double x, double y, double width, const char *words,
                          struct font font, enum align align)
{
    if (words == NULL || *words == '\0')
        return y;
    struct lines lines = sketch_wrap(side->arena, side->ruler, words, font, width);
    double at = align == ALIGN_RIGHT ? x + width : align == ALIGN_MIDDLE ? x + width / 2 : x;
    for (int i = 0; i < lines.count; i++, y += side_line(font))
        side_one_line(side, at, y, lines.items[i], font, align);
    return y;
}

double side_words(struct side *side, double x, double y, double width, const char *words,
                  struct font font)
{
    return side_words_aligned(side, x, y, width, words, font, ALIGN_LEFT);
}

double side_words_height(const struct side *side, double width, const char *words, struct font font)
{
    struct side measured = *side;
    measured.measuring = true;
    return side_words(&measured, 0, 0, width, words, font);
}

void side_rule(struct side *side, double left, double right, double y, double thick)
{
    if (!side->measuring)
        sketch_line(page_of(side), left, y, right, y,
                    pen_of(thick, thick < 0.3 ? INK_GREY : INK_BLACK));
}

void side_tick_box(struct side *side, double x, double y, bool done)
{
    double size = side_box(side);
    struct box box = {x, y, x + size, y + size};
    struct point tick[] = {{x + 0.2 * size, y + 0.55 * size},
                           {x + 0.42 * size, y + 0.8 * size},
                           {x + 0.85 * size, y + 0.2 * size}};
    if (side->measuring)
        return;
    sketch_box(page_of(side), box, 0.3, pen_of(0.4, INK_BLACK), INK_WHITE);
    if (done)
        sketch_path(page_of(side), tick, 3, pen_of(0.8, INK_BLACK));
}

void side_blank(struct side *side, double x, double right, double y, const char *words)
{
    struct font font = side_small();
    double low = y + SIDE_WRITTEN;
    side_one_line(side, x, low - side_line(font), words, font, ALIGN_LEFT);
    double start = x;
    if (words != NULL && *words != '\0')
        start += ruler_width(side->ruler, words, font) + 1.5;
    side_rule(side, start, fmax(start, right), low, 0.3);
}

double side_tag(struct side *side, double x, double y, const char *word, bool filled)
{
    struct font font = {.size = SIDE_LEAST, .bold = true};
    double width = ruler_width(side->ruler, word, font) + 2.4;
    struct box box = {x, y, x + width, y + 4.2};
    if (side->measuring)
        return width;
    sketch_box(page_of(side), box, 0.7, pen_of(0.35, INK_BLACK), filled ? INK_BLACK : INK_WHITE);
    sketch_words(page_of(side), x + width / 2, y + 3.2, word, font, ALIGN_MIDDLE,
                 filled ? INK_WHITE : INK_BLACK);
    return width;
}
