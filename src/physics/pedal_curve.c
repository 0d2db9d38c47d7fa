#include "physics/pedal_curve.h"

#include <math.h>
#include <string.h>

#include "physics/press.h"
#include "physics/pressure.h"

/* Two points of a curve never come nearer than this part of the whole effort, so that a jump (a
 * servo that cuts in) does not draw all of them. */
#define NEAREST (1.0 / 512)

const char *travel_cause_words(enum travel_cause cause)
{
    switch (cause) {
    case TRAVEL_FREE_PLAY:
        return "free play";
    case TRAVEL_ROD_GAP:
        return "push rod gap";
    case TRAVEL_SERVO:
        return "servo's lost motion";
    case TRAVEL_CUT_OFF:
        return "covering the ports";
    case TRAVEL_LOST:
        return "the lost circuit's piston";
    case TRAVEL_CLEARANCE:
        return cause_words(CAUSE_CLEARANCE);
    case TRAVEL_LININGS:
        return cause_words(CAUSE_LININGS);
    case TRAVEL_BODY:
        return cause_words(CAUSE_BODY);
    case TRAVEL_HOSES:
        return cause_words(CAUSE_HOSES);
    case TRAVEL_FLUID:
        return cause_words(CAUSE_FLUID);
    case TRAVEL_PIPES:
        return cause_words(CAUSE_PIPES);
    case TRAVEL_AIR:
        return cause_words(CAUSE_AIR);
    case TRAVEL_FLEXING:
        return "pedal and bracket bending";
    case TRAVEL_CAUSE_COUNT:
        break;
    }
    return "";
}

/* Where the volume of a cause is counted as travel; the slave of a clutch takes none of it. */
static enum travel_cause travel_cause_of(enum cause cause)
{
    switch (cause) {
    case CAUSE_CLEARANCE:
        return TRAVEL_CLEARANCE;
    case CAUSE_LININGS:
        return TRAVEL_LININGS;
    case CAUSE_BODY:
        return TRAVEL_BODY;
    case CAUSE_HOSES:
        return TRAVEL_HOSES;
    case CAUSE_FLUID:
        return TRAVEL_FLUID;
    case CAUSE_PIPES:
        return TRAVEL_PIPES;
    case CAUSE_AIR:
        return TRAVEL_AIR;
    case CAUSE_SLAVE:
    case CAUSE_COUNT:
        break;
    }
    return TRAVEL_CAUSE_COUNT;
}

/* clang-format off */
#define USUAL .effort = {NAN}, .assisted = true, .lost_circuit = -1, .pedal = -1

static const struct curve_case cases[] = {
    {"usual", "as described", {USUAL}, false},
    {"new", "new linings", {USUAL, .brakes = {.linings = LININGS_NEW}}, false},
    {"worn", "linings worn to their limit", {USUAL, .brakes = {.linings = LININGS_WORN}}, false},
    {"slack", "adjusters not set", {USUAL, .brakes = {.slack = true}}, false},
    {"hot", "brakes and fluid hot", {USUAL, .brakes = {.hot = true}}, false},
    {"knocked-back", "first stroke, pads knocked back",
     {USUAL, .brakes = {.knocked_back = true}}, false},
    {"worn-hoses", "all hoses worn", {USUAL, .hoses = HOSES_WORN}, false},
    {"air", "1 mL more air in each circuit", {USUAL, .more_air = {1e-6}}, false},
    {"unassisted", "servo without vacuum",
     {.effort = {NAN}, .assisted = false, .lost_circuit = -1, .pedal = -1}, false},
    {"lost", "one circuit lost", {USUAL}, true},
};
/* clang-format on */

const struct curve_case *curve_cases(size_t *count)
{
    *count = sizeof cases / sizeof cases[0];
    return cases;
}

const struct curve_case *curve_case(const char *id)
{
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        if (strcmp(cases[i].id, id) == 0)
            return &cases[i];
    return NULL;
}

static int pedal_of(const struct system *system, const struct network *network, int circuit)
{
    return pressure_pedal_of(system, network->circuits[circuit].master);
}

/* Whether a pedal's circuits reach a part of that kind; hoses are on the way, servos in it or
 * before it. */
static bool pedal_reaches(const struct system *system, const struct network *network, int pedal,
                          enum part_kind kind)
{
    for (int i = 0; i < network->edge_count; i++) {
        int circuit = network->edges[i].circuit, part = network->edges[i].part;
        if (circuit >= 0 && part >= 0 && system->parts[part].kind == kind &&
            pedal_of(system, network, circuit) == pedal)
            return true;
    }
    for (int i = 0; i < network->vertex_count; i++) {
        int circuit = network->vertices[i].circuit;
        if (circuit >= 0 && system->parts[network->vertices[i].part].kind == kind &&
            pedal_of(system, network, circuit) == pedal)
            return true;
    }
    return false;
}

