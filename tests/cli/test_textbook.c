/* Published examples written as cars, from description to JSON figure. Expected values: what the
 * source prints, to half its last digit, or recomputed from the same inputs by hand where named.
 * Titles, pages and standing of each source: tests/reference/SOURCES.md. */
#include <stdio.h>
#include <string.h>

#include "support/cmocka_all.h"
#include "support/near.h"
#include "variant.h"

/* A pedal without friction or play on a single master without friction, and what follows. */
#define LOSSLESS(lever, effort, bore)                                                              \
    "[vehicle]\ntitle = Example\n[pedal]\nworks = master\n" lever                                  \
    "\nefficiency = 1\nfree play = 0 mm\neffort = " effort                                         \
    "\n[master]\ntype = single\nprimary spring = 0 N\nbore = " bore "\nefficiency = 1\n"
#define FOUR_RUNS                                                                                  \
    "[runs]\nfeed = master, 1 m pipe, block\nfront = block, 1 m pipe, front disc\n"                \
    "rear = block, 1 m pipe, rear disc\n"

static bool has_figure(const json_t *answer, const char *id)
{
    size_t at;
    json_t *figure;
    json_array_foreach(json_object_get(answer, "figures"), at,
                       figure) if (strcmp(json_string_value(json_object_get(figure, "id")), id) ==
                                   0) return true;
    return false;
}

static json_t *solved(const char *car)
{
    json_t *answer = ask_text(car, FP_CHECK);
    assert_non_null(answer);
    return answer;
}

/* OpenStax, College Physics, section 11.5: 100 N, lever 5, master 0.500 cm, four cylinders of
 * 2.50 cm; printed 1.25e4 N at each, 2.5e7 Pa. */
static void college_physics_brake(void **state)
{
    (void)state;
    json_t *answer = solved(
        LOSSLESS("ratio = 5", "100 N",
                 "5.00 mm") "[front disc]\ncaliper = sliding\nbore = 25.0 mm\nefficiency = 1\n"
                            "threshold = 0 bar\n[rear disc]\ncaliper = sliding\nbore = 25.0 mm\n"
                            "efficiency = 1\nthreshold = 0 bar\n" FOUR_RUNS);
    static const char *const discs[] = {"front left disc", "front right disc", "rear left disc",
                                        "rear right disc"};
    for (int i = 0; i < 4; i++)
        near(asked_figure(answer, "clamp-force", discs[i]), 12500, 1e-6);
    near(asked_figure(answer, "line-pressure", NULL), 2.5e7, 0.05e7);
    near_rel(asked_figure(answer, "line-pressure", NULL), 500 / 1.9634954084936207e-5, 1e-10);
    json_decref(answer);
}

/* Serway, Physics for Scientists and Engineers, car lift: radii 5.00 and 15.0 cm, 1.33e4 N;
 * printed 1.48e3 N and 1.88e5 Pa. The lift is a clutch here: the load is its release force. */
static void car_lift(void **state)
{
    (void)state;
    json_t *answer =
        solved("[vehicle]\ntitle = Example\n[pedal]\nworks = master\nratio = 1\n"
               "efficiency = 1\n[master]\ntype = single\nprimary spring = 0 N\nbore = 10.00 cm\n"
               "efficiency = 1\n[slave]\ntype = outside\nbore = 30.0 cm\nefficiency = 1\n"
               "fork ratio = 1\nrelease force = 13300 N\n[runs]\n"
               "lift = master, 1 m pipe, slave\n");
    near(asked_figure(answer, "clutch-effort", NULL), 1480, 5);
    near(asked_figure(answer, "clutch-pressure", NULL), 1.88e5, 0.005e5);
    near(asked_figure(answer, "clutch-effort", NULL), 13300.0 / 9, 1e-6);
    json_decref(answer);
}

/* BMAT 2004, section 2, question 4: 60 N at 20 cm, rod at 4 cm; printed 300 N. */
static void pedal_lever(void **state)
{
    (void)state;
    json_t *answer = solved(
        LOSSLESS("pad to pivot = 20 cm\nrod to pivot = 4 cm", "60 N",
                 "20 mm") "[front disc]\ncaliper = sliding\nbore = 48 mm\n[runs]\n"
                          "feed = master, 1 m pipe, block\nfront = block, 1 m pipe, front disc\n");
    near(asked_figure(answer, "rod-force", NULL), 300, 1e-9);
    json_decref(answer);
}

