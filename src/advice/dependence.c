#include "advice/dependence.h"

#include <math.h>
#include <string.h>

#include "base/list.h"
#include "parts/key.h"
#include "units/unit.h"

enum { MOST_MOVES = 16 };
/* Weights from here on tell where the car is now; below it, only beyond some knee. */
#define BEYOND_A_KNEE 1.0

/* A car whose values are moved, and the figures watched while they move. */
struct trial {
    const struct system *as_said;
    struct system *moved;
    struct situation *situation;
    struct figures *figures;
    double *now;       /* by figure */
    bool forces_moved; /* since it was solved last, in a part that makes force */
};

/* A key of a part in the trial. */
struct moved_key {
    int part;
    const struct key *key;
    double base; /* what it is, or what is put in for it */
};
struct moved_keys {
    struct moved_key *items;
    size_t count;
    size_t capacity;
};

/* Whether pressures and brake forces can rest on a part's data at all; physics/press.c and the laws
 * of the brakes look at no others. */
static bool makes_force(enum part_kind kind)
{
    switch (kind) {
    case KIND_VEHICLE:
    case KIND_PEDAL:
    case KIND_SERVO:
    case KIND_MASTER:
    case KIND_VALVE:
    case KIND_DISC:
    case KIND_DRUM:
        return true;
    case KIND_FLUID:
    case KIND_RESERVOIR:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_JOINT:
    case KIND_SLAVE:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return false;
}

/* Solves again after values were moved, and reads all figures. */
static void look(struct trial *trial)
{
    if (trial->forces_moved)
        situation_solve(trial->situation);
    else
        situation_solve_travels(trial->situation);
    trial->forces_moved = false;
    for (int i = 0; i < trial->figures->count; i++) {
        const struct figure *figure = &trial->figures->items[i];
        double value = figure->row->get(trial->situation, figure->subject, figure->sub);
        trial->now[i] = isfinite(value) ? value : NAN;
    }
}

/* Values that follow from others by rule are found again, as the reader would. */
static void follow_rules(struct trial *trial, int part)
{
    const struct part *said = &trial->as_said->parts[part];
    struct part *moved = &trial->moved->parts[part];
    size_t count;
    const struct key *rows = key_table(said->kind, &count);
    for (size_t i = 0; i < count; i++)
        if (rows[i].assume_by != NULL && !key_said(said, &rows[i]) && key_applies(moved, &rows[i]))
            key_set(moved, &rows[i], rows[i].assume_by(moved));
}

static void touch(struct trial *trial, int part)
{
    trial->forces_moved = trial->forces_moved || makes_force(trial->moved->parts[part].kind);
}

static void put(struct trial *trial, const struct moved_key *key, double value)
{
    struct part *part = &trial->moved->parts[key->part];
    touch(trial, key->part);
    key_set(part, key->key, value);
    if (key->key->form == FORM_BORES) {
        struct bores *bores = (struct bores *)((char *)part + key->key->field);
        bool none = bores->count < 1;
        if (none && !isnan(value))
            bores->count = 1;
        else if (isnan(value))
            bores->count = 0;
    }
}

static bool is_moved(const struct key *key)
{
    return key->form == FORM_QUANTITY || key->form == FORM_CHOICE || key->form == FORM_BORES;
}

static double example_of(const struct key *key)
{
    if (key->example == NULL)
        return NAN;
    if (key->form == FORM_CHOICE) {
        const struct choice *choice = choice_find(key, key->example);
        return choice != NULL ? (double)choice->value : NAN;
    }
    const char *words = key->example;
    const char *of = strstr(words, " of ");
    return unit_read(of != NULL ? of + strlen(" of ") : words, key->dimension).value;
}

/* --- what figures rest on ------------------------------------------------------------------- */

/* The usual volume of a part's chamber, where that is taken; NaN where it is given or computed. */
static double usual_chamber(const struct system *system, const struct network *network, int at)
{
    const struct part *part = &system->parts[at];
    if (part->kind == KIND_PIPE || part->kind == KIND_HOSE || network_vertex(network, at, 0) < 0)
        return NAN;
    bool assumed;
    struct volume volume = part_chamber_volume(part, 0, &assumed);
    return assumed && part->kind != KIND_MASTER ? volume.m3 : NAN;
}

static struct moved_keys assumed_keys(const struct system *system, const struct network *network,
                                      struct arena *arena)
{
    struct moved_keys keys = {0};
    for (int p = 0; p < system->part_count; p++) {
        const struct part *part = &system->parts[p];
        size_t count;
        const struct key *rows = key_table(part->kind, &count);
        double chamber = usual_chamber(system, network, p);
        for (size_t i = 0; i < count; i++) {
            bool is_chamber = rows[i].field == offsetof(struct part, fitted.chamber);
            double base = key_value(part, &rows[i]);
            if (is_chamber && !isnan(chamber))
                base = chamber;
            else if (part->origins[i].kind != ORIGIN_ASSUMED || !is_moved(&rows[i]))
                continue;
            *LIST_ADD(arena, &keys) = (struct moved_key){p, &rows[i], base};
        }
    }
    return keys;
}

/* Where a value is moved to: first a little, then to the ends of its usual range, then farther. */
struct moves {
    double to[MOST_MOVES];
    int count;
    int near; /* how many of them, first ones, are near: a figure that does not change by them rests
                 on the value only beyond some knee */
    int usual; /* up to here they are within the usual range */
};

static void add_move(struct moves *moves, const struct moved_key *key, double value)
{
    if (value < key->key->least)
        value = key->key->least;
    if (value > key->key->most)
        value = key->key->most;
    if (isnan(value) || value == key->base || moves->count == MOST_MOVES)
        return;
    moves->to[moves->count++] = value;
}

static struct moves moves_of(const struct moved_key *key)
{
    struct moves moves = {{0}, 0, 0, 0};
    if (key->key->form == FORM_CHOICE) {
        for (const struct choice *choice = key->key->choices; choice->word != NULL; choice++)
            add_move(&moves, key, choice->value);
        moves.near = moves.usual = moves.count;
        return moves;
    }
    add_move(&moves, key, key->base * 1.01);
    add_move(&moves, key, key->base / 1.01); /* the other one may be beyond the limits */
    if (key->base == 0)
        add_move(&moves, key, example_of(key->key));
    moves.near = moves.count;
    add_move(&moves, key, key->key->usual_least);
    add_move(&moves, key, key->key->usual_most);
    moves.usual = moves.count;
    add_move(&moves, key, key->base / 2);
    add_move(&moves, key, key->base * 2);
    return moves;
}

/* How much a figure changed, as a part of itself; one that is lost altogether counts as whole. */
static double change(double base, double now)
{
    if (isnan(now))
        return 1;
    double size = fabs(base);
    return size > 0 ? fabs(now - base) / size : 1;
}

/* Moves one key about and notes for each figure how telling it is; below 0: not at all. What tells
 * only beyond a knee comes after all that tells where the car is now. */
static void tell(struct trial *trial, const struct moved_key *key, double *telling)
{
    struct moves moves = moves_of(key);
    for (int i = 0; i < trial->figures->count; i++)
        telling[i] = -1;
    for (int m = 0; m < moves.count; m++) {
        put(trial, key, moves.to[m]);
        look(trial);
        for (int i = 0; i < trial->figures->count; i++) {
            double base = trial->figures->items[i].value;
            if (isnan(base) || trial->now[i] == base)
                continue;
            bool near = telling[i] >= BEYOND_A_KNEE || m < moves.near;
            double weight = m < moves.usual ? change(base, trial->now[i]) : 0;
            telling[i] = fmax(telling[i], near ? BEYOND_A_KNEE + weight : weight / (1 + weight));
        }
    }
    trial->moved->parts[key->part] = trial->as_said->parts[key->part];
    touch(trial, key->part);
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
        figure->assumed[at] = (struct cited_key){keys->items[k].part, keys->items[k].key};
    }
}

