/* R. A. Serway and J. S. Faughn, College Physics, problem of a car's drum brake, also met with
 * other figures and with the two pistons changed over. The question was read, no answer: sums by
 * hand. Master piston 1.8 cm2, brake piston 6.4 cm2, 44 N on the master's piston, friction 0.50
 * between shoe and drum, drum radius 34 cm.
 *
 * The problem rubs on one face; a disc has two, so friction counts half here. */
#include "parts/disc_brake.h"
#include "parts/master.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define PI 3.14159265358979323846

static const struct outside book = {
    "P3", "R. A. Serway and J. S. Faughn, College Physics, problem of a drum brake", "inputs read"};

static struct length bore(double area)
{
    return (struct length){sqrt(4 * area / PI)};
}

static struct disc one_face(double area, double radius)
{
    return (struct disc){.caliper = CALIPER_SLIDING,
                         .bores = {1, bore(area)},
                         .inlets = 1,
                         .effective_radius = {radius},
                         .friction = {0.50 / 2},
                         .efficiency = {1},
                         .threshold = {0}};
}

static double torque(double foot, double master_area, double brake_area, double radius)
{
    struct master master = {.bore = bore(master_area), .efficiency = {1}};
    struct disc disc = one_face(brake_area, radius);
    struct pressure p[2] = {master_pressure(&master, (struct force){foot}), {NAN}};
    return disc_torque(&disc, p).nm;
}

static void a_piston_of_1_8_cm2_brakes_a_drum(void **state)
{
    (void)state;
    struct master master = {.bore = bore(1.8e-4), .efficiency = {1}};
    struct pressure p[2] = {master_pressure(&master, (struct force){44}), {NAN}};
    outside_again(&book, "pressure", "Pa", 244.444e3, p[0].pa, 0.5);
    struct disc disc = one_face(6.4e-4, 0.34);
    outside_again(&book, "force of the brake's piston", "N", 156.444, disc_clamp(&disc, p).n, 5e-4);
    outside_again(&book, "torque, 44 N and 34 cm", "N m", 26.5956, torque(44, 1.8e-4, 6.4e-4, 0.34),
                  5e-5);
    outside_again(&book, "torque, 47 N and 34 cm", "N m", 28.4089, torque(47, 1.8e-4, 6.4e-4, 0.34),
                  5e-5);
    outside_again(&book, "torque, 42 N and 28 cm", "N m", 20.9067, torque(42, 1.8e-4, 6.4e-4, 0.28),
                  5e-5);
}

/* 44 N on 6.4 cm2 are 68 750 Pa; on 1.8 cm2 12.375 N; half of that at 34 cm 2.10375 N m. A large
 * piston at the foot makes less of the force, not more. */
static void the_pistons_changed_over_take_force_away(void **state)
{
    (void)state;
    outside_again(&book, "torque, pistons changed over", "N m", 2.10375,
                  torque(44, 6.4e-4, 1.8e-4, 0.34), 5e-6);
    assert_true(torque(44, 6.4e-4, 1.8e-4, 0.34) < torque(44, 1.8e-4, 1.8e-4, 0.34));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_piston_of_1_8_cm2_brakes_a_drum),
        cmocka_unit_test(the_pistons_changed_over_take_force_away),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
