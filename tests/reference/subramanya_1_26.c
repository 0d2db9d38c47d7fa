/* K. Subramanya, 1000 Solved Problems in Fluid Mechanics, example 1.26: speed of sound in kerosene.
 * Read in the FOSSEE transcription. Modulus 1.43e9 Pa, density 0.804 of water's 998 kg/m3. Printed:
 * 1335 m/s. This is the way from a table of sound to a modulus: K = density * speed^2. */
#include "parts/fluid.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside book = {
    "B4", "K. Subramanya, 1000 Solved Problems in Fluid Mechanics, example 1.26", "transcription"};

/* The modulus as the fluid's giving way shows it at a small pressure. */
static double modulus_shown(double modulus)
{
    double p = 1000;
    return p / fluid_compression((struct volume){1}, (struct pressure){modulus}, 10,
                                 (struct pressure){p})
                   .m3;
}

static void sound_in_kerosene_goes_with_1335_m_s(void **state)
{
    (void)state;
    double speed = sqrt(modulus_shown(1.43e9) / (0.804 * 998));
    outside_printed(&book, "speed of sound", "m/s", 1335, speed, 0.5);
    outside_again(&book, "speed of sound", "m/s", 1334.98, speed, 0.006);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(sound_in_kerosene_goes_with_1335_m_s)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
