#include "advice/figures/weighing.h"

#include <math.h>
#include <string.h>

#include "support/driven_car.h"
#include "support/near.h"

/* Brute force on the driven car: every quantity, given or assumed, is moved by a hundredth and all
 * figures are worked out anew. What changes is an input; how many there are is what says whether a
 * figure is mostly assumed. */
static void whatever_moves_a_figure_is_an_input(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct arena *arena = driven.car.arena;
    struct figures figures =
        figures_of(driven.car.system, driven.network, (struct force){NAN}, arena);
    struct weighing weighing =
        weighing_of(driven.car.system, driven.network, (struct force){NAN}, &figures, arena);
    struct situation *situation =
        situation_room(driven.car.system, driven.network, (struct force){NAN}, arena);
    int moved = 0;
    for (size_t k = 0; k < weighing.keys.count; k++) {
        const struct moved_key *key = &weighing.keys.items[k];
        struct part *part = car_part(&driven.car, key->part);
        double base = key_value(part, key->key);
        if (key->key->form == FORM_CHOICE || !(base > 0) || base * 1.01 > key->key->most)
            continue;
        key_set(part, key->key, base * 1.01);
        situation_solve(situation);
        for (int i = 0; i < figures.count; i++) {
            const struct figure *figure = &figures.items[i];
            double now = figure->row->get(situation, figure->subject, figure->sub);
            if (isnan(figure->value) || fabs(now - figure->value) <= 1e-9 * fabs(now))
                continue;
            const struct weight *weight = weighing_weight(&weighing, k, i);
            /* a drum with its arms, which follow by rule, only gets larger: its shape stays */
            if (k < weighing.given && fabs(weight->more - figure->value) <= 1e-9 * figure->value)
                continue;
            assert_true(weight->moves && !weight->beyond);
            /* what follows from a given value by rule moves with it; else both are the same */
            if (k >= weighing.given)
                near_rel(weight->more, now, 1e-12);
            moved++;
        }
        key_set(part, key->key, base);
    }
    assert_true(moved > 600);
    driven_finish(&driven);
}

static void a_figure_whose_inputs_are_mostly_assumed_says_so(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct figures figures =
        figures_of(driven.car.system, driven.network, (struct force){NAN}, driven.car.arena);
    int mostly = 0, partly = 0;
    for (int i = 0; i < figures.count; i++) {
        const struct figure *figure = &figures.items[i];
        assert_true(figure->assumed_share >= 0 && figure->assumed_share <= 1);
        assert_true(figure->assumed_here <= figure->assumed_count);
        if (figure->assumed_count == 0)
            assert_false(figure_mostly_assumed(figure));
        mostly += figure_mostly_assumed(figure);
        partly += figure->state == FIGURE_ASSUMED && !figure_mostly_assumed(figure);
    }
    assert_true(mostly > 0 && partly > 0);
    const struct figure *run = figures_find(&figures, "pipe-run-longest", NULL);
    assert_int_equal(run->assumed_here, 0);
    assert_true(figures_find(&figures, "deceleration", NULL)->given_here > 5);
    driven_finish(&driven);
}

/* A stepped master: its small bore alone delivers above the take-up pressure. */
static void a_stepped_master_says_which_bore_delivers(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int master = driven.usual.master;
    struct branch branch;
    struct solution *solution = solution_room(driven.car.system, driven.network, driven.car.arena);
    struct state usual = state_usual();
    solve(driven.car.system, driven.network, &usual, solution);
    assert_false(branch_of(driven.car.system, driven.network, solution, master, &branch));
    driven_say(&driven, master, "large bore", 28e-3);
    const double take_up[] = {5e5, 300e5};
    for (int i = 0; i < 2; i++) {
        driven_say(&driven, master, "take-up pressure", take_up[i]);
        solve(driven.car.system, driven.network, &usual, solution);
        assert_true(branch_of(driven.car.system, driven.network, solution, master, &branch));
        assert_int_equal(branch.index, i == 0);
        near(i == 0 ? branch.from : branch.to, take_up[i], 1e-6);
    }
    driven_finish(&driven);
}

/* A bar with arms of 30 and 10 mm gives the rod of the first a quarter, that of the second three
 * quarters. A servo that cuts in a hair above its share does not help, a hair below it does. */
static void a_servo_on_a_balance_bar_gets_its_share(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const int other = car_add(&driven.car, KIND_MASTER, "second master");
    struct part *lever = car_part(&driven.car, driven.brake_pedal);
    lever->as.pedal.bar_first.m = 30e-3;
    lever->as.pedal.bar_second.m = 10e-3;
    driven_settle(&driven);
    struct solution *solution = solution_room(driven.car.system, driven.network, driven.car.arena);
    const struct force effort = {100};
    solution->pedals[driven.brake_pedal].effort = effort;
    lever = car_part(&driven.car, driven.brake_pedal);
    const double whole = pedal_rod_force(&lever->as.pedal, effort).n, shares[] = {0.25, 0.75};
    for (int place = 0; place < 2; place++) {
        const int works[2] = {place == 0 ? driven.servo : other, place == 0 ? other : driven.servo};
        lever->as.pedal.works = car_names(&driven.car, 2, works);
        for (int helps = 0; helps < 2; helps++) {
            struct branch branch;
            driven_say(&driven, driven.servo, "cut in",
                       whole * shares[place] * (helps ? 0.99 : 1.01));
            assert_true(
                branch_of(driven.car.system, driven.network, solution, driven.servo, &branch));
            assert_int_equal(branch.index, helps);
        }
    }
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(whatever_moves_a_figure_is_an_input),
        cmocka_unit_test(a_stepped_master_says_which_bore_delivers),
        cmocka_unit_test(a_servo_on_a_balance_bar_gets_its_share),
        cmocka_unit_test(a_figure_whose_inputs_are_mostly_assumed_says_so),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