static bool is_assisted(const struct system *system, const struct network *network, int pedal)
{
    for (size_t i = 0; i < system->parts[pedal].as.pedal.works.count; i++) {
        int master = pressure_worked_master(system, pedal, i);
        if (master >= 0 && pressure_servo_of(system, master) >= 0)
            return true;
    }
    return pedal_reaches(system, network, pedal, KIND_SERVO);
}

static int circuits_of(const struct system *system, const struct network *network, int pedal)
{
    int count = 0;
    for (int c = 0; c < network->circuit_count; c++)
        count += pedal_of(system, network, c) == pedal;
    return count;
}

bool curve_case_is_of(const struct system *system, const struct network *network, int pedal,
                      const struct curve_case *row)
{
    const struct brake_case *brakes = &row->state.brakes;
    bool drums = pedal_reaches(system, network, pedal, KIND_DRUM);
    bool discs = pedal_reaches(system, network, pedal, KIND_DISC);
    if (row->each_circuit)
        return circuits_of(system, network, pedal) > 1;
    if (!row->state.assisted)
        return is_assisted(system, network, pedal);
    if (row->state.hoses != HOSES_AS_SAID)
        return pedal_reaches(system, network, pedal, KIND_HOSE);
    if (brakes->slack)
        return drums;
    if (brakes->knocked_back)
        return discs;
    return brakes->linings == LININGS_AS_SAID || drums || discs;
}

struct pedal_curve *pedal_curve_room(const struct system *system, const struct network *network,
                                     int points, struct arena *arena)
{
    struct pedal_curve *curve = ARENA_NEW(arena, struct pedal_curve);
    curve->room = points < CURVE_LEAST_POINTS ? CURVE_LEAST_POINTS : points;
    curve->points = ARENA_ARRAY(arena, (size_t)curve->room, struct curve_point);
    curve->between = ARENA_ARRAY(arena, (size_t)curve->room, struct curve_point);
    curve->solution = solution_room(system, network, arena);
    return curve;
}

/* A curve in the making. */
struct drawing {
    const struct system *system;
    const struct network *network;
    const struct state *state;
    struct pedal_curve *curve;
};

/* What a master's push rod has gone for, at the pad. per: pad travel for a metre of this rod. */
static void add_master(const struct drawing *drawing, int master, double per,
                       struct curve_point *point)
{
    struct length *by_cause = point->by_cause;
    by_cause[TRAVEL_ROD_GAP].m += per * press_own_gap(drawing->system, master).m;
    by_cause[TRAVEL_SERVO].m +=
        per * press_lost_motion(drawing->system, master, drawing->state->assisted).m;
    for (int i = 0; i < drawing->curve->circuit_count; i++) {
        int circuit = drawing->curve->circuits[i];
        if (drawing->network->circuits[circuit].master != master)
            continue;
        const struct circuit_state *taken = &drawing->curve->solution->circuits[circuit];
        by_cause[TRAVEL_CUT_OFF].m += per * taken->rod_cut_off.m;
        by_cause[TRAVEL_LOST].m += per * taken->rod_lost.m;
        for (int cause = 0; cause < CAUSE_COUNT; cause++) {
            enum travel_cause at = travel_cause_of((enum cause)cause);
            if (at != TRAVEL_CAUSE_COUNT)
                by_cause[at].m += per * taken->rod_by_cause[cause].m;
        }
    }
}

static struct curve_point point_at(const struct drawing *drawing, double effort)
{
    struct pedal_curve *curve = drawing->curve;
    const struct pedal *pedal = &drawing->system->parts[curve->pedal].as.pedal;
    struct curve_point point = {.effort = {effort}};
    struct reach reach = press_travel(drawing->system, drawing->network, drawing->state,
                                      curve->pedal, point.effort, curve->solution);
    point.travel = reach.travel;
    for (int i = 0; i < curve->circuit_count; i++)
        point.by_circuit[i] = curve->solution->circuits[curve->circuits[i]].pressure;
    point.by_cause[TRAVEL_FREE_PLAY] = press_free_play(pedal);
    point.by_cause[TRAVEL_FLEXING].m = effort / pedal->stiffness.n_m;
    double ratio = pedal_ratio(pedal).value, first = pedal_bar_share(pedal).of_1;
    bool bar = pedal->works.count > 1;
    for (size_t i = 0; i < pedal->works.count; i++) {
        double share = !bar ? 1 : i == 0 ? first : 1 - first;
        add_master(drawing, pressure_worked_master(drawing->system, curve->pedal, i), ratio * share,
                   &point);
    }
    return point;
}

