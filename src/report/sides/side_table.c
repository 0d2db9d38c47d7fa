#include "report/sides/side.h"

#include <math.h>

#define APART       3.5 /* between columns */
#define CLOSE       1.5
#define CIRCLE      5.6
#define LINE_COMMON 26.0 /* a line to write on where no length is said */
#define BELOW_WORDS 0.5
#define COMFORT     28.0 /* narrower than this no column of words is made */

struct spans {
    double left[TABLE_MOST_COLUMNS], width[TABLE_MOST_COLUMNS];
};

/* A table on a side: how its columns stand. */
struct setting_table {
    struct side *side;
    const struct table *table;
    struct spans spans;
    double left, right;
};

static struct font cell_font(const struct side *side, const struct cell *cell)
{
    return side_font(side, cell->tone);
}

/* Whether a column holds nothing at all, neither head. */
static bool is_empty(const struct table *table, int at)
{
    if (*table->columns[at].head != '\0')
        return false;
    for (size_t i = 0; i < table->count; i++)
        if (*table->items[i].cells[at].words != '\0' || table->items[i].cells[at].asked)
            return false;
    return true;
}

static double cell_width(const struct side *side, const struct table_column *column,
                         const struct cell *cell)
{
    double words = 0;
    struct lines lines =
        sketch_wrap(side->arena, side->ruler, cell->words, cell_font(side, cell), INFINITY);
    for (int i = 0; i < lines.count; i++)
        words = fmax(words, ruler_width(side->ruler, lines.items[i], cell_font(side, cell)));
    if (column->kind == CELL_CIRCLE)
        return fmax(CIRCLE, words);
    if (column->kind == CELL_BOX && cell->asked)
        return side_box(side) + (words > 0 ? words + 1.5 : 0);
    return words;
}

static double natural_width(const struct side *side, const struct table *table, int at)
{
    const struct table_column *column = &table->columns[at];
    double width = ruler_width(side->ruler, column->head, side_small());
    if (column->kind == CELL_LINE)
        width = fmax(width, column->wanted > 0 ? column->wanted * side_width(side) : LINE_COMMON);
    for (size_t i = 0; i < table->count; i++)
        if (column->kind != CELL_LINE)
            width = fmax(width, cell_width(side, column, &table->items[i].cells[at]));
    return width;
}

static double before(const struct table *table, const double *widths, int at)
{
    if (at == 0 || widths[at] == 0)
        return 0;
    return table->columns[at].close ? CLOSE : APART;
}

static double sum_of(const struct table *table, const double *widths)
{
    double sum = 0;
    for (int i = 0; i < table->column_count; i++)
        sum += before(table, widths, i) + widths[i];
    return sum;
}

static bool gives_way(const struct table_column *column)
{
    return column->kind == CELL_WORDS || column->kind == CELL_LINE;
}

/* Takes what is too much from the widest columns of words and lines. */
static void narrow(const struct table *table, double *widths, double room)
{
    for (int round = 0; round < 400 && sum_of(table, widths) > room; round++) {
        int widest = -1;
        for (int i = 0; i < table->column_count; i++)
            if (gives_way(&table->columns[i]) && widths[i] > COMFORT &&
                (widest < 0 || widths[i] > widths[widest]))
                widest = i;
        if (widest < 0)
            return;
        widths[widest] -= fmin(1, sum_of(table, widths) - room);
    }
}

/* Where there are boxes or lines the row goes on to the right margin: the words take the rest. */
static void widen(const struct table *table, double *widths, double room)
{
    int words = -1;
    bool asks = false;
    for (int i = 0; i < table->column_count; i++) {
        asks = asks || table->columns[i].kind == CELL_BOX || table->columns[i].kind == CELL_LINE;
        if (words < 0 && table->columns[i].kind == CELL_WORDS)
            words = i;
    }
    if (asks && words >= 0)
        widths[words] += fmax(0, room - sum_of(table, widths));
}

static struct spans spans_of(const struct side *side, const struct table *table, double left)
{
    struct spans spans = {{0}, {0}};
    double room = side_right(side) - left;
    for (int i = 0; i < table->column_count; i++)
        if (!is_empty(table, i))
            spans.width[i] = natural_width(side, table, i);
    narrow(table, spans.width, room);
    widen(table, spans.width, room);
    double x = left;
    for (int i = 0; i < table->column_count; i++) {
        x += before(table, spans.width, i);
        spans.left[i] = x;
        x += spans.width[i];
    }
    return spans;
}

static bool has_heads(const struct table *table)
{
    for (int i = 0; i < table->column_count; i++)
        if (*table->columns[i].head != '\0')
            return true;
    return false;
}

