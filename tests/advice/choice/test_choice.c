/* The search of bores: against fit, against going through all by hand, at the edge of a limit. */
#include "advice/choice/choice.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "advice/common/bores.h"
#include "advice/fitting/fit.h"
#include "advice_car.h"
#include "plain_car.h"
#include "support/sanitized.h"

#define INCH 0.0254

enum { MOST_BORES = 64 };

struct asking {
    struct advice_car car;
    struct choice_asked asked;
    int parts[COLUMN_AXES][2];
    struct length bores[MOST_BORES];
    int bore_count;
};

/* A car with every how manieth bore of the table; by advice_car_judged, which looks for no reasons.
 */
static void start(struct asking *asking, const char *file, const char *work, size_t every)
{
    size_t count;
    const struct bore_row *rows = bore_rows(&count);
    *asking = (struct asking){.car = advice_car_judged(file, work)};
    asking->asked.stop.m_s2 = asking->asked.effort.n = NAN;
    for (int limit = 0; limit < CHOICE_LIMITS; limit++)
        asking->asked.limits[limit] = NAN;
    for (size_t i = 0; i < count; i += every)
        asking->bores[asking->bore_count++] = rows[i].bore;
}

static void ask(struct asking *asking, const char *one, const char *other)
{
    int axis = asking->asked.axis_count++;
    asking->parts[axis][0] = advice_part(&asking->car, one);
    asking->parts[axis][1] = other != NULL ? advice_part(&asking->car, other) : -1;
    asking->asked.axes[axis] = (struct bore_axis){.parts = asking->parts[axis],
                                                  .part_count = other != NULL ? 2 : 1,
                                                  .bores = asking->bores,
                                                  .count = asking->bore_count};
}

static struct chosen *chosen_of(struct asking *asking)
{
    return choose(asking->car.system, asking->car.network, &asking->asked, asking->car.arena);
}

/* --- every car, by hand ---------------------------------------------------------------------- */

/* Goes through a product of two by solving each car as a whole. */
struct by_hand {
    struct column_car cars[MOST_BORES][MOST_BORES];
};

static struct by_hand *all_by_hand(struct asking *asking, const struct chosen *chosen)
{
    struct by_hand *all = ARENA_NEW(asking->car.arena, struct by_hand);
    struct system *tried = system_copy(asking->car.system, asking->car.arena);
    struct solution *room = solution_room(tried, asking->car.network, asking->car.arena);
    for (int a = 0; a < asking->bore_count; a++)
        for (int b = 0; b < asking->bore_count; b++) {
            for (int p = 0; p < asking->asked.axes[0].part_count; p++)
                bore_set(&tried->parts[asking->parts[0][p]], asking->bores[a]);
            for (int p = 0; p < asking->asked.axes[1].part_count; p++)
                bore_set(&tried->parts[asking->parts[1][p]], asking->bores[b]);
            all->cars[a][b] =
                plain_car(tried, asking->car.network, asking->asked.effort, chosen->stop, room);
            struct state state = state_usual();
            struct force foot = {all->cars[a][b].foot};
            if (!isinf(foot.n) &&
                !solve_effort_fits(tried, asking->car.network, &state, foot, room))
                all->cars[a][b].foot = INFINITY;
        }
    return all;
}

/* How much of the limit that it breaks most, by the words of choice.h alone. */
static double beyond(const struct column_car *car, const double *limits)
{
    double foot = (car->foot - limits[CHOICE_FOOT]) / limits[CHOICE_FOOT];
    double left = (limits[CHOICE_LEFT] - car->left) / limits[CHOICE_LEFT];
    double lost = (limits[CHOICE_LOST] - car->lost) / limits[CHOICE_LOST];
    double balance =
        (limits[CHOICE_BALANCE] - car->balance) / fmax(fabs(limits[CHOICE_BALANCE]), 1e-3);
    double most = fmax(fmax(foot, left), lost);
    return balance > 0 ? fmax(most, balance) : most;
}

