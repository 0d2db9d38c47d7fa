/* A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials, examples 11.1 and 11.2, page
 * 397: thick cylinders. Read in the FOSSEE transcription. A wall without Poisson's ratio is
 * strained round and along by the stresses alone, so the laws of strain show the stresses too. */
#include "parts/pipe.h"

#include "support/near.h"
#include "support/outside.h"

#define BOOK "A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials, example "
static const struct outside first = {"E1", BOOK "11.1, p. 397", "transcription"};
static const struct outside second = {"E2", BOOK "11.2, p. 397", "transcription"};

static double hoop_stress(double inner, double outer, double p)
{
    return 1e9 * pipe_hoop_strain((struct length){inner}, (struct length){outer},
                                  (struct pressure){1e9}, 0, (struct pressure){p});
}

/* Example 11.1: radii 10 and 50 mm, 300 MPa. Printed, radial and hoop: -300 and 325 MPa at 10 mm,
 * -37.5 and 62.5 at 25 mm, 0 and 25 at 50 mm. The wall outside 25 mm is a pipe of its own that
 * bears 37.5 MPa. Radial and hoop have the same sum everywhere. */
static void stresses_fall_through_the_wall(void **state)
{
    (void)state;
    double inside = hoop_stress(0.010, 0.050, 300e6), middle = hoop_stress(0.025, 0.050, 37.5e6);
    outside_printed(&first, "hoop stress at 10 mm", "MPa", 325, inside / 1e6, 1e-9);
    outside_printed(&first, "hoop stress at 25 mm", "MPa", 62.5, middle / 1e6, 1e-9);
    outside_printed(&first, "hoop stress at 50 mm", "MPa", 25, (inside - 300e6) / 1e6, 1e-9);
    outside_printed(&first, "hoop stress at 50 mm, from 25 mm", "MPa", 25, (middle - 37.5e6) / 1e6,
                    1e-9);
}

/* Example 11.2: closed, radii 100 and 400 mm, E 72 GPa, Poisson's ratio 0.33, 150 MPa. Printed: the
 * inner wall moves out 0.30 mm; 10 MPa along and 170 MPa round it; shear 160 MPa. */
static const struct length inner = {0.100}, outer = {0.400};
static const struct pressure modulus = {72e9}, inside_pressure = {150e6};

static void the_inner_wall_moves_out_by_0_30_mm(void **state)
{
    (void)state;
    double moved = pipe_hoop_strain(inner, outer, modulus, 0.33, inside_pressure) * inner.m;
    outside_printed(&second, "the inner wall moves out", "mm", 0.30, moved * 1000, 0.005);
    outside_again(&second, "the inner wall moves out", "mm", 0.300278, moved * 1000, 5e-7);
}

static void the_strains_are_those_of_the_printed_stresses(void **state)
{
    (void)state;
    double round = (170e6 - 0.33 * (10e6 - 150e6)) / 72e9;
    double along = (10e6 - 0.33 * (170e6 - 150e6)) / 72e9;
    near_rel(pipe_hoop_strain(inner, outer, modulus, 0.33, inside_pressure), round, 1e-9);
    near_rel(pipe_axial_strain(inner, outer, modulus, 0.33, inside_pressure), along, 1e-9);
    double hoop = hoop_stress(0.100, 0.400, 150e6);
    double axial =
        1e9 * pipe_axial_strain(inner, outer, (struct pressure){1e9}, 0, inside_pressure);
    outside_printed(&second, "stress round", "MPa", 170, hoop / 1e6, 1e-9);
    outside_printed(&second, "stress along", "MPa", 10, axial / 1e6, 1e-9);
    outside_printed(&second, "greatest shear", "MPa", 160, (hoop + 150e6) / 2e6, 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(stresses_fall_through_the_wall),
        cmocka_unit_test(the_inner_wall_moves_out_by_0_30_mm),
        cmocka_unit_test(the_strains_are_those_of_the_printed_stresses),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
