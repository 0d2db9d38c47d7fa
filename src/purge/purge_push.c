#include "purge/purge_state.h"

#include <math.h>

#include "parts/bubble.h"

/* m/(1 - m): how far air runs ahead of the fluid, over what the fluid moves. */
static double film_lead(const struct purge_net *net, const struct purge_room *room, int leg,
                        double flow)
{
    const double speed = flow / room->area[leg];
    const double capillary = net->density * net->viscosity * speed / net->tension;
    const double lead = bubble_carried(capillary) - 1;
    return lead > 0 ? lead : 0;
}

static void through_leg(const struct purge_net *net, struct purge_room *room, int leg,
                        double volume, double time, struct slugs *list)
{
    struct slugs *slugs = &room->legs[leg];
    for (int i = 0; i < list->count; i++)
        slugs_add_near(slugs, list->at[i].volume, list->at[i].air);
    list->count = 0;
    slugs_take_far(slugs, volume, list);
    slugs_limit(list);
    if (slugs->count > 1)
        slugs_drift(slugs, volume, film_lead(net, room, leg, volume / time), 0);
    slugs_limit(slugs);
    room->air[leg] = slugs_air(slugs);
}

static void back_through_leg(const struct purge_net *net, struct purge_room *room, int leg,
                             double volume, double time, struct slugs *list)
{
    struct slugs *slugs = &room->legs[leg];
    for (int i = 0; i < list->count; i++)
        slugs_add_far(slugs, list->at[i].volume, list->at[i].air);
    list->count = 0;
    slugs_take_near(slugs, volume, list);
    slugs_limit(list);
    if (slugs->count > 1)
        slugs_drift(slugs, -volume, film_lead(net, room, leg, volume / time), 0);
    slugs_limit(slugs);
    room->air[leg] = slugs_air(slugs);
}

/* A pot with a nipple of its own, on the way to one behind: fluid leaves first. */
static void under_air(const struct purge_net *net, struct purge_room *room, int pot,
                      struct slugs *list)
{
    struct slugs out = {.count = 0};
    for (int i = 0; i < list->count; i++) {
        const double volume = list->at[i].volume;
        double fluid = volume;
        if (list->at[i].air) {
            fluid = fmin(volume, fmax(net->pots[pot].volume - room->pot_air[pot], 0));
            room->pot_air[pot] += fluid;
        }
        slugs_add_near(&out, fluid, false);
        slugs_add_near(&out, volume - fluid, true);
    }
    *list = out;
}

/* A pot with air at the height of its opening: that leaves first, down to what is trapped. */
static void out_of_pot(const struct purge_net *net, struct purge_room *room, int pot,
                       struct slugs *list)
{
    struct slugs out = {.count = 0};
    double *air = &room->pot_air[pot];
    for (int i = 0; i < list->count; i++) {
        const double volume = list->at[i].volume;
        if (list->at[i].air) {
            /* what comes in rises to the top; what cannot stay there leaves */
            const double kept = fmin(volume, fmax(net->pots[pot].trapped - *air, 0));
            *air += kept;
            slugs_add_near(&out, kept, false);
            slugs_add_near(&out, volume - kept, true);
            continue;
        }
        const double leaves = fmin(volume, fmax(*air - net->pots[pot].trapped, 0));
        *air -= leaves;
        slugs_add_near(&out, leaves, true);
        slugs_add_near(&out, volume - leaves, false);
    }
    *list = out;
}

/* A pot on the way to one behind. */
static void past_pot(const struct purge_net *net, struct purge_room *room, int pot,
                     struct slugs *list)
{
    if (net->pots[pot].open_above)
        out_of_pot(net, room, pot, list);
    else
        under_air(net, room, pot, list);
}

static void count_out(const struct slugs *list, struct purge_fate *fate)
{
    for (int i = 0; i < list->count; i++) {
        if (list->at[i].air)
            fate->air += list->at[i].volume;
        else
            fate->fluid += list->at[i].volume;
    }
}

static void down_path(const struct purge_net *net, struct purge_room *room,
                      const struct purge_path *path, int from_leg, int from_pot, double volume,
                      double time, struct slugs *list, struct purge_fate *fate)
{
    for (int i = from_leg; i < path->leg_count; i++)
        through_leg(net, room, path->legs[i], volume, time, list);
    for (int i = from_pot; i + 1 < path->pot_count; i++)
        past_pot(net, room, path->pots[i], list);
    if (path->pot_count > 0)
        out_of_pot(net, room, path->pots[path->pot_count - 1], list);
    count_out(list, fate);
}

/* Takes a share of each piece off a list. */
static struct slugs split_off(struct slugs *list, double share)
{
    struct slugs off = {.count = 0};
    for (int i = 0; i < list->count; i++) {
        const double part = share * list->at[i].volume;
        slugs_add_near(&off, part, list->at[i].air);
        list->at[i].volume -= part;
    }
    return off;
}

/* Pots that both ways pass before they part. */
static int common_pots(const struct purge_room *room)
{
    const bool ends = room->fork_pots > 0 && (room->path.pot_count == room->fork_pots ||
                                              room->with.pot_count == room->fork_pots);
    return ends ? room->fork_pots - 1 : room->fork_pots;
}

struct purge_fate purge_push(const struct purge_net *net, struct purge_room *room, double volume,
                             double time)
{
    struct purge_fate fate = {0};
    struct slugs list = {.count = 0};
    slugs_add_near(&list, volume, false);
    if (room->with.leg_count == 0) {
        down_path(net, room, &room->path, 0, 0, volume, time, &list, &fate);
        return fate;
    }
    for (int i = 0; i < room->fork; i++)
        through_leg(net, room, room->path.legs[i], volume, time, &list);
    const int pots = common_pots(room);
    for (int i = 0; i < pots; i++)
        past_pot(net, room, room->path.pots[i], &list);
    const double other = volume * room->with.share;
    struct slugs off = split_off(&list, room->with.share);
    down_path(net, room, &room->path, room->fork, pots, volume - other, time, &list, &fate);
    down_path(net, room, &room->with, room->fork, pots, other, time, &off, &fate);
    return fate;
}

struct purge_fate purge_push_back(const struct purge_net *net, struct purge_room *room,
                                  double volume, double time)
{
    struct purge_fate fate = {0};
    struct slugs list = {.count = 0};
    const struct purge_path *path = &room->path;
    slugs_add_near(&list, volume, false);
    /* the chamber's inlet is taken to lie as high as its nipple */
    if (path->pot_count > 0)
        out_of_pot(net, room, path->pots[path->pot_count - 1], &list);
    for (int i = path->pot_count - 2; i >= 0; i--)
        past_pot(net, room, path->pots[i], &list);
    for (int i = path->leg_count - 1; i >= 0; i--)
        back_through_leg(net, room, path->legs[i], volume, time, &list);
    count_out(&list, &fate);
    return fate;
}
