/* 49 CFR 571.106 (FMVSS 106), S5.3.2, Table I: most expansion of a foot of free length, regular
 * expansion hose, cm3. From memory. Beside it JIS D 2601:1985, read in an extract in print: 0.79
 * cm3 in 305 mm at 10.297 MPa, for 1/8 in hose. */
#include "parts/hose.h"

#include <stdio.h>

#include "support/near.h"
#include "support/outside.h"

#define PSI                  6894.757293168361
#define INCH                 0.0254
#define FOOT_IN_CM3(ceiling) ((ceiling).m3_m * 0.3048 * 1e6)

static const struct outside rule = {"H1", "49 CFR 571.106, S5.3.2, Table I, regular expansion hose",
                                    "from memory"};
static const struct outside japan = {"H2", "JIS D 2601:1985", "quoted"};

static void the_ceiling_goes_through_the_points_of_table_1(void **state)
{
    (void)state;
    const double bores[3] = {INCH / 8, INCH * 3 / 16, INCH / 4};
    const double psi[3] = {1000, 1500, 2900};
    const double cm3[3][3] = {{0.66, 0.79, 1.21}, {0.86, 1.02, 1.67}, {1.04, 1.30, 0}};
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            if (cm3[i][j] > 0) {
                char what[80];
                snprintf(what, sizeof what, "a foot, inside %g in, %g psi", bores[i] / INCH,
                         psi[j]);
                double ceiling = FOOT_IN_CM3(
                    hose_ceiling((struct length){bores[i]}, (struct pressure){psi[j] * PSI}));
                outside_printed(&rule, what, "cm3", cm3[i][j], ceiling, 1e-9);
            }
}

static void the_japanese_rule_agrees_for_small_hose(void **state)
{
    (void)state;
    struct swelling ceiling = hose_ceiling((struct length){INCH / 8}, (struct pressure){10.297e6});
    outside_printed(&japan, "305 mm, inside 1/8 in, 10.297 MPa", "cm3", 0.79,
                    ceiling.m3_m * 0.305 * 1e6, 0.005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_ceiling_goes_through_the_points_of_table_1),
        cmocka_unit_test(the_japanese_rule_agrees_for_small_hose),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
