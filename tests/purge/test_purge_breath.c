#include "purge/purge_breath.h"

#include <math.h>

#include "support/near.h"

#define ATMOSPHERE 101325.0

static const struct resistance none = {0, 0};

static void without_air_all_comes_out(void **state)
{
    (void)state;
    struct breath_node node = {.resistance = 1e9};
    const struct breath breath =
        purge_breathe(&node, 1, (struct resistance){1e9, 1e15}, 8e-6, 1, 4);
    assert_true(breath.converged);
    near(breath.out, 8e-6, 1e-15);
}

static void without_resistance_air_takes_up_nothing(void **state)
{
    (void)state;
    struct breath_node node = {.resistance = 1e9, .air = 50e-6};
    near(purge_breathe(&node, 1, none, 8e-6, 1, 4).out, 8e-6, 1e-15);
}

/* A long slow stroke settles: the flow makes its pressure and the air shrinks by Boyle to it. */
static void a_slow_stroke_ends_where_boyle_says(void **state)
{
    (void)state;
    struct breath_node node = {.air = 5e-6};
    const double resistance = 2e10, stroke = 200e-6, time = 40, flow = stroke / time;
    const struct breath breath =
        purge_breathe(&node, 1, (struct resistance){resistance, 0}, stroke, time, 64);
    const double p = resistance * flow;
    near_rel(breath.pressure, p, 1e-6);
    near_rel(breath.taken_up, 5e-6 * p / (p + ATMOSPHERE), 1e-6);
    near(breath.taken_up + breath.out, stroke, 1e-18);
}

/* With a shut nipple (as good as) the air takes the whole stroke: p = a V/(V0 - V). */
static void a_shut_nipple_leaves_only_the_air(void **state)
{
    (void)state;
    struct breath_node node = {.air = 20e-6};
    const struct breath breath = purge_breathe(&node, 1, (struct resistance){1e20, 0}, 8e-6, 1, 4);
    near_rel(breath.pressure, ATMOSPHERE * 8 / (20 - 8), 1e-4);
    near_rel(breath.taken_up, 8e-6, 1e-6);
}

static void more_air_never_lets_more_out(void **state)
{
    (void)state;
    double before = 1;
    for (double air = 0; air < 100e-6; air += 2e-6) {
        struct breath_node nodes[2] = {{.resistance = 5e9, .air = 3e-6},
                                       {.resistance = 9e9, .air = air}};
        const struct breath breath =
            purge_breathe(nodes, 2, (struct resistance){4e9, 4e14}, 8e-6, 1, 4);
        assert_true(breath.converged && breath.out <= before && breath.out > 0);
        near(breath.taken_up, nodes[0].taken_up + nodes[1].taken_up, 1e-18);
        before = breath.out;
    }
}

static void more_steps_come_to_the_same(void **state)
{
    (void)state;
    double out[3];
    const int steps[3] = {4, 16, 256};
    for (int i = 0; i < 3; i++) {
        struct breath_node nodes[2] = {{.resistance = 5e9, .air = 3e-6},
                                       {.resistance = 9e9, .air = 30e-6}};
        out[i] = purge_breathe(nodes, 2, (struct resistance){4e9, 4e14}, 8e-6, 1, steps[i]).out;
    }
    near_rel(out[0], out[2], 5e-3);
    near_rel(out[1], out[2], 5e-4);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(without_air_all_comes_out),
        cmocka_unit_test(without_resistance_air_takes_up_nothing),
        cmocka_unit_test(a_slow_stroke_ends_where_boyle_says),
        cmocka_unit_test(a_shut_nipple_leaves_only_the_air),
        cmocka_unit_test(more_air_never_lets_more_out),
        cmocka_unit_test(more_steps_come_to_the_same),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
