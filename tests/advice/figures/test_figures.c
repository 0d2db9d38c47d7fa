#include "advice/figures/figures.h"

#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "advice/checks/finding.h"
#include "base/text.h"
#include "support/driven_car.h"
#include "support/near.h"

static struct figures all_figures(const struct driven_car *driven, double effort)
{
    return figures_of(driven->car.system, driven->network, (struct force){effort},
                      driven->car.arena);
}

static double value(const struct figures *figures, const char *id, const char *of)
{
    const struct figure *figure = figures_find(figures, id, of);
    assert_non_null(figure);
    return figure->value;
}

static void every_row_is_complete_and_has_an_id_of_its_own(void **state)
{
    (void)state;
    size_t count;
    const struct figure_row *rows = figure_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_non_null(rows[i].get);
        assert_true(strlen(rows[i].title) > 0 && strlen(rows[i].formula) > 0);
        assert_true(strlen(rows[i].limits) > 0 && strlen(rows[i].anchor) > 0);
        assert_ptr_equal(figure_row(rows[i].id), &rows[i]);
        assert_true(rows[i].dimension < DIMENSION_COUNT);
        for (const char *letter = rows[i].id; *letter != '\0'; letter++)
            assert_true(islower((unsigned char)*letter) || *letter == '-');
    }
    assert_null(figure_row("no-such-figure"));
}

/* Whether a page has a heading whose slug is the anchor. */
static bool has_heading(FILE *page, const char *anchor)
{
    char line[512];
    rewind(page);
    while (fgets(line, sizeof line, page) != NULL) {
        if (line[0] != '#')
            continue;
        const char *from = line + strspn(line, "# ");
        char slug[512];
        size_t length = 0;
        for (; *from != '\0' && *from != '\n'; from++)
            slug[length++] = *from == ' ' ? '-' : (char)tolower((unsigned char)*from);
        slug[length] = '\0';
        if (strcmp(slug, anchor) == 0)
            return true;
    }
    return false;
}

static void every_anchor_is_a_heading_of_the_physics_page(void **state)
{
    (void)state;
    const char *root = getenv("SOURCE_ROOT");
    char path[4096];
    snprintf(path, sizeof path, "%s/docs/physics.md", root != NULL ? root : ".");
    FILE *page = fopen(path, "r");
    assert_non_null(page);
    size_t count;
    const struct figure_row *rows = figure_rows(&count);
    for (size_t i = 0; i < count; i++)
        if (!has_heading(page, rows[i].anchor))
            fail_msg("docs/physics.md has no heading for #%s", rows[i].anchor);
    assert_false(has_heading(page, "no-such-heading"));
    fclose(page);
}

/* It has no balance bar, no valves, and its linings are new; knocked back wants a run-out. It is no
 * motorcycle; its rear wheels lock first on the dry road, the front ones on the wet one. */
static bool is_of_other_cars(const char *id)
{
    static const char *const ids[] = {"bar-tilt",
                                      "front-locks-at",
                                      "front-locks-effort",
                                      "rear-locks-at-wet",
                                      "rear-locks-effort-wet",
                                      "rear-lifts-at",
                                      "deceleration-by-it",
                                      "its-wheels-lock-at",
                                      "effort-that-locks",
                                      "load-at-lock",
                                      "its-wheels-lock-at-wet",
                                      "effort-that-locks-wet",
                                      "pedal-travel-new",
                                      "pedal-left-new",
                                      "pedal-travel-knocked-back",
                                      "pedal-left-knocked-back",
                                      "residual-pressure",
                                      "release-pressure",
                                      "pad-pressure",
                                      "pad-pressure-most",
                                      "valve-knee",
                                      "shuttle-difference",
                                      "shuttle-difference-lost"};
    for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++)
        if (strcmp(ids[i], id) == 0)
            return true;
    return false;
}

static void a_full_car_has_every_figure_that_it_can_have(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct figures figures = all_figures(&driven, NAN);
    size_t count;
    const struct figure_row *rows = figure_rows(&count);
    for (size_t i = 0; i < count; i++) {
        if ((figures_find(&figures, rows[i].id, NULL) == NULL) != is_of_other_cars(rows[i].id))
            fail_msg("%s", rows[i].id);
    }
    for (int i = 0; i < figures.count; i++) {
        const struct figure *figure = &figures.items[i];
        bool computed = figure->state != FIGURE_NOT_COMPUTED;
        assert_int_equal(isfinite(figure->value) != 0, computed);
        if (!computed)
            assert_true(figure->needs_count > 0 || figure->reason != NULL);
        else
            assert_int_equal(figure->state == FIGURE_ASSUMED, figure->assumed_count > 0);
    }
    driven_finish(&driven);
}

