/* A disc that warms up over ten hard stops, from a description to JSON, against the GNU Scientific
 * Library (gsl_odeiv2, rk8pd): each stop as a flow of heat that falls evenly to nothing, into iron
 * whose specific heat grows as it warms, and between stops cooling in proportion to the warmth. The
 * laws are those of docs/physics.md, put down again.
 *
 * Tolerance 1e-7 K. */
#include <math.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>

#include "cli/variant.h"
#include "support/near.h"
#include "support/outside.h"

static const struct outside warming = {
    "L9", "GNU Scientific Library, gsl_odeiv2 (rk8pd): ten hard stops, a whole car", "library"};

static const char car[] =
    "[vehicle]\ntitle = Example\nmass = 1000 kg\nfront tyre radius = 0.3 m\n"
    "rear tyre radius = 0.3 m\nhot stop from = 90 km/h\nhot stops apart = 45 s\n"
    "rotating share = 6 %\n[fluid]\ngrade = DOT 4\n[pedal]\nworks = master\nratio = 5\n"
    "[master]\ntype = single\nbore = 20 mm\n"
    "[front disc]\ncaliper = sliding\nbore = 54 mm\neffective radius = 110 mm\ndisc mass = 5 kg\n"
    "cooling time = 400 s\nheat to fluid = 30 %\n"
    "[rear disc]\ncaliper = sliding\nbore = 40 mm\neffective radius = 110 mm\ndisc mass = 4 kg\n"
    "[runs]\nfeed = master, 1 m pipe, block\nfront = block, 1 m pipe, front disc\n"
    "rear = block, 1 m pipe, rear disc\n";

struct iron {
    double heat, mass, stop, cooling; /* J, kg, s, s; cooling INFINITY: none */
};

static int warms(double t, const double kelvin[], double slope[], void *with)
{
    const struct iron *iron = with;
    double flow = t < iron->stop ? 2 * iron->heat / iron->stop * (1 - t / iron->stop) : 0;
    double specific = 420 + 130.0 / 280 * kelvin[0];
    slope[0] = flow / (iron->mass * specific) - kelvin[0] / iron->cooling;
    return GSL_SUCCESS;
}

/* Warmth over 20 degC after a time. */
static double warmth_after(struct iron iron, double kelvin, double time)
{
    gsl_odeiv2_system system = {warms, NULL, 1, &iron};
    gsl_odeiv2_driver *driver =
        gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 0.01, 1e-11, 1e-12);
    double t = 0, y[1] = {kelvin};
    assert_int_equal(gsl_odeiv2_driver_apply(driver, &t, time, y), GSL_SUCCESS);
    gsl_odeiv2_driver_free(driver);
    return y[0];
}

static void ten_stops_warm_a_disc_as_its_flow_of_heat_does(void **state)
{
    (void)state;
    /* pressures are the same: the front brakes take 54^2 of 54^2 + 40^2 of the heat, each half */
    double share = 54.0 * 54 / (54.0 * 54 + 40 * 40) / 2;
    double whole = 1000.0 / 2 * 25 * 25 * 1.06;
    const struct iron stopping = {0.95 * share * whole, 5, 4, INFINITY};
    const struct iron rolling = {0, 5, 0, 400};
    double kelvin = warmth_after(stopping, 0, 4);
    json_t *answer = ask_text(car, FP_CHECK);
    assert_non_null(answer);
    const char *disc = "front left disc";
    outside_again(&warming, "rise in one stop", "K", kelvin,
                  asked_figure(answer, "rise-per-stop", disc), 1e-7);
    for (int stop = 1; stop < 10; stop++)
        kelvin = warmth_after(stopping, warmth_after(rolling, kelvin, 45), 4);
    outside_again(&warming, "after ten stops", "degC", 20 + kelvin,
                  asked_figure(answer, "temperature-after-ten-stops", disc), 1e-7);
    outside_again(&warming, "fluid by then", "degC", 20 + 0.3 * kelvin,
                  asked_figure(answer, "fluid-after-ten-stops", disc), 1e-7);
    json_decref(answer);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ten_stops_warm_a_disc_as_its_flow_of_heat_does)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
