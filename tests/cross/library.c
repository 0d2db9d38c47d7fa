#include "cross/library.h"

#include <math.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_roots.h>

#include "support/cmocka_all.h"

double library_integral(library_function of, void *with, double from, double to)
{
    gsl_function function = {.function = of, .params = with};
    gsl_integration_workspace *room = gsl_integration_workspace_alloc(1000);
    double result = 0, error = 1;
    /* An integral that is 0 cannot be had to a part of itself; the library says so, and its own
     * estimate of the error decides. */
    gsl_error_handler_t *before = gsl_set_error_handler_off();
    gsl_integration_qag(&function, from, to, 1e-15, 1e-12, 1000, GSL_INTEG_GAUSS31, room, &result,
                        &error);
    gsl_set_error_handler(before);
    gsl_integration_workspace_free(room);
    assert_true(error <= fmax(1e-12 * fabs(result), 1e-13));
    return result;
}

double library_root(library_function of, void *with, double below, double above)
{
    gsl_function function = {.function = of, .params = with};
    gsl_root_fsolver *solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    assert_int_equal(gsl_root_fsolver_set(solver, &function, below, above), GSL_SUCCESS);
    int status = GSL_CONTINUE;
    for (int i = 0; i < 200 && status == GSL_CONTINUE; i++) {
        gsl_root_fsolver_iterate(solver);
        status = gsl_root_test_interval(gsl_root_fsolver_x_lower(solver),
                                        gsl_root_fsolver_x_upper(solver), 1e-300, 1e-14);
    }
    double root = gsl_root_fsolver_root(solver);
    gsl_root_fsolver_free(solver);
    assert_int_equal(status, GSL_SUCCESS);
    return root;
}
