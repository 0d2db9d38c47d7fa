#include "advice/figures/chain.h"

#include <string.h>

#include "physics/pressure.h"

/* clang-format off */

static const struct chain_row rows[] = {
    {"deceleration", "brake-force", NULL, AXLE_NONE},
    {"front-share", "brake-force", NULL, AXLE_NONE},
    {"rear-lock-margin", "front-locks-at", "rear-locks-at", AXLE_NONE},
    {"rear-lock-margin-wet", "front-locks-at-wet", "rear-locks-at-wet", AXLE_NONE},
    {"front-load-at-lock", "front-locks-at", "rear-locks-at", AXLE_NONE},
    {"rear-load-at-lock", "rear-locks-at", "front-locks-at", AXLE_NONE},
    {"front-locks-effort", "front-locks-at", NULL, AXLE_NONE},
    {"rear-locks-effort", "rear-locks-at", NULL, AXLE_NONE},
    {"front-locks-effort-wet", "front-locks-at-wet", NULL, AXLE_NONE},
    {"rear-locks-effort-wet", "rear-locks-at-wet", NULL, AXLE_NONE},
    {"deceleration-by-it", "brake-force", NULL, AXLE_NONE},
    {"effort-that-locks", "its-wheels-lock-at", NULL, AXLE_NONE},
    {"effort-that-locks-wet", "its-wheels-lock-at-wet", NULL, AXLE_NONE},
    {"load-at-lock", "its-wheels-lock-at", NULL, AXLE_NONE},
    {"stopping-distance", "deceleration", NULL, AXLE_NONE},
    {"stopping-distance-wet", "deceleration", NULL, AXLE_NONE},
    {"stopping-distance", "front-locks-at", "rear-locks-at", AXLE_NONE},
    {"stopping-distance-wet", "front-locks-at-wet", "rear-locks-at-wet", AXLE_NONE},
    {"grip-efficiency", "grip-used-front", NULL, AXLE_NONE},
    {"grip-efficiency", "grip-used-rear", NULL, AXLE_NONE},
    {"pull-friction-front", "brake-force", NULL, AXLE_FRONT},
    {"pull-friction-rear", "brake-force", NULL, AXLE_REAR},
    {"pull-seized-front", "brake-force", NULL, AXLE_FRONT},
    {"pull-seized-rear", "brake-force", NULL, AXLE_REAR},
    {"yaw-seized-front", "brake-force", NULL, AXLE_FRONT},
    {"yaw-seized-rear", "brake-force", NULL, AXLE_REAR},
    {"deceleration-unassisted", "unassisted-pressure", NULL, AXLE_NONE},
    {"unassisted-pressure", "pedal-effort", NULL, AXLE_NONE},
    {"deceleration-circuit-lost", "pedal-effort", NULL, AXLE_NONE},
    {"side-difference-front", "brake-force", NULL, AXLE_FRONT},
    {"side-difference-rear", "brake-force", NULL, AXLE_REAR},
    {"rod-force", "pedal-effort", NULL, AXLE_NONE},
    {"rod-travel", "piston-stroke", NULL, AXLE_NONE},
    {"pedal-travel", "rod-travel", NULL, AXLE_NONE},
    {"pedal-travel", "pedal-effort", NULL, AXLE_NONE},
    {"pedal-left", "pedal-travel", NULL, AXLE_NONE},
    {"stroke-left", "piston-stroke", NULL, AXLE_NONE},
    {"piston-stroke-left", "piston-stroke", NULL, AXLE_NONE},
    {"bar-tilt", "piston-stroke", NULL, AXLE_NONE},
    {"pedal-left-slack", "pedal-travel-slack", NULL, AXLE_NONE},
    {"pedal-travel-slack", "pedal-effort", NULL, AXLE_NONE},
    {"pedal-travel-new", "pedal-effort", NULL, AXLE_NONE},
    {"pedal-left-new", "pedal-travel-new", NULL, AXLE_NONE},
    {"pedal-travel-worn", "pedal-effort", NULL, AXLE_NONE},
    {"pedal-left-worn", "pedal-travel-worn", NULL, AXLE_NONE},
    {"pedal-travel-hot", "pedal-effort", NULL, AXLE_NONE},
    {"pedal-left-hot", "pedal-travel-hot", NULL, AXLE_NONE},
    {"pedal-travel-knocked-back", "pedal-effort", NULL, AXLE_NONE},
    {"pedal-left-knocked-back", "pedal-travel-knocked-back", NULL, AXLE_NONE},
    {"pedal-travel-worn-hoses", "pedal-effort", NULL, AXLE_NONE},
    {"pedal-left-worn-hoses", "pedal-travel-worn-hoses", NULL, AXLE_NONE},
    {"line-pressure", "rod-force", NULL, AXLE_NONE},
    {"volume-taken", "volume-by-cause", NULL, AXLE_NONE},
    {"piston-stroke", "volume-taken", NULL, AXLE_NONE},
    {"volume-by-cause", "line-pressure", NULL, AXLE_NONE},
    {"left-circuit-lost", "travel-circuit-lost", NULL, AXLE_NONE},
    {"travel-circuit-lost", "pedal-effort", NULL, AXLE_NONE},
    {"port-blocked-pressure", "fluid-in-circuit", NULL, AXLE_NONE},
    {"air-cost", "line-pressure", NULL, AXLE_NONE},
    {"wheel-pressure", "line-pressure", NULL, AXLE_NONE},
    {"release-pressure", "wheel-pressure", NULL, AXLE_NONE},
    {"shuttle-difference", "line-pressure", NULL, AXLE_NONE},
    {"shuttle-difference-lost", "line-pressure", NULL, AXLE_NONE},
    {"clamp-force", "wheel-pressure", NULL, AXLE_NONE},
    {"brake-torque", "clamp-force", "wheel-pressure", AXLE_NONE},
    {"brake-torque-reverse", "wheel-pressure", NULL, AXLE_NONE},
    {"shoe-torque-front", "wheel-pressure", NULL, AXLE_NONE},
    {"shoe-torque-rear", "wheel-pressure", NULL, AXLE_NONE},
    {"lining-pressure-most", "wheel-pressure", NULL, AXLE_NONE},
    {"pad-pressure", "clamp-force", NULL, AXLE_NONE},
    {"pad-pressure-most", "clamp-force", NULL, AXLE_NONE},
    {"brake-force", "brake-torque", NULL, AXLE_NONE},
    {"brake-torque-low", "wheel-pressure", NULL, AXLE_NONE},
    {"brake-torque-high", "wheel-pressure", NULL, AXLE_NONE},
    {"tip-travel-hot", "drum-growth-hot", NULL, AXLE_NONE},
    {"heat-per-stop", "brake-force", NULL, AXLE_NONE},
    {"rise-per-stop", "heat-per-stop", NULL, AXLE_NONE},
    {"surface-rise-per-stop", "heat-per-stop", NULL, AXLE_NONE},
    {"surface-rise-per-stop", "deceleration", NULL, AXLE_NONE},
    {"temperature-after-ten-stops", "rise-per-stop", NULL, AXLE_NONE},
    {"fluid-after-ten-stops", "temperature-after-ten-stops", NULL, AXLE_NONE},
    {"boiling-margin-dry", "fluid-after-ten-stops", NULL, AXLE_NONE},
    {"boiling-margin-wet", "fluid-after-ten-stops", NULL, AXLE_NONE},
    {"clutch-effort", "clutch-pressure", NULL, AXLE_NONE},
    {"clutch-effort-end", "clutch-pressure-end", NULL, AXLE_NONE},
    {"clutch-volume-lost", "clutch-pressure-end", NULL, AXLE_NONE},
    {"clutch-air-cost", "clutch-pressure-end", NULL, AXLE_NONE},
    {"slave-travel", "clutch-volume-lost", NULL, AXLE_NONE},
    {"slave-stroke-left", "slave-travel", NULL, AXLE_NONE},
    {"bearing-travel", "slave-travel", NULL, AXLE_NONE},
    {"bearing-travel-spare", "bearing-travel", NULL, AXLE_NONE},
    {"bearing-travel-room", "bearing-travel", NULL, AXLE_NONE},
    {"clutch-lift", "bearing-travel", NULL, AXLE_NONE},
    {"clutch-clearance-per-face", "clutch-lift", NULL, AXLE_NONE},
    {"hand-brake-slope", "hand-brake-shoe-force", NULL, AXLE_NONE},
    {"hand-brake-slope-down", "hand-brake-shoe-force", NULL, AXLE_NONE},
};

