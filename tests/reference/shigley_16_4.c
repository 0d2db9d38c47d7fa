/* R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, example 16-4: round
 * pads. From memory. Pad radius 0.5 in at 2 in from the axis, friction 0.31, 350 psi at most,
 * halved for the design; by the book's table for R/e 0.25 the friction acts at 0.963 of 2 in, and
 * the greatest pressure is 1.290 of the mean. Printed: 106.5 lbf and 63.6 lbf in a pad.
 *
 * A description gives the radius at which friction acts, so the table is left to who measures it.
 * The centre of the pad, which most would give, is 3.8 % wider; and pressure in proportion to
 * 1/radius, as an even wear makes it, puts the friction at 0.9921 of the centre (added up below):
 * the printed table could not be had from that. */
#include "parts/disc_brake.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define INCH 0.0254
#define LBF  4.4482216152605
#define PSI  (LBF / (INCH * INCH))

static const struct outside book = {
    "C3", "Budynas and Nisbett, Shigley's Mechanical Engineering Design, example 16-4",
    "from memory"};

/* The pad as if it were the piston: it presses with its own area. */
static struct disc round_pads(double acting)
{
    return (struct disc){.caliper = CALIPER_SLIDING,
                         .bores = {1, {1.0 * INCH}},
                         .inlets = 1,
                         .effective_radius = {acting},
                         .friction = {0.31},
                         .efficiency = {1},
                         .threshold = {0}};
}

static void a_round_pad_pulls_with_63_6_pound_inches(void **state)
{
    (void)state;
    struct disc disc = round_pads(0.963 * 2 * INCH);
    struct pressure p[2] = {{350.0 / 2 / 1.290 * PSI}, {NAN}};
    double force = disc_clamp(&disc, p).n / LBF;
    double torque = disc_torque(&disc, p).nm / 2 / (LBF * INCH); /* of two pads */
    outside_printed(&book, "force on a pad", "lbf", 106.5, force, 0.05);
    outside_again(&book, "force on a pad", "lbf", 106.546, force, 5e-4);
    outside_printed(&book, "torque of a pad", "lbf in", 63.6, torque, 0.05);
    outside_again(&book, "torque of a pad", "lbf in", 63.6145, torque, 5e-4);
}

/* Over the circle in rings about the axis: radius r from e - R to e + R, whose arc within the pad
 * spans the angle below. Friction acts at the mean of r, weighed by pressure k/r times the area. */
static void even_wear_acts_at_0_9921_of_the_centre(void **state)
{
    (void)state;
    const double e = 2, big = 0.5;
    double forces = 0, moments = 0;
    const int rings = 100000;
    for (int i = 0; i < rings; i++) {
        double r = e - big + (i + 0.5) * 2 * big / rings;
        double arc = 2 * acos((r * r + e * e - big * big) / (2 * r * e));
        forces += arc;
        moments += arc * r;
    }
    outside_again(&book, "where even wear acts, over the centre", "-", 0.9921, moments / forces / e,
                  5e-5);
    assert_true(fabs(0.963 / (moments / forces / e) - 1) < 0.03);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_round_pad_pulls_with_63_6_pound_inches),
        cmocka_unit_test(even_wear_acts_at_0_9921_of_the_centre),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
