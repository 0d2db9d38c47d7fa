#include "parts/hose.h"

#include <math.h>

#include "support/near.h"

#define PSI 6894.757293168361

static struct hose hose(void)
{
    return (struct hose){.length = {0.3048}, .inside = {0.003175}, .expansion = {NAN}};
}

static double swelling(struct hose h, double p)
{
    return hose_swelling(&h, (struct pressure){p}).m3;
}

static double swelling_as(struct hose h, enum hose_state as)
{
    return hose_swelling_as(&h, as, (struct pressure){7e6}).m3;
}

/* One foot of 1/8 in hose at 1000 psi: 0.45 of 0.66 cm3, or all of it. */
static void a_worn_hose_swells_to_the_ceiling_and_a_good_one_to_less_than_half(void **state)
{
    (void)state;
    struct hose h = hose();
    near_rel(swelling(h, 1000 * PSI), 0.297e-6, 1e-9);
    h.state = HOSE_GOOD;
    near_rel(swelling(h, 1000 * PSI), 0.297e-6, 1e-9);
    h.state = HOSE_WORN;
    near_rel(swelling(h, 1000 * PSI), 0.66e-6, 1e-9);
    h.length.m = 0.6096;
    near_rel(swelling(h, 1000 * PSI), 1.32e-6, 1e-9);
}

static void a_measured_hose_follows_its_own_value_good_or_worn(void **state)
{
    (void)state;
    struct hose h = hose();
    h.expansion.m3_m = 1e-6;
    near_rel(swelling(h, 1000 * PSI), 0.3048e-6, 1e-9);
    near_rel(swelling(h, 1500 * PSI), 0.3048e-6 * 0.79 / 0.66, 1e-9);
    h.state = HOSE_WORN;
    near_rel(swelling(h, 1000 * PSI), 0.3048e-6, 1e-9);
}

static void swelling_rises_with_pressure_and_has_no_steps(void **state)
{
    (void)state;
    const double bores[] = {0.002, 0.003175, 0.0034, 0.0047625, 0.0051, 0.008};
    for (size_t i = 0; i < sizeof bores / sizeof bores[0]; i++) {
        struct hose h = hose();
        h.inside.m = bores[i];
        double before = 0;
        near(swelling(h, 0), 0, 0);
        for (double p = 1e4; p < 30e6; p += 1e4) {
            double now = swelling(h, p);
            assert_true(now > before);
            /* a power of less than one never rises faster than in proportion */
            assert_true(before == 0 || now <= before * p / (p - 1e4) * (1 + 1e-12));
            before = now;
        }
    }
}

/* At 250 psi, a quarter of the first point, a quarter of 0.66; ten times less pressure, ten times
 * less. The power of the first two points, n = ln(0.79/0.66)/ln(1.5), would make it 0.66 * 0.25^n =
 * 0.357 and rise endlessly steeply at 0. */
static void below_the_first_point_it_swells_in_proportion(void **state)
{
    (void)state;
    struct hose h = hose();
    h.state = HOSE_WORN;
    near_rel(swelling(h, 250 * PSI), 0.165e-6, 1e-9);
    near_rel(swelling(h, 25 * PSI), 0.0165e-6, 1e-9);
}

/* One maker's new hose: 0.136, 0.150 and 0.290 cm3 a foot at 1000, 1500, 2900 psi (quoted by
 * another text), that is 0.21, 0.19 and 0.24 of 0.66, 0.79 and 1.21. */
static void a_new_hose_swells_as_a_measured_one(void **state)
{
    (void)state;
    struct hose h = hose();
    h.state = HOSE_NEW;
    near_rel(swelling(h, 1000 * PSI), 0.22 * 0.66e-6, 1e-9);
    near(swelling(h, 1000 * PSI), 0.136e-6, 0.01e-6);
    near(swelling(h, 1500 * PSI), 0.150e-6, 0.03e-6);
    near(swelling(h, 2900 * PSI), 0.290e-6, 0.03e-6);
    near(swelling_as(h, HOSE_GOOD), swelling(h, 7e6), 0); /* no worse for being looked at as good */
}

