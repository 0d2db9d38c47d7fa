#include "report/text/set_document.h"

#include <string.h>

#include "base/list.h"

enum {
    BETWEEN = 2,        /* blanks between columns */
    BOX = 3,            /* "[ ]" */
    LINE_LEAST = 6,     /* letters of a line to write on */
    WORDS_COMFORT = 18, /* narrower than this no column of words is made to fit a table */
    STACKED = 2         /* blanks before the further lines of a row as a paragraph */
};

static int greater(int a, int b)
{
    return a > b ? a : b;
}

static int lesser(int a, int b)
{
    return a < b ? a : b;
}

/* Letters that a cell takes on one line, without the line to write on. */
static int cell_letters(const struct table_column *column, const struct cell *cell)
{
    int letters = text_letters(cell->words);
    if (column->kind == CELL_BOX && cell->asked)
        letters += letters > 0 ? BOX + 1 : BOX;
    if (column->kind == CELL_LINE && cell->asked)
        letters += letters > 0 ? 1 : 0;
    return letters;
}

/* The width that a column would have if there were room, and the least it can be set with. */
struct span {
    int natural, least;
};

static struct span span_of(const struct table *table, int at, int width)
{
    const struct table_column *column = &table->columns[at];
    bool words = column->kind == CELL_WORDS;
    int rule = column->kind == CELL_LINE ? greater((int)(column->wanted * width), LINE_LEAST) : 0;
    int rule_least = column->kind == CELL_LINE ? LINE_LEAST : 0;
    struct span span = {text_letters(column->head), wrap_longest_word(column->head)};
    for (size_t i = 0; i < table->count; i++) {
        const struct cell *cell = &table->items[i].cells[at];
        int letters = cell_letters(column, cell);
        span.natural = greater(span.natural, letters + rule);
        span.least =
            greater(span.least, words ? wrap_longest_word(cell->words) : letters + rule_least);
    }
    span.natural = greater(span.natural, span.least);
    if (words)
        span.least = greater(span.least, lesser(span.natural, WORDS_COMFORT));
    return span;
}

/* Blanks before a column: fewer where it stands close, none where nothing is in it. */
static int before_column(const struct table *table, const int *widths, int at)
{
    if (at == 0 || widths[at] == 0)
        return 0;
    return table->columns[at].close ? 1 : BETWEEN;
}

static int sum_of(const struct table *table, const int *widths)
{
    int sum = 0;
    for (int i = 0; i < table->column_count; i++)
        sum += before_column(table, widths, i) + widths[i];
    return sum;
}

/* Narrows the widest column that can still be narrowed; false when none can. */
static bool narrow(int *widths, const struct span *spans, int count)
{
    int widest = -1;
    for (int i = 0; i < count; i++)
        if (widths[i] > spans[i].least && (widest < 0 || widths[i] > widths[widest]))
            widest = i;
    if (widest >= 0)
        widths[widest]--;
    return widest >= 0;
}

/* Widths of the columns that fit side by side; false when they do not. */
static bool widths_of(const struct table *table, int room, int *widths)
{
    struct span spans[TABLE_MOST_COLUMNS];
    for (int i = 0; i < table->column_count; i++) {
        spans[i] = span_of(table, i, room);
        widths[i] = spans[i].natural;
    }
    while (sum_of(table, widths) > room)
        if (!narrow(widths, spans, table->column_count))
            return false;
    return true;
}

static void put_aligned(struct pen_line *line, const char *words, enum tone tone, int left,
                        int width, enum cell_align align)
{
    int over = width - text_letters(words);
    int shift = align == CELL_RIGHT ? over : align == CELL_CENTRE ? over / 2 : 0;
    line_move(line, left + greater(shift, 0));
    line_put(line, words, tone);
}

static const char *rule_of(struct arena *arena, int length)
{
    char *rule = arena_new(arena, (size_t)greater(length, 0) + 1);
    memset(rule, '_', (size_t)greater(length, 0));
    return rule;
}

/* What a cell says, boxes and lines drawn with letters. */
static const char *cell_text(struct arena *arena, const struct table_column *column,
                             const struct cell *cell, int width)
{
    const char *between = *cell->words != '\0' ? " " : "";
    if (!cell->asked)
        return cell->words;
    if (column->kind == CELL_BOX)
        return text_print(arena, "[%c]%s%s", cell->done ? 'x' : ' ', between, cell->words);
    if (column->kind == CELL_LINE)
        return text_print(arena, "%s%s%s", cell->words, between,
                          rule_of(arena, width - cell_letters(column, cell)));
    return cell->words;
}

