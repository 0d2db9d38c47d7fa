/* Viscosity against temperature by C. Walther's law as in ASTM D341. A published worked sheet was
 * read: 32 cSt at 40 degC and 5.4 cSt at 100 degC give 8.5 cSt at 80 degC (with T = t + 273; A
 * 9.5259, B 3.7449). Recomputed with 273.15: A 9.530815, B 3.746578, 8.53321 cSt. */
#include "parts/flow.h"

#include "support/near.h"
#include "support/outside.h"

static const struct outside sheet = {
    "N1", "ASTM D341, a published worked sheet: 32 cSt at 40, 5.4 cSt at 100 degC", "read"};
static const struct outside usual = {"N1", "ASTM D341 through usual viscosities of brake fluid",
                                     "law read, points from memory"};

static double mm2_s(double a, double b, double celsius)
{
    return flow_viscosity(a, b, (struct temperature){celsius}).m2_s * 1e6;
}

static void a_line_through_two_points_gives_8_5_at_80(void **state)
{
    (void)state;
    outside_again(&sheet, "at 40 degC", "mm2/s", 32, mm2_s(9.530815, 3.746578, 40), 0.001);
    outside_again(&sheet, "at 100 degC", "mm2/s", 5.4, mm2_s(9.530815, 3.746578, 100), 0.0005);
    outside_printed(&sheet, "at 80 degC", "mm2/s", 8.5, mm2_s(9.530815, 3.746578, 80), 0.05);
    outside_again(&sheet, "at 80 degC", "mm2/s", 8.53321, mm2_s(9.530815, 3.746578, 80), 2e-4);
    outside_again(&sheet, "at 80 degC, with t + 273", "mm2/s", 8.53310,
                  mm2_s(9.525928, 3.744932, 80 - 0.15), 2e-4);
}

static double grade(enum fluid_grade of, double celsius)
{
    return flow_viscosity_of(of, (struct temperature){celsius}).m2_s * 1e6;
}

/* The usual fluid, through 1300 at -40 and 2.2 at 100 degC (from memory); recomputed elsewhere. */
static void usual_fluid_thins_from_169_to_3_1(void **state)
{
    (void)state;
    outside_again(&usual, "DOT 4, -40 degC", "mm2/s", 1300, grade(GRADE_DOT4, -40), 6);
    outside_again(&usual, "DOT 4, -20 degC", "mm2/s", 169, grade(GRADE_DOT4, -20), 0.6);
    outside_again(&usual, "DOT 4, 0 degC", "mm2/s", 42.8, grade(GRADE_DOT4, 0), 0.1);
    outside_again(&usual, "DOT 4, 20 degC", "mm2/s", 16.3, grade(GRADE_DOT4, 20), 0.05);
    outside_again(&usual, "DOT 4, 40 degC", "mm2/s", 8.04, grade(GRADE_DOT4, 40), 0.01);
    outside_again(&usual, "DOT 4, 80 degC", "mm2/s", 3.09, grade(GRADE_DOT4, 80), 0.005);
    outside_again(&usual, "DOT 4, 100 degC", "mm2/s", 2.2, grade(GRADE_DOT4, 100), 0.005);
    outside_again(&usual, "DOT 5, 20 degC", "mm2/s", 59.7, grade(GRADE_DOT5, 20),
                  0.1); /* its line has fewer digits */
    near_unknown(grade(GRADE_NOT_SAID, 20));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_line_through_two_points_gives_8_5_at_80),
        cmocka_unit_test(usual_fluid_thins_from_169_to_3_1),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
