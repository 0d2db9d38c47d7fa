#include "physics/purge_state.h"

#include <math.h>

enum { HALVINGS = 45, BREATH_STEPS = 8 };

static double fluid_share(const struct purge_net *net, const struct purge_room *room, int leg)
{
    return fmax(1 - room->air[leg] / net->legs[leg].volume, 0);
}

/* Share of fluid in what is about to come out of a nipple. */
static double share_out(const struct purge_net *net, const struct purge_room *room,
                        const struct purge_path *path, double portion)
{
    double free = 0;
    if (path->pot_count > 0) {
        const int pot = path->pots[path->pot_count - 1];
        free = room->pot_air[pot] - net->pots[pot].trapped;
    } else {
        const struct slugs *last = &room->legs[path->legs[path->leg_count - 1]];
        free = last->at[0].air ? last->at[0].volume : 0;
    }
    return fmax(fmin(1 - free / portion, 1), 0);
}

struct resistance purge_resistance(const struct purge_net *net, const struct purge_room *room,
                                   const struct purge_path *path, int from, double portion)
{
    const double share = share_out(net, room, path, portion);
    struct resistance sum = {share * room->passage.linear, share * room->passage.square};
    for (int i = from; i < path->leg_count; i++)
        sum.linear += room->resistance[path->legs[i]] * fluid_share(net, room, path->legs[i]);
    return sum;
}

struct resistance purge_divide(const struct purge_net *net, struct purge_room *room, double flow,
                               double portion)
{
    if (room->with.leg_count == 0)
        return purge_resistance(net, room, &room->path, 0, portion);
    const struct resistance a = purge_resistance(net, room, &room->path, room->fork, portion);
    const struct resistance b = purge_resistance(net, room, &room->with, room->fork, portion);
    double low = 0, high = 1;
    for (int i = 0; i < HALVINGS; i++) {
        const double half = low + (high - low) / 2;
        if (flow_cost(a, half * flow) > flow_cost(b, (1 - half) * flow))
            high = half;
        else
            low = half;
    }
    const bool free = !(a.linear + a.square > 0) && !(b.linear + b.square > 0);
    room->path.share = free ? 0.5 : low;
    room->with.share = 1 - room->path.share;
    struct resistance sum = {flow_cost(a, room->path.share * flow) / flow, 0};
    for (int i = 0; i < room->fork; i++)
        sum.linear +=
            room->resistance[room->path.legs[i]] * fluid_share(net, room, room->path.legs[i]);
    return sum;
}

double purge_lost_head(const struct purge_net *net, const struct purge_room *room,
                       const struct purge_path *path)
{
    double lost = 0;
    for (int i = 0; i < path->leg_count; i++) {
        const struct purge_leg *leg = &net->legs[path->legs[i]];
        if (leg->climb < 0)
            lost -= leg->climb * room->air[path->legs[i]] / leg->volume;
    }
    return lost;
}

/* Air of closed branches only, at a pressure that was set. */
static double closed_air(const struct purge_net *net, const struct purge_room *room)
{
    double air = purge_air(net, room);
    for (int i = 0; i < room->path.leg_count; i++)
        air -= room->air[room->path.legs[i]];
    for (int i = room->fork; i < room->with.leg_count; i++)
        air -= room->air[room->with.legs[i]];
    for (int i = 0; i < room->path.pot_count; i++)
        air -= room->pot_air[room->path.pots[i]];
    for (int i = room->fork_pots; i < room->with.pot_count; i++)
        air -= room->pot_air[room->with.pots[i]];
    return fmax(air, 0);
}

/* The way up to the fork, with all air that hangs on it. */
static int lay_nodes(const struct purge_net *net, struct purge_room *room)
{
    const int count = room->with.leg_count > 0 ? room->fork : room->path.leg_count;
    for (int k = 0; k < count; k++) {
        const int leg = room->path.legs[k];
        room->nodes[k].resistance = room->resistance[leg] * fluid_share(net, room, leg);
        room->nodes[k].air = 0;
    }
    for (int i = 0; i < net->leg_count; i++)
        room->nodes[room->joins[i] < count ? room->joins[i] : count - 1].air += room->air[i];
    for (int i = 0; i < net->pot_count; i++) {
        const int joins = room->joins[net->pots[i].leg];
        room->nodes[joins < count ? joins : count - 1].air += room->pot_air[i];
    }
    return count;
}

double purge_net_stroke(const struct purge_net *net, struct purge_room *room,
                        const struct purge_way *way)
{
    if (way->tee_pressure > 0) {
        const struct volume air = {closed_air(net, room)};
        return fmax(way->stroke - air_compression(air, (struct pressure){way->tee_pressure}).m3, 0);
    }
    const int count = lay_nodes(net, room);
    struct resistance out = purge_divide(net, room, way->stroke / way->stroke_time, way->stroke);
    for (int k = 0; k < count; k++)
        out.linear -= room->nodes[k].resistance;
    out.linear = fmax(out.linear, 0);
    const struct breath breath =
        purge_breathe(room->nodes, count, out, way->stroke, way->stroke_time, BREATH_STEPS);
    return fmax(breath.out, 0);
}
