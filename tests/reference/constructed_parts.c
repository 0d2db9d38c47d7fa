/* Cases made up here, with no published answer: the pieces of a disc and drum car at 7 MPa that
 * need one part only. Every figure was worked out by hand and in another program. */
#include "parts/bubble.h"
#include "parts/disc_brake.h"
#include "parts/drum_brake.h"
#include "parts/fluid.h"
#include "parts/master.h"
#include "parts/pipe.h"
#include "parts/servo.h"

#include <math.h>
#include <stdio.h>

#include "support/near.h"
#include "support/outside.h"

#define PI 3.14159265358979323846

static const struct outside wheel_ends = {"X3", "Wheel ends of a disc and drum car at 7 MPa",
                                          "constructed"};
static const struct outside pocket = {"X6", "A caliper whose nipple is below its top",
                                      "constructed"};
static const struct outside servo_case = {"X4", "A vacuum servo of 8 in, 0.7 bar, 95 %",
                                          "constructed"};
static const struct outside budget = {
    "X1", "Travel budget of a two-circuit car at 7 MPa, the parts", "constructed"};

static const struct pressure line = {7e6};

/* Sliding caliper, one piston of 54 mm; at 7 MPa pads 0.12 mm together and body 0.10 mm. */
static struct disc front_disc(void)
{
    return (struct disc){.caliper = CALIPER_SLIDING,
                         .bores = {1, {0.054}},
                         .inlets = 1,
                         .effective_radius = {0.110},
                         .friction = {0.38},
                         .efficiency = {1},
                         .threshold = {0},
                         .roll_back = {0.15e-3},
                         .pad_squash = {0.06e-3 * 10 / 7},
                         .body_opening = {0.10e-3 * 10 / 7}};
}

static void a_front_caliper_takes_its_volumes(void **state)
{
    (void)state;
    struct disc disc = front_disc();
    struct disc_volumes v = disc_volume(&disc, 0, line, NULL);
    outside_again(&budget, "roll-back of a caliper", "mm3", 343.53, v.roll_back.m3 * 1e9, 0.005);
    outside_again(&budget, "pads of a caliper", "mm3", 274.83, v.pads.m3 * 1e9, 0.005);
    outside_again(&budget, "body of a caliper", "mm3", 229.02, v.body.m3 * 1e9, 0.005);
}

static void a_front_caliper_clamps_and_brakes(void **state)
{
    (void)state;
    struct disc disc = front_disc();
    struct pressure p[2] = {line, {NAN}};
    outside_again(&wheel_ends, "clamp force", "N", 16031.5, disc_clamp(&disc, p).n, 0.05);
    outside_again(&wheel_ends, "torque of a disc", "N m", 1340.24, disc_torque(&disc, p).nm, 0.01);
}

/* Two pistons of 19.05 mm, each moves 0.65 mm; the shoes are the sliding pair with factor
 * 1.996628: tip and abutment 0.8 of the radius, half arc 55 deg, friction 0.38. */
static void a_rear_drum_takes_its_volume_and_brakes(void **state)
{
    (void)state;
    struct drum drum = {.shoes = SHOES_LEADING_TRAILING,
                        .cylinder = CYLINDER_TWO_PISTONS,
                        .bore = {0.01905},
                        .diameter = {0.203},
                        .anchor = ANCHOR_SLIDING,
                        .pin_distance = {0.8 * 0.1015},
                        .tip_distance = {0.8 * 0.1015},
                        .lining_start = {NAN},
                        .lining_arc = {110 * PI / 180},
                        .friction = {0.38},
                        .efficiency = {1},
                        .threshold = {0},
                        .clearance = {0.40e-3},
                        .give = {0.25e-3 * 10 / 7}};
    struct drum_volumes v = drum_volume(&drum, line, NULL);
    outside_again(&budget, "a rear drum", "mL", 0.37053, (v.clearance.m3 + v.give.m3) * 1e6, 5e-6);
    outside_again(&wheel_ends, "factor of both shoes", "-", 1.996628, drum_factor(&drum, true),
                  2e-6);
    outside_again(&wheel_ends, "torque of a drum", "N m", 404.335,
                  drum_torque(&drum, line, true).nm, 0.001);
}

