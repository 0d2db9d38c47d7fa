/* BMAT 2004, section 2, question 4, with its published solution. Read. 60 N at 20 cm from the
 * pivot, rod at 4 cm. Printed: 300 N. */
#include "parts/pedal.h"

#include <math.h>

#include "support/near.h"

static void a_pedal_of_20_and_4_cm_turns_60_n_into_300_n(void **state)
{
    (void)state;
    struct pedal pedal = {.ratio = {NAN}, .pad_arm = {0.20}, .rod_arm = {0.04}, .efficiency = {1}};
    near(pedal_rod_force(&pedal, (struct force){60}).n, 300, 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_pedal_of_20_and_4_cm_turns_60_n_into_300_n)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
