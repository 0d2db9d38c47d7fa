/* Shoe factors against the GNU Scientific Library: the pressure on the lining is integrated
 * numerically (gsl_integration_qag) and the balance of the shoe solved with what comes out
 * (gsl_root_fsolver_brent for the direction in which a sliding shoe presses).
 *
 * Tolerance 1e-10 of the factor: both sides are exact but for rounding. */
#include "parts/shoe.h"

#include <math.h>
#include <stdio.h>

#include "cross/library.h"
#include "support/near.h"
#include "support/outside.h"

#define DEGREES (3.14159265358979323846 / 180)

static const struct outside pinned = {
    "L1", "GNU Scientific Library, gsl_integration_qag: pressure on a shoe on a fixed pin",
    "library"};
static const struct outside sliding = {"L2",
                                       "GNU Scientific Library, gsl_integration_qag and "
                                       "gsl_root_fsolver_brent: pressure on a shoe that "
                                       "slides on its abutment",
                                       "library"};

/* One unit of width and of greatest pressure throughout. */
struct shoe {
    double friction, radius, pin, half_arc, tilt;
};

/* Fixed pin: moments about the pin of pressure and of friction, and the torque. Angles from the
 * line between drum centre and pin. */
static double pressing(double angle, void *with)
{
    const struct shoe *shoe = with;
    return sin(angle) * shoe->radius * shoe->pin * sin(angle);
}

static double rubbing(double angle, void *with)
{
    const struct shoe *shoe = with;
    return shoe->friction * sin(angle) * shoe->radius * (shoe->radius - shoe->pin * cos(angle));
}

static double turning(double angle, void *with)
{
    const struct shoe *shoe = with;
    return shoe->friction * sin(angle) * shoe->radius * shoe->radius;
}

static double pinned_factor(struct shoe *shoe, double arm, double start, double end, bool leading)
{
    double force = library_integral(pressing, shoe, start, end);
    double helped = library_integral(rubbing, shoe, start, end);
    force = (leading ? force - helped : force + helped) / arm;
    return library_integral(turning, shoe, start, end) / (force * shoe->radius);
}

static void a_pinned_shoe_balances_its_integrated_pressure(void **state)
{
    (void)state;
    const double rows[][6] = {/* friction, radius, pin, arm, start and end in degrees */
                              {0.32, 0.150, 0.1227, 0.212, 0, 126},
                              {0.30, 0.250, 0.200, 0.200, 15, 75},
                              {0.25, 0.1015, 0.0812, 0.1624, 35, 145},
                              {0.45, 0.127, 0.100, 0.190, 20, 130},
                              {0.10, 0.090, 0.070, 0.140, 30, 90}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct shoe shoe = {.friction = rows[i][0], .radius = rows[i][1], .pin = rows[i][2]};
        double arm = rows[i][3], start = rows[i][4] * DEGREES, end = rows[i][5] * DEGREES;
        for (int leading = 0; leading < 2; leading++) {
            char what[120];
            snprintf(what, sizeof what, "%s, friction %g, %g to %g deg, pin %g r",
                     leading ? "leading" : "trailing", shoe.friction, rows[i][4], rows[i][5],
                     shoe.pin / shoe.radius);
            double theirs = pinned_factor(&shoe, arm, start, end, leading);
            outside_again(
                &pinned, what, "-", theirs,
                shoe_factor_pin(shoe.friction, shoe.radius, shoe.pin, arm, start, end, leading),
                1e-10 * theirs);
        }
    }
}

/* Sliding shoe: pressure cos(angle - tilt) about the shoe's middle, none where it would be below 0.
 * Its sums along the shoe's middle, across it, and all along. */
static double pressure(double angle, const struct shoe *shoe)
{
    double p = cos(angle - shoe->tilt);
    return fmax(p, 0);
}

static double along(double angle, void *with)
{
    return pressure(angle, with) * cos(angle);
}

static double across(double angle, void *with)
{
    return pressure(angle, with) * sin(angle);
}

static double all(double angle, void *with)
{
    return pressure(angle, with);
}

static double touching_sum(library_function of, struct shoe *shoe)
{
    double from = -shoe->half_arc, to = shoe->half_arc;
    /* only where it touches, so that the integrand is smooth */
    from = fmax(from, shoe->tilt - 90 * DEGREES);
    to = fmin(to, shoe->tilt + 90 * DEGREES);
    return library_integral(of, shoe, from, to);
}