/* Budynas and Nisbett, Shigley's Mechanical Engineering Design, example 16-2 (from memory): drum of
 * 300 mm, 0 to 126 degrees, friction 0.32, pin at 112 and 50 mm, force arm 212 mm. F = 2.28 kN
 * gives 366 + 162 = 528 N m. Force 2279.06 N by equal bores and a lever of 5; tip distance is the
 * arm less the pin's distance. The lining, 32 mm wide, bears 1000 kPa at most. */
static void shigley_drum(void **state)
{
    (void)state;
    json_t *answer = solved(LOSSLESS(
        "ratio = 5", "455.812 N",
        "1 in") "[front drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 1 in\n"
                "drum diameter = 300 mm\nanchor = pin\npin distance = 122.654 mm\n"
                "tip distance = 89.346 mm\nlining start = 0 deg\nlining arc = 126 deg\n"
                "friction = 0.32\nlining width = 32 mm\nefficiency = 1\nthreshold = 0 bar\n[runs]\n"
                "feed = master, 1 m pipe, block\nfront = block, 1 m pipe, front drum\n");
    near(asked_figure(answer, "brake-torque", "front left drum"), 528, 0.5);
    near(asked_figure(answer, "brake-torque", "front left drum"), 527.761, 0.01);
    near(asked_figure(answer, "shoe-torque-front", "front left drum"), 366, 0.5);
    near(asked_figure(answer, "shoe-torque-rear", "front left drum"), 162, 0.5);
    near(asked_figure(answer, "lining-pressure-most", "front left drum"), 1000e3, 500);
    json_decref(answer);
}

/* Shigley, example 16-3 (from memory): pads 3.875 to 5.50 in, friction 0.37, one cylinder of 1.5 in
 * a pad, uniform wear; 13 000 lbf in needs F = 3748 lbf and 2121 psi; over 108 deg the pad bears
 * 315.8 psi at most. */
static void shigley_caliper(void **state)
{
    (void)state;
    const double lbf = 4.4482216152605, in = 0.0254;
    json_t *answer = solved(LOSSLESS(
        "ratio = 10", "374.7748 lbf",
        "1.5 in") "[front disc]\ncaliper = fixed\nbore = 2 of 1.5 in\ndisc diameter = 11 in\n"
                  "pad height = 1.625 in\npad arc = 108 deg\nfriction = 0.37\nefficiency = "
                  "1\nthreshold = 0 "
                  "bar\n[runs]\n"
                  "feed = master, 1 m pipe, block\nfront = block, 1 m pipe, front disc\n");
    near(asked_figure(answer, "brake-torque", "front left disc"), 13000 * lbf * in, 0.5 * lbf * in);
    near(asked_figure(answer, "clamp-force", "front left disc"), 3748 * lbf, 0.5 * lbf);
    near(asked_figure(answer, "pad-pressure-most", "front left disc"), 315.8 * lbf / (in * in),
         0.1 * lbf / (in * in));
    near(asked_figure(answer, "line-pressure", NULL), 2121 * lbf / (in * in),
         0.5 * lbf / (in * in));
    json_decref(answer);
}

/* Constructed, no published answer; by hand: 7 MPa on a 22.225 mm master is 2715.64 N. Clamp
 * 7e6 * pi/4 * 0.054^2 = 16 031.5 N, torque 2 * 0.38 * 16 031.5 * 0.110 = 1340.24 N m; drum with
 * sliding shoes, half arc 55 degrees, arms 0.8 r: 1995.18 N on each tip, factor 1.996628 (summed
 * over two million pieces of lining in Octave, the lifted ones taken away), 404.34 N m. */
