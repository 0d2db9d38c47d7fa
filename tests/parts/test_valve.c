#include "parts/valve.h"

#include <math.h>

#include "support/near.h"

static struct valve valve(enum valve_type type)
{
    return (struct valve){.type = type,
                          .knee = {2e6},
                          .slope = {0.4},
                          .limit = {3e6},
                          .opens = {0.6e6},
                          .equal_above = {2.6e6},
                          .holds = {6e4},
                          .trips = {1e6}};
}

static double out(enum valve_type type, double in)
{
    struct valve v = valve(type);
    return valve_output(&v, (struct pressure){in}).pa;
}

static void a_limiting_valve_stops_at_its_limit(void **state)
{
    (void)state;
    near(out(VALVE_LIMITING, 2.9e6), 2.9e6, 0);
    near(out(VALVE_LIMITING, 3e6), 3e6, 0);
    near(out(VALVE_LIMITING, 3.1e6), 3e6, 0);
    near(out(VALVE_LIMITING, 9e6), 3e6, 0);
}

static void a_proportioning_valve_bends_at_its_knee(void **state)
{
    (void)state;
    const enum valve_type types[] = {VALVE_PROPORTIONING, VALVE_LOAD_SENSING};
    for (int i = 0; i < 2; i++) {
        near(out(types[i], 1.9e6), 1.9e6, 0);
        near(out(types[i], 2e6), 2e6, 0);
        near(out(types[i], 2.1e6), 2.04e6, 1e-6);
        near(out(types[i], 7e6), 4e6, 1e-6);
    }
}

static void a_hold_off_valve_waits_and_then_catches_up(void **state)
{
    (void)state;
    near(out(VALVE_HOLD_OFF, 0.5e6), 0, 0);
    near(out(VALVE_HOLD_OFF, 0.6e6), 0, 0);
    near(out(VALVE_HOLD_OFF, 0.7e6), 0.13e6, 1e-6); /* 2.6 MPa over 2 MPa: 1.3 to 1 */
    near(out(VALVE_HOLD_OFF, 1.6e6), 1.3e6, 1e-6);  /* halfway */
    near(out(VALVE_HOLD_OFF, 2.5e6), 2.47e6, 1e-6);
    near(out(VALVE_HOLD_OFF, 2.6e6), 2.6e6, 1e-6);
    near(out(VALVE_HOLD_OFF, 2.7e6), 2.7e6, 0);
}

static void residual_valve_and_shuttle_let_the_pedal_through(void **state)
{
    (void)state;
    near(out(VALVE_RESIDUAL, 1e4), 1e4, 0);
    near(out(VALVE_SHUTTLE, 5e6), 5e6, 0);
}

static void no_valve_gives_more_than_it_gets_or_less_when_it_gets_more(void **state)
{
    (void)state;
    for (int type = VALVE_RESIDUAL; type <= VALVE_SHUTTLE; type++) {
        double before = 0;
        for (double p = 0; p < 12e6; p += 1e4) {
            double now = out((enum valve_type)type, p);
            assert_true(now >= before && now <= p);
            before = now;
        }
    }
}

static void a_valve_is_unknown_without_its_own_figures_only(void **state)
{
    (void)state;
    struct valve bare = {.knee = {NAN},
                         .slope = {NAN},
                         .limit = {NAN},
                         .opens = {NAN},
                         .equal_above = {NAN},
                         .holds = {NAN},
                         .trips = {NAN}};
    for (int type = VALVE_NOT_SAID; type <= VALVE_SHUTTLE; type++) {
        bare.type = (enum valve_type)type;
        double now = valve_output(&bare, (struct pressure){5e6}).pa;
        if (type == VALVE_RESIDUAL || type == VALVE_SHUTTLE)
            near(now, 5e6, 0);
        else
            near_unknown(now);
        near_unknown(valve_output(&bare, (struct pressure){-1}).pa);
        near_unknown(valve_output(&bare, (struct pressure){NAN}).pa);
    }
}

static void figures_of_0_are_figures(void **state)
{
    (void)state;
    struct valve v = valve(VALVE_LIMITING);
    v.limit.pa = 0;
    near(valve_output(&v, (struct pressure){5e6}).pa, 0, 0);
    v = valve(VALVE_PROPORTIONING);
    v.knee.pa = 0;
    near(valve_output(&v, (struct pressure){5e6}).pa, 2e6, 1e-6);
    v.slope.value = 0;
    near(valve_output(&v, (struct pressure){5e6}).pa, 0, 0);
    v = valve(VALVE_HOLD_OFF);
    v.opens.pa = 0;
    near(valve_output(&v, (struct pressure){1e6}).pa, 1e6, 1e-6);
}

