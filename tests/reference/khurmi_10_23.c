/* R. S. Khurmi and J. K. Gupta, Theory of Machines, example 10.23, page 303: clutch plate. Read in
 * the FOSSEE transcription. 300 and 200 mm, 0.1 N/mm2 at the inner radius, both faces, friction
 * 0.3, 2500 rev/min, uniform wear. Printed: 61.685 kW. */
#include "parts/clutch.h"

#include "support/near.h"

#define PI 3.14159265358979323846

static void a_clutch_plate_carries_61_685_kw(void **state)
{
    (void)state;
    double force = 2 * PI * 0.1e6 * 0.100 * (0.150 - 0.100);
    near(force, 3141.593, 5e-4);
    struct slave plate = {
        .clamp = {force}, .plate_outer = {0.300}, .plate_inner = {0.200}, .plate_friction = {0.3}};
    double torque = clutch_torque(&plate, true).nm;
    near(torque, 235.6194, 5e-5);
    near(torque * 2500 * 2 * PI / 60 / 1000, 61.685, 0.0005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_clutch_plate_carries_61_685_kw)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
