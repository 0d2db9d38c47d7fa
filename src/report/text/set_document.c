#include "report/text/set_document.h"

enum { INDENT = 2, SIGNAL_COLUMN = 9, BLANK_LEAST = 6 };

/* Lines from a column on, the first from where the line already is, before or behind it. */
static void put_lines(struct pen_line *line, const char *words, enum tone tone, int column)
{
    struct arena *arena = line->into->arena;
    int at = line->column + line->blanks;
    struct set_lines lines = wrap(arena, words, at - column, line->setting->width - column);
    for (size_t i = 0; i < lines.count; i++) {
        if (i > 0) {
            line_end(line);
            line_move(line, column);
        }
        line_put(line, lines.items[i], tone);
    }
}

static void set_head(struct pen_line *line, const struct block *block)
{
    put_lines(line, block->words, block->tone, 0);
    if (block->aside != NULL) {
        line_move(line, line->column + 2);
        put_lines(line, block->aside, TONE_PLAIN, INDENT);
    }
    line_end(line);
}

static void set_words(struct pen_line *line, const struct block *block)
{
    line_move(line, block->indent * INDENT);
    put_lines(line, block->words, block->tone, (block->indent + block->hang) * INDENT);
    line_end(line);
}

static void set_caution(struct pen_line *line, const struct block *block)
{
    line_put(line, block->signal, block->tone);
    line_move(line, SIGNAL_COLUMN);
    put_lines(line, block->words, TONE_PLAIN, SIGNAL_COLUMN);
    line_end(line);
}

/* "moves? ______" at the end of the line where there is room, else on its own. */
static void put_blank(struct pen_line *line, const struct block *block, int column)
{
    int width = line->setting->width;
    int share = (int)(block->share * width);
    int rule = share > BLANK_LEAST ? share : BLANK_LEAST;
    int words = text_letters(block->blank);
    int room = width - column - words - 1;
    rule = rule > room ? room : rule;
    if (line->column + 2 + words + 1 + rule > width)
        line_end(line);
    line_move(line, width - rule - 1 - words > column ? width - rule - 1 - words : column);
    line_put(line, block->blank, TONE_PLAIN);
    line_move(line, line->column + 1);
    for (int i = 0; i < rule; i++)
        line_put(line, "_", TONE_PLAIN);
}

static void set_tick(struct pen_line *line, const struct block *block)
{
    int column = block->indent * INDENT;
    line_move(line, column);
    line_put(line, block->done ? "[x]" : "[ ]", TONE_PLAIN);
    if (block->signal != NULL) {
        line_move(line, line->column + 1);
        line_put(line, block->signal, TONE_STRONG);
    }
    line_move(line, line->column + 1);
    put_lines(line, block->words, block->tone, line->column + line->blanks);
    if (block->blank != NULL)
        put_blank(line, block, column + 4);
    line_end(line);
}

static bool ends_with_blank_line(const struct text *text)
{
    return text->count == 0 || (text->count >= 2 && text->items[text->count - 1] == '\n' &&
                                text->items[text->count - 2] == '\n');
}

static void blank_line(struct text *into)
{
    if (!ends_with_blank_line(into))
        text_add(into, "\n");
}

static void set_block(struct text *into, const struct block *block, const struct setting *setting)
{
    struct pen_line line = line_start(into, setting);
    switch (block->kind) {
    case BLOCK_HEAD:
        if (block->level > 1)
            blank_line(into);
        set_head(&line, block);
        break;
    case BLOCK_WORDS:
        set_words(&line, block);
        break;
    case BLOCK_TICK:
        set_tick(&line, block);
        break;
    case BLOCK_TABLE:
        set_table(into, block->table, block->indent * INDENT, setting);
        break;
    case BLOCK_CAUTION:
        set_caution(&line, block);
        break;
    case BLOCK_GAP:
        blank_line(into);
        break;
    case BLOCK_PICTURE:
    case BLOCK_TURN:
        break;
    }
}

void set_document(struct text *into, const struct document *document, const struct setting *setting)
{
    struct setting held = *setting;
    held.width = held.width < SETTING_LEAST  ? SETTING_LEAST
                 : held.width > SETTING_MOST ? SETTING_MOST
                                             : held.width;
    for (size_t i = 0; i < document->count; i++)
        set_block(into, &document->items[i], &held);
}
