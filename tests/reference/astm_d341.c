/* Viscosity against temperature by C. Walther's law as in ASTM D341. A published worked sheet was
 * read: 32 cSt at 40 degC and 5.4 cSt at 100 degC give 8.5 cSt at 80 degC (with T = t + 273; A
 * 9.5259, B 3.7449). Recomputed with 273.15: A 9.530815, B 3.746578, 8.53321 cSt. */
#include "parts/flow.h"

#include "support/near.h"

static double mm2_s(double a, double b, double celsius)
{
    return flow_viscosity(a, b, (struct temperature){celsius}).m2_s * 1e6;
}

static void a_line_through_two_points_gives_8_5_at_80(void **state)
{
    (void)state;
    near(mm2_s(9.530815, 3.746578, 40), 32, 0.001);
    near(mm2_s(9.530815, 3.746578, 100), 5.4, 0.0005);
    near(mm2_s(9.530815, 3.746578, 80), 8.5, 0.05);
    near(mm2_s(9.530815, 3.746578, 80), 8.53321, 2e-4);
    near(mm2_s(9.525928, 3.744932, 80 - 0.15), 8.53310, 2e-4);
}

static double grade(enum fluid_grade of, double celsius)
{
    return flow_viscosity_of(of, (struct temperature){celsius}).m2_s * 1e6;
}

/* The usual fluid, through 1300 at -40 and 2.2 at 100 degC (from memory); recomputed elsewhere. */
static void usual_fluid_thins_from_169_to_3_1(void **state)
{
    (void)state;
    near(grade(GRADE_DOT4, -40), 1300, 6);
    near(grade(GRADE_DOT4, -20), 169, 0.6);
    near(grade(GRADE_DOT4, 0), 42.8, 0.1);
    near(grade(GRADE_DOT4, 20), 16.3, 0.05);
    near(grade(GRADE_DOT4, 40), 8.04, 0.01);
    near(grade(GRADE_DOT4, 80), 3.09, 0.005);
    near(grade(GRADE_DOT4, 100), 2.2, 0.005);
    near(grade(GRADE_DOT5, 20), 59.7, 0.1); /* its line has fewer digits */
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
