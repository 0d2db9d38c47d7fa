#include "physics/reduced.h"

#include <math.h>

#include "physics/drum_memory.h"
#include "physics/pressure.h"

/* Terms are taken from the laws themselves, at this pressure beyond a threshold. */
#define PROBE 1e6

/* --- volumes --------------------------------------------------------------------------------- */

static void add_step(struct reduced_terms *terms, double threshold, double volume)
{
    int at = 0;
    while (at < terms->step_count && terms->steps[at].threshold != threshold)
        at++;
    if (at == REDUCED_TERMS) {
        terms->overflow = true;
        return;
    }
    if (at == terms->step_count) {
        terms->step_count++;
        terms->steps[at].threshold = threshold;
        terms->steps[at].volume = 0;
    }
    terms->steps[at].volume += volume;
}

static void add_hose(struct reduced_terms *terms, const struct hose *hose, enum hose_case hoses)
{
    const struct pressure probe = {PROBE};
    double amount = hose_swelling_as(hose, travel_hose_as(hoses), probe).m3 /
                    hose_ceiling(hose->inside, probe).m3_m;
    int at = 0;
    while (at < terms->hose_count && terms->hoses[at].inside != hose->inside.m)
        at++;
    terms->fluid += hose_volume(hose).m3;
    terms->room += hose_volume(hose).m3;
    if (isnan(amount)) {
        terms->linear = NAN;
        return;
    }
    if (at == REDUCED_TERMS) {
        terms->overflow = true;
        return;
    }
    if (at == terms->hose_count) {
        terms->hose_count++;
        terms->hoses[at].inside = hose->inside.m;
        terms->hoses[at].amount = 0;
    }
    terms->hoses[at].amount += amount;
}

static void add_carrier(struct reduced_terms *terms, const struct part *part, enum hose_case hoses)
{
    if (part->kind != KIND_PIPE) {
        add_hose(terms, &part->as.hose, hoses);
        return;
    }
    terms->linear += pipe_swelling(&part->as.pipe, (struct pressure){PROBE}).m3 / PROBE;
    terms->fluid += pipe_volume(&part->as.pipe).m3;
    terms->room += pipe_volume(&part->as.pipe).m3;
}

static void add_chamber(struct reduced_terms *terms, const struct part *part, int chamber,
                        const struct brake_case *brakes)
{
    bool assumed;
    terms->fluid += travel_chamber(part, chamber, brakes).m3;
    terms->room += part_chamber_volume(part, chamber, &assumed).m3;
    if (part->kind == KIND_DISC) {
        double threshold = part->as.disc.threshold.pa;
        struct pressure beyond = {threshold + PROBE};
        struct disc_volumes taken = disc_volume(&part->as.disc, chamber, beyond, brakes);
        add_step(terms, threshold, taken.roll_back.m3);
        terms->linear += (taken.pads.m3 + taken.body.m3) / beyond.pa;
    } else if (part->kind == KIND_DRUM) {
        double threshold = part->as.drum.threshold.pa;
        struct pressure beyond = {threshold + PROBE};
        struct drum_volumes taken = drum_volume(&part->as.drum, beyond, brakes);
        add_step(terms, threshold, taken.clearance.m3);
        terms->linear += taken.give.m3 / beyond.pa;
    }
}

void reduced_add_part(const struct reduced *reduced, const struct system *system, int part,
                      struct reduced_terms *terms)
{
    for (int chamber = 0; chamber < part_chambers(&system->parts[part]); chamber++) {
        int vertex = network_vertex(reduced->network, part, chamber);
        int stretch = vertex < 0 ? -1 : reduced->stretch_of[vertex];
        if (stretch >= 0)
            add_chamber(&terms[stretch], &system->parts[part], chamber, &reduced->state.brakes);
    }
}

/* --- forces ---------------------------------------------------------------------------------- */

