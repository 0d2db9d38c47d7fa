#include "advice/choice/columns.h"

#include <math.h>
#include <string.h>

#include "advice/choice/rows.h"
#include "advice/figures/part_bore.h"
#include "parts/keys/key.h"
#include "physics/drum_memory.h"
#include "units/constants.h"

enum { WHEELS = 4, STATES = 8, FORCES = 16 };

void bore_set(struct part *part, struct length bore)
{
    key_set(part, key_of(part->kind, part_bore_field(part->kind)), bore.m);
}

/* Brake forces of the wheels at a row: front left and right, rear left and right. */
struct wheels {
    double of[WHEELS];
};

/* A pedal in a state: what is beyond floor and bores. */
struct stood {
    int pedal;     /* of the reduced car */
    bool dead;     /* nothing is left, whatever the bores */
    int count;     /* of excesses */
    double effort; /* N */
};

/* A state that is asked about. */
struct asked_state {
    struct state state;
    struct reduced *reduced;
    struct stood pedals[STATES];
    int pedal_count;
};

/* What one bore adds, by pedal of each state and excess, and by row. */
struct added {
    double past[STATES][REDUCED_EXCESSES];
    struct wheels rows[ROWS_MOST];
};

struct search {
    const struct columns_asked *asked;
    struct system *car; /* with the bores of the masters that stand now */
    struct solution *room;
    bool *without; /* by part: its bore is an inner axis */
    struct asked_state *states;
    int state_count, pedal_count; /* pedals of all states together */
    int most_from;                /* from here on at the most foot */
    int lost_from;                /* from here on with a circuit lost */
    int inner[COLUMN_AXES], inner_count, outer[COLUMN_AXES], outer_count;
    struct reduced_terms *terms[COLUMN_AXES];  /* of an inner axis: by state, bore, stretch */
    struct reduced_force *forces[COLUMN_AXES]; /* by bore, FORCES each */
    int force_count[COLUMN_AXES];
    struct added *shares[COLUMN_AXES]; /* by bore */
    struct added base;
    struct rows rows;
    double *pressures, *scratch;
    double wanted, weight, chi, front_share, rolling, rotating, grip, lifts;
    column_take take;
    void *context;
    column_progress progress;
    void *progress_context;
    double done, all;
    int at[COLUMN_AXES];
    struct arena *arena;
};

/* --- states ---------------------------------------------------------------------------------- */

static int pedals_in_use(const struct network *network, const struct reduced_pedal *pedal)
{
    int circuits = 0;
    for (int c = 0; c < network->circuit_count; c++)
        for (int m = 0; m < pedal->master_count && m < REDUCED_MASTERS; m++)
            circuits += network->circuits[c].master == pedal->masters[m].part;
    return circuits;
}

static bool works(const struct network *network, const struct reduced_pedal *pedal, int circuit)
{
    for (int m = 0; m < pedal->master_count && m < REDUCED_MASTERS; m++)
        if (network->circuits[circuit].master == pedal->masters[m].part)
            return true;
    return false;
}

/* The pedals of a state whose rest counts: with a circuit lost those that go on without it. */
static void find_pedals(struct search *search, struct asked_state *state)
{
    int lost = state->state.lost_circuit;
    const struct network *network = search->asked->network;
    state->pedal_count = 0;
    for (int p = 0; p < state->reduced->pedal_count; p++) {
        const struct reduced_pedal *pedal = &state->reduced->pedals[p];
        if (lost >= 0 && (!works(network, pedal, lost) || pedals_in_use(network, pedal) < 2))
            continue;
        double own = pedal->data->effort.n;
        state->pedals[state->pedal_count++] =
            (struct stood){.pedal = p,
                           .dead = pedal->dead,
                           .effort = isnan(state->state.effort.n) ? own : state->state.effort.n};
    }
}

static void reduce_all(struct search *search, struct arena *arena)
{
    search->pedal_count = 0;
    search->lost_from = search->most_from = STATES;
    for (int s = 0; s < search->state_count; s++) {
        struct asked_state *state = &search->states[s];
        state->reduced = reduce(search->car, search->asked->network, &state->state, search->without,
                                search->room, arena);
        find_pedals(search, state);
        if (state->state.lost_circuit >= 0 && search->lost_from == STATES)
            search->lost_from = search->pedal_count;
        if (s > 0 && state->state.lost_circuit < 0)
            search->most_from = search->pedal_count;
        search->pedal_count += state->pedal_count;
    }
    if (search->lost_from == STATES)
        search->lost_from = search->most_from < STATES ? search->most_from : search->pedal_count;
    if (search->most_from == STATES)
        search->most_from = search->pedal_count;
}

