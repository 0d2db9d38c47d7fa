#include "advice/choice/choice.h"

#include <math.h>
#include <string.h>

#include "advice/common/limits.h"
#include "advice/figures/part_bore.h"
#include "physics/clutch_release.h"
#include "physics/pressure.h"

/* A balance that is not worse as far as it is shown, in whole parts of a hundred. */
#define ROUNDING 5e-3
/* A limit of nothing is a part of this much. */
#define LEAST_SCALE 1e-3

/* clang-format off */
static const struct choice_limit_row rows[] = {
    [CHOICE_FOOT] = {"foot", DIMENSION_FORCE, true, false, "deceleration",
                     "most effort for the stop"},
    [CHOICE_LEFT] = {"pedal left", DIMENSION_LENGTH, false, false, "pedal-left",
                     "least travel left to the floor"},
    [CHOICE_LOST] = {"circuit lost", DIMENSION_LENGTH, false, false, "left-circuit-lost",
                     "least travel left with a circuit lost"},
    [CHOICE_BALANCE] = {"balance", DIMENSION_SHARE, false, false, "rear-lock-margin",
                        "least margin until the rear locks"},
    [CHOICE_CLUTCH_FOOT] = {"clutch foot", DIMENSION_FORCE, true, true, "clutch-effort",
                            "most effort at the clutch pedal"},
    [CHOICE_LIFT] = {"clutch lift", DIMENSION_LENGTH, false, true, "bearing-travel-spare",
                     "least bearing travel beyond what frees the clutch"},
};
/* clang-format on */

const struct choice_limit_row *choice_limit_row(enum choice_limit limit)
{
    return &rows[limit];
}

/* How far a map goes from the bore that is there. */
#define MAP_FROM 0.6
#define MAP_TO   1.6

struct choosing {
    const struct system *system;
    const struct network *network;
    const struct choice_asked *asked;
    struct chosen *choice;
    struct choice_group *group;
    struct system *tried; /* for what a car must be solved for as a whole */
    struct solution *room;
    const struct bore_axis *trying; /* axes other than those asked, by place in the group; NULL */
    bool only_before;               /* the car as it is, to set the limits by */
    bool only_map;                  /* the even steps of a map */
    struct arena *arena;
};

/* --- a car against the limits ---------------------------------------------------------------- */

static double beyond_limit(enum choice_limit limit, double value, double at)
{
    if (isnan(at))
        return -INFINITY;
    double over = rows[limit].most ? value - at : at - value;
    return isnan(over) ? INFINITY : over / fmax(fabs(at), LEAST_SCALE);
}

static void measure(const struct choice_group *group, struct choice_car *car)
{
    car->beyond = -INFINITY;
    for (int limit = 0; limit < CHOICE_LIMITS; limit++) {
        double over =
            beyond_limit((enum choice_limit)limit, car->values[limit], group->limits[limit]);
        if (limit == CHOICE_BALANCE && !(over > 0))
            continue; /* kept or not */
        if (over > car->beyond) {
            car->beyond = over;
            car->by = (enum choice_limit)limit;
        }
    }
}

static void put_in(struct choice_car *list, int *count, const struct choice_car *car)
{
    if (*count == CHOICE_SHOWN && !(car->beyond < list[CHOICE_SHOWN - 1].beyond))
        return;
    int at = *count < CHOICE_SHOWN ? (*count)++ : CHOICE_SHOWN - 1;
    for (; at > 0 && list[at - 1].beyond > car->beyond; at--)
        list[at] = list[at - 1];
    list[at] = *car;
}

/* Which limits stand in its way. */
static void count_broken(struct choice_group *group, const struct choice_car *car)
{
    int broken = 0, last = -1;
    for (int limit = 0; limit < CHOICE_LIMITS; limit++) {
        double at = group->limits[limit], value = car->values[limit];
        if (!(beyond_limit((enum choice_limit)limit, value, at) > 0))
            continue;
        group->broken[limit]++;
        broken++;
        last = limit;
    }
    if (broken != 1)
        return;
    double shift = fabs(car->values[last] - group->limits[last]);
    if (group->alone[last]++ == 0 || shift < group->shift[last])
        group->shift[last] = shift;
}

static void put_on_map(struct choice_group *group, const struct choice_car *car)
{
    int x = car->at[group->axes[0]], y = car->at[group->axes[1]];
    group->map->foot[x][y] = car->values[CHOICE_FOOT];
    group->map->left[x][y] = car->values[CHOICE_LEFT];
    group->map->suits[x][y] = !(car->beyond > 0);
}