static double force_per_pa(const struct system *system, int part, int inlet, struct solution *room)
{
    const struct part *brake = &system->parts[part];
    double radius = solution_tyre_radius(system_vehicle(system), brake->axle).m;
    if (brake->kind == KIND_DRUM) {
        const struct drum *drum = &brake->as.drum;
        struct pressure beyond = {drum->threshold.pa + PROBE};
        double factor = drum_remembered(system, part, room)->forward;
        return drum_torque_by_factor(drum, beyond, factor).nm / (PROBE * radius);
    }
    const struct disc *disc = &brake->as.disc;
    struct pressure at[2] = {disc->threshold, disc->threshold};
    at[inlet].pa += PROBE;
    return disc_torque(disc, at).nm / (PROBE * radius);
}

int reduced_forces_of(const struct reduced *reduced, const struct system *system, int part,
                      struct solution *room, struct reduced_force *into)
{
    const struct part *brake = &system->parts[part];
    int count = 0;
    for (int inlet = 0; inlet < part_chambers(brake); inlet++) {
        int vertex = network_vertex(reduced->network, part, inlet);
        into[count++] = (struct reduced_force){
            .brake = part,
            .stretch = vertex < 0 ? -1 : reduced->stretch_of[vertex],
            .threshold = brake->kind == KIND_DRUM ? brake->as.drum.threshold.pa
                                                  : brake->as.disc.threshold.pa,
            .per_pa = force_per_pa(system, part, inlet, room),
        };
    }
    return count;
}

/* --- stretches ------------------------------------------------------------------------------- */

static void add_stretch(struct reduced *reduced, int circuit, int at)
{
    const struct network *network = reduced->network;
    const struct vertex *vertex = &network->vertices[at];
    const struct edge *edge = vertex->edge < 0 ? NULL : &network->edges[vertex->edge];
    if (vertex->parent >= 0 && edge != NULL && edge->kind != EDGE_PASSAGE) {
        reduced->stretch_of[at] = reduced->stretch_of[vertex->parent];
        return;
    }
    struct reduced_stretch *stretch = &reduced->stretches[reduced->stretch_count];
    *stretch = (struct reduced_stretch){.circuit = circuit, .before = -1};
    if (vertex->parent >= 0 && edge != NULL) {
        stretch->before = reduced->stretch_of[vertex->parent];
        stretch->passage = &reduced->system->parts[edge->part];
        stretch->backwards = edge->b != at;
    }
    reduced->stretch_of[at] = reduced->stretch_count++;
}

static void find_stretches(struct reduced *reduced, struct arena *arena)
{
    const struct network *network = reduced->network;
    size_t most = (size_t)network->vertex_count + 1;
    reduced->stretches = ARENA_ARRAY(arena, most, struct reduced_stretch);
    reduced->stretch_of = ARENA_ARRAY(arena, most, int);
    for (int v = 0; v < network->vertex_count; v++)
        reduced->stretch_of[v] = -1;
    for (int c = 0; c < network->circuit_count; c++)
        for (int i = 0; i < network->circuits[c].vertex_count; i++)
            add_stretch(reduced, c, network->circuits[c].vertices[i]);
    reduced->terms = ARENA_ARRAY(arena, (size_t)reduced->stretch_count + 1, struct reduced_terms);
}

static void add_all_terms(struct reduced *reduced, const bool *without)
{
    const struct system *system = reduced->system;
    const struct network *network = reduced->network;
    for (int e = 0; e < network->edge_count; e++) {
        const struct edge *edge = &network->edges[e];
        int stretch = edge->kind == EDGE_CARRIER ? reduced->stretch_of[edge->a] : -1;
        if (stretch >= 0)
            add_carrier(&reduced->terms[stretch], &system->parts[edge->part], reduced->state.hoses);
    }
    for (int v = 0; v < network->vertex_count; v++) {
        const struct vertex *vertex = &network->vertices[v];
        if (reduced->stretch_of[v] >= 0 && (without == NULL || !without[vertex->part]))
            add_chamber(&reduced->terms[reduced->stretch_of[v]], &system->parts[vertex->part],
                        vertex->chamber, &reduced->state.brakes);
    }
}

