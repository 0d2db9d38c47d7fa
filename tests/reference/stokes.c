/* G. G. Stokes's law for a small sphere, from memory; values recomputed elsewhere. A skin that
 * moves (J. Hadamard, W. Rybczynski 1911) makes a bubble half as fast again. */
#include "parts/bubble.h"

#include "support/near.h"
#include "support/outside.h"

static const struct outside law = {"A4", "G. G. Stokes's law for a small sphere", "from memory"};

static void a_bubble_of_a_tenth_of_a_millimetre_rises_0_36_mm_a_second(void **state)
{
    (void)state;
    const struct bubble_fluid glycol = {1050, 0.0158 / 1050, 0.033};
    outside_again(&law, "rise of 0.1 mm, stiff skin", "mm/s", 0.36206,
                  bubble_rise_small(&glycol, 0.1e-3) * 1e3, 5e-6);
    outside_again(&law, "rise of 0.1 mm, skin that moves", "mm/s", 0.54309,
                  bubble_rise_small_mobile(&glycol, 0.1e-3) * 1e3, 5e-6);
}

/* Time to climb 50 mm, from a table worked out elsewhere: rounded there. */
static void small_bubbles_take_minutes_to_climb_a_chamber(void **state)
{
    (void)state;
    const struct bubble_fluid glycol = {1050, 0.0158 / 1050, 0.033};
    near(0.050 / bubble_rise_small(&glycol, 0.02e-3) / 60, 57, 1);
    near(0.050 / bubble_rise_small(&glycol, 0.05e-3) / 60, 9.2, 0.3);
    near(0.050 / bubble_rise_small(&glycol, 0.2e-3), 35, 0.6);
    near(0.050 / bubble_rise_small(&glycol, 0.5e-3), 5.5, 0.05);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_bubble_of_a_tenth_of_a_millimetre_rises_0_36_mm_a_second),
        cmocka_unit_test(small_bubbles_take_minutes_to_climb_a_chamber),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
