#include "parts/master.h"

#include <math.h>

#include "support/near.h"

static double area(double diameter)
{
    return circle_area((struct length){diameter}).m2;
}

static void a_circle_has_its_area_and_no_circle_has_none(void **state)
{
    (void)state;
    near(area(2), 3.14159265358979, 1e-13);
    near(area(0.01905), 285.0229e-6, 0.0001e-6); /* 3/4 in: 0.441786 in2 */
    near_unknown(area(0));
    near_unknown(area(-1));
    near_unknown(area(NAN));
}

static double pressure(double bore, double efficiency, double rod)
{
    struct master m = {.bore = {bore}, .efficiency = {efficiency}};
    return master_pressure(&m, (struct force){rod}).pa;
}

static void pressure_is_force_over_area_less_what_the_seals_hold(void **state)
{
    (void)state;
    near(pressure(0.02, 1, 314.159265358979), 1e6, 1e-6);
    near(pressure(0.02, 0.95, 314.159265358979), 0.95e6, 1e-6);
    near(pressure(0.02, 0.95, 0), 0, 0);
    struct master m = {.bore = {0.02}};
    near(master_area(&m).m2, 3.14159265358979e-4, 1e-17);
}

static void pressure_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    near_unknown(pressure(0, 0.95, 100));
    near_unknown(pressure(NAN, 0.95, 100));
    near_unknown(pressure(0.02, 0, 100));
    near_unknown(pressure(0.02, 1.01, 100));
    near_unknown(pressure(0.02, NAN, 100));
    near_unknown(pressure(0.02, 0.95, -1));
    near_unknown(pressure(0.02, 0.95, NAN));
}

/* 22.225 mm (387.9483 mm2), springs of 120 and 70 N, 10 N of friction a piston, no other loss. */
static struct master tandem(void)
{
    return (struct master){.type = MASTER_TANDEM,
                           .bore = {22.225e-3},
                           .efficiency = {1},
                           .primary_spring = {120},
                           .secondary_spring = {70},
                           .seal_friction = {10},
                           .large_bore = {NAN},
                           .take_up = {6e5}};
}
#define TANDEM_AREA 387.9483e-6

static struct master_pressures made(const struct master *master, double rod, enum master_loss loss)
{
    return master_pressures(master, (struct force){rod}, loss);
}

/* Force on the first piston 2000 - 120 - 10, on the second that and 120 - 70 - 10 more. */
static void springs_set_the_circuits_of_a_tandem_apart(void **state)
{
    (void)state;
    struct master m = tandem();
    struct master_pressures p = made(&m, 2000, MASTER_WHOLE);
    near_rel(p.of[0].pa, 1870 / TANDEM_AREA, 1e-6);
    near_rel(p.of[1].pa, 1910 / TANDEM_AREA, 1e-6);
    near_rel(p.of[1].pa - p.of[0].pa, 40 / TANDEM_AREA, 1e-6);
    m.efficiency.value = 0.95;
    near_rel(made(&m, 2000, MASTER_WHOLE).of[0].pa, 1770 / TANDEM_AREA, 1e-6);
}

/* The second piston stirs at 70 + 2 * 10 N, the first makes pressure from 130 N on. */
static void each_piston_begins_when_its_spring_gives(void **state)
{
    (void)state;
    struct master m = tandem();
    near(made(&m, 90, MASTER_WHOLE).of[1].pa, 0, 0);
    near_rel(made(&m, 91, MASTER_WHOLE).of[1].pa, 1 / TANDEM_AREA, 1e-6);
    near(made(&m, 130, MASTER_WHOLE).of[0].pa, 0, 0);
    near_rel(made(&m, 130, MASTER_WHOLE).of[1].pa, 40 / TANDEM_AREA, 1e-6);
    near_rel(made(&m, 131, MASTER_WHOLE).of[0].pa, 1 / TANDEM_AREA, 1e-6);
    near_rel(made(&m, 131, MASTER_WHOLE).of[1].pa, 41 / TANDEM_AREA, 1e-6);
}

/* With the first circuit lost the spring between the pistons drops out. */
static void a_lost_circuit_leaves_the_other_its_own_springs(void **state)
{
    (void)state;
    struct master m = tandem();
    struct master_pressures p = made(&m, 2000, MASTER_FIRST_LOST);
    near(p.of[0].pa, 0, 0);
    near_rel(p.of[1].pa, (2000 - 70 - 20) / TANDEM_AREA, 1e-6);
    p = made(&m, 2000, MASTER_SECOND_LOST);
    near(p.of[1].pa, 0, 0);
    near_rel(p.of[0].pa, (2000 - 120 - 10) / TANDEM_AREA, 1e-6);
}

/* Large bore 31.75 mm (791.7304 mm2), take-up at 0.6 MPa: 475.0383 N for it, and from then on the
 * ring of 403.7821 mm2 at 0.6 MPa (242.2693 N) is all that it costs. */