static void each_band_of_bores_has_its_own_ceiling(void **state)
{
    (void)state;
    const struct {
        double bore, cc_per_foot;
    } rows[] = {{0.002, 0.66},     {0.003175, 0.66}, {0.0032, 0.66}, {0.0034, 0.86},
                {0.0047625, 0.86}, {0.005, 0.86},    {0.0052, 1.04}, {0.00635, 1.04}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        near_rel(hose_ceiling((struct length){rows[i].bore}, (struct pressure){1000 * PSI}).m3_m,
                 rows[i].cc_per_foot * 1e-6 / 0.3048, 1e-9);
}

static void the_volume_inside_is_that_of_the_bore(void **state)
{
    (void)state;
    struct hose h = hose();
    h.length.m = 2;
    h.inside.m = 0.004;
    near(hose_volume(&h).m3, 25.1327412287183e-6, 1e-18);
    h.length.m = 0;
    near(hose_volume(&h).m3, 0, 0);
    near(swelling(h, 7e6), 0, 0);
}

static void a_hose_is_unknown_without_its_figures(void **state)
{
    (void)state;
    for (int i = 0; i < 5; i++) {
        struct hose h = hose();
        double p = 7e6;
        *(double *[]){&h.length.m, &h.inside.m, &p, &h.length.m, &h.inside.m}[i] =
            i < 3 ? NAN : (i == 3 ? -1 : 0);
        near_unknown(swelling(h, p));
        if (i != 2)
            near_unknown(hose_volume(&h).m3);
    }
    near_unknown(swelling(hose(), -1));
    struct hose h = hose();
    h.expansion.m3_m = -1e-6;
    near_unknown(swelling(h, 7e6));
}

static void a_hose_may_be_looked_at_as_if_good_or_worn(void **state)
{
    (void)state;
    struct hose good = hose(), worn = hose();
    good.state = HOSE_GOOD;
    worn.state = HOSE_WORN;
    near(swelling_as(good, HOSE_STATE_NOT_SAID), swelling(good, 7e6), 0);
    near(swelling_as(worn, HOSE_STATE_NOT_SAID), swelling(worn, 7e6), 0);
    near(swelling_as(good, HOSE_WORN), swelling(worn, 7e6), 0);
    near(swelling_as(worn, HOSE_GOOD), swelling(good, 7e6), 0);
    assert_true(swelling(worn, 7e6) > 2 * swelling(good, 7e6));
}

/* The ceiling is 0.66 cm3/ft = 2.165 mL/m at the pressure of the test. */
static void a_measured_hose_is_never_made_better_by_wear_nor_worse_by_care(void **state)
{
    (void)state;
    struct hose stiff = hose(), soft = hose();
    stiff.expansion.m3_m = 0.3e-6;
    soft.expansion.m3_m = 3e-6;
    near(swelling_as(stiff, HOSE_GOOD), swelling(stiff, 7e6), 0);
    assert_true(swelling_as(stiff, HOSE_WORN) > swelling(stiff, 7e6));
    near(swelling_as(soft, HOSE_WORN), swelling(soft, 7e6), 0);
    assert_true(swelling_as(soft, HOSE_GOOD) < swelling(soft, 7e6));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_worn_hose_swells_to_the_ceiling_and_a_good_one_to_less_than_half),
        cmocka_unit_test(a_measured_hose_follows_its_own_value_good_or_worn),
        cmocka_unit_test(swelling_rises_with_pressure_and_has_no_steps),
        cmocka_unit_test(below_the_first_point_it_swells_in_proportion),
        cmocka_unit_test(a_new_hose_swells_as_a_measured_one),
        cmocka_unit_test(each_band_of_bores_has_its_own_ceiling),
        cmocka_unit_test(the_volume_inside_is_that_of_the_bore),
        cmocka_unit_test(a_hose_may_be_looked_at_as_if_good_or_worn),
        cmocka_unit_test(a_measured_hose_is_never_made_better_by_wear_nor_worse_by_care),
        cmocka_unit_test(a_hose_is_unknown_without_its_figures),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
