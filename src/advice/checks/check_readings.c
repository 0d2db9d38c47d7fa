#include "advice/checks/checks.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/figures/to_measure.h"
#include "base/text.h"

static const char *hint_words(const char *id, bool more)
{
    if (strstr(id, "travel") != NULL && more) {
        return "Springy: air, an old hose, or new linings that do not lie on yet. Firm only at the "
               "second stroke: shoes not set, pistons knocked back";
    }
    if (strstr(id, "left") != NULL && !more) {
        return "Springy: air, an old hose, or new linings that do not lie on yet. Firm only at the "
               "second stroke: shoes not set, pistons knocked back";
    }
    if (strstr(id, "effort") != NULL && more) {
        return "Pistons that stick, glazed or oily linings, or no vacuum";
    }
    return "Measure once more, and look over bores and lengths in the description";
}

static const char *title_of(const struct checking *checking, const struct compared *compared)
{
    const struct figure *figure = compared->figure;
    return figure->of != NULL && *figure->of != '\0'
               ? text_print(checking->arena, "%s, %s", figure->row->title, figure->of)
               : figure->row->title;
}

static struct finding *add_reading(struct checking *checking, const struct check_row *row,
                                   const struct compared *compared)
{
    struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
    finding->place = compared->reading->place;
    finding_text(finding, "figure", title_of(checking, compared));
    finding_quantity(finding, "reading", compared->reading->value,
                     compared->figure->row->dimension);
    return finding;
}

void check_reading_off(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->readings.count; i++) {
        const struct compared *compared = &checking->readings.items[i];
        if (compared->outcome != COMPARED_OFF)
            continue;
        const struct taken_reading *reading = compared->reading;
        struct finding *finding = add_reading(checking, row, compared);
        finding_quantity(finding, "computed", compared->computed, compared->figure->row->dimension);
        finding_quantity(finding, "off", compared->off, DIMENSION_SHARE);
        finding_text(finding, "hint",
                     hint_words(reading->row->figure, reading->value > compared->computed));
        finding_rests_on(finding, compared->figure);
    }
}

void check_reading_impossible(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->readings.count; i++) {
        const struct compared *compared = &checking->readings.items[i];
        if (compared->outcome != COMPARED_IMPOSSIBLE)
            continue;
        struct finding *finding = add_reading(checking, row, compared);
        finding_text(finding, "end", compared->end_words);
        finding_quantity(finding, "most", compared->end, compared->figure->row->dimension);
    }
}

void check_assumed_mostly(struct checking *checking, const struct check_row *row)
{
    int computed = 0, assumed = 0;
    for (int i = 0; i < checking->figures->count; i++) {
        const struct figure *figure = &checking->figures->items[i];
        computed += figure->state != FIGURE_NOT_COMPUTED;
        assumed += figure->state == FIGURE_ASSUMED;
    }
    struct measurings things = measurings_of(checking->system, checking->figures, checking->arena);
    if (things.count == 0 || !(assumed > computed * limit_value(row->limit)))
        return;
    struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
    finding_quantity(finding, "assumed", assumed, DIMENSION_NUMBER);
    finding_quantity(finding, "computed", computed, DIMENSION_NUMBER);
    finding_text(finding, "first", things.items[0].words);
    finding_limit(finding, "limit");
    finding->assumed = true;
}
