/* F. Viana, R. Pardo, R. Yanez, J. L. Trallero and D. D. Joseph, Universal correlation for the rise
 * velocity of long gas bubbles in round pipes, J. Fluid Mech. 494 (2003) 379-398. The abstract with
 * the two end forms was read; the constants of the blend are from memory. */
#include "parts/bubble.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside paper = {"A2", "Viana and others, J. Fluid Mech. 494 (2003) 379-398",
                                     "abstract read, blend from memory"};

/* More than 200: Fr = 0.34/(1 + 3805/Eo^3.06)^0.58. */
static void fast_bubbles_follow_the_printed_end_form(void **state)
{
    (void)state;
    for (double eo = 6; eo < 200; eo *= 1.5)
        near_rel(bubble_froude(eo, 1e6), 0.34 / pow(1 + 3805 / pow(eo, 3.06), 0.58), 2e-3);
}

/* Below 10: Fr = 9.494e-3 R^1.026/(1 + 6197/Eo^2.561)^0.5793. The blend is a fit to both, so it
 * comes near to this one only where it is far from its middle. */
static void slow_bubbles_follow_the_printed_end_form(void **state)
{
    (void)state;
    for (double eo = 20; eo < 200; eo *= 1.5)
        near_rel(bubble_froude(eo, 2),
                 9.494e-3 * pow(2, 1.026) / pow(1 + 6197 / pow(eo, 2.561), 0.5793), 0.12);
}

/* A quarter-inch pipe with glycol fluid at 20 degC; recomputed elsewhere, with the constants from
 * memory: Eo 7.58, R 72, Fr 0.0559. Likewise 5/16 in and 3/8 in. */
static void a_slug_in_quarter_inch_pipe_rises_at_12_mm_a_second(void **state)
{
    (void)state;
    outside_again(&paper, "Froude number, Eo 7.58, R 72", "-", 0.0559, bubble_froude(7.58, 72),
                  0.0002);
    outside_again(&paper, "Froude number, Eo 13.2, R 109", "-", 0.181, bubble_froude(13.2, 109),
                  0.001);
    outside_again(&paper, "Froude number, Eo 20.5, R 152", "-", 0.260, bubble_froude(20.5, 152),
                  0.001);
    const struct bubble_fluid glycol = {1050, 0.0158 / 1050, 0.033};
    outside_again(&paper, "Eotvos number of 1/4 in pipe", "-", 7.58,
                  bubble_eotvos(&glycol, 4.928e-3), 0.005);
    outside_again(&paper, "rise in 1/4 in pipe", "m/s", 12.3e-3, bubble_rise(&glycol, 4.928e-3),
                  0.1e-3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(fast_bubbles_follow_the_printed_end_form),
        cmocka_unit_test(slow_bubbles_follow_the_printed_end_form),
        cmocka_unit_test(a_slug_in_quarter_inch_pipe_rises_at_12_mm_a_second),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
