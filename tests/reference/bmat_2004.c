/* BMAT 2004, section 2, question 4, with its published solution. Read. 60 N at 20 cm from the
 * pivot, rod at 4 cm. Printed: 300 N.
 *
 * Beside it an exercise of CORD and Michigan trade mathematics, read without its answers: 50 lbf at
 * 10 in, rod at 1.25 in, and the 400 lbf of that on a 1 in piston that feeds one of 3.25 in; 30 lbf
 * at 8 in, rod at 0.5 in. */
#include "parts/master.h"
#include "parts/pedal.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

#define INCH 0.0254
#define LBF  4.4482216152605

static const struct outside paper = {"P4", "BMAT 2004, section 2, question 4", "read"};
static const struct outside exercise = {
    "P4", "CORD and Michigan trade mathematics, exercise on levers and pistons", "inputs read"};

static double rod_force(double pad, double rod, double foot)
{
    struct pedal pedal = {.ratio = {NAN}, .pad_arm = {pad}, .rod_arm = {rod}, .efficiency = {1}};
    return pedal_rod_force(&pedal, (struct force){foot}).n;
}

static void a_pedal_of_20_and_4_cm_turns_60_n_into_300_n(void **state)
{
    (void)state;
    outside_printed(&paper, "force on the rod", "N", 300, rod_force(0.20, 0.04, 60), 1e-9);
}

static void a_lever_feeds_a_large_piston(void **state)
{
    (void)state;
    double rod = rod_force(10 * INCH, 1.25 * INCH, 50 * LBF);
    outside_again(&exercise, "force on the rod, 50 lbf", "lbf", 400, rod / LBF, 1e-9);
    struct master master = {.bore = {1 * INCH}, .efficiency = {1}};
    double pressure = master_pressure(&master, (struct force){rod}).pa;
    outside_again(&exercise, "force of the large piston", "lbf", 4225,
                  pressure * circle_area((struct length){3.25 * INCH}).m2 / LBF, 1e-8);
    outside_again(&exercise, "force on the rod, 30 lbf", "lbf", 480,
                  rod_force(8 * INCH, 0.5 * INCH, 30 * LBF) / LBF, 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_pedal_of_20_and_4_cm_turns_60_n_into_300_n),
        cmocka_unit_test(a_lever_feeds_a_large_piston),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
