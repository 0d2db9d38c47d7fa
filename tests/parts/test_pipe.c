#include "parts/pipe.h"

#include <math.h>

#include "support/near.h"

static struct pipe pipe_of(double length, double size, double wall)
{
    return (struct pipe){.length = {length}, .size = {size}, .wall = {wall}};
}

static void the_inside_is_what_two_walls_leave(void **state)
{
    (void)state;
    struct pipe p = pipe_of(2, 0.006, 0.001);
    near(pipe_inside(&p).m, 0.004, 1e-15);
    near(pipe_volume(&p).m3, 2 * 12.5663706143592e-6, 1e-15);
    p.length.m = 0;
    near(pipe_volume(&p).m3, 0, 0);
}

static void a_pipe_without_a_hole_is_unknown(void **state)
{
    (void)state;
    const double bad[][3] = {{2, 0.006, 0.003},  {2, 0.006, 0},      {2, 0, 0.001},
                             {2, 0.006, -0.001}, {2, NAN, 0.001},    {2, 0.006, NAN},
                             {-1, 0.006, 0.001}, {NAN, 0.006, 0.001}};
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        struct pipe p = pipe_of(bad[i][0], bad[i][1], bad[i][2]);
        near_unknown(pipe_volume(&p).m3);
        near_unknown(pipe_swelling(&p, (struct pressure){7e6}).m3);
    }
    struct pipe p = pipe_of(2, 0.006, 0.003);
    near_unknown(pipe_inside(&p).m);
}

static void swelling_is_even_with_pressure_and_with_length(void **state)
{
    (void)state;
    struct pipe one = pipe_of(1, 0.0047625, 0.0007112), three = pipe_of(3, 0.0047625, 0.0007112);
    double at_7 = pipe_swelling(&one, (struct pressure){7e6}).m3;
    assert_true(at_7 > 0);
    near_rel(pipe_swelling(&one, (struct pressure){14e6}).m3, 2 * at_7, 1e-12);
    near_rel(pipe_swelling(&three, (struct pressure){7e6}).m3, 3 * at_7, 1e-12);
    near(pipe_swelling(&one, (struct pressure){0}).m3, 0, 0);
    near_unknown(pipe_swelling(&one, (struct pressure){-1}).m3);
    near_unknown(pipe_swelling(&one, (struct pressure){NAN}).m3);
}

static void copper_nickel_swells_more_than_steel_and_steel_is_meant_when_not_said(void **state)
{
    (void)state;
    struct pipe p = pipe_of(1, 0.0047625, 0.0007112);
    double not_said = pipe_swelling(&p, (struct pressure){7e6}).m3;
    p.material = PIPE_STEEL;
    near(pipe_swelling(&p, (struct pressure){7e6}).m3, not_said, 0);
    p.material = PIPE_COPPER_NICKEL;
    assert_true(pipe_swelling(&p, (struct pressure){7e6}).m3 > 1.4 * not_said);
}

static double hoop(double inner, double outer, double modulus, double poisson, double p)
{
    return pipe_hoop_strain((struct length){inner}, (struct length){outer},
                            (struct pressure){modulus}, poisson, (struct pressure){p});
}

/* Thin ring: stress p r/t, half of that along it. r 100, t 0.1: 0.1 % thick. */
static void a_thin_pipe_strains_as_the_boiler_formula_says(void **state)
{
    (void)state;
    double stress = 1e5 * 100 / 0.1;
    near_rel(hoop(0.100, 0.1001, 2e11, 0.3, 1e5), stress * (1 - 0.3 / 2) / 2e11, 2e-3);
    near_rel(pipe_axial_strain((struct length){0.1}, (struct length){0.1001},
                               (struct pressure){2e11}, 0.3, (struct pressure){1e5}),
             stress * (0.5 - 0.3) / 2e11, 2e-3);
}

static void strain_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    near_unknown(hoop(0, 1, 1, 0.3, 1));
    near_unknown(hoop(1, 1, 1, 0.3, 1));
    near_unknown(hoop(1, 2, 0, 0.3, 1));
    near_unknown(hoop(1, 2, 1, 0.51, 1));
    near_unknown(hoop(1, 2, 1, -0.1, 1));
    near_unknown(hoop(1, 2, 1, 0.3, -1));
    near_unknown(hoop(1, NAN, 1, 0.3, 1));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_inside_is_what_two_walls_leave),
        cmocka_unit_test(a_pipe_without_a_hole_is_unknown),
        cmocka_unit_test(swelling_is_even_with_pressure_and_with_length),
        cmocka_unit_test(copper_nickel_swells_more_than_steel_and_steel_is_meant_when_not_said),
        cmocka_unit_test(a_thin_pipe_strains_as_the_boiler_formula_says),
        cmocka_unit_test(strain_is_unknown_outside_its_ranges),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
