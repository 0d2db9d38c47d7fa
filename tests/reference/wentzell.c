/* T. H. Wentzell, Machine Design, example 10-2, page 198: air over oil. Read in the FOSSEE
 * transcription. 100 psi on a 4 in piston, oil piston 1 in, ram 3 in, stroke 4 in. Printed:
 * 1600 psi; 11 309.73 lbf; 3.14 in3; 0.44 in. */
#include "parts/master.h"

#include "support/near.h"
#include "support/outside.h"

#define INCH  0.0254
#define LBF   4.4482216152605
#define PSI   (LBF / (INCH * INCH))
#define INCH3 (INCH * INCH * INCH)

static const struct outside book = {"P6", "T. H. Wentzell, Machine Design, example 10-2, p. 198",
                                    "transcription"};

static void air_over_oil_makes_1600_psi(void **state)
{
    (void)state;
    double air = 100 * PSI * circle_area((struct length){4 * INCH}).m2;
    struct master oil = {.bore = {1 * INCH}, .efficiency = {1}};
    double pressure = master_pressure(&oil, (struct force){air}).pa;
    outside_printed(&book, "pressure of the oil", "psi", 1600, pressure / PSI, 1e-8);
    double ram = circle_area((struct length){3 * INCH}).m2;
    outside_printed(&book, "force of the ram", "lbf", 11309.73, pressure * ram / LBF, 0.005);
    outside_again(&book, "force of the ram", "lbf", 11309.734, pressure * ram / LBF, 5e-4);
    double delivered = master_area(&oil).m2 * 4 * INCH;
    outside_printed(&book, "oil delivered", "in3", 3.14, delivered / INCH3, 0.005);
    outside_again(&book, "oil delivered", "in3", 3.141593, delivered / INCH3, 5e-7);
    outside_printed(&book, "way of the ram", "in", 0.44, delivered / ram / INCH, 0.005);
    outside_again(&book, "way of the ram", "in", 0.444444, delivered / ram / INCH, 5e-7);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(air_over_oil_makes_1600_psi)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
