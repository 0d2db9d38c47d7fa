/* B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.1, p. 196. Read in the FOSSEE
 * transcription. Oil of relative density 0.83 and 0.08 Pa s at 2.3 m/s through a tube of 12 mm. */
#include "parts/flow.h"

#include <math.h>

#include "support/near.h"

#define PI 3.14159265358979323846

static void oil_in_a_12_mm_tube_loses_40889_pa_a_metre(void **state)
{
    (void)state;
    const double bore = 0.012, density = 830, viscosity = 0.08 / 830;
    const double flow = 2.3 * PI / 4 * bore * bore;
    near(flow_reynolds(flow, bore, viscosity), 286.3, 0.051); /* cut, not rounded */
    near(flow_reynolds(flow, bore, viscosity), 286.35, 0.005);
    near(flow * 1e4, 2.60124, 5e-6);
    near(flow_pipe(density, viscosity, 1, bore) * flow, 40888.9, 0.05);
    near(flow_pipe(density, viscosity, 1, bore) * flow, 40888.89, 0.005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(oil_in_a_12_mm_tube_loses_40889_pa_a_metre),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