static void take_car(struct choosing *choosing, struct choice_car *car)
{
    struct choice_group *group = choosing->group;
    if (choosing->only_before) {
        group->before = *car;
        return;
    }
    measure(group, car);
    if (choosing->only_map) {
        put_on_map(group, car);
        return;
    }
    if (group->map != NULL) {
        const struct bore_axis *second = &choosing->asked->axes[group->axes[1]];
        group->map->tried[car->at[group->axes[0]] * second->count + car->at[group->axes[1]]] =
            !(car->beyond > 0);
    }
    group->count++;
    if (!(car->beyond > 0)) {
        group->suits++;
        put_in(group->best, &group->best_count, car);
        return;
    }
    put_in(group->nearest, &group->nearest_count, car);
    count_broken(group, car);
}

/* --- brakes ---------------------------------------------------------------------------------- */

static void set_bores(struct choosing *choosing, const int *at)
{
    const struct choice_group *group = choosing->group;
    for (int a = 0; a < group->axis_count; a++) {
        const struct bore_axis *axis = choosing->trying != NULL
                                           ? &choosing->trying[a]
                                           : &choosing->asked->axes[group->axes[a]];
        for (int p = 0; p < axis->part_count; p++)
            bore_set(&choosing->tried->parts[axis->parts[p]], axis->bores[at[a]]);
    }
}

/* Whether the pedal gets as far as the foot asks for, of a car that needs more foot than usual and
 * would be on the floor with the most. */
static bool reaches(struct choosing *choosing, const int *at, double foot)
{
    struct state state = state_usual();
    set_bores(choosing, at);
    return solve_effort_fits(choosing->tried, choosing->network, &state, (struct force){foot},
                             choosing->room);
}

static double usual_effort(const struct choosing *choosing)
{
    double least = choosing->asked->effort.n;
    for (int p = 0; isnan(choosing->asked->effort.n) && p < choosing->room->brake_pedal_count; p++)
        least = fmin(least, choosing->system->parts[choosing->room->brake_pedals[p]]
                                .as.pedal.effort.n); /* fmin passes over NaN */
    return least;
}

static void take_brakes(const int *at, const struct column_car *column, void *context)
{
    struct choosing *choosing = context;
    const struct choice_group *group = choosing->group;
    struct choice_car car = {.at = {-1, -1, -1, -1}};
    for (int a = 0; a < group->axis_count; a++)
        car.at[group->axes[a]] = at[a];
    for (int limit = 0; limit < CHOICE_LIMITS; limit++)
        car.values[limit] = NAN;
    car.values[CHOICE_FOOT] = column->foot;
    car.values[CHOICE_LEFT] = column->left;
    car.values[CHOICE_LOST] = column->lost;
    car.values[CHOICE_BALANCE] = column->balance;
    bool may_reach = choosing->only_before || column->at_most > 0 ||
                     (column->left > 0 && column->foot <= usual_effort(choosing));
    if (!may_reach && column->foot <= group->limits[CHOICE_FOOT] &&
        !reaches(choosing, at, column->foot))
        car.values[CHOICE_FOOT] = INFINITY;
    take_car(choosing, &car);
}

static void run_brakes(struct choosing *choosing, const struct bore_axis *axes)
{
    const struct choice_asked *asked = choosing->asked;
    struct choice_group *group = choosing->group;
    struct columns_asked columns = {
        .system = choosing->system,
        .network = choosing->network,
        .axis_count = group->axis_count,
        .effort = asked->effort,
        .stop = choosing->choice->stop,
        .most_foot = {choosing->only_before ? NAN : group->limits[CHOICE_FOOT]}};
    memcpy(columns.axes, axes, sizeof columns.axes);
    group->unfinished = !columns_run(&columns, take_brakes, choosing,
                                     choosing->only_before ? NULL : asked->progress,
                                     asked->progress_context, choosing->arena);
}

/* --- clutch ---------------------------------------------------------------------------------- */

static struct choice_car clutch_now(struct choosing *choosing, const int *at)
{
    struct choice_car car = {.at = {-1, -1, -1, -1}};
    const struct choice_group *group = choosing->group;
    for (int a = 0; a < group->axis_count; a++)
        car.at[group->axes[a]] = at[a];
    for (int limit = 0; limit < CHOICE_LIMITS; limit++)
        car.values[limit] = NAN;
    car.values[CHOICE_CLUTCH_FOOT] = 0;
    car.values[CHOICE_LIFT] = INFINITY;
    for (int i = 0; i < choosing->tried->part_count; i++) {
        const struct part *part = &choosing->tried->parts[i];
        if (part->kind != KIND_SLAVE)
            continue;
        struct clutch_state state =
            clutch_release(choosing->tried, choosing->network, i, choosing->room);
        double spare = state.bearing_travel.m - part->as.slave.bearing_travel.m;
        double foot = state.effort.n;
        if (!(foot <= car.values[CHOICE_CLUTCH_FOOT]))
            car.values[CHOICE_CLUTCH_FOOT] = foot;
        if (!(spare >= car.values[CHOICE_LIFT]))
            car.values[CHOICE_LIFT] = spare;
    }
    return car;
}

