/* SAE J1705, appendix A, A.2.2.8: air that fluid dissolves at one atmosphere. Read as quoted in
 * print: glycol 5 % by volume, tolerance 2; silicone 16 %, tolerance 3. */
#include "parts/fluid.h"

#include <stdio.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside standard = {"B7", "SAE J1705, appendix A, A.2.2.8", "quoted"};

static void glycol_and_silicone_dissolve_the_stated_air(void **state)
{
    (void)state;
    const struct {
        enum fluid_grade grade;
        double share, tolerance;
    } rows[] = {{GRADE_DOT3, 5, 2}, {GRADE_DOT4, 5, 2}, {GRADE_DOT51, 5, 2}, {GRADE_DOT5, 16, 3}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const struct fluid_row *row = fluid_row(rows[i].grade);
        char what[80];
        snprintf(what, sizeof what, "air dissolved in %s", row->word);
        outside_printed(&standard, what, "%", rows[i].share, row->air_dissolved * 100,
                        rows[i].tolerance);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(glycol_and_silicone_dissolve_the_stated_air)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
