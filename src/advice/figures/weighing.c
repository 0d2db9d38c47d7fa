#include "advice/figures/weighing.h"

#include <math.h>

#include "base/list.h"
#include "physics/press.h"

enum { MOST_KNEES = 12, GRID = 60, HALVINGS = 40 };
#define LEAST_PART 0.1 /* of the effort of the check */
#define MOST_PART  4.0
#define ASIDE      0.02 /* how far from a knee is a little */

struct weigher {
    struct trial trial;
    const struct system *system;
    const struct network *network;
    struct force effort;
    struct weighing *into;
    double *base; /* by figure, at the effort of the moment */
};

/* Sets every effort to a part of what it was. */
static void set_effort(struct weigher *weigher, double part)
{
    struct trial *trial = &weigher->trial;
    for (int i = 0; i < weigher->system->part_count; i++)
        if (weigher->system->parts[i].kind == KIND_PEDAL &&
            press_is_brake(weigher->system, weigher->network, i))
            trial->moved->parts[i].as.pedal.effort.n =
                weigher->system->parts[i].as.pedal.effort.n * part;
    trial->situation->effort.n = weigher->effort.n * part;
    trial->moved_since = SOLVES_ALL;
}

/* --- where the knees are -------------------------------------------------------------------- */

/* The case of every part, -1 where there is but one. */
static void read_cases(struct weigher *weigher, double part, int *cases)
{
    struct branch branch;
    set_effort(weigher, part);
    struct state state = state_usual();
    state.effort = weigher->trial.situation->effort;
    struct solution *room = weigher->trial.situation->scratch;
    solve(weigher->trial.moved, weigher->network, &state, room);
    for (int i = 0; i < weigher->system->part_count; i++)
        cases[i] =
            branch_of(weigher->trial.moved, weigher->network, room, i, &branch) ? branch.index : -1;
}

static void add_knee(struct weigher *weigher, double part, int of)
{
    struct weighing *into = weigher->into;
    if (into->knee_count == MOST_KNEES)
        return;
    for (int i = 0; i < into->knee_count; i++) /* left and right brakes share theirs */
        if (fabs(into->efforts[i] - part) < 1e-6 * part)
            return;
    branch_of(weigher->trial.moved, weigher->network, weigher->trial.situation->scratch, of,
              &into->knees[into->knee_count]);
    into->efforts[into->knee_count++] = part;
}

/* Halves the way between two efforts where the case of one part changes. */
static void close_in(struct weigher *weigher, double low, double high, int of, int *cases)
{
    read_cases(weigher, low, cases);
    int below = cases[of];
    for (int i = 0; i < HALVINGS; i++) {
        double middle = (low + high) / 2;
        read_cases(weigher, middle, cases);
        if (cases[of] == below)
            low = middle;
        else
            high = middle;
    }
    read_cases(weigher, low, cases);
    add_knee(weigher, low, of);
}

static void find_knees(struct weigher *weigher, struct arena *arena)
{
    size_t parts = (size_t)weigher->system->part_count + 1;
    int *before = ARENA_ARRAY(arena, parts, int), *now = ARENA_ARRAY(arena, parts, int);
    int *probe = ARENA_ARRAY(arena, parts, int);
    double step = pow(MOST_PART / LEAST_PART, 1.0 / GRID), low = LEAST_PART;
    read_cases(weigher, low, before);
    for (int g = 0; g < GRID; g++) {
        double high = low * step;
        read_cases(weigher, high, now);
        for (int i = 0; i < weigher->system->part_count; i++)
            if (now[i] != before[i])
                close_in(weigher, low, high, i, probe);
        int *was = before;
        before = now;
        now = was;
        low = high;
    }
    set_effort(weigher, 1);
}

/* --- moving the values ---------------------------------------------------------------------- */

static double change(double base, double now)
{
    if (isnan(now))
        return 1;
    return fabs(base) > 0 ? fabs(now - base) / fabs(base) : 1;
}

/* Puts a value in and looks; gives whether the figure is another one. */
static void try_value(struct weigher *weigher, size_t k, double value)
{
    const struct moved_key *key = &weigher->into->keys.items[k];
    trial_put(&weigher->trial, key, value);
    if (k < weigher->into->given)
        trial_follow_rules(&weigher->trial, key->part);
    trial_look(&weigher->trial);
}

/* nothing: of an assumed 0, which ranks between what tells now and what tells beyond a knee. */
static void note(struct weight *weight, double base, double now, bool near, bool nothing,
                 double telling)
{
    if (now == base || (isnan(now) && isnan(base)))
        return;
    weight->beyond = (!weight->moves || weight->beyond) && !near;
    weight->moves = true;
    double part = telling / (1 + telling);
    if (!weight->beyond)
        part = nothing ? 1 + part : 2 + telling;
    weight->telling = fmax(weight->telling, part);
}

static const struct origin *origin_of(const struct weigher *weigher, const struct moved_key *key)
{
    const struct part *part = &weigher->system->parts[key->part];
    return &part->origins[key_index(part->kind, key->key)];
}

