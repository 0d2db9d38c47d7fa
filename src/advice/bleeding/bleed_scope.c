#include "advice/bleeding/bleed_scope.h"

#include <stddef.h>

#include "advice/common/phrases.h"
#include "base/text.h"

/* What the marking needs. */
struct marks {
    const struct system *system;
    const struct network *network;
    bool *air;   /* by vertex: to be bled */
    bool *dried; /* by vertex: since air got into it */
    bool *master_air;
    struct text why;
    bool any;
};

static void say_why(struct marks *marks, const char *format, const char *name)
{
    if (marks->why.count > 0) {
        text_add(&marks->why, ", ");
    }
    text_add(&marks->why, "the %s ", name);
    text_add(&marks->why, "%s", format);
    marks->any = true;
}

static void mark_beyond(struct marks *marks, int from)
{
    for (int v = 0; v < marks->network->vertex_count; v++) {
        if (network_beyond(marks->network, v, from)) {
            marks->air[v] = true;
        }
    }
}

/* The master itself stays full. */
static void mark_circuit(struct marks *marks, int circuit)
{
    const struct circuit *of = &marks->network->circuits[circuit];
    for (int i = 0; i < of->vertex_count; i++) {
        if (marks->network->vertices[of->vertices[i]].part != of->master) {
            marks->air[of->vertices[i]] = true;
        }
    }
}

static void mark_master(struct marks *marks, int master)
{
    marks->master_air[master] = true;
    for (int c = 0; c < marks->network->circuit_count; c++) {
        const struct circuit *circuit = &marks->network->circuits[c];
        if (circuit->master != master) {
            continue;
        }
        for (int i = 0; i < circuit->vertex_count; i++) {
            marks->air[circuit->vertices[i]] = true;
        }
    }
}

/* Blown through, every pipe of a circuit that was opened is empty. */
static void mark_blown(struct marks *marks)
{
    for (int c = 0; c < marks->network->circuit_count; c++) {
        const struct circuit *of = &marks->network->circuits[c];
        bool opened = false;
        for (int i = 0; i < of->vertex_count; i++) {
            opened = opened || marks->air[of->vertices[i]];
        }
        if (opened) {
            mark_circuit(marks, c);
        }
    }
}

static void mark_reservoir(struct marks *marks, int reservoir)
{
    for (int i = 0; i < marks->system->part_count; i++) {
        if (marks->system->parts[i].kind == KIND_MASTER &&
            reservoir_of(marks->system, i) == reservoir) {
            mark_master(marks, i);
        }
    }
}

/* A regulating valve that was off lets air into all of the circuits whose fluid it holds. */
static void mark_valve(struct marks *marks, int part)
{
    for (int chamber = 0; chamber < part_chambers(&marks->system->parts[part]); chamber++) {
        int vertex = network_vertex(marks->network, part, chamber);
        if (vertex < 0 || marks->network->vertices[vertex].circuit < 0) {
            continue;
        }
        mark_circuit(marks, marks->network->vertices[vertex].circuit);
    }
}

static void mark_carrier(struct marks *marks, int part)
{
    for (int v = 0; v < marks->network->vertex_count; v++) {
        int edge = marks->network->vertices[v].edge;
        if (edge >= 0 && marks->network->edges[edge].part == part &&
            marks->network->edges[edge].kind == EDGE_CARRIER) {
            mark_beyond(marks, v);
        }
    }
}

static void mark_chambers(struct marks *marks, int part)
{
    for (int chamber = 0; chamber < part_chambers(&marks->system->parts[part]); chamber++) {
        int vertex = network_vertex(marks->network, part, chamber);
        if (vertex >= 0) {
            mark_beyond(marks, vertex);
        }
    }
}

static const char *deed_words(const struct part *part)
{
    if (part->done.replaced) {
        return "is replaced";
    }
    return part->done.renewed ? "is new" : "was opened";
}

static void mark_part(struct marks *marks, int index)
{
    const struct part *part = &marks->system->parts[index];
    switch (part->kind) {
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_PARKING:
    case KIND_COUNT:
        return;
    case KIND_SERVO:
        if (part->as.servo.type != SERVO_REMOTE) {
            return; /* dry */
        }
        mark_chambers(marks, index);
        break;
    case KIND_RESERVOIR:
        mark_reservoir(marks, index);
        break;
    case KIND_MASTER:
        mark_master(marks, index);
        break;
    case KIND_VALVE:
        mark_valve(marks, index);
        break;
    case KIND_HOSE: {
        int owner = soft_hose_owner(marks->system, index);
        if (part->as.hose.use == HOSE_VACUUM) {
            return; /* dry */
        }
        if (owner >= 0) {
            mark_master(marks, owner);
        } else {
            mark_carrier(marks, index);
        }
        break;
    }
    case KIND_PIPE:
        mark_carrier(marks, index);
        break;
    case KIND_JOINT:
    case KIND_DISC:
    case KIND_DRUM:
    case KIND_SLAVE:
        mark_chambers(marks, index);
        break;
    }
    say_why(marks, deed_words(part), cylinder_words(marks->why.arena, part));
}

