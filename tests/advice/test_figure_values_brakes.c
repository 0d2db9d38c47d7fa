#include "advice/figures.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

static struct figures figures_now(const struct driven_car *driven)
{
    return figures_of(driven->car.system, driven->network, (struct force){NAN}, driven->car.arena);
}

static double value(const struct figures *figures, const char *id, const char *of)
{
    const struct figure *figure = figures_find(figures, id, of);
    assert_non_null(figure);
    return figure->value;
}

/* At friction 0.38, tip and abutment 0.8 of the radius, half arc 55 deg (our own sums): the torque
 * of a leading and a trailing shoe follows friction 1.277 times over, of two leading ones 1.536
 * times. */
static void drums_answer_friction_more_than_discs(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.usual.rear_right, "shoes", SHOES_TWO_LEADING);
    struct figures figures = figures_now(&driven);
    near(value(&figures, "friction-sensitivity", "front left disc"), 1, 0);
    near(value(&figures, "friction-sensitivity", "rear left drum"), 1.27667, 2e-5);
    near(value(&figures, "friction-sensitivity", "rear right drum"), 1.53563, 2e-5);
    driven_finish(&driven);
}

/* A tenth more and less is assumed; the factors at 0.342 and 0.418, summed in Octave, are
 * 1.261095 + 0.489485 and 1.715702 + 0.545598, 1.996628 at 0.38. */
static void the_band_of_friction_is_a_band_of_torque(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct figures figures = figures_now(&driven);
    double disc = value(&figures, "brake-torque", "front left disc");
    near_rel(value(&figures, "brake-torque-low", "front left disc"), 0.9 * disc, 1e-12);
    near_rel(value(&figures, "brake-torque-high", "front left disc"), 1.1 * disc, 1e-12);
    double drum = value(&figures, "brake-torque", "rear left drum");
    near_rel(value(&figures, "brake-torque-low", "rear left drum") / drum, 1.750580 / 1.996628,
             2e-6);
    near_rel(value(&figures, "brake-torque-high", "rear left drum") / drum, 2.261300 / 1.996628,
             2e-6);
    driven_finish(&driven);
}

static void a_drum_that_nearly_locks_says_so(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.usual.rear_left, "anchor", ANCHOR_PIN);
    driven_say(&driven, driven.usual.rear_left, "friction", 0.53); /* locks at 0.698 */
    driven_settle(&driven);
    struct figures figures = figures_now(&driven);
    assert_true(value(&figures, "brake-torque", "rear left drum") > 0);
    const struct figure *high = figures_find(&figures, "brake-torque-high", "rear left drum");
    assert_int_equal(high->state, FIGURE_NOT_COMPUTED);
    assert_int_equal(high->needs_count, 0);
    assert_string_equal(high->reason,
                        "a shoe comes too near to locking by itself at that friction");
    driven_finish(&driven);
}

/* 11.5e-6 * 0.1015 m * 200 K = 0.2335 mm, twice that at the tip; the drum is made of 203 mm. */
static void a_hot_drum_tells_what_it_costs(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.usual.rear_left, "drum diameter", 0.203);
    driven_say(&driven, driven.usual.rear_left, "pin distance", 0.08);
    driven_say(&driven, driven.usual.rear_left, "tip distance", 0.08);
    struct figures figures = figures_now(&driven);
    near(value(&figures, "drum-growth-hot", "rear left drum"), 0.23345e-3, 1e-9);
    /* shoes at 90 degC have grown by 70/200 of that */
    near(value(&figures, "tip-travel-hot", "rear left drum"), 2 * 0.23345e-3 * 130 / 200, 1e-9);
    assert_null(figures_find(&figures, "drum-growth-hot", "front left disc"));
    driven_finish(&driven);
}

/* DOT 4: 230 degC dry and 155 degC wet at least (49 CFR 571.116, S5.1.1 and S5.1.2). */
static void fluid_has_a_margin_new_and_old(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.fluid, "grade", GRADE_DOT4);
    driven_say(&driven, driven.usual.front_left, "disc mass", 6);
    struct figures figures = figures_now(&driven);
    double fluid = value(&figures, "fluid-after-ten-stops", "front left disc");
    assert_true(fluid > 25 &&
                fluid < value(&figures, "temperature-after-ten-stops", "front left disc"));
    near(value(&figures, "boiling-margin-dry", "front left disc"), 230 - fluid, 1e-9);
    near(value(&figures, "boiling-margin-wet", "front left disc"), 155 - fluid, 1e-9);
    driven_say(&driven, driven.fluid, "grade", GRADE_MINERAL);
    figures = figures_now(&driven);
    assert_null(figures_find(&figures, "boiling-margin-wet", "front left disc"));
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(drums_answer_friction_more_than_discs),
        cmocka_unit_test(the_band_of_friction_is_a_band_of_torque),
        cmocka_unit_test(a_drum_that_nearly_locks_says_so),
        cmocka_unit_test(a_hot_drum_tells_what_it_costs),
        cmocka_unit_test(fluid_has_a_margin_new_and_old),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
