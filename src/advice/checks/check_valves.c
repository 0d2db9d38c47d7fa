#include "advice/checks/checks.h"

#include <stddef.h>

static bool is_valve(const struct part *part, enum valve_type type)
{
    return part->kind == KIND_VALVE && part->as.valve.type == type;
}

static bool feeds_kind(const struct checking *checking, int part, enum part_kind kind)
{
    for (int chamber = 0; chamber < part_chambers(&checking->system->parts[part]); chamber++) {
        int from = network_vertex(checking->network, part, chamber);
        for (int v = 0; from >= 0 && v < checking->network->vertex_count; v++) {
            int reached = checking->network->vertices[v].part;
            if (checking->system->parts[reached].kind == kind &&
                network_beyond(checking->network, v, from)) {
                return true;
            }
        }
    }
    return false;
}

void check_residual_on_discs(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (is_valve(part, VALVE_RESIDUAL) && part->as.valve.holds.pa > limit_value(row->limit) &&
            feeds_kind(checking, i, KIND_DISC)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.valve.holds));
            finding_quantity(finding, "holds", part->as.valve.holds.pa, DIMENSION_PRESSURE);
            finding_limit(finding, "most");
        }
    }
}

/* Once a circuit: its drum with the weakest springs. */
void check_residual_drags(struct checking *checking, const struct check_row *row)
{
    for (int c = 0; c < checking->network->circuit_count; c++) {
        const struct circuit *circuit = &checking->network->circuits[c];
        const struct figure *held = figure_about(checking, "residual-pressure", c);
        int weakest = -1;
        for (int i = 0; held != NULL && i < circuit->vertex_count; i++) {
            int part = checking->network->vertices[circuit->vertices[i]].part;
            const struct part *drum = &checking->system->parts[part];
            if (drum->kind == KIND_DRUM && drum->as.drum.threshold.pa < held->value &&
                (weakest < 0 || drum->as.drum.threshold.pa <
                                    checking->system->parts[weakest].as.drum.threshold.pa))
                weakest = part;
        }
        if (weakest < 0)
            continue;
        const struct part *drum = &checking->system->parts[weakest];
        struct finding *finding = finding_add(checking, row, weakest, FIELD(as.drum.threshold));
        finding_text(finding, "circuit", circuit->name);
        finding_quantity(finding, "holds", held->value, DIMENSION_PRESSURE);
        finding_quantity(finding, "springs", drum->as.drum.threshold.pa, DIMENSION_PRESSURE);
        finding_rests_on(finding, held);
    }
}

/* A note about the car, once. */
void check_residual_none(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        if (is_valve(&checking->system->parts[i], VALVE_RESIDUAL)) {
            return;
        }
    }
    if (system_first(checking->system, KIND_DISC) < 0 &&
        system_first(checking->system, KIND_DRUM) >= 0) {
        finding_add(checking, row, -1, NO_FIELD);
    }
}

void check_valve_in_front(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        bool reduces = is_valve(part, VALVE_LIMITING) || is_valve(part, VALVE_PROPORTIONING) ||
                       is_valve(part, VALVE_LOAD_SENSING);
        if (reduces && part->as.valve.passages < 2 &&
            part_feeds_axle(checking->system, checking->network, i, AXLE_FRONT)) {
            finding_add(checking, row, i, FIELD(as.valve.type));
        }
    }
}

void check_hold_off(struct checking *checking, const struct check_row *row)
{
    if (system_first(checking->system, KIND_DRUM) >= 0) {
        return;
    }
    for (int i = 0; i < checking->system->part_count; i++) {
        if (is_valve(&checking->system->parts[i], VALVE_HOLD_OFF)) {
            finding_add(checking, row, i, FIELD(as.valve.type));
        }
    }
}

/* Shuttles that see more than they trip at, or less. */
static void find_lamp(struct checking *checking, const struct check_row *row, const char *id,
                      bool lit)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (!is_valve(part, VALVE_SHUTTLE))
            continue;
        const struct figure *seen = figure_about(checking, id, i);
        double trips = part->as.valve.trips.pa;
        if (seen != NULL && (lit ? seen->value > trips : seen->value < trips)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.valve.trips));
            finding_quantity(finding, "trips", trips, DIMENSION_PRESSURE);
            finding_quantity(finding, "difference", seen->value, DIMENSION_PRESSURE);
            finding_rests_on(finding, seen);
        }
    }
}

void check_lamp_lit(struct checking *checking, const struct check_row *row)
{
    find_lamp(checking, row, "shuttle-difference", true);
}

void check_lamp_dark(struct checking *checking, const struct check_row *row)
{
    find_lamp(checking, row, "shuttle-difference-lost", false);
}

void check_dead_leg(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_JOINT && part->as.joint.blanked > 0) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.joint.blanked));
            finding_quantity(finding, "ports", part->as.joint.blanked, DIMENSION_NUMBER);
        }
    }
}