static void count_and_rank_by_hand(const char *file, const char *master, const char *left,
                                   const char *right, double foot)
{
    struct asking asking;
    start(&asking, file, NULL, SANITIZED ? 5 : 2);
    ask(&asking, master, NULL);
    ask(&asking, left, right);
    asking.asked.limits[CHOICE_FOOT] = foot;
    struct chosen *chosen = chosen_of(&asking);
    const struct choice_group *group = &chosen->groups[0];
    struct by_hand *all = all_by_hand(&asking, chosen);
    long suits = 0;
    double nearest = INFINITY, best = INFINITY;
    for (int a = 0; a < asking.bore_count; a++)
        for (int b = 0; b < asking.bore_count; b++) {
            double over = beyond(&all->cars[a][b], group->limits);
            suits += !(over > 0);
            best = !(over > 0) && over < best ? over : best;
            nearest = over > 0 && over < nearest ? over : nearest;
        }
    assert_int_equal(group->count, (long)asking.bore_count * asking.bore_count);
    assert_int_equal(group->suits, suits);
    near(group->nearest[0].beyond, nearest, 1e-6);
    const int *at = group->nearest[0].at;
    near(beyond(&all->cars[at[0]][at[1]], group->limits), nearest, 1e-6);
    if (suits > 0)
        near(group->best[0].beyond, best, 1e-6);
    for (int i = 1; i < group->nearest_count; i++)
        assert_true(group->nearest[i].beyond >= group->nearest[i - 1].beyond);
    advice_car_finish(&asking.car);
}

static void counted_and_ranked_as_by_hand(void **state)
{
    (void)state;
    count_and_rank_by_hand("systems/village-van.ini", "brake master", "rear left drum",
                           "rear right drum", NAN);
    count_and_rank_by_hand("systems/village-van.ini", "brake master", "front left disc",
                           "front right disc", 150);
    count_and_rank_by_hand("systems/family-saloon.ini", "brake master", "rear left drum",
                           "rear right drum", NAN);
    count_and_rank_by_hand("systems/diagonal-hatch.ini", "brake master", "front left disc",
                           "front right disc", 80);
}

/* --- against fit ----------------------------------------------------------------------------- */

static const struct fit_line *line_of(const struct fit *fit, const char *id)
{
    const struct fit_line *least = NULL;
    for (int i = 0; i < fit->line_count; i++)
        if (strcmp(fit->lines[i].id, id) == 0 &&
            (least == NULL || fit->lines[i].after < least->after))
            least = &fit->lines[i];
    return least;
}

static void holds(const struct fit *fit, const char *id, double value)
{
    const struct fit_line *line = line_of(fit, id);
    if (line != NULL && isfinite(value))
        near(value, line->after, 1e-6 * fmax(fabs(line->after), 0.01));
}

static bool is_listed(const struct fit *fit, const struct figure *figure)
{
    for (int i = 0; i < fit->line_count; i++)
        if (strcmp(fit->lines[i].id, figure->row->id) == 0 &&
            strcmp(fit->lines[i].of, figure->of) == 0)
            return true;
    return false;
}

/* fit() asks only about circuits that a change is in; what another one leaves is as it was. */
static void holds_lost(const struct asking *asking, const struct fit *fit, double value)
{
    static const char id[] = "left-circuit-lost";
    const struct fit_line *line = line_of(fit, id);
    const struct figures *figures = &asking->car.result->figures;
    double least = line != NULL ? line->after : INFINITY;
    for (int i = 0; i < figures->count; i++)
        if (strcmp(figures->items[i].row->id, id) == 0 && !is_listed(fit, &figures->items[i]))
            least = fmin(least, figures->items[i].value);
    if (isfinite(value) && isfinite(least))
        near(value, least, 1e-6 * fmax(fabs(least), 0.01));
}