static void wheel_ends_at_seven_megapascal(void **state)
{
    (void)state;
    json_t *answer = solved(LOSSLESS(
        "ratio = 10", "271.5637 N",
        "22.225 mm") "[front disc]\ncaliper = sliding\nbore = 54 mm\neffective radius = 110 mm\n"
                     "friction = 0.38\nefficiency = 1\nthreshold = 0 bar\n[rear drum]\n"
                     "shoes = leading and trailing\ncylinder = two pistons\nbore = 19.05 mm\n"
                     "drum diameter = 203 mm\nanchor = sliding\npin distance = 81.2 mm\ntip "
                     "distance = 81.2 mm\n"
                     "lining arc = 110 deg\nfriction = 0.38\nefficiency = 1\nthreshold = 0 bar\n"
                     "[runs]\nfeed = master, 1 m pipe, block\nfront = block, 1 m pipe, front disc\n"
                     "rear = block, 1 m pipe, rear drum\n");
    near_rel(asked_figure(answer, "line-pressure", NULL), 7e6, 1e-5);
    near(asked_figure(answer, "clamp-force", "front left disc"), 16031.5, 0.5);
    near(asked_figure(answer, "brake-torque", "front left disc"), 1340.24, 0.05);
    near(asked_figure(answer, "brake-torque", "rear left drum"), 404.34, 0.01);
    json_decref(answer);
}

/* Shigley's Mechanical Engineering Design, example 16-2 (from memory): drum of 300 mm with two
 * pinned shoes, friction 0.32, lining 0 to 126 deg, pin 112 and 50 mm from the centre, arm 212 mm.
 * Each shoe is pushed with 2279.06 N (recomputed; 2.28 kN printed) and the brake pulls with 528 N
 * m. Section 16-6 (read): with 30 % less friction the pedal needs about half as much again; 55.6 %
 * here. */
static void pinned_shoes(void **state)
{
    (void)state;
    double torques[2];
    for (int i = 0; i < 2; i++) {
        char car[1200];
        snprintf(car, sizeof car,
                 "%s[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\n"
                 "bore = 20 mm\ndrum diameter = 300 mm\nanchor = pin\n"
                 "pin distance = 122.6540 mm\ntip distance = 89.3460 mm\nlining start = 0 deg\n"
                 "lining arc = 126 deg\nfriction = %s\nefficiency = 1\nthreshold = 0 bar\n[runs]\n"
                 "feed = master, 1 m pipe, block\nrear = block, 1 m pipe, rear drum\n",
                 LOSSLESS("ratio = 10", "227.906 N", "20 mm"), i == 0 ? "0.32" : "0.224");
        json_t *answer = solved(car);
        torques[i] = asked_figure(answer, "brake-torque", "rear left drum");
        json_decref(answer);
    }
    near(torques[0], 528, 0.5);
    near(torques[0], 527.761, 2e-3);
    near(torques[0] / torques[1] - 1, 0.556, 5e-4);
}

/* The same book, example 16-3 (from memory): pads of 3.875 to 5.50 in, friction 0.37, one cylinder
 * of 1.5 in a pad; 13 000 lbf in need 2121 psi worn in (2120.791 recomputed), 2099.763 psi new. */
static void annular_pads(void **state)
{
    (void)state;
    const char *const pads[] = {"worn in", "new"};
    const double psi[] = {2120.791, 2099.763};
    for (int i = 0; i < 2; i++) {
        char car[1200];
        /* 1/2 in master: a newton at the pad is 10 N on 126.677 mm2 */
        snprintf(car, sizeof car,
                 "[vehicle]\ntitle = Example\n[pedal]\nworks = master\nratio = 10\nefficiency = 1\n"
                 "free play = 0 mm\neffort = %.6f N\n[master]\ntype = single\nprimary spring = 0 "
                 "N\nbore = 12.7 mm\n"
                 "efficiency = 1\n[front disc]\ncaliper = fixed\nbore = 2 of 38.1 mm\n"
                 "disc diameter = 279.4 mm\npad height = 41.275 mm\npads = %s\nfriction = 0.37\n"
                 "efficiency = 1\nthreshold = 0 bar\n[runs]\nfeed = master, 1 m pipe, block\n"
                 "front = block, 1 m pipe, front disc\n",
                 psi[i] * 6894.757293168361 * 126.6768698e-6 / 10, pads[i]);
        json_t *answer = solved(car);
        near_rel(asked_figure(answer, "brake-torque", "front left disc"),
                 13000 * 4.4482216152605 * 0.0254, 1e-6);
        json_decref(answer);
    }
}