static void list_states(struct search *search)
{
    const struct network *network = search->asked->network;
    struct state usual = state_usual();
    usual.no_clutch = true;
    usual.effort = search->asked->effort;
    search->states = ARENA_ARRAY(search->arena, STATES + 1, struct asked_state);
    search->states[search->state_count++].state = usual;
    for (int c = 0; c < network->circuit_count; c++) {
        if (network->circuits[c].clutch || search->state_count >= STATES - 1)
            continue;
        struct state lost = usual;
        lost.lost_circuit = c;
        search->states[search->state_count++].state = lost;
    }
    if (isnan(search->asked->most_foot.n))
        return;
    usual.effort = search->asked->most_foot;
    search->states[search->state_count++].state = usual;
}

/* --- what a bore adds ------------------------------------------------------------------------ */

static struct reduced_terms *terms_of(const struct search *search, int axis, int state, int bore)
{
    size_t stretches = (size_t)search->states[0].reduced->stretch_count;
    size_t count = (size_t)search->asked->axes[axis].count;
    return &search->terms[axis][((size_t)state * count + (size_t)bore) * stretches];
}

static void work_out_axis(struct search *search, int axis)
{
    const struct bore_axis *of = &search->asked->axes[axis];
    size_t stretches = (size_t)search->states[0].reduced->stretch_count;
    size_t count = (size_t)of->count;
    search->terms[axis] = ARENA_ARRAY(
        search->arena, (size_t)search->state_count * count * stretches + 1, struct reduced_terms);
    search->forces[axis] = ARENA_ARRAY(search->arena, count * FORCES, struct reduced_force);
    search->shares[axis] = ARENA_ARRAY(search->arena, count, struct added);
    for (int b = 0; b < of->count; b++) {
        int forces = 0;
        for (int p = 0; p < of->part_count; p++) {
            bore_set(&search->car->parts[of->parts[p]], of->bores[b]);
            for (int s = 0; s < search->state_count; s++)
                reduced_add_part(search->states[s].reduced, search->car, of->parts[p],
                                 terms_of(search, axis, s, b));
            if (kind_is_brake(search->car->parts[of->parts[p]].kind) &&
                forces + REDUCED_CHAMBERS <= FORCES)
                forces +=
                    reduced_forces_of(search->states[0].reduced, search->car, of->parts[p],
                                      search->room, &search->forces[axis][b * FORCES + forces]);
        }
        search->force_count[axis] = forces;
    }
}

static void add_to_wheels(const struct search *search, const struct reduced_force *force,
                          double newtons, struct wheels *into)
{
    const struct part *brake = &search->car->parts[force->brake];
    bool one_track = system_vehicle(search->car)->type == VEHICLE_MOTORCYCLE;
    int axle = brake->axle == AXLE_FRONT ? 0 : 2;
    double left = one_track || brake->side == SIDE_NONE ? 0.5 : brake->side == SIDE_LEFT ? 1 : 0;
    into->of[axle] += left * newtons;
    into->of[axle + 1] += (1 - left) * newtons;
}

static void add_rows(struct search *search, const struct reduced_force *forces, int count,
                     struct added *share)
{
    memset(share->rows, 0, sizeof share->rows);
    for (int f = 0; f < count; f++) {
        int column = rows_column(&search->rows, &forces[f]);
        for (int r = 0; column >= 0 && r < search->rows.count; r++)
            add_to_wheels(search, &forces[f], forces[f].per_pa * search->rows.beyond[r][column],
                          &share->rows[r]);
    }
}

