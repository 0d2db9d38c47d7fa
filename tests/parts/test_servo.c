#include "parts/servo.h"

#include <math.h>

#include "support/near.h"

#define SQUARE_METRES_TO_DIAMETER(area) sqrt((area)*4 / 3.14159265358979323846)

/* Made so that the sums are round: area 0.03 m2, ceiling 0.9 * 0.03 * 70 kPa - 90 = 1800 N; knee
 * at (1800 + 3 * 40 - 150)/2 = 885 N; own piston 0.0003 m2. */
static struct servo servo(void)
{
    return (struct servo){.diameter = {SQUARE_METRES_TO_DIAMETER(0.03)},
                          .ratio = {3},
                          .cut_in = {40},
                          .jump = {150},
                          .vacuum = {70e3},
                          .efficiency = {0.9},
                          .return_spring = {90},
                          .bore = {SQUARE_METRES_TO_DIAMETER(0.0003)},
                          .line_cut_in = {4e5},
                          .passes = YES};
}

static double out(double input, bool assisted)
{
    struct servo s = servo();
    return servo_output(&s, (struct force){input}, assisted).n;
}

static void area_ceiling_and_knee_are_as_by_hand(void **state)
{
    (void)state;
    struct servo s = servo();
    near(servo_area(&s).m2, 0.03, 1e-12);
    near(servo_ceiling(&s).n, 1800, 1e-9);
    near(servo_knee(&s).n, 885, 1e-9);
}

static void help_begins_at_cut_in_with_the_jump_and_ends_at_the_knee(void **state)
{
    (void)state;
    near(out(0, true), 0, 0);
    near(out(39.999, true), 0, 0);
    near(out(40, true), 150, 1e-9);
    near(out(140, true), 450, 1e-9);
    near(out(884, true), 2682, 1e-9); /* 150 + 3 * 844 */
    near(out(885, true), 2685, 1e-9);
    near(out(985, true), 2785, 1e-9); /* from here on newton for newton */
}

static void output_never_falls_with_input(void **state)
{
    (void)state;
    double before = 0, unassisted_before = 0;
    for (double input = 0; input < 2000; input += 0.5) {
        assert_true(out(input, true) >= before);
        assert_true(out(input, false) >= unassisted_before);
        before = out(input, true);
        unassisted_before = out(input, false);
    }
}

static void without_vacuum_the_spring_is_still_to_be_pushed(void **state)
{
    (void)state;
    near(out(50, false), 0, 0);
    near(out(90, false), 0, 0);
    near(out(100, false), 10, 1e-12);
}

static void so_little_vacuum_that_the_jump_uses_it_up_still_gives_one_law(void **state)
{
    (void)state;
    struct servo s = servo();
    s.vacuum.pa = 5000; /* ceiling 0.9 * 0.03 * 5000 - 90 = 45 N, less than jump - cut in */
    near(servo_knee(&s).n, 40, 1e-9);
    near(servo_output(&s, (struct force){40}, true).n, 85, 1e-9);
    near(servo_output(&s, (struct force){100}, true).n, 145, 1e-9);
    s.vacuum.pa = 0;
    near(servo_output(&s, (struct force){50}, true).n, 0, 0);
    near(servo_output(&s, (struct force){100}, true).n, 10, 1e-9);
}

static void the_law_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    const struct {
        size_t field;
        double value;
    } bad[] = {
        {offsetof(struct servo, diameter), NAN},      {offsetof(struct servo, diameter), 0},
        {offsetof(struct servo, ratio), NAN},         {offsetof(struct servo, ratio), 1},
        {offsetof(struct servo, cut_in), NAN},        {offsetof(struct servo, cut_in), -1},
        {offsetof(struct servo, jump), NAN},          {offsetof(struct servo, jump), -1},
        {offsetof(struct servo, vacuum), NAN},        {offsetof(struct servo, vacuum), -1},
        {offsetof(struct servo, vacuum), 101326},     {offsetof(struct servo, efficiency), NAN},
        {offsetof(struct servo, efficiency), 1.1},    {offsetof(struct servo, efficiency), 0},
        {offsetof(struct servo, return_spring), NAN}, {offsetof(struct servo, return_spring), -1},
    };
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        struct servo s = servo();
        *(double *)((char *)&s + bad[i].field) = bad[i].value;
        near_unknown(servo_output(&s, (struct force){100}, true).n);
        near_unknown(servo_knee(&s).n);
    }
    near_unknown(out(-1, true));
    near_unknown(out(NAN, true));
    near_unknown(out(-1, false));
    near_unknown(out(NAN, false));
}

