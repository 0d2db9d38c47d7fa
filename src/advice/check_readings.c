#include "advice/checks.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "base/text.h"

/* A reading at another effort is no reading of this figure. */
static bool same_effort(const struct checking *checking, const struct taken_reading *reading,
                        const struct figure *figure)
{
    double solved = figure->row->scope == SCOPE_PEDAL
                        ? figure_value(checking, "pedal-effort", figure->subject)
                        : NAN;
    return isnan(reading->effort.n) || isnan(solved) || fabs(reading->effort.n / solved - 1) < 0.02;
}

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

void check_reading_off(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->reading_count; i++) {
        const struct taken_reading *reading = &checking->system->readings[i];
        const struct figure *figure = figures_find(checking->figures, reading->figure, reading->of);
        if (figure == NULL || figure->state == FIGURE_NOT_COMPUTED ||
            !same_effort(checking, reading, figure)) {
            continue;
        }
        double off = fabs(reading->value - figure->value) / fabs(figure->value);
        if (!(off > limit_value(row->limit))) {
            continue;
        }
        struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
        finding->place = reading->place;
        finding_text(finding, "figure",
                     figure->of != NULL && *figure->of != '\0'
                         ? text_print(checking->arena, "%s, %s", figure->row->title, figure->of)
                         : figure->row->title);
        finding_quantity(finding, "reading", reading->value, figure->row->dimension);
        finding_quantity(finding, "computed", figure->value, figure->row->dimension);
        finding_quantity(finding, "off", off, DIMENSION_SHARE);
        finding_text(finding, "hint", hint_words(reading->figure, reading->value > figure->value));
        finding_rests_on(finding, figure);
    }
}

/* How many figures have this key as the first to measure. */
static int led_by(const struct figures *figures, const struct cited_key *cited)
{
    int count = 0;
    for (int i = 0; i < figures->count; i++) {
        const struct cited_key *first = figure_first_to_measure(&figures->items[i]);
        count += first != NULL && first->part == cited->part && first->key == cited->key;
    }
    return count;
}

void check_assumed_mostly(struct checking *checking, const struct check_row *row)
{
    int computed = 0, assumed = 0, most = 0;
    const struct cited_key *leader = NULL;
    for (int i = 0; i < checking->figures->count; i++) {
        const struct figure *figure = &checking->figures->items[i];
        computed += figure->state != FIGURE_NOT_COMPUTED;
        assumed += figure->state == FIGURE_ASSUMED;
        const struct cited_key *first = figure_first_to_measure(figure);
        if (first != NULL && led_by(checking->figures, first) > most) {
            leader = first;
            most = led_by(checking->figures, leader);
        }
    }
    if (leader == NULL || !(assumed > computed * limit_value(row->limit))) {
        return;
    }
    struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
    finding_quantity(finding, "assumed", assumed, DIMENSION_NUMBER);
    finding_quantity(finding, "computed", computed, DIMENSION_NUMBER);
    finding_text(finding, "first",
                 text_print(checking->arena, "%s of the %s", leader->key->name,
                            checking->system->parts[leader->part].name));
    finding_limit(finding, "limit");
    finding->assumed = true;
}
