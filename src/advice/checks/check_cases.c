#include "advice/checks/checks.h"

#include <stddef.h>

/* Pedals that keep off the floor as described, but not in another case. */
static void find_floor(struct checking *checking, const struct check_row *row, const char *id)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        if (checking->system->parts[i].kind != KIND_PEDAL) {
            continue;
        }
        const struct figure *left = figure_about(checking, id, i);
        double usual = figure_value(checking, "pedal-left", i);
        double least = floor_margin(checking, i);
        if (left != NULL && left->value < least && usual >= least) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.pedal.travel));
            finding_quantity(finding, "now", left->value, DIMENSION_LENGTH);
            finding_quantity(finding, "left", usual, DIMENSION_LENGTH);
            finding_rests_on(finding, left);
        }
    }
}

void check_floor_hot(struct checking *checking, const struct check_row *row)
{
    find_floor(checking, row, "pedal-left-hot");
}

void check_floor_knocked(struct checking *checking, const struct check_row *row)
{
    find_floor(checking, row, "pedal-left-knocked-back");
}

void check_floor_hoses(struct checking *checking, const struct check_row *row)
{
    find_floor(checking, row, "pedal-left-worn-hoses");
}

void check_few_strokes(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *strokes = figure_about(checking, "assisted-strokes-left", i);
        if (checking->system->parts[i].kind == KIND_SERVO && strokes != NULL &&
            strokes->value < limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.servo.vacuum_volume));
            finding_quantity(finding, "strokes", strokes->value, DIMENSION_NUMBER);
            finding_limit(finding, "least");
            finding_rests_on(finding, strokes);
        }
    }
}