/* clang-format on */

const struct chain_row *chain_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

/* Whether a circuit is of a figure's subject. */
static bool has_circuit(const struct system *system, const struct network *network,
                        const struct figure *figure, int circuit)
{
    int vertex;
    switch (figure->row->scope) {
    case SCOPE_CAR:
        return true;
    case SCOPE_PEDAL:
        return pressure_pedal_of(system, network->circuits[circuit].master) == figure->subject;
    case SCOPE_CIRCUIT:
    case SCOPE_CAUSE:
        return circuit == figure->subject;
    case SCOPE_CALIPER:
    case SCOPE_BRAKE:
    case SCOPE_CLUTCH:
    case SCOPE_VALVE:
        for (int chamber = 0; chamber < part_chambers(&system->parts[figure->subject]); chamber++) {
            vertex = network_vertex(network, figure->subject, chamber);
            if (vertex >= 0 && network->vertices[vertex].circuit == circuit)
                return true;
        }
        return false;
    case SCOPE_HAND_BRAKE:
    case SCOPE_SERVO:
        break;
    }
    return false;
}

static bool about_circuit(const struct figure *figure)
{
    return figure->row->scope == SCOPE_CIRCUIT || figure->row->scope == SCOPE_CAUSE;
}

bool chain_related(const struct system *system, const struct network *network,
                   const struct figure *one, const struct figure *other)
{
    if (one->row->scope == SCOPE_CAR || other->row->scope == SCOPE_CAR)
        return true;
    if (about_circuit(one) == about_circuit(other) && one->row->scope != SCOPE_PEDAL &&
        other->row->scope != SCOPE_PEDAL)
        return one->subject == other->subject;
    if (one->row->scope == other->row->scope)
        return one->subject == other->subject;
    for (int c = 0; c < network->circuit_count; c++)
        if (has_circuit(system, network, one, c) && has_circuit(system, network, other, c))
            return true;
    return false;
}

static bool on_axle(const struct system *system, const struct figure *figure, enum axle axle)
{
    return axle == AXLE_NONE || (figure->subject >= 0 && !about_circuit(figure) &&
                                 system->parts[figure->subject].axle == axle);
}

static int add_from(const struct system *system, const struct network *network,
                    const struct figures *figures, const struct figure *of, const char *id,
                    enum axle axle, int *into, int count)
{
    int added = 0;
    for (int i = 0; id != NULL && i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (strcmp(figure->row->id, id) == 0 && figure != of && on_axle(system, figure, axle) &&
            chain_related(system, network, of, figure))
            into[count + added++] = i;
    }
    return added;
}

int chain_from(const struct system *system, const struct network *network,
               const struct figures *figures, int index, int *into)
{
    const struct figure *of = &figures->items[index];
    int count = 0;
    for (size_t r = 0; r < sizeof rows / sizeof *rows; r++) {
        if (strcmp(rows[r].figure, of->row->id) != 0)
            continue;
        int added = add_from(system, network, figures, of, rows[r].from, rows[r].axle, into, count);
        if (added == 0)
            added =
                add_from(system, network, figures, of, rows[r].or_from, rows[r].axle, into, count);
        count += added;
    }
    return count;
}
