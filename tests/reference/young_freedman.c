/* H. D. Young and R. A. Freedman, University Physics. Read. */
#include "parts/fluid.h"

#include "support/near.h"
#include "support/outside.h"

#define BOOK "H. D. Young and R. A. Freedman, University Physics, "
static const struct outside press = {"B1", BOOK "chapter 11, hydraulic press", "read"};
static const struct outside problem = {"B2", BOOK "13th edition, problem 11.35", "read"};

static double simple(double volume, double modulus, double p)
{
    return fluid_compression((struct volume){volume}, (struct pressure){modulus}, 0,
                             (struct pressure){p})
        .m3;
}

/* Chapter 11, example of a hydraulic press: 0.25 m3, 1.6e7 Pa, 5.0e9 Pa. Printed: 8.0e-4 m3,
 * 0.32 %. A modulus that does not change with pressure while the volume does, dV = -V dp/K, gives
 * 1 - exp(-p/K) instead, which is Murnaghan's law for a slope that goes to 0. */
static void the_oil_of_a_press_gives_way_by_0_8_litres(void **state)
{
    (void)state;
    double given = simple(0.25, 5.0e9, 1.6e7);
    outside_printed(&press, "volume given way", "m3", 8.0e-4, given, 0.05e-4);
    outside_again(&press, "volume given way", "m3", 8.0000e-4, given, 1e-15);
    outside_printed(&press, "share of the volume", "%", 0.32, given / 0.25 * 100, 0.005);
    double finite = fluid_compression((struct volume){1}, (struct pressure){5.0e9}, 1e-9,
                                      (struct pressure){1.6e7})
                        .m3;
    outside_again(&press, "share of the volume, finite strain", "%", 0.31949, finite * 100, 5e-6);
}

/* 13th edition, problem 11.35: 600 cm3 lose 0.45 cm3 at 3.6e6 Pa. Printed: 4.8e9 Pa. */
static void a_modulus_of_4_8_gpa_gives_back_0_45_cm3(void **state)
{
    (void)state;
    double given = simple(600e-6, 4.8e9, 3.6e6);
    outside_printed(&problem, "volume given way", "cm3", 0.45, given * 1e6, 0.005);
    outside_again(&problem, "volume given way", "cm3", 0.45, given * 1e6, 1e-12);
    double modulus = 600e-6 * 3.6e6 / simple(600e-6, 4.8e9, 3.6e6);
    outside_printed(&problem, "modulus that follows", "Pa", 4.8e9, modulus, 0.05e9);
    outside_again(&problem, "compressibility", "1/Pa", 2.0833e-10, 1 / modulus, 5e-15);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_oil_of_a_press_gives_way_by_0_8_litres),
        cmocka_unit_test(a_modulus_of_4_8_gpa_gives_back_0_45_cm3),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