/* Excesses with some volumes, and without any: their difference is what the volumes add. */
static void add_pasts(struct search *search, int axis, int bore, struct added *share)
{
    static const struct reduced_volumes nothing = {{{0}}, {{0}}};
    int at = 0;
    for (int s = 0; s < search->state_count; s++) {
        struct asked_state *state = &search->states[s];
        for (int p = 0; p < state->pedal_count; p++, at++) {
            struct stood *stood = &state->pedals[p];
            struct force effort = {stood->effort};
            double without[REDUCED_EXCESSES];
            reduced_pressures(state->reduced, stood->pedal, effort, search->pressures);
            struct reduced_volumes volumes = reduced_volumes_of(
                state->reduced, stood->pedal, search->pressures,
                axis < 0 ? state->reduced->terms : terms_of(search, axis, s, bore), axis < 0,
                search->scratch);
            stood->count =
                reduced_excesses(state->reduced, stood->pedal, effort, &volumes, share->past[at]);
            if (axis < 0)
                continue;
            reduced_excesses(state->reduced, stood->pedal, effort, &nothing, without);
            for (int k = 0; k < stood->count; k++)
                share->past[at][k] = isinf(without[k]) ? 0 : share->past[at][k] - without[k];
        }
    }
}

static void work_out_shares(struct search *search)
{
    struct reduced *usual = search->states[0].reduced;
    search->rows.column_count = 0;
    for (int f = 0; f < usual->force_count; f++)
        rows_column(&search->rows, &usual->forces[f]);
    for (int i = 0; i < search->inner_count; i++)
        for (int f = 0; f < search->force_count[search->inner[i]]; f++)
            rows_column(&search->rows, &search->forces[search->inner[i]][f]);
    rows_fill(&search->rows, usual, search->pressures);
    add_rows(search, usual->forces, usual->force_count, &search->base);
    add_pasts(search, -1, 0, &search->base);
    for (int i = 0; i < search->inner_count; i++) {
        int axis = search->inner[i];
        for (int b = 0; b < search->asked->axes[axis].count; b++) {
            struct added *share = &search->shares[axis][b];
            add_rows(search, &search->forces[axis][b * FORCES], search->force_count[axis], share);
            add_pasts(search, axis, b, share);
        }
    }
}

static void add_share(const struct search *search, const struct added *a, const struct added *b,
                      struct added *into)
{
    for (int p = 0; p < search->pedal_count; p++)
        for (int k = 0; k < REDUCED_EXCESSES; k++)
            into->past[p][k] = a->past[p][k] + b->past[p][k];
    for (int r = 0; r < search->rows.count; r++)
        for (int w = 0; w < WHEELS; w++)
            into->rows[r].of[w] = a->rows[r].of[w] + b->rows[r].of[w];
}

/* --- a car ----------------------------------------------------------------------------------- */

/* Two shares, the second the last axis': their sum is the car, and only what is looked at is
 * added up. */
struct pair {
    const struct added *most, *last;
};

static inline struct wheels wheels_at(const struct pair *pair, int row)
{
    struct wheels wheels;
    for (int w = 0; w < WHEELS; w++)
        wheels.of[w] = pair->most->rows[row].of[w] + pair->last->rows[row].of[w];
    return wheels;
}

static inline double sum_of(const struct wheels *wheels)
{
    return wheels->of[0] + wheels->of[1] + wheels->of[2] + wheels->of[3];
}

static double foot_of(const struct search *search, const struct pair *pair)
{
    const struct rows *rows = &search->rows;
    int low = 0, high = rows->count - 1;
    struct wheels at_low = wheels_at(pair, low), at_high = wheels_at(pair, high);
    double below = sum_of(&at_low), above = sum_of(&at_high);
    if (below >= search->wanted)
        return 0;
    if (!(above >= search->wanted))
        return INFINITY;
    while (high - low > 1) {
        int middle = (low + high) / 2;
        struct wheels at = wheels_at(pair, middle);
        double sum = sum_of(&at);
        if (sum >= search->wanted) {
            high = middle;
            above = sum;
        } else {
            low = middle;
            below = sum;
        }
    }
    return rows->effort[low] +
           (search->wanted - below) / (above - below) * (rows->effort[high] - rows->effort[low]);
}

/* How far a car is beyond the grip of the road at its front and rear wheels, over the weight, and
 * beyond the rate at which the rear ones leave it: each straight in the forces. */
struct beyond {
    double of[3], z;
};