static void add_all_forces(struct reduced *reduced, const bool *without, struct solution *room,
                           struct arena *arena)
{
    reduced->forces = ARENA_ARRAY(arena, (size_t)(room->brake_count * REDUCED_CHAMBERS) + 1,
                                  struct reduced_force);
    for (int b = 0; b < room->brake_count; b++)
        if (without == NULL || !without[room->brakes_at[b]])
            reduced->force_count += reduced_forces_of(reduced, reduced->system, room->brakes_at[b],
                                                      room, &reduced->forces[reduced->force_count]);
}

/* --- pedals ---------------------------------------------------------------------------------- */

static void join_circuit(struct reduced *reduced, struct reduced_master *master, int circuit)
{
    const struct network *network = reduced->network;
    const struct system *system = reduced->system;
    int chamber = network->circuits[circuit].chamber, fluid = system_fluid_of(system, master->part);
    if (chamber >= master->count)
        return;
    master->circuits[chamber] = circuit;
    master->sources[chamber] = reduced->stretch_of[network->circuits[circuit].source];
    master->lost[chamber] = circuit == reduced->state.lost_circuit;
    master->squeeze[chamber] = travel_squeeze(system, fluid, reduced->state.brakes.hot);
    master->air[chamber] =
        fluid < 0 ? NAN : system->parts[fluid].as.fluid.air.m3 + reduced->state.more_air.m3;
    for (int e = 0; e < network->edge_count && master->remotes[chamber] < 0; e++) {
        const struct edge *edge = &network->edges[e];
        if (edge->circuit == circuit && edge->kind == EDGE_PASSAGE &&
            system->parts[edge->part].kind == KIND_SERVO)
            master->remotes[chamber] = reduced->stretch_of[edge->b];
    }
}

static struct reduced_master master_of(struct reduced *reduced, int part)
{
    const struct system *system = reduced->system;
    struct reduced_master master = {
        .part = part, .circuits = {-1, -1}, .sources = {-1, -1}, .remotes = {-1, -1}};
    if (part < 0)
        return master;
    int servo = pressure_servo_of(system, part);
    master.data = &system->parts[part].as.master;
    master.servo = servo < 0 ? NULL : &system->parts[servo].as.servo;
    master.count = master.data->type == MASTER_TANDEM ? 2 : 1;
    master.gap =
        press_own_gap(system, part).m + press_lost_motion(system, part, reduced->state.assisted).m;
    for (int c = 0; c < reduced->network->circuit_count; c++)
        if (reduced->network->circuits[c].master == part)
            join_circuit(reduced, &master, c);
    return master;
}

static void add_pedal(struct reduced *reduced, int part)
{
    const struct system *system = reduced->system;
    struct reduced_pedal *pedal = &reduced->pedals[reduced->pedal_count++];
    *pedal = (struct reduced_pedal){.part = part, .data = &system->parts[part].as.pedal};
    pedal->master_count = (int)pedal->data->works.count;
    for (int i = 0; i < pedal->master_count && i < REDUCED_MASTERS; i++)
        pedal->masters[i] = master_of(reduced, pressure_worked_master(system, part, (size_t)i));
    const struct reduced_master *only = &pedal->masters[0];
    pedal->dead = pedal->master_count == 1 && only->part >= 0 && only->count == 1 &&
                  only->data->type == MASTER_SINGLE && only->lost[0];
}

struct reduced *reduce(const struct system *system, const struct network *network,
                       const struct state *state, const bool *without, struct solution *room,
                       struct arena *arena)
{
    struct reduced *reduced = ARENA_NEW(arena, struct reduced);
    reduced->system = system;
    reduced->network = network;
    reduced->state = *state;
    find_stretches(reduced, arena);
    add_all_terms(reduced, without);
    add_all_forces(reduced, without, room, arena);
    reduced->pedals = ARENA_ARRAY(arena, (size_t)room->brake_pedal_count + 1, struct reduced_pedal);
    for (int p = 0; p < room->brake_pedal_count; p++)
        add_pedal(reduced, room->brake_pedals[p]);
    return reduced;
}
