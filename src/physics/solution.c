#include "physics/solution.h"

#include <math.h>
#include <string.h>

#include "physics/clutch_release.h"
#include "physics/drum_memory.h"
#include "physics/press.h"
#include "physics/root.h"
#include "units/constants.h"

#define EFFORT_TOLERANCE 1e-9  /* as a part of the effort */
#define END_TOLERANCE    1e-12 /* the same, where an end is looked for: travel hangs on it */

struct state state_usual(void)
{
    return (struct state){.effort = {NAN}, .assisted = true, .lost_circuit = -1, .pedal = -1};
}

const char *cause_words(enum cause cause)
{
    switch (cause) {
    case CAUSE_CLEARANCE:
        return "clearances";
    case CAUSE_LININGS:
        return "pads, linings and shoes";
    case CAUSE_BODY:
        return "caliper bodies";
    case CAUSE_HOSES:
        return "hoses";
    case CAUSE_FLUID:
        return "fluid";
    case CAUSE_PIPES:
        return "pipes";
    case CAUSE_AIR:
        return "air";
    case CAUSE_SLAVE:
        return "clutch slave";
    case CAUSE_COUNT:
        break;
    }
    return "";
}

struct solution *solution_room(const struct system *system, const struct network *network,
                               struct arena *arena)
{
    size_t parts = (size_t)system->part_count;
    struct solution *room = ARENA_NEW(arena, struct solution);
    room->pressures = ARENA_ARRAY(arena, (size_t)network->vertex_count + 1, struct pressure);
    room->circuits = ARENA_ARRAY(arena, (size_t)network->circuit_count + 1, struct circuit_state);
    room->pedals = ARENA_ARRAY(arena, parts + 1, struct pedal_state);
    room->brakes = ARENA_ARRAY(arena, parts + 1, struct brake_state);
    room->clutches = ARENA_ARRAY(arena, parts + 1, struct clutch_state);
    room->drums = ARENA_ARRAY(arena, parts + 1, struct drum_memory);
    room->brake_pedals = ARENA_ARRAY(arena, parts + 1, int);
    room->brakes_at = ARENA_ARRAY(arena, parts + 1, int);
    for (int i = 0; i < system->part_count; i++) {
        if (press_is_brake(system, network, i))
            room->brake_pedals[room->brake_pedal_count++] = i;
        if (kind_is_brake(system->parts[i].kind))
            room->brakes_at[room->brake_count++] = i;
    }
    return room;
}

static const struct pedal_state no_pedal = {{NAN}, {NAN}, {NAN}, {NAN}, {NAN}, false, false, {NAN}};
static const struct brake_state no_brake = {{{NAN}, {NAN}}, {NAN}, {NAN}, {NAN}, {NAN}};
static const struct clutch_state no_clutch = {-1,    -1,    {NAN}, {NAN}, {NAN}, {NAN},
                                              {NAN}, {NAN}, {NAN}, {NAN}, {NAN}};

static void forget(const struct system *system, const struct network *network,
                   struct solution *into)
{
    for (int i = 0; i < network->vertex_count; i++)
        into->pressures[i] = (struct pressure){NAN};
    for (int i = 0; i < network->circuit_count; i++) {
        into->circuits[i].pressure = (struct pressure){NAN};
        into->circuits[i].volume = (struct volume){NAN};
        into->circuits[i].stroke = (struct length){NAN};
        into->circuits[i].rod_cut_off = into->circuits[i].rod_lost = (struct length){NAN};
        for (int cause = 0; cause < CAUSE_COUNT; cause++) {
            into->circuits[i].by_cause[cause] = (struct volume){NAN};
            into->circuits[i].rod_by_cause[cause] = (struct length){NAN};
        }
    }
    for (int i = 0; i < system->part_count; i++) {
        into->pedals[i] = no_pedal;
        into->brakes[i] = no_brake;
        into->clutches[i] = no_clutch;
    }
    into->converged = true;
}

/* A pedal being pressed, for the search of the floor. */
struct pressing {
    const struct system *system;
    const struct network *network;
    const struct state *state;
    int pedal;
    struct solution *into;
    struct reach last_that_failed;
};