static void find_assumed(struct trial *trial, const struct network *network, struct arena *arena)
{
    struct moved_keys keys = assumed_keys(trial->as_said, network, arena);
    size_t figures = (size_t)trial->figures->count;
    double *telling = ARENA_ARRAY(arena, keys.count * figures + 1, double);
    for (size_t k = 0; k < keys.count; k++)
        tell(trial, &keys.items[k], &telling[k * figures]);
    for (size_t i = 0; i < figures; i++)
        cite_assumed(&trial->figures->items[i], &keys, telling + i, figures, arena);
}

/* --- what figures lack ---------------------------------------------------------------------- */

enum filling { FILL_EXAMPLE, FILL_LEAST, FILL_MOST, FILL_COUNT };

static double filling_of(const struct key *key, enum filling filling)
{
    if (key->form == FORM_CHOICE || filling == FILL_EXAMPLE)
        return example_of(key);
    return filling == FILL_LEAST ? key->usual_least : key->usual_most;
}

static struct moved_keys missing_keys(const struct system *system, enum filling filling,
                                      struct arena *arena)
{
    struct moved_keys keys = {0};
    for (int p = 0; p < system->part_count; p++) {
        const struct part *part = &system->parts[p];
        size_t count;
        const struct key *rows = key_table(part->kind, &count);
        for (size_t i = 0; i < count; i++) {
            const struct key *key = &rows[i];
            /* a value that follows by rule comes by itself once the others are there */
            if (!is_moved(key) || key->assume_by != NULL || key_said(part, key) ||
                !key_applies(part, key))
                continue;
            double filled = filling_of(key, filling);
            if (isnan(filled))
                continue;
            *LIST_ADD(arena, &keys) = (struct moved_key){p, key, filled};
        }
    }
    return keys;
}

