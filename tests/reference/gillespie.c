/* T. D. Gillespie, Fundamentals of Vehicle Dynamics, chapter 3. From memory. */
#include "parts/valve.h"
#include "physics/grip_use.h"

#include <math.h>
#include <stdio.h>

#include "support/near.h"
#include "support/outside.h"

#define FOOT 0.3048
#define LBF  4.4482216152605

static const struct outside first = {
    "V3", "T. D. Gillespie, Fundamentals of Vehicle Dynamics, chapter 3, example 1", "from memory"};
static const struct outside second = {
    "V4", "T. D. Gillespie, Fundamentals of Vehicle Dynamics, chapter 3, example 2",
    "from memory; as good as constructed"};

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
    outside_printed(&first, "way to a standstill (printed cut, not rounded)", "ft", 218, way, 1);
    outside_again(&first, "way to a standstill", "ft", 218.552, way, 5e-4);
    outside_again(&first, "deceleration", "ft/s2", 17.7166, deceleration / FOOT, 5e-5);
}

/* Example 2, shaky in memory, so as good as constructed: loads 2210 and 1864 lb, wheelbase 108.5
 * in, centre 20.5 in high, tyres 12.11 in, gain 20 and 14 lbf in/psi a wheel, rear pressure equal
 * to 290 psi and from there with slope 0.30. Recomputed: braking rate, grip used in front and
 * behind, and the part of the grip put to use. */
static const struct {
    double psi, z, front, rear, efficiency;
} rows[] = {{100, 0.138, 0.143, 0.132, 0.966}, {200, 0.276, 0.273, 0.280, 0.985},
            {300, 0.410, 0.392, 0.437, 0.936}, {400, 0.508, 0.508, 0.507, 0.999},
            {500, 0.606, 0.617, 0.584, 0.982}, {600, 0.704, 0.720, 0.670, 0.977},
            {700, 0.802, 0.818, 0.766, 0.981}};
enum { ROWS = sizeof rows / sizeof rows[0] };

static void a_proportioning_valve_keeps_the_axles_together(void **state)
{
    (void)state;
    const struct vehicle car = {.mass = {4074 * LBF / 9.80665},
                                .front_share = {2210.0 / 4074},
                                .wheelbase = {108.5},
                                .centre_height = {20.5}};
    const struct valve valve = {.type = VALVE_PROPORTIONING, .knee = {290}, .slope = {0.30}};
    struct force front[ROWS], rear[ROWS];
    for (size_t i = 0; i < ROWS; i++) {
        double behind = valve_output(&valve, (struct pressure){rows[i].psi}).pa;
        front[i].n = 2 * 20 * rows[i].psi / 12.11 * LBF;
        rear[i].n = 2 * 14 * behind / 12.11 * LBF;
    }
    struct grip_use uses[ROWS];
    grip_use_curve(&car, front, rear, ROWS, uses);
    const double half = 0.0005 + 1e-6;
    for (size_t i = 0; i < ROWS; i++) {
        char what[4][64];
        const char *const words[] = {"braking rate", "grip used in front", "grip used behind",
                                     "part of the grip put to use"};
        for (int w = 0; w < 4; w++)
            snprintf(what[w], sizeof what[w], "%s at %.0f psi", words[w], rows[i].psi);
        outside_again(&second, what[0], "g", rows[i].z, uses[i].z, half);
        outside_again(&second, what[1], "-", rows[i].front, uses[i].front, half);
        outside_again(&second, what[2], "-", rows[i].rear, uses[i].rear, half);
        outside_again(&second, what[3], "-", rows[i].efficiency, uses[i].efficiency, half);
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
