#include "parts/fittings.h"

#include <math.h>

#include "support/near.h"

static double wall(double size)
{
    return tube_usual_wall((struct length){size}).m;
}

static void a_size_gets_the_wall_of_the_nearest_tube(void **state)
{
    (void)state;
    near(wall(0.0047625), 0.0007112, 1e-12); /* 3/16 in: 0.028 in */
    near(wall(0.00475), 0.0007, 1e-12);
    near(wall(0.0048), 0.0007112, 1e-12);
    near(wall(0.006), 0.001, 1e-12);
    near(wall(0.0060999), 0.001, 1e-12);
}

static void a_size_that_no_tube_has_gets_no_wall(void **state)
{
    (void)state;
    near_unknown(wall(0.00611));
    near_unknown(wall(0.0053));
    near_unknown(wall(0));
    near_unknown(wall(NAN));
}

static void every_row_has_name_sizes_and_source(void **state)
{
    (void)state;
    size_t count;
    const struct thread_row *threads = thread_rows(&count);
    assert_int_equal(count, 8);
    for (size_t i = 0; i < count; i++) {
        assert_non_null(threads[i].name);
        assert_non_null(threads[i].usual_on);
        assert_non_null(threads[i].source);
        assert_true(threads[i].major.m > 5 * threads[i].pitch.m && threads[i].pitch.m > 0);
    }
    const struct tube_row *tubes = tube_rows(&count);
    assert_int_equal(count, 6);
    for (size_t i = 0; i < count; i++) {
        assert_non_null(tubes[i].name);
        assert_non_null(tubes[i].source);
        assert_true(tubes[i].size.m > 2 * tubes[i].wall.m && tubes[i].wall.m > 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_size_gets_the_wall_of_the_nearest_tube),
        cmocka_unit_test(a_size_that_no_tube_has_gets_no_wall),
        cmocka_unit_test(every_row_has_name_sizes_and_source),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
