#include "advice/checks/checks.h"

#include <math.h>

static const struct figure *about_hand_brake(const struct checking *checking, const char *id,
                                             int part)
{
    return checking->system->parts[part].kind == KIND_PARKING ? figure_about(checking, id, part)
                                                              : NULL;
}

/* The way that it holds less. */
void check_hand_brake(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *up = about_hand_brake(checking, "hand-brake-slope", i);
        const struct figure *down = about_hand_brake(checking, "hand-brake-slope-down", i);
        bool faces_down = down != NULL && (up == NULL || down->value < up->value);
        const struct figure *slope = faces_down ? down : up;
        if (slope != NULL && slope->value < limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.parking.lever_ratio));
            finding_text(finding, "facing", faces_down ? "down" : "up");
            finding_quantity(finding, "slope", slope->value, DIMENSION_SHARE);
            finding_quantity(finding, "effort", checking->system->parts[i].as.parking.effort.n,
                             DIMENSION_FORCE);
            finding_limit(finding, "least");
            finding_rests_on(finding, slope);
        }
    }
}

/* Clicks counted at the car where they are said, else computed. */
static double clicks_of(const struct checking *checking, int part, const struct figure **computed)
{
    int counted = checking->system->parts[part].as.parking.clicks;
    *computed = counted > 0 ? NULL : figure_about(checking, "hand-brake-clicks", part);
    if (counted > 0)
        return counted;
    return *computed != NULL ? (*computed)->value : NAN;
}

static void add_clicks(struct checking *checking, const struct check_row *row, int part,
                       const char *limit, double clicks, const struct figure *computed)
{
    struct finding *finding = finding_add(checking, row, part, FIELD(as.parking.clicks));
    finding_quantity(finding, "clicks", clicks, DIMENSION_NUMBER);
    finding_limit(finding, limit);
    finding_rests_on(finding, computed);
}

void check_hand_brake_clicks_many(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *computed = NULL;
        bool is = checking->system->parts[i].kind == KIND_PARKING;
        double clicks = is ? clicks_of(checking, i, &computed) : NAN;
        if (clicks > limit_value(row->limit))
            add_clicks(checking, row, i, "most", clicks, computed);
    }
}

void check_hand_brake_clicks_few(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *computed = NULL;
        bool is = checking->system->parts[i].kind == KIND_PARKING;
        double clicks = is ? clicks_of(checking, i, &computed) : NAN;
        /* only counted ones: what is computed knows no tight cable */
        if (computed == NULL && clicks < limit_value(row->limit))
            add_clicks(checking, row, i, "least", clicks, computed);
    }
}

void check_tight_cable(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *lost = about_hand_brake(checking, "pedal-lost-tight-cable", i);
        double off = checking->system->parts[i].as.parking.holds_off.m;
        if (lost != NULL && off > limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.parking.holds_off));
            finding_quantity(finding, "off", off, DIMENSION_LENGTH);
            finding_quantity(finding, "travel", lost->value, DIMENSION_LENGTH);
            finding_rests_on(finding, lost);
        }
    }
}
