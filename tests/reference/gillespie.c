/* T. D. Gillespie, Fundamentals of Vehicle Dynamics, chapter 3. From memory. */
#include "parts/valve.h"
#include "parts/vehicle.h"

#include <math.h>

#include "support/near.h"

#define FOOT 0.3048
#define LBF  4.4482216152605

/* Example 1: 3635 lb, 60 mile/h (88 ft/s), 2000 lb of braking, g 32.2 ft/s2. Printed: 218 ft, cut
 * rather than rounded from 218.55. */
static void a_light_truck_stops_in_218_feet(void **state)
{
    (void)state;
    double deceleration = 2000 * 32.2 / 3635 * FOOT;
    double way =
        vehicle_stopping_distance((struct speed){88 * FOOT}, (struct acceleration){deceleration},
                                  (struct duration){0}, (struct duration){0})
            .m /
        FOOT;
    near(way, 218, 1);
    near(way, 218.552, 5e-4);
}

/* Example 2, shaky in memory, so as good as constructed: loads 2210 and 1864 lb, wheelbase 108.5
 * in, centre 20.5 in high, tyres 12.11 in, gain 20 and 14 lbf in/psi a wheel, rear pressure equal
 * to 290 psi and from there with slope 0.30. Recomputed: braking rate and grip used front, rear. */
static void a_proportioning_valve_keeps_the_axles_together(void **state)
{
    (void)state;
    const double rows[][4] = {{100, 0.138, 0.143, 0.132}, {200, 0.276, 0.273, 0.280},
                              {300, 0.410, 0.392, 0.437}, {400, 0.508, 0.508, 0.507},
                              {500, 0.606, 0.617, 0.584}, {600, 0.704, 0.720, 0.670},
                              {700, 0.802, 0.818, 0.766}};
    struct vehicle car = {.mass = {4074 * LBF / 9.80665},
                          .front_share = {2210.0 / 4074},
                          .wheelbase = {108.5},
                          .centre_height = {20.5}};
    struct valve valve = {.type = VALVE_PROPORTIONING, .knee = {290}, .slope = {0.30}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double front = 2 * 20 * rows[i][0] / 12.11;
        double rear = 2 * 14 * valve_output(&valve, (struct pressure){rows[i][0]}).pa / 12.11;
        double z = (front + rear) / 4074;
        near(z, rows[i][1], 0.0005 + 1e-6);
        struct axle_loads loads = vehicle_axle_loads(&car, z);
        near(front * LBF / loads.front.n, rows[i][2], 0.0005 + 1e-6);
        near(rear * LBF / loads.rear.n, rows[i][3], 0.0005 + 1e-6);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_light_truck_stops_in_218_feet),
        cmocka_unit_test(a_proportioning_valve_keeps_the_axles_together),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
