/* Swelling of a pipe against the GNU Scientific Library: the wall's equation of balance,
 * u'' + u'/r - u/r^2 = 0 for the way u of a ring of radius r outwards, is stepped from the inner
 * wall to the outer one (gsl_odeiv2) from two starts, which are mixed so that the inner wall bears
 * the pressure and the outer one nothing. Stresses by Hooke's law with the pull of closed ends.
 *
 * Tolerance 1e-9 of the strain. */
#include "parts/pipe.h"

#include <stdio.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside wall = {
    "L6", "GNU Scientific Library, gsl_odeiv2 (rk8pd): balance of the rings of a pipe's wall",
    "library"};

struct pipe_case {
    double inner, outer, modulus, poisson, p;
};

static int ring_balance(double r, const double u[], double slope[], void *with)
{
    (void)with;
    slope[0] = u[1];
    slope[1] = u[0] / (r * r) - u[1] / r;
    return GSL_SUCCESS;
}

static void step_outwards(const struct pipe_case *pipe, double u[2])
{
    gsl_odeiv2_system system = {ring_balance, NULL, 2, NULL};
    gsl_odeiv2_driver *driver = gsl_odeiv2_driver_alloc_y_new(
        &system, gsl_odeiv2_step_rk8pd, (pipe->outer - pipe->inner) / 100, 1e-18, 1e-13);
    double r = pipe->inner;
    assert_int_equal(gsl_odeiv2_driver_apply(driver, &r, pipe->outer, u), GSL_SUCCESS);
    gsl_odeiv2_driver_free(driver);
}

/* Radial stress from u and u' at r, without what the pull along the pipe does (which is the same
 * everywhere in the wall). From Hooke's law solved for the stresses, plane strain part. */
static double radial(const struct pipe_case *pipe, double r, const double u[2], double along)
{
    double e = pipe->modulus, nu = pipe->poisson;
    double lame = e * nu / ((1 + nu) * (1 - 2 * nu)), shear = e / (2 * (1 + nu));
    return lame * (u[1] + u[0] / r + along) + 2 * shear * u[1];
}

static double hoop(const struct pipe_case *pipe, double r, const double u[2], double along)
{
    double e = pipe->modulus, nu = pipe->poisson;
    double lame = e * nu / ((1 + nu) * (1 - 2 * nu)), shear = e / (2 * (1 + nu));
    return lame * (u[1] + u[0] / r + along) + 2 * shear * u[0] / r;
}

/* Strains round and along at the inner wall. Unknown are the share of each start, and the strain
 * along: the stress along rises evenly with it, so two tries tell which one fits the pull. */
static void strains_of(const struct pipe_case *pipe, double *round, double *along)
{
    double a = pipe->inner, b = pipe->outer;
    double pull = pipe->p * a * a / (b * b - a * a), trial[2] = {0, pull / pipe->modulus};
    double missed[2], found[2];
    for (int i = 0; i < 2; i++) {
        double inner[2][2] = {{a, 0}, {0, 1}}, outer[2][2] = {{a, 0}, {0, 1}};
        step_outwards(pipe, outer[0]);
        step_outwards(pipe, outer[1]);
        const double none[2] = {0, 0};
        double at_a = radial(pipe, a, none, trial[i]), at_b = radial(pipe, b, none, trial[i]);
        /* shares s, t: radial is -p inside and 0 outside */
        double m[2][2] = {{radial(pipe, a, inner[0], 0), radial(pipe, a, inner[1], 0)},
                          {radial(pipe, b, outer[0], 0), radial(pipe, b, outer[1], 0)}};
        double right[2] = {-pipe->p - at_a, -at_b};
        double det = m[0][0] * m[1][1] - m[0][1] * m[1][0];
        double s = (right[0] * m[1][1] - m[0][1] * right[1]) / det;
        double t = (m[0][0] * right[1] - right[0] * m[1][0]) / det;
        double u[2] = {s * inner[0][0] + t * inner[1][0], s * inner[0][1] + t * inner[1][1]};
        double stress_along =
            pipe->modulus * trial[i] +
            pipe->poisson * (radial(pipe, a, u, trial[i]) + hoop(pipe, a, u, trial[i]));
        missed[i] = stress_along - pull;
        found[i] = u[0] / a;
    }
    double share = missed[0] / (missed[0] - missed[1]);
    *along = trial[0] + share * (trial[1] - trial[0]);
    *round = found[0] + share * (found[1] - found[0]);
}

static void the_rings_of_the_wall_balance(void **state)
{
    (void)state;
    const struct pipe_case rows[] = {
        {1.67005e-3, 2.38125e-3, 207e9, 0.29, 7e6},
        {1.675e-3, 2.375e-3, 135e9, 0.34, 10e6},
        {3.25755e-3, 3.96875e-3, 207e9, 0.29, 15e6},
        {0.100, 0.400, 72e9, 0.33, 150e6},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const struct pipe_case *pipe = &rows[i];
        double round, along;
        strains_of(pipe, &round, &along);
        struct length inner = {pipe->inner}, outer = {pipe->outer};
        struct pressure modulus = {pipe->modulus}, p = {pipe->p};
        char what[2][80];
        snprintf(what[0], sizeof what[0], "round, inside %g, outside %g mm", pipe->inner * 1e3,
                 pipe->outer * 1e3);
        snprintf(what[1], sizeof what[1], "along, inside %g, outside %g mm", pipe->inner * 1e3,
                 pipe->outer * 1e3);
        outside_again(&wall, what[0], "-", round,
                      pipe_hoop_strain(inner, outer, modulus, pipe->poisson, p), 1e-9 * round);
        outside_again(&wall, what[1], "-", along,
                      pipe_axial_strain(inner, outer, modulus, pipe->poisson, p), 1e-9 * along);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_rings_of_the_wall_balance)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
