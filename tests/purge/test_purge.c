#include "purge/purge.h"
#include "purge/purge_state.h"

#include <math.h>
#include <string.h>

#include "support/near.h"

#define ML 1e-6

/* A tree of one trunk and two branches, all dry: trunk 20, near branch 12, far branch 22 mL, with
 * strokes of 8 mL; the fluid neither resists nor leaves a film. Constructed. */
struct toy {
    struct arena *arena;
    struct purge_leg legs[3];
    struct purge_nipple nipples[2];
    struct purge_net net;
};

static void toy_start(struct toy *toy)
{
    const double volumes[3] = {20 * ML, 12 * ML, 22 * ML};
    *toy = (struct toy){.arena = arena_create()};
    for (int i = 0; i < 3; i++)
        toy->legs[i] = (struct purge_leg){.above = i == 0 ? -1 : 0,
                                          .part = -1,
                                          .volume = volumes[i],
                                          .bore = 3.34e-3,
                                          .length = volumes[i] / 8.76e-6,
                                          .air = volumes[i]};
    for (int i = 0; i < 2; i++)
        toy->nipples[i] = (struct purge_nipple){.pot = -1, .leg = i + 1, .nipple = {-1, i}};
    toy->net = (struct purge_net){.legs = toy->legs,
                                  .leg_count = 3,
                                  .nipples = toy->nipples,
                                  .nipple_count = 2,
                                  .density = 1050,
                                  .viscosity = 0,
                                  .tension = 0.033};
}

enum { NEAR, FAR };

static const struct purge_way eight_ml = {.method = METHOD_PEDAL,
                                          .stroke = 8 * ML,
                                          .stroke_time = 1,
                                          .pause_time = 1,
                                          .reservoir = NAN,
                                          .most_strokes = 400};

static struct purge_result toy_run(const struct toy *toy, struct purge_way way, int first)
{
    const struct purge_turn turns[2] = {{first, -1}, {1 - first, -1}};
    struct purge_room *room = purge_room(&toy->net, 2, true, toy->arena);
    return *purge_run(&toy->net, &way, turns, 2, room);
}

static void held_open_the_order_makes_no_difference(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    for (int first = 0; first < 2; first++) {
        const struct purge_result result = toy_run(&toy, eight_ml, first);
        near(result.strokes, 8, 1e-12);
        near(result.fluid, 64 * ML, 1e-15);
        near(result.waste, 10 * ML, 1e-15);
        near(result.air_left, 0, 1e-15);
        assert_true(result.worst_balance < 1e-15);
    }
    arena_destroy(toy.arena);
}

static void shut_under_pressure_the_fuller_branch_first_is_quicker(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    struct purge_way way = eight_ml;
    way.shut_under_pressure = true;
    way.tee_pressure = 0.3e5;
    const double far_first = toy_run(&toy, way, FAR).strokes;
    const double near_first = toy_run(&toy, way, NEAR).strokes;
    /* Boyle by hand: far first each stroke moves 8 - 12 (0.3/1.31325) = 5.259 mL, so 42 mL take 8,
     * and 12 mL two more; near first 8 - 22 (0.3/1.31325) = 2.974 mL, so 32 mL take 11, and 22 mL
     * three more */
    near(far_first, 10, 1e-12);
    near(near_first, 14, 1e-12);
    way.tee_pressure = 1e5;
    const double far_hard = toy_run(&toy, way, FAR).strokes;
    /* 8 - 12 (1/2.01325) = 2.039 mL: 42 mL take 21, and two; near first 22 (1/2.01325) > 8 */
    near(far_hard, 23, 1e-12);
    assert_true(toy_run(&toy, way, NEAR).turns[0].gave_up);
    arena_destroy(toy.arena);
}

