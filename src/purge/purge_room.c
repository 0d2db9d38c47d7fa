#include "purge/purge.h"

#include <math.h>

#include "parts/bubble.h"
#include "purge/purge_state.h"
#include "units/constants.h"

enum { MOST_POINTS = 4096 };

/* Legs that lean less than this drive a bubble in proportion only; steeper ones as if upright,
 * which is slow rather than fast: leaning speeds it up. Our own. */
#define FULL_SLOPE 0.1

/* Below this speed waiting clears nothing in a day. */
#define NO_RISE 1e-6

static struct purge_path new_path(const struct purge_net *net, struct arena *arena)
{
    return (struct purge_path){
        .legs = ARENA_ARRAY(arena, (size_t)net->leg_count, int),
        .pots = ARENA_ARRAY(arena, (size_t)net->pot_count, int),
    };
}

static double rise_along(const struct purge_net *net, const struct purge_leg *leg)
{
    const struct bubble_fluid fluid = {net->density, net->viscosity, net->tension};
    const double slope = fmin(fabs(leg->climb) / leg->length / FULL_SLOPE, 1);
    const double speed = bubble_rise(&fluid, leg->bore) * slope;
    return speed > NO_RISE ? speed : 0;
}

static void lay_legs(const struct purge_net *net, struct purge_room *room)
{
    for (int i = 0; i < net->leg_count; i++) {
        const struct purge_leg *leg = &net->legs[i];
        room->area[i] = leg->volume / leg->length;
        room->resistance[i] = flow_pipe(net->density, net->viscosity, leg->length, leg->bore);
        room->rise[i] = rise_along(net, leg);
        room->rises |= room->rise[i] > 0;
    }
}

static bool is_shut_off(const struct purge_net *net, int leg)
{
    for (; leg >= 0; leg = net->legs[leg].above) {
        if (net->legs[leg].shut)
            return true;
    }
    return false;
}

static void find_exits(const struct purge_net *net, struct purge_room *room)
{
    for (int i = 0; i < net->nipple_count; i++) {
        if (is_shut_off(net, net->nipples[i].leg))
            continue;
        for (int leg = net->nipples[i].leg; leg >= 0; leg = net->legs[leg].above)
            room->has_exit[leg] = true;
        for (int pot = net->nipples[i].pot; pot >= 0; pot = purge_clears_too(net, pot))
            room->pot_has_exit[pot] = true;
    }
}

struct purge_room *purge_room(const struct purge_net *net, int most_turns, bool curve,
                              struct arena *arena)
{
    struct purge_room *room = ARENA_NEW(arena, struct purge_room);
    const size_t legs = (size_t)net->leg_count, pots = (size_t)net->pot_count;
    const struct passage passage = passage_usual();
    room->most_turns = most_turns;
    room->most_points = curve ? MOST_POINTS : 0;
    room->legs = ARENA_ARRAY(arena, legs, struct slugs);
    room->pot_air = ARENA_ARRAY(arena, pots, double);
    room->air = ARENA_ARRAY(arena, legs, double);
    room->area = ARENA_ARRAY(arena, legs, double);
    room->resistance = ARENA_ARRAY(arena, legs, double);
    room->rise = ARENA_ARRAY(arena, legs, double);
    room->film = ARENA_ARRAY(arena, legs, double);
    room->has_exit = ARENA_ARRAY(arena, legs, bool);
    room->pot_has_exit = ARENA_ARRAY(arena, pots, bool);
    room->joins = ARENA_ARRAY(arena, legs, int);
    room->nodes = ARENA_ARRAY(arena, 2 * legs + pots, struct breath_node);
    room->branches = ARENA_ARRAY(arena, legs + pots, struct purge_branch);
    room->branch_of = ARENA_ARRAY(arena, legs, int);
    room->reach = ARENA_ARRAY(arena, legs, double);
    room->path = new_path(net, arena);
    room->with = new_path(net, arena);
    room->passage = flow_passage(net->density, net->viscosity, &passage);
    room->result.turns = ARENA_ARRAY(arena, (size_t)most_turns, struct purge_done);
    room->result.air_in_legs = ARENA_ARRAY(arena, legs, double);
    room->result.air_in_pots = ARENA_ARRAY(arena, pots, double);
    if (curve)
        room->result.curve = ARENA_ARRAY(arena, MOST_POINTS, struct purge_point);
    lay_legs(net, room);
    find_exits(net, room);
    return room;
}

