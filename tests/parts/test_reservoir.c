#include "parts/reservoir.h"

#include <math.h>

#include "support/near.h"

static double usable(double capacity, double given)
{
    struct reservoir r = {.capacity = {capacity}, .usable = {given}};
    return reservoir_usable(&r).m3;
}

static void the_usable_volume_given_wins_over_a_third_of_the_capacity(void **state)
{
    (void)state;
    near(usable(240e-6, 100e-6), 100e-6, 0);
    near(usable(240e-6, NAN), 80e-6, 1e-15);
    near(usable(NAN, 100e-6), 100e-6, 0);
}

static void no_usable_volume_is_made_up(void **state)
{
    (void)state;
    near_unknown(usable(NAN, NAN));
    near_unknown(usable(0, NAN));
    near_unknown(usable(240e-6, -1));
    near_unknown(usable(240e-6, 0));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_usable_volume_given_wins_over_a_third_of_the_capacity),
        cmocka_unit_test(no_usable_volume_is_made_up),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
