/* Whole cars, from description to JSON, against the GNU Scientific Library (gsl_root_fsolver_brent)
 * on equations written out here: the pressure at which a pedal stands on its floor, and the effort
 * at which each axle uses all its grip, with a proportioning valve on the way. The laws are those
 * of docs/physics.md, put down again.
 *
 * Tolerance 1e-8: the program looks for its floor to a thousandth of a millionth of the effort. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "cli/variant.h"
#include "cross/library.h"
#include "support/near.h"
#include "support/outside.h"

#define PI         3.14159265358979323846
#define GRAVITY    9.80665
#define ATMOSPHERE 101325.0
#define PSI        6894.757293168361

static const struct outside floor_source = {
    "L7", "GNU Scientific Library, gsl_root_fsolver_brent: pedal on its floor, a whole car",
    "library"};
static const struct outside lock_source = {
    "L8", "GNU Scientific Library, gsl_root_fsolver_brent: ideal brake curve, a whole car",
    "library"};

/* One circuit to two discs at the front; nothing left to be assumed that counts. */
static const char floor_car[] =
    "[vehicle]\ntitle = Example\nmass = 900 kg\n"
    "[fluid]\ngrade = DOT 4\ntemperature = 20 degC\nair = 2 mL\n"
    "[pedal]\nworks = master\nratio = 5\nefficiency = 0.9\nfree play = 4 mm\nstiffness = 150 N/mm\n"
    "effort = 900 N\ntravel = 80 mm\n"
    "[master]\ntype = single\nbore = 20 mm\nefficiency = 0.95\ncut off = 1 mm\nrod gap = 0.5 mm\n"
    "chamber = 5 mL\nprimary spring = 0 N\n"
    "[front disc]\ncaliper = sliding\nbore = 54 mm\neffective radius = 110 mm\nthreshold = 0.5 "
    "bar\n"
    "roll back = 0.2 mm\npad squash = 0.15 mm\nbody opening = 0.2 mm\nchamber = 40 mL\n"
    "[block]\nchamber = 0.5 mL\n"
    "[all pipes]\nsize = 4.75 mm\nwall = 0.7 mm\n"
    "[all hoses]\ninside = 1/8 in\nstate = worn\n"
    "[runs]\nfeed = master, 1.5 m pipe, block\nleft = block, 0.4 m hose, front left disc\n"
    "right = block, 0.4 m hose, front right disc\n";

static double hose_ceiling_by_points(double p)
{
    const double x1 = 1000 * PSI, x2 = 1500 * PSI, x3 = 2900 * PSI;
    const double y1 = 0.66e-6 / 0.3048, y2 = 0.79e-6 / 0.3048, y3 = 1.21e-6 / 0.3048;
    if (p <= x1)
        return y1 * p / x1;
    if (p <= x2)
        return y1 * pow(p / x1, log(y2 / y1) / log(x2 / x1));
    return y2 * pow(p / x2, log(y3 / y2) / log(x3 / x2));
}

static double floor_volume(double p)
{
    double piston = PI / 4 * 0.054 * 0.054, bore = PI / 4 * pow(0.0254 / 8, 2);
    double clearance = 2 * piston * 0.2e-3;
    double pads = 2 * 2 * piston * 0.15e-3 * p / 10e6, body = 2 * piston * 0.2e-3 * p / 10e6;
    double a = 4.75e-3 / 2 - 0.7e-3, b = 4.75e-3 / 2, e = 207e9, nu = 0.29;
    double pipe = PI * a * a * 1.5;
    double hoop = ((1 + nu) * b * b + (1 - 2 * nu) * a * a) / (e * (b * b - a * a));
    double axial = (1 - 2 * nu) * a * a / (e * (b * b - a * a));
    double fluid = pipe + 0.8 * bore + 80e-6 + 0.5e-6 + 5e-6; /* the master's own too */
    return clearance + pads + body + 0.8 * hose_ceiling_by_points(p) +
           pipe * (2 * hoop + axial) * p + fluid * (1 - pow(1 + 10 * p / 1.95e9, -0.1)) +
           2e-6 * (1 - ATMOSPHERE / (ATMOSPHERE + p));
}

static double effort_for(double p)
{
    return p * (PI / 4 * 0.02 * 0.02) / (0.95 * 5 * 0.9);
}

static double beyond_the_floor(double p, void *with)
{
    (void)with;
    double stroke = 1e-3 + floor_volume(p) / (PI / 4 * 0.02 * 0.02);
    return 4e-3 + 5 * stroke + effort_for(p) / 150e3 - 80e-3;
}