static void figures_are_named_by_what_they_are_of(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct figures figures = all_figures(&driven, NAN);
    assert_non_null(figures_find(&figures, "line-pressure", "front circuit"));
    assert_non_null(figures_find(&figures, "line-pressure", "Front Circuit"));
    assert_null(figures_find(&figures, "line-pressure", "clutch circuit"));
    assert_non_null(figures_find(&figures, "brake-torque", "rear left drum"));
    assert_null(figures_find(&figures, "brake-torque-reverse", "front left disc"));
    assert_null(figures_find(&figures, "clamp-force", "rear left drum"));
    assert_non_null(figures_find(&figures, "volume-by-cause", "front circuit, caliper bodies"));
    assert_null(figures_find(&figures, "volume-by-cause", "rear circuit, caliper bodies"));
    assert_null(figures_find(&figures, "pedal-travel", "clutch pedal"));
    assert_string_equal(figures_find(&figures, "deceleration", NULL)->of, "");
    driven_finish(&driven);
}

static void figures_that_are_not_of_this_car_are_left_out(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    /* No servo: the pedal works the master, the servo becomes a joint that nothing is joined to. */
    car_part(&driven.car, driven.brake_pedal)->as.pedal.works =
        car_names(&driven.car, 1, &driven.usual.master);
    struct part *servo = car_part(&driven.car, driven.servo);
    part_blank(servo, KIND_JOINT, driven.car.arena);
    servo->name = "spare joint";
    struct part *parking = car_part(&driven.car, driven.parking);
    part_blank(parking, KIND_JOINT, driven.car.arena);
    parking->name = "other joint";
    driven_settle(&driven);
    struct figures figures = all_figures(&driven, NAN);
    assert_null(figures_find(&figures, "unassisted-pressure", NULL));
    assert_null(figures_find(&figures, "deceleration-unassisted", NULL));
    assert_null(figures_find(&figures, "effort-for-half-g-unassisted", NULL));
    assert_null(figures_find(&figures, "hand-brake-slope", NULL));
    assert_non_null(figures_find(&figures, "deceleration", NULL));
    driven_finish(&driven);
}

static void volumes_of_the_causes_add_up_to_the_volume_taken(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct figures figures = all_figures(&driven, NAN);
    const char *circuits[] = {"front circuit", "rear circuit"};
    for (int c = 0; c < 2; c++) {
        double sum = 0;
        for (int i = 0; i < figures.count; i++)
            if (strcmp(figures.items[i].row->id, "volume-by-cause") == 0 &&
                text_begins(figures.items[i].of, circuits[c]))
                sum += figures.items[i].value;
        near_rel(value(&figures, "volume-taken", circuits[c]), sum, 1e-12);
    }
    driven_finish(&driven);
}

static void an_effort_that_is_asked_for_goes_before_the_pedals_own(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct figures own = all_figures(&driven, NAN), asked = all_figures(&driven, 300);
    near(value(&own, "pedal-effort", NULL), 220, 0);
    near(value(&asked, "pedal-effort", NULL), 300, 0);
    assert_true(value(&asked, "line-pressure", NULL) > value(&own, "line-pressure", NULL));
    near_rel(value(&asked, "clutch-effort", NULL), value(&own, "clutch-effort", NULL), 0);
    driven_finish(&driven);
}

/* The stop that efforts are compared for is the one that the limits judge. */
static void the_effort_for_half_g_makes_the_asked_stop(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct figures figures = all_figures(&driven, NAN);
    double effort = value(&figures, "effort-for-half-g", NULL);
    struct figures at_it = all_figures(&driven, effort);
    near(value(&at_it, "deceleration", NULL), limit_value("asked-stop"), 1e-6);
    near(value(&at_it, "deceleration", NULL), 0.5 * 9.80665, 1e-6);
    effort = value(&figures, "effort-for-half-g-unassisted", NULL);
    at_it = all_figures(&driven, effort);
    near(value(&at_it, "deceleration-unassisted", NULL), 0.5 * 9.80665, 1e-6);
    driven_finish(&driven);
}

static void an_effort_that_the_travel_does_not_let_through_has_a_reason(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.brake_pedal, "travel", 45e-3);
    struct figures figures = all_figures(&driven, NAN);
    const struct figure *effort = figures_find(&figures, "effort-for-half-g", NULL);
    assert_int_equal(effort->state, FIGURE_NOT_COMPUTED);
    assert_int_equal(effort->needs_count, 0);
    assert_non_null(effort->reason);
    assert_non_null(strstr(effort->reason, "travel of the pedal"));
    near(value(&figures, "pedal-left", NULL), 0, 0);
    driven_finish(&driven);
}

