/* K. Subramanya, 1000 Solved Problems in Fluid Mechanics. Read in the FOSSEE transcription. */
#include "parts/flow.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define PI 3.14159265358979323846

static const struct outside uphill = {
    "F2", "K. Subramanya, 1000 Solved Problems in Fluid Mechanics, example 7.11, p. 164",
    "transcription"};
static const struct outside pumped = {
    "F3", "K. Subramanya, 1000 Solved Problems in Fluid Mechanics, example 7.10, p. 164",
    "transcription"};

/* Example 7.11, p. 164: 1.5 poise, relative density 0.9 of 998, pipe of 30 mm and 30 m; 200 kPa at
 * 20 m, 500 kPa at 0 m. Printed: from the lower to the upper end, 0.5468 L/s. The book has g 9.81.
 */
static void oil_runs_uphill_at_0_5468_litres_a_second(void **state)
{
    (void)state;
    const double density = 0.9 * 998, viscosity = 0.15 / density;
    const double head = flow_head(density, 20) * 9.81 / 9.80665;
    const struct resistance pipe = {flow_pipe(density, viscosity, 30, 0.03), 0};
    const double flow = flow_driven(pipe, 500e3 - 200e3 - head);
    outside_printed(&uphill, "flow", "L/s", 0.5468, flow * 1e3, 5e-5);
    outside_again(&uphill, "flow", "L/s", 0.546813, flow * 1e3, 5e-7);
    outside_again(&uphill, "speed", "m/s", 0.773582, flow / (PI / 4 * 0.03 * 0.03), 5e-7);
    outside_again(&uphill, "Reynolds number", "-", 138.97, flow_reynolds(flow, 0.03, viscosity),
                  0.005);
    /* and not the other way */
    near(flow_driven(pipe, 200e3 + head - 500e3), 0, 0);
}

/* Example 7.10, p. 164: 75 mm, 0.1 Pa s, 5.4 kW at 60 %, 1000 m. Printed: 301.2 L/min (from a flow
 * rounded first), Reynolds number 765. */
static void a_pump_of_5_4_kilowatts_moves_301_litres_a_minute(void **state)
{
    (void)state;
    const double density = 0.9 * 998, viscosity = 0.1 / density;
    const double resistance = flow_pipe(density, viscosity, 1000, 0.075);
    const double flow = sqrt(0.6 * 5400 / resistance);
    outside_again(&pumped, "flow", "L/min", 300.97, flow * 60e3, 0.01);
    outside_printed(&pumped, "flow (from one rounded first)", "L/min", 301.2, flow * 60e3, 0.3);
    outside_printed(&pumped, "Reynolds number", "-", 765, flow_reynolds(flow, 0.075, viscosity),
                    0.5);
    near(flow_cost((struct resistance){resistance, 0}, flow) * flow, 0.6 * 5400, 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(oil_runs_uphill_at_0_5468_litres_a_second),
        cmocka_unit_test(a_pump_of_5_4_kilowatts_moves_301_litres_a_minute),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
