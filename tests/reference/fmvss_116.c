/* 49 CFR 571.116 (FMVSS 116), S5.1.1 and S5.1.2: least boiling points, dry and wet. Read as quoted
 * in print, where each stands in degC and in degF. S5.1.3, least viscosity at 100 degC 1.5 mm2/s
 * and most at -40 degC: read as quoted in print (5.1 at 100 degC from memory). */
#include "parts/fluid.h"

#include <math.h>
#include <stdio.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside rule = {"N2", "49 CFR 571.116, S5.1.1, S5.1.2", "quoted"};

static const struct {
    enum fluid_grade grade;
    double dry, wet, dry_f, wet_f, most_cold;
} rows[] = {
    {GRADE_DOT3, 205, 140, 401, 284, 1500},
    {GRADE_DOT4, 230, 155, 446, 311, 1800},
    {GRADE_DOT51, 260, 180, 500, 356, 900},
    {GRADE_DOT5, 260, 180, 500, 356, 900},
};

static void boiling_points_are_the_least_that_the_rule_allows(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const struct fluid_row *row = fluid_row(rows[i].grade);
        double dry = row->dry_boiling.celsius, wet = row->wet_boiling.celsius;
        char what[2][80];
        snprintf(what[0], sizeof what[0], "%s boils, dry", row->word);
        snprintf(what[1], sizeof what[1], "%s boils, wet", row->word);
        outside_printed(&rule, what[0], "degC", rows[i].dry, dry, 0);
        outside_printed(&rule, what[0], "degF", rows[i].dry_f, dry * 1.8 + 32, 0.5);
        outside_printed(&rule, what[1], "degC", rows[i].wet, wet, 0);
        outside_printed(&rule, what[1], "degF", rows[i].wet_f, wet * 1.8 + 32, 0.5);
    }
    near_unknown(fluid_row(GRADE_MINERAL)->dry_boiling.celsius);
    near_unknown(fluid_row(GRADE_MINERAL)->wet_boiling.celsius);
}

static double viscosity(const struct fluid_row *row, double celsius)
{
    return pow(10, pow(10, row->walther_a - row->walther_b * log10(celsius + 273.15))) - 0.7;
}

static void viscosity_lines_keep_within_the_rule(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const struct fluid_row *row = fluid_row(rows[i].grade);
        assert_true(viscosity(row, -40) <= rows[i].most_cold);
        assert_true(viscosity(row, 100) >= 1.5);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(boiling_points_are_the_least_that_the_rule_allows),
        cmocka_unit_test(viscosity_lines_keep_within_the_rule),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
