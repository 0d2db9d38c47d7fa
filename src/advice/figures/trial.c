#include "advice/figures/trial.h"

#include <math.h>
#include <string.h>

#include "base/list.h"
#include "parts/keys/key.h"
#include "units/unit.h"

void trial_look(struct trial *trial)
{
    switch (trial->moved_since) {
    case SOLVES_ALL:
        situation_solve(trial->situation);
        break;
    case SOLVES_TRAVELS:
        situation_solve_travels(trial->situation);
        break;
    case SOLVES_NOTHING:
        break;
    }
    trial->moved_since = SOLVES_NOTHING;
    for (int i = 0; i < trial->figures->count; i++) {
        const struct figure *figure = &trial->figures->items[i];
        double value = figure->row->get(trial->situation, figure->subject, figure->sub);
        trial->now[i] = isfinite(value) ? value : NAN;
    }
}

static void touch(struct trial *trial, enum key_solves solves)
{
    if (solves < trial->moved_since)
        trial->moved_since = solves;
    if (solves < trial->moved_ever)
        trial->moved_ever = solves;
}

void trial_follow_rules(struct trial *trial, int part)
{
    const struct part *said = &trial->as_said->parts[part];
    struct part *moved = &trial->moved->parts[part];
    size_t count;
    const struct key *rows = key_table(said->kind, &count);
    for (size_t i = 0; i < count; i++)
        if (rows[i].assume_by != NULL && key_applies(moved, &rows[i]) &&
            (!key_said(said, &rows[i]) || said->origins[i].kind == ORIGIN_ASSUMED)) {
            touch(trial, rows[i].solves);
            key_set(moved, &rows[i], rows[i].assume_by(moved));
        }
}

struct trial trial_start(const struct system *system, const struct network *network,
                         struct force effort, const struct figures *figures, struct arena *arena)
{
    struct trial trial = {.as_said = system,
                          .moved = system_copy(system, arena),
                          .figures = figures,
                          .now = ARENA_ARRAY(arena, (size_t)figures->count + 1, double),
                          .moved_since = SOLVES_ALL,
                          .moved_ever = SOLVES_NOTHING};
    trial.situation = situation_room(trial.moved, network, effort, arena);
    return trial;
}

void trial_put(struct trial *trial, const struct moved_key *key, double value)
{
    struct part *part = &trial->moved->parts[key->part];
    touch(trial, key->key->solves);
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

void trial_restore(struct trial *trial, int part)
{
    trial->moved->parts[part] = trial->as_said->parts[part];
    touch(trial, trial->moved_ever);
    trial->moved_ever = SOLVES_NOTHING;
}

bool trial_moves(const struct key *key)
{
    return key->form == FORM_QUANTITY || key->form == FORM_CHOICE || key->form == FORM_BORES;
}

double trial_example(const struct key *key)
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

static double filling_of(const struct key *key, enum trial_filling filling)
{
    if (key->form == FORM_CHOICE || filling == TRIAL_FILL_EXAMPLE)
        return trial_example(key);
    return filling == TRIAL_FILL_LEAST ? key->usual_least : key->usual_most;
}

struct moved_keys trial_missing_keys(const struct system *system, enum trial_filling filling,
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
            if (!trial_moves(key) || key->assume_by != NULL || key_said(part, key) ||
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

void trial_fill(struct trial *trial, const struct moved_key *key, bool in)
{
    trial_put(trial, key, in ? key->base : NAN);
    trial_follow_rules(trial, key->part);
}

static bool is_written(enum origin_kind kind)
{
    switch (kind) {
    case ORIGIN_GIVEN:
    case ORIGIN_SHARED:
    case ORIGIN_WORK:
    case ORIGIN_DERIVED:
        return true;
    case ORIGIN_NONE:
    case ORIGIN_ASSUMED:
    case ORIGIN_ASKED:
        break;
    }
    return false;
}

struct moved_keys trial_given_keys(const struct system *system, struct arena *arena)
{
    struct moved_keys keys = {0};
    for (int p = 0; p < system->part_count; p++) {
        const struct part *part = &system->parts[p];
        size_t count;
        const struct key *rows = key_table(part->kind, &count);
        for (size_t i = 0; i < count; i++)
            if (is_written(part->origins[i].kind) && trial_moves(&rows[i]) &&
                key_said(part, &rows[i]))
                *LIST_ADD(arena, &keys) =
                    (struct moved_key){p, &rows[i], key_value(part, &rows[i])};
    }
    return keys;
}

struct moved_keys trial_assumed_keys(const struct system *system, const struct network *network,
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
            else if (part->origins[i].kind != ORIGIN_ASSUMED || !trial_moves(&rows[i]))
                continue;
            *LIST_ADD(arena, &keys) = (struct moved_key){p, &rows[i], base};
        }
    }
    return keys;
}

/* Whether a choice would give the part other chambers, so that its network would be another one. */
static bool joins_otherwise(const struct part *part, const struct key *key, double value)
{
    if (key->form != FORM_CHOICE)
        return false;
    struct part other = *part;
    key_set(&other, key, value);
    return part_chambers(&other) != part_chambers(part);
}

static void add_move(struct moves *moves, const struct part *part, const struct moved_key *key,
                     double value)
{
    if (value < key->key->least)
        value = key->key->least;
    if (value > key->key->most)
        value = key->key->most;
    if (isnan(value) || value == key->base || moves->count == TRIAL_MOST_MOVES ||
        joins_otherwise(part, key->key, value))
        return;
    moves->to[moves->count++] = value;
}

struct moves trial_moves_of(const struct part *part, const struct moved_key *key)
{
    struct moves moves = {{0}, 0, 0, 0};
    if (key->key->form == FORM_CHOICE) {
        for (const struct choice *choice = key->key->choices; choice->word != NULL; choice++)
            add_move(&moves, part, key, choice->value);
        moves.near = moves.usual = moves.count;
        return moves;
    }
    add_move(&moves, part, key, key->base * 1.01);
    add_move(&moves, part, key, key->base / 1.01); /* the other one may be beyond the limits */
    if (key->base == 0)
        add_move(&moves, part, key, trial_example(key->key));
    moves.near = moves.count;
    add_move(&moves, part, key, key->key->usual_least);
    add_move(&moves, part, key, key->key->usual_most);
    moves.usual = moves.count;
    add_move(&moves, part, key, key->base / 2);
    add_move(&moves, part, key, key->base * 2);
    return moves;
}