/* One pipe of 5/16 in, falling 0.6 m, full of fluid but for a slug of 3 mL, down to a nipple. */
static void wide_pipe(struct toy *toy, double climb)
{
    toy_start(toy);
    toy->net.leg_count = 1;
    toy->net.nipple_count = 1;
    toy->net.viscosity = 15e-6;
    toy->legs[0] = (struct purge_leg){.above = -1,
                                      .part = -1,
                                      .volume = 33.3e-6 * 1.2,
                                      .bore = 6.51e-3,
                                      .length = 1.2,
                                      .climb = climb,
                                      .air = 3 * ML};
    toy->nipples[0] = (struct purge_nipple){.pot = -1, .leg = 0, .nipple = {-1, 0}};
}

static struct purge_result one_turn(const struct toy *toy, struct purge_way way)
{
    const struct purge_turn turn = {0, -1};
    return *purge_run(&toy->net, &way, &turn, 1, purge_room(&toy->net, 1, true, toy->arena));
}

/* A slug in 5/16 in pipe rises 46 mm/s. Half a metre of head behind a thin line makes a flow of
 * some mm/s there: the slug goes up and out through the master instead of down to the nipple. With
 * so little head that its own fall locks the flow, waiting lets it rise. */
static void gravity_cannot_carry_a_slug_down_a_wide_pipe(void **state)
{
    (void)state;
    struct toy toy;
    wide_pipe(&toy, -0.6);
    struct purge_way way = eight_ml;
    way.method = METHOD_GRAVITY;
    for (int locked = 0; locked < 2; locked++) {
        way.push = locked ? 40 : 500;
        const struct purge_result slow = one_turn(&toy, way);
        assert_true(slow.turns[0].waste > 0 && slow.air_left < 1e-12);
        near(slow.turns[0].air_out, 3 * ML, 1e-12);
        assert_true(slow.fluid - slow.waste < 0.1 * ML);
    }
    arena_destroy(toy.arena);
}

static void pedal_strokes_carry_a_slug_down_a_wide_pipe(void **state)
{
    (void)state;
    struct toy toy;
    wide_pipe(&toy, -0.6);
    struct purge_way way = eight_ml;
    way.pause_time = 0;
    const struct purge_result result = one_turn(&toy, way);
    assert_true(result.fluid - result.waste > 2.9 * ML);
    assert_true(result.strokes <= 2);
    arena_destroy(toy.arena);
}

static void air_in_a_falling_leg_locks_gravity(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    toy.net.viscosity = 15e-6;
    toy.legs[0].climb = 0.3;
    toy.legs[2].climb = -0.5;
    struct purge_way way = eight_ml;
    way.method = METHOD_GRAVITY;
    way.push = 1050 * 9.80665 * 0.4;
    const struct purge_turn far = {FAR, -1};
    struct purge_room *room = purge_room(&toy.net, 1, false, toy.arena);
    const struct purge_result *result = purge_run(&toy.net, &way, &far, 1, room);
    assert_true(result->turns[0].gave_up);
    near(result->fluid, 0, 0);
    near(result->air_left, 54 * ML, 1e-15);
    way.push = 1050 * 9.80665 * 0.6;
    assert_false(purge_run(&toy.net, &way, &far, 1, room)->turns[0].gave_up);
    way.method = METHOD_PRESSURE;
    way.push = 1e5;
    assert_false(purge_run(&toy.net, &way, &far, 1, room)->turns[0].gave_up);
    arena_destroy(toy.arena);
}

/* 4.5 m of 3.34 mm pipe full of fluid: a kit of 1 bar gives 3.9 mL/s, gravity of half a metre 12.7
 * mL a minute (as in tests/reference/constructed_gravity.c). */
static void steady_methods_take_their_time(void **state)
{
    (void)state;
    struct toy toy;
    wide_pipe(&toy, 0);
    toy.legs[0].bore = 3.34e-3;
    toy.legs[0].length = 4.5;
    toy.legs[0].volume = 39.4e-6;
    toy.legs[0].air = 0;
    struct purge_way way = eight_ml;
    way.clear_strokes = 4;
    way.method = METHOD_PRESSURE;
    way.push = 1e5;
    near(one_turn(&toy, way).turns[0].clear, 32 * ML, 1e-15);
    near_rel(32 / one_turn(&toy, way).turns[0].time, 3.9, 0.02);
    way.method = METHOD_GRAVITY;
    way.push = 1050 * 9.80665 * 0.5;
    near_rel(32 / one_turn(&toy, way).turns[0].time * 60, 12.7, 0.005);
    way.push = NAN;
    near(one_turn(&toy, way).turns[0].clear, 0, 0);
    arena_destroy(toy.arena);
}

