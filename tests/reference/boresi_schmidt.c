/* A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials, example 11.2, page 397: closed
 * thick cylinder. Read in the FOSSEE transcription. Radii 100 and 400 mm, E 72 GPa, Poisson's ratio
 * 0.33, 150 MPa. Printed: the inner wall moves out 0.30 mm; 10 MPa along and 170 MPa round it, from
 * which the strains follow by Hooke's law. */
#include "parts/pipe.h"

#include "support/near.h"

static const struct length inner = {0.100}, outer = {0.400};
static const struct pressure modulus = {72e9}, inside = {150e6};

static void the_inner_wall_moves_out_by_0_30_mm(void **state)
{
    (void)state;
    double moved = pipe_hoop_strain(inner, outer, modulus, 0.33, inside) * inner.m;
    near(moved * 1000, 0.30, 0.005);
    near(moved * 1000, 0.300278, 5e-7);
}

static void the_strains_are_those_of_the_printed_stresses(void **state)
{
    (void)state;
    double round = (170e6 - 0.33 * (10e6 - 150e6)) / 72e9;
    double along = (10e6 - 0.33 * (170e6 - 150e6)) / 72e9;
    near_rel(pipe_hoop_strain(inner, outer, modulus, 0.33, inside), round, 1e-9);
    near_rel(pipe_axial_strain(inner, outer, modulus, 0.33, inside), along, 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_inner_wall_moves_out_by_0_30_mm),
        cmocka_unit_test(the_strains_are_those_of_the_printed_stresses),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