static double reach_excess(double effort, void *context)
{
    struct pressing *pressing = context;
    struct reach reach = press_travel(pressing->system, pressing->network, pressing->state,
                                      pressing->pedal, (struct force){effort}, pressing->into);
    double excess = fmax(reach.past_floor.m, reach.past_bore.m); /* passes over what is not known */
    if (excess > 0)
        pressing->last_that_failed = reach;
    return isnan(excess) ? -1 : excess;
}

static struct pedal_state pedal_reached(struct force effort, const struct reach *reach)
{
    struct pedal_state pedal = no_pedal;
    pedal.effort = effort;
    pedal.rod = reach->rod;
    pedal.rod_travel = reach->rod_travel;
    pedal.travel = reach->travel;
    pedal.left.m = -reach->past_floor.m;
    pedal.bar_tilt = reach->tilt;
    return pedal;
}

/* The pedal at the greatest effort that fits above the floor and within the bores. */
static struct pedal_state pedal_at_its_end(struct pressing *pressing, double effort)
{
    const struct pedal *data = &pressing->system->parts[pressing->pedal].as.pedal;
    struct root root = root_between(reach_excess, pressing, 0, effort, END_TOLERANCE * effort);
    double fits = root.bracketed ? root.fits : 0;
    if (root.bracketed && !root.converged)
        pressing->into->converged = false;
    struct reach failed = pressing->last_that_failed;
    struct reach reach = press_travel(pressing->system, pressing->network, pressing->state,
                                      pressing->pedal, (struct force){fits}, pressing->into);
    struct pedal_state pedal = pedal_reached((struct force){fits}, &reach);
    /* Both may be passed where a servo jumps: the floor counts when it would be met first. */
    double past_bore = fmax(failed.past_bore.m, 0) * pedal_ratio(data).value;
    pedal.on_floor =
        reach.past_floor.m > 0 || (failed.past_floor.m > 0 && !(past_bore > failed.past_floor.m));
    pedal.bottomed = failed.past_bore.m > 0;
    pedal.left.m = 0;
    if (pedal.on_floor) {
        /* At no effort at all it may already be too far: it rests on the floor then. */
        pedal.travel = pedal_end(data);
        pedal.rod_travel.m =
            (pedal.travel.m - press_free_play(data).m - fits / data->stiffness.n_m) /
            pedal_ratio(data).value;
    }
    return pedal;
}

static struct force effort_on(const struct system *system, const struct state *state, int pedal)
{
    if (state->pedal >= 0 && state->pedal != pedal)
        return (struct force){0};
    return isnan(state->effort.n) ? system->parts[pedal].as.pedal.effort : state->effort;
}

static struct pedal_state pedal_pressed(struct pressing *pressing)
{
    const struct pedal *data = &pressing->system->parts[pressing->pedal].as.pedal;
    const struct state *state = pressing->state;
    struct force effort = effort_on(pressing->system, state, pressing->pedal);
    struct reach reach = press_travel(pressing->system, pressing->network, state, pressing->pedal,
                                      effort, pressing->into);
    bool too_far = reach.past_floor.m > 0 || reach.past_bore.m > 0;
    if (too_far && !state->no_floor && effort.n > 0) {
        pressing->last_that_failed = reach;
        return pedal_at_its_end(pressing, effort.n);
    }
    struct pedal_state pedal = pedal_reached(effort, &reach);
    if (reach.dead && !state->no_floor) {
        pedal.bottomed = true;
        pedal.left.m = isnan(pedal_end(data).m) ? NAN : 0;
    }
    return pedal;
}

struct length solution_tyre_radius(const struct vehicle *vehicle, enum axle axle)
{
    double radius = NAN;
    if (axle == AXLE_FRONT)
        radius = vehicle->front_tyre.m;
    else if (axle == AXLE_REAR)
        radius = vehicle->rear_tyre.m;
    return (struct length){radius > 0 ? radius : NAN};
}