static inline struct beyond beyond_of(const struct search *search, const struct wheels *wheels)
{
    double front = wheels->of[0] > wheels->of[1] ? wheels->of[0] : wheels->of[1];
    double rear = wheels->of[2] > wheels->of[3] ? wheels->of[2] : wheels->of[3];
    double z = (sum_of(wheels) / search->weight + search->rolling) / (1 + search->rotating);
    double load = search->front_share + search->chi * z;
    double turning = search->rotating * z / 2, slack = search->rolling - search->grip;
    return (struct beyond){{2 * front / search->weight + slack * load - turning,
                            2 * rear / search->weight + slack * (1 - load) - turning,
                            z - search->lifts},
                           z};
}

static inline double most_of(const struct beyond *beyond)
{
    double most = beyond->of[0] > beyond->of[1] ? beyond->of[0] : beyond->of[1];
    return beyond->of[2] > most ? beyond->of[2] : most;
}

static double balance_of(const struct search *search, const struct pair *pair)
{
    int low = 0, high = search->rows.count - 1;
    struct wheels at_low = wheels_at(pair, low), at_high = wheels_at(pair, high);
    struct beyond a = beyond_of(search, &at_low), b = beyond_of(search, &at_high);
    if (!(most_of(&b) > 0) || most_of(&a) > 0)
        return isnan(most_of(&b)) ? NAN : INFINITY;
    while (high - low > 1) {
        int middle = (low + high) / 2;
        struct wheels at = wheels_at(pair, middle);
        struct beyond now = beyond_of(search, &at);
        if (most_of(&now) > 0) {
            high = middle;
            b = now;
        } else {
            low = middle;
            a = now;
        }
    }
    double first = 1;
    for (int i = 0; i < 3; i++)
        if (b.of[i] > 0)
            first = fmin(first, a.of[i] / (a.of[i] - b.of[i]));
    double at[2], z = a.z + first * (b.z - a.z), load = search->front_share + search->chi * z;
    for (int i = 0; i < 2; i++)
        at[i] = (a.of[i] + first * (b.of[i] - a.of[i])) / (i == 0 ? load : 1 - load);
    if (!(fmax(at[0], at[1]) > -1e-9 * search->grip))
        return INFINITY; /* the rear wheels leave the road before any locks */
    return (at[0] - at[1]) / search->grip;
}

/* Least left over the pedals of some states. */
static double left_of(const struct pair *pair, int from, int to, const struct stood *const *pedals)
{
    double least = INFINITY;
    for (int p = from; p < to; p++) {
        const double *most = pair->most->past[p], *last = pair->last->past[p];
        double floor = most[0] + last[0], past = floor;
        for (int k = 1; k < pedals[p]->count; k++) {
            double bore = most[k] + last[k];
            past = bore > past || isnan(past) ? bore : past;
        }
        double left = past > 0 || pedals[p]->dead ? 0 : -floor;
        least = left < least || isnan(left) ? left : least;
    }
    return least;
}

static void go_through_last(struct search *search, const struct added *most,
                            const struct stood *const *pedals)
{
    static const struct added nothing = {0};
    int axis = search->inner_count > 0 ? search->inner[search->inner_count - 1] : -1;
    int count = axis < 0 ? 1 : search->asked->axes[axis].count;
    for (int b = 0; b < count; b++) {
        struct pair pair = {most, axis < 0 ? &nothing : &search->shares[axis][b]};
        struct column_car car = {
            .foot = foot_of(search, &pair),
            .left = left_of(&pair, 0, search->lost_from, pedals),
            .lost = left_of(&pair, search->lost_from, search->most_from, pedals),
            .at_most = left_of(&pair, search->most_from, search->pedal_count, pedals),
            .balance = balance_of(search, &pair),
        };
        if (axis >= 0)
            search->at[axis] = b;
        search->take(search->at, &car, search->context);
    }
    search->done += count;
}

static bool tell(struct search *search)
{
    return search->progress == NULL ||
           search->progress(search->done / search->all, search->progress_context);
}

/* The inner axes but the last; sums[depth] is the share of those before. */
static bool go_through(struct search *search, int depth, struct added *sums,
                       const struct stood *const *pedals)
{
    if (depth >= search->inner_count - 1) {
        go_through_last(search, &sums[depth], pedals);
        return true;
    }
    int axis = search->inner[depth];
    for (int b = 0; b < search->asked->axes[axis].count; b++) {
        search->at[axis] = b;
        add_share(search, &sums[depth], &search->shares[axis][b], &sums[depth + 1]);
        if (!go_through(search, depth + 1, sums, pedals) || (depth == 0 && !tell(search)))
            return false;
    }
    return true;
}

