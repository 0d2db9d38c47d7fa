#include "parts/clutch.h"

#include <math.h>

#include "support/near.h"

#define BORE_OF_400_MM2 0.0225675833419103 /* sqrt(4 * 400 / pi) mm */

static struct slave slave(enum slave_type type)
{
    return (struct slave){.type = type,
                          .bore = {BORE_OF_400_MM2},
                          .inner_bore = {BORE_OF_400_MM2 / 2},
                          .fork_ratio = {2},
                          .play = {1e-3},
                          .release_force = {1200},
                          .release_end = {NAN},
                          .finger_ratio = {4},
                          .cushion = {0.8e-3},
                          .efficiency = {1},
                          .flex = {0},
                          .plate_run_out = {0.3e-3},
                          .clamp = {4000},
                          .plate_outer = {0.2},
                          .plate_inner = {0.1},
                          .plate_friction = {0.3}};
}

static void a_concentric_slave_presses_with_its_ring(void **state)
{
    (void)state;
    struct slave s = slave(SLAVE_OUTSIDE);
    near(slave_area(&s).m2, 400e-6, 1e-16);
    s.type = SLAVE_CONCENTRIC;
    near(slave_area(&s).m2, 300e-6, 1e-16); /* half the diameter is a quarter of the area */
    s.inner_bore = s.bore;
    near_unknown(slave_area(&s).m2);
    s.inner_bore.m = NAN;
    near_unknown(slave_area(&s).m2);
    s.type = SLAVE_NOT_SAID;
    near_unknown(slave_area(&s).m2);
}

static void only_an_outside_slave_has_a_fork(void **state)
{
    (void)state;
    struct slave s = slave(SLAVE_OUTSIDE);
    near(slave_ratio(&s), 2, 0);
    s.fork_ratio.value = 0;
    near_unknown(slave_ratio(&s));
    s.fork_ratio.value = NAN;
    near_unknown(slave_ratio(&s));
    s.type = SLAVE_CONCENTRIC;
    near(slave_ratio(&s), 1, 0);
}

static void pressure_is_what_holds_the_bearing_down(void **state)
{
    (void)state;
    struct slave s = slave(SLAVE_OUTSIDE);
    near_rel(slave_pressure(&s, RELEASE_PEAK).pa, 1.5e6, 1e-12); /* 1200 N / 2 / 400 mm2 */
    s.efficiency.value = 0.8; /* a fifth lost on the way to the fingers */
    near_rel(slave_pressure(&s, RELEASE_PEAK).pa, 1.875e6, 1e-12);
    s.efficiency.value = 0;
    near_unknown(slave_pressure(&s, RELEASE_PEAK).pa);
    s.efficiency.value = 1;
    s.type = SLAVE_CONCENTRIC;
    near_rel(slave_pressure(&s, RELEASE_PEAK).pa, 4e6, 1e-12);
    s.release_force.n = 0;
    near(slave_pressure(&s, RELEASE_PEAK).pa, 0, 0);
    s.release_force.n = -1;
    near_unknown(slave_pressure(&s, RELEASE_PEAK).pa);
    s.release_force.n = NAN;
    near_unknown(slave_pressure(&s, RELEASE_PEAK).pa);
}

static void one_release_force_serves_for_peak_and_end(void **state)
{
    (void)state;
    struct slave s = slave(SLAVE_OUTSIDE);
    near(slave_release_force(&s, RELEASE_END).n, 1200, 0);
    s.release_end.n = 900;
    near(slave_release_force(&s, RELEASE_PEAK).n, 1200, 0);
    near(slave_release_force(&s, RELEASE_END).n, 900, 0);
    near_rel(slave_pressure(&s, RELEASE_END).pa, 900 / 2 / 400e-6, 1e-12);
    s.release_force.n = NAN;
    near(slave_release_force(&s, RELEASE_PEAK).n, 900, 0);
    s.release_end.n = -1;
    near_unknown(slave_release_force(&s, RELEASE_END).n);
    s.release_end.n = NAN;
    near_unknown(slave_release_force(&s, RELEASE_PEAK).n);
}

