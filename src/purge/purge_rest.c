#include "purge/purge_state.h"

#include <math.h>

/* Air and fluid change places where legs and pots meet. */

static double air_at(const struct slugs *slugs, int place)
{
    return slugs->count > 0 && slugs->at[place].air ? slugs->at[place].volume : 0;
}

static double fluid_at(const struct slugs *slugs, int place)
{
    return slugs->count > 0 && !slugs->at[place].air ? slugs->at[place].volume : 0;
}

/* Changes a volume at one end of a leg from one kind to the other. */
static void change_end(struct purge_room *room, int leg, bool far, double volume, bool to_air)
{
    struct slugs *slugs = &room->legs[leg];
    struct slugs off = {.count = 0};
    if (far) {
        slugs_take_far(slugs, volume, &off);
        slugs_add_far(slugs, volume, to_air);
    } else {
        slugs_take_near(slugs, volume, &off);
        slugs_add_near(slugs, volume, to_air);
    }
    slugs_limit(slugs);
    room->air[leg] += to_air ? volume : -volume;
}

static int end_of(const struct slugs *slugs, bool far)
{
    return far ? 0 : slugs->count - 1;
}

/* Lets air go from the end of one leg into the end of another, up to a volume; gives what went. */
static double into_leg(struct purge_room *room, int from, bool from_far, int to, bool to_far,
                       double most)
{
    const struct slugs *a = &room->legs[from], *b = &room->legs[to];
    const double volume =
        fmin(most, fmin(air_at(a, end_of(a, from_far)), fluid_at(b, end_of(b, to_far))));
    if (!(volume > 0))
        return 0;
    change_end(room, from, from_far, volume, false);
    change_end(room, to, to_far, volume, true);
    return volume;
}

static double into_pots(const struct purge_net *net, struct purge_room *room, int leg, double most)
{
    double gone = 0;
    for (int i = 0; i < net->pot_count && most > gone; i++) {
        if (net->pots[i].leg != leg || net->pots[i].behind >= 0)
            continue;
        const double volume =
            fmin(most - gone, fmin(air_at(&room->legs[leg], 0),
                                   fmax(net->pots[i].volume - room->pot_air[i], 0)));
        if (!(volume > 0))
            continue;
        change_end(room, leg, true, volume, false);
        room->pot_air[i] += volume;
        gone += volume;
    }
    return gone;
}

/* Branches that climb from the far end of a leg; not the one that the air comes from. */
static double into_climbing(const struct purge_net *net, struct purge_room *room, int from,
                            bool from_far, int node, double most)
{
    double gone = 0;
    for (int i = node + 1; i < net->leg_count && most > gone; i++) {
        if (net->legs[i].above == node && i != from && net->legs[i].climb > 0 && room->rise[i] > 0)
            gone += into_leg(room, from, from_far, i, false, most - gone);
    }
    return gone;
}

/* From the near end of a leg that falls away: into branches that climb from there, back up the leg
 * above where that falls as well, or out through the master. Gives what left. */
static double up_and_back(const struct purge_net *net, struct purge_room *room, int leg,
                          double most)
{
    const int above = net->legs[leg].above;
    if (above < 0 || net->legs[above].in_master) {
        const struct slugs *slugs = &room->legs[leg];
        const double volume = fmin(most, air_at(slugs, end_of(slugs, false)));
        if (volume > 0)
            change_end(room, leg, false, volume, false);
        return fmax(volume, 0);
    }
    most -= into_climbing(net, room, leg, false, above, most);
    if (most > 0 && net->legs[above].climb < 0 && room->rise[above] > 0)
        into_leg(room, leg, false, above, true, most);
    return 0;
}

double purge_rest(const struct purge_net *net, struct purge_room *room, double time)
{
    double left = 0;
    if (!room->rises)
        return 0;
    for (int i = 0; i < net->leg_count; i++) {
        const double by = room->rise[i] * room->area[i] * time;
        if (!(by > 0) || !(room->air[i] > 0))
            continue;
        slugs_drift(&room->legs[i], 0, 0, net->legs[i].climb > 0 ? by : -by);
        if (net->legs[i].climb < 0) {
            left += up_and_back(net, room, i, by);
            continue;
        }
        const double gone = into_climbing(net, room, i, true, i, by);
        into_pots(net, room, i, by - gone);
    }
    return left;
}