static void run_clutch(struct choosing *choosing, const struct bore_axis *axes)
{
    const struct choice_group *group = choosing->group;
    int at[COLUMN_AXES] = {0}, depth = 0;
    while (depth >= 0) {
        set_bores(choosing, at);
        struct choice_car car = clutch_now(choosing, at);
        take_car(choosing, &car);
        for (depth = group->axis_count - 1; depth >= 0 && ++at[depth] == axes[depth].count; depth--)
            at[depth] = 0;
    }
}

/* --- limits ---------------------------------------------------------------------------------- */

static double pedal_travel(const struct choosing *choosing)
{
    double most = NAN;
    for (int p = 0; p < choosing->room->brake_pedal_count; p++)
        most = fmax(
            most, pedal_end(&choosing->system->parts[choosing->room->brake_pedals[p]].as.pedal).m);
    return most;
}

static double frees_at(const struct system *system)
{
    int slave = system_first(system, KIND_SLAVE);
    return slave < 0 ? NAN : system->parts[slave].as.slave.bearing_travel.m;
}

static double usual_limit(const struct choosing *choosing, enum choice_limit limit)
{
    const double *before = choosing->group->before.values;
    switch (limit) {
    case CHOICE_FOOT:
        return before[CHOICE_FOOT] * (1 + limit_value("fit-effort-change-most"));
    case CHOICE_LEFT:
    case CHOICE_LOST:
        if (isinf(before[limit])) /* no pedal goes on without a circuit */
            return NAN;
        return limit_value("floor-margin-least") * pedal_travel(choosing);
    case CHOICE_BALANCE:
        return isinf(before[limit]) ? limit_value("rear-lock-margin-least")
                                    : before[limit] - ROUNDING;
    case CHOICE_CLUTCH_FOOT:
        return limit_value("clutch-effort-most");
    case CHOICE_LIFT:
        return limit_value("bearing-margin-least") * frees_at(choosing->system);
    case CHOICE_LIMITS:
        break;
    }
    return NAN;
}

/* A figure that a limit is about and that is not known, NULL. */
static const struct figure *lacking(struct choosing *choosing)
{
    const struct choice_group *group = choosing->group;
    bool known = true;
    for (int limit = 0; limit < CHOICE_LIMITS; limit++)
        known =
            known && (rows[limit].clutch != group->clutch || !isnan(group->before.values[limit]));
    if (known)
        return NULL;
    struct figures *figures = ARENA_NEW(choosing->arena, struct figures);
    *figures =
        figures_of(choosing->system, choosing->network, choosing->asked->effort, choosing->arena);
    const struct figure *any = NULL;
    for (int limit = 0; limit < CHOICE_LIMITS; limit++)
        for (int i = 0; rows[limit].clutch == group->clutch && i < figures->count; i++) {
            const struct figure *figure = &figures->items[i];
            bool asked = strcmp(figure->row->id, rows[limit].figure) == 0;
            if (asked && (any == NULL || (any->state != FIGURE_NOT_COMPUTED &&
                                          figure->state == FIGURE_NOT_COMPUTED)))
                any = figure;
        }
    return any;
}

/* --- groups ---------------------------------------------------------------------------------- */

static bool is_of_clutch(const struct choosing *choosing, int part)
{
    const struct network *network = choosing->network;
    bool clutch = choosing->system->parts[part].kind == KIND_SLAVE, brake = false;
    for (int c = 0; c < network->circuit_count; c++) {
        bool fed = network->circuits[c].master == part;
        clutch = clutch || (fed && network->circuits[c].clutch);
        brake = brake || (fed && !network->circuits[c].clutch);
    }
    return clutch && !brake;
}

static void add_group(struct choosing *choosing, bool clutch)
{
    struct choice_group *group = &choosing->choice->groups[choosing->choice->group_count];
    *group = (struct choice_group){.clutch = clutch};
    for (int a = 0; a < choosing->asked->axis_count; a++)
        if (is_of_clutch(choosing, choosing->asked->axes[a].parts[0]) == clutch)
            group->axes[group->axis_count++] = a;
    choosing->choice->group_count += group->axis_count > 0;
}

static void run(struct choosing *choosing, const struct bore_axis *axes)
{
    if (choosing->group->clutch)
        run_clutch(choosing, axes);
    else
        run_brakes(choosing, axes);
}

