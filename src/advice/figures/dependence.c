#include "advice/figures/dependence.h"

#include <math.h>
#include <string.h>

#include "advice/figures/trial.h"
#include "base/list.h"

/* Weights below the first tell only beyond some knee; below the second they are of an assumed 0,
 * which tells nothing as long as there is none of it: a spring, air. */
#define BEYOND_A_KNEE 1.0
#define OF_NOTHING    2.0

/* --- what figures rest on ------------------------------------------------------------------- */

/* How much a figure changed, as a part of itself; one that is lost altogether counts as whole. */
static double change(double base, double now)
{
    if (isnan(now))
        return 1;
    double size = fabs(base);
    return size > 0 ? fabs(now - base) / size : 1;
}

/* How hard a value pulls at a figure: the change for a hundredth of the value; where there is no
 * hundredth (a choice, a value of 0) a hundredth of the change that the move made. */
static double pull(const struct moved_key *key, double changed)
{
    return key->key->form == FORM_CHOICE || key->base == 0 ? changed / 100 : changed;
}

static double banded(const struct moved_key *key, double weight, bool near)
{
    if (!near)
        return weight / (1 + weight);
    if (key->base == 0 && key->key->form != FORM_CHOICE)
        return BEYOND_A_KNEE + weight / (1 + weight);
    return OF_NOTHING + weight;
}

/* Moves one key about and notes for each figure how telling it is; below 0: not at all. What tells
 * only beyond a knee comes after all that tells where the car is now, an assumed 0 in between. */
static void tell(struct trial *trial, const struct moved_key *key, double *telling, double *pulls)
{
    struct moves moves = trial_moves_of(&trial->as_said->parts[key->part], key);
    for (int i = 0; i < trial->figures->count; i++)
        telling[i] = -1;
    for (int m = 0; m < moves.count; m++) {
        trial_put(trial, key, moves.to[m]);
        trial_look(trial);
        for (int i = 0; i < trial->figures->count; i++) {
            double base = trial->figures->items[i].value;
            if (isnan(base) || trial->now[i] == base)
                continue;
            bool near = telling[i] >= BEYOND_A_KNEE || m < moves.near;
            double weight = m < moves.usual ? change(base, trial->now[i]) : 0;
            telling[i] = fmax(telling[i], banded(key, weight, near));
            if (m == 0 && moves.near > 0)
                pulls[i] += pull(key, weight);
        }
    }
    trial_restore(trial, key->part);
}

/* The same for what is written, as far as the pull at the figures goes: one small move, or every
 * other word. */
static void tell_given(struct trial *trial, const struct moved_key *key, double *pulls,
                       bool *pulled)
{
    struct moves moves = trial_moves_of(&trial->as_said->parts[key->part], key);
    int most = key->key->form == FORM_CHOICE ? moves.near : moves.near > 0;
    for (int i = 0; i < trial->figures->count; i++)
        pulled[i] = false;
    for (int m = 0; m < most; m++) {
        trial_put(trial, key, moves.to[m]);
        trial_follow_rules(trial, key->part);
        trial_look(trial);
        for (int i = 0; i < trial->figures->count; i++) {
            double base = trial->figures->items[i].value;
            if (isnan(base) || trial->now[i] == base)
                continue;
            if (!pulled[i])
                pulls[i] += pull(key, change(base, trial->now[i]));
            pulled[i] = true;
        }
    }
    trial_restore(trial, key->part);
}

/* Puts into a figure the keys that tell something of it, most telling first. stride: keys told. */
static void cite_assumed(struct figure *figure, const struct moved_keys *keys,
                         const double *telling, size_t stride, struct arena *arena)
{
    int count = 0;
    for (size_t k = 0; k < keys->count; k++)
        count += telling[k * stride] >= 0;
    figure->assumed = ARENA_ARRAY(arena, (size_t)count + 1, struct cited_key);
    double *weights = ARENA_ARRAY(arena, (size_t)count + 1, double);
    for (size_t k = 0; k < keys->count; k++) {
        double weight = telling[k * stride];
        if (weight < 0)
            continue;
        int at = figure->assumed_count++;
        for (; at > 0 && weights[at - 1] < weight; at--) {
            weights[at] = weights[at - 1];
            figure->assumed[at] = figure->assumed[at - 1];
        }
        weights[at] = weight;
        figure->assumed_here += weight >= BEYOND_A_KNEE;
        figure->assumed[at] = (struct cited_key){keys->items[k].part, keys->items[k].key,
                                                 fmax(weight - OF_NOTHING, 0)};
    }
}

static void find_assumed(struct trial *trial, const struct network *network, double *pulls,
                         struct figures *into, struct arena *arena)
{
    struct moved_keys keys = trial_assumed_keys(trial->as_said, network, arena);
    size_t figures = (size_t)into->count;
    double *telling = ARENA_ARRAY(arena, keys.count * figures + 1, double);
    for (size_t k = 0; k < keys.count; k++)
        tell(trial, &keys.items[k], &telling[k * figures], pulls);
    for (size_t i = 0; i < figures; i++)
        cite_assumed(&into->items[i], &keys, telling + i, figures, arena);
}

/* How much of a figure is assumed. */
static void find_shares(struct trial *trial, const double *assumed, struct figures *into,
                        struct arena *arena)
{
    struct moved_keys keys = trial_given_keys(trial->as_said, arena);
    double *given = ARENA_ARRAY(arena, (size_t)into->count + 1, double);
    bool *pulled = ARENA_ARRAY(arena, (size_t)into->count + 1, bool);
    for (size_t k = 0; k < keys.count; k++) {
        tell_given(trial, &keys.items[k], given, pulled);
        for (int i = 0; i < into->count; i++)
            into->items[i].given_here += pulled[i];
    }
    for (int i = 0; i < into->count; i++) {
        double all = given[i] + assumed[i];
        into->items[i].assumed_share = all > 0 ? assumed[i] / all : 0;
    }
}