/* A row of cells that stand side by side, as high as the highest. */
struct strip {
    struct set_lines lines[TABLE_MOST_COLUMNS]; /* none: an empty cell */
    enum tone tones[TABLE_MOST_COLUMNS];
};

static size_t height_of(const struct strip *strip, int count)
{
    size_t height = 1;
    for (int i = 0; i < count; i++)
        height = strip->lines[i].count > height ? strip->lines[i].count : height;
    return height;
}

static void put_strip(struct pen_line *line, const struct table *table, const struct strip *strip,
                      const int *widths, int indent)
{
    size_t height = height_of(strip, table->column_count);
    for (size_t k = 0; k < height; k++) {
        int left = indent;
        for (int i = 0; i < table->column_count; i++) {
            left += before_column(table, widths, i);
            if (k < strip->lines[i].count)
                put_aligned(line, strip->lines[i].items[k], strip->tones[i], left, widths[i],
                            table->columns[i].align);
            left += widths[i];
        }
        line_end(line);
    }
}

static bool has_heads(const struct table *table)
{
    for (int i = 0; i < table->column_count; i++)
        if (*table->columns[i].head != '\0')
            return true;
    return false;
}

/* Down to the last of so many lines. */
static void sink(struct arena *arena, struct set_lines *lines, size_t height)
{
    struct set_lines sunk = {0};
    for (size_t i = lines->count; i < height; i++)
        *LIST_ADD(arena, &sunk) = "";
    for (size_t i = 0; i < lines->count; i++)
        *LIST_ADD(arena, &sunk) = lines->items[i];
    *lines = sunk;
}

static void put_heads(struct pen_line *line, const struct table *table, const int *widths,
                      int indent)
{
    struct strip strip = {0};
    for (int i = 0; i < table->column_count; i++)
        strip.lines[i] = wrap(line->into->arena, table->columns[i].head, 0, widths[i]);
    size_t height = height_of(&strip, table->column_count);
    for (int i = 0; i < table->column_count; i++)
        sink(line->into->arena, &strip.lines[i], height);
    put_strip(line, table, &strip, widths, indent);
}

static void put_row(struct pen_line *line, const struct table *table, const struct table_row *row,
                    const int *widths, int indent)
{
    struct arena *arena = line->into->arena;
    struct strip strip = {0};
    for (int i = 0; i < table->column_count; i++) {
        const char *words = cell_text(arena, &table->columns[i], &row->cells[i], widths[i]);
        strip.lines[i] = wrap(arena, words, 0, greater(widths[i], 1));
        strip.tones[i] = row->cells[i].tone;
    }
    put_strip(line, table, &strip, widths, indent);
}

/* A row as a paragraph: "2 rear left drum; draw off 134 mL; strokes 22". */
static void put_stacked(struct pen_line *line, const struct table *table,
                        const struct table_row *row, int indent)
{
    struct arena *arena = line->into->arena;
    struct text words = text_start(arena);
    bool named = false;
    for (int i = 0; i < table->column_count; i++) {
        const struct table_column *column = &table->columns[i];
        const char *cell = cell_text(arena, column, &row->cells[i], 2 * LINE_LEAST);
        if (*cell == '\0')
            continue;
        const char *join = words.count == 0  ? ""
                           : column->close   ? KEPT_BLANK
                           : named           ? "; "
                           : words.count > 2 ? ": " /* behind a label */
                                             : " ";
        bool headed = named && !column->close && *column->head != '\0';
        text_add(&words, "%s%s%s%s", join, headed ? column->head : "", headed ? " " : "", cell);
        named = named || column->kind == CELL_WORDS;
    }
    struct set_lines lines =
        wrap(arena, words.items, -STACKED, line->setting->width - indent - STACKED);
    for (size_t i = 0; i < lines.count; i++) {
        line_move(line, indent + (i > 0 ? STACKED : 0));
        line_put(line, lines.items[i], TONE_PLAIN);
        line_end(line);
    }
}

void set_table(struct text *into, const struct table *table, int indent,
               const struct setting *setting)
{
    int widths[TABLE_MOST_COLUMNS];
    struct pen_line line = line_start(into, setting);
    bool fits = widths_of(table, setting->width - indent, widths);
    if (fits && has_heads(table))
        put_heads(&line, table, widths, indent);
    for (size_t i = 0; i < table->count; i++)
        if (fits)
            put_row(&line, table, &table->items[i], widths, indent);
        else
            put_stacked(&line, table, &table->items[i], indent);
}