static void senseless_figures_give_no_answer(void **state)
{
    (void)state;
    struct valve v = valve(VALVE_PROPORTIONING);
    v.slope.value = 1.1;
    near_unknown(valve_output(&v, (struct pressure){5e6}).pa);
    v.slope.value = -0.1;
    near_unknown(valve_output(&v, (struct pressure){5e6}).pa);
    v = valve(VALVE_HOLD_OFF);
    v.equal_above = v.opens;
    near_unknown(valve_output(&v, (struct pressure){5e6}).pa);
    v = valve(VALVE_LIMITING);
    v.limit.pa = -1;
    near_unknown(valve_output(&v, (struct pressure){5e6}).pa);
}

/* 18 bar with the driver alone, 45 bar with all that it may carry. */
static void the_knee_of_a_load_sensing_valve_follows_the_load(void **state)
{
    (void)state;
    struct valve v = valve(VALVE_LOAD_SENSING);
    v.knee_unladen.pa = 18e5;
    v.knee_laden.pa = 45e5;
    near(valve_knee(&v).pa, 2e6, 0); /* as it was read */
    v.knee.pa = NAN;
    const struct {
        double load, knee;
    } rows[] = {{0, 18e5}, {0.5, 31.5e5}, {1, 45e5}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        v.load.of_1 = rows[i].load;
        near(valve_knee(&v).pa, rows[i].knee, 1e-6);
        for (int side = -1; side <= 1; side++) {
            double in = rows[i].knee + side * 1e5;
            double wanted = side > 0 ? rows[i].knee + 0.4e5 : in;
            near(valve_output(&v, (struct pressure){in}).pa, wanted, 1e-6);
        }
    }
    v.load.of_1 = 1.1;
    near_unknown(valve_knee(&v).pa);
    v.load.of_1 = 0.5;
    v.knee_laden.pa = NAN;
    near_unknown(valve_knee(&v).pa);
    v.type = VALVE_PROPORTIONING;
    near_unknown(valve_knee(&v).pa);
}

static double falling(enum valve_type type, double peak, double in)
{
    struct valve v = valve(type);
    v.gap.pa = 2e5;
    return valve_output_falling(&v, (struct pressure){peak}, (struct pressure){in}).pa;
}

/* From 7 MPa, 4 MPa out: held for the gap of 0.2 MPa, then 0.4 of what the inlet falls, at 0.2 MPa
 * behind, down to where in and out meet: 2 + 0.4 (p + 0.2 - 2) = p at 2.1333 MPa. */
/* The page's size of what is left out: as the rear rises the knee falls. 28 bar at rest, 23 bar
 * with the load of a hard stop, slope 0.4, 66 bar before it: (1 - 0.4) 5 = 3 bar less behind, 7 %
 * of 43.2. */
static void a_knee_that_falls_by_5_bar_takes_3_bar_from_the_rear(void **state)
{
    (void)state;
    struct valve valve = {.type = VALVE_LOAD_SENSING, .knee = {28e5}, .slope = {0.4}};
    double standing = valve_output(&valve, (struct pressure){66e5}).pa;
    valve.knee.pa = 23e5;
    near(standing, 43.2e5, 1e-6);
    near(standing - valve_output(&valve, (struct pressure){66e5}).pa, 3e5, 1e-6);
}

static void a_falling_valve_follows_late_by_its_gap(void **state)
{
    (void)state;
    near(falling(VALVE_PROPORTIONING, 7e6, 7e6), 4e6, 1e-6);
    near(falling(VALVE_PROPORTIONING, 7e6, 6.9e6), 4e6, 1e-6);
    near(falling(VALVE_PROPORTIONING, 7e6, 6.8e6), 4e6, 1e-6);
    near(falling(VALVE_PROPORTIONING, 7e6, 6.7e6), 3.96e6, 1e-6);
    near(falling(VALVE_PROPORTIONING, 7e6, 2.2e6), 2.16e6, 1e-6);
    near(falling(VALVE_PROPORTIONING, 7e6, 2.1e6), 2.1e6, 1e-6);
    near(falling(VALVE_PROPORTIONING, 7e6, 0), 0, 0);
    near(falling(VALVE_LOAD_SENSING, 7e6, 6.7e6), 3.96e6, 1e-6);
    near(falling(VALVE_LIMITING, 7e6, 3.1e6), 3e6, 1e-6);
    near(falling(VALVE_LIMITING, 7e6, 3e6), 3e6, 1e-6);
    near(falling(VALVE_LIMITING, 7e6, 2.9e6), 2.9e6, 1e-6);
    near(falling(VALVE_SHUTTLE, 7e6, 1e6), 1e6, 0);
}

