#include "report/sheet/pages.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "report/words/words.h"

/* Columns, from the left margin: title, of what, value (right end), state, reading. */
#define OF_WHAT    56.0
#define VALUE_END  117.0
#define STATE      119.5
#define READING    141.0
#define ROW_HEIGHT 4.3

static void figures_head(struct flow *flow)
{
    struct sketch *page = flow_page(flow);
    double y = flow->y + 2.6;
    sketch_words(page, FLOW_LEFT, y, "figure", flow_small(), ALIGN_LEFT, INK_DARK);
    sketch_words(page, FLOW_LEFT + OF_WHAT, y, "of", flow_small(), ALIGN_LEFT, INK_DARK);
    sketch_words(page, FLOW_LEFT + VALUE_END, y, "expected", flow_small(), ALIGN_RIGHT, INK_DARK);
    sketch_words(page, FLOW_LEFT + READING, y, "reading", flow_small(), ALIGN_LEFT, INK_DARK);
    flow_skip(flow, 4.0);
    flow_rule(flow);
}

/* The last reading of a figure that a work file already holds, or NULL. */
static const struct taken_reading *taken(const struct result *result, const struct figure *figure)
{
    for (int i = result->readings.count - 1; i >= 0; i--)
        if (result->readings.items[i].figure == figure)
            return result->readings.items[i].reading;
    return NULL;
}

static const char *take_words(const struct figure_row *row)
{
    const struct reading_row *reading = reading_row(row->id);
    return reading != NULL ? reading->key.help : NULL;
}

static const char *of_words(const struct figure *figure)
{
    return figure->of && *figure->of ? figure->of : "the car";
}

/* Why there is no figure. */
static const char *lack_words(struct arena *arena, const struct result *result,
                              const struct figure *figure)
{
    return figure_state_words(arena, result->system, figure, 3);
}

#define OF_WIDTH (VALUE_END - OF_WHAT - 19.0)

/* Beside the figure, not in a footnote. */
static const char *broken_words(struct arena *arena, const struct figure *figure)
{
    const char *broken = figure_broken_words(arena, figure);
    if (broken == NULL)
        return figure->remark;
    return text_print(arena, "Limits not met: %s.", broken);
}

static double of_height(struct flow *flow, const struct figure *figure)
{
    return fmax(ROW_HEIGHT,
                flow_words(flow, 0, 0, OF_WIDTH, of_words(figure), flow_plain(), INK_BLACK, false));
}

static double row_height(struct flow *flow, const struct result *result,
                         const struct figure *figure)
{
    double height = of_height(flow, figure);
    if (figure->state == FIGURE_NOT_COMPUTED)
        height = fmax(height, flow_words(flow, 0, 0, flow_width(flow) - OF_WHAT - 45,
                                         lack_words(flow->arena, result, figure), flow_slanted(),
                                         INK_DARK, false));
    height += flow_words(flow, 0, 0, flow_width(flow) - OF_WHAT, broken_words(flow->arena, figure),
                         flow_slanted(), INK_BLACK, false);
    return fmax(ROW_HEIGHT, height + 0.3);
}

static void reading_line(struct flow *flow, const struct result *result,
                         const struct figure *figure, double base)
{
    const struct taken_reading *reading = taken(result, figure);
    if (reading) {
        const char *value =
            unit_text(flow->arena, reading->value, figure->row->dimension, result->units);
        if (figure->row->bore_like)
            value = unit_show_bore(flow->arena, reading->value, result->units);
        sketch_words(flow_page(flow), FLOW_LEFT + READING, base,
                     text_print(flow->arena, "read: %s", value), flow_bold(), ALIGN_LEFT,
                     INK_BLACK);
    } else if (reading_row(figure->row->id) != NULL) {
        flow_blank(flow, FLOW_LEFT + READING, flow_right(flow), base, NULL);
    }
}

static void figure_line(struct flow *flow, const struct result *result, const struct figure *figure,
                        double y)
{
    struct sketch *page = flow_page(flow);
    double base = y + 3.1;
    flow_words(flow, FLOW_LEFT + OF_WHAT, y, OF_WIDTH, of_words(figure), flow_plain(), INK_BLACK,
               true);
    if (figure->state == FIGURE_NOT_COMPUTED) {
        double x = FLOW_LEFT + OF_WHAT + 45;
        flow_words(flow, x, y + 0.3, flow_right(flow) - x, lack_words(flow->arena, result, figure),
                   flow_slanted(), INK_DARK, true);
        return;
    }
    sketch_words(page, FLOW_LEFT + VALUE_END, base,
                 figure_value_words(flow->arena, figure, result->units), flow_bold(), ALIGN_RIGHT,
                 INK_BLACK);
    sketch_words(page, FLOW_LEFT + STATE, base, figure_state_word(figure), flow_small(), ALIGN_LEFT,
                 figure->state == FIGURE_ASSUMED ? INK_BLACK : INK_GREY);
    reading_line(flow, result, figure, base);
    flow_words(flow, FLOW_LEFT + OF_WHAT, y + of_height(flow, figure), flow_width(flow) - OF_WHAT,
               broken_words(flow->arena, figure), flow_slanted(), INK_BLACK, true);
}

