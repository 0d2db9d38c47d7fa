/* V. B. Bhandari, Design of Machine Elements, example 12.9: four-shoe brake. Read in the FOSSEE
 * transcription; the figure was not seen.
 *
 * Face 50 mm, 1 N/mm2, friction 0.3, radius 250 mm, lining 15 to 75 deg (so the peak is at its
 * end), pin 200 mm, arm 200 mm, two pairs of shoes.
 * Printed: 5025.4576 N; 2 181 614.28 N mm. */
#include "parts/shoe.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define DEGREES (3.14159265358979323846 / 180)

static const struct outside book = {"D3",
                                    "V. B. Bhandari, Design of Machine Elements, example 12.9",
                                    "transcription, figure not seen"};

static double factor(bool leading)
{
    return shoe_factor_pin(0.3, 0.250, 0.200, 0.200, 15 * DEGREES, 75 * DEGREES, leading);
}

static void four_shoes_pull_with_the_printed_torque(void **state)
{
    (void)state;
    double leading_torque = 0.3 * 1e6 * 0.050 * 0.250 * 0.250 *
                            (cos(15 * DEGREES) - cos(75 * DEGREES)) / sin(75 * DEGREES);
    outside_again(&book, "torque of a leading shoe", "N m", 686.298, leading_torque, 5e-4);
    double force = leading_torque / (factor(true) * 0.250);
    outside_printed(&book, "force on each shoe", "N", 5025.4576, force, 5e-5);
    outside_printed(&book, "torque of four shoes", "N m", 2181.61428,
                    2 * (factor(true) + factor(false)) * force * 0.250, 5e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(four_shoes_pull_with_the_printed_torque)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
