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

static const struct vehicle turning_car = {.mass = {1000},
                                           .front_share = {0.55},
                                           .wheelbase = {2.5},
                                           .centre_height = {0.5},
                                           .rolling = {0.015},
                                           .rotating = {0.05}};

/* 3000 N of brakes on 1000 kg: z = (3000/9806.65 + 0.015)/1.05 = 0.305634; of the 1000 N at a front
 * wheel the road need not hold 0.05/4 * 0.305634 W = 37.466 N that slows the wheel, and holds
 * 0.015 N for its rolling besides; N = W (0.55 + 0.2 * 0.305634)/2 = 2996.55 N, so
 * (1000 + 44.948 - 37.466)/2996.55 = 0.336214. */
static void wheels_slow_themselves_and_roll(void **state)
{
    (void)state;
    struct grip_use use = grip_use(&turning_car, (struct force){2000}, (struct force){1000});
    near(use.z, 0.305634, 1e-6);
    near(use.front, 0.336214, 1e-6);
    /* the road's forces sum up to the mass times the deceleration */
    struct axle_loads loads = vehicle_axle_loads(&turning_car, use.z);
    near_rel(use.front * loads.front.n + use.rear * loads.rear.n, use.z * 9806.65, 1e-12);
}

/* One front and the other rear wheel braked, 5000 and 800 N, on grip 0.8: the front wheel slides.
 * Octave, halving of m a = sum of min(T + f N - k m a/4, mu N): 3.195109 m/s2. The same with 1000
 * and 500 N at the wheels, none of which slides: (3000/1000 + 0.015 g)/1.05 = 2.997237; with more
 * than the road takes everywhere 0.8 g. */
static void a_wheel_gives_no_more_than_its_grip(void **state)
{
    (void)state;
    const struct wheel_forces diagonal = {{{{5000}, {0}}, {{0}, {800}}}};
    const struct wheel_forces gentle = {{{{1000}, {1000}}, {{500}, {500}}}};
    const struct wheel_forces hard = {{{{9000}, {9000}}, {{9000}, {9000}}}};
    near(grip_takes(&turning_car, &diagonal, (struct number){0.8}).m_s2, 3.195109, 1e-6);
    near(grip_takes(&turning_car, &gentle, (struct number){0.8}).m_s2, 2.997237, 1e-6);
    near(grip_takes(&turning_car, &hard, (struct number){0.8}).m_s2, 0.8 * 9.80665, 1e-9);
    near(grip_takes(&turning_car, &(struct wheel_forces){{{{0}}}}, (struct number){0.8}).m_s2,
         0.015 * 9.80665 / 1.05, 1e-9);
    near_unknown(grip_takes(&turning_car, &hard, (struct number){NAN}).m_s2);
    struct vehicle unknown = turning_car;
    unknown.wheelbase.m = NAN;
    near_unknown(grip_takes(&unknown, &gentle, (struct number){0.8}).m_s2);
}

/* The hatch of systems/ with a diagonal lost, 3802.92 N at one front wheel and 443.98 N at the
 * other rear one: z (1 - 0.4 * 0.53/2.4) = 0.4 * 0.62 + 443.98/(940 g), so 3.1858 m/s2 where the
 * two without a bound give 4.518. No turning parts. */
static void one_wheel_of_an_axle_has_half_of_its_grip(void **state)
{
    (void)state;
    const struct vehicle hatch = {
        .mass = {940}, .front_share = {0.62}, .wheelbase = {2.40}, .centre_height = {0.53}};
    const struct wheel_forces diagonal = {{{{3802.92278}, {0}}, {{0}, {443.98216}}}};
    double by_hand = (0.4 * 0.62 * 9.80665 + 443.98216 / 940) / (1 - 0.4 * 0.53 / 2.4);
    near(by_hand, 3.1858, 5e-5);
    near(grip_takes(&hatch, &diagonal, (struct number){0.8}).m_s2, by_hand, 1e-9);
}

/* psi/chi = 0.45/0.8: 0.5625 g. */
static void no_stop_is_harder_than_the_rear_wheels_stay_down(void **state)
{
    (void)state;
    struct vehicle high = turning_car;
    high.centre_height.m = 2.0;
    const struct wheel_forces front = {{{{9000}, {9000}}, {{0}, {0}}}};
    near(grip_takes(&high, &front, (struct number){0.8}).m_s2, 0.45 / 0.8 * 9.80665, 1e-9);
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
    /* a quarter of the 5 % that turns is at each wheel: 0.0125 * 0.5 W of each, two in front */
    double front = room->front.n - 0.025 * 0.5 * weight;
    near_rel(use.front, front / (weight * (0.54 + 0.68 / 2.44 * 0.5)), 1e-6);
    near_unknown(grip_use_at(driven.car.system, driven.network, &usual, 9, room).front);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_axle_asks_for_its_force_over_its_load),
        cmocka_unit_test(brakes_in_proportion_to_the_loads_lose_no_grip),
        cmocka_unit_test(rear_wheels_in_the_air_put_nothing_to_use),
        cmocka_unit_test(wheels_slow_themselves_and_roll),
        cmocka_unit_test(a_wheel_gives_no_more_than_its_grip),
        cmocka_unit_test(one_wheel_of_an_axle_has_half_of_its_grip),
        cmocka_unit_test(no_stop_is_harder_than_the_rear_wheels_stay_down),
        cmocka_unit_test(a_pedal_brings_the_car_to_a_braking_rate),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
