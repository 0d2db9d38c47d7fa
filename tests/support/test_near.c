#include "support/near.h"

#include <math.h>

static void a_difference_that_a_float_would_lose_is_seen(void **state)
{
    (void)state;
    assert_false(near_enough(6894757.293, 6894757.0, 1e-3, false));
    assert_true(near_enough(6894757.293, 6894757.293 + 5e-4, 1e-3, false));
}

static void a_nan_is_near_to_nothing(void **state)
{
    (void)state;
    assert_false(near_enough(NAN, 1, 10, false));
    assert_false(near_enough(1, NAN, 10, false));
    assert_false(near_enough(NAN, NAN, 10, false));
    near_unknown(NAN);
}

static void an_infinity_is_near_only_to_itself(void **state)
{
    (void)state;
    assert_true(near_enough(INFINITY, INFINITY, 0, false));
    assert_false(near_enough(INFINITY, 1, INFINITY, false));
    assert_false(near_enough(INFINITY, -INFINITY, 1, true));
}

static void a_relative_tolerance_is_a_part_of_what_is_expected(void **state)
{
    (void)state;
    assert_true(near_enough(1009, 1000, 0.01, true));
    assert_false(near_enough(1011, 1000, 0.01, true));
    assert_true(near_enough(-1009, -1000, 0.01, true));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_difference_that_a_float_would_lose_is_seen),
        cmocka_unit_test(a_nan_is_near_to_nothing),
        cmocka_unit_test(an_infinity_is_near_only_to_itself),
        cmocka_unit_test(a_relative_tolerance_is_a_part_of_what_is_expected),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
