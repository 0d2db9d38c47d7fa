#include <math.h>

#include "report/text/text_frame.h"
#include "report/text/text_report.h"
#include "units/unit.h"

enum { BAR_WIDTH = 30, CASE_WIDTH = 34 };

static const char *length_words(struct arena *arena, const struct result *result, double m)
{
    return isnan(m) ? "-" : unit_text(arena, m, DIMENSION_LENGTH, result->units);
}

static void add_column(struct text *into, const char *words, int width)
{
    int gap = width - text_letters(words);
    text_add(into, "%*s%s", gap > 0 ? gap : 0, "", words);
}

/* Effort, travel and pressures, a line a point. */
static void add_points(struct text *into, const struct result *result,
                       const struct pedal_curve *curve)
{
    struct arena *arena = into->arena;
    double floor = result->system->parts[curve->pedal].as.pedal.travel.m;
    text_add(into, "      effort      travel  to the floor");
    for (int c = 0; c < curve->circuit_count; c++)
        add_column(into, result->network->circuits[curve->circuits[c]].name, 18);
    text_add(into, "\n");
    for (int i = 0; i < curve->count; i++) {
        const struct curve_point *point = &curve->points[i];
        add_column(into, unit_text(arena, point->effort.n, DIMENSION_FORCE, result->units), 12);
        add_column(into, length_words(arena, result, point->travel.m), 12);
        add_column(into, length_words(arena, result, floor - point->travel.m), 14);
        for (int c = 0; c < curve->circuit_count; c++)
            add_column(into,
                       unit_text(arena, point->by_circuit[c].pa, DIMENSION_PRESSURE, result->units),
                       18);
        text_add(into, "\n");
    }
}

static void add_bar(struct text *into, double part, double most)
{
    int length = most > 0 ? (int)lround(BAR_WIDTH * part / most) : 0;
    for (int i = 0; i < length; i++)
        text_add(into, "#");
}

/* What takes the travel at the end of the curve, a bar each. */
static void add_causes(struct text *into, const struct result *result,
                       const struct pedal_curve *curve)
{
    const struct curve_point *end = &curve->points[curve->count - 1];
    double most = 0;
    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++)
        most = fmax(most, end->by_cause[cause].m);
    text_add(into, "\n  What takes the travel at %s:\n",
             unit_text(into->arena, end->effort.n, DIMENSION_FORCE, result->units));
    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++) {
        double taken = end->by_cause[cause].m;
        if (!isnan(taken) && !(taken > 0))
            continue;
        const char *words = travel_cause_words((enum travel_cause)cause);
        text_add(into, "    %s%*s", words, 28 - text_letters(words), "");
        add_column(into, length_words(into->arena, result, taken), 10);
        text_add(into, "  ");
        add_bar(into, taken, most);
        text_add(into, "\n");
    }
}

static const char *end_words(const struct pedal_curve *curve)
{
    return curve->on_floor ? "  on the floor" : curve->bottomed ? "  at the bore's end" : "";
}

static void add_cases(struct text *into, const struct result *result,
                      const struct pedal_curves *curves)
{
    struct arena *arena = into->arena;
    text_add(into, "\n  The cases side by side:\n    %-*s    effort    travel  to the floor\n",
             CASE_WIDTH, "case");
    for (int i = 0; i < curves->count; i++) {
        const struct car_curve *drawn = &curves->items[i];
        const struct pedal_curve *curve = drawn->curve;
        text_add(into, "    %s", drawn->words);
        if (isnan(drawn->travel.m)) {
            text_add(into, "\n      ");
            text_add_wrapped(into, curve_lack_words(arena, result->system, drawn), 6, 8,
                             FRAME_WIDTH);
            continue;
        }
        int gap = CASE_WIDTH - text_letters(drawn->words);
        text_add(into, "%*s", gap > 0 ? gap : 1, "");
        double effort = curve->points[curve->count - 1].effort.n;
        add_column(into, unit_text(arena, effort, DIMENSION_FORCE, result->units), 10);
        add_column(into, length_words(arena, result, drawn->travel.m), 10);
        add_column(into, length_words(arena, result, curve->left.m), 10);
        if (!isnan(drawn->left.of_1))
            add_column(
                into,
                text_print(arena, "(%s)",
                           unit_text(arena, drawn->left.of_1, DIMENSION_SHARE, result->units)),
                7);
        text_add(into, "%s\n", end_words(curve));
    }
}

/* The figure that says what the travel rests on. */
static void add_rests(struct text *into, const struct result *result, const char *pedal)
{
    const struct figure *figure = figures_find(&result->figures, "pedal-travel", pedal);
    if (figure == NULL || figure->state == FIGURE_COMPUTED)
        return;
    text_add(into, "\n  ");
    text_add_wrapped(into,
                     text_print(into->arena, "Travel %s",
                                figure_state_words(into->arena, result->system, figure, 4)),
                     2, 4, FRAME_WIDTH);
}

void text_curve(struct text *into, const struct result *result)
{
    const struct curves *curves = result->curves;
    frame_title(into, result);
    for (int i = 0; i < curves->count; i++) {
        const struct pedal_curves *of = &curves->items[i];
        const char *name = result->system->parts[of->pedal].name;
        frame_heading(into, text_print(into->arena, "Travel of the %s against effort", name));
        if (of->items[0].curve->count > 0) {
            add_points(into, result, of->items[0].curve);
            add_causes(into, result, of->items[0].curve);
            add_cases(into, result, of);
        }
        add_rests(into, result, name);
    }
    frame_deference(into);
}
