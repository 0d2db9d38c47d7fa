#include "network/faults.h"

#include "base/text.h"
#include "network/plumbing.h"

struct inspection {
    const struct system *system;
    const struct network *network;
    bool *excused;
    struct arena *arena;
    struct messages *messages;
};

static const struct part *part_at(const struct inspection *in, int vertex)
{
    return &in->system->parts[in->network->vertices[vertex].part];
}

static int degree(const struct network *network, int vertex)
{
    return network->first_at[vertex + 1] - network->first_at[vertex];
}

/* All that hangs together with a vertex, itself first. seen marks what was listed before. */
static int gather(const struct network *network, int start, bool *seen, int *into)
{
    int count = 0;
    into[count++] = start;
    seen[start] = true;
    for (int next = 0; next < count; next++) {
        const int v = into[next];
        for (int k = network->first_at[v]; k < network->first_at[v + 1]; k++) {
            const struct edge *edge = &network->edges[network->edges_at[k]];
            const int w = edge->a == v ? edge->b : edge->a;
            if (seen[w])
                continue;
            seen[w] = true;
            into[count++] = w;
        }
    }
    return count;
}

static bool is_implied(const struct part *part)
{
    return part->kind == KIND_JOINT && part->as.joint.implied == 1;
}

/* A joint with a name near to this one's, -1. Both were named by hand. */
static int nearest_joint(const struct inspection *in, int joint)
{
    const struct system *system = in->system;
    const char **names = ARENA_ARRAY(in->arena, (size_t)system->part_count, const char *);
    size_t count = 0;
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        if (i != joint && part->kind == KIND_JOINT && !is_implied(part))
            names[count++] = part->name;
    }
    const char *near = text_nearest(system->parts[joint].name, names, count);
    return near ? system_find(system, near) : -1;
}

static void excuse_with(const struct inspection *in, int part)
{
    const int vertex = network_vertex(in->network, part, 0);
    if (vertex >= 0)
        in->excused[vertex] = true;
}

static void inspect_joint(const struct inspection *in, int vertex)
{
    const struct part *joint = part_at(in, vertex);
    const int used = degree(in->network, vertex);
    if (used >= 2 || (used == 1 && joint->as.joint.blanked > 0) || in->excused[vertex])
        return;
    const int index = in->network->vertices[vertex].part;
    const int near = nearest_joint(in, index);
    const char *write = "lead another pipe to it, or say how many of its ports are blanked";
    if (near >= 0) {
        write = text_print(in->arena, "did you mean %s?", in->system->parts[near].name);
        excuse_with(in, near);
    }
    in->excused[vertex] = true;
    if (used == 0)
        plumbing_say(in->messages, PLUMBING_JOINT_USED_ONCE, joint->place,
                     near >= 0 ? write : "name it in a run", "no run leads to the %s", joint->name);
    else
        plumbing_say(in->messages, PLUMBING_JOINT_USED_ONCE, joint->place, write,
                     "the %s leads nowhere: it is named only once", joint->name);
}

static void inspect_passage(const struct inspection *in, const struct edge *edge)
{
    if (edge->circuit < 0)
        return;
    const struct network *network = in->network;
    const struct part *part = &in->system->parts[edge->part];
    if (edge->in_tree && network->vertices[edge->a].parent == edge->b) {
        in->excused[edge->a] = true;
        plumbing_say(in->messages, PLUMBING_VALVE_BACKWARDS, part->place,
                     "swap its ends in the run that names it", "the %s is fed at its outlet",
                     part->name);
        return;
    }
    if (degree(network, edge->b) > 1 || in->excused[edge->b])
        return;
    in->excused[edge->b] = true;
    plumbing_say(in->messages, PLUMBING_PORT_LEFT_OPEN, part->place,
                 "lead a pipe on from it in a run", "port \"%s\" of the %s is joined to nothing",
                 part_chamber_word(part, network->vertices[edge->b].chamber), part->name);
}

/* Whether the part has another chamber that a circuit reaches. */
static bool reached_elsewhere(const struct inspection *in, int vertex)
{
    const struct network *network = in->network;
    const int part = network->vertices[vertex].part;
    for (int chamber = 0; network_vertex(network, part, chamber) >= 0; chamber++) {
        if (network->vertices[network_vertex(network, part, chamber)].circuit >= 0)
            return true;
    }
    return false;
}

