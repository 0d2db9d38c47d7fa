/* I. Granet and M. Bluestein, Thermodynamics and Heat Power, examples 6.1 and 6.2. Read in the
 * FOSSEE transcription. 100 psia and 100 ft3 to 30 psia: printed 333.33 ft3. 1 MPa and 2 m3 to
 * 8 MPa: printed 0.25 m3. Both absolute. */
#include "parts/fluid.h"

#include "support/near.h"
#include "support/outside.h"

#define ATMOSPHERE 101325.0
#define PSI        6894.757293168361

static const struct outside book = {
    "G3", "I. Granet and M. Bluestein, Thermodynamics and Heat Power, examples 6.1, 6.2",
    "transcription"};

static double after_abs(double before_abs, double from, double to)
{
    return air_pressure_after((struct pressure){before_abs - ATMOSPHERE}, (struct volume){from},
                              (struct volume){to})
               .pa +
           ATMOSPHERE;
}

static void air_let_out_to_333_33_cubic_feet_falls_to_30_psi(void **state)
{
    (void)state;
    /* half of the last digit of the volume is 0.005 in 333.33 */
    outside_printed(&book, "pressure at 333.33 ft3, absolute", "psi", 30,
                    after_abs(100 * PSI, 100, 333.33) / PSI, 30 * 0.005 / 333.33);
    outside_again(&book, "pressure at 333.333 ft3, absolute", "psi", 30,
                  after_abs(100 * PSI, 100, 333.333) / PSI, 30 * 0.0005 / 333.333);
}

static void air_squeezed_to_an_eighth_rises_to_8_mpa(void **state)
{
    (void)state;
    outside_printed(&book, "pressure at 0.25 m3, absolute", "Pa", 8e6, after_abs(1e6, 2, 0.25),
                    1e-5);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(air_let_out_to_333_33_cubic_feet_falls_to_30_psi),
        cmocka_unit_test(air_squeezed_to_an_eighth_rises_to_8_mpa),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
