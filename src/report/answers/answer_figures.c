#include "report/answers/answer_figures.h"

#include <math.h>
#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "report/words/pair_words.h"
#include "report/words/words.h"

enum { VALUES = 3, MOST_LACKS = 4 };

/* What is said, and what would be needed for what is not computed. */
struct telling {
    struct document *into;
    const struct result *result;
    struct lacks {
        const char **items;
        size_t count, capacity;
    } lacks;
};

static const struct figure *find(const struct telling *telling, const char *id, const char *of)
{
    return figures_find(&telling->result->figures, id, of);
}

static void note_lack(struct telling *telling, const char *lack)
{
    for (size_t i = 0; i < telling->lacks.count; i++)
        if (strcmp(telling->lacks.items[i], lack) == 0)
            return;
    *LIST_ADD(telling->into->arena, &telling->lacks) = lack;
}

static void note_lacks(struct telling *telling, const struct figure *figure)
{
    struct arena *arena = telling->into->arena;
    for (int i = 0; i < figure->needs_count; i++)
        note_lack(telling,
                  text_print(arena, "needs %s",
                             cited_words(arena, telling->result->system, &figure->needs[i])));
    if (figure->needs_count == 0 && figure->reason != NULL)
        note_lack(telling, figure->reason);
}

static const char *value_words(struct telling *telling, const struct figure *figure)
{
    if (figure == NULL)
        return "";
    if (figure->state == FIGURE_NOT_COMPUTED)
        note_lacks(telling, figure);
    return figure_value_words(telling->into->arena, figure, telling->result->units);
}

static const char *mark_words(const struct figure *figure)
{
    return figure == NULL ? "" : answer_mark(figure);
}

/* --- tables of three values a row ------------------------------------------------------------ */

static struct table *values_table(struct telling *telling, const char *const heads[VALUES])
{
    struct table_column columns[1 + 2 * VALUES] = {{"", CELL_WORDS, CELL_LEFT, 0, 0, false}};
    for (int i = 0; i < VALUES; i++) {
        columns[1 + 2 * i] = (struct table_column){heads[i], CELL_FIGURE, CELL_RIGHT, 0, 0, false};
        columns[2 + 2 * i] = (struct table_column){"", CELL_FIGURE, CELL_LEFT, 0, 0, true};
    }
    document_gap(telling->into);
    return document_table(telling->into, columns, 1 + 2 * VALUES);
}

static void values_row(struct telling *telling, struct table *table, const char *words,
                       const struct figure *const figures[VALUES])
{
    table_row(table);
    table_cell(table, words);
    for (int i = 0; i < VALUES; i++) {
        table_cell(table, value_words(telling, figures[i]));
        table_cell(table, mark_words(figures[i]));
    }
}

static int pedal_count(const struct telling *telling)
{
    int count = 0;
    for (int i = 0; i < telling->result->figures.count; i++)
        count += strcmp(telling->result->figures.items[i].row->id, "pedal-travel") == 0;
    return count;
}

static void pedal_rows(struct telling *telling, struct table *table, bool only_one)
{
    struct arena *arena = telling->into->arena;
    for (int i = 0; i < telling->result->figures.count; i++) {
        const struct figure *travel = &telling->result->figures.items[i];
        if (strcmp(travel->row->id, "pedal-travel") != 0)
            continue;
        const struct figure *effort = find(telling, "pedal-effort", travel->of);
        const char *words = text_print(arena, "%s, %s %s", answer_capital(arena, travel->of),
                                       value_words(telling, effort), mark_words(effort));
        const struct figure *const row[VALUES] = {travel, find(telling, "pedal-left", travel->of),
                                                  only_one ? find(telling, "deceleration", NULL)
                                                           : NULL};
        values_row(telling, table, words, row);
    }
}

static void lost_rows(struct telling *telling, struct table *table)
{
    for (int i = 0; i < telling->result->figures.count; i++) {
        const struct figure *travel = &telling->result->figures.items[i];
        if (strcmp(travel->row->id, "travel-circuit-lost") != 0)
            continue;
        const struct figure *const row[VALUES] = {
            travel, find(telling, "left-circuit-lost", travel->of),
            find(telling, "deceleration-circuit-lost", travel->of)};
        values_row(telling, table,
                   text_print(telling->into->arena, KEPT_BLANK KEPT_BLANK "%s lost", travel->of),
                   row);
    }
}

