#include "parts/vehicle.h"

#include <math.h>

#include "support/near.h"

/* 1000 kg, 55 % on the front wheels, height over wheelbase 0.2. */
static struct vehicle car(void)
{
    return (struct vehicle){
        .mass = {1000}, .front_share = {0.55}, .wheelbase = {2.5}, .centre_height = {0.5}};
}

static void at_rest_the_loads_are_the_static_ones(void **state)
{
    (void)state;
    struct vehicle vehicle = car();
    struct axle_loads loads = vehicle_axle_loads(&vehicle, 0);
    near(loads.front.n, 5393.6575, 1e-9); /* 0.55 * 9806.65 */
    near(loads.rear.n, 4412.9925, 1e-9);
}

static void braking_moves_load_to_the_front_and_loses_none(void **state)
{
    (void)state;
    struct vehicle vehicle = car();
    for (double z = 0; z < 4; z += 0.1) {
        struct axle_loads loads = vehicle_axle_loads(&vehicle, z);
        near(loads.front.n + loads.rear.n, 9806.65, 1e-9);
        assert_true(loads.rear.n >= 0);
    }
    near(vehicle_axle_loads(&vehicle, 0.5).front.n, 6374.3225, 1e-9); /* 0.55 + 0.2 * 0.5 = 0.65 */
}

static void the_rear_wheels_lift_where_the_moments_say_so(void **state)
{
    (void)state;
    struct vehicle vehicle = car(); /* rear share over h/L: 0.45 / 0.2 = 2.25 */
    assert_true(vehicle_axle_loads(&vehicle, 2.24).rear.n > 0);
    near(vehicle_axle_loads(&vehicle, 2.25).rear.n, 0, 1e-9);
    near(vehicle_axle_loads(&vehicle, 2.26).rear.n, 0, 0);
}

static void loads_are_unknown_when_anything_they_need_is(void **state)
{
    (void)state;
    for (int i = 0; i < 6; i++) {
        struct vehicle vehicle = car();
        double z = 0.5;
        *(double *[]){&vehicle.mass.kg,
                      &vehicle.front_share.of_1,
                      &vehicle.wheelbase.m,
                      &vehicle.centre_height.m,
                      &z,
                      &vehicle.front_share.of_1}[i] = i < 5 ? NAN : 1.0;
        struct axle_loads loads = vehicle_axle_loads(&vehicle, z);
        near_unknown(loads.front.n);
        near_unknown(loads.rear.n);
    }
    struct vehicle vehicle = car();
    near_unknown(vehicle_axle_loads(&vehicle, -0.1).front.n);
    near_unknown(vehicle_axle_loads(&vehicle, INFINITY).front.n);
}

/* Small steps of time: what the closed form was integrated from. */
static double stepped_distance(double v, double a, double reaction, double build_up)
{
    double way = v * reaction, t = 0, step = 1e-5;
    while (v > 0) {
        double middle = t + step / 2;
        double braking = middle < build_up ? a * middle / build_up : a;
        way += (v - braking * step / 2) * step;
        v -= braking * step;
        t += step;
    }
    return way;
}

static double stopping(double v, double a, double reaction, double build_up)
{
    return vehicle_stopping_distance((struct speed){v}, (struct acceleration){a},
                                     (struct duration){reaction}, (struct duration){build_up})
        .m;
}

static void a_stop_is_as_long_as_small_steps_of_time_make_it(void **state)
{
    (void)state;
    near(stopping(100 / 3.6, 7, 0.75, 0.3), 80.1, 0.05);
    near(stopping(100 / 3.6, 7, 0.75, 0.3), stepped_distance(100 / 3.6, 7, 0.75, 0.3), 1e-3);
    near(stopping(13, 4, 1, 0.5), stepped_distance(13, 4, 1, 0.5), 1e-3);
    /* These stand before the brakes are fully on, below 6 * 0.5 / 2 = 1.5 m/s. */
    near(stopping(0.8, 6, 0, 0.5), stepped_distance(0.8, 6, 0, 0.5), 1e-4);
    near(stopping(1.5, 6, 0, 0.5), stopping(1.5 - 1e-12, 6, 0, 0.5), 1e-9);
    near(stopping(3, 6, 0, 0.5), stepped_distance(3, 6, 0, 0.5), 1e-4);
    near(stopping(0, 6, 1, 0.5), 0, 0);
}

static void a_stop_is_unknown_without_its_figures(void **state)
{
    (void)state;
    near_unknown(stopping(-1, 7, 1, 0.3));
    near_unknown(stopping(20, 0, 1, 0.3));
    near_unknown(stopping(20, 7, NAN, 0.3));
    near_unknown(stopping(20, 7, 1, -0.3));
    near_unknown(stopping(NAN, 7, 1, 0.3));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(at_rest_the_loads_are_the_static_ones),
        cmocka_unit_test(braking_moves_load_to_the_front_and_loses_none),
        cmocka_unit_test(the_rear_wheels_lift_where_the_moments_say_so),
        cmocka_unit_test(loads_are_unknown_when_anything_they_need_is),
        cmocka_unit_test(a_stop_is_as_long_as_small_steps_of_time_make_it),
        cmocka_unit_test(a_stop_is_unknown_without_its_figures),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