/* R. S. Khurmi and J. K. Gupta, Theory of Machines, example 10.23, page 303 (read in a
 * transcription): plate of 300 and 200 mm, 0.1 N/mm2 at the inner radius by uniform wear, friction
 * 0.3; 2 pi * 0.1e6 * 0.1 * 0.05 = 3141.5927 N; 2500 rev/min carry 61.685 kW, so 235.6194 N m. */
static void clutch_plate(void **state)
{
    (void)state;
    json_t *answer = solved("[vehicle]\ntitle = Example\n[pedal]\nworks = master\nratio = 5\n"
                            "[master]\ntype = single\nprimary spring = 0 N\nbore = 16 mm\n"
                            "[slave]\ntype = outside\nbore = 22 mm\nfork ratio = 1.7\n"
                            "clamp force = 3141.5927 N\nplate outer diameter = 300 mm\n"
                            "plate inner diameter = 200 mm\nplate friction = 0.3\n[runs]\n"
                            "line = master, 1 m pipe, slave\n");
    double torque = asked_figure(answer, "clutch-torque", NULL);
    near(torque, 235.6194, 1e-4);
    near(torque * 2500 * 2 * 3.14159265358979 / 60, 61685, 0.5);
    json_decref(answer);
}

/* Four discs on one master of 20 mm through a lever of 5, pistons of 50 mm, friction 0.4, tyres of
 * 0.3 m; a newton at the pad gives 15.91549 kPa, and so 25 N * radius/0.1 m at each tyre. The books
 * count no turning parts. */
#define LOW_CENTRE "weight on front = 50 %\nwheelbase = 2.5 m\nheight of mass centre = 0.5 m\n"
#define NO_TURNING "rotating share = 0 %\n"
#define ROAD_CAR(vehicle, effort, front, rear)                                                     \
    "[vehicle]\ntitle = Example\nfront tyre radius = 0.3 m\nrear tyre radius = 0.3 m\n" vehicle    \
    "\n[pedal]\nworks = master\nratio = 5\nefficiency = 1\nfree play = 0 mm\neffort = " effort     \
    "\n[master]\ntype = single\nprimary spring = 0 N\nbore = 20 mm\nefficiency = 1\n" ROAD_DISC(   \
        "front", front) ROAD_DISC("rear", rear) FOUR_RUNS
#define ROAD_DISC(axle, radius)                                                                    \
    "[" axle " disc]\ncaliper = sliding\nbore = 50 mm\nefficiency = 1\nthreshold = 0 bar\n"        \
    "friction = 0.4\neffective radius = " radius "\n"

/* Halliday, Resnick and Walker, Fundamentals of Physics, chapter 12 (statement read): 11 kN, axles
 * 4.2 m apart, centre 1.8 m behind the front one and 0.75 m high, friction 0.40. By moments a front
 * wheel carries 3535.71 N and a rear one 1964.29 N, so with brakes in that proportion (120 to
 * 66.6667 mm) all four lock together, at 0.4 g and 1414.29 and 785.71 N a wheel; 141.4286 N at the
 * pad by hand. */
static void all_wheels_locked(void **state)
{
    (void)state;
    json_t *answer = solved(ROAD_CAR(
        NO_TURNING "mass = 1121.68783 kg\nweight on front = 57.142857 %\nwheelbase = 4.2 m\n"
                   "height of mass centre = 0.75 m\ngrip = 0.40",
        "141.42857 N", "120 mm", "66.666667 mm"));
    near(asked_figure(answer, "brake-force", "front left disc"), 1414.29, 0.005);
    near(asked_figure(answer, "brake-force", "rear right disc"), 785.71, 0.005);
    near(asked_figure(answer, "deceleration", NULL) / 9.80665 * 9.8, 3.92, 0.005);
    /* both at once, so whichever is named first leaves the other no margin */
    near(asked_figure(answer, "rear-lock-margin", NULL), 0, 1e-6);
    double rear_load = asked_figure(answer, "rear-load-at-lock", NULL);
    near(rear_load, 2 * 1964.29, 0.01);
    near(asked_figure(answer, "front-load-at-lock", NULL), 2 * 3535.71, 0.01);
    bool front = has_figure(answer, "front-locks-at");
    near_rel(asked_figure(answer, front ? "front-locks-at" : "rear-locks-at", NULL), 0.4 * 9.80665,
             1e-6);
    near_rel(asked_figure(answer, front ? "front-locks-effort" : "rear-locks-effort", NULL),
             141.42857, 1e-6);
    json_decref(answer);
}

