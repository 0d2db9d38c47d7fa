/* F. P. Bretherton, The motion of long bubbles in tubes, J. Fluid Mech. 10 (1961) 166-188. The
 * abstract was read. Recomputed twice elsewhere. */
#include "parts/bubble.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define G 9.80665

static const struct bubble_fluid glycol = {1050, 0.0158 / 1050, 0.030};

static const struct outside paper = {"A1", "F. P. Bretherton, J. Fluid Mech. 10 (1961) 166-188",
                                     "abstract read"};
static const struct outside quoted = {
    "A1", "E. Lamstaes and J. Eggers, J. Stat. Phys. 167 (2017) 656", "abstract read"};

/* "No rise for rho g r^2/sigma below 0.842." */
static void below_bond_number_0_842_nothing_rises(void **state)
{
    (void)state;
    double radius = sqrt(0.841 * glycol.tension / (glycol.density * G));
    near(bubble_bond(&glycol, 2 * radius), 0.841, 1e-12);
    assert_true(bubble_rise(&glycol, 2 * radius) == 0);
    radius = sqrt(0.843 * glycol.tension / (glycol.density * G));
    assert_true(bubble_rise(&glycol, 2 * radius) > 0);
}

/* E. Lamstaes and J. Eggers, J. Stat. Phys. 167 (2017) 656, abstract read: the critical radius is
 * 0.918 capillary lengths. */
static void the_critical_radius_is_0_918_capillary_lengths(void **state)
{
    (void)state;
    double capillary_length = sqrt(glycol.tension / (glycol.density * G));
    outside_printed(&quoted, "critical radius over capillary length", "-", 0.918,
                    bubble_critical_bore(&glycol) / 2 / capillary_length, 0.0005);
}

/* The excess equals 1.25 Ca^(2/9) + 2.24 Ca^(1/3): put back into it. */
static void the_root_of_the_threshold_law_satisfies_it(void **state)
{
    (void)state;
    for (double bond = 0.8421; bond <= 1.04; bond += 0.01) {
        double ca = bubble_capillary_near_threshold(bond);
        near(1.25 * pow(ca, 2.0 / 9) + 2.24 * pow(ca, 1.0 / 3), bond - 0.842, 1e-12);
    }
}

static void a_slug_in_the_commonest_pipe_creeps(void **state)
{
    (void)state;
    struct bubble_fluid stiffer = glycol;
    stiffer.tension = 0.033;
    outside_again(&paper, "rise in 3.34 mm, 0.030 N/m", "m/s", 7.786e-6,
                  bubble_rise(&glycol, 3.34e-3), 2e-3 * (7.786e-6));
    outside_again(&paper, "rise in 3.34 mm, 0.033 N/m", "m/s", 3.08e-8,
                  bubble_rise(&stiffer, 3.34e-3), 2e-2 * (3.08e-8));
}

/* Forced flow: W = 1.29 (3 Ca)^(2/3) runs ahead, pressure 3.58 (3 Ca)^(2/3) sigma/r, for Ca below
 * 0.005; W is twice the film over the radius. */
static void a_thin_film_is_bretherton_s(void **state)
{
    (void)state;
    const double ca = 1e-6;
    outside_printed(&paper, "film over radius, Ca 1e-6", "-", 1.29 / 2 * pow(3 * ca, 2.0 / 3),
                    bubble_film(ca), 2e-3 * (1.29 / 2 * pow(3 * ca, 2.0 / 3)));
    outside_printed(&paper, "runs ahead by, Ca 1e-6", "-", 1.29 * pow(3 * ca, 2.0 / 3),
                    bubble_carried(ca) - 1, 2e-3 * (1.29 * pow(3 * ca, 2.0 / 3)));
    outside_printed(&paper, "pressure of the slug, Ca 1e-6", "Pa",
                    3.58 * pow(3 * ca, 2.0 / 3) * 0.030 / 1.67e-3,
                    bubble_drag(&glycol, 3.34e-3, ca),
                    1e-12 * (3.58 * pow(3 * ca, 2.0 / 3) * 0.030 / 1.67e-3));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(below_bond_number_0_842_nothing_rises),
        cmocka_unit_test(the_critical_radius_is_0_918_capillary_lengths),
        cmocka_unit_test(the_root_of_the_threshold_law_satisfies_it),
        cmocka_unit_test(a_slug_in_the_commonest_pipe_creeps),
        cmocka_unit_test(a_thin_film_is_bretherton_s),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
