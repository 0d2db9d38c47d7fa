#include "physics/grip_use.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"
#include "units/constants.h"

static const struct vehicle car = {
    .mass = {1000}, .front_share = {0.55}, .wheelbase = {2.5}, .centre_height = {0.5}};

static void an_axle_asks_for_its_force_over_its_load(void **state)
{
    (void)state;
    /* z = 0.5; load in front 1000 g (0.55 + 0.2 * 0.5) = 0.65 of the weight, behind 0.35 */
    double weight = 1000 * STANDARD_GRAVITY;
    struct grip_use use =
        grip_use(&car, (struct force){0.39 * weight}, (struct force){0.11 * weight});
    near(use.z, 0.5, 1e-12);
    near(use.front, 0.39 / 0.65, 1e-12);
    near(use.rear, 0.11 / 0.35, 1e-12);
    near(use.efficiency, 0.5 / 0.6, 1e-12);
}

static void brakes_in_proportion_to_the_loads_lose_no_grip(void **state)
{
    (void)state;
    for (double z = 0.1; z < 1.2; z += 0.1) {
        struct axle_loads loads = vehicle_axle_loads(&car, z);
        struct grip_use use =
            grip_use(&car, (struct force){z * loads.front.n}, (struct force){z * loads.rear.n});
        near(use.efficiency, 1, 1e-12);
        near(use.front, use.rear, 1e-12);
    }
}

static void rear_wheels_in_the_air_put_nothing_to_use(void **state)
{
    (void)state;
    struct grip_use use = grip_use(&car, (struct force){30e3}, (struct force){1e3});
    assert_true(isinf(use.rear));
    near(use.efficiency, 0, 0);
    near_unknown(grip_use(&car, (struct force){0}, (struct force){0}).efficiency);
    near_unknown(grip_use(&car, (struct force){-1}, (struct force){1}).z);
    near_unknown(grip_use(&car, (struct force){NAN}, (struct force){1}).efficiency);
}

/* The pedal's stop at 0.5 g is the same as the forces at the effort for it. */
static void a_pedal_brings_the_car_to_a_braking_rate(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room = solution_room(driven.car.system, driven.network, driven.car.arena);
    struct state usual = state_usual();
    struct grip_use use = grip_use_at(driven.car.system, driven.network, &usual, 0.5, room);
    near(use.z, 0.5, 1e-6);
    usual.effort = solve_effort_by_force(driven.car.system, driven.network, &usual,
                                         (struct acceleration){0.5 * STANDARD_GRAVITY}, room);
    solve_forces(driven.car.system, driven.network, &usual, room);
    double weight = 1320 * STANDARD_GRAVITY;
    near_rel(use.front, room->front.n / (weight * (0.54 + 0.68 / 2.44 * 0.5)), 1e-6);
    near_unknown(grip_use_at(driven.car.system, driven.network, &usual, 9, room).front);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_axle_asks_for_its_force_over_its_load),
        cmocka_unit_test(brakes_in_proportion_to_the_loads_lose_no_grip),
        cmocka_unit_test(rear_wheels_in_the_air_put_nothing_to_use),
        cmocka_unit_test(a_pedal_brings_the_car_to_a_braking_rate),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
