/* What must hold for any net: nets are made up at random, the same ones at every run. */
#include "purge/purge.h"

#include <math.h>
#include <string.h>

#include "support/near.h"

enum { NETS = 300, MOST_LEGS = 16, MOST_POTS = 10 };

struct made {
    struct purge_leg legs[MOST_LEGS];
    struct purge_pot pots[MOST_POTS];
    struct purge_nipple nipples[MOST_POTS];
    struct purge_net net;
    unsigned long long seed;
};

/* Evenly between two ends: the generator of D. Knuth's MMIX, upper half. */
static double any(struct made *made, double from, double to)
{
    made->seed = made->seed * 6364136223846793005ULL + 1442695040888963407ULL;
    return from + (to - from) * (double)(made->seed >> 33) / 2147483648.0;
}

static void add_leg(struct made *made, int above)
{
    static const double bores[] = {3.175e-3, 3.34e-3, 3.34e-3, 3.34e-3, 4.93e-3, 6.51e-3};
    struct purge_leg *leg = &made->legs[made->net.leg_count++];
    const double bore = bores[(int)any(made, 0, 6)], length = any(made, 0.2, 3);
    *leg = (struct purge_leg){.above = above,
                              .part = -1,
                              .volume = 0.785398163 * bore * bore * length,
                              .bore = bore,
                              .length = length,
                              .climb = any(made, 0, 1) < 0.5 ? 0 : any(made, -0.5, 0.5) * length};
    leg->air = leg->volume * (any(made, 0, 1) < 0.4 ? 1 : any(made, 0, 0.5));
}

static void add_pot(struct made *made, int leg, int behind)
{
    struct purge_net *net = &made->net;
    struct purge_pot *pot = &made->pots[net->pot_count];
    *pot = (struct purge_pot){.leg = leg, .behind = behind, .part = -1};
    pot->volume = any(made, 1e-6, 40e-6);
    pot->air = pot->volume * any(made, 0, 1);
    if (any(made, 0, 1) < 0.2)
        pot->trapped = pot->volume * any(made, 0, 0.3);
    /* a half that has no nipple opens into the next at its top */
    if (behind >= 0 && any(made, 0, 1) < 0.4) {
        made->pots[behind].open_above = true;
        made->nipples[net->nipple_count - 1].pot = net->pot_count++;
        return;
    }
    made->nipples[net->nipple_count++] =
        (struct purge_nipple){.pot = net->pot_count, .leg = leg, .nipple = {-1, net->nipple_count}};
    net->pot_count++;
}

/* A tree of up to four brakes, some with two halves, on tees in a row. */
static void make(struct made *made, unsigned long long number)
{
    *made = (struct made){.seed = number * 2654435761ULL + 12345};
    made->net = (struct purge_net){.legs = made->legs,
                                   .pots = made->pots,
                                   .nipples = made->nipples,
                                   .density = 1050,
                                   .viscosity = any(made, 8e-6, 60e-6),
                                   .tension = 0.033};
    for (int i = 0; i < 10; i++)
        (void)any(made, 0, 1);
    const int brakes = 1 + (int)any(made, 0, 4);
    add_leg(made, -1);
    int tee = 0;
    for (int i = 0; i < brakes; i++) {
        add_leg(made, tee);
        const int leg = made->net.leg_count - 1;
        add_pot(made, leg, -1);
        if (any(made, 0, 1) < 0.25)
            add_pot(made, leg, made->net.pot_count - 1);
        if (i + 2 < brakes) {
            add_leg(made, tee);
            tee = made->net.leg_count - 1;
        }
    }
}

static struct purge_way any_way(struct made *made, int number)
{
    struct purge_way way = {.method = (enum bleed_method)(number % METHOD_COUNT),
                            .shut_under_pressure = number % 2 == 0,
                            .stroke = any(made, 3e-6, 12e-6),
                            .stroke_time = 1,
                            .pause_time = 2,
                            .push = 1e5,
                            .reservoir = 250e-6,
                            .reserve = 80e-6,
                            .clear_strokes = 2,
                            .most_strokes = 300};
    if (way.method == METHOD_GRAVITY)
        way.push = 8e3;
    return way;
}