static void fluid_pipes_and_air_give_way(void **state)
{
    (void)state;
    struct pressure k0 = {1.95e9};
    outside_again(&budget, "fluid, front", "mL", 0.4327,
                  fluid_compression((struct volume){122.894e-6}, k0, 10, line).m3 * 1e6, 5e-5);
    outside_again(&budget, "fluid, rear", "mL", 0.1599,
                  fluid_compression((struct volume){45.427e-6}, k0, 10, line).m3 * 1e6, 5e-5);
    struct pipe pipe = {.length = {3}, .size = {4.7625e-3}, .wall = {0.7112e-3}};
    outside_again(&budget, "pipes, front", "mL", 0.0056, pipe_swelling(&pipe, line).m3 * 1e6, 5e-5);
    pipe.length.m = 4.5;
    outside_again(&budget, "pipes, rear", "mL", 0.0084, pipe_swelling(&pipe, line).m3 * 1e6, 5e-5);
    outside_again(&budget, "air of 0.1 mL", "mL", 0.0986,
                  air_compression((struct volume){0.1e-6}, line).m3 * 1e6, 5e-5);
}

static void the_master_needs_2716_newtons(void **state)
{
    (void)state;
    struct master master = {.bore = {0.022225}, .efficiency = {1}};
    outside_again(&budget, "area of the master", "mm2", 387.948, master_area(&master).m2 * 1e6,
                  5e-4);
    outside_again(&budget, "pressure", "Pa", 7e6,
                  master_pressure(&master, (struct force){2715.64}).pa, 30);
}

/* 8 in nominal, 0.7 bar, 95 %, ratio 3.5, neither cut in nor jump. */
static void an_8_inch_servo_helps_up_to_its_knee(void **state)
{
    (void)state;
    struct servo servo = {.diameter = {8 * 0.0254},
                          .ratio = {3.5},
                          .cut_in = {0},
                          .jump = {0},
                          .vacuum = {0.7e5},
                          .efficiency = {0.95},
                          .return_spring = {0}};
    outside_again(&servo_case, "area of the diaphragm", "m2", 0.0324293, servo_area(&servo).m2,
                  5e-8);
    outside_again(&servo_case, "greatest help", "N", 2156.55, servo_ceiling(&servo).n, 0.005);
    outside_again(&servo_case, "knee, force in", "N", 862.62, servo_knee(&servo).n, 0.005);
    struct force knee = servo_knee(&servo), above = {knee.n + 100};
    outside_again(&servo_case, "knee, force out", "N", 3019.17, servo_output(&servo, knee, true).n,
                  0.005);
    outside_again(&servo_case, "100 N above the knee, force out", "N", 3119.17,
                  servo_output(&servo, above, true).n, 0.005);
}

/* A caliper on the wrong side: bore 54 mm, 20 mm deep, its nipple so far below the top; air stays
 * above it, a segment of the bore. On the two-circuit car at 7 MPa (4:1, 387.948 mm2) it costs so
 * much pedal, were there no end to it. */
static void air_above_the_nipple_costs_the_pedal(void **state)
{
    (void)state;
    const struct {
        double below, ml, pedal;
    } rows[] = {{10, 5.840, 59.4}, {20, 15.428, 156.8}, {27, 22.902, 232.8}, {44, 39.964, 0}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char what[2][80];
        snprintf(what[0], sizeof what[0], "air above a nipple %g mm below the top", rows[i].below);
        snprintf(what[1], sizeof what[1], "pedal lost, nipple %g mm below the top", rows[i].below);
        double whole = PI / 4 * 0.054 * 0.054 * 0.020;
        double air = bubble_trapped_share(0.054, rows[i].below * 1e-3) * whole;
        outside_again(&pocket, what[0], "mL", rows[i].ml, air * 1e6, 0.0005);
        double lost = air_compression((struct volume){air}, line).m3 / 387.948e-6 * 4;
        if (rows[i].pedal > 0)
            outside_again(&pocket, what[1], "mm", rows[i].pedal, lost * 1e3, 0.05);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_front_caliper_takes_its_volumes),
        cmocka_unit_test(a_front_caliper_clamps_and_brakes),
        cmocka_unit_test(a_rear_drum_takes_its_volume_and_brakes),
        cmocka_unit_test(fluid_pipes_and_air_give_way),
        cmocka_unit_test(the_master_needs_2716_newtons),
        cmocka_unit_test(an_8_inch_servo_helps_up_to_its_knee),
        cmocka_unit_test(air_above_the_nipple_costs_the_pedal),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
