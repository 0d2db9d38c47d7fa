#include "report/sides/side.h"

#include <math.h>

#define INDENT     4.0
#define BETWEEN    4.0 /* from the words of one box to the next box */
#define BOX_GAP    2.0 /* from a box to its words */
#define LINE_APART 0.4 /* between rows of boxes */
#define SIGNAL     22.0

void side_end_line(struct side *side)
{
    if (side->x > side_left() && !isnan(side->x))
        side->y += side_box(side) + LINE_APART;
    side->x = side_left();
}

static void put_head(struct side *side, const struct block *block)
{
    struct font font = {.size = block->level > 2 ? side->size + 0.5 : side->size + 2, .bold = true};
    double y = side->y + 1.2;
    if (block->level <= 2) {
        side_rule(side, side_left(), side_right(side), y, 0.5);
        y += 0.8;
    }
    double end = side_words(side, side_left(), y, side_width(side), block->words, font);
    if (block->aside != NULL) {
        double start = ruler_width(side->ruler, block->words, font) + 4;
        struct font plain = side_font(side, TONE_SMALL);
        double shift = points_to_mm(font.size - plain.size) * 1.02;
        end = fmax(end, side_words(side, side_left() + start, y + shift, side_width(side) - start,
                                   block->aside, plain));
    }
    side->y = end + 0.4;
}

/* White words on a black bar: what hurts most. */
static void put_strip(struct side *side, const struct block *block)
{
    struct font font = {.size = side->size - 1, .bold = true};
    struct lines lines =
        sketch_wrap(side->arena, side->ruler, block->words, font, side_width(side) - 6);
    double height = lines.count * side_line(font) + 1.8;
    side_need(side, height);
    struct box box = {side_left(), side->y, side_right(side), side->y + height};
    if (!side->measuring) {
        struct sketch *page = &side->sides.items[side->sides.count - 1];
        sketch_box(page, box, 0, pen_of(0, INK_NONE), INK_BLACK);
        for (int i = 0; i < lines.count; i++)
            sketch_words(page, side->width / 2,
                         box.top + 0.9 + side_line(font) * i + points_to_mm(font.size) * 1.02,
                         lines.items[i], font, ALIGN_MIDDLE, INK_WHITE);
    }
    side->y += height + 0.8;
}

static void put_words(struct side *side, const struct block *block)
{
    if (block->tone == TONE_DANGER) {
        put_strip(side, block);
        return;
    }
    double left = side_left() + (block->indent + block->hang) * INDENT;
    struct font font = side_font(side, block->tone);
    struct lines lines =
        sketch_wrap(side->arena, side->ruler, block->words, font, side_right(side) - left);
    side_need(side, fmin(lines.count, 3) * side_line(font));
    for (int i = 0; i < lines.count; i++) {
        side_need(side, side_line(font));
        side_one_line(side, i == 0 ? left - block->hang * INDENT : left, side->y, lines.items[i],
                      font, ALIGN_LEFT);
        side->y += side_line(font);
    }
    side->y += 0.4;
}

static void put_caution(struct side *side, const struct block *block)
{
    struct font font = side_font(side, TONE_PLAIN);
    double x = side_left() + SIGNAL, width = side_width(side) - SIGNAL;
    double height = fmax(5.0, side_words_height(side, width, block->words, font) + 0.6);
    side_need(side, height);
    bool grave = block->tone == TONE_DANGER || block->tone == TONE_WARNING;
    side_tag(side, side_left(), side->y, block->signal, grave);
    side_words(side, x, side->y, width, block->words, font);
    side->y += height;
}

/* A box and its words where the line has room, else on a line of its own; what is to be written
 * down stands at the right end. */
static void put_tick(struct side *side, const struct block *block)
{
    struct font font = side_font(side, block->tone);
    double lead = side_box(side) + BOX_GAP;
    double wide = ruler_width(side->ruler, block->words, font);
    double blank = block->blank != NULL ? block->share * side_width(side) : 0;
    double room = side_right(side) - (blank > 0 ? blank + BETWEEN : 0);
    bool begun = side->x > side_left();
    if (begun && (side->x + lead + wide > room || blank > 0)) {
        side_end_line(side);
        begun = false;
    }
    if (!begun)
        side->x = side_left();
    double left = side->x + lead;
    double words = side_words_height(side, room - left, block->words, font);
    if (!begun)
        side_need(side, fmax(words, side_box(side)) + LINE_APART);
    side_tick_box(side, side->x, side->y, block->done);
    double drop = fmax(0, (side_box(side) - side_line(font)) / 2);
    double low = side_words(side, left, side->y + drop, room - left, block->words, font);
    if (blank > 0)
        side_blank(side, side_right(side) - blank, side_right(side), side->y, block->blank);
    if (blank > 0 || left + wide > room) {
        side->y = fmax(low, side->y + side_box(side)) + LINE_APART;
        side->x = side_left();
    } else {
        side->x = left + wide + BETWEEN;
    }
}

static void put_picture(struct side *side, const struct block *block)
{
    struct sketch drawn = sketch_start(side->arena, side_width(side), side->height);
    double wanted = block->share * side_width(side);
    double over = side->measuring ? wanted : fmax(side_over(side), 0);
    double height = side->pictures == NULL
                        ? 0
                        : side->pictures->draw(side->pictures->context, block->words, &drawn,
                                               over < wanted ? side->height - 60 : over);
    if (height <= 0)
        return;
    side_need(side, height);
    if (!side->measuring)
        sketch_place(&side->sides.items[side->sides.count - 1], &drawn, side_left(), side->y);
    side->y += height + 1;
}

void side_put_block(struct side *side, const struct block *block)
{
    if (block->kind != BLOCK_TICK)
        side_end_line(side);
    switch (block->kind) {
    case BLOCK_HEAD:
        put_head(side, block);
        break;
    case BLOCK_WORDS:
        put_words(side, block);
        break;
    case BLOCK_TICK:
        put_tick(side, block);
        break;
    case BLOCK_TABLE:
        side_put_table(side, block->table, block->indent * INDENT);
        break;
    case BLOCK_CAUTION:
        put_caution(side, block);
        break;
    case BLOCK_PICTURE:
        put_picture(side, block);
        break;
    case BLOCK_GAP:
        side->y += 1.5;
        break;
    case BLOCK_TURN:
        side->kind = *block->words != '\0' ? block->words : NULL;
        side->size = block->tone == TONE_SMALL ? 8.5 : 10;
        side_turn(side);
        break;
    }
}

double side_block_height(const struct side *side, const struct block *block)
{
    if (block->kind == BLOCK_TURN)
        return 0;
    struct side measured = *side;
    measured.measuring = true;
    measured.y = 0;
    measured.x = side_left();
    side_put_block(&measured, block);
    side_end_line(&measured);
    return measured.y;
}