/* One random choice, through choose() with one bore a cylinder, and through fit. */
static void hold_choice(struct asking *asking, unsigned *seed)
{
    struct length one[COLUMN_AXES];
    struct work_file changes = {0};
    struct work_item items[2 * COLUMN_AXES];
    for (int a = 0; a < asking->asked.axis_count; a++) {
        one[a] = asking->bores[rand_r(seed) % asking->bore_count];
        asking->asked.axes[a].bores = &one[a];
        asking->asked.axes[a].count = 1;
        struct work_file more =
            fit_bore(asking->car.system, asking->parts[a], asking->asked.axes[a].part_count, one[a],
                     asking->car.arena);
        for (size_t i = 0; i < more.count; i++)
            items[changes.count++] = more.items[i];
    }
    changes.items = items;
    struct fit *fit = fit_of(asking->car.system, asking->car.network, &changes, (struct force){NAN},
                             asking->car.arena);
    asking->asked.limits[CHOICE_FOOT] = 1e6; /* so that there is a car to look at, suiting or not */
    struct chosen *chosen = chosen_of(asking);
    for (int g = 0; g < chosen->group_count; g++) {
        const struct choice_group *group = &chosen->groups[g];
        const struct choice_car *car = group->suits > 0 ? &group->best[0] : &group->nearest[0];
        assert_int_equal(group->count, 1);
        if (group->clutch) {
            holds(fit, "clutch-effort", car->values[CHOICE_CLUTCH_FOOT]);
            holds(fit, "bearing-travel-spare", car->values[CHOICE_LIFT]);
            continue;
        }
        holds(fit, "effort-for-same-stop", car->values[CHOICE_FOOT]);
        holds(fit, "pedal-left", car->values[CHOICE_LEFT]);
        holds(fit, "rear-lock-margin", car->values[CHOICE_BALANCE]);
        if (car->values[CHOICE_LOST] > 0)
            holds_lost(asking, fit, car->values[CHOICE_LOST]);
    }
}

static int choices_tried = SANITIZED ? 4 : 40;

static void it_agrees_with_fit(void **state)
{
    (void)state;
    unsigned seed = 15;
    static const char *const files[] = {"systems/village-van.ini", "systems/diagonal-hatch.ini",
                                        "systems/family-saloon.ini", "systems/servo-estate.ini"};
    for (int i = 0; i < choices_tried; i++) {
        struct asking asking;
        start(&asking, files[i % 4], NULL, 1);
        asking.bore_count = 30;
        ask(&asking, "brake master", NULL);
        ask(&asking, "rear left drum", "rear right drum");
        if (i % 3 == 0)
            ask(&asking, "front left disc", "front right disc");
        if (i % 8 == 0)
            ask(&asking, "clutch slave", NULL);
        hold_choice(&asking, &seed);
        advice_car_finish(&asking.car);
    }
}

/* What is chosen, written down as done, gives the figures that were promised. */
static void a_choice_typed_into_a_file_keeps_its_promise(void **state)
{
    (void)state;
    struct asking asking;
    start(&asking, "systems/village-van.ini", NULL, 3);
    ask(&asking, "brake master", NULL);
    ask(&asking, "rear left drum", "rear right drum");
    asking.asked.limits[CHOICE_BALANCE] = 0;
    asking.asked.limits[CHOICE_FOOT] = 300;
    struct chosen *chosen = chosen_of(&asking);
    const struct choice_group *group = &chosen->groups[0];
    assert_true(group->best_count == CHOICE_SHOWN);
    for (int i = 0; i < group->best_count; i++) {
        const struct choice_car *car = &group->best[i];
        char work[512];
        snprintf(work, sizeof work,
                 "[work]\ncar = Village van\ndate = 2026-11-20\n[replaced brake master]\n"
                 "bore = %.6f mm\n[replaced rear drum]\nbore = %.6f mm\n",
                 asking.bores[car->at[0]].m * 1e3, asking.bores[car->at[1]].m * 1e3);
        struct advice_car after = advice_car_after("systems/village-van.ini", work);
        const struct figures *figures = &after.result->figures;
        near_rel(car->values[CHOICE_LEFT], figures_find(figures, "pedal-left", NULL)->value, 1e-6);
        near_rel(car->values[CHOICE_BALANCE],
                 figures_find(figures, "rear-lock-margin", NULL)->value, 1e-6);
        near_rel(car->values[CHOICE_LOST],
                 fmin(figures_find(figures, "left-circuit-lost", "front circuit")->value,
                      figures_find(figures, "left-circuit-lost", "rear circuit")->value),
                 1e-6);
        advice_car_finish(&after);
    }
    advice_car_finish(&asking.car);
}

/* --- edges ----------------------------------------------------------------------------------- */