/* A dry level pipe of 4.5 m: the fluid's front meets more and more resistance, so that it takes
 * half the time of a full pipe's volume: R V/(2 p), R = 128 mu L/(pi D^4), by hand 89 s at half a
 * metre of head. */
static void a_dry_pipe_fills_in_half_the_time_of_a_full_one(void **state)
{
    (void)state;
    struct toy toy;
    wide_pipe(&toy, 0);
    toy.legs[0].bore = 3.34e-3;
    toy.legs[0].length = 4.5;
    toy.legs[0].volume = toy.legs[0].air = 39.4e-6;
    struct purge_way way = eight_ml;
    way.method = METHOD_GRAVITY;
    way.push = 1050 * 9.80665 * 0.5;
    way.stroke = 39.4e-6 / 8;
    const struct purge_done done = one_turn(&toy, way).turns[0];
    /* after the eighth portion comes the one that shows fluid, by the full pipe and the nipple: 4.9
     * mL at 12.7 mL a minute */
    near(done.fluid, 9 * way.stroke, 1e-12);
    const double resistance = 128 * 1050 * 15e-6 * 4.5 / (3.14159265 * pow(3.34e-3, 4));
    const double filling = resistance * 39.4e-6 / (2 * way.push);
    near(filling, 89, 0.5);
    near_rel(done.time, filling + 39.4 / 8 / 12.7 * 60, 0.02);
    arena_destroy(toy.arena);
}

/* A caliper of two halves behind one pipe: pot 0 near, pot 1 far behind it. */
static void two_halves(struct toy *toy, struct purge_pot pots[2], double pipe_air)
{
    wide_pipe(toy, 0);
    toy->legs[0].air = pipe_air;
    toy->net.pots = pots;
    toy->net.pot_count = toy->net.nipple_count = 2;
    for (int i = 0; i < 2; i++) {
        pots[i] = (struct purge_pot){
            .leg = 0, .behind = i - 1, .part = -1, .volume = 10 * ML, .air = 10 * ML};
        toy->nipples[i] = (struct purge_nipple){.pot = i, .leg = 0, .nipple = {-1, i}};
    }
}

static void a_far_nipple_does_not_clear_the_near_half(void **state)
{
    (void)state;
    struct toy toy;
    struct purge_pot pots[2];
    two_halves(&toy, pots, 0);
    struct purge_room *room = purge_room(&toy.net, 2, false, toy.arena);
    const struct purge_turn far_near[2] = {{1, -1}, {0, -1}};
    const struct purge_result *result = purge_run(&toy.net, &eight_ml, far_near, 1, room);
    near(result->air_in_pots[0], 10 * ML, 1e-18);
    near(result->air_in_pots[1], 0, 1e-12);
    result = purge_run(&toy.net, &eight_ml, far_near, 2, room);
    near(result->air_left, 0, 1e-12);
    arena_destroy(toy.arena);
}

/* Two rooms of 10 mL joined at the top, one nipple: 20 mL of air are 2.5 strokes of 8 mL. Counted
 * by hand. With holes that lie below the top each room keeps its own rest. */
