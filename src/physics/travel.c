#include "physics/travel.h"

#include <math.h>

struct squeeze travel_squeeze(const struct system *system, int fluid, bool hot)
{
    if (fluid < 0)
        return (struct squeeze){{NAN}, NAN};
    const struct fluid *data = &system->parts[fluid].as.fluid;
    const struct fluid_row *row = fluid_row(data->grade);
    return (struct squeeze){fluid_modulus(data->grade, hot ? data->hot : data->temperature),
                            row ? row->modulus_slope : NAN};
}

/* Compression is in proportion to the volume, so a share per pressure is worked out once for each
 * run of equal pressures. */
struct shrink {
    struct squeeze squeeze;
    double at_pa;
    double share;
};

static double shrink_share(struct shrink *shrink, struct pressure p)
{
    if (p.pa != shrink->at_pa) { /* also when at_pa is NaN, as it is at first */
        shrink->at_pa = p.pa;
        shrink->share =
            fluid_compression((struct volume){1}, shrink->squeeze.modulus, shrink->squeeze.slope, p)
                .m3;
    }
    return shrink->share;
}

enum hose_state travel_hose_as(enum hose_case hoses)
{
    switch (hoses) {
    case HOSES_AS_SAID:
        break;
    case HOSES_GOOD:
        return HOSE_GOOD;
    case HOSES_WORN:
        return HOSE_WORN;
    }
    return HOSE_STATE_NOT_SAID;
}

static void add_edge(const struct system *system, const struct edge *edge, struct pressure p,
                     enum hose_case hoses, struct shrink *shrink,
                     struct volume by_cause[CAUSE_COUNT])
{
    const struct part *part = &system->parts[edge->part];
    struct volume inside;
    if (part->kind == KIND_PIPE) {
        by_cause[CAUSE_PIPES].m3 += pipe_swelling(&part->as.pipe, p).m3;
        inside = pipe_volume(&part->as.pipe);
    } else {
        by_cause[CAUSE_HOSES].m3 += hose_swelling_as(&part->as.hose, travel_hose_as(hoses), p).m3;
        inside = hose_volume(&part->as.hose);
    }
    by_cause[CAUSE_FLUID].m3 += inside.m3 * shrink_share(shrink, p);
}

struct volume travel_chamber(const struct part *part, int chamber, const struct brake_case *brakes)
{
    bool assumed;
    struct volume volume = part_chamber_volume(part, chamber, &assumed);
    if (part->kind == KIND_DISC)
        volume.m3 += disc_fluid_followed(&part->as.disc, chamber, brakes).m3;
    if (volume.m3 < 0) /* new pads thicker than the chamber as said has room for */
        volume.m3 = 0;
    return volume;
}

static void add_vertex(const struct system *system, const struct vertex *vertex, struct pressure p,
                       const struct state *state, struct shrink *shrink,
                       struct volume by_cause[CAUSE_COUNT])
{
    const struct part *part = &system->parts[vertex->part];
    struct volume chamber = travel_chamber(part, vertex->chamber, &state->brakes);
    by_cause[CAUSE_FLUID].m3 += chamber.m3 * shrink_share(shrink, p);
    if (part->kind == KIND_DISC) {
        struct disc_volumes taken = disc_volume(&part->as.disc, vertex->chamber, p, &state->brakes);
        by_cause[CAUSE_CLEARANCE].m3 += taken.roll_back.m3;
        by_cause[CAUSE_LININGS].m3 += taken.pads.m3;
        by_cause[CAUSE_BODY].m3 += taken.body.m3;
    } else if (part->kind == KIND_DRUM) {
        struct drum_volumes taken = drum_volume(&part->as.drum, p, &state->brakes);
        by_cause[CAUSE_CLEARANCE].m3 += taken.clearance.m3;
        by_cause[CAUSE_LININGS].m3 += taken.give.m3;
    }
}

/* Volumes of a circuit's fluid: all, what counts, and that times how much greater a share of its
 * air is lost there than at the first place. So what rests on no volume comes out without its
 * rounding.
 */
struct spread_air {
    double first, all, counts, more;
};

static double air_share(struct pressure p)
{
    return air_compression((struct volume){1}, p).m3;
}

static void spread_over(struct spread_air *spread, double volume, struct pressure p, bool counts)
{
    spread->all += volume;
    if (!counts)
        return;
    spread->counts += volume;
    spread->more += volume * (air_share(p) - spread->first);
}

