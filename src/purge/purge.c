#include "purge/purge.h"

#include <math.h>

#include "purge/purge_state.h"
#include "units/constants.h"

/* Less air than this is none: a bubble of an eighth of a millimetre. */
#define NO_AIR 1e-12

/* Of waiting for a gas lock, s. */
#define WAIT 60.0

enum { SPLITS = 8, TRIES = 12, LEAST_PORTIONS = 32, MOST_WAITS = 60 };

/* A run under way. */
struct run {
    const struct purge_net *net;
    const struct purge_way *way;
    struct purge_room *room;
    struct purge_done *done;
    int turn;
    double level, air, at_first, left_by; /* in the reservoir; in the net now, at first; gone */
    double strokes, fluid;                /* in all */
};

static void keep_point(struct run *run)
{
    struct purge_room *room = run->room;
    struct purge_result *result = &room->result;
    if (room->most_points == 0 || ++room->skipped < room->stride)
        return;
    room->skipped = 0;
    if (result->point_count == room->most_points) {
        /* full: every other point goes, and only every other comes from now on */
        for (int i = 0; 2 * i + 1 < result->point_count; i++)
            result->curve[i] = result->curve[2 * i + 1];
        result->point_count /= 2;
        room->stride *= 2;
    }
    result->curve[result->point_count++] =
        (struct purge_point){run->strokes, run->fluid, run->air, run->turn};
}

static void note_balance(struct run *run, double difference)
{
    if (!(fabs(difference) <= run->room->result.worst_balance))
        run->room->result.worst_balance = fabs(difference);
}

static void check_balance(struct run *run)
{
    const struct purge_room *room = run->room;
    note_balance(run, run->at_first - run->left_by - purge_air(run->net, room));
    for (int i = 0; i < run->net->leg_count; i++)
        note_balance(run, slugs_volume(&room->legs[i]) - run->net->legs[i].volume);
}

/* Takes a volume from the reservoir, below 0 puts it back. */
static void draw(struct run *run, double volume)
{
    const double full = run->way->reservoir;
    if (!(full > 0)) {
        run->level = NAN;
        return;
    }
    if (run->level - volume < run->way->reserve && run->level < full) {
        run->level = full;
        run->done->top_ups++;
    }
    run->level = fmax(fmin(run->level - volume, full), 0);
}

/* What a move came to: a volume went in, fate came out, and air rose out through the master, for
 * which fluid came in from the reservoir. */
static void book(struct run *run, double volume, struct purge_fate fate, double rose,
                 double seconds, bool clear)
{
    struct purge_done *done = run->done;
    note_balance(run, volume - fate.air - fate.fluid);
    run->left_by += fate.air + rose;
    run->air -= fate.air + rose;
    done->air_out += fate.air + rose;
    done->time += seconds;
    draw(run, run->way->method == METHOD_REVERSE ? rose - fate.fluid : volume + rose);
    if (clear) {
        done->clear += volume;
        return;
    }
    const double strokes = run->way->method == METHOD_PEDAL ? 1 : volume / run->way->stroke;
    done->strokes += strokes;
    done->fluid += volume;
    done->waste += fate.fluid;
    run->strokes += strokes;
    run->fluid += volume;
    keep_point(run);
}

/* One stroke of the pedal; false when nothing moves. */
static bool stroke(struct run *run, bool clear)
{
    const struct purge_way *way = run->way;
    struct purge_room *room = run->room;
    double volume = way->stroke;
    if (way->shut_under_pressure)
        volume = purge_net_stroke(run->net, room, way);
    else if (room->with.leg_count > 0)
        purge_divide(run->net, room, way->stroke / way->stroke_time, way->stroke);
    const double seconds = way->stroke_time + way->pause_time;
    if (!(volume > NO_AIR))
        return false;
    const struct purge_fate fate = purge_push(run->net, room, volume, way->stroke_time);
    book(run, volume, fate, purge_rest(run->net, room, seconds), seconds, clear);
    return true;
}

/* Where air can rise against the flow, portions are small against the legs in which it does. */
static double portion_of(const struct run *run)
{
    const struct purge_room *room = run->room;
    double portion = run->way->stroke;
    for (int i = 0; i < room->path.leg_count; i++) {
        const int leg = room->path.legs[i];
        if (room->rise[leg] > 0)
            portion = fmin(portion, run->net->legs[leg].volume / SPLITS);
    }
    return fmax(portion, run->way->stroke / LEAST_PORTIONS);
}

static double steady_flow(const struct run *run, double portion)
{
    struct purge_room *room = run->room;
    double push = run->way->push;
    push -= STANDARD_GRAVITY * run->net->density * purge_lost_head(run->net, room, &room->path);
    double flow = flow_driven(purge_divide(run->net, room, 1e-6, portion), push);
    /* how two nipples share depends on the flow itself */
    for (int i = 0; i < TRIES && room->with.leg_count > 0 && flow > 0 && isfinite(flow); i++)
        flow = flow_driven(purge_divide(run->net, room, flow, portion), push);
    /* nothing resists an empty pipe; then a pedal's stroke sets the pace */
    const double most = run->way->stroke / run->way->stroke_time;
    return flow > most ? most : flow;
}