static double line(enum yes_no passes, double input, bool assisted)
{
    struct servo s = servo();
    s.passes = passes;
    return servo_line_output(&s, (struct pressure){input}, assisted).pa;
}

/* Jump 150/0.0003 = 0.5 MPa, ceiling 1800/0.0003 = 6 MPa, spring 0.3 MPa, cut in 0.4 MPa; knee at
 * (6 + 3 * 0.4 - 0.5)/2 = 3.35 MPa. */
static void a_remote_servo_works_in_pressures(void **state)
{
    (void)state;
    near(line(YES, 0.4e6, true), 0.5e6, 1);
    near(line(YES, 1.4e6, true), 3.5e6, 1);
    near(line(YES, 3.3e6, true), 9.2e6, 1);
    near(line(YES, 3.35e6, true), 9.35e6, 1);
    near(line(YES, 3.4e6, true), 9.4e6, 1); /* from here on pascal for pascal */
    near(line(YES, 4.35e6, true), 10.35e6, 1);
    near(line(NO, 1.4e6, true), 3.5e6, 1);
}

static void fluid_that_passes_at_rest_brings_its_pressure_along(void **state)
{
    (void)state;
    near(line(YES, 0.39e6, true), 0.39e6, 1e-6);
    near(line(YES_NO_NOT_SAID, 0.39e6, true), 0.39e6, 1e-6);
    near(line(YES, 1e6, false), 1e6, 1e-6);
    near(line(NO, 0.39e6, true), 0.09e6,
         1e-3); /* no help yet: fluid pushes the piston all the same */
    near(line(NO, 0.2e6, true), 0, 0);
    near(line(NO, 0.2e6, false), 0, 0);
    near(line(NO, 1e6, false), 0.7e6, 1e-3);
}

/* Bore of 300 mm2, a rod of 30 mm2 in front of its piston: 0.9 of the area is left to the fluid.
 * The knee: 0.5 + 3 (p - 0.4) = 0.9 p + 6 at 6.7/2.1 MPa. Without a rod all of it. */
static void the_rod_before_a_remote_piston_takes_its_area(void **state)
{
    (void)state;
    struct servo s = servo();
    near(servo_area_before(&s), 1, 0);
    s.rod_diameter.m = SQUARE_METRES_TO_DIAMETER(0.00003);
    near(servo_area_before(&s), 0.9, 1e-12);
    near(servo_line_knee(&s).pa, 6.7e6 / 2.1, 1e-3);
    near(servo_line_output(&s, (struct pressure){5e6}, true).pa, 0.9 * 5e6 + 6e6, 1e-3);
    near(servo_line_output(&s, (struct pressure){5e6}, false).pa, 5e6, 1e-3);
    s.passes = NO;
    near(servo_line_output(&s, (struct pressure){5e6}, false).pa, 0.9 * 5e6 - 0.3e6, 1e-3);
    assert_true(servo_line_helps(&s, (struct pressure){0.4e6}, true));
    assert_false(servo_line_helps(&s, (struct pressure){0.39e6}, true));
    assert_false(servo_line_helps(&s, (struct pressure){1e6}, false));
    s.rod_diameter = s.bore;
    near_unknown(servo_area_before(&s));
}

static void pressure_out_never_falls_with_pressure_in(void **state)
{
    (void)state;
    for (int i = 0; i < 4; i++) {
        double before = 0;
        for (double p = 0; p < 12e6; p += 1e4) {
            double now = line(i & 1 ? NO : YES, p, i & 2);
            assert_true(now >= before);
            before = now;
        }
    }
}

