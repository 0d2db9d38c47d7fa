#include "network/circuit.h"

#include <math.h>
#include <stdlib.h>

#include "base/text.h"

enum { NO_WHEEL = 100 };

/* What a circuit works, and its place in the order of circuits. */
struct reach {
    struct circuit circuit;
    unsigned sides[3]; /* by axle: a bit for each side with a brake */
    int other;         /* a brake of no axle, -1 */
    bool brakes;
    bool slaves;
    int wheels[5]; /* ranks reached, lowest first, NO_WHEEL at the end */
    const char *master_name;
    int old_index;
};

static int other_end(const struct edge *edge, int vertex)
{
    return edge->a == vertex ? edge->b : edge->a;
}

static double carrier_length(const struct system *system, const struct edge *edge)
{
    if (edge->kind != EDGE_CARRIER)
        return 0;
    const struct part *part = &system->parts[edge->part];
    return part->kind == KIND_HOSE ? part->as.hose.length.m : part->as.pipe.length.m;
}

static void reach_vertex(const struct system *system, struct network *network, int from, int edge,
                         int to)
{
    const struct vertex *parent = &network->vertices[from];
    struct vertex *child = &network->vertices[to];
    const double length = carrier_length(system, &network->edges[edge]);
    child->circuit = parent->circuit;
    child->parent = from;
    child->edge = edge;
    child->depth = parent->depth + 1;
    child->run = parent->run + (isnan(length) ? 0 : length);
    child->run_known = parent->run_known && !isnan(length);
    network->edges[edge].circuit = parent->circuit;
    network->edges[edge].in_tree = true;
}

/* Nearest first, so that each vertex hangs on the way with the fewest pieces. */
static void walk(const struct system *system, struct network *network, struct circuit *circuit)
{
    int *queue = circuit->vertices;
    queue[0] = circuit->source;
    circuit->vertex_count = 1;
    for (int next = 0; next < circuit->vertex_count; next++) {
        const int v = queue[next];
        for (int k = network->first_at[v]; k < network->first_at[v + 1]; k++) {
            const int e = network->edges_at[k];
            const int w = other_end(&network->edges[e], v);
            if (network->edges[e].circuit >= 0)
                continue;
            if (network->vertices[w].circuit < 0) {
                reach_vertex(system, network, v, e, w);
                queue[circuit->vertex_count++] = w;
            } else if (network->vertices[w].circuit == network->vertices[v].circuit) {
                network->edges[e].circuit = network->vertices[v].circuit;
                circuit->looped = true;
            }
        }
    }
}

static int add_sources(const struct system *system, struct network *network, struct reach *reaches)
{
    int count = 0;
    for (int v = 0; v < network->vertex_count; v++) {
        const struct vertex *vertex = &network->vertices[v];
        if (system->parts[vertex->part].kind != KIND_MASTER)
            continue;
        int place = count++;
        for (; place > 0; place--) {
            const struct circuit *before = &reaches[place - 1].circuit;
            if (before->master == vertex->part ||
                system_compare(system, before->master, vertex->part) < 0)
                break;
            reaches[place] = reaches[place - 1];
        }
        reaches[place] = (struct reach){
            .circuit = {.master = vertex->part, .chamber = vertex->chamber, .source = v},
            .other = -1,
            .master_name = system->parts[vertex->part].name,
        };
    }
    return count;
}

static int wheel_rank(const struct system *system, const struct part *part)
{
    if (!kind_is_brake(part->kind))
        return NO_WHEEL;
    const enum side first = system_vehicle(system)->driver == DRIVER_LEFT ? SIDE_RIGHT : SIDE_LEFT;
    const int side = part->side == SIDE_NONE || part->side == first ? 0 : 1;
    return part->axle == AXLE_NONE ? 4 : (part->axle == AXLE_FRONT ? 0 : 2) + side;
}

static void note_wheel(struct reach *reach, int rank)
{
    int place = 0;
    while (reach->wheels[place] < rank)
        place++;
    if (reach->wheels[place] == rank)
        return;
    for (int k = 4; k > place; k--)
        reach->wheels[k] = reach->wheels[k - 1];
    reach->wheels[place] = rank;
}