/* A lock that the air's own rise may open: one waits, a minute at a time. */
static double flow_after_waiting(struct run *run, double portion)
{
    double flow = steady_flow(run, portion);
    for (int i = 0; i < MOST_WAITS && !(flow > 0); i++) {
        const double lost = purge_lost_head(run->net, run->room, &run->room->path);
        book(run, 0, (struct purge_fate){0}, purge_rest(run->net, run->room, WAIT), WAIT, false);
        if (!(purge_lost_head(run->net, run->room, &run->room->path) < lost))
            break;
        flow = steady_flow(run, portion);
    }
    return flow;
}

/* A portion of steady flow; false when it does not flow. */
static bool portion(struct run *run, bool clear)
{
    struct purge_room *room = run->room;
    const double volume = portion_of(run);
    const double flow = flow_after_waiting(run, volume);
    if (!(flow > 0))
        return false;
    double seconds = volume / flow;
    /* rise first: a slug that outruns the flow must not be carried out before it could */
    double rose = purge_rest(run->net, room, seconds);
    const struct purge_fate fate = run->way->method == METHOD_REVERSE
                                       ? purge_push_back(run->net, room, volume, seconds)
                                       : purge_push(run->net, room, volume, seconds);
    /* as fluid takes the place of air it goes slower and slower: the mean of both ends */
    const double after = steady_flow(run, volume);
    const double longer = after > 0 ? (volume / after - seconds) / 2 : 0;
    if (longer > 0)
        rose += purge_rest(run->net, room, longer);
    seconds += longer;
    book(run, volume, fate, rose, seconds, clear);
    return true;
}

static bool move(struct run *run, bool clear)
{
    return run->way->method == METHOD_PEDAL ? stroke(run, clear) : portion(run, clear);
}

static bool air_on_the_way(const struct run *run)
{
    const struct purge_room *room = run->room;
    double air = purge_air_on(run->net, room, &room->path);
    if (room->with.leg_count > 0)
        air = fmax(air, purge_air_on(run->net, room, &room->with));
    return air > NO_AIR;
}

/* A way through a part that lets no fluid at rest through. */
static bool is_shut(const struct run *run)
{
    const struct purge_path *paths[2] = {&run->room->path, &run->room->with};
    for (int k = 0; k < 2; k++) {
        for (int i = 0; i < paths[k]->leg_count; i++) {
            if (run->net->legs[paths[k]->legs[i]].shut)
                return true;
        }
    }
    return false;
}

/* Fluid that follows shows that the air is out. */
static bool is_done(const struct run *run)
{
    return !air_on_the_way(run) && (!(run->done->strokes > 0) || run->done->waste > NO_AIR);
}

static void bleed(struct run *run, const struct purge_turn *turn)
{
    struct purge_done *done = run->done;
    *done = (struct purge_done){0};
    purge_open(run->net, turn, run->room);
    done->gave_up = is_shut(run);
    while (!done->gave_up && !is_done(run)) {
        if (!(done->strokes < run->way->most_strokes) || !move(run, false)) {
            done->gave_up = true;
            break;
        }
    }
    const double end = run->way->clear_strokes * run->way->stroke;
    for (int i = 0; i < run->way->clear_strokes * LEAST_PORTIONS; i++) {
        const bool enough = run->way->method == METHOD_PEDAL ? i >= run->way->clear_strokes
                                                             : done->clear >= end * (1 - 1e-9);
        if (done->gave_up || enough || !move(run, true))
            break;
    }
    done->air_left = purge_air(run->net, run->room);
    done->reservoir = run->level;
    check_balance(run);
}

static void start(struct run *run)
{
    struct purge_result *result = &run->room->result;
    purge_fill(run->net, run->room);
    run->at_first = run->air = purge_air(run->net, run->room);
    run->level = run->way->reservoir > 0 ? run->way->reservoir : NAN;
    result->turn_count = result->point_count = 0;
    result->worst_balance = 0;
    run->room->stride = 1;
    run->room->skipped = 0;
    keep_point(run);
}

static void finish(struct run *run)
{
    struct purge_room *room = run->room;
    struct purge_result *result = &room->result;
    result->fluid = result->waste = result->strokes = 0;
    for (int i = 0; i < result->turn_count; i++) {
        result->fluid += result->turns[i].fluid;
        result->waste += result->turns[i].waste;
        result->strokes += result->turns[i].strokes;
    }
    result->trapped = purge_trapped(run->net, room);
    result->air_left = fmax(purge_air(run->net, room) - result->trapped, 0);
    for (int i = 0; i < run->net->leg_count; i++)
        result->air_in_legs[i] = room->air[i];
    for (int i = 0; i < run->net->pot_count; i++)
        result->air_in_pots[i] = room->pot_air[i];
}

const struct purge_result *purge_run(const struct purge_net *net, const struct purge_way *way,
                                     const struct purge_turn *turns, int turn_count,
                                     struct purge_room *room)
{
    struct run run = {.net = net, .way = way, .room = room};
    start(&run);
    for (int i = 0; i < turn_count && i < room->most_turns; i++) {
        run.turn = i;
        run.done = &room->result.turns[i];
        room->result.turn_count++;
        bleed(&run, &turns[i]);
    }
    finish(&run);
    return &room->result;
}
