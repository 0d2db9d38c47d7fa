#include "advice/checks/checks.h"

#include <math.h>

static const struct figure *about_slave(const struct checking *checking, const char *id, int part)
{
    return checking->system->parts[part].kind == KIND_SLAVE ? figure_about(checking, id, part)
                                                            : NULL;
}

void check_clutch_short(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *travel = about_slave(checking, "bearing-travel", i);
        double wanted = checking->system->parts[i].as.slave.bearing_travel.m;
        if (travel != NULL && travel->value < wanted * (1 + limit_value(row->limit))) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.slave.bearing_travel));
            finding_quantity(finding, "travel", fmax(travel->value, 0), DIMENSION_LENGTH);
            finding_quantity(finding, "wanted", wanted, DIMENSION_LENGTH);
            finding_limit(finding, "least");
            finding_rests_on(finding, travel);
        }
    }
}

void check_clutch_over(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *travel = about_slave(checking, "bearing-travel", i);
        double most = checking->system->parts[i].as.slave.bearing_most.m;
        if (travel != NULL && most - travel->value < limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.slave.bearing_most));
            finding_quantity(finding, "travel", travel->value, DIMENSION_LENGTH);
            finding_quantity(finding, "most", most, DIMENSION_LENGTH);
            finding_rests_on(finding, travel);
        }
    }
}

void check_slave_over(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *left = about_slave(checking, "slave-stroke-left", i);
        if (left != NULL && left->value < limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.slave.stroke));
            finding_quantity(finding, "travel", figure_value(checking, "slave-travel", i),
                             DIMENSION_LENGTH);
            finding_quantity(finding, "stroke", checking->system->parts[i].as.slave.stroke.m,
                             DIMENSION_LENGTH);
            finding_limit(finding, "least");
            finding_rests_on(finding, left);
        }
    }
}

void check_clutch_clearance(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *clearance = about_slave(checking, "clutch-clearance-per-face", i);
        if (clearance != NULL && clearance->value < limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.slave.finger_ratio));
            finding_quantity(finding, "clearance", fmax(clearance->value, 0), DIMENSION_LENGTH);
            finding_limit(finding, "least");
            finding_rests_on(finding, clearance);
        }
    }
}

void check_clutch_effort(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *effort = about_slave(checking, "clutch-effort", i);
        if (effort != NULL && effort->value > limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.slave.release_force));
            finding_quantity(finding, "effort", effort->value, DIMENSION_FORCE);
            finding_limit(finding, "most");
            finding_rests_on(finding, effort);
        }
    }
}