static void fill(struct trial *trial, const struct moved_key *key, bool in)
{
    put(trial, key, in ? key->base : NAN);
    follow_rules(trial, key->part);
}

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
    figure->needs[figure->needs_count++] = (struct cited_key){key->part, key->key};
}

/* Takes away all that is not needed, then sees which figure needs what of the rest. */
static void take_away(struct trial *trial, const struct moved_keys *keys, const bool *asked,
                      struct arena *arena)
{
    bool *kept = ARENA_ARRAY(arena, keys->count + 1, bool);
    size_t most = 0;
    for (size_t k = keys->count; k-- > 0;) {
        fill(trial, &keys->items[k], false);
        look(trial);
        kept[k] = any_lost(trial, asked);
        if (kept[k])
            fill(trial, &keys->items[k], true);
        most += kept[k];
    }
    for (size_t k = 0; k < keys->count; k++) {
        if (!kept[k])
            continue;
        fill(trial, &keys->items[k], false);
        look(trial);
        for (int i = 0; i < trial->figures->count; i++)
            if (lost(trial, asked, i))
                cite_need(&trial->figures->items[i], &keys->items[k], most, arena);
        fill(trial, &keys->items[k], true);
    }
}

static bool is_open(const struct figure *figure)
{
    return isnan(figure->value) && figure->needs_count == 0 && figure->reason == NULL;
}

static void find_needs(struct trial *trial, enum filling filling, struct arena *arena)
{
    struct moved_keys keys = missing_keys(trial->as_said, filling, arena);
    bool *asked = ARENA_ARRAY(arena, (size_t)trial->figures->count + 1, bool), any = false;
    for (size_t k = 0; k < keys.count; k++)
        fill(trial, &keys.items[k], true);
    look(trial);
    for (int i = 0; i < trial->figures->count; i++) {
        asked[i] = is_open(&trial->figures->items[i]) && !isnan(trial->now[i]);
        any = any || asked[i];
    }
    if (any)
        take_away(trial, &keys, asked, arena);
    memcpy(trial->moved->parts, trial->as_said->parts,
           (size_t)trial->as_said->part_count * sizeof(struct part));
    trial->forces_moved = true;
}

static bool any_open(const struct figures *figures)
{
    for (int i = 0; i < figures->count; i++)
        if (is_open(&figures->items[i]))
            return true;
    return false;
}

static void refuse(struct trial *trial)
{
    situation_solve(trial->situation);
    for (int i = 0; i < trial->figures->count; i++) {
        struct figure *figure = &trial->figures->items[i];
        if (isnan(figure->value) && figure->row->refuses != NULL)
            figure->reason = figure->row->refuses(trial->situation, figure->subject, figure->sub);
    }
}

void dependence_find(const struct system *system, const struct network *network,
                     struct force effort, struct figures *figures, struct arena *arena)
{
    struct trial trial = {.as_said = system,
                          .moved = system_copy(system, arena),
                          .figures = figures,
                          .now = ARENA_ARRAY(arena, (size_t)figures->count + 1, double),
                          .forces_moved = true};
    trial.situation = situation_room(trial.moved, network, effort, arena);
    find_assumed(&trial, network, arena);
    refuse(&trial);
    for (int filling = FILL_EXAMPLE; filling < FILL_COUNT && any_open(figures); filling++)
        find_needs(&trial, (enum filling)filling, arena);
    for (int i = 0; i < figures->count; i++) {
        struct figure *figure = &figures->items[i];
        if (isnan(figure->value))
            figure->state = FIGURE_NOT_COMPUTED;
        else
            figure->state = figure->assumed_count > 0 ? FIGURE_ASSUMED : FIGURE_COMPUTED;
    }
}
