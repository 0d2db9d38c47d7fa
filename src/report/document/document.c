#include "report/document/document.h"

#include <assert.h>

#include "base/list.h"
#include "base/text.h"

struct document document_start(struct arena *arena)
{
    return (struct document){.arena = arena};
}

static struct block *add(struct document *document, enum block_kind kind, const char *words)
{
    struct block *block = LIST_ADD(document->arena, document);
    block->kind = kind;
    block->words = words_kept(document->arena, words != NULL ? words : "");
    return block;
}

struct block *document_head(struct document *document, int level, const char *words)
{
    struct block *block = add(document, BLOCK_HEAD, words);
    block->level = level;
    block->tone = TONE_STRONG;
    return block;
}

struct block *document_words(struct document *document, const char *words)
{
    return add(document, BLOCK_WORDS, words);
}

struct block *document_tick(struct document *document, const char *words, const char *blank)
{
    struct block *block = add(document, BLOCK_TICK, words);
    block->blank = blank != NULL ? words_kept(document->arena, blank) : NULL;
    block->share = 0.25;
    return block;
}

enum tone tone_of_signal(const char *signal)
{
    static const struct {
        const char *word;
        enum tone tone;
    } rows[] = {{"danger", TONE_DANGER}, {"warning", TONE_WARNING}, {"advice", TONE_ADVICE}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        if (text_same(signal, rows[i].word))
            return rows[i].tone;
    return TONE_STRONG;
}

struct block *document_caution(struct document *document, const char *signal, const char *words)
{
    struct block *block = add(document, BLOCK_CAUTION, words);
    block->signal = text_copy(document->arena, signal);
    block->tone = tone_of_signal(signal);
    return block;
}

struct block *document_picture(struct document *document, const char *name, double share)
{
    struct block *block = add(document, BLOCK_PICTURE, name);
    block->share = share;
    return block;
}

void document_gap(struct document *document)
{
    add(document, BLOCK_GAP, NULL);
}

struct block *document_turn(struct document *document, const char *words)
{
    return add(document, BLOCK_TURN, words);
}

struct table *document_table(struct document *document, const struct table_column *columns,
                             int count)
{
    assert(count > 0 && count <= TABLE_MOST_COLUMNS);
    struct arena *arena = document->arena;
    struct table *table = ARENA_NEW(arena, struct table);
    table->arena = arena;
    table->columns = ARENA_ARRAY(arena, (size_t)count, struct table_column);
    table->column_count = count;
    for (int i = 0; i < count; i++) {
        table->columns[i] = columns[i];
        table->columns[i].head = words_kept(arena, columns[i].head != NULL ? columns[i].head : "");
    }
    add(document, BLOCK_TABLE, NULL)->table = table;
    return table;
}

void table_row(struct table *table)
{
    struct table_row *row = LIST_ADD(table->arena, table);
    row->cells = ARENA_ARRAY(table->arena, (size_t)table->column_count, struct cell);
    for (int i = 0; i < table->column_count; i++)
        row->cells[i].words = "";
}

struct cell *table_cell(struct table *table, const char *words)
{
    assert(table->count > 0);
    struct table_row *row = &table->items[table->count - 1];
    assert(row->filled < table->column_count);
    struct cell *cell = &row->cells[row->filled++];
    cell->words = words_kept(table->arena, words != NULL ? words : "");
    return cell;
}

struct cell *table_ask(struct table *table, const char *words)
{
    struct cell *cell = table_cell(table, words);
    cell->asked = true;
    return cell;
}

void table_skip(struct table *table)
{
    table_cell(table, "");
}
