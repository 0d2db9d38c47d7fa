/* Gravity bleeding, constructed: half a metre of head through 3.34 mm pipe and a nipple's passage
 * of 1.5 mm and 8 mm that costs two velocity heads. Worked out elsewhere, rounded there to the
 * digits shown. */
#include "parts/flow.h"

#include "support/near.h"

static double millilitres_a_minute(double viscosity, double length)
{
    const double density = 1050;
    const struct passage nipple = {.bore = 1.5e-3, .length = 8e-3, .loss = 2};
    struct resistance way = flow_passage(density, viscosity, &nipple);
    way.linear += flow_pipe(density, viscosity, length, 3.34e-3);
    return flow_driven(way, flow_head(density, 0.5)) * 60e6;
}

static void gravity_gives_a_few_millilitres_a_minute(void **state)
{
    (void)state;
    const struct {
        double viscosity, far, near;
    } rows[] = {{60e-6, 3.2, 8.8}, {35e-6, 5.5, 15}, {15e-6, 12.7, 35}, {8e-6, 23.7, 62}};
    for (int i = 0; i < 4; i++) {
        near(millilitres_a_minute(rows[i].viscosity, 4.5), rows[i].far, 0.05);
        near(millilitres_a_minute(rows[i].viscosity, 1.5), rows[i].near,
             rows[i].near < 10 ? 0.05 : 0.5);
    }
}

/* Of 15 mm2/s: one pipe volume of 39 mL in 3.1 minutes, one of 13 mL in 23 s. */
static void a_pipe_is_emptied_in_seconds_or_minutes(void **state)
{
    (void)state;
    near(4.5 * 8.76 / millilitres_a_minute(15e-6, 4.5), 3.1, 0.05);
    near(1.5 * 8.76 / millilitres_a_minute(15e-6, 1.5) * 60, 23, 0.5);
}

/* A kit of 1 bar through 4.5 m gives 3.9 mL/s. */
static void a_kit_of_1_bar_gives_3_9_millilitres_a_second(void **state)
{
    (void)state;
    const struct passage nipple = passage_usual();
    struct resistance way = flow_passage(1050, 15e-6, &nipple);
    way.linear += flow_pipe(1050, 15e-6, 4.5, 3.34e-3);
    near(flow_driven(way, 1e5) * 1e6, 3.9, 0.05);
}

/* Ten mL/s in 4.5 m cost 2.3 bar at 20 degC. */
static void a_pedal_stroke_costs_2_3_bar(void **state)
{
    (void)state;
    near(flow_pipe(1050, 15e-6, 4.5, 3.34e-3) * 10e-6 / 1e5, 2.3, 0.05);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(gravity_gives_a_few_millilitres_a_minute),
        cmocka_unit_test(a_pipe_is_emptied_in_seconds_or_minutes),
        cmocka_unit_test(a_kit_of_1_bar_gives_3_9_millilitres_a_second),
        cmocka_unit_test(a_pedal_stroke_costs_2_3_bar),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