/* --- what figures lack ---------------------------------------------------------------------- */

/* Whether a figure is being asked about in this round and has lost its value. */
static bool lost(const struct trial *trial, const bool *asked, int figure)
{
    return asked[figure] && isnan(trial->now[figure]);
}

static bool any_lost(const struct trial *trial, const bool *asked)
{
    for (int i = 0; i < trial->figures->count; i++)
        if (lost(trial, asked, i))
            return true;
    return false;
}

static void cite_need(struct figure *figure, const struct moved_key *key, size_t most,
                      struct arena *arena)
{
    if (figure->needs == NULL)
        figure->needs = ARENA_ARRAY(arena, most, struct cited_key);
    figure->needs[figure->needs_count++] = (struct cited_key){key->part, key->key, 0};
}

static void fill_stretch(struct trial *trial, const struct moved_keys *keys, size_t from, size_t to,
                         bool in)
{
    for (size_t k = from; k < to; k++)
        trial_fill(trial, &keys->items[k], in);
}

/* Takes away all that is not needed, the last of the keys first. Most are not, so more and more of
 * them are tried at a time, and fewer where a figure is lost; what goes together would also have
 * gone one by one, for a value that is taken away never gives a figure back. */
static size_t take_unneeded(struct trial *trial, const struct moved_keys *keys, const bool *asked,
                            bool *kept)
{
    size_t kept_count = 0;
    for (size_t end = keys->count, most = 1; end > 0;) {
        size_t length = most < end ? most : end;
        fill_stretch(trial, keys, end - length, end, false);
        trial_look(trial);
        if (!any_lost(trial, asked)) {
            end -= length;
            most = 2 * length;
            continue;
        }
        fill_stretch(trial, keys, end - length, end, true);
        if (length == 1) {
            kept[--end] = true;
            kept_count++;
        }
        most = length > 1 ? length / 2 : 1;
    }
    return kept_count;
}

/* Takes away all that is not needed, then sees which figure needs what of the rest. */
static void take_away(struct trial *trial, const struct moved_keys *keys, const bool *asked,
                      struct figures *figures, struct arena *arena)
{
    bool *kept = ARENA_ARRAY(arena, keys->count + 1, bool);
    size_t most = take_unneeded(trial, keys, asked, kept);
    for (size_t k = 0; k < keys->count; k++) {
        if (!kept[k])
            continue;
        trial_fill(trial, &keys->items[k], false);
        trial_look(trial);
        for (int i = 0; i < trial->figures->count; i++)
            if (lost(trial, asked, i))
                cite_need(&figures->items[i], &keys->items[k], most, arena);
        trial_fill(trial, &keys->items[k], true);
    }
}

static bool is_open(const struct figure *figure)
{
    return isnan(figure->value) && figure->needs_count == 0 && figure->reason == NULL;
}

static void find_needs(struct trial *trial, enum trial_filling filling, struct figures *figures,
                       struct arena *arena)
{
    struct moved_keys keys = trial_missing_keys(trial->as_said, filling, arena);
    bool *asked = ARENA_ARRAY(arena, (size_t)trial->figures->count + 1, bool), any = false;
    for (size_t k = 0; k < keys.count; k++)
        trial_fill(trial, &keys.items[k], true);
    trial_look(trial);
    for (int i = 0; i < trial->figures->count; i++) {
        asked[i] = is_open(&trial->figures->items[i]) && !isnan(trial->now[i]);
        any = any || asked[i];
    }
    if (any)
        take_away(trial, &keys, asked, figures, arena);
    memcpy(trial->moved->parts, trial->as_said->parts,
           (size_t)trial->as_said->part_count * sizeof(struct part));
    trial->moved_since = SOLVES_ALL;
}

static bool any_open(const struct figures *figures)
{
    for (int i = 0; i < figures->count; i++)
        if (is_open(&figures->items[i]))
            return true;
    return false;
}

static void refuse(struct trial *trial, struct figures *figures)
{
    situation_solve(trial->situation);
    for (int i = 0; i < figures->count; i++) {
        struct figure *figure = &figures->items[i];
        if (isnan(figure->value) && figure->row->refuses != NULL)
            figure->reason = figure->row->refuses(trial->situation, figure->subject, figure->sub);
    }
}

void dependence_find(const struct system *system, const struct network *network,
                     struct force effort, struct figures *figures, struct arena *arena)
{
    struct trial trial = trial_start(system, network, effort, figures, arena);
    double *assumed = ARENA_ARRAY(arena, (size_t)figures->count + 1, double);
    find_assumed(&trial, network, assumed, figures, arena);
    find_shares(&trial, assumed, figures, arena);
    refuse(&trial, figures);
    for (int filling = TRIAL_FILL_EXAMPLE; filling < TRIAL_FILL_COUNT && any_open(figures);
         filling++)
        find_needs(&trial, (enum trial_filling)filling, figures, arena);
    for (int i = 0; i < figures->count; i++) {
        struct figure *figure = &figures->items[i];
        if (isnan(figure->value))
            figure->state = FIGURE_NOT_COMPUTED;
        else
            figure->state = figure->assumed_count > 0 ? FIGURE_ASSUMED : FIGURE_COMPUTED;
    }
}