/* No force across the shoe is left, for the abutment gives none. Friction counts minus for a
 * trailing shoe. */
static double left_across(double tilt, void *with)
{
    struct shoe shoe = *(struct shoe *)with;
    shoe.tilt = tilt;
    return touching_sum(across, &shoe) + shoe.friction * touching_sum(along, &shoe);
}

/* Forces along the middle, and moments about the drum's centre with the force at tip and the
 * abutment's force at abutment. */
static double sliding_factor(double friction, double radius, double tip, double abutment,
                             double half_arc, bool leading)
{
    struct shoe shoe = {
        .friction = leading ? friction : -friction, .radius = radius, .half_arc = half_arc};
    shoe.tilt = library_root(left_across, &shoe, -89 * DEGREES, 89 * DEGREES);
    double push = touching_sum(along, &shoe) - shoe.friction * touching_sum(across, &shoe);
    double torque = shoe.friction * radius * touching_sum(all, &shoe); /* along the turning */
    double force = (push - torque / abutment) / (1 + tip / abutment);
    return fabs(torque) / (force * radius);
}

static void a_sliding_shoe_balances_its_integrated_pressure(void **state)
{
    (void)state;
    const double rows[][4] = {/* friction, tip, abutment over radius, half arc in degrees */
                              {0.25, 0.8, 0.8, 55}, {0.30, 0.8, 0.8, 55},  {0.35, 0.75, 0.82, 50},
                              {0.38, 0.8, 0.8, 55}, {0.20, 0.7, 0.85, 60}, {0.40, 0.8, 0.8, 55},
                              {0.45, 0.8, 0.8, 45}};
    const double radius = 0.1015;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double tip = rows[i][1] * radius, abutment = rows[i][2] * radius;
        double half_arc = rows[i][3] * DEGREES;
        for (int leading = 0; leading < 2; leading++) {
            char what[120];
            snprintf(what, sizeof what, "%s, friction %g, half arc %g deg, tip %g r",
                     leading ? "leading" : "trailing", rows[i][0], rows[i][3], rows[i][1]);
            double theirs = sliding_factor(rows[i][0], radius, tip, abutment, half_arc, leading);
            double ours = shoe_factor_sliding(rows[i][0], radius, tip, abutment, half_arc,
                                              (struct shoe_abutment){0, 0}, leading);
            outside_again(&sliding, what, "-", theirs, ours, 1e-10 * theirs);
        }
    }
}

/* The greatest pressure of a sliding shoe's lining over its torque, mu b r^2 integral of p dx. */
static void a_sliding_lining_bears_its_integrated_torque(void **state)
{
    (void)state;
    const double rows[][4] = {{0.25, 0.8, 0.8, 55}, {0.38, 0.8, 0.8, 55}, {0.45, 0.75, 0.82, 45}};
    const double radius = 0.1015, width = 0.038;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        for (int leading = 0; leading < 2; leading++) {
            double friction = rows[i][0], half_arc = rows[i][3] * DEGREES, most = 0;
            struct shoe shoe = {
                .friction = leading ? friction : -friction, .radius = radius, .half_arc = half_arc};
            shoe.tilt = library_root(left_across, &shoe, -89 * DEGREES, 89 * DEGREES);
            for (int k = 0; k <= 10000; k++)
                most = fmax(most, pressure(half_arc * (k / 5000.0 - 1), &shoe));
            double theirs = most / (friction * width * radius * radius * touching_sum(all, &shoe));
            char what[80];
            snprintf(what, sizeof what, "peak pressure over torque, %s, friction %g",
                     leading ? "leading" : "trailing", friction);
            outside_again(&sliding, what, "1/m3", theirs,
                          shoe_peak_sliding(friction, radius, width, rows[i][1] * radius,
                                            rows[i][2] * radius, half_arc,
                                            (struct shoe_abutment){0, 0}, leading),
                          1e-6 * theirs);
        }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_sliding_lining_bears_its_integrated_torque),
        cmocka_unit_test(a_pinned_shoe_balances_its_integrated_pressure),
        cmocka_unit_test(a_sliding_shoe_balances_its_integrated_pressure),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
