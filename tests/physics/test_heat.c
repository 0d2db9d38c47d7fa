#include "physics/heat.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

#define HALF_SPACE_PIECES 4000

/* Specific heat of grey iron between and beyond its two points (from memory), J/(kg K). */
static double iron(double celsius)
{
    return 420 + (550.0 - 420) / (300 - 20) * (celsius - 20);
}

/* Heat for each kilogram that takes iron from one temperature to another, in small pieces. */
static double heat_between(double from, double to)
{
    double sum = 0, piece = (to - from) / 1000;
    for (int i = 0; i < 1000; i++)
        sum += iron(from + (i + 0.5) * piece) * piece;
    return sum;
}

static void iron_takes_up_the_heat_on_its_way(void **state)
{
    (void)state;
    const double starts[] = {-10, 20, 150, 400}, heats[] = {10, 5e3, 5e4, 2e5};
    for (int i = 0; i < 4; i++)
        for (int j = 0; j < 4; j++) {
            double rise = heat_rise_iron((struct energy){3 * heats[j]}, (struct mass){3},
                                         (struct temperature){starts[i]})
                              .k;
            near_rel(heat_between(starts[i], starts[i] + rise), heats[j], 1e-9);
        }
    near(heat_rise_iron((struct energy){0}, (struct mass){3}, (struct temperature){20}).k, 0, 0);
    near_unknown(heat_rise_iron((struct energy){-1}, (struct mass){3}, (struct temperature){20}).k);
    near_unknown(heat_rise_iron((struct energy){1}, (struct mass){0}, (struct temperature){20}).k);
    near_unknown(heat_rise_iron((struct energy){1}, (struct mass){3}, (struct temperature){NAN}).k);
}

/* By hand: 1200 kg from 100 km/h with 5 % turning, 486 kJ; 70 % of it on two front discs of 7 kg,
 * 95 % into the iron, 460 J/(kg K): 50 K. */
static void a_stop_from_100_km_h_warms_a_usual_disc_by_50_kelvin(void **state)
{
    (void)state;
    double whole = heat_of_stop((struct mass){1200}, (struct speed){100 / 3.6}, (struct speed){0},
                                (struct share){0.05})
                       .j;
    near(whole, 486e3, 500);
    struct energy iron_heat = {0.95 * 0.7 / 2 * whole};
    near(heat_rise(iron_heat, (struct mass){7}, 460).k, 50, 0.5);
    near_unknown(
        heat_of_stop((struct mass){1200}, (struct speed){10}, (struct speed){20}, (struct share){0})
            .j);
    near_unknown(
        heat_of_stop((struct mass){NAN}, (struct speed){10}, (struct speed){0}, (struct share){0})
            .j);
    near_unknown(heat_rise(iron_heat, (struct mass){7}, 0).k);
}

/* Surface of a half space at a time under a flow that falls evenly to nothing, by summing up each
 * moment's flow over sqrt(pi k rho c (time - moment)); flow 1 at first, k rho c 1, stop of 1 s. In
 * u = sqrt(time - moment) nothing is infinite. */
static double surface_at(double time)
{
    double sum = 0, piece = sqrt(time) / HALF_SPACE_PIECES;
    for (int i = 0; i < HALF_SPACE_PIECES; i++) {
        double u = (i + 0.5) * piece;
        sum += 2 * (1 - (time - u * u)) * piece;
    }
    return sum / sqrt(acos(-1));
}

static double surface(double depth, double stop)
{
    /* 100 kJ on 0.1 m2 */
    return heat_surface_rise((struct energy){100e3}, (struct area){0.1}, (struct length){depth},
                             (struct duration){stop})
        .k;
}