/* A limit at what one car does, a hair to either side: that car alone goes over. */
static void a_limit_moved_by_a_hair_moves_the_cars_at_its_edge(void **state)
{
    (void)state;
    struct asking asking;
    start(&asking, "systems/village-van.ini", NULL, 2);
    ask(&asking, "brake master", NULL);
    ask(&asking, "rear left drum", "rear right drum");
    asking.asked.limits[CHOICE_BALANCE] = 0;
    struct choice_group first = chosen_of(&asking)->groups[0];
    double edges[CHOICE_LIMITS];
    for (int limit = CHOICE_FOOT; limit <= CHOICE_LOST; limit++) {
        asking.asked.limits[limit] = first.before.values[limit];
        struct choice_group at = chosen_of(&asking)->groups[0];
        edges[limit] = at.suits > 0 ? at.best[0].values[limit] : first.before.values[limit];
        double hair = 1e-7 * edges[limit];
        asking.asked.limits[limit] = edges[limit] - hair;
        struct choice_group below = chosen_of(&asking)->groups[0];
        asking.asked.limits[limit] = edges[limit] + hair;
        struct choice_group above = chosen_of(&asking)->groups[0];
        long moved = limit == CHOICE_FOOT ? above.suits - below.suits : below.suits - above.suits;
        /* cars of the same master keep the same with the other circuit lost */
        assert_true(limit == CHOICE_LOST ? moved >= 1 : moved == 1);
        asking.asked.limits[limit] = NAN;
    }
    advice_car_finish(&asking.car);
}

/* Bores put in wrong on purpose, the maker's figures as limits (a car's bores may be written to
 * 0.01 mm, so within 0.05 %): the maker's bores come out, and no others. */
static void the_makers_bores_are_found_again(void **state)
{
    (void)state;
    static const struct {
        const char *file, *title;
        double master, wheel;
    } rows[] = {
        {"systems/village-van.ini", "Village van", INCH * 13 / 16, INCH * 3 / 4},
        {"systems/family-saloon.ini", NULL, 0, 0},
        {"systems/servo-estate.ini", NULL, 0, 0},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct asking asking;
        start(&asking, rows[i].file, NULL, 1);
        ask(&asking, "brake master", NULL);
        ask(&asking, "rear left drum", "rear right drum");
        struct choice_group makers = chosen_of(&asking)->groups[0];
        double stop = chosen_of(&asking)->stop.m_s2;
        struct system *wrong = system_copy(asking.car.system, asking.car.arena);
        double master = wrong->parts[asking.parts[0][0]].as.master.bore.m;
        double wheel = wrong->parts[asking.parts[1][0]].as.drum.bore.m;
        bore_set(&wrong->parts[asking.parts[0][0]], (struct length){INCH});
        bore_set(&wrong->parts[asking.parts[1][0]], (struct length){INCH * 5 / 8});
        bore_set(&wrong->parts[asking.parts[1][1]], (struct length){INCH * 5 / 8});
        asking.asked.stop.m_s2 = stop;
        for (int limit = CHOICE_FOOT; limit <= CHOICE_BALANCE; limit++)
            asking.asked.limits[limit] =
                isinf(makers.before.values[limit])
                    ? NAN
                    : makers.before.values[limit] * (limit == CHOICE_FOOT ? 1 + 5e-4 : 1 - 5e-4);
        struct chosen *chosen = choose(wrong, asking.car.network, &asking.asked, asking.car.arena);
        const struct choice_group *group = &chosen->groups[0];
        bool found = false;
        for (int k = 0; k < group->best_count; k++)
            found = found || (fabs(asking.bores[group->best[k].at[0]].m - master) < 1e-5 &&
                              fabs(asking.bores[group->best[k].at[1]].m - wheel) < 1e-5);
        assert_true(found);
        assert_int_equal(group->suits, 1);
        assert_true(rows[i].title == NULL ||
                    (fabs(rows[i].master - master) < 1e-9 && fabs(rows[i].wheel - wheel) < 1e-9));
        advice_car_finish(&asking.car);
    }
}

