/* R. M. Davies and G. I. Taylor, Proc. R. Soc. A 200 (1950) 375-390; the abstract was read:
 * U = 0.46 sqrt(g a), a the radius. D. T. Dumitrescu 1943 has 0.351 sqrt(g D), from memory. */
#include "parts/bubble.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define G 9.80665

static const struct outside paper = {
    "A3", "R. M. Davies and G. I. Taylor, Proc. R. Soc. A 200 (1950) 375-390", "abstract read"};

static void the_limit_is_0_46_of_the_root_of_g_and_radius(void **state)
{
    (void)state;
    for (double bore = 2e-3; bore < 0.2; bore *= 2) {
        near_rel(bubble_rise_limit(bore), 0.46 * sqrt(G * bore / 2), 1e-12);
        outside_printed(&paper, "rise over root of g and bore", "-", 0.325,
                        bubble_rise_limit(bore) / sqrt(G * bore), 0.0005);
        near_rel(bubble_rise_limit(bore), 0.351 * sqrt(G * bore), 0.08);
    }
}

/* Water in wide pipes: neither viscosity nor tension counts there, and the correlation for all
 * bores comes within 8 % of the limit. */
static void in_wide_pipes_the_correlation_meets_the_limit(void **state)
{
    (void)state;
    const struct bubble_fluid water = {998, 1.0e-6, 0.072};
    for (double bore = 0.05; bore < 0.3; bore *= 1.3)
        near_rel(bubble_rise(&water, bore), bubble_rise_limit(bore), 0.08);
}

static void in_brake_pipes_a_slug_stays_below_the_limit(void **state)
{
    (void)state;
    const struct bubble_fluid glycol = {1050, 15e-6, 0.033};
    for (double bore = 1e-3; bore < 12e-3; bore += 0.5e-3)
        assert_true(bubble_rise(&glycol, bore) < bubble_rise_limit(bore));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_limit_is_0_46_of_the_root_of_g_and_radius),
        cmocka_unit_test(in_wide_pipes_the_correlation_meets_the_limit),
        cmocka_unit_test(in_brake_pipes_a_slug_stays_below_the_limit),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
