#include "report/diagram/symbols.h"

#include <stdio.h>

#include "report/diagram/labels.h"

void symbol_nipple(struct sketch *sketch, struct point at, int number)
{
    if (number <= 0) {
        sketch_circle(sketch, at, 1.3, pen_of(0.3, INK_GREY), INK_WHITE);
        return;
    }
    char words[12];
    snprintf(words, sizeof words, "%d", number);
    sketch_circle(sketch, at, 2.2, pen_of(0.4, INK_BLACK), INK_WHITE);
    struct font font = {.size = 8, .bold = number < 10};
    sketch_words(sketch, at.x, at.y + points_to_mm(font.size) * 0.36, words, font, ALIGN_MIDDLE,
                 INK_BLACK);
}

void symbol_letter(struct sketch *sketch, struct box box, const char *letter)
{
    sketch_box(sketch, box, 0, pen_of(0.25, INK_BLACK), INK_WHITE);
    sketch_words(sketch, (box.left + box.right) / 2,
                 (box.top + box.bottom) / 2 + points_to_mm(8) * 0.36, letter,
                 (struct font){.size = 8, .bold = true}, ALIGN_MIDDLE, INK_BLACK);
}

void symbol_inline_joint(struct sketch *sketch, struct point at, bool upright, bool bracket)
{
    double x = upright ? 1.6 : 0.45;
    double y = upright ? 0.45 : 1.6;
    struct box box = {at.x - x, at.y - y, at.x + x, at.y + y};
    sketch_box(sketch, box, 0, pen_of(0.25, INK_BLACK), bracket ? INK_BLACK : INK_WHITE);
}

void symbol_hose(struct sketch *sketch, const struct point *points, int count, enum tag tag,
                 struct pen core)
{
    bool old = tag == TAG_OLD;
    enum ink inside = old ? INK_DARK : tag == TAG_UNDATED ? INK_LIGHT : INK_WHITE;
    sketch_rounded_path(sketch, points, count, 2.0, pen_of(2 * HOSE_HALF, INK_BLACK));
    sketch_rounded_path(sketch, points, count, 2.0, pen_of(2 * HOSE_HALF - 0.6, inside));
    if (old)
        core.ink = INK_WHITE;
    sketch_rounded_path(sketch, points, count, 2.0, core);
}

void symbol_tag(struct sketch *sketch, double x, double y, double width, const struct label *label)
{
    enum tag tag = label->tag;
    bool filled = tag == TAG_OLD || tag == TAG_MISSING || tag == TAG_UNDATED;
    struct box box = {x, y, x + width, y + TAG_HEIGHT};
    sketch_box(sketch, box, 0.5, pen_of(0.3, INK_BLACK), filled ? INK_BLACK : INK_WHITE);
    struct font font = label_tag_font();
    sketch_words(sketch, x + width / 2, y + TAG_HEIGHT / 2 + points_to_mm(font.size) * 0.36,
                 label->tag_words, font, ALIGN_MIDDLE, filled ? INK_WHITE : INK_BLACK);
}