static int every_nipple(const struct made *made, struct purge_turn *turns)
{
    for (int i = 0; i < made->net.nipple_count; i++)
        turns[i] = (struct purge_turn){i, -1};
    return made->net.nipple_count;
}

static double all_air(const struct made *made)
{
    double air = 0;
    for (int i = 0; i < made->net.leg_count; i++)
        air += made->legs[i].air;
    for (int i = 0; i < made->net.pot_count; i++)
        air += made->pots[i].air;
    return air;
}

static void volume_is_kept_and_every_run_ends(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct made made;
    for (int n = 0; n < NETS; n++) {
        make(&made, (unsigned)n);
        struct purge_turn turns[MOST_POTS];
        const int count = every_nipple(&made, turns);
        const struct purge_way way = any_way(&made, n);
        const struct purge_result *result =
            purge_run(&made.net, &way, turns, count, purge_room(&made.net, count, true, arena));
        assert_true(result->worst_balance < 1e-15);
        double out = 0, clear = 0, left = 0, waste = 0;
        for (int i = 0; i < result->turn_count; i++) {
            assert_true(result->turns[i].strokes <= way.most_strokes + 1);
            out += result->turns[i].air_out;
            clear += result->turns[i].clear;
            waste += result->turns[i].waste;
        }
        for (int i = 0; i < made.net.leg_count; i++)
            left += result->air_in_legs[i];
        for (int i = 0; i < made.net.pot_count; i++)
            left += result->air_in_pots[i];
        near(out + left, all_air(&made), 1e-14);
        near(result->air_left + result->trapped, left, 1e-14);
        assert_true(waste <= result->fluid + 1e-15 && clear >= 0);
        /* levels stay between nothing and full */
        for (int i = 0; i < result->turn_count; i++)
            assert_true(result->turns[i].reservoir >= way.reserve - way.stroke &&
                        result->turns[i].reservoir <= way.reservoir);
    }
    arena_destroy(arena);
}

static void the_same_twice_gives_the_same(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct made made;
    for (int n = 0; n < 40; n++) {
        make(&made, (unsigned)n);
        struct purge_turn turns[MOST_POTS];
        const int count = every_nipple(&made, turns);
        const struct purge_way way = any_way(&made, n), other = any_way(&made, n + 1);
        struct purge_room *room = purge_room(&made.net, count, false, arena);
        struct purge_done before[MOST_POTS];
        memcpy(before, purge_run(&made.net, &way, turns, count, room)->turns,
               sizeof before[0] * (size_t)count);
        purge_run(&made.net, &other, turns, count, room); /* leaves nothing behind */
        const struct purge_result *again = purge_run(&made.net, &way, turns, count, room);
        for (int i = 0; i < count; i++) {
            near(again->turns[i].fluid, before[i].fluid, 0);
            near(again->turns[i].air_left, before[i].air_left, 0);
            near(again->turns[i].time, before[i].time, 0);
        }
    }
    arena_destroy(arena);
}

/* Nothing allocates: the arena stands where it stood. */
static void a_run_takes_no_memory(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct made made;
    make(&made, 7);
    struct purge_turn turns[MOST_POTS];
    const int count = every_nipple(&made, turns);
    const struct purge_way way = any_way(&made, 0);
    struct purge_room *room = purge_room(&made.net, count, true, arena);
    const struct arena_mark before = arena_mark(arena);
    purge_run(&made.net, &way, turns, count, room);
    const struct arena_mark after = arena_mark(arena);
    assert_true(before.block == after.block && before.used == after.used);
    arena_destroy(arena);
}

/* Held open, no film, nothing rises: what goes in is the same in any order but for the last
 * strokes, of which each nipple wastes less than one and the one that shows fluid. */
