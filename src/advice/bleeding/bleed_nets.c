#include "advice/bleeding/bleed_nets.h"

#include <math.h>
#include <stddef.h>

#include "advice/bleeding/bleed_stroke.h"
#include "advice/bleeding/bleed_way.h"
#include "advice/bleeding/touched.h"

/* A pipe may be several legs. */
static void empty_carrier(struct purge_net *net, int part)
{
    for (int i = 0; i < net->leg_count; i++) {
        if (net->legs[i].part == part) {
            net->legs[i].air = net->legs[i].volume;
        }
    }
}

/* Plugged at once: air is in what was off or is new, and the pipes beyond stay full. */
static void air_in_opened(struct bleed_net *item, const struct bleed_set *set,
                          const struct system *system, const struct network *network, int vertex)
{
    int part = network->vertices[vertex].part;
    if (set->air[vertex] && (part_was_opened(&system->parts[part]) || set->master_air[part])) {
        purge_net_dry_own(item->net, network, vertex);
    }
}

/* A master that ran dry pumps air into the pipes, and air that is blown through them leaves at
 * their open ends: brakes that were not off keep their fluid. */
static void keep_brakes_full(struct bleed_net *item, const struct system *system)
{
    for (int i = 0; i < item->net->pot_count; i++) {
        if (!part_was_opened(&system->parts[item->net->pots[i].part])) {
            item->net->pots[i].air = 0;
        }
    }
}

/* A vertex that air got into, though not by way of the one before it, was opened. */
static void let_air_in(struct bleed_net *item, const struct bleed_set *set,
                       const struct system *system, const struct network *network, int circuit)
{
    const struct circuit *of = &network->circuits[circuit];
    bool ran_dry = master_ran_dry(system, of->master);
    bool plugged = system->open_ends == OPEN_ENDS_PLUGGED && !ran_dry;
    for (int i = 0; i < of->vertex_count; i++) {
        int vertex = of->vertices[i], parent = network->vertices[vertex].parent;
        if (plugged) {
            air_in_opened(item, set, system, network, vertex);
        } else if (set->air[vertex] && (parent < 0 || !set->air[parent])) {
            purge_net_dry(item->net, network, system, vertex);
        }
        /* a pipe or hose that was off, is new or was blown through is empty itself */
        int edge = network->vertices[vertex].edge;
        if (set->air[vertex] && edge >= 0 && network->edges[edge].kind == EDGE_CARRIER &&
            (system->open_ends == OPEN_ENDS_BLOWN ||
             part_was_opened(&system->parts[network->edges[edge].part]))) {
            empty_carrier(item->net, network->edges[edge].part);
        }
    }
    if (ran_dry || system->open_ends == OPEN_ENDS_BLOWN) {
        keep_brakes_full(item, system);
    }
    item->dry = true;
    for (int i = 0; i < item->net->leg_count; i++) {
        const struct purge_leg *leg = &item->net->legs[i];
        item->dry = item->dry && leg->air > 0.5 * leg->volume;
    }
}

static void push_pistons_home(struct purge_net *net, const struct system *system,
                              const struct touched *touched)
{
    for (int i = 0; i < system->part_count; i++) {
        if (pistons_go_home(&system->parts[i], touched->bled[i])) {
            purge_net_push_home(net, system, i);
        }
    }
}

struct bleed_nets bleed_nets_of(const struct system *system, const struct network *network,
                                const struct bleed_set *set, const struct bleed_wishes *wishes,
                                int most_turns, struct arena *arena)
{
    struct bleed_nets nets = {
        .system = system,
        .network = network,
        .arena = arena,
        .items = ARENA_ARRAY(arena, (size_t)network->circuit_count + 1, struct bleed_net),
        .count = network->circuit_count,
        .most_turns = most_turns,
    };
    const struct touched touched = touched_by(system, network, set, arena);
    for (int c = 0; c < nets.count; c++) {
        struct bleed_net *item = &nets.items[c];
        if (!set->circuit_open[c]) {
            continue;
        }
        item->net = purge_net_of(system, network, c, arena);
        push_pistons_home(item->net, system, &touched);
        item->way = item->other = bleed_way_of(system, network, c, wishes);
        item->other.shut_under_pressure = !item->way.shut_under_pressure;
        let_air_in(item, set, system, network, c);
        item->room = purge_room(item->net, most_turns, false, arena);
        item->kept = purge_room(item->net, most_turns, true, arena);
        item->turns = ARENA_ARRAY(arena, (size_t)most_turns + 1, struct purge_turn);
    }
    return nets;
}

