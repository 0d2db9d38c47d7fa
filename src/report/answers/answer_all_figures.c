#include "report/answers/answer_figures.h"

#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "report/words/words.h"

enum { MOST_LACKS = 3, TOLD_OF_EACH = 3, MOST_TOLD = 3 };

/* --- what the figures of one subject lack and rest on ---------------------------------------- */

/* Keys of the subject itself without its name in brackets. */
static const char *own_words(struct arena *arena, const char *words, const char *of)
{
    const char *name = text_print(arena, "[%s] ", of);
    struct text out = text_start(arena);
    for (const char *at = words; *at != '\0';) {
        if (text_begins(at, name))
            at += strlen(name);
        else
            text_add_bytes(&out, at++, 1);
    }
    return out.count > 0 ? out.items : "";
}

static const char *lack_of(struct arena *arena, const struct result *result,
                           const struct figure *figure)
{
    if (figure->state != FIGURE_NOT_COMPUTED)
        return NULL;
    return own_words(arena, figure_state_words(arena, result->system, figure, MOST_LACKS),
                     figure->of);
}

static bool is_of(const struct figure *figure, const struct figure *first)
{
    return figure->row->scope != SCOPE_CAUSE && strcmp(figure->of, first->of) == 0;
}

/* What stands under a subject: rows of figures, then lines. Two subjects of which all is the same
 * are said once. */
struct subject {
    const char *head;
    struct figure_lines {
        struct figure_line {
            const char *words[4]; /* title, value, mark, id */
        } * items;
        size_t count, capacity;
    } figures;
    struct remarks {
        const char **items;
        size_t count, capacity;
    } remarks;
};

static void add_line(struct arena *arena, const struct result *result, struct subject *subject,
                     const struct figure *figure)
{
    const char *broken = figure_broken_words(arena, figure);
    *LIST_ADD(arena, &subject->figures) =
        (struct figure_line){{figure->row->title, figure_value_words(arena, figure, result->units),
                              answer_mark(figure), figure->row->id}};
    if (figure->remark != NULL)
        *LIST_ADD(arena, &subject->remarks) =
            text_print(arena, "%s: %s", figure->row->title, figure->remark);
    if (broken != NULL)
        *LIST_ADD(arena, &subject->remarks) =
            text_print(arena, "%s, LIMITS NOT MET: %s", figure->row->title, broken);
}

/* "Not computed: needs disc thickness: Warming in one hard stop (rise-per-stop), ...": all that
 * lack the same together. */
static void add_lacking(struct arena *arena, const struct result *result, struct subject *subject,
                        int first)
{
    const struct figures *figures = &result->figures;
    bool *done = ARENA_ARRAY(arena, (size_t)figures->count + 1, bool);
    for (int i = first; i < figures->count; i++) {
        const char *lack = lack_of(arena, result, &figures->items[i]);
        if (lack == NULL || done[i] || !is_of(&figures->items[i], &figures->items[first]))
            continue;
        struct text line = text_start(arena);
        for (int k = i; k < figures->count; k++) {
            const struct figure *other = &figures->items[k];
            const char *same = lack_of(arena, result, other);
            if (same == NULL || !is_of(other, &figures->items[first]) || strcmp(same, lack) != 0)
                continue;
            done[k] = true;
            text_add(&line, "%s %s (%s)", line.count > 0 ? "," : "", other->row->title,
                     other->row->id);
        }
        *LIST_ADD(arena, &subject->remarks) = text_print(arena, "N%s:%s", lack + 1, line.items);
    }
}

struct told {
    struct cited_key key;
    int points;
};

/* The assumed values that tell most of a subject's figures: three points for being first of one,
 * two for second, one for third. Gives how many of the list are filled. */
static int most_told(const struct figures *figures, int first, struct told *list)
{
    int count = 0;
    for (int i = first; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (!is_of(figure, &figures->items[first]) || figure->state != FIGURE_ASSUMED)
            continue;
        for (int k = 0; k < figure->assumed_count && k < TOLD_OF_EACH; k++) {
            int at = 0;
            while (at < count && (list[at].key.part != figure->assumed[k].part ||
                                  list[at].key.key != figure->assumed[k].key))
                at++;
            if (at == count)
                list[count++] = (struct told){figure->assumed[k], 0};
            list[at].points += TOLD_OF_EACH - k;
        }
    }
    return count;
}

static const char *told_words(struct arena *arena, const struct result *result, int first)
{
    const struct figures *figures = &result->figures;
    size_t most = (size_t)figures->count * TOLD_OF_EACH + 1;
    struct told *list = ARENA_ARRAY(arena, most, struct told);
    int count = most_told(figures, first, list);
    struct text line = text_start(arena);
    for (int n = 0; n < count && n < MOST_TOLD; n++) {
        int best = 0;
        for (int i = 1; i < count; i++)
            if (list[i].points > list[best].points)
                best = i;
        list[best].points = 0;
        text_add(&line, "%s %s", n > 0 ? "," : "",
                 cited_words(arena, result->system, &list[best].key));
    }
    return count == 0 ? NULL
                      : text_print(arena, "Assumed, and telling most:%s",
                                   own_words(arena, line.items, figures->items[first].of));
}

