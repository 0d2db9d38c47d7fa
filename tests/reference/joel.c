/* R. Joel, Basic Engineering Thermodynamics, examples 5.1 and 5.2. Read in the FOSSEE
 * transcription. 765 mmHg, 20 000 to 17 000 mm3: printed 900 mmHg, 135 mm of rise. 300 kPa and
 * 0.14 m3 to 0.7 m3: printed 60 kPa. Both absolute. */
#include "parts/fluid.h"

#include "support/near.h"
#include "support/outside.h"

#define ATMOSPHERE 101325.0
#define MMHG       (ATMOSPHERE / 760)

static const struct outside book = {
    "G2", "R. Joel, Basic Engineering Thermodynamics, examples 5.1, 5.2", "transcription"};

static double after_abs(double before_abs, double from, double to)
{
    return air_pressure_after((struct pressure){before_abs - ATMOSPHERE}, (struct volume){from},
                              (struct volume){to})
               .pa +
           ATMOSPHERE;
}

static void air_squeezed_to_17_twentieths_rises_to_900_mmhg(void **state)
{
    (void)state;
    double after = after_abs(765 * MMHG, 20000e-9, 17000e-9) / MMHG;
    outside_printed(&book, "pressure, absolute", "mmHg", 900, after, 1e-9);
    outside_printed(&book, "rise of the column", "mmHg", 135, after - 765, 1e-9);
}

static void air_let_out_to_five_times_falls_to_60_kpa(void **state)
{
    (void)state;
    outside_printed(&book, "pressure at 0.7 m3, absolute", "Pa", 60e3, after_abs(300e3, 0.14, 0.7),
                    1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(air_squeezed_to_17_twentieths_rises_to_900_mmhg),
        cmocka_unit_test(air_let_out_to_five_times_falls_to_60_kpa),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
