#include "physics/purge.h"

#include <math.h>
#include <stdio.h>

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
    printf("0.3 bar: far first %g, near first %g\n", far_first, near_first);
    assert_true(far_first < near_first && far_first > 8);
    way.tee_pressure = 1e5;
    const double far_hard = toy_run(&toy, way, FAR).strokes;
    printf("1 bar: far first %g\n", far_hard);
    assert_true(far_hard > far_first);
    assert_true(toy_run(&toy, way, NEAR).turns[0].gave_up);
    arena_destroy(toy.arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(held_open_the_order_makes_no_difference),
        cmocka_unit_test(shut_under_pressure_the_fuller_branch_first_is_quicker),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