static void note_reach(const struct system *system, const struct network *network,
                       struct reach *reach)
{
    for (int k = 0; k < 5; k++)
        reach->wheels[k] = NO_WHEEL;
    for (int k = 0; k < reach->circuit.vertex_count; k++) {
        const int index = network->vertices[reach->circuit.vertices[k]].part;
        const struct part *part = &system->parts[index];
        if (part->kind == KIND_SLAVE)
            reach->slaves = true;
        if (!kind_is_brake(part->kind))
            continue;
        reach->brakes = true;
        reach->sides[part->axle] |= 1U << part->side;
        if (part->axle == AXLE_NONE &&
            (reach->other < 0 || system_compare(system, index, reach->other) < 0))
            reach->other = index;
        note_wheel(reach, wheel_rank(system, part));
    }
    reach->circuit.clutch = reach->slaves && !reach->brakes;
}

/* Brakes before clutches before circuits that reach nothing; then by the first wheel in which two
 * circuits differ; then by master and chamber. */
static int compare_reaches(const void *one, const void *other)
{
    const struct reach *a = one;
    const struct reach *b = other;
    const int a_class = a->brakes ? 0 : a->slaves ? 1 : 2;
    const int b_class = b->brakes ? 0 : b->slaves ? 1 : 2;
    if (a_class != b_class)
        return a_class - b_class;
    for (int k = 0; k < 5; k++) {
        if (a->wheels[k] != b->wheels[k])
            return a->wheels[k] - b->wheels[k];
    }
    return a->old_index - b->old_index;
}

static void renumber(struct network *network, const struct reach *reaches, struct arena *arena)
{
    int *new_index = ARENA_ARRAY(arena, (size_t)network->circuit_count, int);
    for (int c = 0; c < network->circuit_count; c++)
        new_index[reaches[c].old_index] = c;
    for (int v = 0; v < network->vertex_count; v++) {
        struct vertex *vertex = &network->vertices[v];
        if (vertex->circuit >= 0)
            vertex->circuit = new_index[vertex->circuit];
    }
    for (int e = 0; e < network->edge_count; e++) {
        struct edge *edge = &network->edges[e];
        if (edge->circuit >= 0)
            edge->circuit = new_index[edge->circuit];
    }
}

/* The first brake (as in system_compare) at or beyond each vertex of a circuit, into first; the
 * vertex's own part where there is none. */
static void find_first_beyond(const struct system *system, const struct network *network,
                              const struct circuit *circuit, int *first)
{
    for (int k = 0; k < circuit->vertex_count; k++)
        first[circuit->vertices[k]] = network->vertices[circuit->vertices[k]].part;
    for (int k = circuit->vertex_count - 1; k > 0; k--) {
        const int v = circuit->vertices[k];
        const int parent = network->vertices[v].parent;
        if (!kind_is_brake(system->parts[first[v]].kind))
            continue;
        if (!kind_is_brake(system->parts[first[parent]].kind) ||
            system_compare(system, first[v], first[parent]) < 0)
            first[parent] = first[v];
    }
}

static bool comes_before(const struct system *system, const struct network *network,
                         const int *first, int v, int w)
{
    const struct vertex *a = &network->vertices[v];
    const struct vertex *b = &network->vertices[w];
    if (a->depth != b->depth)
        return a->depth < b->depth;
    const bool a_brakes = kind_is_brake(system->parts[first[v]].kind);
    const bool b_brakes = kind_is_brake(system->parts[first[w]].kind);
    if (a_brakes != b_brakes)
        return a_brakes;
    if (first[v] != first[w])
        return system_compare(system, first[v], first[w]) < 0;
    if (a->part != b->part)
        return system_compare(system, a->part, b->part) < 0;
    return a->chamber < b->chamber;
}

static void order_vertices(const struct system *system, const struct network *network,
                           struct circuit *circuit, int *first)
{
    find_first_beyond(system, network, circuit, first);
    int *vertices = circuit->vertices;
    for (int k = 1; k < circuit->vertex_count; k++) {
        const int v = vertices[k];
        int place = k;
        for (; place > 0 && comes_before(system, network, first, v, vertices[place - 1]); place--)
            vertices[place] = vertices[place - 1];
        vertices[place] = v;
    }
}

/* The words for the brakes that a circuit works on one axle: "front", "left front"; NULL: none. */
static const char *axle_words(unsigned sides, unsigned all, enum axle axle, struct arena *arena)
{
    if (sides == 0)
        return NULL;
    const unsigned left = 1U << SIDE_LEFT;
    const unsigned right = 1U << SIDE_RIGHT;
    if (sides == all || (sides != left && sides != right))
        return axle_word(axle);
    const enum side side = sides == left ? SIDE_LEFT : SIDE_RIGHT;
    return text_print(arena, "%s %s", side_word(side), axle_word(axle));
}

