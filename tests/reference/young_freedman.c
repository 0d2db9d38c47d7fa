/* H. D. Young and R. A. Freedman, University Physics. Read. */
#include "parts/fluid.h"

#include "support/near.h"

static double simple(double volume, double modulus, double p)
{
    return fluid_compression((struct volume){volume}, (struct pressure){modulus}, 0,
                             (struct pressure){p})
        .m3;
}

/* Chapter 11, example of a hydraulic press: 0.25 m3, 1.6e7 Pa, 5.0e9 Pa. Printed: 8.0e-4 m3. */
static void the_oil_of_a_press_gives_way_by_0_8_litres(void **state)
{
    (void)state;
    near(simple(0.25, 5.0e9, 1.6e7), 8.0e-4, 0.05e-4);
    near(simple(0.25, 5.0e9, 1.6e7), 8.0e-4, 1e-15);
}

/* 13th edition, problem 11.35: 600 cm3 lose 0.45 cm3 at 3.6e6 Pa. Printed: 4.8e9 Pa. */
static void a_modulus_of_4_8_gpa_gives_back_0_45_cm3(void **state)
{
    (void)state;
    near(simple(600e-6, 4.8e9, 3.6e6), 0.45e-6, 0.005e-6);
    near(simple(600e-6, 4.8e9, 3.6e6), 0.45e-6, 1e-18);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_oil_of_a_press_gives_way_by_0_8_litres),
        cmocka_unit_test(a_modulus_of_4_8_gpa_gives_back_0_45_cm3),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