/* T. D. Gillespie, Fundamentals of Vehicle Dynamics, chapter 3, example 1 (from memory): 3635 lb
 * from 60 mile/h with 2000 lb of braking; printed 218 ft, cut, with g = 32.2 ft/s2. Our pound force
 * has g = 32.174 ft/s2: 88^2/2/(2000 * 32.174/3635) = 218.73 ft. */
static void light_truck(void **state)
{
    (void)state;
    json_t *answer =
        solved(ROAD_CAR(NO_TURNING "mass = 3635 lb\ngrip = 1\n" LOW_CENTRE "stop from = 60 mph\n"
                                   "reaction time = 0 s\nbuild-up time = 0 s",
                        "266.893297 N", "120 mm", "80 mm"));
    near(asked_figure(answer, "deceleration", NULL) / 0.3048, 17.72, 0.02);
    near(asked_figure(answer, "stopping-distance", NULL) / 0.3048, 218, 1);
    near(asked_figure(answer, "stopping-distance", NULL) / 0.3048, 218.73, 0.005);
    json_decref(answer);
}

/* J. Y. Wong, Theory of Ground Vehicles, example in the section on braking (from memory): the rear
 * first at friction 0.8, the front first at 0.2. Recomputed: rates at which the axles lock. The
 * book lets the brakes alone reach the friction and adds rolling; here rolling is within the grip,
 * which is therefore greater by it: T/R + f N = (mu + f) N. */
static void which_axle_locks_first(void **state)
{
    (void)state;
    json_t *answer = solved(
        ROAD_CAR(NO_TURNING "mass = 2165.87724 kg\nweight on front = 55.7491289 %\n"
                            "wheelbase = 2.87 m\nheight of mass centre = 0.508 m\ngrip = 0.82\n"
                            "grip wet = 0.22\nrolling resistance = 0.02",
                 "200 N", "120 mm", "80 mm"));
    near(asked_figure(answer, "rear-locks-at", NULL) / 9.80665, 0.66840, 5e-6);
    near(asked_figure(answer, "front-locks-at-wet", NULL) / 9.80665, 0.218736, 5e-7);
    assert_false(has_figure(answer, "front-locks-at"));
    assert_false(has_figure(answer, "rear-locks-at-wet"));
    json_decref(answer);
}

/* T. D. Gillespie, Fundamentals of Vehicle Dynamics, chapter 3, example 2 (from memory, as good as
 * constructed): 2210 and 1864 lb, wheelbase 108.5 in, centre 20.5 in high, tyres of 12.11 in, gains
 * of 20 and 14 lbf in/psi a wheel (0.8 * 1963.495 mm2 * radius), the rear line equal to 290 psi and
 * on with 0.30. Recomputed: 0.606 g at 500 psi; half g by hand at 392.233 psi, 1295.57 and 741.43
 * lbf on loads of 2594.87 and 1479.13 lbf. */
static void proportioned_rear_brakes(void **state)
{
    (void)state;
    json_t *answer = solved(
        "[vehicle]\ntitle = Example\nmass = 4074 lb\nweight on front = 54.2464408 %\n"
        "wheelbase = 108.5 in\n" NO_TURNING
        "height of mass centre = 20.5 in\nfront tyre radius = 12.11 in\n"
        "rear tyre radius = 12.11 in\ngrip = 1\n[pedal]\nworks = master\nratio = 5\n"
        "efficiency = 1\neffort = 216.605 N\n[master]\ntype = single\nprimary spring = 0 N\nbore = "
        "20 mm\n"
        "efficiency = 1\n[rear valve]\ntype = proportioning\nknee = 290 psi\nslope = "
        "0.30\n" ROAD_DISC("front", "208.64658 mm") ROAD_DISC(
            "rear",
            "146.05261 mm") "[runs]\n"
                            "feed = master, 1 m pipe, block\nfront = block, 1 m pipe, front disc\n"
                            "rear = block, 1 m pipe, rear valve, 1 m pipe, rear tee\n"
                            "rear ends = rear tee, 1 m pipe, rear disc\n");
    near(asked_figure(answer, "deceleration", NULL) / 9.80665, 0.606, 0.0005);
    near(asked_figure(answer, "grip-used-front", NULL), 1295.57 / 2594.87, 1e-4);
    near(asked_figure(answer, "grip-used-rear", NULL), 741.43 / 1479.13, 1e-4);
    near(asked_figure(answer, "grip-efficiency", NULL), 0.5 * 1479.13 / 741.43, 1e-4);
    json_decref(answer);
}

