/* O. Levenspiel, Chemical Reaction Engineering, 3rd edition, pp. 343-344, the model of pure
 * convection; the page with the formula was read. Values recomputed elsewhere. */
#include "parts/flow.h"

#include "support/near.h"
#include "support/outside.h"

static const struct outside book = {
    "F5", "O. Levenspiel, Chemical Reaction Engineering, 3rd edition, pp. 343-344", "formula read"};

static void old_fluid_in_the_outflow_falls_with_the_square(void **state)
{
    (void)state;
    near(flow_old_in_outflow(0.3), 1, 1e-15);
    near(flow_old_in_outflow(0.5), 1, 1e-15);
    outside_again(&book, "old fluid in the outflow after 1 volumes", "%", 25,
                  flow_old_in_outflow(1) * 100, 1e-9);
    outside_again(&book, "old fluid in the outflow after 2 volumes", "%", 6.25,
                  flow_old_in_outflow(2) * 100, 1e-9);
    outside_again(&book, "old fluid in the outflow after 3 volumes", "%", 2.78,
                  flow_old_in_outflow(3) * 100, 0.005);
    outside_again(&book, "old fluid in the outflow after 5 volumes", "%", 1,
                  flow_old_in_outflow(5) * 100, 1e-9);
    outside_again(&book, "old fluid in the outflow after 10 volumes", "%", 0.25,
                  flow_old_in_outflow(10) * 100, 1e-9);
}

static void old_fluid_left_in_the_pipe_is_what_has_not_come_out(void **state)
{
    (void)state;
    near(flow_old_left(0) * 100, 100, 1e-9);
    outside_again(&book, "old fluid left after 1 volumes", "%", 25, flow_old_left(1) * 100, 1e-9);
    outside_again(&book, "old fluid left after 2 volumes", "%", 12.5, flow_old_left(2) * 100, 1e-9);
    outside_again(&book, "old fluid left after 3 volumes", "%", 8.33, flow_old_left(3) * 100,
                  0.005);
    outside_again(&book, "old fluid left after 5 volumes", "%", 5, flow_old_left(5) * 100, 1e-9);
    /* the sum of what came out, in small steps, and what is left make a whole */
    double out = 0;
    const int steps = 200000;
    for (int i = 0; i < steps; i++)
        out += flow_old_in_outflow((i + 0.5) * 4 / steps) * 4 / steps;
    near(out + flow_old_left(4), 1, 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(old_fluid_in_the_outflow_falls_with_the_square),
        cmocka_unit_test(old_fluid_left_in_the_pipe_is_what_has_not_come_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
