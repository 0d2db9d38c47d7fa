/* A thick cylinder with its ends held, a benchmark of finite-element programs. Read. Radii 10 and
 * 20 mm, E 210 GPa, Poisson's ratio 0.3, 100 MPa. Printed: the inner wall moves out 9.08e-6 m; hoop
 * 166.7 MPa inside and 66.7 outside.
 *
 * A brake pipe has its ends closed, not held, and our law is for that. Held ends follow from it:
 * the pull of the closed ends is taken away, then E/(1 - nu^2) and nu/(1 - nu) stand for E and nu
 * (plane strain from plane stress, a usual rule). */
#include "parts/pipe.h"

#include "support/near.h"
#include "support/outside.h"

static const struct outside benchmark = {
    "E3", "Finite-element benchmark of a thick cylinder in plane strain", "read"};

static const struct length inner = {0.010}, outer = {0.020};
static const struct pressure inside = {100e6};

static void held_ends_follow_from_closed_ones(void **state)
{
    (void)state;
    struct pressure modulus = {210e9 / (1 - 0.3 * 0.3)};
    double poisson = 0.3 / (1 - 0.3);
    double pull = pipe_axial_strain(inner, outer, modulus, 0, inside); /* of the ends, over E */
    double strain = pipe_hoop_strain(inner, outer, modulus, poisson, inside) + poisson * pull;
    outside_printed(&benchmark, "the inner wall moves out", "m", 9.08e-6, strain * inner.m,
                    0.005e-6);
    outside_again(&benchmark, "the inner wall moves out", "m", 9.07937e-6, strain * inner.m, 5e-12);
}

static void the_stresses_round_are_the_same(void **state)
{
    (void)state;
    double hoop =
        pipe_hoop_strain(inner, outer, (struct pressure){1e9}, 0, inside) * 1e9 / 1e6; /* MPa */
    outside_printed(&benchmark, "hoop stress inside", "MPa", 166.7, hoop, 0.05);
    outside_again(&benchmark, "hoop stress inside", "MPa", 166.667, hoop, 5e-4);
    outside_printed(&benchmark, "hoop stress outside", "MPa", 66.7, hoop - 100, 0.05);
    outside_again(&benchmark, "hoop stress outside", "MPa", 66.667, hoop - 100, 5e-4);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(held_ends_follow_from_closed_ones),
        cmocka_unit_test(the_stresses_round_are_the_same),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
