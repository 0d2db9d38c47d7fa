#include "purge/purge_state.h"

#include <math.h>

enum { HALVINGS = 45, BREATH_STEPS = 4 };

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
        free = purge_air_to_clear(net, room, path);
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

static bool on_path(const struct purge_path *path, int pot)
{
    for (int i = 0; i < path->pot_count; i++) {
        if (path->pots[i] == pot)
            return true;
    }
    return false;
}

/* The resistance before the air of a branch is the mean over its air. */
static void add_air(struct purge_branch *branch, double air, double resistance)
{
    branch->air += air;
    branch->side += air * resistance;
}

void purge_close(const struct purge_net *net, struct purge_room *room)
{
    const int way = room->path.leg_count;
    room->branch_count = 0;
    for (int i = 0; i < net->leg_count; i++) {
        const int place = room->joins[i], above = net->legs[i].above;
        room->reach[i] = 0;
        room->branch_of[i] = -1;
        if (place < way && room->path.legs[place] == i)
            continue;
        room->branch_of[i] = above >= 0 ? room->branch_of[above] : -1;
        if (room->branch_of[i] < 0) {
            room->branch_of[i] = room->branch_count;
            room->branches[room->branch_count++] = (struct purge_branch){.joins = place};
        }
        room->reach[i] =
            (above >= 0 ? room->reach[above] : 0) + room->resistance[i] * fluid_share(net, room, i);
        add_air(&room->branches[room->branch_of[i]], room->air[i], room->reach[i]);
    }
    for (int i = 0; i < net->pot_count; i++) {
        const int leg = net->pots[i].leg;
        if (on_path(&room->path, i))
            continue;
        if (room->branch_of[leg] >= 0)
            add_air(&room->branches[room->branch_of[leg]], room->pot_air[i], room->reach[leg]);
        else
            room->branches[room->branch_count++] =
                (struct purge_branch){.joins = room->joins[leg], .air = room->pot_air[i]};
    }
    for (int i = 0; i < room->branch_count; i++) {
        if (room->branches[i].air > 0)
            room->branches[i].side /= room->branches[i].air;
    }
}

/* Adds air behind a stretch of the way; further air at the same place stands behind none. */
static void add_node(struct purge_room *room, int *count, double *before, double air, double side)
{
    if (!(air > 0))
        return;
    room->nodes[(*count)++] = (struct breath_node){.resistance = *before, .side = side, .air = air};
    *before = 0;
}

/* The way up to the fork, with all air that hangs on it; stretches with no air at their far end are
 * taken together with the next. Gives how many nodes there are. */
static int lay_nodes(const struct purge_net *net, struct purge_room *room, struct resistance *out)
{
    const int way = room->with.leg_count > 0 ? room->fork : room->path.leg_count;
    double before = 0, whole = 0;
    int count = 0;
    for (int k = 0; k < way; k++) {
        const bool last = k == way - 1;
        const int leg = room->path.legs[k];
        const double resistance = room->resistance[leg] * fluid_share(net, room, leg);
        double air = room->air[leg];
        before += resistance;
        whole += resistance;
        for (int i = 0; last && i < room->path.pot_count; i++)
            air += room->pot_air[room->path.pots[i]];
        for (int i = way; last && i < room->path.leg_count; i++)
            air += room->air[room->path.legs[i]];
        add_node(room, &count, &before, air, 0);
        for (int i = 0; i < room->branch_count; i++) {
            const struct purge_branch *branch = &room->branches[i];
            if (branch->joins == k || (last && branch->joins > k))
                add_node(room, &count, &before, branch->air, branch->side);
        }
    }
    out->linear = fmax(out->linear - (whole - before), 0);
    return count;
}

double purge_net_stroke(const struct purge_net *net, struct purge_room *room,
                        const struct purge_way *way)
{
    if (way->tee_pressure > 0) {
        const struct volume air = {closed_air(net, room)};
        return fmax(way->stroke - air_compression(air, (struct pressure){way->tee_pressure}).m3, 0);
    }
    struct resistance out = purge_divide(net, room, way->stroke / way->stroke_time, way->stroke);
    if (room->rises)
        purge_close(net, room); /* air may have risen into or out of them */
    const int count = lay_nodes(net, room, &out);
    if (count == 0)
        return way->stroke;
    const struct breath breath =
        purge_breathe(room->nodes, count, out, way->stroke, way->stroke_time, BREATH_STEPS);
    return fmax(breath.out, 0);
}