/* Its plate lifts off its seat when the line is 0.6 bar above the master: two in a row keep 1.2. */
static void a_residual_valve_keeps_what_it_holds(void **state)
{
    (void)state;
    near(falling(VALVE_RESIDUAL, 7e6, 1e5), 1.6e5, 1e-9);
    near(falling(VALVE_RESIDUAL, 7e6, 6e4), 1.2e5, 1e-9);
    near(falling(VALVE_RESIDUAL, 7e6, 6.97e6), 7e6, 0);
    near(falling(VALVE_RESIDUAL, 7e6, 0), 6e4, 0);
    near(falling(VALVE_RESIDUAL, 3e4, 0), 3e4, 0); /* no more than there was */
}

/* From 1.6 MPa, 1.3 MPa out: it keeps that until the inlet is down to it. */
static void a_hold_off_valve_lets_the_fluid_back(void **state)
{
    (void)state;
    near(falling(VALVE_HOLD_OFF, 1.6e6, 1.5e6), 1.3e6, 1e-6);
    near(falling(VALVE_HOLD_OFF, 1.6e6, 1.2e6), 1.2e6, 1e-6);
    near(falling(VALVE_HOLD_OFF, 7e6, 0.1e6), 0.1e6, 1e-6);
}

static void without_a_gap_a_valve_falls_as_it_rose(void **state)
{
    (void)state;
    struct valve v = valve(VALVE_PROPORTIONING);
    v.gap.pa = 0;
    for (double p = 0; p < 7e6; p += 0.3e6) {
        struct pressure in = {p};
        near(valve_output_falling(&v, (struct pressure){7e6}, in).pa, valve_output(&v, in).pa,
             1e-9);
    }
}

static void falling_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    near_unknown(falling(VALVE_PROPORTIONING, 1e6, 2e6)); /* the peak was greater */
    near_unknown(falling(VALVE_PROPORTIONING, NAN, 1e6));
    near_unknown(falling(VALVE_PROPORTIONING, 1e6, -1));
    near_unknown(falling(VALVE_NOT_SAID, 2e6, 1e6));
    struct valve v = valve(VALVE_RESIDUAL);
    v.holds.pa = NAN;
    near_unknown(valve_output_falling(&v, (struct pressure){1e6}, (struct pressure){0}).pa);
    v = valve(VALVE_LIMITING);
    v.gap.pa = NAN;
    near_unknown(valve_output_falling(&v, (struct pressure){1e6}, (struct pressure){0}).pa);
    v = valve(VALVE_HOLD_OFF);
    v.opens.pa = NAN;
    near_unknown(valve_output_falling(&v, (struct pressure){1e6}, (struct pressure){0}).pa);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_limiting_valve_stops_at_its_limit),
        cmocka_unit_test(a_proportioning_valve_bends_at_its_knee),
        cmocka_unit_test(a_hold_off_valve_waits_and_then_catches_up),
        cmocka_unit_test(residual_valve_and_shuttle_let_the_pedal_through),
        cmocka_unit_test(no_valve_gives_more_than_it_gets_or_less_when_it_gets_more),
        cmocka_unit_test(a_valve_is_unknown_without_its_own_figures_only),
        cmocka_unit_test(figures_of_0_are_figures),
        cmocka_unit_test(senseless_figures_give_no_answer),
        cmocka_unit_test(the_knee_of_a_load_sensing_valve_follows_the_load),
        cmocka_unit_test(a_knee_that_falls_by_5_bar_takes_3_bar_from_the_rear),
        cmocka_unit_test(a_falling_valve_follows_late_by_its_gap),
        cmocka_unit_test(a_residual_valve_keeps_what_it_holds),
        cmocka_unit_test(a_hold_off_valve_lets_the_fluid_back),
        cmocka_unit_test(without_a_gap_a_valve_falls_as_it_rose),
        cmocka_unit_test(falling_is_unknown_outside_its_ranges),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