static const char *reason_of(const struct figures *figures, const char *id, const char *of)
{
    const struct figure *figure = figures_find(figures, id, of);
    assert_non_null(figure);
    assert_int_equal(figure->state, FIGURE_NOT_COMPUTED);
    assert_non_null(figure->reason);
    return figure->reason;
}

static void what_no_pedal_works_and_no_circuit_reaches_says_so(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int disc = car_add(&driven.car, KIND_DISC, "lone disc");
    int slave = car_add(&driven.car, KIND_SLAVE, "lone slave");
    car_part(&driven.car, disc)->as = car_part(&driven.car, driven.usual.front_left)->as;
    car_part(&driven.car, slave)->as = car_part(&driven.car, driven.usual.slave)->as;
    driven_settle(&driven);
    struct figures figures = all_figures(&driven, 300);
    const char *const ids[][2] = {{"brake-torque", "lone disc"},
                                  {"clamp-force", "lone disc"},
                                  {"clutch-effort", "lone slave"}};
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++)
        assert_string_equal(reason_of(&figures, ids[i][0], ids[i][1]), "no circuit reaches it");
    car_part(&driven.car, driven.servo)->as.servo.works = -1;
    car_part(&driven.car, driven.brake_pedal)->as.pedal.works.count = 0;
    driven_settle(&driven);
    figures = all_figures(&driven, 300);
    const char *none = "no pedal is described that works its master";
    assert_string_equal(reason_of(&figures, "deceleration", NULL), none);
    assert_string_equal(reason_of(&figures, "line-pressure", NULL), none);
    assert_string_equal(reason_of(&figures, "wheel-pressure", "front left disc"), none);
    driven_finish(&driven);
}

/* Rear: 2.6 m of pipe, 0.31 m of hose, 0.7 m of pipe to the left. Front: 0.7, 1.4 and 0.36 m. */
static void the_longest_run_is_to_the_farthest_wheel(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct figures figures = all_figures(&driven, NAN);
    near(value(&figures, "pipe-run-longest", "rear circuit"), 3.61, 1e-12);
    near(value(&figures, "pipe-run-longest", "front circuit"), 2.46, 1e-12);
    driven_finish(&driven);
}

/* Two fixed calipers with 2 of 48 mm (1809.557 mm2), 7 and 5 mm of pad: both pads of each count. */
static void pads_draw_fluid_as_they_wear(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.usual.front_left, "pad left", 7e-3);
    driven_say(&driven, driven.usual.front_right, "pad left", 5e-3);
    struct figures figures = all_figures(&driven, NAN);
    near_rel(value(&figures, "reservoir-volume-needed", NULL), 2 * 1809.557e-6 * 12e-3, 1e-6);
    driven_finish(&driven);
}

/* At what the brakes give, or where the first axle locks; the values by hand are in test_road.c. */
static void stopping_takes_the_lesser_of_brakes_and_road(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct figures figures = all_figures(&driven, NAN);
    double a = value(&figures, "deceleration", NULL), v = 50 / 3.6;
    assert_true(a < 0.8 * 9.80665);
    near(value(&figures, "stopping-distance", NULL), v + v * 0.15 + v * v / (2 * a) - a * 0.09 / 24,
         1e-9);
    driven_say(&driven, driven.usual.vehicle, "grip", 0.3);
    figures = all_figures(&driven, NAN);
    a = value(&figures, "front-locks-at", NULL);
    assert_true(a < 0.3 * 9.80665);
    near(value(&figures, "stopping-distance", NULL), v + v * 0.15 + v * v / (2 * a) - a * 0.09 / 24,
         1e-9);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_row_is_complete_and_has_an_id_of_its_own),
        cmocka_unit_test(every_anchor_is_a_heading_of_the_physics_page),
        cmocka_unit_test(a_full_car_has_every_figure_that_it_can_have),
        cmocka_unit_test(figures_are_named_by_what_they_are_of),
        cmocka_unit_test(figures_that_are_not_of_this_car_are_left_out),
        cmocka_unit_test(volumes_of_the_causes_add_up_to_the_volume_taken),
        cmocka_unit_test(an_effort_that_is_asked_for_goes_before_the_pedals_own),
        cmocka_unit_test(the_effort_for_half_g_makes_the_asked_stop),
        cmocka_unit_test(an_effort_that_the_travel_does_not_let_through_has_a_reason),
        cmocka_unit_test(the_longest_run_is_to_the_farthest_wheel),
        cmocka_unit_test(pads_draw_fluid_as_they_wear),
        cmocka_unit_test(stopping_takes_the_lesser_of_brakes_and_road),
        cmocka_unit_test(what_no_pedal_works_and_no_circuit_reaches_says_so),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
