#include "parts/flow.h"

#include <math.h>

#include "support/near.h"

static void flow_and_cost_undo_each_other(void **state)
{
    (void)state;
    const struct resistance ways[] = {{1e9, 0}, {0, 1e15}, {3e10, 6e15}};
    for (int i = 0; i < 3; i++) {
        for (double push = 1; push < 1e7; push *= 10)
            near_rel(flow_cost(ways[i], flow_driven(ways[i], push)), push, 1e-12);
    }
}

static void a_push_of_nothing_or_less_drives_nothing(void **state)
{
    (void)state;
    const struct resistance way = {1e9, 1e15};
    assert_true(flow_driven(way, 0) == 0);
    assert_true(flow_driven(way, -5) == 0);
    near_unknown(flow_driven(way, NAN));
    near_unknown(flow_driven((struct resistance){NAN, 0}, 1));
}

static void twice_the_length_or_half_the_bore_resist_as_they_should(void **state)
{
    (void)state;
    const double once = flow_pipe(1050, 15e-6, 1, 3.34e-3);
    near_rel(flow_pipe(1050, 15e-6, 2, 3.34e-3), 2 * once, 1e-12);
    near_rel(flow_pipe(1050, 15e-6, 1, 1.67e-3), 16 * once, 1e-12);
    near(flow_pipe(1050, 0, 1, 3.34e-3), 0, 0);
    near_unknown(flow_pipe(1050, 15e-6, 1, 0));
    near_unknown(flow_pipe(NAN, 15e-6, 1, 1e-3));
}

static void a_nipple_takes_a_small_part_of_a_long_line_s_head(void **state)
{
    (void)state;
    const struct passage nipple = passage_usual();
    const struct resistance passage = flow_passage(1050, 15e-6, &nipple);
    /* 4 to 5 % on 4.5 m and 12 to 18 % on 1.5 m, worked out elsewhere for 8 to 60 mm2/s */
    const double lengths[] = {4.5, 1.5}, least[] = {0.035, 0.115}, most[] = {0.055, 0.185};
    for (int i = 0; i < 2; i++) {
        struct resistance way = passage;
        way.linear += flow_pipe(1050, 15e-6, lengths[i], 3.34e-3);
        const double share =
            flow_cost(passage, flow_driven(way, flow_head(1050, 0.5))) / flow_head(1050, 0.5);
        assert_true(share > least[i] && share < most[i]);
    }
}

static void what_is_not_known_gives_nothing(void **state)
{
    (void)state;
    near_unknown(flow_reynolds(NAN, 1e-3, 1e-6));
    near_unknown(flow_head(NAN, 1));
    near_unknown(flow_old_left(-1));
    near_unknown(flow_old_in_outflow(NAN));
    near_unknown(flow_viscosity(10, 4, (struct temperature){NAN}).m2_s);
    near_unknown(flow_viscosity(10, 4, (struct temperature){-300}).m2_s);
    near_unknown(flow_cost((struct resistance){1, 1}, -1));
    const struct passage none = {.bore = NAN, .length = 8e-3, .loss = 2};
    near_unknown(flow_passage(1050, 15e-6, &none).linear);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(flow_and_cost_undo_each_other),
        cmocka_unit_test(a_push_of_nothing_or_less_drives_nothing),
        cmocka_unit_test(twice_the_length_or_half_the_bore_resist_as_they_should),
        cmocka_unit_test(a_nipple_takes_a_small_part_of_a_long_line_s_head),
        cmocka_unit_test(what_is_not_known_gives_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
