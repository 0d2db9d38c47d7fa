#include "report/sides/sides.h"

#include <math.h>

#include "base/list.h"
#include "base/text.h"
#include "report/sides/side.h"

#define TITLE_SIZE 16.0
#define TITLE_LOW  8.0  /* mm from the margin to the rule below the title */
#define TOP        15.5 /* mm from the margin to what is set */

void side_turn(struct side *side)
{
    if (side->measuring)
        return;
    struct sketch page = sketch_start(side->arena, side->width, side->height);
    page.title = side->kind;
    *LIST_ADD(side->arena, &side->sides) = page;
    side->y = SIDE_MARGIN + TOP;
    side->x = side_left();
}

/* "registration ABC   chassis number ____": what is known in words, what is not as lines. */
static void put_items(struct side *side, struct sketch *page, double y)
{
    double x = side_left();
    struct font font = side_small(), bold = {.size = SIDE_LEAST, .bold = true};
    for (int i = 0; i < side->frame->item_count; i++) {
        const struct side_item *item = &side->frame->items[i];
        double width = item->share * side_width(side);
        double at = x + ruler_width(side->ruler, item->label, font) + 1.5;
        sketch_words(page, x, y, item->label, font, ALIGN_LEFT, INK_BLACK);
        if (item->words != NULL)
            sketch_words(page, at, y, item->words, bold, ALIGN_LEFT, INK_BLACK);
        else
            sketch_line(page, at, y + 0.6, x + width - 3, y + 0.6, pen_of(0.3, INK_BLACK));
        x += width;
    }
}

static const char *running_title(const struct side *side, size_t at)
{
    const char *kind = side->sides.items[at].title;
    return kind != NULL ? text_print(side->arena, "%s: %s", side->frame->title, kind)
                        : side->frame->title;
}

/* A title as large as it may be beside what stands at the right. */
static void put_title(struct side *side, struct sketch *page, size_t at, double right)
{
    const char *words = running_title(side, at);
    struct font font = {.size = TITLE_SIZE, .bold = true};
    double room = side_width(side) - right - 6;
    double wide = ruler_width(side->ruler, words, font);
    if (wide > room)
        font.size = fmax(SIDE_LEAST + 2, font.size * room / wide);
    sketch_words(page, side_left(), SIDE_MARGIN + TITLE_LOW - 2.0,
                 sketch_shortened(side->arena, side->ruler, words, font, room), font, ALIGN_LEFT,
                 INK_BLACK);
}

static void put_frame(struct side *side, size_t at)
{
    struct sketch *page = &side->sides.items[at];
    struct font font = side_small();
    const char *number = text_print(side->arena, "%s  \u00b7  side %zu of %zu", side->frame->date,
                                    at + 1, side->sides.count);
    double low = side->height - SIDE_MARGIN;
    put_title(side, page, at, ruler_width(side->ruler, number, font));
    sketch_words(page, side_right(side), SIDE_MARGIN + TITLE_LOW - 2.0, number, font, ALIGN_RIGHT,
                 INK_BLACK);
    sketch_line(page, side_left(), SIDE_MARGIN + TITLE_LOW, side_right(side),
                SIDE_MARGIN + TITLE_LOW, pen_of(0.8, INK_BLACK));
    put_items(side, page, SIDE_MARGIN + TITLE_LOW + 4.8);
    sketch_line(page, side_left(), low - 4.2, side_right(side), low - 4.2, pen_of(0.25, INK_GREY));
    sketch_words(
        page, side_left(), low,
        sketch_shortened(side->arena, side->ruler, side->frame->foot, font, side_width(side)), font,
        ALIGN_LEFT, INK_BLACK);
}

/* Blocks that are set only where all of them find room, from the first on; gives how many. */
static size_t spare_blocks(const struct document *document, size_t at, const struct side *side,
                           double *height)
{
    size_t count = 0;
    *height = 0;
    for (size_t i = at; i < document->count && document->items[i].if_room; i++, count++)
        *height += side_block_height(side, &document->items[i]);
    return count;
}

/* What a head must have below it: all of a table or picture that fits on a side at all. */
static double kept_below(const struct document *document, size_t at, const struct side *side)
{
    double height = side_block_height(side, &document->items[at]);
    double whole = side->height - 2 * SIDE_MARGIN - TOP;
    for (size_t i = at + 1; i < document->count; i++) {
        const struct block *block = &document->items[i];
        double next = side_block_height(side, block);
        if (block->kind == BLOCK_TURN || height + next > whole)
            break;
        height += next;
        if (block->kind == BLOCK_TABLE || block->kind == BLOCK_PICTURE || block->kind == BLOCK_TICK)
            break;
    }
    return height;
}

static void put_all(struct side *side, const struct document *document)
{
    for (size_t i = 0; i < document->count; i++) {
        const struct block *block = &document->items[i];
        if (block->if_room) {
            double height;
            size_t count = spare_blocks(document, i, side, &height);
            side_end_line(side);
            bool fits = height <= side_over(side);
            for (size_t k = 0; fits && k < count; k++)
                side_put_block(side, &document->items[i + k]);
            i += count - 1;
            continue;
        }
        if (block->kind == BLOCK_HEAD) {
            side_end_line(side);
            side_need(side, kept_below(document, i, side));
        }
        side_put_block(side, block);
    }
    side_end_line(side);
}

struct sketch *sides_of(const struct document *document, const struct side_frame *frame,
                        double width, double height, const struct side_pictures *pictures,
                        const struct ruler *ruler, struct arena *arena, size_t *count)
{
    struct side side = {.arena = arena,
                        .ruler = ruler,
                        .frame = frame,
                        .pictures = pictures,
                        .width = width,
                        .height = height,
                        .size = 10};
    if (document->count == 0 || document->items[0].kind != BLOCK_TURN)
        side_turn(&side);
    put_all(&side, document);
    for (size_t i = 0; i < side.sides.count; i++)
        put_frame(&side, i);
    *count = side.sides.count;
    return side.sides.items;
}
