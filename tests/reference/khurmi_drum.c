/* R. S. Khurmi and J. K. Gupta, Theory of Machines, chapter on brakes and dynamometers, internal
 * expanding brake with shoes moved equally by a cam. From memory.
 *
 * Radius 150 mm, lining 35 mm wide, friction 0.4, pressure 0.4 sin(angle) N/mm2 on both shoes,
 * lining 25 to 125 deg, pin 100/cos 25 deg mm, arm 200 mm. Printed: 186.47 N m each; forces 686 and
 * 2323 N. */
#include "parts/shoe.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define DEGREES (3.14159265358979323846 / 180)

static const struct outside book = {
    "D5", "R. S. Khurmi and J. K. Gupta, Theory of Machines, internal expanding brake",
    "from memory"};

static void equal_pressure_needs_unequal_forces(void **state)
{
    (void)state;
    double start = 25 * DEGREES, end = 125 * DEGREES, pin = 0.100 / cos(25 * DEGREES);
    double torque = 0.4 * 0.4e6 * 0.035 * 0.150 * 0.150 * (cos(start) - cos(end));
    outside_printed(&book, "torque of each shoe", "N m", 186.47, torque, 0.005);
    double leading = shoe_factor_pin(0.4, 0.150, pin, 0.200, start, end, true);
    double trailing = shoe_factor_pin(0.4, 0.150, pin, 0.200, start, end, false);
    /* the book works with rounded moments: 686 for 686.834, so a whole unit here */
    outside_printed(&book, "force on the leading shoe (printed from rounded moments)", "N", 686,
                    torque / (leading * 0.150), 1);
    outside_again(&book, "force on the leading shoe", "N", 686.834, torque / (leading * 0.150),
                  5e-3);
    outside_printed(&book, "force on the trailing shoe", "N", 2323, torque / (trailing * 0.150),
                    0.5);
    outside_again(&book, "force on the trailing shoe", "N", 2323.299, torque / (trailing * 0.150),
                  5e-3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(equal_pressure_needs_unequal_forces)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
