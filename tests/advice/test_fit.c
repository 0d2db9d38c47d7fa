#include "advice/fit.h"

#include <math.h>
#include <string.h>

#include "advice_car.h"

#define INCH 0.0254

static struct fit *fit(const struct advice_car *car, const char *part, double bore)
{
    int index = advice_part(car, part);
    struct force own = {NAN};
    struct date today = {2026, 11, 25};
    return fit_of(car->system, car->network, &index, 1, (struct length){bore}, own, today,
                  car->arena);
}

static const struct fit_line *line(const struct fit *fit, const char *id, const char *of)
{
    for (int i = 0; i < fit->line_count; i++) {
        if (strcmp(fit->lines[i].id, id) == 0 &&
            (of == NULL || strcmp(fit->lines[i].of, of) == 0)) {
            return &fit->lines[i];
        }
    }
    fail_msg("no line %s", id);
    return NULL;
}

static const struct fit_reason *reason(const struct fit *fit, const char *limit)
{
    for (int i = 0; i < fit->reason_count; i++) {
        if (strcmp(fit->reasons[i].limit, limit) == 0) {
            return &fit->reasons[i];
        }
    }
    return NULL;
}

/* Trade: from 3/4 to 7/8 in loses 27 % of pressure (1 - 36/49 = 26.5 %) for the same foot. */
static void a_larger_master_loses_pressure_as_the_square_of_its_bore(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/rear-engined-saloon.ini", NULL);
    struct fit *larger = fit(&car, "brake master", INCH * 7 / 8);
    const struct fit_line *pressure = line(larger, "line-pressure", NULL);
    near_rel(pressure->after / pressure->before, 36.0 / 49.0, 1e-6);
    near(larger->before.m, INCH * 3 / 4, 1e-9);
    near(larger->after.m, INCH * 7 / 8, 1e-12);
    advice_car_finish(&car);
}

/* The same stop asks for the same line pressure, and that for a rod force as the area. */
static void the_effort_for_the_same_stop_grows_with_the_area(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/rear-engined-saloon.ini", NULL);
    const struct fit_line *effort =
        line(fit(&car, "brake master", INCH * 7 / 8), "effort-for-same-stop", NULL);
    near_rel(effort->before, 300, 1e-6); /* the pedal's own effort gave the stop */
    near_rel(effort->after / effort->before, 49.0 / 36.0, 1e-6);
    advice_car_finish(&car);
}

static void travel_falls_and_reserve_grows_with_a_larger_master(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *larger = fit(&car, "brake master", INCH * 7 / 8);
    assert_true(line(larger, "pedal-travel", NULL)->after <
                line(larger, "pedal-travel", NULL)->before);
    assert_true(line(larger, "pedal-left", NULL)->after > line(larger, "pedal-left", NULL)->before);
    assert_true(line(larger, "left-circuit-lost", "rear circuit")->after >
                line(larger, "left-circuit-lost", "rear circuit")->before);
    /* the clutch knows nothing of it */
    for (int i = 0; i < larger->line_count; i++) {
        assert_null(strstr(larger->lines[i].id, "bearing"));
    }
    advice_car_finish(&car);
}

/* The slave's travel is volume over area, (7/8)^2/1 = 0.766 of it, less what hoses take. */
static void a_larger_slave_moves_less_and_the_clutch_is_not_freed(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *larger = fit(&car, "clutch slave", INCH);
    const struct fit_line *travel = line(larger, "slave-travel", NULL);
    near_rel(travel->after / travel->before, 0.766, 0.02);
    assert_int_equal(larger->verdict, FIT_DOES_NOT_SUIT);
    assert_true(reason(larger, "bearing-spare-least")->against);
    advice_car_finish(&car);
}

static void another_bore_on_one_side_is_refused(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *one_side = fit(&car, "rear left drum", INCH * 7 / 8);
    assert_int_equal(one_side->verdict, FIT_DOES_NOT_SUIT);
    assert_true(reason(one_side, "bores-differ-most")->grave);
    int both[] = {advice_part(&car, "rear left drum"), advice_part(&car, "rear right drum")};
    struct force own = {NAN};
    struct fit *two = fit_of(car.system, car.network, both, 2, (struct length){INCH * 11 / 16}, own,
                             (struct date){2026, 11, 25}, car.arena);
    assert_false(reason(two, "bores-differ-most")->against);
    advice_car_finish(&car);
}

static void the_same_bore_suits_and_changes_nothing(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *same = fit(&car, "brake master", INCH * 13 / 16);
    assert_int_equal(same->line_count, 0);
    assert_int_equal(same->verdict, FIT_SUITS);
    assert_non_null(strstr(same->nearest, "13/16 in"));
    advice_car_finish(&car);
}

static void a_small_master_that_meets_the_floor_is_refused(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct fit *small = fit(&car, "brake master", INCH / 2);
    assert_int_equal(small->verdict, FIT_DOES_NOT_SUIT);
    assert_true(reason(small, "pedal-floor-least")->grave);
    advice_car_finish(&car);
}

static void an_odd_bore_is_a_reason_to_take_care(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/hill-coupe.ini", NULL);
    struct fit *odd = fit(&car, "front master", 16.5e-3);
    assert_non_null(reason(odd, "standard-bore-within"));
    assert_null(reason(fit(&car, "front master", 16e-3), "standard-bore-within"));
    advice_car_finish(&car);
}

static void a_fit_leaves_the_car_as_it_was(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    fit(&car, "brake master", INCH);
    near(car.system->parts[advice_part(&car, "brake master")].as.master.bore.m, INCH * 13 / 16,
         1e-12);
    advice_car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_larger_master_loses_pressure_as_the_square_of_its_bore),
        cmocka_unit_test(the_effort_for_the_same_stop_grows_with_the_area),
        cmocka_unit_test(travel_falls_and_reserve_grows_with_a_larger_master),
        cmocka_unit_test(a_larger_slave_moves_less_and_the_clutch_is_not_freed),
        cmocka_unit_test(another_bore_on_one_side_is_refused),
        cmocka_unit_test(the_same_bore_suits_and_changes_nothing),
        cmocka_unit_test(a_small_master_that_meets_the_floor_is_refused),
        cmocka_unit_test(an_odd_bore_is_a_reason_to_take_care),
        cmocka_unit_test(a_fit_leaves_the_car_as_it_was),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
