#include "purge/purge_net.h"

#include <math.h>
#include <string.h>

#include "parts/bubble.h"
#include "parts/flow.h"
#include "units/constants.h"

/* What is taken where nothing is said: from memory. */
#define USUAL_PIPE_LENGTH 1.0
#define USUAL_HOSE_LENGTH 0.35
#define USUAL_PIPE_BORE   3.34e-3
#define USUAL_HOSE_BORE   3.175e-3
#define USUAL_PASSAGE     5e-3 /* bore through a valve, a servo, a joint */
#define USUAL_MASTER_BORE 19.05e-3
#define USUAL_CHAMBER     2e-6
#define USUAL_CROSSING    1.5e-6 /* drilled or piped from one half of a caliper to the other */

/* Legs that one pipe can make: up, down, up. */
enum { PIECES = 3 };

struct builder {
    const struct system *system;
    const struct network *network;
    struct purge_net *net;
    double *heights; /* by vertex, m; NaN where not known */
};

/* A vertex whose chamber is a pot: a brake or a slave. All others are passed through. */
static bool is_pot(const struct part *part)
{
    return kind_is_brake(part->kind) || part->kind == KIND_SLAVE;
}

static int nipples_of_part(const struct part *part)
{
    if (part->fitted.nipples >= 0)
        return part->fitted.nipples;
    return is_pot(part) ? 1 : 0;
}

/* Nipples of parts with an inlet and an outlet sit behind the outlet; a chamber that no circuit
 * reaches leaves its nipples to the first that one does. */
static int vertex_of_nipple(const struct builder *builder, int index_of_part, int index)
{
    const struct part *part = &builder->system->parts[index_of_part];
    const int chambers = part_chambers(part);
    int chamber = chambers > 1 ? index % chambers : 0;
    if (part->kind == KIND_SERVO)
        chamber = chambers - 1;
    if (part->kind == KIND_VALVE)
        chamber = index * 2 + 1 < chambers ? index * 2 + 1 : chambers - 1;
    int vertex = network_vertex(builder->network, index_of_part, chamber);
    for (int other = 0; other < chambers; other++) {
        if (vertex >= 0 && builder->network->vertices[vertex].circuit >= 0)
            return vertex;
        vertex = network_vertex(builder->network, index_of_part, other);
    }
    return vertex >= 0 && builder->network->vertices[vertex].circuit >= 0 ? vertex : -1;
}

static double chamber_volume(const struct builder *builder, int vertex)
{
    const struct vertex *at = &builder->network->vertices[vertex];
    bool assumed = false;
    double volume =
        part_chamber_volume(&builder->system->parts[at->part], at->chamber, &assumed).m3;
    if (!(volume > 0)) {
        volume = USUAL_CHAMBER;
        assumed = true;
    }
    builder->net->any_assumed |= assumed;
    return volume;
}

static double or_usual(double value, double usual, bool *assumed)
{
    if (value > 0)
        return value;
    *assumed = true;
    return usual;
}

/* Heights between two that are known lie on the straight line over the run. */
static void fill_heights(const struct builder *builder, const struct circuit *circuit)
{
    const struct vertex *vertices = builder->network->vertices;
    double *heights = builder->heights;
    for (int k = 0; k < circuit->vertex_count; k++) {
        const int v = circuit->vertices[k];
        heights[v] = builder->system->parts[vertices[v].part].fitted.height.m;
    }
    for (int k = 0; k < circuit->vertex_count; k++) {
        const int end = circuit->vertices[k];
        int start = vertices[end].parent;
        if (isnan(heights[end]))
            continue;
        while (start >= 0 && isnan(heights[start]))
            start = vertices[start].parent;
        if (start < 0)
            continue;
        const double run = vertices[end].run - vertices[start].run;
        for (int v = vertices[end].parent; v != start; v = vertices[v].parent) {
            const double along = run > 0 ? (vertices[v].run - vertices[start].run) / run : 1;
            heights[v] = heights[start] + along * (heights[end] - heights[start]);
        }
    }
}

static int add_leg(struct builder *builder, int above, int part, double volume, double bore,
                   double length)
{
    struct purge_net *net = builder->net;
    net->legs[net->leg_count] = (struct purge_leg){.above = above,
                                                   .part = part,
                                                   .volume = volume,
                                                   .bore = bore,
                                                   .length = length,
                                                   .climb_assumed = true};
    return net->leg_count++;
}

/* Heights along a pipe, from one end to the other, over a high and a low point that it may state.
 * Gives how many there are, 2 at least. */