static void a_pedal_on_its_floor_stops_at_the_root(void **state)
{
    (void)state;
    json_t *answer = ask_text(floor_car, FP_CHECK);
    assert_non_null(answer);
    double p = library_root(beyond_the_floor, NULL, 1e5, 20e6);
    outside_again(&floor_source, "line pressure on the floor", "Pa", p,
                  asked_figure(answer, "line-pressure", NULL), 1e-8 * p);
    outside_again(&floor_source, "effort on the floor", "N", effort_for(p),
                  asked_figure(answer, "pedal-effort", NULL), 1e-8 * effort_for(p));
    outside_again(&floor_source, "volume taken", "m3", floor_volume(p),
                  asked_figure(answer, "volume-taken", NULL), 1e-8 * floor_volume(p));
    json_decref(answer);
}

/* Discs all round and a proportioning valve to the rear ones. */
static const char lock_car[] =
    "[vehicle]\ntitle = Example\nmass = 1100 kg\nweight on front = 55 %\nwheelbase = 2.5 m\n"
    "height of mass centre = 0.55 m\nfront tyre radius = 0.29 m\nrear tyre radius = 0.3 m\n"
    "grip = 0.85\n"
    "[fluid]\ngrade = DOT 4\n"
    "[pedal]\nworks = master\nratio = 5\nefficiency = 0.9\n"
    "[master]\ntype = single\nbore = 20 mm\nefficiency = 0.95\n"
    "[front disc]\ncaliper = sliding\nbore = 54 mm\neffective radius = 110 mm\nthreshold = 0.5 "
    "bar\n"
    "friction = 0.38\nefficiency = 0.96\n"
    "[rear disc]\ncaliper = fixed\nbore = 2 of 38 mm\neffective radius = 115 mm\n"
    "threshold = 0.4 bar\nfriction = 0.36\nefficiency = 0.97\n"
    "[rear valve]\ntype = proportioning\nknee = 25 bar\nslope = 0.4\n"
    "[runs]\nfeed = master, 1 m pipe, block\nleft = block, 0.4 m hose, front left disc\n"
    "right = block, 0.4 m hose, front right disc\nback = block, 2 m pipe, rear valve, 0.5 m pipe, "
    "rear tee\nrear left = rear tee, 0.3 m hose, rear left disc\n"
    "rear right = rear tee, 0.3 m hose, rear right disc\n";

static double front_force(double p)
{
    double clamp = 0.96 * fmax(p - 0.5e5, 0) * (PI / 4 * 0.054 * 0.054);
    return 2 * 2 * 0.38 * clamp * 0.110 / 0.29;
}

static double rear_force(double p)
{
    double behind = p <= 25e5 ? p : 25e5 + 0.4 * (p - 25e5);
    double clamp = 0.97 * fmax(behind - 0.4e5, 0) * (PI / 4 * 0.038 * 0.038);
    return 2 * 2 * 0.36 * clamp * 0.115 / 0.3;
}

/* Turning parts of 5 % slow with the car, a quarter of them at each wheel. */
static double rate(double p)
{
    return (front_force(p) + rear_force(p)) / (1.05 * 1100 * GRAVITY);
}

static double front_use(double p)
{
    double load = 1100 * GRAVITY * (0.55 + 0.55 / 2.5 * rate(p));
    return (front_force(p) - 0.025 * 1100 * GRAVITY * rate(p)) / load;
}

static double rear_use(double p)
{
    double load = 1100 * GRAVITY * (0.45 - 0.55 / 2.5 * rate(p));
    return (rear_force(p) - 0.025 * 1100 * GRAVITY * rate(p)) / load;
}

static double front_over_grip(double p, void *with)
{
    return (front_use(p) - *(const double *)with) * (0.55 + 0.55 / 2.5 * rate(p));
}

static double rear_over_grip(double p, void *with)
{
    return (rear_use(p) - *(const double *)with) * (0.45 - 0.55 / 2.5 * rate(p));
}

/* On the road of grip 0.85 the front wheels lock first; on the wet one of 0.4, below the valve's
 * knee, too: the other curve crosses later. */
static void the_first_axle_locks_where_its_curve_crosses(void **state)
{
    (void)state;
    static const struct {
        double grip;
        const char *at, *margin;
    } roads[] = {{0.85, "front-locks-at", "rear-lock-margin"},
                 {0.40, "front-locks-at-wet", "rear-lock-margin-wet"}};
    json_t *answer = ask_text(lock_car, FP_CHECK);
    assert_non_null(answer);
    for (size_t i = 0; i < sizeof roads / sizeof *roads; i++) {
        double grip = roads[i].grip;
        double front = library_root(front_over_grip, &grip, 1e5, 20e6);
        double rear = library_root(rear_over_grip, &grip, 1e5, 20e6);
        double p = fmin(front, rear);
        outside_again(&lock_source, roads[i].at, "m/s2", rate(p) * GRAVITY,
                      asked_figure(answer, roads[i].at, NULL), 1e-7 * GRAVITY);
        outside_again(&lock_source, roads[i].margin, "-", (front_use(p) - rear_use(p)) / grip,
                      asked_figure(answer, roads[i].margin, NULL), 1e-6);
    }
    json_decref(answer);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_pedal_on_its_floor_stops_at_the_root),
        cmocka_unit_test(the_first_axle_locks_where_its_curve_crosses),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
