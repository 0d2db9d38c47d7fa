#include "report/text/text_figures.h"

#include <string.h>

#include "report/text/text_frame.h"
#include "report/text/text_report.h"

enum { VALUE_END = 46, MOST_LACKS = 3, TOLD_OF_EACH = 3, MOST_TOLD = 3 };

/* A star where a figure rests on something assumed, two where it mostly does. */
static const char *stars(const struct figure *figure)
{
    if (figure->state != FIGURE_ASSUMED)
        return "";
    return figure_mostly_assumed(figure) ? "**" : "*";
}

/* Title, value, stars, id. */
static void add_line(struct text *into, const struct result *result, const struct figure *figure,
                     const char *title)
{
    const char *value = figure->state == FIGURE_NOT_COMPUTED
                            ? "not computed"
                            : figure_value_words(into->arena, figure, result->units);
    int gap = VALUE_END - text_letters(title) - text_letters(value);
    text_add(into, "  %s%*s%s %-2s %s\n", title, gap > 1 ? gap : 1, "", value, stars(figure),
             figure->row->id);
    const char *broken = figure_broken_words(into->arena, figure);
    if (figure->remark != NULL) {
        text_add(into, "      ");
        text_add_wrapped(into, figure->remark, 6, 6, FRAME_WIDTH);
    }
    if (broken == NULL)
        return;
    text_add(into, "      ");
    text_add_wrapped(into, text_print(into->arena, "LIMITS NOT MET: %s", broken), 6, 6,
                     FRAME_WIDTH);
}

/* --- at the top ------------------------------------------------------------------------------ */

static bool said_before(const struct figures *figures, int at)
{
    for (int i = 0; i < at; i++)
        if (figures->items[i].row == figures->items[at].row &&
            figures->items[i].value == figures->items[at].value)
            return true;
    return false;
}

/* Why a first figure is not computed, once for all in a row that lack the same. */
static const char *add_lack(struct text *into, const struct result *result,
                            const struct figure *figure, const char *before)
{
    const char *lack = figure_state_words(into->arena, result->system, figure, MOST_LACKS);
    if (before != NULL && strcmp(lack, before) == 0)
        return before;
    text_add(into, "      ");
    text_add_wrapped(into, lack + strlen("not computed: "), 6, 6, FRAME_WIDTH);
    return lack;
}

void text_headlines(struct text *into, const struct result *result)
{
    const char *lack = NULL;
    static const char *const asked[] = {"pedal-effort", "pedal-travel", "pedal-left",
                                        "line-pressure", "deceleration"};
    const struct figures *figures = &result->figures;
    for (size_t a = 0; a < sizeof asked / sizeof *asked; a++)
        for (int i = 0; i < figures->count; i++) {
            const struct figure *figure = &figures->items[i];
            if (strcmp(figure->row->id, asked[a]) != 0 || said_before(figures, i))
                continue;
            const char *title = figure->row->title;
            if (figure->row->scope != SCOPE_CAR)
                title = text_print(into->arena, "%s, %s", title, figure->of);
            add_line(into, result, figure, title);
            if (figure->state == FIGURE_NOT_COMPUTED)
                lack = add_lack(into, result, figure, lack);
        }
}

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

/* "Not computed: needs disc thickness: Warming in one hard stop (rise-per-stop), ...": all that
 * lack the same together. */
static void add_lacking(struct text *into, const struct result *result, int first)
{
    struct arena *arena = into->arena;
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
        text_add(into, "  ");
        text_add_wrapped(into, text_print(arena, "N%s:%s", lack + 1, line.items), 2, 6,
                         FRAME_WIDTH);
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

static void add_told(struct text *into, const struct result *result, int first)
{
    const struct figures *figures = &result->figures;
    size_t most = (size_t)figures->count * TOLD_OF_EACH + 1;
    struct told *list = ARENA_ARRAY(into->arena, most, struct told);
    int count = most_told(figures, first, list);
    if (count == 0)
        return;
    struct text line = text_start(into->arena);
    for (int n = 0; n < count && n < MOST_TOLD; n++) {
        int best = 0;
        for (int i = 1; i < count; i++)
            if (list[i].points > list[best].points)
                best = i;
        list[best].points = 0;
        text_add(&line, "%s %s", n > 0 ? "," : "",
                 cited_words(into->arena, result->system, &list[best].key));
    }
    text_add(into, "  ");
    text_add_wrapped(into,
                     text_print(into->arena, "Assumed, and telling most:%s",
                                own_words(into->arena, line.items, figures->items[first].of)),
                     2, 6, FRAME_WIDTH);
}

/* --- all figures, subject by subject --------------------------------------------------------- */

static void add_causes(struct text *into, const struct result *result, int circuit)
{
    struct text line = text_start(into->arena);
    const char *id = "", *most = "";
    for (int i = 0; i < result->figures.count; i++) {
        const struct figure *figure = &result->figures.items[i];
        if (figure->row->scope != SCOPE_CAUSE || figure->subject != circuit ||
            figure->state == FIGURE_NOT_COMPUTED || figure->value == 0)
            continue;
        if (strlen(stars(figure)) > strlen(most))
            most = stars(figure);
        id = figure->row->id;
        text_add(&line, "%s%s %s", line.count > 0 ? ", " : "", cause_words((enum cause)figure->sub),
                 figure_value_words(into->arena, figure, result->units));
    }
    if (line.count == 0)
        return;
    text_add(into, "  ");
    text_add_wrapped(into,
                     text_print(into->arena, "Where it goes%s%s (%s): %s", *most ? " " : "", most,
                                id, line.items),
                     2, 6, FRAME_WIDTH);
}

static const char *lines_of(struct arena *arena, const struct result *result, int first)
{
    const struct figures *figures = &result->figures;
    struct text lines = text_start(arena);
    for (int i = first; i < figures->count; i++)
        if (is_of(&figures->items[i], &figures->items[first]) &&
            figures->items[i].state != FIGURE_NOT_COMPUTED)
            add_line(&lines, result, &figures->items[i], figures->items[i].row->title);
    if (figures->items[first].row->scope == SCOPE_CIRCUIT)
        add_causes(&lines, result, figures->items[first].subject);
    add_lacking(&lines, result, first);
    return lines.count > 0 ? lines.items : "";
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
    return figure->row->scope == SCOPE_CAR ? "the whole car" : text_copy(arena, figure->of);
}

void text_figures(struct text *into, const struct result *result)
{
    struct arena *arena = into->arena;
    const struct figures *figures = &result->figures;
    const char **lines = ARENA_ARRAY(arena, (size_t)figures->count + 1, const char *);
    for (int i = 0; i < figures->count; i++)
        lines[i] = starts_subject(figures, i) ? lines_of(arena, result, i) : NULL;
    for (int i = 0; i < figures->count; i++) {
        if (lines[i] == NULL)
            continue;
        char *heading = text_copy(arena, subject_words(arena, &figures->items[i]));
        if (heading[0] >= 'a' && heading[0] <= 'z')
            heading[0] = (char)(heading[0] - 'a' + 'A');
        const char *names = heading;
        for (int k = i + 1; k < figures->count; k++) {
            if (lines[k] == NULL || strcmp(lines[k], lines[i]) != 0)
                continue;
            names = text_print(arena, "%s, and the same: %s", names,
                               subject_words(arena, &figures->items[k]));
            lines[k] = NULL;
        }
        text_add(into, "\n%s\n%s", names, lines[i]);
        add_told(into, result, i);
    }
}
