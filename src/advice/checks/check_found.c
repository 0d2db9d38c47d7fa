#include "advice/checks/checks.h"

#include "network/belonging.h"
#include "advice/common/phrases.h"

/* What was found on a part that is replaced in the same work is settled by the work. */
static bool stays(const struct part *part)
{
    return !part_is_new(part);
}

/* A cup or piston seal runs in it: not in a pipe, nor in a caliper, whose pistons seal. */
static bool has_running_bore(const struct part *part)
{
    return part->kind == KIND_MASTER || part->kind == KIND_SLAVE || part->kind == KIND_DRUM ||
           part->kind == KIND_SERVO || part->kind == KIND_VALVE;
}

void check_nipple_below(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (kind_is_wet(part->kind) && nipples_of(part) > 0 && part->fitted.nipple_below.m > 0) {
            struct finding *finding = finding_add(checking, row, i, FIELD(fitted.nipple_below));
            finding_quantity(finding, "below", part->fitted.nipple_below.m, DIMENSION_LENGTH);
        }
    }
}

void check_nipple_none(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        bool end = kind_is_brake(part->kind) || part->kind == KIND_SLAVE;
        if (end && nipples_of(part) == 0) {
            finding_add(checking, row, i, FIELD(fitted.nipples));
        }
    }
}

void check_nipple_sheared(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->found.nipple == NIPPLE_SHEARED && stays(part)) {
            finding_add(checking, row, i, NO_FIELD);
        }
    }
}

void check_nipple_seized(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->found.nipple == NIPPLE_SEIZED && stays(part)) {
            finding_add(checking, row, i, NO_FIELD);
        }
    }
}

void check_caliper_pitted(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->found.bore == BORE_PITTED && part->kind == KIND_DISC && stays(part)) {
            struct finding *finding = finding_add(checking, row, i, NO_FIELD);
            finding_text(finding, "cylinder", cylinder_words(checking->arena, part));
        }
    }
}

void check_bore_pitted(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->found.bore == BORE_PITTED && has_running_bore(part) && stays(part)) {
            finding_add(checking, row, i, NO_FIELD);
        }
    }
}

void check_bore_stained(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->found.bore == BORE_STAINED && has_running_bore(part) && stays(part)) {
            struct finding *finding = finding_add(checking, row, i, NO_FIELD);
            finding_limit(finding, "over");
        }
    }
}

void check_pistons_stuck(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->found.pistons == PISTONS_STUCK && stays(part)) {
            finding_add(checking, row, i, NO_FIELD);
        }
    }
}

/* Only where it is told that a side is lost: the pull of a steered axle. */
void check_pull_stuck(struct checking *checking, const struct check_row *row)
{
    const struct figure *difference = figure_about(checking, "pull-seized-front", -1);
    if (difference == NULL || !(difference->value > limit_value(row->limit)))
        return;
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->found.pistons != PISTONS_STUCK || !stays(part) || part->axle != AXLE_FRONT ||
            !kind_is_brake(part->kind))
            continue;
        struct finding *finding = finding_add(checking, row, i, NO_FIELD);
        finding_text(finding, "axle", "front");
        finding_quantity(finding, "difference", difference->value, DIMENSION_SHARE);
        finding_quantity(finding, "yaw", figure_value(checking, "yaw-seized-front", -1),
                         DIMENSION_TORQUE);
        finding_limit(finding, "most");
        finding_rests_on(finding, difference);
    }
}

void check_weeping(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->found.leak == LEAK_WEEPING && stays(part)) {
            finding_add(checking, row, i, NO_FIELD);
        }
    }
}
