/* B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.1, p. 196. Read in the FOSSEE
 * transcription. Oil of relative density 0.83 and 0.08 Pa s at 2.3 m/s through a tube of 12 mm. */
#include "parts/flow.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define PI 3.14159265358979323846

static const struct outside book = {
    "F1", "B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.1, p. 196",
    "transcription"};

static void oil_in_a_12_mm_tube_loses_40889_pa_a_metre(void **state)
{
    (void)state;
    const double bore = 0.012, density = 830, viscosity = 0.08 / 830;
    const double flow = 2.3 * PI / 4 * bore * bore;
    outside_printed(&book, "Reynolds number (printed cut, not rounded)", "-", 286.3,
                    flow_reynolds(flow, bore, viscosity), 0.051); /* cut, not rounded */
    outside_again(&book, "Reynolds number", "-", 286.35, flow_reynolds(flow, bore, viscosity),
                  0.005);
    outside_again(&book, "flow, 1e-4", "m3/s", 2.60124, flow * 1e4, 5e-6);
    outside_printed(&book, "pressure lost in a metre", "Pa", 40888.9,
                    flow_pipe(density, viscosity, 1, bore) * flow, 0.05);
    outside_again(&book, "pressure lost in a metre", "Pa", 40888.89,
                  flow_pipe(density, viscosity, 1, bore) * flow, 0.005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(oil_in_a_12_mm_tube_loses_40889_pa_a_metre),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