/* 8 mm of bearing over 4 is 2 mm of lift, 1.76 mm where fork and cover bend 12 % of it away; less
 * 0.8 mm of cushion and 0.3 mm of run-out, halved. */
static void the_faces_part_by_what_lift_leaves_of_cushion_and_run_out(void **state)
{
    (void)state;
    struct slave s = slave(SLAVE_OUTSIDE);
    struct length lift = clutch_lift(&s, (struct length){8e-3});
    near(lift.m, 2e-3, 1e-15);
    s.flex.of_1 = 0.12;
    near(clutch_lift(&s, (struct length){8e-3}).m, 1.76e-3, 1e-15);
    s.flex.of_1 = -0.1;
    near_unknown(clutch_lift(&s, (struct length){8e-3}).m);
    s.flex.of_1 = 0;
    near(clutch_face_clearance(&s, lift).m, 0.45e-3, 1e-15);
    near(clutch_face_clearance(&s, (struct length){0.5e-3}).m, -0.3e-3, 1e-15); /* it rubs */
    near_unknown(clutch_lift(&s, (struct length){-1e-3}).m);
    near_unknown(clutch_face_clearance(&s, (struct length){NAN}).m);
    s.finger_ratio.value = 0;
    near_unknown(clutch_lift(&s, (struct length){8e-3}).m);
    s.cushion.m = NAN;
    near_unknown(clutch_face_clearance(&s, lift).m);
}

/* 2 * 0.3 * 4000 N on 75 mm (worn in), or on 2/3 (0.1^3 - 0.05^3)/(0.1^2 - 0.05^2) = 77.778 mm. */
static void a_plate_carries_a_little_more_while_its_facings_are_new(void **state)
{
    (void)state;
    struct slave s = slave(SLAVE_OUTSIDE);
    near(clutch_torque(&s, true).nm, 180, 1e-9);
    near_rel(clutch_torque(&s, false).nm, 186.66666667, 1e-9);
    s.plate_inner = s.plate_outer;
    near_unknown(clutch_torque(&s, true).nm);
    s = slave(SLAVE_OUTSIDE);
    s.clamp.n = NAN;
    near_unknown(clutch_torque(&s, true).nm);
}

static double travel(double volume)
{
    struct slave s = slave(SLAVE_OUTSIDE);
    return slave_bearing_travel(&s, (struct volume){volume}).m;
}

static void the_bearing_moves_once_its_play_is_gone(void **state)
{
    (void)state;
    near(travel(0), 0, 0);
    near(travel(0.8e-6), 0, 1e-15);
    near(travel(0.4e-6), 0, 0);
    near(travel(8e-6), 9e-3, 1e-12); /* 20 mm of slave, 10 of bearing, 1 of play */
    near_unknown(travel(-1));
    near_unknown(travel(NAN));
    struct slave s = slave(SLAVE_OUTSIDE);
    s.play.m = 0;
    near(slave_bearing_travel(&s, (struct volume){8e-6}).m, 10e-3, 1e-12);
    s.play.m = NAN;
    near_unknown(slave_bearing_travel(&s, (struct volume){8e-6}).m);
    s = slave(SLAVE_OUTSIDE);
    s.fork_ratio.value = NAN;
    near_unknown(slave_bearing_travel(&s, (struct volume){8e-6}).m);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_concentric_slave_presses_with_its_ring),
        cmocka_unit_test(only_an_outside_slave_has_a_fork),
        cmocka_unit_test(pressure_is_what_holds_the_bearing_down),
        cmocka_unit_test(one_release_force_serves_for_peak_and_end),
        cmocka_unit_test(the_faces_part_by_what_lift_leaves_of_cushion_and_run_out),
        cmocka_unit_test(a_plate_carries_a_little_more_while_its_facings_are_new),
        cmocka_unit_test(the_bearing_moves_once_its_play_is_gone),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