void purge_fill(const struct purge_net *net, struct purge_room *room)
{
    for (int i = 0; i < net->leg_count; i++) {
        const struct purge_leg *leg = &net->legs[i];
        const double air = fmax(fmin(leg->air, leg->volume), 0);
        room->legs[i].count = 0;
        slugs_add_near(&room->legs[i], air, true);
        slugs_add_near(&room->legs[i], leg->volume - air, false);
        room->air[i] = air;
    }
    for (int i = 0; i < net->pot_count; i++)
        room->pot_air[i] = fmax(fmin(net->pots[i].air, net->pots[i].volume), 0);
}

double purge_air(const struct purge_net *net, const struct purge_room *room)
{
    double air = 0;
    for (int i = 0; i < net->leg_count; i++)
        air += room->air[i];
    for (int i = 0; i < net->pot_count; i++)
        air += room->pot_air[i];
    return air;
}

double purge_trapped(const struct purge_net *net, const struct purge_room *room)
{
    double air = 0;
    for (int i = 0; i < net->leg_count; i++) {
        if (!room->has_exit[i])
            air += room->air[i];
    }
    for (int i = 0; i < net->pot_count; i++)
        air +=
            room->pot_has_exit[i] ? fmin(room->pot_air[i], net->pots[i].trapped) : room->pot_air[i];
    return air;
}

double purge_air_to_clear(const struct purge_net *net, const struct purge_room *room,
                          const struct purge_path *path)
{
    double air = 0;
    int pot = path->pot_count > 0 ? path->pots[path->pot_count - 1] : -1;
    for (; pot >= 0; pot = purge_clears_too(net, pot))
        air += fmax(room->pot_air[pot] - net->pots[pot].trapped, 0);
    return air;
}

double purge_air_on(const struct purge_net *net, const struct purge_room *room,
                    const struct purge_path *path)
{
    double air = 0;
    for (int i = 0; i < path->leg_count; i++)
        air += room->air[path->legs[i]];
    return air + purge_air_to_clear(net, room, path);
}

static void turn_round(int *list, int count)
{
    for (int i = 0, j = count - 1; i < j; i++, j--) {
        const int kept = list[i];
        list[i] = list[j];
        list[j] = kept;
    }
}

static void lay_path(const struct purge_net *net, int nipple, struct purge_path *path)
{
    const struct purge_nipple *open = &net->nipples[nipple];
    path->leg_count = path->pot_count = 0;
    for (int leg = open->leg; leg >= 0; leg = net->legs[leg].above)
        path->legs[path->leg_count++] = leg;
    for (int pot = open->pot; pot >= 0; pot = net->pots[pot].behind)
        path->pots[path->pot_count++] = pot;
    turn_round(path->legs, path->leg_count);
    turn_round(path->pots, path->pot_count);
    path->share = 1;
}

/* On the way: its own place. Off it: the place of the leg that its branch hangs on. Parents come
 * before their children. */
static void find_joins(const struct purge_net *net, struct purge_room *room)
{
    for (int i = 0, place = 0; i < net->leg_count; i++) {
        if (place < room->path.leg_count && room->path.legs[place] == i)
            room->joins[i] = place++;
        else
            room->joins[i] = net->legs[i].above >= 0 ? room->joins[net->legs[i].above] : 0;
    }
}

static void find_fork(struct purge_room *room)
{
    const struct purge_path *a = &room->path, *b = &room->with;
    room->fork = room->fork_pots = 0;
    while (room->fork < a->leg_count && room->fork < b->leg_count &&
           a->legs[room->fork] == b->legs[room->fork])
        room->fork++;
    while (room->fork_pots < a->pot_count && room->fork_pots < b->pot_count &&
           a->pots[room->fork_pots] == b->pots[room->fork_pots])
        room->fork_pots++;
}

void purge_open(const struct purge_net *net, const struct purge_turn *turn, struct purge_room *room)
{
    lay_path(net, turn->nipple, &room->path);
    room->with.leg_count = room->with.pot_count = 0;
    room->with.share = 0;
    if (turn->with >= 0 && turn->with != turn->nipple)
        lay_path(net, turn->with, &room->with);
    find_fork(room);
    find_joins(net, room);
    purge_close(net, room);
}
