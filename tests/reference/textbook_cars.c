/* Textbook sums of lever and pistons as whole cars: pedal, master, pipes and wheel ends.
 *
 * OpenStax, College Physics, section 11.5, example of a hydraulic brake: 100 N, lever 5, pedal
 * cylinder 0.500 cm, four wheel cylinders of 2.50 cm; printed 1.25e4 N each, 2.5e7 Pa.
 * R. A. Serway, Physics for Scientists and Engineers, car lift: pistons of radius 5.00 and 15.0 cm,
 * load 1.33e4 N; printed 1.48e3 N, 1.88e5 Pa.
 * BMAT 2004, section 2, question 4: 60 N at 20 cm from the pivot, rod at 4 cm; printed 300 N. */
#include <math.h>

#include "physics/solution.h"
#include "support/driven_car.h"
#include "support/near.h"

struct textbook {
    struct car car;
    int pedal, master, wheels[4];
    struct network *network;
    struct solution *solution;
};

/* A pedal, a single master and four drums with no losses anywhere. */
static struct textbook build(double master_bore, double wheel_bore)
{
    struct textbook book = {.car = car_start()};
    car_vehicle(&book.car, AXLE_INDEPENDENT, AXLE_INDEPENDENT);
    book.master = car_add(&book.car, KIND_MASTER, "master");
    int tee = car_add(&book.car, KIND_JOINT, "block");
    car_pipe(&book.car, book.master, 0, 1, tee, 0);
    for (int i = 0; i < 4; i++) {
        int wheel = car_brake(&book.car, KIND_DRUM, i < 2 ? AXLE_FRONT : AXLE_REAR,
                              i % 2 == 0 ? SIDE_LEFT : SIDE_RIGHT);
        car_pipe(&book.car, tee, 0, 1, wheel, 0);
        car_part(&book.car, wheel)->as.drum.bore.m = wheel_bore;
        book.wheels[i] = wheel;
    }
    book.pedal = car_add(&book.car, KIND_PEDAL, "pedal");
    struct pedal *pedal = &car_part(&book.car, book.pedal)->as.pedal;
    pedal->works = car_names(&book.car, 1, &book.master);
    pedal->efficiency.value = 1;
    pedal->return_spring.n = 0;
    struct master *master = &car_part(&book.car, book.master)->as.master;
    master->type = MASTER_SINGLE;
    master->bore.m = master_bore;
    master->efficiency.value = 1;
    master->primary_spring.n = master->seal_friction.n = 0;
    return book;
}

static void press(struct textbook *book, double effort)
{
    struct messages messages = messages_start(book->car.arena);
    book->network = network_build(book->car.system, book->car.arena, &messages);
    book->solution = solution_room(book->car.system, book->network, book->car.arena);
    struct state state = state_usual();
    state.effort.n = effort;
    solve(book->car.system, book->network, &state, book->solution);
}

static void a_foot_presses_four_wheel_cylinders(void **state)
{
    (void)state;
    struct textbook book = build(0.500e-2, 2.50e-2);
    car_part(&book.car, book.pedal)->as.pedal.ratio.value = 5;
    press(&book, 100);
    near(book.solution->pedals[book.pedal].rod.n, 500, 1e-9);
    for (int i = 0; i < 4; i++) {
        double pressure = book.solution->brakes[book.wheels[i]].pressure[0].pa;
        near(pressure, 2.5e7, 0.05e7);
        near(pressure, 25.4648e6, 50);
        near(pressure * circle_area((struct length){2.50e-2}).m2, 12500, 1e-6);
    }
    car_finish(&book.car);
}

static void a_small_piston_lifts_a_car(void **state)
{
    (void)state;
    struct textbook book = build(2 * 5.00e-2, 2 * 15.0e-2);
    car_part(&book.car, book.pedal)->as.pedal.ratio.value = 1;
    press(&book, 1477.7778);
    double pressure = book.solution->circuits[0].pressure.pa;
    near(pressure, 1.88e5, 0.005e5);
    near(pressure, 188156.5, 0.1);
    double lifted = book.solution->brakes[book.wheels[0]].pressure[0].pa *
                    circle_area((struct length){2 * 15.0e-2}).m2;
    near(lifted, 1.33e4, 1e-3);
    car_finish(&book.car);
}

static void a_lever_makes_300_n_of_60(void **state)
{
    (void)state;
    struct textbook book = build(2e-2, 2e-2);
    struct pedal *pedal = &car_part(&book.car, book.pedal)->as.pedal;
    pedal->pad_arm.m = 0.20;
    pedal->rod_arm.m = 0.04;
    press(&book, 60);
    near(book.solution->pedals[book.pedal].rod.n, 300, 1e-9);
    car_finish(&book.car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_foot_presses_four_wheel_cylinders),
        cmocka_unit_test(a_small_piston_lifts_a_car),
        cmocka_unit_test(a_lever_makes_300_n_of_60),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