static void pedal_table(struct telling *telling)
{
    static const char *const heads[VALUES] = {"travel", "left", "slows by"};
    struct table *table = values_table(telling, heads);
    bool only_one = pedal_count(telling) == 1;
    pedal_rows(telling, table, only_one);
    lost_rows(telling, table);
    if (!only_one)
        values_row(
            telling, table, "All together",
            (const struct figure *const[VALUES]){NULL, NULL, find(telling, "deceleration", NULL)});
    const struct figure *alone = find(telling, "deceleration-unassisted", NULL);
    if (alone != NULL)
        values_row(telling, table, KEPT_BLANK KEPT_BLANK "without the servo",
                   (const struct figure *const[VALUES]){NULL, NULL, alone});
}

static bool same_values(struct telling *telling, const struct figure *const a[VALUES],
                        const struct figure *const b[VALUES])
{
    for (int i = 0; i < VALUES; i++)
        if (strcmp(value_words(telling, a[i]), value_words(telling, b[i])) != 0 ||
            strcmp(mark_words(a[i]), mark_words(b[i])) != 0)
            return false;
    return true;
}

static void brake_values(const struct telling *telling, const struct figure *pressure,
                         const struct figure *row[VALUES])
{
    row[0] = pressure;
    row[1] = find(telling, "clamp-force", pressure->of);
    row[2] = find(telling, "brake-torque", pressure->of);
}

/* The brake of the other side that is the same in all three; NULL: there is none. */
static const char *with_other_side(struct telling *telling, int at,
                                   const struct figure *const row[VALUES], bool *done)
{
    const struct figures *figures = &telling->result->figures;
    for (int i = at + 1; i < figures->count; i++) {
        const struct figure *other = &figures->items[i];
        const struct figure *values[VALUES];
        if (done[i] || other->row != figures->items[at].row)
            continue;
        const char *pair = pair_words(telling->into->arena, figures->items[at].of, other->of);
        brake_values(telling, other, values);
        if (pair == NULL || !same_values(telling, row, values))
            continue;
        done[i] = true;
        return pair;
    }
    return NULL;
}

static void brake_rows(struct telling *telling, struct table *table)
{
    const struct figures *figures = &telling->result->figures;
    struct arena *arena = telling->into->arena;
    bool *done = ARENA_ARRAY(arena, (size_t)figures->count + 1, bool);
    for (int i = 0; i < figures->count; i++) {
        const struct figure *row[VALUES];
        if (done[i] || strcmp(figures->items[i].row->id, "wheel-pressure") != 0)
            continue;
        brake_values(telling, &figures->items[i], row);
        const char *pair = with_other_side(telling, i, row, done);
        values_row(telling, table,
                   pair != NULL ? text_print(arena, "%s, each", answer_capital(arena, pair))
                                : answer_capital(arena, figures->items[i].of),
                   row);
    }
}

static void brakes_table(struct telling *telling)
{
    static const char *const heads[VALUES] = {"pressure", "clamp", "torque"};
    struct table *table = values_table(telling, heads);
    struct arena *arena = telling->into->arena;
    for (int i = 0; i < telling->result->figures.count; i++) {
        const struct figure *line = &telling->result->figures.items[i];
        if (strcmp(line->row->id, "line-pressure") == 0)
            values_row(telling, table, text_print(arena, "Line, %s", line->of),
                       (const struct figure *const[VALUES]){line, NULL, NULL});
    }
    brake_rows(telling, table);
}

/* --- a line a question ------------------------------------------------------------------------ */

struct told {
    const char *id;
    const char *before, *after;
};
struct question {
    const char *label;
    const char *first, *or_first; /* the figures of which it is asked */
    struct told told[VALUES];
};