static void mark_work(struct marks *marks)
{
    const struct system *system = marks->system;
    for (int i = 0; i < system->part_count; i++) {
        if (part_was_opened(&system->parts[i]) &&
            work_is_at_hand(system, system->parts[i].done.date)) {
            mark_part(marks, i);
        }
        if (system->ran_dry != NULL && system->ran_dry[i]) {
            if (system->parts[i].kind == KIND_RESERVOIR) {
                mark_reservoir(marks, i);
            } else if (system->parts[i].kind == KIND_MASTER) {
                mark_master(marks, i);
            }
            say_why(marks, "ran dry", system->parts[i].name);
        }
    }
    if (system->open_ends == OPEN_ENDS_BLOWN) {
        mark_blown(marks);
    }
    bool let_in = false;
    for (int v = 0; v < marks->network->vertex_count; v++) {
        marks->dried[v] = marks->air[v];
        let_in = let_in || marks->air[v];
    }
    if (fluid_is_renewed(system)) {
        for (int v = 0; v < marks->network->vertex_count; v++) {
            marks->air[v] = true;
        }
        say_why(marks, "is renewed", "fluid");
    }
    static const char *const ends[] = {"drained (assumed)", "plugged at once", "drained",
                                       "blown through"};
    if (let_in) {
        text_add(&marks->why, "; open pipe ends: %s", ends[system->open_ends]);
    }
}

static void sort_out_nipples(struct bleed_set *set, const struct system *system,
                             const struct network *network, const bool *air)
{
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        for (int n = 0; n < nipples_of(part); n++) {
            struct nipple nipple = {i, n};
            int vertex = nipple_vertex(system, network, nipple);
            if (vertex < 0) {
                continue; /* the network has said that nobody feeds it */
            }
            if (!air[vertex]) {
                set->untouched[set->untouched_count++] = nipple;
                continue;
            }
            int circuit = network->vertices[vertex].circuit;
            set->items[set->count++] = (struct scoped_nipple){
                .nipple = nipple,
                .vertex = vertex,
                .circuit = circuit,
                .clutch = network->circuits[circuit].clutch,
                .wheel = kind_is_brake(part->kind) || part->kind == KIND_SLAVE,
            };
        }
    }
}

struct bleed_set bleed_set_of(const struct system *system, const struct network *network,
                              struct arena *arena)
{
    size_t parts = (size_t)system->part_count + 1;
    struct bleed_set set = {.master_air = ARENA_ARRAY(arena, parts, bool)};
    struct marks marks = {
        .system = system,
        .network = network,
        .air = ARENA_ARRAY(arena, (size_t)network->vertex_count + 1, bool),
        .dried = ARENA_ARRAY(arena, (size_t)network->vertex_count + 1, bool),
        .master_air = set.master_air,
        .why = text_start(arena),
    };
    size_t nipples = 1;
    for (int i = 0; i < system->part_count; i++) {
        nipples += (size_t)nipples_of(&system->parts[i]);
    }
    set.items = ARENA_ARRAY(arena, nipples, struct scoped_nipple);
    set.untouched = ARENA_ARRAY(arena, nipples, struct nipple);
    mark_work(&marks);
    set.reason = marks.why.items;
    set.air = marks.dried;
    if (!marks.any && system->work_count == 0) {
        for (int v = 0; v < network->vertex_count; v++) {
            marks.air[v] = marks.dried[v] = true;
        }
        set.reason = "no work file: the whole car";
    } else if (!marks.any) {
        set.reason = "nothing that holds fluid was opened";
    }
    sort_out_nipples(&set, system, network, marks.air);
    set.scope = set.count == 0 ? BLEED_NOTHING : set.untouched_count == 0 ? BLEED_ALL : BLEED_PART;
    set.circuit_open = ARENA_ARRAY(arena, (size_t)network->circuit_count + 1, bool);
    for (int v = 0; v < network->vertex_count; v++) {
        if (marks.air[v] && network->vertices[v].circuit >= 0) {
            set.circuit_open[network->vertices[v].circuit] = true;
        }
    }
    return set;
}