static void one_nipple_clears_two_rooms_that_are_joined_at_the_top(void **state)
{
    (void)state;
    for (int back = 0; back < 2; back++) {
        struct toy toy;
        struct purge_pot pots[2];
        two_halves(&toy, pots, 0);
        pots[0].open_above = true;
        toy.nipples[0] = toy.nipples[1];
        toy.net.nipple_count = 1;
        struct purge_room *room = purge_room(&toy.net, 1, false, toy.arena);
        struct purge_way way = eight_ml;
        if (back)
            way.method = METHOD_REVERSE;
        way.push = 1e5;
        const struct purge_turn only = {0, -1};
        const struct purge_result *result = purge_run(&toy.net, &way, &only, 1, room);
        near(result->air_left, 0, 1e-12);
        near(result->trapped, 0, 1e-18);
        near(result->turns[0].air_out, 20 * ML, 1e-12);
        assert_true(back || result->strokes == 3);
        pots[0].trapped = 1 * ML;
        pots[1].trapped = 2 * ML;
        near(purge_trapped_at(&toy.net, 0), 3 * ML, 1e-18);
        near(purge_trapped_air_at(&toy.net, 0), 3 * ML, 1e-18);
        result = purge_run(&toy.net, &way, &only, 1, room);
        near(result->air_in_pots[0], 1 * ML, 1e-12);
        near(result->air_in_pots[1], 2 * ML, 1e-12);
        near(result->trapped, 3 * ML, 1e-12);
        near(result->air_left, 0, 1e-12);
        pots[1].air = 0.5 * ML;
        near(purge_trapped_air_at(&toy.net, 0), 1.5 * ML, 1e-18);
        arena_destroy(toy.arena);
    }
}

/* Near half full of fluid, air still in the pipe: by the far nipple it ends up in the near half. */
static void air_from_the_pipe_settles_in_the_near_half(void **state)
{
    (void)state;
    struct toy toy;
    struct purge_pot pots[2];
    two_halves(&toy, pots, 5 * ML);
    pots[0].air = pots[1].air = 0;
    struct purge_room *room = purge_room(&toy.net, 2, false, toy.arena);
    const struct purge_turn far = {1, -1}, near_half = {0, -1};
    near(purge_run(&toy.net, &eight_ml, &far, 1, room)->air_in_pots[0], 5 * ML, 1e-12);
    near(purge_run(&toy.net, &eight_ml, &near_half, 1, room)->air_left, 0, 1e-12);
    arena_destroy(toy.arena);
}

static void two_nipples_at_once_clear_both(void **state)
{
    (void)state;
    struct toy toy;
    struct purge_pot pots[2];
    two_halves(&toy, pots, 5 * ML);
    struct purge_room *room = purge_room(&toy.net, 2, false, toy.arena);
    const struct purge_turn both = {0, 1}, one = {0, -1};
    const struct purge_result *result = purge_run(&toy.net, &eight_ml, &both, 1, room);
    near(result->air_left, 0, 1e-12);
    assert_true(result->worst_balance < 1e-15);
    assert_true(result->strokes >= 4);
    arena_destroy(toy.arena);
    toy_start(&toy);
    toy.net.viscosity = 15e-6;
    room = purge_room(&toy.net, 1, false, toy.arena);
    for (int shut = 0; shut < 2; shut++) {
        struct purge_way way = eight_ml;
        way.shut_under_pressure = shut == 1;
        near(purge_run(&toy.net, &way, &both, 1, room)->air_left, 0, 1e-12);
        /* with one of them the other's branch stays full */
        near(purge_run(&toy.net, &way, &one, 1, room)->air_left, 22 * ML, 1e-12);
    }
    arena_destroy(toy.arena);
}

/* Two ways part where they no longer have a leg in common, and on one leg where they no longer have
 * a pot in common; a way that ends on the other's parts from it there. */
static void two_ways_part_at_the_fork(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    struct purge_pot pots[2];
    struct purge_room *room = purge_room(&toy.net, 1, false, toy.arena);
    const struct purge_turn both = {0, 1}, other = {1, 0}, one = {0, -1};
    purge_open(&toy.net, &both, room);
    assert_int_equal(room->fork, 1);
    assert_int_equal(room->fork_pots, 0);
    toy.nipples[0].leg = 0;
    purge_open(&toy.net, &both, room);
    assert_int_equal(room->fork, 1);
    purge_open(&toy.net, &other, room);
    assert_int_equal(room->fork, 1);
    purge_open(&toy.net, &one, room);
    assert_int_equal(room->fork, 0);
    toy.nipples[1].leg = 0;
    purge_open(&toy.net, &both, room);
    assert_int_equal(room->fork, 1);
    arena_destroy(toy.arena);
    two_halves(&toy, pots, 0);
    room = purge_room(&toy.net, 1, false, toy.arena);
    purge_open(&toy.net, &both, room);
    assert_int_equal(room->fork, 1);
    assert_int_equal(room->fork_pots, 1);
    purge_open(&toy.net, &other, room);
    assert_int_equal(room->fork_pots, 1);
    pots[1].behind = -1;
    purge_open(&toy.net, &both, room);
    assert_int_equal(room->fork_pots, 0);
    arena_destroy(toy.arena);
}

