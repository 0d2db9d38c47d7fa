/* SAE J1705, appendix A, A.2.2.8: air that fluid dissolves at one atmosphere. Read as quoted in
 * print: glycol 5 % by volume, tolerance 2; silicone 16 %, tolerance 3. */
#include "parts/fluid.h"

#include "support/near.h"

static void glycol_and_silicone_dissolve_the_stated_air(void **state)
{
    (void)state;
    near(fluid_row(GRADE_DOT3)->air_dissolved, 0.05, 0.02);
    near(fluid_row(GRADE_DOT4)->air_dissolved, 0.05, 0.02);
    near(fluid_row(GRADE_DOT51)->air_dissolved, 0.05, 0.02);
    near(fluid_row(GRADE_DOT5)->air_dissolved, 0.16, 0.03);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(glycol_and_silicone_dissolve_the_stated_air)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