static void a_stepped_bore_gives_way_at_its_take_up_pressure(void **state)
{
    (void)state;
    struct master m = {.type = MASTER_SINGLE,
                       .bore = {22.225e-3},
                       .efficiency = {1},
                       .large_bore = {31.75e-3},
                       .take_up = {6e5}};
    near_rel(made(&m, 400, MASTER_WHOLE).of[0].pa, 400 / 791.7304e-6, 1e-6);
    near_rel(made(&m, 475.0383, MASTER_WHOLE).of[0].pa, 6e5, 1e-6);
    near_rel(made(&m, 575.0383, MASTER_WHOLE).of[0].pa, 6e5 + 100 / TANDEM_AREA, 1e-6);
    near_rel(made(&m, 2000, MASTER_WHOLE).of[0].pa, (2000 - 242.2693) / TANDEM_AREA, 1e-6);
    near_rel(master_take_up_area(&m).m2, 791.7304e-6, 1e-6);
    m.large_bore.m = 20e-3; /* less than the bore */
    near_unknown(made(&m, 2000, MASTER_WHOLE).of[0].pa);
    near_unknown(master_take_up_area(&m).m2);
}

static void the_rod_force_undoes_the_pressure(void **state)
{
    (void)state;
    struct master m = tandem();
    for (int stepped = 0; stepped < 2; stepped++) {
        m.large_bore.m = stepped ? 31.75e-3 : NAN;
        for (double p = 0.1e6; p < 10e6; p *= 1.5) {
            struct force rod = master_rod_force(&m, (struct pressure){p});
            near_rel(master_pressure(&m, rod).pa, p, 1e-12);
        }
    }
    near_unknown(master_rod_force(&m, (struct pressure){-1}).n);
    near_unknown(master_rod_force(&m, (struct pressure){NAN}).n);
}

static void springs_that_are_not_known_leave_the_pressure_unknown(void **state)
{
    (void)state;
    struct master m = tandem();
    m.secondary_spring.n = NAN;
    near_unknown(made(&m, 2000, MASTER_WHOLE).of[1].pa);
    assert_true(made(&m, 2000, MASTER_WHOLE).of[0].pa > 0);
    m.primary_spring.n = NAN;
    near_unknown(made(&m, 2000, MASTER_WHOLE).of[0].pa);
    m = tandem();
    m.bore.m = NAN;
    near_unknown(made(&m, 2000, MASTER_WHOLE).of[0].pa);
    near_unknown(made(&m, 2000, MASTER_WHOLE).of[1].pa);
    near_unknown(made(&m, 10, MASTER_WHOLE).of[1].pa);
}

/* By hand: a single one has one stroke and one port; of a tandem each piston has its own, and the
 * first needs no way of its own where its spring is the stronger one. */
static void strokes_and_ports_by_chamber(void **state)
{
    (void)state;
    struct master single = {.type = MASTER_SINGLE, .stroke.m = 0.03, .cut_off.m = 0.0012};
    near(master_full_stroke(&single, 0).m, 0.03, 1e-12);
    near(master_own_cut_off(&single, 0).m, 0.0012, 1e-12);
    struct master tandem = {.type = MASTER_TANDEM,
                            .primary_stroke.m = 0.018,
                            .secondary_stroke.m = 0.014,
                            .cut_off.m = 0.0012,
                            .primary_spring.n = 90,
                            .secondary_spring.n = 60,
                            .seal_friction.n = 20};
    near(master_full_stroke(&tandem, 0).m, 0.018, 1e-12);
    near(master_full_stroke(&tandem, 1).m, 0.014, 1e-12);
    near(master_own_cut_off(&tandem, 0).m, 0, 1e-12);
    near(master_own_cut_off(&tandem, 1).m, 0.0012, 1e-12);
    tandem.primary_spring.n = 79; /* less than the other and its friction */
    near(master_own_cut_off(&tandem, 0).m, 0.0012, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(strokes_and_ports_by_chamber),
        cmocka_unit_test(a_circle_has_its_area_and_no_circle_has_none),
        cmocka_unit_test(pressure_is_force_over_area_less_what_the_seals_hold),
        cmocka_unit_test(pressure_is_unknown_outside_its_ranges),
        cmocka_unit_test(springs_set_the_circuits_of_a_tandem_apart),
        cmocka_unit_test(each_piston_begins_when_its_spring_gives),
        cmocka_unit_test(a_lost_circuit_leaves_the_other_its_own_springs),
        cmocka_unit_test(a_stepped_bore_gives_way_at_its_take_up_pressure),
        cmocka_unit_test(the_rod_force_undoes_the_pressure),
        cmocka_unit_test(springs_that_are_not_known_leave_the_pressure_unknown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