/* Branches of 12 and 22 mL of one bore, full of fluid: the flow parts as 22 to 12, whatever the
 * shared pipe resists, where the nipples are wide. */
static void what_two_ways_share_does_not_part_the_flow(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    toy.net.viscosity = 15e-6;
    for (int i = 0; i < 3; i++)
        toy.legs[i].air = 0;
    struct purge_room *room = purge_room(&toy.net, 1, false, toy.arena);
    room->passage = (struct resistance){0};
    const struct purge_turn both = {0, 1};
    purge_fill(&toy.net, room);
    purge_open(&toy.net, &both, room);
    const struct resistance all = purge_divide(&toy.net, room, 5 * ML, 8 * ML);
    near_rel(room->path.share, 22.0 / 34, 1e-9);
    near_rel(room->with.share, 12.0 / 34, 1e-9);
    const double each = room->resistance[0] / 20;
    near_rel(all.linear, each * (20 + 12 * 22 / 34.0), 1e-9);
    arena_destroy(toy.arena);
}

static void what_lies_above_the_nipple_stays(void **state)
{
    (void)state;
    struct toy toy;
    struct purge_pot pots[2];
    two_halves(&toy, pots, 0);
    toy.net.pot_count = toy.net.nipple_count = 1;
    pots[0].trapped = 3 * ML;
    const struct purge_result result = one_turn(&toy, eight_ml);
    near(result.trapped, 3 * ML, 1e-12);
    near(result.air_in_pots[0], 3 * ML, 1e-12);
    near(result.air_left, 0, 1e-12);
    assert_false(result.turns[0].gave_up);
    arena_destroy(toy.arena);
}

static void air_where_no_nipple_is_counts_as_trapped(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    toy.net.nipple_count = 1; /* the far branch is a dead leg */
    const struct purge_result result = one_turn(&toy, eight_ml);
    near(result.trapped, 22 * ML, 1e-15);
    near(result.air_left, 0, 1e-12);
    arena_destroy(toy.arena);
}

static void fluid_from_the_slave_drives_air_out_at_the_master(void **state)
{
    (void)state;
    struct toy toy;
    wide_pipe(&toy, -0.6);
    struct purge_pot pot = {.leg = 0, .behind = -1, .part = -1, .volume = 10 * ML, .air = 10 * ML};
    toy.net.pots = &pot;
    toy.net.pot_count = 1;
    toy.nipples[0].pot = 0;
    struct purge_way way = eight_ml;
    way.method = METHOD_REVERSE;
    way.push = 0.5e5;
    way.reservoir = 200 * ML;
    const struct purge_result result = one_turn(&toy, way);
    near(result.air_left, 0, 1e-12);
    near(result.turns[0].air_out, 13 * ML, 1e-12);
    near(result.turns[0].reservoir, 200 * ML, 1e-15); /* full; what comes up is drawn off */
    assert_true(result.worst_balance < 1e-15);
    arena_destroy(toy.arena);
}

/* 64 mL from a reservoir of 50 in which 20 must stay: 24 mL, then it is filled up; and again. */
static void the_reservoir_is_filled_up_in_time(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    struct purge_way way = eight_ml;
    way.reservoir = 50 * ML;
    way.reserve = 20 * ML;
    const struct purge_result result = toy_run(&toy, way, FAR);
    near(result.turns[0].reservoir, 26 * ML, 1e-15);
    assert_int_equal(result.turns[0].top_ups, 1);
    near(result.turns[1].reservoir, 34 * ML, 1e-15);
    assert_int_equal(result.turns[1].top_ups, 1);
    near_unknown(toy_run(&toy, eight_ml, FAR).turns[0].reservoir);
    arena_destroy(toy.arena);
}