static enum align align_of(const struct table_column *column)
{
    if (column->kind == CELL_BOX || column->align == CELL_CENTRE)
        return ALIGN_MIDDLE;
    return column->align == CELL_RIGHT ? ALIGN_RIGHT : ALIGN_LEFT;
}

static void put_heads(const struct setting_table *set)
{
    struct side *side = set->side;
    struct font font = side_small();
    double low = side->y;
    if (!has_heads(set->table))
        return;
    for (int i = 0; i < set->table->column_count; i++) {
        const struct table_column *column = &set->table->columns[i];
        low = fmax(low, side_words_aligned(side, set->spans.left[i], side->y, set->spans.width[i],
                                           column->head, font, align_of(column)));
    }
    side->y = low + 0.4;
    side_rule(side, set->left, set->right, side->y, 0.3);
    side->y += 0.3;
}

/* Height of what is ticked or written on in a row; 0: nothing is. */
static double asked_height(const struct setting_table *set, const struct table_row *row)
{
    double height = 0;
    for (int i = 0; i < set->table->column_count; i++)
        if (row->cells[i].asked)
            height = fmax(height, set->table->columns[i].kind == CELL_BOX ? side_box(set->side)
                                                                          : SIDE_WRITTEN);
    return height;
}

static double cell_height(const struct setting_table *set, int at, const struct cell *cell)
{
    const struct table_column *column = &set->table->columns[at];
    if (column->kind == CELL_CIRCLE && *cell->words != '\0')
        return CIRCLE;
    return side_words_height(set->side, set->spans.width[at], cell->words,
                             cell_font(set->side, cell));
}

static double row_height(const struct setting_table *set, const struct table_row *row)
{
    double height = asked_height(set, row);
    for (int i = 0; i < set->table->column_count; i++)
        height = fmax(height, cell_height(set, i, &row->cells[i]));
    return height + (set->table->ruled ? 0.8 : BELOW_WORDS);
}

static void put_circle(struct side *side, double x, double y, const char *words)
{
    struct font font = {.size = 9, .bold = true};
    struct point centre = {x + CIRCLE / 2, y + CIRCLE / 2 - 0.2};
    if (*words == '\0' || side->measuring)
        return;
    struct sketch *page = &side->sides.items[side->sides.count - 1];
    sketch_circle(page, centre, CIRCLE / 2 - 0.1, pen_of(0.5, INK_BLACK), INK_WHITE);
    sketch_words(page, centre.x, centre.y + 1.15, words, font, ALIGN_MIDDLE, INK_BLACK);
}

static void put_cell(const struct setting_table *set, int at, const struct cell *cell, double y)
{
    struct side *side = set->side;
    const struct table_column *column = &set->table->columns[at];
    double x = set->spans.left[at], width = set->spans.width[at];
    struct font font = cell_font(side, cell);
    if (column->kind == CELL_BOX && cell->asked) {
        bool words = *cell->words != '\0';
        side_tick_box(side, words ? x : x + (width - side_box(side)) / 2, y, cell->done);
        x += side_box(side) + 1.5;
    } else if (column->kind == CELL_LINE && cell->asked) {
        side_blank(side, x, x + width, y, cell->words);
        return;
    } else if (column->kind == CELL_CIRCLE) {
        put_circle(side, x, y, cell->words);
        return;
    }
    side_words_aligned(side, x, y, width, cell->words, font,
                       column->kind == CELL_BOX ? ALIGN_LEFT : align_of(column));
}

static void put_row(const struct setting_table *set, const struct table_row *row)
{
    struct side *side = set->side;
    double height = row_height(set, row);
    if (!side->measuring && height > side_over(side)) {
        side_turn(side);
        put_heads(set);
    }
    double y = side->y + (set->table->ruled ? 0.4 : 0.1);
    double asked = asked_height(set, row);
    for (int i = 0; i < set->table->column_count; i++) {
        const struct cell *cell = &row->cells[i];
        double words = cell_height(set, i, cell);
        double drop = asked > 0 && !cell->asked ? fmax(0, (asked - words) / 2) : 0;
        put_cell(set, i, cell, y + drop);
    }
    side->y += height;
    if (set->table->ruled)
        side_rule(side, set->left, set->right, side->y, 0.2);
}

void side_put_table(struct side *side, const struct table *table, double indent)
{
    double left = side_left() + indent;
    struct setting_table set = {.side = side,
                                .table = table,
                                .spans = spans_of(side, table, left),
                                .left = left,
                                .right = side_right(side)};
    double height = has_heads(table) ? 4.4 : 0;
    for (size_t i = 0; i < table->count; i++)
        height += row_height(&set, &table->items[i]);
    if (height <= side->height - 60)
        side_need(side, height);
    put_heads(&set);
    for (size_t i = 0; i < table->count; i++)
        put_row(&set, &table->items[i]);
    side->y += 1;
}
