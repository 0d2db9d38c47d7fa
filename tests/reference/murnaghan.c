/* F. D. Murnaghan, The compressibility of media under extreme pressures, Proc. Nat. Acad. Sci. 30
 * (1944) 244: the law, from memory. The values are our own working, mL a litre at 1, 3, 7, 10 and
 * 15 MPa; checked by the power itself in long double, and by stepping dV = -V dp/(K0 + K' p). */
#include "parts/fluid.h"

#include <math.h>
#include <stdio.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside own = {
    "B6", "F. D. Murnaghan, Proc. Nat. Acad. Sci. 30 (1944) 244, one litre at 1 to 15 MPa",
    "law from memory, values constructed"};

static const double megapascals[5] = {1, 3, 7, 10, 15};
static const struct {
    enum fluid_grade grade;
    double celsius, ml[5];
} rows[] = {
    {GRADE_DOT4, 20, {0.511, 1.526, 3.521, 4.989, 7.383}},
    {GRADE_DOT4, 100, {0.766, 2.279, 5.231, 7.383, 10.861}},
    {GRADE_DOT5, 20, {0.947, 2.809, 6.413, 9.016, 13.181}},
    {GRADE_DOT5, 100, {1.458, 4.299, 9.704, 13.538, 19.556}},
    {GRADE_MINERAL, 20, {0.604, 1.799, 4.142, 5.858, 8.645}},
};

static long double stepped(long double k0, long double slope, long double p)
{
    long double log_volume = 0, step = p / 20000;
    for (int i = 0; i < 20000; i++)
        log_volume -= step / (k0 + slope * (i + 0.5L) * step);
    return 1 - expl(log_volume);
}

static void a_litre_gives_way_as_the_power_says(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const struct fluid_row *row = fluid_row(rows[i].grade);
        struct pressure k0 = fluid_modulus(rows[i].grade, (struct temperature){rows[i].celsius});
        for (int j = 0; j < 5; j++) {
            double p = megapascals[j] * 1e6, slope = row->modulus_slope;
            double share =
                fluid_compression((struct volume){1}, k0, slope, (struct pressure){p}).m3;
            char what[80];
            snprintf(what, sizeof what, "%s, %g degC, %g MPa", row->word, rows[i].celsius,
                     megapascals[j]);
            outside_again(&own, what, "mL", rows[i].ml[j], share * 1000, 0.0005 + 1e-9);
            long double power = 1 - powl(1 + (long double)slope * p / k0.pa, -1.0L / slope);
            near_rel(share, (double)power, 1e-12);
            near_rel(share, (double)stepped(k0.pa, slope, p), 1e-8);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_litre_gives_way_as_the_power_says)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
