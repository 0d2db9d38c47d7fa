#include "network/wiring.h"

#include "base/text.h"
#include "network/plumbing.h"

/* What each end of a pipe or hose is joined to. */
struct ends {
    int vertex[2]; /* -1: none */
    bool taken[2];
};

struct layer {
    const struct system *system;
    struct arena *arena;
    struct messages *messages;
    struct network *network;
    struct ends *ends; /* by part */
    bool *excused;
};

static bool has_vertices(const struct part *part)
{
    switch (part->kind) {
    case KIND_MASTER:
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_DISC:
    case KIND_DRUM:
    case KIND_SLAVE:
        return true;
    case KIND_SERVO:
        return part->as.servo.type == SERVO_REMOTE;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return false;
}

static bool is_low_pressure(const struct part *part)
{
    return part->kind == KIND_HOSE &&
           (part->as.hose.use == HOSE_SUPPLY || part->as.hose.use == HOSE_VACUUM);
}

static bool is_carrier(const struct part *part)
{
    return part->kind == KIND_PIPE || (part->kind == KIND_HOSE && !is_low_pressure(part));
}

static void lay_vertices(struct layer *layer)
{
    const struct system *system = layer->system;
    struct network *network = layer->network;
    network->first_vertex = ARENA_ARRAY(layer->arena, (size_t)system->part_count, int);
    int count = 0;
    for (int i = 0; i < system->part_count; i++) {
        const bool wet = has_vertices(&system->parts[i]);
        network->first_vertex[i] = wet ? count : -1;
        if (wet)
            count += part_chambers(&system->parts[i]);
    }
    network->vertices = ARENA_ARRAY(layer->arena, (size_t)count, struct vertex);
    network->vertex_count = count;
    for (int i = 0; i < system->part_count; i++) {
        const int first = network->first_vertex[i];
        const int chambers = first < 0 ? 0 : part_chambers(&system->parts[i]);
        for (int chamber = 0; chamber < chambers; chamber++) {
            network->vertices[first + chamber] = (struct vertex){
                .part = i, .chamber = chamber, .circuit = -1, .parent = -1, .edge = -1};
        }
    }
}

static void add_edge(struct layer *layer, int a, int b, enum edge_kind kind, int part,
                     struct place place)
{
    layer->network->edges[layer->network->edge_count++] =
        (struct edge){.a = a, .b = b, .kind = kind, .part = part, .circuit = -1, .place = place};
}

static void excuse(struct layer *layer, int vertex)
{
    if (vertex >= 0)
        layer->excused[vertex] = true;
}

static void join_end(struct layer *layer, const struct port *carrier, int vertex,
                     struct place place)
{
    const int end = carrier->chamber == 1 ? 1 : 0;
    struct ends *ends = &layer->ends[carrier->part];
    if (ends->taken[end]) {
        plumbing_say(layer->messages, PLUMBING_END_USED_TWICE, place,
                     "put a tee where they meet and name it in each run",
                     "one end of the %s is joined to two things",
                     layer->system->parts[carrier->part].name);
        excuse(layer, vertex);
        return;
    }
    ends->taken[end] = true;
    ends->vertex[end] = vertex;
}

/* A supply run, or one that belongs to no pressure plumbing at all. */
static bool is_supply(const struct system *system, const struct connection *connection)
{
    const struct part *a = &system->parts[connection->a.part];
    const struct part *b = &system->parts[connection->b.part];
    return is_low_pressure(a) || is_low_pressure(b);
}

static void say_not_plumbing(struct layer *layer, const struct port *port, struct place place)
{
    const struct part *part = &layer->system->parts[port->part];
    if (layer->network->first_vertex[port->part] >= 0)
        plumbing_say(layer->messages, PLUMBING_NOT_PLUMBING, place, NULL, "the %s has no such port",
                     part->name);
    else if (part->kind == KIND_RESERVOIR)
        plumbing_say(layer->messages, PLUMBING_NOT_PLUMBING, place,
                     "say in the master's section which reservoir feeds it, and the length of its "
                     "supply hose",
                     "the %s is not under pedal pressure, so no run leads to it", part->name);
    else
        plumbing_say(layer->messages, PLUMBING_NOT_PLUMBING, place, NULL,
                     "a run leads to the %s, which holds no fluid under pedal pressure",
                     part->name);
}

/* Marks what a port stands for as reported. */
static void excuse_port(struct layer *layer, const struct port *port)
{
    if (is_carrier(&layer->system->parts[port->part]))
        layer->ends[port->part].taken[port->chamber == 1 ? 1 : 0] = true;
    else
        excuse(layer, network_vertex(layer->network, port->part, port->chamber));
}

static void join(struct layer *layer, const struct connection *connection)
{
    const struct system *system = layer->system;
    const struct port *a = &connection->a;
    const struct port *b = &connection->b;
    const bool a_carries = is_carrier(&system->parts[a->part]);
    const bool b_carries = is_carrier(&system->parts[b->part]);
    const int a_vertex = network_vertex(layer->network, a->part, a->chamber);
    const int b_vertex = network_vertex(layer->network, b->part, b->chamber);
    if (is_supply(system, connection))
        return;
    if (a_carries && b_carries) {
        plumbing_say(layer->messages, PLUMBING_NO_JOINT_BETWEEN, connection->place,
                     "name a union or a bracket between them",
                     "the %s and the %s meet without a joint", system->parts[a->part].name,
                     system->parts[b->part].name);
        excuse_port(layer, a);
        excuse_port(layer, b);
    } else if (!a_carries && a_vertex < 0) {
        say_not_plumbing(layer, a, connection->place);
        excuse_port(layer, b);
    } else if (!b_carries && b_vertex < 0) {
        say_not_plumbing(layer, b, connection->place);
        excuse_port(layer, a);
    } else if (a_carries) {
        join_end(layer, a, b_vertex, connection->place);
    } else if (b_carries) {
        join_end(layer, b, a_vertex, connection->place);
    } else {
        add_edge(layer, a_vertex, b_vertex, EDGE_DIRECT, -1, connection->place);
    }
}

static void lay_carriers(struct layer *layer)
{
    for (int i = 0; i < layer->system->part_count; i++) {
        const struct part *part = &layer->system->parts[i];
        if (!is_carrier(part))
            continue;
        const struct ends *ends = &layer->ends[i];
        if (ends->vertex[0] >= 0 && ends->vertex[1] >= 0) {
            add_edge(layer, ends->vertex[0], ends->vertex[1], EDGE_CARRIER, i, part->place);
            continue;
        }
        excuse(layer, ends->vertex[0]);
        excuse(layer, ends->vertex[1]);
        if (!ends->taken[0] || !ends->taken[1])
            plumbing_say(layer->messages, PLUMBING_LOOSE_END, part->place,
                         "name what it leads to in a run",
                         !ends->taken[0] && !ends->taken[1] ? "the %s is joined to nothing"
                                                            : "one end of the %s is loose",
                         part->name);
    }
}

static void lay_passages(struct layer *layer)
{
    for (int i = 0; i < layer->system->part_count; i++) {
        const struct part *part = &layer->system->parts[i];
        const int first = layer->network->first_vertex[i];
        if (first < 0 || (part->kind != KIND_VALVE && part->kind != KIND_SERVO))
            continue;
        for (int in = 0; in + 1 < part_chambers(part); in += 2)
            add_edge(layer, first + in, first + in + 1, EDGE_PASSAGE, i, part->place);
    }
}

static int far_end(const struct network *network, int edge, int vertex)
{
    const struct edge *e = &network->edges[edge];
    return e->a == vertex ? e->b : e->a;
}

/* Whether an edge at a vertex comes before another, whatever the order of sections. */
static bool edge_before(const struct layer *layer, int vertex, int one, int other)
{
    const struct network *network = layer->network;
    const struct vertex *a = &network->vertices[far_end(network, one, vertex)];
    const struct vertex *b = &network->vertices[far_end(network, other, vertex)];
    if (a->part != b->part)
        return system_compare(layer->system, a->part, b->part) < 0;
    if (a->chamber != b->chamber)
        return a->chamber < b->chamber;
    const int one_part = network->edges[one].part;
    const int other_part = network->edges[other].part;
    if (one_part < 0 || other_part < 0)
        return one_part < other_part;
    return one_part != other_part && system_compare(layer->system, one_part, other_part) < 0;
}

static void list_edges(struct layer *layer)
{
    struct network *network = layer->network;
    const int vertices = network->vertex_count;
    network->first_at = ARENA_ARRAY(layer->arena, (size_t)vertices + 1, int);
    network->edges_at = ARENA_ARRAY(layer->arena, 2 * (size_t)network->edge_count, int);
    for (int e = 0; e < network->edge_count; e++) {
        network->first_at[network->edges[e].a + 1]++;
        network->first_at[network->edges[e].b + 1]++;
    }
    for (int v = 0; v < vertices; v++)
        network->first_at[v + 1] += network->first_at[v];
    int *filled = ARENA_ARRAY(layer->arena, (size_t)vertices, int);
    for (int e = 0; e < network->edge_count; e++) {
        const int ends[2] = {network->edges[e].a, network->edges[e].b};
        for (int k = 0; k < 2; k++) {
            const int v = ends[k];
            int *at = &network->edges_at[network->first_at[v]];
            int place = filled[v]++;
            for (; place > 0 && edge_before(layer, v, e, at[place - 1]); place--)
                at[place] = at[place - 1];
            at[place] = e;
        }
    }
}

struct wiring wiring_lay(const struct system *system, struct arena *arena,
                         struct messages *messages)
{
    struct layer layer = {
        .system = system,
        .arena = arena,
        .messages = messages,
        .network = ARENA_NEW(arena, struct network),
        .ends = ARENA_ARRAY(arena, (size_t)system->part_count, struct ends),
    };
    lay_vertices(&layer);
    layer.excused = ARENA_ARRAY(arena, (size_t)layer.network->vertex_count, bool);
    for (int i = 0; i < system->part_count; i++)
        layer.ends[i] = (struct ends){.vertex = {-1, -1}};
    /* a connection, a carrier, and a passage for every two chambers */
    const int most = system->connection_count + system->part_count + layer.network->vertex_count;
    layer.network->edges = ARENA_ARRAY(arena, (size_t)most, struct edge);
    for (int i = 0; i < system->connection_count; i++)
        join(&layer, &system->connections[i]);
    lay_carriers(&layer);
    lay_passages(&layer);
    list_edges(&layer);
    return (struct wiring){layer.network, layer.excused};
}