static int trace_heights(const struct part *part, double from, double to, double heights[4])
{
    int count = 0;
    heights[count++] = from;
    if (part->kind == KIND_PIPE && part->as.pipe.highest.m > fmax(from, to))
        heights[count++] = part->as.pipe.highest.m;
    if (part->kind == KIND_PIPE && part->as.pipe.lowest.m < fmin(from, to))
        heights[count++] = part->as.pipe.lowest.m;
    heights[count++] = to;
    return count;
}

/* The legs of a pipe or hose, without the chamber at its far end: one, or more of equal length
 * where it climbs and falls. Gives the last. */
static int add_carrier(struct builder *builder, int above, const struct vertex *at, int vertex)
{
    const int index = builder->network->edges[at->edge].part;
    const struct part *part = &builder->system->parts[index];
    bool assumed = false;
    double length, bore, heights[4];
    if (part->kind == KIND_HOSE) {
        length = or_usual(part->as.hose.length.m, USUAL_HOSE_LENGTH, &assumed);
        bore = or_usual(part->as.hose.inside.m, USUAL_HOSE_BORE, &assumed);
    } else {
        length = or_usual(part->as.pipe.length.m, USUAL_PIPE_LENGTH, &assumed);
        bore = or_usual(pipe_inside(&part->as.pipe).m, USUAL_PIPE_BORE, &assumed);
    }
    const int pieces =
        trace_heights(part, builder->heights[at->parent], builder->heights[vertex], heights) - 1;
    length /= pieces;
    for (int i = 0; i < pieces; i++) {
        above = add_leg(builder, above, index, circle_area((struct length){bore}).m2 * length, bore,
                        length);
        struct purge_leg *leg = &builder->net->legs[above];
        const double climb = heights[i + 1] - heights[i];
        leg->climb_assumed = isnan(climb);
        leg->climb = leg->climb_assumed ? 0 : fmax(fmin(climb, length), -length);
        assumed |= leg->climb_assumed;
    }
    builder->net->any_assumed |= assumed;
    return above;
}

/* A chamber that is passed through and has no pipe of its own before it. */
static int add_passage(struct builder *builder, int above, int part, double volume, double bore)
{
    return add_leg(builder, above, part, volume, bore,
                   volume / circle_area((struct length){bore}).m2);
}

static void add_vertex(struct builder *builder, int vertex)
{
    const struct vertex *at = &builder->network->vertices[vertex];
    const struct part *part = &builder->system->parts[at->part];
    struct purge_net *net = builder->net;
    const double volume = chamber_volume(builder, vertex);
    bool assumed = false;
    if (at->parent < 0) {
        const double bore = or_usual(part->as.master.bore.m, USUAL_MASTER_BORE, &assumed);
        net->leg_at[vertex] = add_passage(builder, -1, at->part, volume, bore);
        net->legs[net->leg_at[vertex]].in_master = true;
        net->chamber_at[vertex] = volume;
        return;
    }
    const int above = net->leg_at[at->parent];
    const struct edge *edge = &builder->network->edges[at->edge];
    if (edge->kind == EDGE_CARRIER) {
        net->leg_at[vertex] = add_carrier(builder, above, at, vertex);
        net->chamber_at[vertex] = is_pot(part) ? 0 : volume;
        net->legs[net->leg_at[vertex]].volume += net->chamber_at[vertex];
    } else if (is_pot(part)) {
        net->leg_at[vertex] = above;
    } else {
        net->leg_at[vertex] = add_passage(builder, above, at->part, volume, USUAL_PASSAGE);
        net->legs[net->leg_at[vertex]].shut =
            edge->kind == EDGE_PASSAGE && part->kind == KIND_SERVO && part->as.servo.passes == NO;
        net->chamber_at[vertex] = volume;
    }
}

/* Bore of the pistons, where a chamber is round and lies level. */
static double piston_bore(const struct part *part)
{
    if (part->kind == KIND_DISC)
        return part->as.disc.bores.bore.m;
    return part->kind == KIND_DRUM ? part->as.drum.bore.m : part->as.slave.bore.m;
}

static double trapped_share(const struct part *part)
{
    const double below = part->fitted.nipple_below.m, bore = piston_bore(part);
    if (!(below > 0))
        return 0;
    return bore > 0 ? bubble_trapped_share(bore, fmin(below, bore)) : 0;
}