static void thick_iron_is_warmest_half_way_and_by_0_532(void **state)
{
    (void)state;
    double most = 0, when = 0;
    for (double time = 0.01; time <= 1; time += 0.01)
        if (surface_at(time) > most) {
            most = surface_at(time);
            when = time;
        }
    near(when, 0.5, 0.011);
    near(most, 0.532, 5e-4);
    /* in 4 s: 500 kW/m2 at first; k rho c = 50 * 7200 * 460 */
    double half_space = most * 500e3 * sqrt(4 / (50.0 * 7200 * 460));
    near_rel(surface(0.5, 4), half_space, 1e-4);
    near_rel(surface(0.05, 4), half_space, 1e-4); /* as a slab, where it still is thick */
    near_unknown(surface(0, 4));
    near_unknown(surface(NAN, 4));
    near_unknown(surface(0.01, 0));
    near_unknown(heat_surface_rise((struct energy){1}, (struct area){0}, (struct length){1},
                                   (struct duration){4})
                     .k);
}

/* Most of the rubbed face of a slab, by explicit differences: its depth in pieces, each with what
 * comes in less what goes on, in time steps of 0.4 dx^2/a. */
static double slab_in_pieces(double depth, double stop)
{
    enum { PIECES = 60 };
    double k = 50, a = k / (7200.0 * 460), dx = depth / PIECES, dt = 0.4 * dx * dx / a;
    double now[PIECES + 1] = {0}, most = 0, flow = 2 * 100e3 / (0.1 * stop);
    for (double t = 0; t < stop; t += dt) {
        double before[PIECES + 1];
        for (int i = 0; i <= PIECES; i++)
            before[i] = now[i];
        for (int i = 0; i <= PIECES; i++) {
            double left = i > 0 ? before[i - 1] : before[1] + 2 * flow * (1 - t / stop) * dx / k;
            double right = i < PIECES ? before[i + 1] : before[PIECES - 1];
            now[i] = before[i] + 0.4 * (left - 2 * before[i] + right);
        }
        most = fmax(most, now[0]);
    }
    return most;
}

/* 5 mm is half of a disc of 10 mm. With 5 mm in 4 s: 62.0 K, its mean at the end 60.4. */
static void a_disc_warms_through_as_a_slab_does_in_pieces(void **state)
{
    (void)state;
    const double depths[] = {3e-3, 5e-3, 8e-3, 12e-3, 20e-3}, stops[] = {2, 4, 6};
    for (int i = 0; i < 5; i++)
        for (int j = 0; j < 3; j++)
            near_rel(surface(depths[i], stops[j]), slab_in_pieces(depths[i], stops[j]), 2e-3);
    near(surface(5e-3, 4), 62.0, 0.05);
    near(surface(1e-3, 4), 1e6 / (7200 * 460.0 * 1e-3), 0.2); /* thin: its mean rise */
}

static struct driven_car warm_car(void)
{
    struct driven_car driven = driven_start();
    const int discs[] = {driven.usual.front_left, driven.usual.front_right};
    const int drums[] = {driven.usual.rear_left, driven.usual.rear_right};
    for (int i = 0; i < 2; i++) {
        driven_say(&driven, discs[i], "disc mass", 5);
        driven_say(&driven, discs[i], "cooling time", 400);
        driven_say(&driven, discs[i], "heat to fluid", 0.3);
        driven_say(&driven, drums[i], "drum mass", 6);
        driven_say(&driven, drums[i], "lining width", 40e-3);
    }
    driven_settle(&driven);
    return driven;
}

static struct solution *solved(const struct driven_car *driven)
{
    struct solution *into = solution_room(driven->car.system, driven->network, driven->car.arena);
    struct state pressed = state_usual();
    solve(driven->car.system, driven->network, &pressed, into);
    return into;
}