static struct brake_state brake_pressed(const struct system *system, const struct network *network,
                                        struct solution *into, int brake)
{
    const struct part *part = &system->parts[brake];
    struct brake_state state = no_brake;
    for (int inlet = 0; inlet < 2; inlet++) {
        int vertex = inlet < part_chambers(part) ? network_vertex(network, brake, inlet) : -1;
        if (vertex >= 0)
            state.pressure[inlet] = into->pressures[vertex];
    }
    if (part->kind == KIND_DISC) {
        state.clamp = disc_clamp(&part->as.disc, state.pressure);
        state.torque = disc_torque(&part->as.disc, state.pressure);
        state.torque_reverse = state.torque;
    } else {
        const struct drum *drum = &part->as.drum;
        const struct drum_memory *factors = drum_remembered(system, brake, into);
        state.torque = drum_torque_by_factor(drum, state.pressure[0], factors->forward);
        state.torque_reverse = drum_torque_by_factor(drum, state.pressure[0], factors->reverse);
    }
    state.force.n = state.torque.nm / solution_tyre_radius(system_vehicle(system), part->axle).m;
    return state;
}

static void sum_brakes(const struct system *system, const struct network *network,
                       struct solution *into)
{
    double front = 0, rear = 0;
    for (int b = 0; b < into->brake_count; b++) {
        int i = into->brakes_at[b];
        into->brakes[i] = brake_pressed(system, network, into, i);
        if (system->parts[i].axle == AXLE_FRONT)
            front += into->brakes[i].force.n;
        else /* without an axle the force is NaN, and the car's is too */
            rear += into->brakes[i].force.n;
    }
    const struct vehicle *vehicle = system_vehicle(system);
    double mass = vehicle->mass.kg, rolling = vehicle->rolling.value * STANDARD_GRAVITY;
    double turning = 1 + vehicle->rotating.of_1;
    into->front = (struct force){front};
    into->rear = (struct force){rear};
    into->deceleration.m_s2 = mass > 0 ? ((front + rear) / mass + rolling) / turning : NAN;
}

void solve(const struct system *system, const struct network *network, const struct state *state,
           struct solution *into)
{
    forget(system, network, into);
    for (int i = 0; i < system->part_count; i++) {
        if (press_is_brake(system, network, i)) {
            struct pressing pressing = {
                .system = system, .network = network, .state = state, .pedal = i, .into = into};
            into->pedals[i] = pedal_pressed(&pressing);
        } else if (system->parts[i].kind == KIND_SLAVE && !state->no_clutch) {
            into->clutches[i] = clutch_release(system, network, i, into);
        }
    }
    sum_brakes(system, network, into);
}

void solve_forces(const struct system *system, const struct network *network,
                  const struct state *state, struct solution *into)
{
    for (int i = 0; i < network->vertex_count; i++)
        into->pressures[i] = (struct pressure){NAN};
    for (int p = 0; p < into->brake_pedal_count; p++) {
        int i = into->brake_pedals[p];
        struct force effort = effort_on(system, state, i);
        into->pedals[i] = no_pedal;
        into->pedals[i].effort = effort;
        into->pedals[i].rod = press_pressures(system, network, state, i, effort, into);
    }
    sum_brakes(system, network, into);
}

/* A deceleration being asked for. */
struct asking {
    const struct system *system;
    const struct network *network;
    struct state state;
    double wanted;
    struct solution *room;
};

static double deceleration_excess(double effort, void *context)
{
    struct asking *asking = context;
    asking->state.effort.n = effort;
    solve_forces(asking->system, asking->network, &asking->state, asking->room);
    return asking->room->deceleration.m_s2 - asking->wanted;
}

struct force solve_effort_by_force(const struct system *system, const struct network *network,
                                   const struct state *state, struct acceleration wanted,
                                   struct solution *room)
{
    struct asking asking = {system, network, *state, wanted.m_s2, room};
    struct root root =
        root_between(deceleration_excess, &asking, 0, MOST_EFFORT, EFFORT_TOLERANCE * MOST_EFFORT);
    return (struct force){root.bracketed && root.converged ? root.fails : NAN};
}

bool solve_effort_fits(const struct system *system, const struct network *network,
                       const struct state *state, struct force effort, struct solution *room)
{
    struct state pressed = *state;
    pressed.effort = effort;
    for (int p = 0; p < room->brake_pedal_count; p++) {
        int pedal = room->brake_pedals[p];
        struct reach reach = press_travel(system, network, &pressed, pedal,
                                          effort_on(system, &pressed, pedal), room);
        if (reach.past_floor.m > 0 || reach.past_bore.m > 0)
            return false;
    }
    return true;
}
