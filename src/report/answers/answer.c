#include "report/answers/answer.h"

#include <ctype.h>

#include "base/date.h"
#include "base/text.h"
#include "report/words/words.h"

enum { WORKS_NAMED = 2 };

static const char *title_words(const struct result *result)
{
    const char *title = system_vehicle(result->system)->title;
    return title != NULL ? title : "Car without a title";
}

/* "work of 2026-11-20", "works of 2026-11-20 and 2026-11-21", "3 works"; NULL without. */
static const char *works_words(struct arena *arena, const struct system *system)
{
    char dates[WORKS_NAMED][16];
    if (system->work_count == 0)
        return NULL;
    if (system->work_count > WORKS_NAMED)
        return text_print(arena, "%d works", system->work_count);
    for (int i = 0; i < system->work_count; i++)
        date_write(system->works[i].date, dates[i]);
    return system->work_count == 1 ? text_print(arena, "work of %s", dates[0])
                                   : text_print(arena, "works of %s and %s", dates[0], dates[1]);
}

void answer_title(struct document *into, const struct result *result)
{
    struct block *head = document_head(into, 1, title_words(result));
    head->aside = works_words(into->arena, result->system);
}

void answer_note(struct document *into, const struct note *note)
{
    document_words(into, text_print(into->arena, "note on %s: %s", note->of, note->words))->hang =
        2;
}

void answer_title_in_full(struct document *into, const struct result *result)
{
    const struct system *system = result->system;
    struct arena *arena = into->arena;
    document_head(into, 1, title_words(result))->aside = text_print(arena, "(%s)", system->file);
    for (int i = 0; i < system->work_count; i++) {
        char date[16];
        date_write(system->works[i].date, date);
        document_words(into,
                       text_print(arena, "with the work of %s  (%s)", date, system->works[i].file));
    }
    answer_notes(into, result);
}

void answer_notes(struct document *into, const struct result *result)
{
    struct note *notes;
    size_t count = notes_of(result->system, into->arena, &notes);
    for (size_t i = 0; i < count; i++)
        if (!notes[i].of_part)
            answer_note(into, &notes[i]);
}

struct table *answer_labels(struct document *into, int indent)
{
    static const struct table_column columns[] = {{"", CELL_FIGURE, CELL_LEFT, 0, 0, false},
                                                  {"", CELL_WORDS, CELL_LEFT, 0, 0, false}};
    struct table *table = document_table(into, columns, 2);
    into->items[into->count - 1].indent = indent;
    return table;
}

void answer_label(struct table *table, const char *label, const char *words)
{
    if (words == NULL || *words == '\0')
        return;
    table_row(table);
    table_cell(table, label);
    table_cell(table, words);
}

struct table *answer_next(struct document *into)
{
    document_gap(into);
    return answer_labels(into, 0);
}

void answer_deference(struct document *into, bool all)
{
    document_gap(into);
    document_words(into, all ? caution_deference() : caution_deference_brief());
}

const char *answer_mark(const struct figure *figure)
{
    if (figure->state == FIGURE_NOT_COMPUTED)
        return "";
    if (figure->holds_broken != 0)
        return "!";
    if (figure->state != FIGURE_ASSUMED)
        return "";
    return figure_mostly_assumed(figure) ? "**" : "*";
}

const char *answer_capital(struct arena *arena, const char *words)
{
    char *copy = text_copy(arena, words);
    copy[0] = (char)toupper((unsigned char)copy[0]);
    return copy;
}
