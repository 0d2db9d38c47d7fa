#include "report/answers/answers.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/answers/answer.h"
#include "report/words/words.h"
#include "units/unit.h"

/* In short: so many points of the curve, and with so few pedals what takes the travel as well. */
enum { BAR_WIDTH = 20, FEW_POINTS = 4, FEWER_POINTS = 3, MOST_TOLD = 8 };

static const char *length_words(struct arena *arena, const struct result *result, double m)
{
    return isnan(m) ? "-" : unit_text(arena, m, DIMENSION_LENGTH, result->units);
}

static struct table_column figure_column(const char *head)
{
    return (struct table_column){head, CELL_FIGURE, CELL_RIGHT, 0, 0, false};
}

static struct table *points_table(struct document *into, const struct result *result,
                                  const struct pedal_curve *curve)
{
    struct table_column columns[TABLE_MOST_COLUMNS];
    int count = 0;
    columns[count++] = figure_column("effort");
    columns[count++] = figure_column("travel");
    columns[count++] = figure_column("to the floor");
    for (int c = 0; c < curve->circuit_count && count < TABLE_MOST_COLUMNS; c++)
        columns[count++] = figure_column(result->network->circuits[curve->circuits[c]].name);
    return document_table(into, columns, count);
}

static void add_point(struct table *table, const struct result *result,
                      const struct pedal_curve *curve, const struct curve_point *point)
{
    struct arena *arena = table->arena;
    double floor = result->system->parts[curve->pedal].as.pedal.travel.m;
    table_row(table);
    table_cell(table, unit_text(arena, point->effort.n, DIMENSION_FORCE, result->units));
    table_cell(table, length_words(arena, result, point->travel.m));
    table_cell(table, length_words(arena, result, floor - point->travel.m));
    for (int c = 0; 3 + c < table->column_count; c++)
        table_cell(table,
                   unit_text(arena, point->by_circuit[c].pa, DIMENSION_PRESSURE, result->units));
}

/* The point whose effort is nearest to a part of the last one's. */
static int point_near(const struct pedal_curve *curve, double part)
{
    double wanted = part * curve->points[curve->count - 1].effort.n;
    int best = 0;
    for (int i = 1; i < curve->count; i++)
        if (fabs(curve->points[i].effort.n - wanted) < fabs(curve->points[best].effort.n - wanted))
            best = i;
    return best;
}

/* Effort, travel and pressures, a line a point: most > 0: no more than so many, evenly. */
static void add_points(struct document *into, const struct result *result,
                       const struct pedal_curve *curve, int most)
{
    struct table *table = points_table(into, result, curve);
    if (most == 0 || curve->count <= most) {
        for (int i = 0; i < curve->count; i++)
            add_point(table, result, curve, &curve->points[i]);
        return;
    }
    int before = -1;
    for (int i = 1; i <= most; i++) {
        int at = point_near(curve, (double)i / most);
        if (at != before)
            add_point(table, result, curve, &curve->points[at]);
        before = at;
    }
}

static const char *bar(struct arena *arena, double part, double most)
{
    int length = most > 0 ? (int)lround(BAR_WIDTH * part / most) : 0;
    char *words = arena_new(arena, (size_t)(length > 0 ? length : 0) + 1);
    memset(words, '#', (size_t)(length > 0 ? length : 0));
    return words;
}

/* What takes the travel at the end of the curve, a bar each. */
static void add_causes(struct document *into, const struct result *result,
                       const struct pedal_curve *curve)
{
    const struct curve_point *end = &curve->points[curve->count - 1];
    struct arena *arena = into->arena;
    double most = 0;
    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++)
        most = fmax(most, end->by_cause[cause].m);
    const char *head = text_print(arena, "takes at %s",
                                  unit_text(arena, end->effort.n, DIMENSION_FORCE, result->units));
    const struct table_column columns[] = {{"", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                           figure_column(head),
                                           {"", CELL_FIGURE, CELL_LEFT, 0, 0, false}};
    document_gap(into);
    struct table *table = document_table(into, columns, 3);
    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++) {
        double taken = end->by_cause[cause].m;
        if (!isnan(taken) && !(taken > 0))
            continue;
        table_row(table);
        table_cell(table, travel_cause_words((enum travel_cause)cause));
        table_cell(table, length_words(arena, result, taken));
        table_cell(table, bar(arena, taken, most));
    }
}

static const char *end_words(const struct pedal_curve *curve)
{
    return curve->on_floor ? "on the floor" : curve->bottomed ? "at the bore's end" : "";
}

static void add_case(struct table *table, const struct result *result,
                     const struct car_curve *drawn)
{
    struct arena *arena = table->arena;
    const struct pedal_curve *curve = drawn->curve;
    table_row(table);
    table_cell(table, drawn->words);
    table_cell(table, unit_text(arena, curve->points[curve->count - 1].effort.n, DIMENSION_FORCE,
                                result->units));
    table_cell(table, length_words(arena, result, drawn->travel.m));
    table_cell(table, length_words(arena, result, curve->left.m));
    table_cell(table, isnan(drawn->left.of_1)
                          ? ""
                          : unit_text(arena, drawn->left.of_1, DIMENSION_SHARE, result->units));
    table_cell(table, end_words(curve));
}

static void add_cases(struct document *into, const struct result *result,
                      const struct pedal_curves *curves)
{
    const struct table_column columns[] = {{"case", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                           figure_column("effort"),
                                           figure_column("travel"),
                                           figure_column("to the floor"),
                                           figure_column(""),
                                           {"", CELL_WORDS, CELL_LEFT, 0, 0, false}};
    document_gap(into);
    struct table *table = document_table(into, columns, 6);
    for (int i = 0; i < curves->count; i++)
        if (!isnan(curves->items[i].travel.m))
            add_case(table, result, &curves->items[i]);
    for (int i = 0; i < curves->count; i++)
        if (isnan(curves->items[i].travel.m))
            document_words(
                into, text_print(into->arena, "%s: %s", curves->items[i].words,
                                 curve_lack_words(into->arena, result->system, &curves->items[i])))
                ->hang = 1;
}

/* The figure that says what the travel rests on. */
static void add_rests(struct document *into, const struct result *result, const char *pedal,
                      int most)
{
    const struct figure *figure = figures_find(&result->figures, "pedal-travel", pedal);
    if (figure == NULL || figure->state == FIGURE_COMPUTED)
        return;
    document_words(into, text_print(into->arena, "Travel %s",
                                    figure_state_words(into->arena, result->system, figure, most)))
        ->hang = 1;
}

void answer_curve(struct document *into, const struct result *result, bool all)
{
    const struct curves *curves = result->curves;
    if (all)
        answer_title_in_full(into, result);
    else
        answer_title(into, result);
    bool one = curves->count < 2;
    for (int i = 0; i < curves->count; i++) {
        const struct pedal_curves *of = &curves->items[i];
        const char *name = result->system->parts[of->pedal].name;
        document_head(into, 2, text_print(into->arena, "Travel of the %s against effort", name));
        if (of->items[0].curve->count > 0) {
            add_points(into, result, of->items[0].curve, all ? 0 : one ? FEW_POINTS : FEWER_POINTS);
            if (all || one)
                add_causes(into, result, of->items[0].curve);
            add_cases(into, result, of);
        }
        add_rests(into, result, name, all ? MOST_TOLD : 1);
    }
    if (!all) {
        document_gap(into);
        document_words(into, one ? "Every point: the same with --all"
                                 : "Every point, and what takes the travel: the same with --all");
    }
    answer_deference(into, all);
}