/* The map of a picture at the bores that were tried, each a step of it: the same as the table. */
static void the_map_is_the_table(void **state)
{
    (void)state;
    enum { EACH = 5, EVERY = (CHOICE_MAP - 1) / (EACH - 1) };
    struct asking asking;
    start(&asking, "systems/village-van.ini", NULL, 1);
    for (int i = 0; i < EACH; i++)
        asking.bores[i].m = 0.016 + 0.0015 * i;
    asking.bore_count = EACH;
    asking.asked.map = true;
    ask(&asking, "brake master", NULL);
    ask(&asking, "rear left drum", "rear right drum");
    const struct choice_group group = chosen_of(&asking)->groups[0];
    assert_non_null(group.map);
    struct by_hand *all = all_by_hand(&asking, chosen_of(&asking));
    long suits = 0;
    for (int a = 0; a < EACH; a++)
        for (int b = 0; b < EACH; b++) {
            bool tried = group.map->tried[a * EACH + b];
            suits += tried;
            assert_int_equal(tried, group.map->suits[a * EVERY][b * EVERY]);
            assert_int_equal(tried, !(beyond(&all->cars[a][b], group.limits) > 0));
            near_rel(group.map->foot[a * EVERY][b * EVERY], all->cars[a][b].foot, 1e-6);
        }
    assert_int_equal(suits, group.suits);
    assert_true(suits > 0 && suits < EACH * EACH);
    advice_car_finish(&asking.car);
}

/* Brake and clutch share no fluid under pressure: their products stay apart. */
static void brake_and_clutch_are_not_multiplied(void **state)
{
    (void)state;
    struct asking asking;
    start(&asking, "systems/village-van.ini", NULL, 1);
    ask(&asking, "brake master", NULL);
    ask(&asking, "clutch master", NULL);
    ask(&asking, "clutch slave", NULL);
    struct chosen *chosen = chosen_of(&asking);
    assert_int_equal(chosen->group_count, 2);
    assert_int_equal(chosen->groups[0].count, asking.bore_count);
    assert_int_equal(chosen->groups[1].count, asking.bore_count * asking.bore_count);
    assert_true(chosen->groups[1].clutch && chosen->groups[1].suits > 0);
    advice_car_finish(&asking.car);
}

/* When none suits, the limit that stands in the way is the one without which some would. */
static void what_stands_in_the_way_is_named(void **state)
{
    (void)state;
    struct asking asking;
    start(&asking, "systems/village-van.ini", NULL, 2);
    ask(&asking, "brake master", NULL);
    ask(&asking, "rear left drum", "rear right drum");
    asking.asked.limits[CHOICE_FOOT] = 90;
    struct choice_group none = chosen_of(&asking)->groups[0];
    assert_int_equal(none.suits, 0);
    assert_true(none.alone[CHOICE_FOOT] > 0);
    asking.asked.limits[CHOICE_FOOT] = 90 + none.shift[CHOICE_FOOT] * (1 + 1e-6);
    assert_int_equal(chosen_of(&asking)->groups[0].suits, 1);
    asking.asked.limits[CHOICE_FOOT] = 1e6;
    /* all that broke it alone, and those that suit when it is not asked at all */
    assert_true(chosen_of(&asking)->groups[0].suits <= none.alone[CHOICE_FOOT]);
    advice_car_finish(&asking.car);
}

/* Without what it takes nothing is said to suit. */
static void what_is_not_known_suits_nobody(void **state)
{
    (void)state;
    struct asking asking;
    start(&asking, "systems/village-van.ini", NULL, 5);
    struct system *unknown = system_copy(asking.car.system, asking.car.arena);
    unknown->parts[system_first(unknown, KIND_VEHICLE)].as.vehicle.mass.kg = NAN;
    ask(&asking, "brake master", NULL);
    struct chosen *chosen = choose(unknown, asking.car.network, &asking.asked, asking.car.arena);
    assert_int_equal(chosen->groups[0].suits, 0);
    assert_non_null(chosen->groups[0].lacks);
    advice_car_finish(&asking.car);
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(counted_and_ranked_as_by_hand),
        cmocka_unit_test(it_agrees_with_fit),
        cmocka_unit_test(a_choice_typed_into_a_file_keeps_its_promise),
        cmocka_unit_test(a_limit_moved_by_a_hair_moves_the_cars_at_its_edge),
        cmocka_unit_test(the_makers_bores_are_found_again),
        cmocka_unit_test(the_map_is_the_table),
        cmocka_unit_test(brake_and_clutch_are_not_multiplied),
        cmocka_unit_test(what_stands_in_the_way_is_named),
        cmocka_unit_test(what_is_not_known_suits_nobody),
    };
    if (argc > 1)
        choices_tried = atoi(argv[1]);
    return cmocka_run_group_tests(tests, NULL, NULL);
}