static const struct question questions[] = {
    {"Half g takes",
     "effort-for-half-g",
     NULL,
     {{"effort-for-half-g", "", ""},
      {"effort-for-half-g-unassisted", "", " without the servo"},
      {NULL, NULL, NULL}}},
    {"Locks first",
     "front-locks-at",
     "rear-locks-at",
     {{"front-locks-at", "front, at ", ""},
      {"rear-locks-at", "REAR, at ", ""},
      {"rear-lock-margin", "margin until the rear ", ""}}},
    {"Locks",
     "its-wheels-lock-at",
     NULL,
     {{"its-wheels-lock-at", "at ", ""},
      {"effort-that-locks", "", ""},
      {"its-wheels-lock-at-wet", "wet at ", ""}}},
    {"Stops in",
     "stopping-distance",
     NULL,
     {{"stopping-distance", "", ""}, {"stopping-distance-wet", "wet ", ""}, {NULL, NULL, NULL}}},
    {"Hand brake holds",
     "hand-brake-slope",
     NULL,
     {{"hand-brake-slope", "a slope of ", ""},
      {"hand-brake-slope-down", "facing down ", ""},
      {"hand-brake-clicks", "after ", KEPT_BLANK "clicks"}}},
    {"Clutch",
     "clutch-clearance-per-face",
     NULL,
     {{"clutch-clearance-per-face", "", " of air on each face"},
      {"bearing-travel-spare", "", " to spare"},
      {"clutch-effort", "effort ", ""}}},
};

/* "271 N **; 683 N ** without the servo" */
static const char *told_words(struct telling *telling, const struct question *question,
                              const char *of)
{
    struct text words = text_start(telling->into->arena);
    for (int i = 0; i < VALUES && question->told[i].id != NULL; i++) {
        const struct told *told = &question->told[i];
        const struct figure *figure = find(telling, told->id, of);
        if (figure == NULL)
            continue;
        const char *value = value_words(telling, figure);
        if (figure->state == FIGURE_NOT_COMPUTED)
            continue;
        const char *mark = mark_words(figure);
        text_add(&words, "%s%s%s%s%s%s", words.count > 0 ? "; " : "", told->before, value,
                 *mark != '\0' ? KEPT_BLANK : "", mark, told->after);
    }
    return words.items;
}

static bool asked_of(const struct question *question, const char *id)
{
    return strcmp(question->first, id) == 0 ||
           (question->or_first != NULL && strcmp(question->or_first, id) == 0);
}

static const char *question_label(struct telling *telling, const struct question *question,
                                  const struct figure *figure)
{
    struct arena *arena = telling->into->arena;
    const struct vehicle *vehicle = system_vehicle(telling->result->system);
    if (strcmp(question->first, "stopping-distance") == 0)
        return text_print(
            arena, "From %s stops in",
            unit_text(arena, vehicle->stop_from.m_s, DIMENSION_SPEED, telling->result->units));
    if (figure->row->scope == SCOPE_PEDAL)
        return text_print(arena, "%s, %s", question->label, figure->of);
    return question->label;
}

static void question_rows(struct telling *telling)
{
    struct table *table = NULL;
    const struct figures *figures = &telling->result->figures;
    for (size_t q = 0; q < sizeof questions / sizeof *questions; q++) {
        for (int i = 0; i < figures->count; i++) {
            const struct figure *figure = &figures->items[i];
            if (!asked_of(&questions[q], figure->row->id))
                continue;
            const char *words = told_words(telling, &questions[q], figure->of);
            if (*words == '\0')
                continue;
            if (table == NULL)
                table = answer_next(telling->into);
            answer_label(table, question_label(telling, &questions[q], figure), words);
        }
    }
}

static void lacking_line(struct telling *telling)
{
    struct text words = text_start(telling->into->arena);
    size_t count = telling->lacks.count;
    const char *needs = "needs ";
    bool needed = false;
    for (size_t i = 0; i < count && i < MOST_LACKS; i++) {
        const char *lack = telling->lacks.items[i];
        bool need = text_begins(lack, needs);
        text_add(&words, "%s%s",
                 i == 0           ? ""
                 : need && needed ? ", "
                                  : "; ",
                 need && needed ? lack + strlen(needs) : lack);
        needed = need;
    }
    if (count > MOST_LACKS)
        text_add(&words, " and %zu more", count - MOST_LACKS);
    if (count > 0)
        document_words(telling->into, text_print(telling->into->arena,
                                                 "Not all could be worked out: %s.", words.items))
            ->hang = 1;
}

void answer_figures(struct document *into, const struct result *result)
{
    struct telling telling = {.into = into, .result = result};
    if (pedal_count(&telling) > 0)
        pedal_table(&telling);
    brakes_table(&telling);
    question_rows(&telling);
    lacking_line(&telling);
}
