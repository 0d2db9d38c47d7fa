#include "report/sheet/parts_of_sheet.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/answers/answer.h"
#include "report/words/pair_words.h"
#include "report/words/words.h"

enum { MEASURED_FIRST = 3 };

static bool is_readable(const struct figure *figure)
{
    const struct reading_row *row = reading_row(figure->row->id);
    return row != NULL && !row->elsewhere && figure->state != FIGURE_NOT_COMPUTED;
}

/* The last reading of a figure that a work file already holds, or NULL. */
static const struct taken_reading *taken(const struct result *result, const struct figure *figure)
{
    for (int i = result->readings.count - 1; i >= 0; i--)
        if (result->readings.items[i].figure == figure)
            return result->readings.items[i].reading;
    return NULL;
}

static const char *expected_words(struct arena *arena, const struct result *result,
                                  const struct figure *figure)
{
    return text_print(arena, "%s%s%s", figure_value_words(arena, figure, result->units),
                      *answer_mark(figure) != '\0' ? KEPT_BLANK : "", answer_mark(figure));
}

/* The figure of the other side that is expected alike; -1. */
static int other_side(struct arena *arena, const struct result *result, int at, const bool *done)
{
    const struct figures *figures = &result->figures;
    const struct figure *one = &figures->items[at];
    for (int i = at + 1; i < figures->count; i++) {
        const struct figure *other = &figures->items[i];
        if (!done[i] && other->row == one->row && is_readable(other) && one->of != NULL &&
            other->of != NULL && pair_words(arena, one->of, other->of) != NULL &&
            strcmp(expected_words(arena, result, one), expected_words(arena, result, other)) == 0)
            return i;
    }
    return -1;
}

static void put_reading(struct table *table, const struct result *result, int at, bool *done)
{
    struct arena *arena = table->arena;
    const struct figure *figure = &result->figures.items[at];
    const struct taken_reading *reading = taken(result, figure);
    int other = other_side(arena, result, at, done);
    const char *of = figure->of != NULL ? figure->of : "";
    if (other >= 0) {
        done[other] = true;
        of = pair_words(arena, of, result->figures.items[other].of);
    }
    table_row(table);
    bool first = at == 0 || result->figures.items[at - 1].row != figure->row;
    const char *how = first ? reading_row(figure->row->id)->key.help : NULL;
    table_cell(table, text_print(arena, "%s%s%s%s%s", figure->row->title, *of != '\0' ? ", " : "",
                                 of, how != NULL ? ". " : "", how != NULL ? how : ""))
        ->tone = TONE_SMALL;
    table_cell(table, expected_words(arena, result, figure))->tone = TONE_SMALL;
    table_ask(table, reading != NULL ? text_print(arena, "was %s",
                                                  unit_text(arena, reading->value,
                                                            figure->row->dimension, result->units))
                                     : NULL);
}

/* "measure first: ..." */
static const char *first_words(struct arena *arena, const struct result *result)
{
    struct text words = text_start(arena);
    for (int i = 0; i < result->measure.count && i < MEASURED_FIRST; i++)
        text_add(&words, "%s%s", i > 0 ? "; " : "measure first: ",
                 words_paired(arena, result->system, result->measure.items[i].words));
    return words.count > 0 ? words.items : NULL;
}

static void put_table(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {
        {"what, and how it is taken; brakes at the effort of the check", CELL_WORDS, CELL_LEFT, 0,
         0, false},
        {"expected", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"read", CELL_LINE, CELL_LEFT, 0, 0.14, false}};
    const struct figures *figures = &result->figures;
    bool *done = ARENA_ARRAY(into->arena, (size_t)figures->count + 1, bool);
    struct table *table = NULL;
    for (int i = 0; i < figures->count; i++) {
        if (done[i] || !is_readable(&figures->items[i]))
            continue;
        if (table == NULL) {
            document_head(into, 2, "Readings")->aside = first_words(into->arena, result);
            table = document_table(into, columns, 3);
        }
        put_reading(table, result, i, done);
    }
}

static void put_soft(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {
        {"what you feel", CELL_WORDS, CELL_LEFT, 0, 0, false},
        {"do first", CELL_WORDS, CELL_LEFT, 0, 0, false},
        {"then", CELL_WORDS, CELL_LEFT, 0, 0, false}};
    if (result->soft.count == 0)
        return;
    document_head(into, 2, "Where the pedal does not come firm")->if_room = true;
    struct table *table = document_table(into, columns, 3);
    into->items[into->count - 1].if_room = true;
    table->ruled = true;
    for (int i = 0; i < result->soft.count; i++) {
        table_row(table);
        table_cell(table, result->soft.items[i].row->feel)->tone = TONE_SMALL;
        table_cell(table, result->soft.items[i].first)->tone = TONE_SMALL;
        table_cell(table, result->soft.items[i].then)->tone = TONE_SMALL;
    }
}

void sheet_readings(struct document *into, const struct result *result)
{
    put_table(into, result);
    document_picture(into, "pedal", 0.34)->if_room = true;
    document_gap(into);
    put_soft(into, result);
}