struct volume travel_air(const struct system *system, const struct network *network, int from,
                         const struct pressure *by_vertex, struct volume free_air)
{
    const int circuit = network->vertices[from].circuit;
    if (circuit < 0 || free_air.m3 == 0) /* a system well bled: no volume need be known */
        return (struct volume){circuit < 0 ? NAN : 0};
    struct spread_air spread = {.first = air_share(by_vertex[from])};
    const struct circuit *walked = &network->circuits[circuit];
    for (int i = 0; i < network->edge_count; i++) {
        const struct edge *edge = &network->edges[i];
        if (edge->circuit == circuit && edge->kind == EDGE_CARRIER)
            spread_over(&spread, network_edge_volume(system, edge), by_vertex[edge->a],
                        network_beyond(network, edge->a, from) &&
                            network_beyond(network, edge->b, from));
    }
    for (int i = 0; i < walked->vertex_count; i++) {
        const int at = walked->vertices[i];
        const struct vertex *vertex = &network->vertices[at];
        bool assumed;
        spread_over(&spread,
                    part_chamber_volume(&system->parts[vertex->part], vertex->chamber, &assumed).m3,
                    by_vertex[at], network_beyond(network, at, from));
    }
    const double share = spread.first * (spread.counts / spread.all) + spread.more / spread.all;
    return (struct volume){free_air.m3 * share};
}

static struct volume air_in(const struct system *system, const struct network *network, int circuit,
                            const struct state *state)
{
    const int fluid = system_fluid_of(system, network->circuits[circuit].master);
    return (struct volume){fluid < 0 ? NAN
                                     : system->parts[fluid].as.fluid.air.m3 + state->more_air.m3};
}

void travel_volumes(const struct system *system, const struct network *network, int circuit,
                    const struct pressure *by_vertex, const struct state *state,
                    struct volume by_cause[CAUSE_COUNT])
{
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        by_cause[cause] = (struct volume){0};
    const struct circuit *walked = &network->circuits[circuit];
    int fluid = system_fluid_of(system, walked->master);
    struct shrink shrink = {travel_squeeze(system, fluid, state->brakes.hot), NAN, NAN};
    for (int i = 0; i < network->edge_count; i++) {
        const struct edge *edge = &network->edges[i];
        if (edge->circuit == circuit && edge->kind == EDGE_CARRIER)
            add_edge(system, edge, by_vertex[edge->a], state->hoses, &shrink, by_cause);
    }
    for (int i = 0; i < walked->vertex_count; i++) {
        int at = walked->vertices[i];
        add_vertex(system, &network->vertices[at], by_vertex[at], state, &shrink, by_cause);
    }
    by_cause[CAUSE_AIR] = travel_air(system, network, walked->source, by_vertex,
                                     air_in(system, network, circuit, state));
}

struct volume travel_fluid(const struct system *system, const struct network *network, int circuit)
{
    const struct circuit *walked = &network->circuits[circuit];
    struct volume sum = {0};
    for (int i = 0; i < network->edge_count; i++)
        if (network->edges[i].circuit == circuit && network->edges[i].kind == EDGE_CARRIER)
            sum.m3 += network_edge_volume(system, &network->edges[i]);
    for (int i = 0; i < walked->vertex_count; i++) {
        const struct vertex *vertex = &network->vertices[walked->vertices[i]];
        const struct part *part = &system->parts[vertex->part];
        bool assumed;
        if (part->kind != KIND_MASTER)
            sum.m3 += part_chamber_volume(part, vertex->chamber, &assumed).m3;
    }
    return sum;
}

void travel_volumes_beyond(const struct system *system, const struct network *network, int from,
                           const struct pressure *by_vertex, const struct state *state,
                           struct volume by_cause[CAUSE_COUNT])
{
    int circuit = network->vertices[from].circuit;
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        by_cause[cause].m3 = circuit < 0 ? NAN : 0;
    if (circuit < 0)
        return;
    int fluid = system_fluid_of(system, network->circuits[circuit].master);
    struct shrink shrink = {travel_squeeze(system, fluid, state->brakes.hot), NAN, NAN};
    for (int i = 0; i < network->edge_count; i++) {
        const struct edge *edge = &network->edges[i];
        if (edge->circuit == circuit && edge->kind == EDGE_CARRIER &&
            network_beyond(network, edge->a, from) && network_beyond(network, edge->b, from))
            add_edge(system, edge, by_vertex[edge->a], state->hoses, &shrink, by_cause);
    }
    for (int i = 0; i < network->circuits[circuit].vertex_count; i++) {
        int at = network->circuits[circuit].vertices[i];
        if (network_beyond(network, at, from))
            add_vertex(system, &network->vertices[at], by_vertex[at], state, &shrink, by_cause);
    }
    by_cause[CAUSE_AIR] =
        travel_air(system, network, from, by_vertex, air_in(system, network, circuit, state));
}

struct volume travel_volume_beyond(const struct system *system, const struct network *network,
                                   int from, const struct pressure *by_vertex,
                                   const struct state *state)
{
    struct volume by_cause[CAUSE_COUNT], sum = {0};
    travel_volumes_beyond(system, network, from, by_vertex, state, by_cause);
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        sum.m3 += by_cause[cause].m3;
    return sum;
}