static void the_brakes_share_the_energy_of_the_car(void **state)
{
    (void)state;
    struct driven_car driven = warm_car();
    struct solution *solution = solved(&driven);
    const struct vehicle *vehicle = system_vehicle(driven.car.system);
    double sum = 0;
    const int brakes[] = {driven.usual.front_left, driven.usual.front_right, driven.usual.rear_left,
                          driven.usual.rear_right};
    for (int i = 0; i < 4; i++)
        sum += heat_of_brake(driven.car.system, solution, brakes[i]).heat.j;
    /* 100 km/h and 5 % are what is assumed */
    near_rel(sum, vehicle->mass.kg / 2 * pow(100 / 3.6, 2) * 1.05, 1e-12);
    struct heat_state front = heat_of_brake(driven.car.system, solution, brakes[0]);
    struct heat_state rear = heat_of_brake(driven.car.system, solution, brakes[2]);
    near_rel(front.heat.j / rear.heat.j,
             solution->brakes[brakes[0]].force.n / solution->brakes[brakes[2]].force.n, 1e-12);
    near_rel(heat_between(20, 20 + front.rise.k), 0.95 * front.heat.j / 5, 1e-9);
    near_rel(heat_between(20, 20 + rear.rise.k), 0.95 * rear.heat.j / 6, 1e-9);
    driven_finish(&driven);
}

/* Ten times the heat of a stop, and a minute's cooling before each but the first; heat counted in
 * small pieces, the temperature found by halving. */
static void ten_stops_warm_it_and_cooling_holds_it_back(void **state)
{
    (void)state;
    struct driven_car driven = warm_car();
    struct solution *solution = solved(&driven);
    int disc = driven.usual.front_left;
    struct heat_state ours = heat_of_brake(driven.car.system, solution, disc);
    double per_kg = 0.95 * ours.heat.j / 5, celsius = 20;
    for (int stop = 0; stop < 10; stop++) {
        if (stop > 0)
            celsius = 20 + (celsius - 20) * exp(-60.0 / 400);
        double low = celsius, high = celsius + 1000;
        while (high - low > 1e-9) {
            double middle = (low + high) / 2;
            if (heat_between(celsius, middle) < per_kg)
                low = middle;
            else
                high = middle;
        }
        celsius = low;
    }
    near(ours.after_ten.celsius, celsius, 1e-5);
    near(ours.fluid.celsius, 20 + 0.3 * (celsius - 20), 1e-5);

    driven_say(&driven, disc, "cooling time", 36000); /* hardly any cooling: ten times the heat */
    double warmer = heat_of_brake(driven.car.system, solution, disc).after_ten.celsius;
    assert_true(warmer > celsius + 1);
    assert_true(heat_between(20, warmer) < 10 * per_kg);
    driven_unsay(&driven, disc, "cooling time");
    near_unknown(heat_of_brake(driven.car.system, solution, disc).after_ten.celsius);
    driven_finish(&driven);
}

static void a_stop_takes_as_long_as_grip_allows(void **state)
{
    (void)state;
    struct driven_car driven = warm_car();
    struct solution *solution = solved(&driven);
    int drum = driven.usual.rear_left;
    double grip = system_vehicle(driven.car.system)->tyre_grip.value;
    double slowed = fmin(solution->deceleration.m_s2, grip * 9.80665);
    struct heat_state ours = heat_of_brake(driven.car.system, solution, drum);
    double swept = acos(-1) * driven.car.system->parts[drum].as.drum.diameter.m * 40e-3;
    near_rel(ours.surface.k,
             heat_surface_rise((struct energy){0.95 * ours.heat.j}, (struct area){swept},
                               (struct length){8e-3}, (struct duration){100 / 3.6 / slowed})
                 .k,
             1e-12);
    driven_unsay(&driven, drum, "lining width");
    near_unknown(heat_of_brake(driven.car.system, solution, drum).surface.k);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(iron_takes_up_the_heat_on_its_way),
        cmocka_unit_test(a_stop_from_100_km_h_warms_a_usual_disc_by_50_kelvin),
        cmocka_unit_test(thick_iron_is_warmest_half_way_and_by_0_532),
        cmocka_unit_test(a_disc_warms_through_as_a_slab_does_in_pieces),
        cmocka_unit_test(the_brakes_share_the_energy_of_the_car),
        cmocka_unit_test(ten_stops_warm_it_and_cooling_holds_it_back),
        cmocka_unit_test(a_stop_takes_as_long_as_grip_allows),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
