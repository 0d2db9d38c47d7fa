#include "advice/checks/checks.h"

#include <math.h>
#include <stddef.h>

#include "advice/rules/rule_stop.h"
#include "physics/pressure.h"

static int brake_circuits(const struct network *network)
{
    int count = 0;
    for (int c = 0; c < network->circuit_count; c++) {
        count += !network->circuits[c].clutch;
    }
    return count;
}

/* Whether the pedal of a circuit works another one too: a lost circuit leaves its own pedal on the
 * floor in any case. */
static bool pedal_has_another(const struct checking *checking, int circuit)
{
    const struct circuit *circuits = checking->network->circuits;
    int pedal = pressure_pedal_of(checking->system, circuits[circuit].master);
    for (int c = 0; c < checking->network->circuit_count; c++) {
        if (c != circuit && pressure_pedal_of(checking->system, circuits[c].master) == pedal) {
            return true;
        }
    }
    return false;
}

void check_lost_floor(struct checking *checking, const struct check_row *row)
{
    for (int c = 0; c < checking->network->circuit_count; c++) {
        const struct figure *left = figure_about(checking, "left-circuit-lost", c);
        if (left != NULL && pedal_has_another(checking, c) &&
            left->value <
                floor_margin(checking, pressure_pedal_of(checking->system,
                                                         checking->network->circuits[c].master))) {
            int master = checking->network->circuits[c].master;
            struct finding *finding = finding_add(checking, row, master, FIELD(as.master.stroke));
            finding_text(finding, "circuit", left->of);
            finding_quantity(finding, "left", left->value, DIMENSION_LENGTH);
            finding_limit(finding, "least");
            finding_rests_on(finding, left);
        }
    }
}

void check_lost_weak(struct checking *checking, const struct check_row *row)
{
    if (!ruling_is_for(checking, "r13h-secondary") || brake_circuits(checking->network) < 2) {
        return;
    }
    for (int c = 0; c < checking->network->circuit_count; c++) {
        /* At the rule's own effort, whatever holds at the check's. */
        const struct figure *figure = figures_find(checking->figures, "deceleration-circuit-lost",
                                                   checking->network->circuits[c].name);
        double reached =
            checking->network->circuits[c].clutch || figure == NULL
                ? NAN
                : rule_stop(checking->system, checking->network, true, c, checking->arena).m_s2;
        if (reached < limit_value(row->limit)) {
            int master = checking->network->circuits[c].master;
            struct finding *finding = finding_add(checking, row, master, NO_FIELD);
            finding_text(finding, "circuit", figure->of);
            finding_quantity(finding, "deceleration", reached, DIMENSION_ACCELERATION);
            finding_quantity(finding, "effort", RULE_EFFORT, DIMENSION_FORCE);
            finding_limit(finding, "least");
            finding_rests_on(finding, figure);
        }
    }
}

void check_one_circuit(struct checking *checking, const struct check_row *row)
{
    if (brake_circuits(checking->network) != 1) {
        return;
    }
    for (int c = 0; c < checking->network->circuit_count; c++) {
        if (!checking->network->circuits[c].clutch) {
            finding_add(checking, row, checking->network->circuits[c].master,
                        FIELD(as.master.type));
        }
    }
}

/* Whether all brakes of a circuit, on more than one axle or not, stand on one side of a car whose
 * other side is braked by something else. */
static bool is_of_one_side(const struct checking *checking, int circuit, enum side *side)
{
    const struct circuit *of = &checking->network->circuits[circuit];
    int brakes = 0;
    *side = SIDE_NONE;
    for (int i = 0; i < of->vertex_count; i++) {
        int at = checking->network->vertices[of->vertices[i]].part;
        const struct part *part = &checking->system->parts[at];
        if (!kind_is_brake(part->kind))
            continue;
        if (part->side == SIDE_NONE || (brakes > 0 && part->side != *side))
            return false;
        *side = part->side;
        brakes++;
    }
    return brakes > 1;
}

void check_one_side(struct checking *checking, const struct check_row *row)
{
    if (system_vehicle(checking->system)->type == VEHICLE_MOTORCYCLE)
        return;
    for (int c = 0; c < checking->network->circuit_count; c++) {
        enum side side;
        if (checking->network->circuits[c].clutch || !is_of_one_side(checking, c, &side))
            continue;
        struct finding *finding =
            finding_add(checking, row, checking->network->circuits[c].master, NO_FIELD);
        finding_text(finding, "circuit", checking->network->circuits[c].name);
        finding_text(finding, "side", side == SIDE_LEFT ? "left" : "right");
    }
}

void check_unassisted(struct checking *checking, const struct check_row *row)
{
    const struct figure *figure = figures_find(checking->figures, "deceleration-unassisted", NULL);
    int servo = system_first(checking->system, KIND_SERVO);
    if (figure == NULL || servo < 0 || !ruling_is_for(checking, "fmvss135-assist")) {
        return;
    }
    double reached =
        rule_stop(checking->system, checking->network, false, -1, checking->arena).m_s2;
    if (reached < limit_value(row->limit)) {
        struct finding *finding = finding_add(checking, row, servo, NO_FIELD);
        finding_quantity(finding, "deceleration", reached, DIMENSION_ACCELERATION);
        finding_quantity(finding, "effort", RULE_EFFORT, DIMENSION_FORCE);
        finding_limit(finding, "least");
        finding_rests_on(finding, figure);
    }
}
