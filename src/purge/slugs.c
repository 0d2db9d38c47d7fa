#include "purge/slugs.h"

#include <assert.h>
#include <math.h>
#include <string.h>

/* Less than the last digit of a pipe's volume. */
#define ROUNDING 1e-21

static void remove_at(struct slugs *slugs, int place, int how_many)
{
    slugs->count -= how_many;
    memmove(&slugs->at[place], &slugs->at[place + how_many],
            (size_t)(slugs->count - place) * sizeof slugs->at[0]);
}

void slugs_add_near(struct slugs *slugs, double volume, bool air)
{
    if (!(volume > 0))
        return;
    if (slugs->count > 0 && slugs->at[slugs->count - 1].air == air) {
        slugs->at[slugs->count - 1].volume += volume;
        return;
    }
    assert(slugs->count < SLUG_ROOM);
    slugs->at[slugs->count++] = (struct slug){volume, air};
}

void slugs_add_far(struct slugs *slugs, double volume, bool air)
{
    if (!(volume > 0))
        return;
    if (slugs->count > 0 && slugs->at[0].air == air) {
        slugs->at[0].volume += volume;
        return;
    }
    assert(slugs->count < SLUG_ROOM);
    memmove(&slugs->at[1], &slugs->at[0], (size_t)slugs->count * sizeof slugs->at[0]);
    slugs->at[0] = (struct slug){volume, air};
    slugs->count++;
}

void slugs_take_far(struct slugs *slugs, double volume, struct slugs *list)
{
    int whole = 0;
    for (; whole < slugs->count && volume > ROUNDING; whole++) {
        struct slug *slug = &slugs->at[whole];
        if (slug->volume > volume) {
            slug->volume -= volume;
            slugs_add_near(list, volume, slug->air);
            break;
        }
        slugs_add_near(list, slug->volume, slug->air);
        volume -= slug->volume;
    }
    if (whole > 0)
        remove_at(slugs, 0, whole);
}

void slugs_take_near(struct slugs *slugs, double volume, struct slugs *list)
{
    while (slugs->count > 0 && volume > ROUNDING) {
        struct slug *slug = &slugs->at[slugs->count - 1];
        if (slug->volume > volume) {
            slug->volume -= volume;
            slugs_add_near(list, volume, slug->air);
            return;
        }
        slugs_add_near(list, slug->volume, slug->air);
        volume -= slug->volume;
        slugs->count--;
    }
}

void slugs_turn(struct slugs *slugs)
{
    for (int i = 0, j = slugs->count - 1; i < j; i++, j--) {
        const struct slug kept = slugs->at[i];
        slugs->at[i] = slugs->at[j];
        slugs->at[j] = kept;
    }
}

/* The piece before i has nothing left: i joins the one before it, if there is one. Gives the place
 * of the piece that i became. */
static int close_gap(struct slugs *slugs, int i)
{
    if (i < 2) {
        remove_at(slugs, i - 1, 1);
        return i - 1;
    }
    slugs->at[i - 2].volume += slugs->at[i].volume;
    remove_at(slugs, i - 1, 2);
    return i - 2;
}

static void drift_far(struct slugs *slugs, double moved, double share, double rise)
{
    double behind = slugs_volume(slugs);
    for (int i = 0; i < slugs->count; i++) {
        behind -= slugs->at[i].volume;
        if (!slugs->at[i].air || i == 0)
            continue;
        const double by = share * fmax(fmin(moved, behind), 0) + rise;
        const double changed = fmin(by, slugs->at[i - 1].volume);
        if (!(changed > 0))
            continue;
        if (i + 1 < slugs->count)
            slugs->at[i + 1].volume += changed;
        else
            slugs_add_near(slugs, changed, false);
        behind += changed;
        slugs->at[i - 1].volume -= changed;
        if (!(slugs->at[i - 1].volume > 0))
            i = close_gap(slugs, i);
    }
}

void slugs_drift(struct slugs *slugs, double moved, double share, double rise)
{
    if (slugs->count < 2)
        return;
    /* the two may work against each other: first along the flow, then back */
    if (share > 0 && moved > 0)
        drift_far(slugs, moved, share, fmax(rise, 0));
    else if (rise > 0)
        drift_far(slugs, 0, 0, rise);
    if (rise < 0 || moved < 0) {
        slugs_turn(slugs);
        drift_far(slugs, -moved, moved < 0 ? share : 0, fmax(-rise, 0));
        slugs_turn(slugs);
    }
    slugs_limit(slugs);
}

static int smallest_inside(const struct slugs *slugs)
{
    int smallest = 1;
    for (int i = 2; i + 1 < slugs->count; i++) {
        if (slugs->at[i].volume < slugs->at[smallest].volume)
            smallest = i;
    }
    return smallest;
}

void slugs_limit(struct slugs *slugs)
{
    while (slugs->count > MOST_SLUGS) {
        const int i = smallest_inside(slugs);
        /* its neighbours become one; it joins the nearest of its own kind */
        const int own = i >= 2 ? i - 2 : i + 2;
        slugs->at[own].volume += slugs->at[i].volume;
        slugs->at[i - 1].volume += slugs->at[i + 1].volume;
        remove_at(slugs, i, 2);
    }
}

double slugs_air(const struct slugs *slugs)
{
    double air = 0;
    for (int i = 0; i < slugs->count; i++) {
        if (slugs->at[i].air)
            air += slugs->at[i].volume;
    }
    return air;
}

double slugs_volume(const struct slugs *slugs)
{
    double volume = 0;
    for (int i = 0; i < slugs->count; i++)
        volume += slugs->at[i].volume;
    return volume;
}