/* The car as it is: every axis with the one bore that it has. */
static void look_before(struct choosing *choosing)
{
    struct bore_axis now[COLUMN_AXES];
    struct choice_group *group = choosing->group;
    struct choice_car car;
    choosing->only_before = true;
    if (group->clutch) {
        group->before = clutch_now(choosing, (const int[COLUMN_AXES]){0});
    } else {
        for (int a = 0; a < group->axis_count; a++) {
            struct length *bore = ARENA_NEW(choosing->arena, struct length);
            now[a] = choosing->asked->axes[group->axes[a]];
            *bore = part_bore(&choosing->system->parts[now[a].parts[0]]);
            now[a].bores = bore;
            now[a].count = 1;
        }
        run(choosing, now);
    }
    choosing->only_before = false;
    car = group->before;
    for (int a = 0; a < COLUMN_AXES; a++)
        car.at[a] = -1;
    group->before = car;
}

static struct choice_map *map_of(const struct choosing *choosing)
{
    const struct choice_group *group = choosing->group;
    struct choice_map *map = ARENA_NEW(choosing->arena, struct choice_map);
    size_t cars = 1;
    for (int a = 0; a < 2; a++) {
        const struct bore_axis *axis = &choosing->asked->axes[group->axes[a]];
        map->least[a] = map->most[a] = axis->bores[0].m;
        for (int b = 1; b < axis->count; b++) {
            map->least[a] = fmin(map->least[a], axis->bores[b].m);
            map->most[a] = fmax(map->most[a], axis->bores[b].m);
        }
        double now = part_bore(&choosing->system->parts[axis->parts[0]]).m;
        map->least[a] = fmax(map->least[a], MAP_FROM * now);
        map->most[a] = fmin(map->most[a], MAP_TO * now);
        cars *= (size_t)axis->count;
    }
    map->tried = ARENA_ARRAY(choosing->arena, cars, bool);
    return map;
}

/* Fills a map at its even steps. */
static void fill_map(struct choosing *choosing)
{
    const struct choice_group *group = choosing->group;
    struct bore_axis axes[COLUMN_AXES] = {{0}};
    for (int a = 0; a < 2; a++) {
        struct length *bores = ARENA_ARRAY(choosing->arena, CHOICE_MAP, struct length);
        for (int i = 0; i < CHOICE_MAP; i++)
            bores[i].m = group->map->least[a] +
                         i * (group->map->most[a] - group->map->least[a]) / (CHOICE_MAP - 1);
        axes[a] = choosing->asked->axes[group->axes[a]];
        axes[a].bores = bores;
        axes[a].count = CHOICE_MAP;
    }
    choosing->only_map = true;
    choosing->trying = axes;
    run(choosing, axes);
    choosing->trying = NULL;
    choosing->only_map = false;
}

static void run_group(struct choosing *choosing)
{
    struct choice_group *group = choosing->group;
    struct bore_axis axes[COLUMN_AXES] = {{0}};
    look_before(choosing);
    group->lacks = lacking(choosing);
    for (int limit = 0; limit < CHOICE_LIMITS; limit++) {
        double said = choosing->asked->limits[limit];
        group->limits[limit] = rows[limit].clutch != group->clutch ? NAN
                               : isnan(said) ? usual_limit(choosing, (enum choice_limit)limit)
                                             : said;
    }
    if (group->lacks != NULL)
        return;
    measure(group, &group->before);
    for (int a = 0; a < group->axis_count; a++)
        axes[a] = choosing->asked->axes[group->axes[a]];
    if (choosing->asked->map && group->axis_count == 2 && !group->clutch)
        group->map = map_of(choosing);
    run(choosing, axes);
    if (group->map != NULL && !group->unfinished)
        fill_map(choosing);
}

static struct acceleration stop_now(const struct choosing *choosing)
{
    struct state state = state_usual();
    state.effort = choosing->asked->effort;
    state.no_clutch = true;
    solve(choosing->system, choosing->network, &state, choosing->room);
    return choosing->room->deceleration;
}

static bool any_assumed(const struct system *system)
{
    for (int i = 0; i < system->part_count; i++) {
        size_t count;
        const struct key *keys = key_table(system->parts[i].kind, &count);
        for (size_t k = 0; k < count; k++)
            if (keys[k].solves != SOLVES_NOTHING &&
                part_origin(&system->parts[i], keys[k].field)->kind == ORIGIN_ASSUMED)
                return true;
    }
    return false;
}

struct chosen *choose(const struct system *system, const struct network *network,
                      const struct choice_asked *asked, struct arena *arena)
{
    struct chosen *choice = ARENA_NEW(arena, struct chosen);
    struct choosing choosing = {.system = system,
                                .network = network,
                                .asked = asked,
                                .choice = choice,
                                .tried = system_copy(system, arena),
                                .room = solution_room(system, network, arena),
                                .arena = arena};
    choice->asked = asked;
    choice->assumed = any_assumed(system);
    choice->stop = isnan(asked->stop.m_s2) ? stop_now(&choosing) : asked->stop;
    add_group(&choosing, false);
    add_group(&choosing, true);
    for (int g = 0; g < choice->group_count; g++) {
        choosing.group = &choice->groups[g];
        run_group(&choosing);
    }
    return choice;
}