/* How far the middle of two points lies off their chord, as a part of the whole curve. */
static double bend(const struct pedal_curve *curve, int i)
{
    const struct curve_point *a = &curve->points[i], *b = &curve->points[i + 1];
    const struct curve_point *middle = &curve->between[i];
    const struct curve_point *last = &curve->points[curve->count - 1];
    double sum = fabs(middle->travel.m - (a->travel.m + b->travel.m) / 2) / last->travel.m;
    for (int c = 0; c < curve->circuit_count; c++) {
        double chord = (a->by_circuit[c].pa + b->by_circuit[c].pa) / 2;
        if (last->by_circuit[c].pa > 0)
            sum += fabs(middle->by_circuit[c].pa - chord) / last->by_circuit[c].pa;
    }
    return sum;
}

/* The piece that most wants a point in its middle: the most bent, or of all straight ones the
 * widest. */
static int piece_to_halve(const struct pedal_curve *curve)
{
    double end = curve->points[curve->count - 1].effort.n, most = -1;
    int at = 0;
    for (int i = 0; i + 1 < curve->count; i++) {
        double width = (curve->points[i + 1].effort.n - curve->points[i].effort.n) / end;
        double want = width < 2 * NEAREST ? 0 : bend(curve, i) + 1e-9 * width;
        if (want > most) {
            most = want;
            at = i;
        }
    }
    return at;
}

static void halve(const struct drawing *drawing, int i)
{
    struct pedal_curve *curve = drawing->curve;
    size_t after = (size_t)(curve->count - i - 1);
    memmove(&curve->points[i + 2], &curve->points[i + 1], after * sizeof *curve->points);
    memmove(&curve->between[i + 2], &curve->between[i + 1], after * sizeof *curve->points);
    curve->points[i + 1] = curve->between[i];
    curve->count++;
    for (int k = i; k < i + 2; k++)
        curve->between[k] =
            point_at(drawing, (curve->points[k].effort.n + curve->points[k + 1].effort.n) / 2);
}

static void draw(const struct drawing *drawing, double end)
{
    struct pedal_curve *curve = drawing->curve;
    int even = curve->room / 2;
    for (int i = 0; i < even; i++)
        curve->points[i] = point_at(drawing, i + 1 == even ? end : end * i / (even - 1));
    curve->count = even;
    for (int i = 0; i + 1 < even; i++)
        curve->between[i] =
            point_at(drawing, (curve->points[i].effort.n + curve->points[i + 1].effort.n) / 2);
    while (curve->count < curve->room)
        halve(drawing, piece_to_halve(curve));
}

/* A pedal that meets its floor before it presses anything: what does not fit is cut away. */
static void rest_on_floor(const struct drawing *drawing, double floor)
{
    struct curve_point point = point_at(drawing, 0);
    double left = floor;
    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++) {
        double taken = fmin(point.by_cause[cause].m, left);
        point.by_cause[cause].m = taken;
        left -= taken;
    }
    point.travel.m = floor;
    drawing->curve->points[0] = point;
    drawing->curve->count = 1;
}

void pedal_curve_solve(const struct system *system, const struct network *network, int pedal,
                       const struct state *state, struct pedal_curve *into)
{
    struct drawing drawing = {system, network, state, into};
    const struct pedal *data = &system->parts[pedal].as.pedal;
    into->pedal = pedal;
    into->asked = isnan(state->effort.n) ? data->effort : state->effort;
    into->count = into->circuit_count = 0;
    for (int c = 0; c < network->circuit_count; c++)
        if (pedal_of(system, network, c) == pedal && into->circuit_count < CURVE_MOST_CIRCUITS)
            into->circuits[into->circuit_count++] = c;

    solve(system, network, state, into->solution);
    struct pedal_state reached = into->solution->pedals[pedal];
    into->left = reached.left;
    into->on_floor = reached.on_floor;
    into->bottomed = reached.bottomed;
    if (!(reached.effort.n >= 0) || isnan(reached.travel.m))
        return;
    if (reached.effort.n > 0)
        draw(&drawing, reached.effort.n);
    else if (reached.on_floor)
        rest_on_floor(&drawing, reached.travel.m);
    else {
        into->points[0] = point_at(&drawing, 0);
        into->count = 1;
    }
}