static void in_plug_flow_the_order_is_neutral(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct made made;
    for (int n = 0; n < NETS; n++) {
        make(&made, (unsigned)n);
        made.net.viscosity = 0;
        for (int i = 0; i < made.net.leg_count; i++) {
            made.legs[i].climb = 0;
            made.legs[i].air = made.legs[i].volume;
        }
        for (int i = 0; i < made.net.pot_count; i++) {
            made.pots[i].trapped = 0;
            made.pots[i].air = made.pots[i].volume;
        }
        struct purge_turn turns[MOST_POTS], back[MOST_POTS];
        const int count = every_nipple(&made, turns);
        for (int i = 0; i < count; i++)
            back[i] = turns[count - 1 - i];
        struct purge_way way = any_way(&made, 0);
        way.method = METHOD_PEDAL;
        way.shut_under_pressure = false;
        way.stroke = 0.05e-6; /* small, so that whole strokes hide nothing */
        way.most_strokes = 100000;
        struct purge_room *room = purge_room(&made.net, count, false, arena);
        const double one = purge_run(&made.net, &way, turns, count, room)->fluid;
        const double other = purge_run(&made.net, &way, back, count, room)->fluid;
        near(one, all_air(&made), 2 * count * way.stroke);
        near(other, all_air(&made), 2 * count * way.stroke);
    }
    arena_destroy(arena);
}

/* More air at the end of any one leg or pot never needs less fluid or fewer strokes to the end. */
static void more_air_never_needs_less_fluid(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct made made;
    for (int n = 0; n < 100; n++) {
        make(&made, (unsigned)n);
        struct purge_turn turns[MOST_POTS];
        const int count = every_nipple(&made, turns);
        struct purge_way way = any_way(&made, n);
        way.method = METHOD_PEDAL;
        way.shut_under_pressure = false;
        for (int i = 0; i < made.net.leg_count; i++)
            made.legs[i].climb = 0;
        for (int i = 0; i < made.net.pot_count; i++)
            made.pots[i].air = 0.5 * made.pots[i].volume;
        struct purge_room *room = purge_room(&made.net, count, false, arena);
        double before = 0;
        for (int more = 0; more <= 10; more++) {
            for (int i = 0; i < made.net.leg_count; i++)
                made.legs[i].air = made.legs[i].volume * more / 10;
            const struct purge_result *result = purge_run(&made.net, &way, turns, count, room);
            assert_true(result->fluid >= before - 1e-15);
            before = result->fluid;
        }
    }
    arena_destroy(arena);
}

/* Of a whole stroke at most as much stays moved as comes out when one waits. */
static void shutting_under_pressure_never_moves_more(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct made made;
    for (int n = 0; n < 100; n++) {
        make(&made, (unsigned)n);
        struct purge_turn turn = {0, -1};
        struct purge_way way = any_way(&made, n);
        way.method = METHOD_PEDAL;
        way.clear_strokes = 0;
        way.most_strokes = 20000;
        for (int i = 0; i < made.net.leg_count; i++)
            made.legs[i].climb = 0;
        struct purge_room *room = purge_room(&made.net, 1, false, arena);
        way.shut_under_pressure = false;
        const struct purge_done open = purge_run(&made.net, &way, &turn, 1, room)->turns[0];
        way.shut_under_pressure = true;
        const struct purge_done shut = purge_run(&made.net, &way, &turn, 1, room)->turns[0];
        assert_false(open.gave_up || shut.gave_up);
        assert_true(shut.fluid <= shut.strokes * way.stroke * (1 + 1e-12));
        assert_true(shut.strokes >= open.strokes - 1);
        near(shut.air_left, open.air_left, 1e-11);
    }
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(volume_is_kept_and_every_run_ends),
        cmocka_unit_test(the_same_twice_gives_the_same),
        cmocka_unit_test(a_run_takes_no_memory),
        cmocka_unit_test(in_plug_flow_the_order_is_neutral),
        cmocka_unit_test(more_air_never_needs_less_fluid),
        cmocka_unit_test(shutting_under_pressure_never_moves_more),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
