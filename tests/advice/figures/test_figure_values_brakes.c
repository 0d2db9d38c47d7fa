#include "advice/figures/figures.h"

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
    driven_say(&driven, driven.usual.front_left, "cooling time", 500);
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

/* Light enough a disc comes above 600 degC in ten stops, where nothing is known of its iron. */
static void above_600_degrees_the_figures_say_that_their_law_ends(void **state)
{
    (void)state;
    static const char *const ids[] = {"temperature-after-ten-stops", "fluid-after-ten-stops",
                                      "boiling-margin-dry", "boiling-margin-wet"};
    struct driven_car driven = driven_start();
    int disc = driven.usual.front_left;
    driven_say(&driven, driven.fluid, "grade", GRADE_DOT4);
    driven_say(&driven, disc, "cooling time", 36000);
    for (int hot = 0; hot < 2; hot++) {
        driven_say(&driven, disc, "disc mass", hot ? 2.5 : 12);
        struct figures figures = figures_now(&driven);
        double most = value(&figures, ids[0], "front left disc");
        assert_true(hot ? most > 600 : most < 600);
        for (int i = 0; i < 4; i++) {
            const struct figure *figure = figures_find(&figures, ids[i], "front left disc");
            assert_true(figure->holds != 0);
            assert_int_equal(figure->holds_broken != 0, hot);
        }
    }
    driven_finish(&driven);
}

/* 240 by 10 mm of iron without a hole: pi/4 * 0.24^2 * 0.010 * 7200 = 3.257 kg; cooled from both
 * faces at 40 W/(m2 K): 3.257 * 480/(40 * 2 * 0.04524) = 432 s. */
static void a_disc_weighs_as_a_plate_and_cools_by_its_mass(void **state)
{
    (void)state;
    struct part part;
    struct arena *arena = arena_create();
    part_blank(&part, KIND_DISC, arena);
    part.as.disc.disc_outer.m = 0.24;
    part.as.disc.pad_height.m = 0.04;
    part.as.disc.thickness.m = 0.010;
    part_assume(&part);
    near(part.as.disc.mass.kg, 3.257, 1e-3);
    near(part.as.disc.cooling.s, 432, 0.1);
    part_blank(&part, KIND_DISC, arena);
    part.as.disc.disc_outer.m = 0.24;
    part.as.disc.pad_height.m = 0.04;
    part.as.disc.thickness.m = 0.020; /* may have vents */
    part_assume(&part);
    near_unknown(part.as.disc.mass.kg);
    near_unknown(part.as.disc.cooling.s);
    part.as.disc.mass.kg = 6; /* weighed */
    part_assume(&part);
    near(part.as.disc.cooling.s, 795.8, 0.1);
    arena_destroy(arena);
}

/* 228.6 mm inside, lining 44 mm wide: rim pi * 0.2366 * 0.008 * 0.05867 m3 and face pi/4 * 0.2286^2
 * * 0.006 m3 of 7200 kg/m3: 2.512 + 1.773 = 4.285 kg; outside pi * 0.2446 * 0.05867 + pi/4 *
 * 0.2446^2 = 0.09207 m2: 4.285 * 480/(30 * 0.09207) = 744.6 s. */
static void a_drum_weighs_rim_and_face_and_cools_by_its_mass(void **state)
{
    (void)state;
    struct part part;
    struct arena *arena = arena_create();
    part_blank(&part, KIND_DRUM, arena);
    part.as.drum.diameter.m = 0.2286;
    part.as.drum.lining_width.m = 0.044;
    part_assume(&part);
    near(part.as.drum.mass.kg, 4.285, 1e-3);
    near(part.as.drum.cooling.s, 744.6, 0.2);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(drums_answer_friction_more_than_discs),
        cmocka_unit_test(the_band_of_friction_is_a_band_of_torque),
        cmocka_unit_test(a_drum_that_nearly_locks_says_so),
        cmocka_unit_test(a_hot_drum_tells_what_it_costs),
        cmocka_unit_test(fluid_has_a_margin_new_and_old),
        cmocka_unit_test(above_600_degrees_the_figures_say_that_their_law_ends),
        cmocka_unit_test(a_disc_weighs_as_a_plate_and_cools_by_its_mass),
        cmocka_unit_test(a_drum_weighs_rim_and_face_and_cools_by_its_mass),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