/* Whether some other chamber of the part comes before this one in the list. */
static bool listed_before(const struct network *network, const int *vertices, int at)
{
    for (int k = 0; k < at; k++) {
        if (network->vertices[vertices[k]].part == network->vertices[vertices[at]].part)
            return true;
    }
    return false;
}

static void sort_by_order(const struct inspection *in, int *vertices, int count)
{
    const struct vertex *all = in->network->vertices;
    for (int k = 1; k < count; k++) {
        const int v = vertices[k];
        int place = k;
        for (; place > 0; place--) {
            const struct vertex *before = &all[vertices[place - 1]];
            if (before->part == all[v].part
                    ? before->chamber <= all[v].chamber
                    : system_compare(in->system, before->part, all[v].part) < 0)
                break;
            vertices[place] = vertices[place - 1];
        }
        vertices[place] = v;
    }
}

static void say_unfed(const struct inspection *in, int *vertices, int count)
{
    int listed = 0;
    int left = 0;
    const struct part *first = NULL;
    sort_by_order(in, vertices, count);
    for (int k = 0; k < count; k++)
        left += !is_implied(part_at(in, vertices[k])) && !listed_before(in->network, vertices, k);
    struct text names = text_start(in->arena);
    for (int k = 0; k < count; k++) {
        const struct part *part = part_at(in, vertices[k]);
        if (is_implied(part) || listed_before(in->network, vertices, k))
            continue;
        if (!first)
            first = part;
        text_add(&names, "%sthe %s",
                 listed == 0          ? ""
                 : listed == left - 1 ? " and "
                                      : ", ",
                 part->name);
        listed++;
    }
    if (first)
        plumbing_say(
            in->messages, PLUMBING_NOBODY_FEEDS, first->place,
            "lead a run to it from a master or from a joint that one feeds; a brake that rods or a "
            "cable alone work is not described: leave its section out",
            "no master feeds %s", names.items);
}

/* A chamber beside one that is fed, as a second inlet that was forgotten. */
static void say_unreached_chamber(const struct inspection *in, int vertex)
{
    const struct part *part = part_at(in, vertex);
    const char *chamber = part_chamber_word(part, in->network->vertices[vertex].chamber);
    if (kind_is_brake(part->kind))
        plumbing_say(in->messages, PLUMBING_NIPPLE_UNREACHABLE, part->place,
                     "lead a run to it, or say inlets = 1",
                     "no circuit reaches %s of the %s, nor the nipple that bleeds it", chamber,
                     part->name);
    else
        plumbing_say(in->messages, PLUMBING_PORT_LEFT_OPEN, part->place,
                     "lead a run to it, or say that the part serves one circuit",
                     "port \"%s\" of the %s is joined to nothing", chamber, part->name);
}

/* One message for all that hangs together and is not fed. */
static void inspect_unfed(const struct inspection *in)
{
    const struct network *network = in->network;
    const size_t count = (size_t)network->vertex_count;
    bool *seen = ARENA_ARRAY(in->arena, count, bool);
    int *group = ARENA_ARRAY(in->arena, count, int);
    for (int v = 0; v < network->vertex_count; v++) {
        if (seen[v] || network->vertices[v].circuit >= 0)
            continue;
        const int size = gather(network, v, seen, group);
        bool excused = false;
        bool beside = true;
        for (int k = 0; k < size; k++) {
            excused |= in->excused[group[k]];
            beside &= reached_elsewhere(in, group[k]);
        }
        if (excused)
            continue;
        if (beside)
            say_unreached_chamber(in, v);
        else
            say_unfed(in, group, size);
    }
}

