#include "advice/figures/situation.h"

#include <math.h>

#include "physics/blocked_port.h"
#include "physics/drum_memory.h"
#include "units/constants.h"

struct acceleration figure_half_g(void)
{
    return (struct acceleration){0.5 * STANDARD_GRAVITY};
}

static struct state state_of_case(enum pedal_case of)
{
    struct state state = state_usual();
    switch (of) {
    case PEDAL_NEW:
        state.brakes.linings = LININGS_NEW;
        break;
    case PEDAL_WORN:
        state.brakes.linings = LININGS_WORN;
        break;
    case PEDAL_HOT:
        state.brakes.hot = true;
        break;
    case PEDAL_KNOCKED_BACK:
        state.brakes.knocked_back = true;
        break;
    case PEDAL_WORN_HOSES:
        state.hoses = HOSES_WORN;
        break;
    case PEDAL_CASE_COUNT:
        break;
    }
    return state;
}

struct situation *situation_room(const struct system *system, const struct network *network,
                                 struct force effort, struct arena *arena)
{
    struct situation *situation = ARENA_NEW(arena, struct situation);
    situation->system = system;
    situation->network = network;
    situation->effort = effort;
    situation->usual = solution_room(system, network, arena);
    situation->unassisted = solution_room(system, network, arena);
    situation->slack = solution_room(system, network, arena);
    situation->scratch = solution_room(system, network, arena);
    for (int of = 0; of < PEDAL_CASE_COUNT; of++)
        situation->cases[of] = solution_room(system, network, arena);
    situation->lost = ARENA_ARRAY(arena, (size_t)network->circuit_count + 1, struct solution *);
    situation->port_blocked =
        ARENA_ARRAY(arena, (size_t)network->circuit_count + 1, struct pressure);
    for (int c = 0; c < network->circuit_count; c++)
        if (!network->circuits[c].clutch)
            situation->lost[c] = solution_room(system, network, arena);
    struct solution *others[] = {situation->unassisted, situation->slack, situation->scratch};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++)
        drum_memory_share(others[i], situation->usual);
    for (int of = 0; of < PEDAL_CASE_COUNT; of++)
        drum_memory_share(situation->cases[of], situation->usual);
    for (int c = 0; c < network->circuit_count; c++)
        if (situation->lost[c] != NULL)
            drum_memory_share(situation->lost[c], situation->usual);
    situation->pedals = balance_axle_pedals(system, network);
    for (int axle = 0; axle < GRIP_AXLES && situation->pedals.apart; axle++) {
        situation->alone[axle] = solution_room(system, network, arena);
        drum_memory_share(situation->alone[axle], situation->usual);
    }
    for (int i = 0; i < system->part_count; i++) {
        situation->servo = situation->servo || system->parts[i].kind == KIND_SERVO;
        situation->drums = situation->drums || system->parts[i].kind == KIND_DRUM;
    }
    return situation;
}

static struct state state_of(const struct situation *situation)
{
    struct state state = state_usual();
    state.effort = situation->effort;
    return state;
}

/* The stop of half g is made with the front wheels' own pedal or lever where they have one. */
static struct state state_of_half_g(const struct situation *situation)
{
    struct state state = state_of(situation);
    state.pedal = situation->pedals.apart ? situation->pedals.front : -1;
    return state;
}

void situation_solve_travels(struct situation *situation)
{
    const struct system *system = situation->system;
    const struct network *network = situation->network;
    struct state state = state_of(situation);
    solve(system, network, &state, situation->usual);
    state.no_clutch = true;
    struct state stop = state_of_half_g(situation);
    situation->half_g_fits =
        solve_effort_fits(system, network, &stop, situation->half_g, situation->scratch);
    if (situation->drums) {
        state.brakes.slack = true;
        solve(system, network, &state, situation->slack);
        state.brakes.slack = false;
    }
    for (int of = 0; of < PEDAL_CASE_COUNT; of++) {
        struct state in = state_of_case((enum pedal_case)of);
        in.effort = situation->effort;
        in.no_clutch = true;
        solve(system, network, &in, situation->cases[of]);
    }
    for (int c = 0; c < network->circuit_count; c++) {
        situation->port_blocked[c] =
            blocked_port_pressure(system, network, c, BLOCKED_PORT_RISE, situation->scratch);
        if (situation->lost[c] == NULL)
            continue;
        state.lost_circuit = c;
        solve(system, network, &state, situation->lost[c]);
    }
    if (situation->servo) {
        state.lost_circuit = -1;
        state.assisted = false;
        solve(system, network, &state, situation->unassisted);
        stop.assisted = false;
        situation->half_g_unassisted_fits = solve_effort_fits(
            system, network, &stop, situation->half_g_unassisted, situation->scratch);
    }
}

static struct grip_use grip_use_of_half_g(const struct situation *situation)
{
    struct state state = state_of_half_g(situation);
    state.effort = situation->half_g;
    if (isnan(state.effort.n))
        return (struct grip_use){NAN, NAN, NAN, NAN};
    solve_forces(situation->system, situation->network, &state, situation->scratch);
    struct wheel_forces wheels = wheel_forces_of(situation->system, situation->scratch);
    return grip_use_of_wheels(system_vehicle(situation->system), &wheels);
}

static void find_locks(struct situation *situation)
{
    const struct system *system = situation->system;
    const struct vehicle *vehicle = system_vehicle(system);
    const struct number grips[ROADS] = {vehicle->tyre_grip, vehicle->wet_grip};
    const int pedals[GRIP_AXLES] = {situation->pedals.front, situation->pedals.rear};
    struct state state = state_of(situation);
    for (int road = 0; road < ROADS; road++) {
        struct first_lock *lock = situation->lock[road];
        for (int axle = 0; axle < GRIP_AXLES; axle++) {
            state.pedal = situation->pedals.apart ? pedals[axle] : -1;
            lock[axle] = axle > 0 && !situation->pedals.apart
                             ? lock[0]
                             : balance_first_lock(system, situation->network, &state, grips[road],
                                                  situation->scratch);
        }
    }
    for (int axle = 0; axle < GRIP_AXLES; axle++) {
        state.pedal = pedals[axle];
        if (situation->alone[axle] != NULL)
            solve_forces(system, situation->network, &state, situation->alone[axle]);
    }
}

void situation_solve(struct situation *situation)
{
    const struct system *system = situation->system;
    const struct network *network = situation->network;
    find_locks(situation);
    struct state state = state_of_half_g(situation);
    situation->half_g =
        solve_effort_by_force(system, network, &state, figure_half_g(), situation->scratch);
    situation->grip_use = grip_use_of_half_g(situation);
    if (situation->servo) {
        state.assisted = false;
        situation->half_g_unassisted =
            solve_effort_by_force(system, network, &state, figure_half_g(), situation->scratch);
    }
    situation_solve_travels(situation);
}