double bleed_net_air(const struct bleed_net *net)
{
    double air = 0;
    for (int i = 0; net->net != NULL && i < net->net->leg_count; i++) {
        air += net->net->legs[i].air;
    }
    for (int i = 0; net->net != NULL && i < net->net->pot_count; i++) {
        air += net->net->pots[i].air;
    }
    return air;
}

int bleed_nets_fellow(const struct bleed_nets *nets, int circuit)
{
    for (int c = 0; c < nets->count; c++) {
        if (c != circuit &&
            nets->network->circuits[c].master == nets->network->circuits[circuit].master) {
            return c;
        }
    }
    return -1;
}

const struct circuit_stroke *bleed_nets_strokes(const struct bleed_nets *nets)
{
    struct circuit_stroke *strokes =
        ARENA_ARRAY(nets->arena, (size_t)nets->count + 1, struct circuit_stroke);
    for (int c = 0; c < nets->count; c++) {
        const struct circuit *circuit = &nets->network->circuits[c];
        bool assumed = false;
        int fellow = bleed_nets_fellow(nets, c);
        double air = fellow >= 0 ? bleed_net_air(&nets->items[fellow]) : 0;
        strokes[c].full = bleed_stroke(nets->system, circuit, &assumed);
        strokes[c].in_air.m3 = NAN;
        if (air > ORDER_AIR_EQUAL) {
            strokes[c].in_air =
                bleed_stroke_beside(nets->system, circuit, (struct volume){air}, &assumed);
        }
        strokes[c].springs_assumed = bleed_springs_assumed(&nets->system->parts[circuit->master]);
    }
    return strokes;
}

int bleed_net_nipple(const struct bleed_net *net, struct nipple nipple)
{
    for (int n = 0; net->net != NULL && n < net->net->nipple_count; n++) {
        struct nipple own = net->net->nipples[n].nipple;
        if (own.part == nipple.part && own.index == nipple.index) {
            return n;
        }
    }
    return -1;
}

static const struct purge_result *run(const struct bleed_nets *nets, int circuit,
                                      const struct nipple *order, int count, bool other, bool curve)
{
    const struct bleed_net *item = &nets->items[circuit];
    int turns = 0;
    for (int i = 0; i < count && turns < nets->most_turns; i++) {
        int nipple = bleed_net_nipple(item, order[i]);
        if (nipple >= 0) {
            item->turns[turns++] = (struct purge_turn){nipple, -1};
        }
    }
    return purge_run(item->net, other ? &item->other : &item->way, item->turns, turns,
                     curve ? item->kept : item->room);
}

const struct purge_result *bleed_nets_run(const struct bleed_nets *nets, int circuit,
                                          const struct nipple *order, int count)
{
    return run(nets, circuit, order, count, false, true);
}

struct order_trial bleed_nets_try(const struct bleed_nets *nets, const bool *take,
                                  const struct nipple *order, int count, bool other)
{
    struct order_trial sum = {0};
    for (int c = 0; c < nets->count; c++) {
        if (nets->items[c].net == NULL || (take != NULL && !take[c])) {
            continue;
        }
        const struct purge_result *result = run(nets, c, order, count, other, false);
        sum.fluid += result->fluid;
        sum.strokes += result->strokes;
        sum.air_left += result->air_left;
        for (int i = 0; i < result->turn_count; i++) {
            sum.gave_up = sum.gave_up || result->turns[i].gave_up;
        }
    }
    return sum;
}

struct order_cost bleed_nets_cost(const struct bleed_nets *nets, const struct nipple *order,
                                  int count)
{
    struct order_trial own = bleed_nets_try(nets, NULL, order, count, false);
    struct order_trial other = bleed_nets_try(nets, NULL, order, count, true);
    struct order_cost cost = {
        .count = count,
        .fluid = {own.fluid},
        .strokes = own.strokes,
        .air_left = {own.air_left},
        .other_fluid = {other.fluid},
        .other_strokes = other.strokes,
        .other_air_left = {other.air_left},
    };
    struct nipple *copy = ARENA_ARRAY(nets->arena, (size_t)count + 1, struct nipple);
    for (int i = 0; i < count; i++) {
        copy[i] = order[i];
    }
    cost.order = copy;
    return cost;
}