static void clear_strokes_come_after_the_last_air(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    struct purge_way way = eight_ml;
    way.clear_strokes = 3;
    const struct purge_result result = toy_run(&toy, way, FAR);
    near(result.turns[0].clear, 24 * ML, 1e-15);
    near(result.fluid, 64 * ML, 1e-15);
    near(result.turns[0].time, 2 * (6 + 3), 1e-12);
    arena_destroy(toy.arena);
}

static void the_curve_begins_with_all_air_and_ends_with_none(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    const struct purge_result result = toy_run(&toy, eight_ml, FAR);
    assert_int_equal(result.point_count, 9);
    near(result.curve[0].air, 54 * ML, 1e-15);
    near(result.curve[1].air, 46 * ML, 1e-15);
    near(result.curve[8].air, 0, 1e-15);
    near(result.curve[8].fluid, 64 * ML, 1e-15);
    assert_int_equal(result.curve[8].turn, 1);
    arena_destroy(toy.arena);
}

static void a_long_curve_is_thinned(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    struct purge_way way = eight_ml;
    way.stroke = 1e-9;
    way.most_strokes = 60000;
    const struct purge_result result = toy_run(&toy, way, FAR);
    assert_true(result.point_count > 1024 && result.point_count <= 4096);
    for (int i = 1; i < result.point_count; i++)
        assert_true(result.curve[i].air <= result.curve[i - 1].air &&
                    result.curve[i].fluid > result.curve[i - 1].fluid);
    assert_true(result.worst_balance < 1e-15);
    arena_destroy(toy.arena);
}

static void one_gives_up_after_the_most_strokes(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    struct purge_way way = eight_ml;
    way.most_strokes = 3;
    const struct purge_result result = toy_run(&toy, way, FAR);
    assert_true(result.turns[0].gave_up);
    near(result.turns[0].strokes, 3, 0);
    near(result.air_left, (20 + 22 - 24) * ML, 1e-15);
    arena_destroy(toy.arena);
}

/* A slug of 0.2 mL before 4.5 m of 3.34 mm pipe full of fluid. Carried at 1 m/s it leaves a film of
 * 47 % of the bore, at 0.01 m/s one of 6.8 % (0.0158 Pa s, 0.033 N/m; worked out elsewhere), so it
 * comes after 53 and 93.2 % of the pipe's volume. */
static void a_slug_comes_before_the_pipe_s_volume_is_through(void **state)
{
    (void)state;
    const double speeds[] = {1, 0.01}, shares[] = {0.47, 0.068};
    struct toy toy;
    toy_start(&toy);
    toy.net.viscosity = 0.0158 / 1050;
    toy.net.leg_count = 2;
    toy.net.nipple_count = 1; /* at the end of the near branch */
    toy.legs[0].air = 0.2 * ML;
    toy.legs[1].volume = 39.42 * ML;
    toy.legs[1].length = 4.5;
    toy.legs[1].air = 0;
    for (int i = 0; i < 2; i++) {
        struct purge_way way = eight_ml;
        way.stroke = 0.1 * ML;
        way.stroke_time = way.stroke / (8.76e-6 * speeds[i]);
        way.most_strokes = 1000;
        /* the slug itself and the last stroke besides */
        near_rel(one_turn(&toy, way).fluid, (39.42 * (1 - shares[i]) + 0.3) * ML, 0.012);
    }
    arena_destroy(toy.arena);
}

/* At the pressure that the flow makes the nearer branch, being shorter, costs less at the tee: so
 * the order counts for less than at a pressure that is held (10 and 9 strokes, by our own sum). */
static void shutting_under_pressure_is_never_quicker_than_holding_open(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    toy.net.viscosity = 15e-6;
    for (int first = 0; first < 2; first++) {
        struct purge_way way = eight_ml;
        const double open = toy_run(&toy, way, first).strokes;
        way.shut_under_pressure = true;
        const struct purge_result shut = toy_run(&toy, way, first);
        assert_true(shut.strokes >= open && shut.strokes < 14);
        near(shut.air_left, 0, 1e-12);
        assert_true(shut.fluid < shut.strokes * way.stroke);
    }
    arena_destroy(toy.arena);
}

