/* Air, fluid and their viscosity against the GNU Scientific Library: what gives way under pressure
 * is put together from small steps of pressure (gsl_integration_qag for air, gsl_odeiv2 for fluid),
 * and the viscosity lines are fitted anew through their points (gsl_fit_linear).
 *
 * Tolerances: 1e-11 of the volume where the library integrates, 1e-10 where it steps, half of the
 * last digit of a constant in the table of fluids. */
#include "parts/fluid.h"

#include <math.h>
#include <stdio.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_fit.h>
#include <gsl/gsl_odeiv2.h>

#include "cross/library.h"
#include "support/near.h"
#include "support/outside.h"

#define ATMOSPHERE 101325.0

static const struct outside boyle = {
    "L3", "GNU Scientific Library, gsl_integration_qag: air squeezed step by step", "library"};
static const struct outside stiffening = {
    "L4", "GNU Scientific Library, gsl_odeiv2 (rk8pd): dV/dp = -V/(K0 + K' p)", "library"};
static const struct outside walther = {
    "L5", "GNU Scientific Library, gsl_fit_linear: log log viscosity over log temperature",
    "library"};

/* Compressibility of a gas at one temperature is 1/p, of what volume is left: V0 pa/p. */
static double air_per_pascal(double absolute, void *with)
{
    (void)with;
    return ATMOSPHERE / absolute / absolute;
}

/* Work that the air takes, from dV = -(V/p) dp, against pa V0 ln(p/pa). */
static double work_per_pascal(double absolute, void *with)
{
    return absolute * air_per_pascal(absolute, with);
}

static void air_gives_way_as_its_steps_add_up(void **state)
{
    (void)state;
    const double gauge[] = {1e4, 2e5, 1e6, 2.5e6, 7e6, 1.5e7};
    for (size_t i = 0; i < sizeof gauge / sizeof gauge[0]; i++) {
        char what[80];
        snprintf(what, sizeof what, "one mL of air at %g bar", gauge[i] / 1e5);
        double theirs = library_integral(air_per_pascal, NULL, ATMOSPHERE, ATMOSPHERE + gauge[i]);
        double ours = air_compression((struct volume){1e-6}, (struct pressure){gauge[i]}).m3 * 1e6;
        outside_again(&boyle, what, "mL", theirs, ours, 1e-11);
        /* the work by the end of the law, which knows the volume that is left */
        double work = library_integral(work_per_pascal, NULL, ATMOSPHERE, ATMOSPHERE + gauge[i]);
        outside_again(&boyle, "work taken, in pa V0", "-", work / ATMOSPHERE, -log1p(-ours), 1e-9);
    }
}

static int volume_falls(double p, const double volume[], double slope[], void *with)
{
    const double *modulus = with;
    slope[0] = -volume[0] / (modulus[0] + modulus[1] * p);
    return GSL_SUCCESS;
}

static void fluid_gives_way_as_its_steps_add_up(void **state)
{
    (void)state;
    const enum fluid_grade grades[] = {GRADE_DOT4, GRADE_DOT5, GRADE_MINERAL};
    const double celsius[] = {20, 60, 100}, bar[] = {1, 70, 150};
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) {
            const struct fluid_row *row = fluid_row(grades[i]);
            struct pressure k0 = fluid_modulus(grades[i], (struct temperature){celsius[j]});
            double with[2] = {k0.pa, row->modulus_slope}, p = 0, volume[1] = {1};
            gsl_odeiv2_system system = {volume_falls, NULL, 1, with};
            gsl_odeiv2_driver *driver =
                gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 1e4, 1e-15, 1e-14);
            assert_int_equal(gsl_odeiv2_driver_apply(driver, &p, bar[j] * 1e5, volume),
                             GSL_SUCCESS);
            gsl_odeiv2_driver_free(driver);
            char what[80];
            snprintf(what, sizeof what, "a litre of %s, %g degC, %g bar", row->word, celsius[j],
                     bar[j]);
            double ours =
                fluid_compression((struct volume){1}, k0, row->modulus_slope, (struct pressure){p})
                    .m3;
            outside_again(&stiffening, what, "mL", (1 - volume[0]) * 1e3, ours * 1e3,
                          1e-10 * ours * 1e3 + 1e-11);
        }
}

/* Usual viscosities at -40 and 100 degC, mm2/s, from memory: the points behind the table. */
static void viscosity_lines_go_through_their_points(void **state)
{
    (void)state;
    const struct {
        enum fluid_grade grade;
        double cold, hot;
    } points[] = {{GRADE_DOT4, 1300, 2.2}, {GRADE_DOT51, 700, 2.0}, {GRADE_DOT5, 350, 16}};
    for (size_t i = 0; i < sizeof points / sizeof points[0]; i++) {
        const struct fluid_row *row = fluid_row(points[i].grade);
        double x[2] = {log10(-40 + 273.15), log10(100 + 273.15)};
        double y[2] = {log10(log10(points[i].cold + 0.7)), log10(log10(points[i].hot + 0.7))};
        double a, b, covariance[3], squares;
        gsl_fit_linear(x, 1, y, 1, 2, &a, &b, &covariance[0], &covariance[1], &covariance[2],
                       &squares);
        char what[2][80];
        snprintf(what[0], sizeof what[0], "%s, A", row->word);
        snprintf(what[1], sizeof what[1], "%s, B", row->word);
        outside_again(&walther, what[0], "-", a, row->walther_a, 6e-5);
        outside_again(&walther, what[1], "-", -b, row->walther_b, 6e-5);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(air_gives_way_as_its_steps_add_up),
        cmocka_unit_test(fluid_gives_way_as_its_steps_add_up),
        cmocka_unit_test(viscosity_lines_go_through_their_points),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
