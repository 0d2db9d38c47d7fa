#include "physics/pressure.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

/* Two single masters on a bar, the first rod 32 mm, the second 48 mm from the bearing. */
struct barred {
    struct car car;
    int pedal, first, second;
};

static struct barred barred_car(void)
{
    struct barred bar = {.car = car_start()};
    bar.first = car_add(&bar.car, KIND_MASTER, "front master");
    bar.second = car_add(&bar.car, KIND_MASTER, "rear master");
    bar.pedal = car_add(&bar.car, KIND_PEDAL, "pedal");
    struct pedal *pedal = &car_part(&bar.car, bar.pedal)->as.pedal;
    int works[] = {bar.first, bar.second};
    pedal->works = car_names(&bar.car, 2, works);
    pedal->ratio.value = 5;
    pedal->efficiency.value = 1;
    pedal->return_spring.n = 0;
    pedal->bar_first.m = 32e-3;
    pedal->bar_second.m = 48e-3;
    return bar;
}

static double rod(const struct barred *bar, int master)
{
    return pressure_rod_force(bar->car.system, master, (struct force){400}, true).n;
}

static void a_bar_shares_by_the_arm_of_the_other_rod(void **state)
{
    (void)state;
    struct barred bar = barred_car();
    near(rod(&bar, bar.first), 2000 * 48.0 / 80, 1e-9);
    near(rod(&bar, bar.second), 2000 * 32.0 / 80, 1e-9);
    car_finish(&bar.car);
}

static void a_bar_that_is_not_measured_gives_no_force(void **state)
{
    (void)state;
    struct barred bar = barred_car();
    car_part(&bar.car, bar.pedal)->as.pedal.bar_first.m = NAN;
    near_unknown(rod(&bar, bar.first));
    near_unknown(rod(&bar, bar.second));
    car_finish(&bar.car);
}

static void a_direct_servo_stands_between_pedal_and_master(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct system *system = driven.car.system;
    int master = driven.usual.master;
    assert_int_equal(pressure_pedal_of(system, master), driven.brake_pedal);
    assert_int_equal(pressure_servo_of(system, master), driven.servo);
    assert_int_equal(pressure_servo_of(system, driven.usual.clutch_master), -1);
    assert_int_equal(pressure_pedal_of(system, driven.usual.clutch_master), driven.clutch_pedal);
    /* 220 N * 3.8 * 0.95 = 794.2 N in; 150 + 2.8 (794.2 - 40) = 2261.76 N out; the 7 in servo at
     * 0.7 bar adds at most 0.95 * 0.0248287 * 70000 = 1651.1 N, which this does not reach. */
    struct force effort = {220};
    near(pressure_rod_force(system, master, effort, true).n, 2261.76, 1e-6);
    near(pressure_rod_force(system, master, effort, false).n, 794.2, 1e-9);
    driven_finish(&driven);
}

static void a_master_without_pedal_gets_no_force(void **state)
{
    (void)state;
    struct car car = car_start();
    int master = car_add(&car, KIND_MASTER, "master");
    assert_int_equal(pressure_pedal_of(car.system, master), -1);
    near_unknown(pressure_rod_force(car.system, master, (struct force){100}, true).n);
    car_finish(&car);
}

/* Master, valve with knee 3 MPa and slope 0.4, drum. */
struct valved {
    struct car car;
    int master, valve, drum;
    struct network *network;
    struct pressure *by_vertex;
};

static struct valved valved_car(bool backwards)
{
    struct valved line = {.car = car_start()};
    line.master = car_add(&line.car, KIND_MASTER, "master");
    car_part(&line.car, line.master)->as.master.type = MASTER_SINGLE;
    line.valve = car_add(&line.car, KIND_VALVE, "rear valve");
    struct valve *valve = &car_part(&line.car, line.valve)->as.valve;
    valve->type = VALVE_PROPORTIONING;
    valve->passages = 1;
    valve->knee.pa = 3e6;
    valve->slope.value = 0.4;
    line.drum = car_brake(&line.car, KIND_DRUM, AXLE_REAR, SIDE_LEFT);
    car_pipe(&line.car, line.master, 0, 1, line.valve, backwards ? 1 : 0);
    car_pipe(&line.car, line.valve, backwards ? 0 : 1, 1, line.drum, 0);
    struct messages messages = messages_start(line.car.arena);
    line.network = network_build(line.car.system, line.car.arena, &messages);
    line.by_vertex =
        ARENA_ARRAY(line.car.arena, (size_t)line.network->vertex_count, struct pressure);
    return line;
}

static double at_drum(struct valved *line, double source)
{
    pressure_spread(line->car.system, line->network, 0, (struct pressure){source}, true,
                    line->by_vertex);
    return line->by_vertex[network_vertex(line->network, line->drum, 0)].pa;
}

static void pressure_passes_a_valve_by_its_law(void **state)
{
    (void)state;
    struct valved line = valved_car(false);
    near(at_drum(&line, 2e6), 2e6, 1e-6);
    near(at_drum(&line, 3e6), 3e6, 1e-6);
    near(at_drum(&line, 7e6), 3e6 + 0.4 * 4e6, 1e-6);
    near(line.by_vertex[network_vertex(line.network, line.valve, 0)].pa, 7e6, 1e-6);
    car_finish(&line.car);
}

static void beyond_a_valve_without_figures_nothing_is_known(void **state)
{
    (void)state;
    struct valved line = valved_car(false);
    car_part(&line.car, line.valve)->as.valve.knee.pa = NAN;
    near_unknown(at_drum(&line, 7e6));
    near(line.by_vertex[network_vertex(line.network, line.master, 0)].pa, 7e6, 1e-6);
    car_finish(&line.car);
}

static void beyond_a_valve_fed_through_its_outlet_nothing_is_known(void **state)
{
    (void)state;
    struct valved line = valved_car(true);
    assert_int_equal(line.network->vertices[network_vertex(line.network, line.drum, 0)].circuit, 0);
    near_unknown(at_drum(&line, 7e6));
    car_finish(&line.car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_bar_shares_by_the_arm_of_the_other_rod),
        cmocka_unit_test(a_bar_that_is_not_measured_gives_no_force),
        cmocka_unit_test(a_direct_servo_stands_between_pedal_and_master),
        cmocka_unit_test(a_master_without_pedal_gets_no_force),
        cmocka_unit_test(pressure_passes_a_valve_by_its_law),
        cmocka_unit_test(beyond_a_valve_without_figures_nothing_is_known),
        cmocka_unit_test(beyond_a_valve_fed_through_its_outlet_nothing_is_known),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