/* 49 CFR 571.135, S7.5 (quoted): 70 m from 100 km/h at no more than 500 N; by its formula (from
 * memory) 0.36 s at full speed, then a mean 6.43004 m/s2. */
static void stop_of_the_rule(void **state)
{
    (void)state;
    json_t *answer =
        solved(ROAD_CAR(NO_TURNING "mass = 1000 kg\ngrip = 1\n" LOW_CENTRE "stop from = 100 km/h\n"
                                   "reaction time = 0.36 s\nbuild-up time = 0 s",
                        "192.901235 N", "120 mm", "80 mm"));
    near(asked_figure(answer, "deceleration", NULL), 6.43, 0.005);
    near(asked_figure(answer, "stopping-distance", NULL), 70, 0.0005);
    json_decref(answer);
}

/* V. B. Bhandari, Design of Machine Elements, example 12.9 (read in a transcription): radius
 * 250 mm, 15 to 75 degrees, pin at 200 mm, arm 200 mm, friction 0.3, 5025.4576 N; four shoes give
 * 2 181 614.28 N mm. An arm equal to the pin's distance leaves a tip distance of nothing, which
 * no wheel cylinder has: the description is refused, so the law alone is checked against this
 * example, and here that the refusal says why. */
static void a_shoe_pushed_at_the_drum_centre_is_no_car(void **state)
{
    (void)state;
    json_t *answer = ask_text(
        LOSSLESS("ratio = 5", "1005.09152 N",
                 "1 in") "[front drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore "
                         "= 1 in\n"
                         "drum diameter = 500 mm\nanchor = pin\npin distance = 200 mm\n"
                         "tip distance = 0 mm\nlining start = 15 deg\nlining arc = 60 deg\n"
                         "friction = 0.3\nefficiency = 1\nthreshold = 0 bar\n[runs]\n"
                         "feed = master, 1 m pipe, block\nfront = block, 1 m pipe, front drum\n",
        FP_CHECK);
    assert_null(answer);
}

/* U. C. Jindal, Machine Design, example 23-5, page 621 (read in a transcription): 1100 kg from 65
 * km/h, rotating parts a tenth more, four brakes alike; printed 49 307.97 J in each. */
static void heat_of_four_brakes(void **state)
{
    (void)state;
    json_t *answer = solved(ROAD_CAR("mass = 1100 kg\nhot stop from = 65 km/h\n"
                                     "rotating share = 10 %",
                                     "100 N", "100 mm", "100 mm"));
    near(asked_figure(answer, "heat-per-stop", "front left disc"), 49307.97, 0.005);
    near(asked_figure(answer, "heat-per-stop", "rear right disc"), 49307.97, 0.005);
    json_decref(answer);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(college_physics_brake),
        cmocka_unit_test(car_lift),
        cmocka_unit_test(pedal_lever),
        cmocka_unit_test(shigley_drum),
        cmocka_unit_test(shigley_caliper),
        cmocka_unit_test(wheel_ends_at_seven_megapascal),
        cmocka_unit_test(pinned_shoes),
        cmocka_unit_test(annular_pads),
        cmocka_unit_test(heat_of_four_brakes),
        cmocka_unit_test(clutch_plate),
        cmocka_unit_test(all_wheels_locked),
        cmocka_unit_test(light_truck),
        cmocka_unit_test(which_axle_locks_first),
        cmocka_unit_test(proportioned_rear_brakes),
        cmocka_unit_test(stop_of_the_rule),
        cmocka_unit_test(a_shoe_pushed_at_the_drum_centre_is_no_car),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