/* Keeps what the reader is shown of a move. */
static void keep(const struct moved_key *key, double to, double base, double now,
                 struct weight *weight)
{
    bool choice = key->key->form == FORM_CHOICE;
    if (choice && (isnan(weight->other) || !(fabs(now - base) <= fabs(weight->other - base))))
        weight->other = now;
    if (!choice && key->base == 0 && to == trial_example(key->key))
        weight->other = now;
    double hundredth = choice || key->base == 0 ? NAN : to / key->base;
    if (hundredth > 1.005 && hundredth < 1.015)
        weight->more = now;
    else if (isnan(weight->more) && hundredth > 0.985 && hundredth < 0.995) {
        weight->more = now;
        weight->less_by = 1;
    }
    if (to == key->key->usual_least)
        weight->least = now;
    if (to == key->key->usual_most)
        weight->most = now;
}

/* Where the car is now. */
static void weigh_here(struct weigher *weigher, size_t k)
{
    const struct moved_key *key = &weigher->into->keys.items[k];
    const struct moves moves = trial_moves_of(&weigher->system->parts[key->part], key);
    struct weight *weights = &weigher->into->weights[k * weigher->into->figures];
    bool given = k < weigher->into->given;
    bool nothing = !given && key->base == 0 && key->key->form != FORM_CHOICE;
    double tolerance = given ? origin_of(weigher, key)->tolerance : NAN;
    for (int m = 0; m <= moves.count; m++) {
        bool by_tolerance = m == moves.count;
        if (by_tolerance && !(tolerance > 0))
            continue;
        double to = by_tolerance ? key->base + tolerance : moves.to[m];
        bool near = by_tolerance || m < moves.near;
        try_value(weigher, k, to);
        for (size_t f = 0; f < weigher->into->figures; f++) {
            double base = weigher->base[f], now = weigher->trial.now[f];
            if (isnan(base))
                continue;
            bool counts = given ? (tolerance > 0 ? by_tolerance : near) : m < moves.usual;
            double size = counts ? change(base, now) : 0;
            if (given && key->key->form == FORM_CHOICE)
                size /= 100; /* a word is right or wrong, not a little off */
            note(&weights[f], base, now, near, nothing, size);
            if (!by_tolerance)
                keep(key, to, base, now, &weights[f]);
        }
    }
    trial_restore(&weigher->trial, key->part);
}

/* At another effort: only whether it matters there. */
static void weigh_there(struct weigher *weigher, double part)
{
    struct weighing *into = weigher->into;
    set_effort(weigher, part);
    trial_look(&weigher->trial);
    for (size_t f = 0; f < into->figures; f++)
        weigher->base[f] = weigher->trial.now[f];
    for (size_t k = 0; k < into->keys.count; k++) {
        struct moved_key key = into->keys.items[k];
        const struct part *said = &weigher->system->parts[key.part];
        if (key.key->form == FORM_CHOICE)
            continue;
        if (said->kind == KIND_PEDAL && key.key->field == FIELD(as.pedal.effort))
            key.base *= part;
        struct moves moves = trial_moves_of(said, &key);
        if (moves.near == 0)
            continue;
        try_value(weigher, k, moves.to[0]);
        for (size_t f = 0; f < into->figures; f++)
            if (!isnan(weigher->base[f]))
                note(&into->weights[k * into->figures + f], weigher->base[f], weigher->trial.now[f],
                     false, false, 0);
        trial_restore(&weigher->trial, key.part);
        if (said->kind == KIND_PEDAL)
            set_effort(weigher, part);
    }
}

static void start_weights(struct weighing *into, struct arena *arena)
{
    size_t count = into->keys.count * into->figures;
    into->weights = ARENA_ARRAY(arena, count + 1, struct weight);
    for (size_t i = 0; i < count; i++)
        into->weights[i] = (struct weight){.more = NAN, .least = NAN, .most = NAN, .other = NAN};
}

struct weighing weighing_of(const struct system *system, const struct network *network,
                            struct force effort, const struct figures *figures, struct arena *arena)
{
    static const double places[] = {1 - ASIDE, 1, 1 + ASIDE};
    struct weighing into = {.figures = (size_t)figures->count};
    struct weigher weigher = {.trial = trial_start(system, network, effort, figures, arena),
                              .system = system,
                              .network = network,
                              .effort = effort,
                              .into = &into,
                              .base = ARENA_ARRAY(arena, into.figures + 1, double)};
    struct moved_keys assumed = trial_assumed_keys(system, network, arena);
    into.keys = trial_given_keys(system, arena);
    into.given = into.keys.count;
    for (size_t i = 0; i < assumed.count; i++)
        *LIST_ADD(arena, &into.keys) = assumed.items[i];
    into.knees = ARENA_ARRAY(arena, MOST_KNEES, struct branch);
    into.efforts = ARENA_ARRAY(arena, MOST_KNEES, double);
    start_weights(&into, arena);
    find_knees(&weigher, arena);
    for (size_t f = 0; f < into.figures; f++)
        weigher.base[f] = figures->items[f].value;
    for (size_t k = 0; k < into.keys.count; k++)
        weigh_here(&weigher, k);
    for (int i = 0; i < into.knee_count; i++)
        for (size_t place = 0; place < sizeof places / sizeof *places; place++)
            weigh_there(&weigher, into.efforts[i] * places[place]);
    return into;
}

const struct weight *weighing_weight(const struct weighing *weighing, size_t key, int figure)
{
    return &weighing->weights[key * weighing->figures + (size_t)figure];
}