/* Whether the name of a nipple, one of several split by commas, holds a word. */
static bool name_holds(const char *names, int index, const char *word)
{
    for (; names && index > 0; index--) {
        names = strchr(names, ',');
        names = names ? names + 1 : NULL;
    }
    if (!names)
        return false;
    const char *end = strchr(names, ','), *found = strstr(names, word);
    return found && (!end || found < end);
}

/* Which of the nipples of one chamber lies farthest from its inlet: the one that is called outer,
 * else the first. */
static int farthest_nipple(const struct part *part, int count)
{
    for (int i = 0; i < count; i++) {
        if (name_holds(part->fitted.nipple_names, i, "outer"))
            return i;
    }
    return 0;
}

static int nipples_at(const struct builder *builder, int vertex)
{
    const int part = builder->network->vertices[vertex].part;
    const int all = nipples_of_part(&builder->system->parts[part]);
    int count = 0;
    for (int i = 0; i < all; i++)
        count += vertex_of_nipple(builder, part, i) == vertex;
    return count;
}

/* Pistons on both sides of the disc: two rooms, joined. */
static bool has_halves(const struct part *part)
{
    return part->kind == KIND_DISC && part->as.disc.caliper == CALIPER_FIXED;
}

/* The pots of a vertex: one for each of its nipples, at least one, of an opposed caliper two; the
 * last is the farthest from the inlet. What joins two halves counts with the far one. */
static void add_pots(struct builder *builder, int vertex)
{
    const struct vertex *at = &builder->network->vertices[vertex];
    const struct part *part = &builder->system->parts[at->part];
    struct purge_net *net = builder->net;
    const int nipples = nipples_at(builder, vertex);
    const bool halves = has_halves(part) && nipples > 0;
    const int least = halves ? 2 : 1, count = nipples > least ? nipples : least;
    const double volume = chamber_volume(builder, vertex) / count;
    for (int i = 0; i < count; i++) {
        net->pots[net->pot_count] = (struct purge_pot){
            .leg = net->leg_at[vertex],
            .behind = i > 0 ? net->pot_count - 1 : -1,
            .open_above = count > nipples && i + 1 < count,
            .part = at->part,
            .chamber = at->chamber,
            .volume = volume,
            .trapped = volume * trapped_share(part),
        };
        net->pot_count++;
    }
    if (halves && !(part->fitted.chamber.m3 > 0))
        net->pots[net->pot_count - 1].volume += USUAL_CROSSING;
}

static void add_nipples(struct builder *builder, int vertex)
{
    const struct vertex *at = &builder->network->vertices[vertex];
    const struct part *part = &builder->system->parts[at->part];
    struct purge_net *net = builder->net;
    const int all = nipples_of_part(part), here = nipples_at(builder, vertex);
    const int far = farthest_nipple(part, all);
    int nearer = net->pot_count - here; /* of the pots just added, the first */
    for (int i = 0; i < all; i++) {
        if (vertex_of_nipple(builder, at->part, i) != vertex)
            continue;
        int pot = -1;
        if (is_pot(part))
            pot = i == far || here == 1 ? net->pot_count - 1 : nearer++;
        if (pot >= net->pot_count)
            pot = net->pot_count - 1;
        net->nipples[net->nipple_count++] =
            (struct purge_nipple){pot, net->leg_at[vertex], {at->part, i}};
    }
}

static void name_fluid(struct purge_net *net, const struct system *system, int master)
{
    const int index = system_fluid_of(system, master);
    const struct fluid *fluid = index >= 0 ? &system->parts[index].as.fluid : NULL;
    const struct fluid_row *row = fluid ? fluid_row(fluid->grade) : NULL;
    struct temperature at = {20};
    if (fluid && !isnan(fluid->temperature.celsius))
        at = fluid->temperature;
    if (!row) {
        row = fluid_row(GRADE_DOT4);
        net->any_assumed = true;
    }
    net->density = row->density.kg_m3;
    net->tension = row->surface_tension;
    net->viscosity = flow_viscosity_of(row->grade, at).m2_s;
}