static void beyond_a_part_that_shuts_at_rest_nothing_is_bled(void **state)
{
    (void)state;
    struct toy toy;
    toy_start(&toy);
    toy.legs[2].shut = true;
    const struct purge_result result = toy_run(&toy, eight_ml, FAR);
    assert_true(result.turns[0].gave_up);
    near(result.turns[0].fluid, 0, 0);
    assert_false(result.turns[1].gave_up);
    arena_destroy(toy.arena);
}

/* A far branch that falls, in wide pipe, with air that its own fall locks; a near branch that
 * climbs from the same tee takes that air while one waits. Without the near branch's climb it goes
 * out through the trunk. */
static void air_rises_at_rest_into_a_branch_that_climbs(void **state)
{
    (void)state;
    for (int climbs = 0; climbs < 2; climbs++) {
        struct toy toy;
        toy_start(&toy);
        toy.net.viscosity = 15e-6;
        for (int i = 0; i < 3; i++) {
            toy.legs[i].bore = 6.51e-3;
            toy.legs[i].volume = 40 * ML;
            toy.legs[i].length = 1.2;
            toy.legs[i].air = i == 2 ? 3 * ML : 0;
        }
        toy.legs[0].climb = -0.2;
        toy.legs[1].climb = climbs ? 0.6 : 0;
        toy.legs[2].climb = -0.6;
        struct purge_way way = eight_ml;
        way.method = METHOD_GRAVITY;
        way.push = 40;
        const struct purge_turn far = {FAR, -1};
        const struct purge_result *result =
            purge_run(&toy.net, &way, &far, 1, purge_room(&toy.net, 1, false, toy.arena));
        near(result->air_in_legs[1], climbs ? 3 * ML : 0, 1e-9 * ML);
        near(result->air_in_legs[2], 0, 1e-9 * ML);
        near(result->turns[0].air_out, climbs ? 0 : 3 * ML, 1e-9 * ML);
        arena_destroy(toy.arena);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(held_open_the_order_makes_no_difference),
        cmocka_unit_test(shut_under_pressure_the_fuller_branch_first_is_quicker),
        cmocka_unit_test(gravity_cannot_carry_a_slug_down_a_wide_pipe),
        cmocka_unit_test(pedal_strokes_carry_a_slug_down_a_wide_pipe),
        cmocka_unit_test(air_in_a_falling_leg_locks_gravity),
        cmocka_unit_test(steady_methods_take_their_time),
        cmocka_unit_test(a_dry_pipe_fills_in_half_the_time_of_a_full_one),
        cmocka_unit_test(a_far_nipple_does_not_clear_the_near_half),
        cmocka_unit_test(one_nipple_clears_two_rooms_that_are_joined_at_the_top),
        cmocka_unit_test(air_from_the_pipe_settles_in_the_near_half),
        cmocka_unit_test(two_ways_part_at_the_fork),
        cmocka_unit_test(what_two_ways_share_does_not_part_the_flow),
        cmocka_unit_test(two_nipples_at_once_clear_both),
        cmocka_unit_test(what_lies_above_the_nipple_stays),
        cmocka_unit_test(air_where_no_nipple_is_counts_as_trapped),
        cmocka_unit_test(fluid_from_the_slave_drives_air_out_at_the_master),
        cmocka_unit_test(the_reservoir_is_filled_up_in_time),
        cmocka_unit_test(clear_strokes_come_after_the_last_air),
        cmocka_unit_test(the_curve_begins_with_all_air_and_ends_with_none),
        cmocka_unit_test(a_long_curve_is_thinned),
        cmocka_unit_test(one_gives_up_after_the_most_strokes),
        cmocka_unit_test(a_slug_comes_before_the_pipe_s_volume_is_through),
        cmocka_unit_test(shutting_under_pressure_is_never_quicker_than_holding_open),
        cmocka_unit_test(beyond_a_part_that_shuts_at_rest_nothing_is_bled),
        cmocka_unit_test(air_rises_at_rest_into_a_branch_that_climbs),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
