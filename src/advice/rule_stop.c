#include "advice/rule_stop.h"

#include "physics/solution.h"

struct acceleration rule_stop(const struct system *system, const struct network *network,
                              bool assisted, int lost, struct arena *arena)
{
    struct solution *room = solution_room(system, network, arena);
    struct state state = state_usual();
    state.effort.n = RULE_EFFORT;
    state.assisted = assisted;
    state.lost_circuit = lost;
    solve(system, network, &state, room);
    return room->deceleration;
}