static void pressure_out_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    struct servo s = servo();
    s.bore.m = NAN;
    near_unknown(servo_line_output(&s, (struct pressure){1e6}, true).pa);
    near_unknown(servo_line_output(&s, (struct pressure){1e6}, false).pa);
    s = servo();
    s.line_cut_in.pa = NAN;
    near_unknown(servo_line_output(&s, (struct pressure){1e6}, true).pa);
    s = servo();
    s.return_spring.n = NAN;
    near_unknown(servo_line_output(&s, (struct pressure){1e6}, false).pa);
    near_unknown(line(YES, -1, true));
    near_unknown(line(YES, NAN, false));
}

/* 8 in shell (32.4293e-3 m2), 0.7 bar, 95 %, 3 L, stroke 15 mm: 486.44 mL a stroke. Worked out
 * elsewhere from p = p0 + n p_a V_w/V and p V/(V - V_w):
 *   at rest  31325, 47755, 64184, 80614, 97044 Pa; pressed 37387, 56996, 76605, 96214, 101325 Pa;
 *   ceilings 1969.8, 1365.7, 761.6, 157.4, 0 N. */
static struct servo stopped(void)
{
    return (struct servo){
        .diameter = {0.2032}, .vacuum = {0.7e5}, .efficiency = {0.95}, .vacuum_volume = {3e-3}};
}

static void each_stroke_with_the_engine_stopped_uses_up_vacuum(void **state)
{
    (void)state;
    struct servo servo = stopped();
    const double ceilings[] = {1969.8, 1365.7, 761.6, 157.4, 0, 0};
    for (int i = 0; i < 6; i++)
        near(servo_ceiling_after(&servo, (struct length){15e-3}, i).n, ceilings[i], 0.06);
    servo.return_spring.n = 60;
    near(servo_ceiling_after(&servo, (struct length){15e-3}, 0).n, 1969.8 - 60, 0.06);
    near(servo_ceiling_after(&servo, (struct length){15e-3}, 9).n, -60, 1e-9);
}

static void strokes_count_while_they_get_half_of_the_first_ones_help(void **state)
{
    (void)state;
    struct servo servo = stopped(); /* half of 1969.8 is 984.9: the second still, not the third */
    near(servo_strokes_left(&servo, (struct length){15e-3}), 2, 0);
    servo.vacuum_volume.m3 = 6e-3;
    assert_true(servo_strokes_left(&servo, (struct length){15e-3}) > 2);
    servo.vacuum.pa = 0;
    near(servo_strokes_left(&servo, (struct length){15e-3}), 0, 0);
}

static void strokes_are_unknown_outside_their_ranges(void **state)
{
    (void)state;
    struct servo servo = stopped();
    near_unknown(servo_strokes_left(&servo, (struct length){0}));
    near_unknown(servo_strokes_left(&servo, (struct length){NAN}));
    near_unknown(servo_strokes_left(&servo, (struct length){0.1})); /* more than there is */
    near_unknown(servo_strokes_left(&servo, (struct length){1e-6}));
    near_unknown(servo_ceiling_after(&servo, (struct length){15e-3}, -1).n);
    servo.vacuum_volume.m3 = NAN;
    near_unknown(servo_strokes_left(&servo, (struct length){15e-3}));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(area_ceiling_and_knee_are_as_by_hand),
        cmocka_unit_test(help_begins_at_cut_in_with_the_jump_and_ends_at_the_knee),
        cmocka_unit_test(output_never_falls_with_input),
        cmocka_unit_test(without_vacuum_the_spring_is_still_to_be_pushed),
        cmocka_unit_test(so_little_vacuum_that_the_jump_uses_it_up_still_gives_one_law),
        cmocka_unit_test(the_law_is_unknown_outside_its_ranges),
        cmocka_unit_test(a_remote_servo_works_in_pressures),
        cmocka_unit_test(fluid_that_passes_at_rest_brings_its_pressure_along),
        cmocka_unit_test(the_rod_before_a_remote_piston_takes_its_area),
        cmocka_unit_test(pressure_out_never_falls_with_pressure_in),
        cmocka_unit_test(pressure_out_is_unknown_outside_its_ranges),
        cmocka_unit_test(each_stroke_with_the_engine_stopped_uses_up_vacuum),
        cmocka_unit_test(strokes_count_while_they_get_half_of_the_first_ones_help),
        cmocka_unit_test(strokes_are_unknown_outside_their_ranges),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
