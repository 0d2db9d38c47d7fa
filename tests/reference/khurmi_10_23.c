/* R. S. Khurmi and J. K. Gupta, Theory of Machines, example 10.23, page 303: clutch plate. Read in
 * the FOSSEE transcription. 300 and 200 mm, 0.1 N/mm2 at the inner radius, both faces, friction
 * 0.3, 2500 rev/min, uniform wear. Printed: 61.685 kW. */
#include "parts/clutch.h"

#include "support/near.h"
#include "support/outside.h"

#define PI 3.14159265358979323846

static const struct outside book = {
    "K1", "R. S. Khurmi and J. K. Gupta, Theory of Machines, example 10.23, p. 303",
    "transcription"};

static void a_clutch_plate_carries_61_685_kw(void **state)
{
    (void)state;
    double force = 2 * PI * 0.1e6 * 0.100 * (0.150 - 0.100);
    outside_again(&book, "axial force", "N", 3141.593, force, 5e-4);
    struct slave plate = {
        .clamp = {force}, .plate_outer = {0.300}, .plate_inner = {0.200}, .plate_friction = {0.3}};
    double torque = clutch_torque(&plate, true).nm;
    outside_again(&book, "torque, uniform wear", "N m", 235.6194, torque, 5e-5);
    outside_printed(&book, "power at 2500 rev/min", "kW", 61.685,
                    torque * 2500 * 2 * PI / 60 / 1000, 0.0005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_clutch_plate_carries_61_685_kw)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