/* All figures of one row, its title and id once beside them. */
static void figure_group(struct flow *flow, const struct result *result, int first, int end)
{
    const struct figure *items = result->figures.items;
    const struct figure_row *row = items[first].row;
    double title = flow_words(flow, 0, 0, OF_WHAT - 3, row->title, flow_plain(), INK_BLACK, false) +
                   flow_line(flow_id());
    double take = flow_words(flow, 0, 0, flow_width(flow) - OF_WHAT, take_words(row),
                             flow_slanted(), INK_DARK, false);
    double height = take;
    for (int i = first; i < end; i++)
        height += row_height(flow, result, &items[i]);
    height = fmax(height, title) + 2.2;
    if (flow_need(flow, fmin(height, 120)))
        figures_head(flow);
    double y = flow->y + 1.1;
    double below = flow_words(flow, FLOW_LEFT, y - 0.1, OF_WHAT - 3, row->title, flow_plain(),
                              INK_BLACK, true);
    below = flow_words(flow, FLOW_LEFT, below, OF_WHAT - 3, row->id, flow_id(), INK_GREY, true);
    for (int i = first; i < end; i++) {
        double next = row_height(flow, result, &items[i]);
        if (y + next > flow->y + flow_left_over(flow) + ROW_HEIGHT) {
            flow_new_page(flow);
            figures_head(flow);
            y = flow->y + 1.1;
            below = y;
        }
        figure_line(flow, result, &items[i], y);
        y += next;
    }
    y = flow_words(flow, FLOW_LEFT + OF_WHAT, y, flow_width(flow) - OF_WHAT, take_words(row),
                   flow_slanted(), INK_DARK, true);
    flow->y = fmax(y, below) + 1.1;
    flow_rule(flow);
}

enum { LEADING = 3 };

struct rested {
    struct cited_key key;
    int leads; /* figures of which it is among the first */
    int figures;
    int first;
};

static int compare_rested(const void *a, const void *b)
{
    const struct rested *x = a;
    const struct rested *y = b;
    if (x->leads != y->leads)
        return y->leads - x->leads;
    return x->figures != y->figures ? y->figures - x->figures : x->first - y->first;
}

/* Every assumed value that some figure rests on, with how many figures do. */
static int collect_rested(const struct result *result, struct rested *into)
{
    int count = 0;
    for (int i = 0; i < result->figures.count; i++) {
        const struct figure *figure = &result->figures.items[i];
        for (int k = 0; figure->state == FIGURE_ASSUMED && k < figure->assumed_count; k++) {
            int at = 0;
            while (at < count && (into[at].key.part != figure->assumed[k].part ||
                                  into[at].key.key != figure->assumed[k].key))
                at++;
            if (at == count)
                into[count++] = (struct rested){figure->assumed[k], 0, 0, at};
            into[at].figures++;
            into[at].leads += k < LEADING;
        }
    }
    qsort(into, (size_t)count, sizeof *into, compare_rested);
    return count;
}

static const char *value_of_key(struct arena *arena, const struct result *result,
                                const struct cited_key *cited)
{
    const struct part *part = &result->system->parts[cited->part];
    double value = key_value(part, cited->key);
    if (cited->key->form == FORM_CHOICE) {
        for (const struct choice *c = cited->key->choices; c->word; c++)
            if (c->value == (int)value)
                return c->word;
        return "?";
    }
    if (cited->key->form == FORM_COUNT)
        return text_print(arena, "%.0f", value);
    if (isnan(value))
        return "usual";
    return unit_text(arena, value, cited->key->dimension, result->units);
}

/* What to measure first: a list in two columns. */
static void assumed_values(struct flow *flow, const struct result *result)
{
    int most = 1;
    for (int i = 0; i < result->figures.count; i++)
        most += result->figures.items[i].assumed_count;
    struct rested *list = ARENA_ARRAY(flow->arena, (size_t)most, struct rested);
    int count = collect_rested(result, list);
    if (count == 0)
        return;
    flow_subheading(flow, "Assumed values behind these figures", 20);
    flow_paragraph(flow,
                   "Measure from the top down: first what tells most. The number in brackets says "
                   "how many figures rest on the value.",
                   flow_small(), INK_DARK);
    double width = flow_width(flow) / 2;
    for (int i = 0; i < count; i += 2) {
        flow_need(flow, 4.0);
        for (int k = i; k < i + 2 && k < count; k++) {
            double x = FLOW_LEFT + (k - i) * (width + 3);
            const char *name = cited_words(flow->arena, result->system, &list[k].key);
            const char *value =
                text_print(flow->arena, "%s  (%d)", value_of_key(flow->arena, result, &list[k].key),
                           list[k].figures);
            sketch_words(flow_page(flow), x, flow->y + 2.6, name, flow_small(), ALIGN_LEFT,
                         INK_BLACK);
            sketch_words(flow_page(flow), x + width - 6, flow->y + 2.6, value, flow_small(),
                         ALIGN_RIGHT, INK_BLACK);
        }
        flow_skip(flow, 3.7);
    }
}

/* All that was read, each beside its figure at its own effort. */
static void readings_list(struct flow *flow, const struct result *result)
{
    if (result->readings.count == 0)
        return;
    flow_subheading(flow, "Readings taken", 20);
    for (int i = 0; i < result->readings.count; i++) {
        const struct compared *compared = &result->readings.items[i];
        flow_paragraph(flow,
                       text_print(flow->arena, "%s, %s: %s", compared->figure->row->title,
                                  of_words(compared->figure),
                                  reading_words(flow->arena, result, compared)),
                       flow_plain(), INK_BLACK);
    }
}

void pages_figures(struct flow *flow, const struct result *result)
{
    flow_heading(flow, "Figures", 45);
    flow_paragraph(flow,
                   "Computed from the description. \"Assumed\" stands beside a figure that rests "
                   "on a typical value, \"mostly assumed\" where more than half of what moves it "
                   "is typical; a line waits for the reading at the car.",
                   flow_plain(), INK_DARK);
    figures_head(flow);
    for (int i = 0; i < result->figures.count;) {
        int end = i + 1;
        while (end < result->figures.count &&
               result->figures.items[end].row == result->figures.items[i].row)
            end++;
        figure_group(flow, result, i, end);
        i = end;
    }
    readings_list(flow, result);
    assumed_values(flow, result);
}