/* Vertices of a circuit are listed parents before children, so legs are as well. */
struct purge_net *purge_net_of(const struct system *system, const struct network *network,
                               int circuit, struct arena *arena)
{
    const struct circuit *of = &network->circuits[circuit];
    const size_t vertices = (size_t)network->vertex_count;
    struct builder builder = {system, network, ARENA_NEW(arena, struct purge_net),
                              ARENA_ARRAY(arena, vertices, double)};
    struct purge_net *net = builder.net;
    size_t nipples = 0;
    for (int i = 0; i < system->part_count; i++)
        nipples += (size_t)nipples_of_part(&system->parts[i]);
    net->legs = ARENA_ARRAY(arena, PIECES * (size_t)of->vertex_count, struct purge_leg);
    net->pots = ARENA_ARRAY(arena, (size_t)of->vertex_count + nipples, struct purge_pot);
    net->nipples = ARENA_ARRAY(arena, nipples, struct purge_nipple);
    net->leg_at = ARENA_ARRAY(arena, vertices, int);
    net->chamber_at = ARENA_ARRAY(arena, vertices, double);
    for (int v = 0; v < network->vertex_count; v++)
        net->leg_at[v] = -1;
    name_fluid(net, system, of->master);
    fill_heights(&builder, of);
    for (int k = 0; k < of->vertex_count; k++) {
        add_vertex(&builder, of->vertices[k]);
        if (is_pot(&system->parts[network->vertices[of->vertices[k]].part]))
            add_pots(&builder, of->vertices[k]);
        add_nipples(&builder, of->vertices[k]);
    }
    return net;
}

static void dry_vertex(struct purge_net *net, const struct network *network, int vertex, bool own)
{
    const int leg = net->leg_at[vertex];
    const struct vertex *at = &network->vertices[vertex];
    if (leg < 0)
        return;
    /* a pot that is joined directly shares its parent's leg */
    const bool shares = at->parent >= 0 && net->leg_at[at->parent] == leg;
    if (!shares && own)
        net->legs[leg].air = fmax(net->legs[leg].air, net->chamber_at[vertex]);
    /* a pipe may be several legs */
    for (int i = leg; !shares && !own && i >= 0 && net->legs[i].part == net->legs[leg].part;
         i = net->legs[i].above)
        net->legs[i].air = net->legs[i].volume;
    for (int i = 0; i < net->pot_count; i++) {
        if (net->pots[i].part == at->part && net->pots[i].chamber == at->chamber)
            net->pots[i].air = net->pots[i].volume;
    }
}

void purge_net_dry(struct purge_net *net, const struct network *network,
                   const struct system *system, int vertex)
{
    (void)system;
    for (int v = 0; v < network->vertex_count; v++) {
        if (net->leg_at[v] >= 0 && network_beyond(network, v, vertex))
            dry_vertex(net, network, v, v == vertex);
    }
}

void purge_net_dry_own(struct purge_net *net, const struct network *network, int vertex)
{
    dry_vertex(net, network, vertex, true);
}

double purge_path_volume(const struct purge_net *net, int nipple)
{
    double volume = 0;
    for (int leg = net->nipples[nipple].leg; leg >= 0; leg = net->legs[leg].above) {
        if (!net->legs[leg].in_master)
            volume += net->legs[leg].volume;
    }
    for (int pot = net->nipples[nipple].pot; pot >= 0; pot = net->pots[pot].behind)
        volume += net->pots[pot].volume;
    return volume;
}

int purge_clears_too(const struct purge_net *net, int pot)
{
    const int behind = net->pots[pot].behind;
    return behind >= 0 && net->pots[behind].open_above ? behind : -1;
}

double purge_trapped_at(const struct purge_net *net, int nipple)
{
    double trapped = 0;
    for (int pot = net->nipples[nipple].pot; pot >= 0; pot = purge_clears_too(net, pot))
        trapped += net->pots[pot].trapped;
    return trapped;
}

double purge_trapped_air_at(const struct purge_net *net, int nipple)
{
    double air = 0;
    for (int pot = net->nipples[nipple].pot; pot >= 0; pot = purge_clears_too(net, pot))
        air += fmin(net->pots[pot].trapped, net->pots[pot].air);
    return air;
}

void purge_net_push_home(struct purge_net *net, const struct system *system, int part)
{
    struct part home = system->parts[part];
    if (home.kind != KIND_DISC || !(home.as.disc.pad_left.m < home.as.disc.pad_new.m))
        return;
    home.as.disc.pad_left = home.as.disc.pad_new;
    for (int i = 0; i < net->pot_count; i++) {
        struct purge_pot *pot = &net->pots[i];
        if (pot->part != part)
            continue;
        bool assumed;
        const double room = part_chamber_volume(&home, pot->chamber, &assumed).m3;
        const double whole = part_chamber_volume(&system->parts[part], pot->chamber, &assumed).m3;
        int rooms = 0;
        for (int k = 0; k < net->pot_count; k++)
            rooms += net->pots[k].part == part && net->pots[k].chamber == pot->chamber;
        pot->volume -= (whole - room) / rooms;
        pot->trapped *= room / whole;
    }
}
