#include "parts/bubble.h"

#include <math.h>

#include "support/near.h"

static const struct bubble_fluid glycol = {1050, 15e-6, 0.033};
static const struct bubble_fluid silicone = {955, 50e-6, 0.0205};
static const struct bubble_fluid mineral = {845, 30e-6, 0.030};

/* Greatest bores that hold a slug, mm, worked out elsewhere by hand from sqrt(sigma/(rho g)). */
static void each_fluid_has_its_critical_bore(void **state)
{
    (void)state;
    const struct bubble_fluid low = {1050, 15e-6, 0.030}, high = {1050, 15e-6, 0.035};
    near(bubble_critical_bore(&glycol) * 1e3, 3.28, 0.006);
    near(bubble_critical_bore(&low) * 1e3, 3.13, 0.005);
    near(bubble_critical_bore(&high) * 1e3, 3.38, 0.005);
    near(bubble_critical_bore(&silicone) * 1e3, 2.72, 0.03);
    near(bubble_critical_bore(&mineral) * 1e3, 3.48, 0.015);
}

/* Speeds in usual passages with glycol fluid, worked out elsewhere by Bretherton and Viana. */
static void usual_pipes_hold_or_let_rise(void **state)
{
    (void)state;
    assert_true(bubble_rise(&glycol, 2.0e-3) == 0);
    assert_true(bubble_rise(&glycol, 3.18e-3) == 0);
    near(bubble_rise(&glycol, 3.34e-3) * 1e3, 3e-5, 1e-5);
    near(bubble_rise(&glycol, 4.6e-3) * 1e3, 8, 0.5);
    near(bubble_rise(&glycol, 6.51e-3) * 1e3, 46, 0.6);
    near(bubble_rise(&glycol, 8.10e-3) * 1e3, 73, 0.6);
    assert_true(bubble_rise(&silicone, 3.34e-3) < 1.5e-3);
}

static void a_wider_pipe_never_slows_a_slug(void **state)
{
    (void)state;
    const struct bubble_fluid *fluids[] = {&glycol, &silicone, &mineral};
    for (int i = 0; i < 3; i++) {
        double before = 0;
        for (double bore = 1e-3; bore < 20e-3; bore += 0.01e-3) {
            const double rise = bubble_rise(fluids[i], bore);
            assert_true(rise >= before);
            before = rise;
        }
    }
}

/* Between the two laws nothing jumps: a hundredth of a millimetre changes it by less than a tenth.
 */
static void the_laws_are_joined_without_a_step(void **state)
{
    (void)state;
    const double capillary = sqrt(glycol.tension / (glycol.density * 9.80665));
    const double ends[] = {2 * sqrt(1.04) * capillary, sqrt(6) * capillary};
    for (int i = 0; i < 2; i++)
        near_rel(bubble_rise(&glycol, ends[i] * (1 + 1e-9)),
                 bubble_rise(&glycol, ends[i] * (1 - 1e-9)), 1e-5);
}

/* Share of the film and speed over the mean, worked out elsewhere and rounded there. */
static void a_slug_runs_ahead_by_its_film(void **state)
{
    (void)state;
    const struct {
        double speed, share, carried;
    } rows[] = {{0.001, 0.016, 1.02}, {0.01, 0.068, 1.07}, {0.03, 0.13, 1.15},
                {0.1, 0.23, 1.30},    {0.3, 0.35, 1.53},   {1, 0.47, 1.9}};
    for (int i = 0; i < 6; i++) {
        const double capillary = 0.0158 * rows[i].speed / 0.033;
        near(bubble_film_share(capillary), rows[i].share, 0.005);
        near(bubble_carried(capillary), rows[i].carried, 0.03);
    }
    /* G. I. Taylor's limit for very fast flow, 0.56 to 0.60, from memory */
    assert_true(bubble_film_share(1e6) > 0.55 && bubble_film_share(1e6) < 0.65);
    near(bubble_film_share(0), 0, 0);
    near_unknown(bubble_film_share(-1));
}

/* A bore of 54 mm, 20 mm deep: volumes of the segment worked out elsewhere. */
static void a_nipple_below_the_top_leaves_a_segment(void **state)
{
    (void)state;
    const double whole = 3.14159265358979323846 / 4 * 0.054 * 0.054 * 0.020 * 1e6;
    const double rows[][2] = {{0.010, 5.840},  {0.020, 15.428}, {0.027, 22.902},
                              {0.044, 39.964}, {0.054, 45.804}, {0, 0}};
    for (int i = 0; i < 6; i++)
        near(bubble_trapped_share(0.054, rows[i][0]) * whole, rows[i][1], 0.0005);
    near_unknown(bubble_trapped_share(0.054, 0.055));
    near_unknown(bubble_trapped_share(0, 0));
}

static void what_is_not_known_gives_nothing(void **state)
{
    (void)state;
    const struct bubble_fluid none = {NAN, 15e-6, 0.033};
    near_unknown(bubble_rise(&none, 3e-3));
    near_unknown(bubble_rise(&glycol, NAN));
    near_unknown(bubble_rise(&glycol, -1));
    near_unknown(bubble_critical_bore(&none));
    near_unknown(bubble_rise_small(&none, 1e-3));
    near_unknown(bubble_froude(NAN, 1));
    near_unknown(bubble_capillary_near_threshold(NAN));
    near_unknown(bubble_drag(&glycol, 0, 1));
    near_unknown(bubble_rise_limit(0));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_fluid_has_its_critical_bore),
        cmocka_unit_test(usual_pipes_hold_or_let_rise),
        cmocka_unit_test(a_wider_pipe_never_slows_a_slug),
        cmocka_unit_test(the_laws_are_joined_without_a_step),
        cmocka_unit_test(a_slug_runs_ahead_by_its_film),
        cmocka_unit_test(a_nipple_below_the_top_leaves_a_segment),
        cmocka_unit_test(what_is_not_known_gives_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
