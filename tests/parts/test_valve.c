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
    near(out(VALVE_HOLD_OFF, 1.6e6), 1.3e6, 1e-6); /* halfway */
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
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