static void inspect_edge(const struct inspection *in, const struct edge *edge)
{
    const struct network *network = in->network;
    const struct vertex *a = &network->vertices[edge->a];
    const struct vertex *b = &network->vertices[edge->b];
    if (edge->in_tree || a->circuit < 0 || b->circuit < 0)
        return;
    if (a->circuit == b->circuit) {
        const char *what = edge->part >= 0 ? in->system->parts[edge->part].name : "joint";
        plumbing_say(in->messages, PLUMBING_LOOP, edge->place, NULL,
                     "the %s closes a loop: fluid reaches the %s by two ways, so no bleed plan can "
                     "be made",
                     what, in->system->parts[b->part].name);
        return;
    }
    for (const struct edge *e = network->edges; e < edge; e++) {
        const int one = network->vertices[e->a].circuit;
        const int other = network->vertices[e->b].circuit;
        if ((one == a->circuit && other == b->circuit) ||
            (one == b->circuit && other == a->circuit))
            return; /* these two circuits were named before */
    }
    const struct circuit *one =
        &network->circuits[a->circuit < b->circuit ? a->circuit : b->circuit];
    const struct circuit *other =
        &network->circuits[a->circuit < b->circuit ? b->circuit : a->circuit];
    const struct part *first = &in->system->parts[one->master];
    const struct part *second = &in->system->parts[other->master];
    if (one->master == other->master)
        plumbing_say(in->messages, PLUMBING_TWO_MASTERS, edge->place,
                     "lead each outlet to brakes of its own",
                     "both chambers of the %s feed the same pipes", first->name);
    else
        plumbing_say(in->messages, PLUMBING_TWO_MASTERS, edge->place,
                     "lead each master to brakes of its own",
                     "the %s and the %s feed the same pipes", first->name, second->name);
}

static void inspect_own_order(const struct inspection *in)
{
    const struct own_order *order = &in->system->own_order;
    for (size_t k = 0; k < order->count; k++) {
        const int part = order->items[k].part;
        bool reached = false;
        bool excused = false;
        for (int chamber = 0; network_vertex(in->network, part, chamber) >= 0; chamber++) {
            const int vertex = network_vertex(in->network, part, chamber);
            reached |= in->network->vertices[vertex].circuit >= 0;
            excused |= in->excused[vertex];
        }
        if (reached || excused || part < 0)
            continue;
        plumbing_say(in->messages, PLUMBING_NIPPLE_UNREACHABLE, order->place, NULL,
                     "the bleed order names the %s, which no circuit reaches",
                     in->system->parts[part].name);
    }
}

/* Whether two circuits meet here or something was reported, so that it is no wonder when a circuit
 * ends short. */
static bool ends_short(const struct inspection *in, const struct circuit *circuit)
{
    const struct network *network = in->network;
    for (int k = 0; k < circuit->vertex_count; k++) {
        const int v = circuit->vertices[k];
        if (in->excused[v])
            return true;
        for (int i = network->first_at[v]; i < network->first_at[v + 1]; i++) {
            if (network->edges[network->edges_at[i]].circuit < 0)
                return true;
        }
    }
    return false;
}

static void inspect_circuit(const struct inspection *in, const struct circuit *circuit)
{
    for (int k = 0; k < circuit->vertex_count; k++) {
        const enum part_kind kind = part_at(in, circuit->vertices[k])->kind;
        if (kind_is_brake(kind) || kind == KIND_SLAVE)
            return;
    }
    if (ends_short(in, circuit))
        return;
    const struct part *master = &in->system->parts[circuit->master];
    if (part_chambers(master) == 1)
        plumbing_say(in->messages, PLUMBING_FEEDS_NOTHING, master->place,
                     "lead a run from it to a brake or a clutch slave", "the %s feeds nothing",
                     master->name);
    else
        plumbing_say(in->messages, PLUMBING_FEEDS_NOTHING, master->place,
                     "lead a run from that chamber to a brake, or say type = single",
                     "the %s chamber of the %s feeds nothing",
                     part_chamber_word(master, circuit->chamber), master->name);
}

void faults_report(const struct system *system, const struct wiring *wiring, struct arena *arena,
                   struct messages *messages)
{
    const struct network *network = wiring->network;
    const struct inspection in = {system, network, wiring->excused, arena, messages};
    if (!messages)
        return;
    for (int v = 0; v < network->vertex_count; v++) {
        if (part_at(&in, v)->kind == KIND_JOINT)
            inspect_joint(&in, v);
    }
    for (int e = 0; e < network->edge_count; e++) {
        if (network->edges[e].kind == EDGE_PASSAGE)
            inspect_passage(&in, &network->edges[e]);
        inspect_edge(&in, &network->edges[e]);
    }
    inspect_unfed(&in);
    inspect_own_order(&in);
    for (int c = 0; c < network->circuit_count; c++)
        inspect_circuit(&in, &network->circuits[c]);
}
