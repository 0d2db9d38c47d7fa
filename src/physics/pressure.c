#include "physics/pressure.h"

#include <math.h>

enum { BALANCE_BAR_MASTERS = 2 };

/* The master that an entry of a pedal's "works" reaches: itself, or that of a direct servo. */
static int master_behind(const struct system *system, int part)
{
    if (part < 0)
        return -1;
    const struct part *worked = &system->parts[part];
    if (worked->kind == KIND_MASTER)
        return part;
    return worked->kind == KIND_SERVO ? worked->as.servo.works : -1;
}

int pressure_worked_master(const struct system *system, int pedal, size_t place)
{
    const struct part_names *works = &system->parts[pedal].as.pedal.works;
    return place < works->count ? master_behind(system, works->parts[place]) : -1;
}

/* Where a master stands among what a pedal works; -1 when it does not. */
static int place_of(const struct system *system, int pedal, int master)
{
    const struct part_names *works = &system->parts[pedal].as.pedal.works;
    for (size_t i = 0; i < works->count; i++)
        if (master_behind(system, works->parts[i]) == master)
            return (int)i;
    return -1;
}

int pressure_pedal_of(const struct system *system, int master)
{
    for (int i = 0; i < system->part_count; i++)
        if (system->parts[i].kind == KIND_PEDAL && place_of(system, i, master) >= 0)
            return i;
    return -1;
}

int pressure_servo_of(const struct system *system, int master)
{
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        if (part->kind == KIND_SERVO && part->as.servo.type != SERVO_REMOTE &&
            part->as.servo.works == master)
            return i;
    }
    return -1;
}

struct force pressure_rod_force(const struct system *system, int master, struct force effort,
                                bool assisted)
{
    int at = pressure_pedal_of(system, master);
    if (at < 0)
        return (struct force){NAN};
    const struct pedal *pedal = &system->parts[at].as.pedal;
    struct force rod = pedal_rod_force(pedal, effort);
    if (pedal->works.count == BALANCE_BAR_MASTERS) {
        if (isnan(pedal->bar_first.m) || isnan(pedal->bar_second.m))
            return (struct force){NAN}; /* equal arms would be a guess that nobody sees */
        double first = pedal_bar_share(pedal).of_1;
        rod.n *= place_of(system, at, master) == 0 ? first : 1 - first;
    } else if (pedal->works.count > BALANCE_BAR_MASTERS) {
        return (struct force){NAN};
    }
    int servo = pressure_servo_of(system, master);
    return servo < 0 ? rod : servo_output(&system->parts[servo].as.servo, rod, assisted);
}

/* Where an edge leads from. A passage that is fed through its outlet follows no law of ours. */
static bool fed_backwards(const struct edge *edge, int towards)
{
    return edge->kind == EDGE_PASSAGE && edge->b != towards;
}

static struct pressure through(const struct system *system, const struct edge *edge, int towards,
                               struct pressure in, bool assisted)
{
    if (edge->kind != EDGE_PASSAGE)
        return in;
    if (fed_backwards(edge, towards))
        return (struct pressure){NAN};
    const struct part *part = &system->parts[edge->part];
    if (part->kind == KIND_VALVE)
        return valve_output(&part->as.valve, in);
    if (part->kind == KIND_SERVO)
        return servo_line_output(&part->as.servo, in, assisted);
    return in;
}

void pressure_spread(const struct system *system, const struct network *network, int circuit,
                     struct pressure source, bool assisted, struct pressure *by_vertex)
{
    const struct circuit *spread = &network->circuits[circuit];
    for (int i = 0; i < spread->vertex_count; i++) {
        int at = spread->vertices[i];
        const struct vertex *vertex = &network->vertices[at];
        if (vertex->parent < 0 || vertex->edge < 0)
            by_vertex[at] = source;
        else
            by_vertex[at] = through(system, &network->edges[vertex->edge], at,
                                    by_vertex[vertex->parent], assisted);
    }
}

void pressure_spread_beyond(const struct system *system, const struct network *network, int from,
                            struct pressure there, bool assisted, struct pressure *by_vertex)
{
    const struct circuit *spread = &network->circuits[network->vertices[from].circuit];
    for (int i = 0; i < spread->vertex_count; i++) {
        int at = spread->vertices[i];
        const struct vertex *vertex = &network->vertices[at];
        if (at == from)
            by_vertex[at] = there;
        else if (network_beyond(network, at, from))
            by_vertex[at] = through(system, &network->edges[vertex->edge], at,
                                    by_vertex[vertex->parent], assisted);
    }
}

void pressure_spread_falling(const struct system *system, const struct network *network,
                             int circuit, const struct pressure *peak, struct pressure source,
                             bool assisted, struct pressure *by_vertex)
{
    const struct circuit *spread = &network->circuits[circuit];
    for (int i = 0; i < spread->vertex_count; i++) {
        int at = spread->vertices[i];
        const struct vertex *vertex = &network->vertices[at];
        if (vertex->parent < 0 || vertex->edge < 0) {
            by_vertex[at] = source;
            continue;
        }
        const struct edge *edge = &network->edges[vertex->edge];
        struct pressure in = by_vertex[vertex->parent];
        if (edge->kind == EDGE_PASSAGE && !fed_backwards(edge, at) &&
            system->parts[edge->part].kind == KIND_VALVE)
            by_vertex[at] =
                valve_output_falling(&system->parts[edge->part].as.valve, peak[vertex->parent], in);
        else
            by_vertex[at] = through(system, edge, at, in, assisted);
    }
}