static bool run_inner(struct search *search, struct added *sums)
{
    const struct stood *pedals[STATES * STATES];
    struct arena_mark mark = arena_mark(search->arena);
    reduce_all(search, search->arena);
    if (search->pedal_count > STATES)
        return false;
    work_out_shares(search);
    int at = 0;
    for (int s = 0; s < search->state_count; s++)
        for (int p = 0; p < search->states[s].pedal_count; p++)
            pedals[at++] = &search->states[s].pedals[p];
    sums[0] = search->base;
    bool fine = !search->rows.overflow && go_through(search, 0, sums, pedals) && tell(search);
    arena_release(search->arena, mark);
    return fine;
}

/* The masters' axes: they change the pressures, so all shares are worked out anew. */
static bool run_outer(struct search *search, int depth, struct added *sums)
{
    if (depth == search->outer_count)
        return run_inner(search, sums);
    int axis = search->outer[depth];
    const struct bore_axis *of = &search->asked->axes[axis];
    for (int b = 0; b < of->count; b++) {
        search->at[axis] = b;
        for (int p = 0; p < of->part_count; p++)
            bore_set(&search->car->parts[of->parts[p]], of->bores[b]);
        if (!run_outer(search, depth + 1, sums))
            return false;
    }
    return true;
}

static void part_axes(struct search *search)
{
    const struct columns_asked *asked = search->asked;
    search->without = ARENA_ARRAY(search->arena, (size_t)asked->system->part_count + 1, bool);
    search->all = 1;
    for (int a = 0; a < asked->axis_count; a++) {
        bool brake = kind_is_brake(asked->system->parts[asked->axes[a].parts[0]].kind);
        if (brake)
            search->inner[search->inner_count++] = a;
        else
            search->outer[search->outer_count++] = a;
        for (int p = 0; brake && p < asked->axes[a].part_count; p++)
            search->without[asked->axes[a].parts[p]] = true;
        search->all *= asked->axes[a].count;
    }
}

static void take_vehicle(struct search *search)
{
    const struct vehicle *vehicle = system_vehicle(search->asked->system);
    double rolling = vehicle->rolling.value * STANDARD_GRAVITY;
    search->rolling = vehicle->rolling.value;
    search->rotating = vehicle->rotating.of_1;
    search->weight = vehicle->mass.kg * STANDARD_GRAVITY;
    search->front_share = vehicle->front_share.of_1;
    search->chi = vehicle->centre_height.m / vehicle->wheelbase.m;
    search->grip = vehicle->tyre_grip.value;
    search->lifts = vehicle_lifts_at(vehicle).m_s2 / STANDARD_GRAVITY;
    search->wanted =
        (search->asked->stop.m_s2 * (1 + search->rotating) - rolling) * vehicle->mass.kg;
}

/* Air is spread over all fluid of its circuit, so that what a cylinder adds hangs on the others. */
static bool has_air(const struct system *system)
{
    for (int i = 0; i < system->part_count; i++)
        if (system->parts[i].kind == KIND_FLUID && system->parts[i].as.fluid.air.m3 != 0)
            return true;
    return false;
}

bool columns_run(const struct columns_asked *asked, column_take take, void *context,
                 column_progress progress, void *progress_context, struct arena *arena)
{
    if (has_air(asked->system))
        return false;
    struct search *search = ARENA_NEW(arena, struct search);
    *search = (struct search){.asked = asked,
                              .take = take,
                              .context = context,
                              .progress = progress,
                              .progress_context = progress_context,
                              .arena = arena};
    search->car = system_copy(asked->system, arena);
    search->room = solution_room(search->car, asked->network, arena);
    part_axes(search);
    take_vehicle(search);
    list_states(search);
    reduce_all(search, arena);
    size_t stretches = (size_t)search->states[0].reduced->stretch_count + 1;
    search->pressures = ARENA_ARRAY(arena, stretches, double);
    search->scratch = ARENA_ARRAY(arena, 2 * stretches, double);
    for (int i = 0; i < search->inner_count; i++)
        work_out_axis(search, search->inner[i]);
    struct added *sums = ARENA_ARRAY(arena, COLUMN_AXES + 1, struct added);
    return run_outer(search, 0, sums);
}
