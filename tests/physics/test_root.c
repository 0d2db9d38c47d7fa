#include "physics/root.h"

#include <math.h>

#include "support/near.h"

struct counted {
    double (*law)(double x);
    int calls;
};

static double count(double x, void *context)
{
    struct counted *counted = context;
    counted->calls++;
    return counted->law(x);
}

static double line(double x)
{
    return 3 * x - 6;
}

static double steep_then_flat(double x)
{
    return sqrt(x) - 0.01; /* 0 at 1e-4 */
}

static double jump(double x)
{
    return x < 0.7 ? -5 : 1;
}

static double unknown(double x)
{
    (void)x;
    return NAN;
}

static struct root find(double (*law)(double x), double high, double tolerance, int *calls)
{
    struct counted counted = {law, 0};
    struct root root = root_between(count, &counted, 0, high, tolerance);
    *calls = counted.calls;
    return root;
}

static void a_straight_line_is_found_in_few_steps(void **state)
{
    (void)state;
    int calls;
    struct root root = find(line, 100, 1e-9, &calls);
    assert_true(root.bracketed && root.converged);
    near(root.fits, 2, 1e-9);
    assert_true(line(root.fits) <= 0 && line(root.fails) > 0);
    assert_true(calls <= 10);
}

static void a_steep_start_is_found(void **state)
{
    (void)state;
    int calls;
    struct root root = find(steep_then_flat, 2000, 1e-9, &calls);
    assert_true(root.converged);
    near(root.fails, 1e-4, 1e-9);
    assert_true(calls <= 200);
}

static void a_jump_is_found_from_both_sides(void **state)
{
    (void)state;
    int calls;
    struct root root = find(jump, 1, 1e-9, &calls);
    assert_true(root.converged);
    assert_true(root.fits < 0.7 && root.fails >= 0.7);
    near(root.fails, 0.7, 1e-9);
}

static void what_fits_at_both_ends_or_at_none_has_no_root(void **state)
{
    (void)state;
    int calls;
    assert_false(find(line, 1.9, 1e-9, &calls).bracketed);
    near_unknown(find(line, 1.9, 1e-9, &calls).fits);
    assert_false(find(unknown, 1, 1e-9, &calls).bracketed);
    struct counted counted = {line, 0};
    assert_false(root_between(count, &counted, 3, 4, 1e-9).bracketed);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_straight_line_is_found_in_few_steps),
        cmocka_unit_test(a_steep_start_is_found),
        cmocka_unit_test(a_jump_is_found_from_both_sides),
        cmocka_unit_test(what_fits_at_both_ends_or_at_none_has_no_root),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