/* --- all figures, subject by subject --------------------------------------------------------- */

static void add_causes(struct arena *arena, const struct result *result, struct subject *subject,
                       int circuit)
{
    struct text line = text_start(arena);
    const char *id = "", *most = "";
    for (int i = 0; i < result->figures.count; i++) {
        const struct figure *figure = &result->figures.items[i];
        if (figure->row->scope != SCOPE_CAUSE || figure->subject != circuit ||
            figure->state == FIGURE_NOT_COMPUTED || figure->value == 0)
            continue;
        if (strlen(answer_mark(figure)) > strlen(most))
            most = answer_mark(figure);
        id = figure->row->id;
        text_add(&line, "%s%s %s", line.count > 0 ? ", " : "", cause_words((enum cause)figure->sub),
                 figure_value_words(arena, figure, result->units));
    }
    if (line.count > 0)
        *LIST_ADD(arena, &subject->remarks) =
            text_print(arena, "Where it goes%s%s (%s): %s", *most ? " " : "", most, id, line.items);
}

static bool starts_subject(const struct figures *figures, int at)
{
    if (figures->items[at].row->scope == SCOPE_CAUSE)
        return false;
    for (int i = 0; i < at; i++)
        if (is_of(&figures->items[i], &figures->items[at]))
            return false;
    return true;
}

static const char *subject_words(struct arena *arena, const struct figure *figure)
{
    char *words = text_copy(arena, figure->row->scope == SCOPE_CAR ? "the whole car" : figure->of);
    if (words[0] >= 'a' && words[0] <= 'z')
        words[0] = (char)(words[0] - 'a' + 'A');
    return words;
}

static struct subject subject_of(struct arena *arena, const struct result *result, int first)
{
    const struct figures *figures = &result->figures;
    struct subject subject = {.head = subject_words(arena, &figures->items[first])};
    for (int i = first; i < figures->count; i++)
        if (is_of(&figures->items[i], &figures->items[first]) &&
            figures->items[i].state != FIGURE_NOT_COMPUTED)
            add_line(arena, result, &subject, &figures->items[i]);
    if (figures->items[first].row->scope == SCOPE_CIRCUIT)
        add_causes(arena, result, &subject, figures->items[first].subject);
    add_lacking(arena, result, &subject, first);
    return subject;
}

static bool same_subject(const struct subject *a, const struct subject *b)
{
    if (a->figures.count != b->figures.count || a->remarks.count != b->remarks.count)
        return false;
    for (size_t i = 0; i < a->figures.count; i++)
        for (int k = 0; k < 4; k++)
            if (strcmp(a->figures.items[i].words[k], b->figures.items[i].words[k]) != 0)
                return false;
    for (size_t i = 0; i < a->remarks.count; i++)
        if (strcmp(a->remarks.items[i], b->remarks.items[i]) != 0)
            return false;
    return true;
}

static void put_subject(struct document *into, const struct subject *subject, const char *names,
                        const char *told)
{
    static const struct table_column columns[] = {{"", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                                  {"", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
                                                  {"", CELL_FIGURE, CELL_LEFT, 0, 0, true},
                                                  {"", CELL_WORDS, CELL_LEFT, 0, 0, true}};
    document_head(into, 2, names);
    struct table *table = document_table(into, columns, 4);
    into->items[into->count - 1].indent = 1;
    for (size_t i = 0; i < subject->figures.count; i++) {
        table_row(table);
        for (int k = 0; k < 4; k++)
            table_cell(table, subject->figures.items[i].words[k]);
    }
    for (size_t i = 0; i < subject->remarks.count + (told != NULL); i++) {
        struct block *words =
            document_words(into, i < subject->remarks.count ? subject->remarks.items[i] : told);
        words->indent = 1;
        words->hang = 2;
    }
}

void answer_all_figures(struct document *into, const struct result *result)
{
    struct arena *arena = into->arena;
    const struct figures *figures = &result->figures;
    struct subject *subjects = ARENA_ARRAY(arena, (size_t)figures->count + 1, struct subject);
    for (int i = 0; i < figures->count; i++)
        if (starts_subject(figures, i))
            subjects[i] = subject_of(arena, result, i);
    for (int i = 0; i < figures->count; i++) {
        const char *names = subjects[i].head;
        if (names == NULL)
            continue;
        for (int k = i + 1; k < figures->count; k++) {
            if (subjects[k].head == NULL || !same_subject(&subjects[i], &subjects[k]))
                continue;
            names = text_print(arena, "%s, and the same: %s", names,
                               text_copy(arena, figures->items[k].of));
            subjects[k].head = NULL;
        }
        put_subject(into, &subjects[i], names, told_words(arena, result, i));
    }
}
