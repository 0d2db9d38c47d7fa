#include "report/answers/answers.h"

#include <math.h>
#include <string.h>

#include "report/answers/answer.h"
#include "report/words/choose_words.h"
#include "report/words/words.h"
#include "units/unit.h"

enum { MOST_COLUMNS = COLUMN_AXES + CHOICE_LIMITS + 1 };

static bool is_shown(const struct choice_group *group, int limit)
{
    return !isnan(group->limits[limit]);
}

static const char *value_words(struct arena *arena, const struct result *result, int limit,
                               double value)
{
    if (isinf(value))
        return limit == CHOICE_FOOT ? "not reached" : "-";
    return unit_text(arena, value, choice_limit_row((enum choice_limit)limit)->dimension,
                     result->units);
}

static struct table *start_table(struct document *into, const struct result *result,
                                 const struct choice_group *group, const char *last)
{
    struct table_column columns[MOST_COLUMNS];
    int count = 0;
    for (int a = 0; a < group->axis_count; a++)
        columns[count++] =
            (struct table_column){choose_axis_words(into->arena, result, group->axes[a]),
                                  CELL_WORDS,
                                  CELL_LEFT,
                                  0,
                                  0,
                                  false};
    for (int limit = 0; limit < CHOICE_LIMITS; limit++)
        if (is_shown(group, limit))
            columns[count++] =
                (struct table_column){choice_limit_row((enum choice_limit)limit)->name,
                                      CELL_FIGURE,
                                      CELL_RIGHT,
                                      0,
                                      0,
                                      false};
    columns[count++] = (struct table_column){last, CELL_WORDS, CELL_LEFT, 0, 0, false};
    return document_table(into, columns, count);
}

static void add_car(struct table *table, const struct result *result,
                    const struct choice_group *group, const struct choice_car *car,
                    const char *last)
{
    struct arena *arena = table->arena;
    table_row(table);
    for (int a = 0; a < group->axis_count; a++)
        table_cell(table, choose_bore_words(arena, result, car, group->axes[a]));
    for (int limit = 0; limit < CHOICE_LIMITS; limit++)
        if (is_shown(group, limit))
            table_cell(table, value_words(arena, result, limit, car->values[limit]));
    table_cell(table, last);
}

/* What holds, and whose limit it is. */
static void add_limits(struct document *into, const struct result *result,
                       const struct choice_group *group)
{
    struct table *table = answer_labels(into, 0);
    for (int limit = 0; limit < CHOICE_LIMITS; limit++) {
        const struct choice_limit_row *row = choice_limit_row((enum choice_limit)limit);
        if (!is_shown(group, limit))
            continue;
        bool said = !isnan(result->chosen->asked->limits[limit]);
        answer_label(
            table, row->name,
            text_print(into->arena, "%s %s%s", row->most ? "at most" : "at least",
                       unit_text(into->arena, group->limits[limit], row->dimension, result->units),
                       said ? "" : ", as usual"));
    }
}

static void add_cars(struct document *into, const struct result *result,
                     const struct choice_group *group)
{
    struct arena *arena = into->arena;
    document_gap(into);
    struct table *table = start_table(into, result, group, "");
    add_car(table, result, group, &group->before, "as it is");
    for (int i = 0; i < group->best_count; i++)
        add_car(table, result, group, &group->best[i],
                choose_why_words(arena, result, group, &group->best[i]));
    if (group->nearest_count == 0)
        return;
    document_gap(into);
    document_words(into, "Nearest misses")->tone = TONE_STRONG;
    table = start_table(into, result, group, "misses");
    for (int i = 0; i < group->nearest_count; i++)
        add_car(table, result, group, &group->nearest[i],
                choose_why_words(arena, result, group, &group->nearest[i]));
}

/* Which limits stand in the way of the rest. */
static void add_obstacles(struct document *into, const struct result *result,
                          const struct choice_group *group)
{
    struct arena *arena = into->arena;
    document_gap(into);
    document_words(into, "What stands in the way")->tone = TONE_STRONG;
    struct table *table = answer_labels(into, 0);
    for (int limit = 0; limit < CHOICE_LIMITS; limit++) {
        const struct choice_limit_row *row = choice_limit_row((enum choice_limit)limit);
        if (group->broken[limit] == 0)
            continue;
        const char *more =
            group->alone[limit] == 0
                ? ""
                : text_print(arena, "; %ld by this alone, the nearest by %s", group->alone[limit],
                             unit_text(arena, group->shift[limit], row->dimension, result->units));
        answer_label(
            table, row->name,
            text_print(arena, "%ld of %ld break it%s", group->broken[limit], group->count, more));
    }
}

static void add_group(struct document *into, const struct result *result,
                      const struct choice_group *group, bool all)
{
    document_gap(into);
    document_words(into, choose_headline(into->arena, result, group))->tone = TONE_STRONG;
    if (group->lacks != NULL || group->unfinished)
        return;
    document_words(into, choose_tried_words(into->arena, result, group))->hang = 1;
    add_limits(into, result, group);
    add_cars(into, result, group);
    if (group->suits == 0 || all)
        add_obstacles(into, result, group);
}

void answer_choose(struct document *into, const struct result *result, bool all)
{
    answer_title(into, result);
    for (int g = 0; g < result->chosen->group_count; g++)
        add_group(into, result, &result->chosen->groups[g], all);
    document_gap(into);
    if (result->chosen->assumed)
        document_words(into,
                       "All of it rests on values of the car that are assumed: firmpedal check "
                       "marks what hangs on them.");
    document_words(into, "Of a choice every question is answered by firmpedal fit.");
    answer_deference(into, all);
}
