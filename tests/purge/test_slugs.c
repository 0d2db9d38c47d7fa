#include "purge/slugs.h"

#include "support/near.h"

#define ML 1e-6

static void what_goes_in_first_comes_out_first(void **state)
{
    (void)state;
    struct slugs pipe = {.count = 0}, out = {.count = 0};
    slugs_add_near(&pipe, 3 * ML, true);
    slugs_add_near(&pipe, 2 * ML, false);
    slugs_add_near(&pipe, 1 * ML, true);
    slugs_take_far(&pipe, 4 * ML, &out);
    assert_int_equal(out.count, 2);
    assert_true(out.at[0].air && !out.at[1].air);
    near(out.at[0].volume, 3 * ML, 1e-20);
    near(out.at[1].volume, 1 * ML, 1e-20);
    near(slugs_volume(&pipe), 2 * ML, 1e-20);
    near(slugs_air(&pipe), 1 * ML, 1e-20);
}

static void the_near_end_gives_the_last_that_went_in(void **state)
{
    (void)state;
    struct slugs pipe = {.count = 0}, out = {.count = 0};
    slugs_add_near(&pipe, 3 * ML, true);
    slugs_add_near(&pipe, 2 * ML, false);
    slugs_take_near(&pipe, 3 * ML, &out);
    assert_true(!out.at[0].air && out.at[1].air);
    near(out.at[1].volume, 1 * ML, 1e-20);
    slugs_add_far(&pipe, 1 * ML, true);
    assert_int_equal(pipe.count, 1);
}

static void like_kinds_join(void **state)
{
    (void)state;
    struct slugs pipe = {.count = 0};
    slugs_add_near(&pipe, 1 * ML, false);
    slugs_add_near(&pipe, 1 * ML, false);
    slugs_add_far(&pipe, 1 * ML, false);
    slugs_add_near(&pipe, 0, true);
    assert_int_equal(pipe.count, 1);
    near(pipe.at[0].volume, 3 * ML, 1e-20);
}

/* Fluid 10, air 2, fluid 5 from the near end: with a quarter of the 8 mL moved it goes on by 2. */
static void air_runs_ahead_through_the_fluid_before_it(void **state)
{
    (void)state;
    struct slugs pipe = {.count = 0};
    slugs_add_near(&pipe, 5 * ML, false);
    slugs_add_near(&pipe, 2 * ML, true);
    slugs_add_near(&pipe, 10 * ML, false);
    slugs_drift(&pipe, 8 * ML, 0.25, 0);
    near(pipe.at[0].volume, 3 * ML, 1e-20);
    near(pipe.at[2].volume, 12 * ML, 1e-20);
    slugs_drift(&pipe, -8 * ML, 0.25, 0); /* driven back: behind it now is the far side */
    near(pipe.at[0].volume, 3 * ML + 0.25 * 3 * ML, 1e-20);
    slugs_drift(&pipe, 0, 0, 100 * ML);
    assert_true(pipe.at[0].air && pipe.count == 2);
    slugs_drift(&pipe, 0, 0, -100 * ML);
    assert_true(!pipe.at[0].air && pipe.at[1].air && pipe.count == 2);
    near(slugs_volume(&pipe), 17 * ML, 1e-19);
}

static void slugs_that_meet_become_one(void **state)
{
    (void)state;
    struct slugs pipe = {.count = 0};
    for (int i = 0; i < 5; i++) {
        slugs_add_near(&pipe, 1 * ML, true);
        slugs_add_near(&pipe, (i + 1) * 0.1 * ML, false);
    }
    slugs_drift(&pipe, 0, 0, 10 * ML);
    assert_int_equal(pipe.count, 2);
    near(pipe.at[0].volume, 5 * ML, 1e-19);
}

static void a_crowd_is_merged_and_loses_nothing(void **state)
{
    (void)state;
    struct slugs pipe = {.count = 0};
    double air = 0, all = 0;
    for (int i = 0; i < SLUG_ROOM; i++) {
        const double volume = (1 + i * 7 % 5) * 0.1 * ML;
        slugs_add_near(&pipe, volume, i % 2 == 0);
        all += volume;
        air += i % 2 == 0 ? volume : 0;
    }
    slugs_limit(&pipe);
    assert_true(pipe.count <= MOST_SLUGS);
    near(slugs_air(&pipe), air, 1e-19);
    near(slugs_volume(&pipe), all, 1e-19);
    for (int i = 1; i < pipe.count; i++)
        assert_true(pipe.at[i].air != pipe.at[i - 1].air && pipe.at[i].volume > 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_goes_in_first_comes_out_first),
        cmocka_unit_test(the_near_end_gives_the_last_that_went_in),
        cmocka_unit_test(like_kinds_join),
        cmocka_unit_test(air_runs_ahead_through_the_fluid_before_it),
        cmocka_unit_test(slugs_that_meet_become_one),
        cmocka_unit_test(a_crowd_is_merged_and_loses_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