static const char *reach_words(const struct system *system, const struct reach *reach,
                               const unsigned all[3], struct arena *arena)
{
    const char *words[3];
    int count = 0;
    const enum axle axles[2] = {AXLE_FRONT, AXLE_REAR};
    for (int k = 0; k < 2; k++) {
        words[count] = axle_words(reach->sides[axles[k]], all[axles[k]], axles[k], arena);
        count += words[count] != NULL;
    }
    if (reach->other >= 0)
        words[count++] = system->parts[reach->other].name;
    if (count == 3)
        return text_print(arena, "%s, %s and %s", words[0], words[1], words[2]);
    if (count == 2)
        return text_print(arena, "%s and %s", words[0], words[1]);
    return words[0];
}

static const char *circuit_words(const struct system *system, const struct reach *reach,
                                 const unsigned all[3], int braking, struct arena *arena)
{
    if (reach->circuit.clutch)
        return "clutch circuit";
    if (!reach->brakes)
        return "unused circuit";
    if (braking == 1)
        return "brake circuit";
    return text_print(arena, "%s circuit", reach_words(system, reach, all, arena));
}

/* Whether any other circuit has the same words; and whether one of another master has. */
static bool shared_words(const struct reach *reaches, int count, int index, bool *other_master)
{
    bool shared = false;
    *other_master = false;
    for (int c = 0; c < count; c++) {
        if (c == index || !text_same(reaches[c].circuit.name, reaches[index].circuit.name))
            continue;
        shared = true;
        if (reaches[c].circuit.master != reaches[index].circuit.master)
            *other_master = true;
    }
    return shared;
}

static void name_circuits(const struct system *system, const struct network *network,
                          struct reach *reaches, struct arena *arena)
{
    unsigned all[3] = {0, 0, 0};
    int braking = 0;
    for (int i = 0; i < system->part_count; i++) {
        if (kind_is_brake(system->parts[i].kind))
            all[system->parts[i].axle] |= 1U << system->parts[i].side;
    }
    const int count = network->circuit_count;
    for (int c = 0; c < count; c++)
        braking += reaches[c].brakes;
    for (int c = 0; c < count; c++)
        reaches[c].circuit.name = circuit_words(system, &reaches[c], all, braking, arena);
    /* two circuits to the same wheels: told apart by master, or by chamber */
    for (int c = 0; c < count; c++) {
        struct circuit *circuit = &network->circuits[c];
        const struct part *master = &system->parts[circuit->master];
        bool other_master;
        circuit->name = reaches[c].circuit.name;
        if (!shared_words(reaches, count, c, &other_master))
            continue;
        if (part_chambers(master) == 1)
            circuit->name = text_print(arena, "%s of the %s", circuit->name, master->name);
        else if (other_master)
            circuit->name = text_print(arena, "%s of the %s, %s", circuit->name, master->name,
                                       part_chamber_word(master, circuit->chamber));
        else
            circuit->name = text_print(arena, "%s %s", part_chamber_word(master, circuit->chamber),
                                       circuit->name);
    }
}

void circuits_walk(const struct system *system, struct network *network, struct arena *arena)
{
    const size_t vertices = (size_t)network->vertex_count;
    struct reach *reaches = ARENA_ARRAY(arena, vertices, struct reach);
    const int count = add_sources(system, network, reaches);
    network->circuit_count = count;
    for (int c = 0; c < count; c++) {
        struct vertex *source = &network->vertices[reaches[c].circuit.source];
        reaches[c].old_index = c;
        source->circuit = c;
        source->run_known = true;
    }
    for (int c = 0; c < count; c++) {
        reaches[c].circuit.vertices = ARENA_ARRAY(arena, vertices, int);
        walk(system, network, &reaches[c].circuit);
        note_reach(system, network, &reaches[c]);
    }
    if (count > 0)
        qsort(reaches, (size_t)count, sizeof *reaches, compare_reaches);
    renumber(network, reaches, arena);
    network->circuits = ARENA_ARRAY(arena, (size_t)count, struct circuit);
    int *first = ARENA_ARRAY(arena, vertices, int);
    for (int c = 0; c < count; c++) {
        network->circuits[c] = reaches[c].circuit;
        order_vertices(system, network, &network->circuits[c], first);
    }
    name_circuits(system, network, reaches, arena);
}
