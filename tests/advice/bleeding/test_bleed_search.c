/* Orders on nets that are made up: the rule, and what the simulation makes of it. */
#include "advice/bleeding/bleed_search.h"

#include <math.h>
#include <string.h>

#include "support/near.h"

#define ML 1e-6

/* A tree: a shared pipe, then branches with a chamber and nipple each, bore 3.34 mm. */
static struct purge_net *tree(struct arena *arena, double shared, const double *pipes,
                              const double *pots, int branches)
{
    struct purge_net *net = ARENA_NEW(arena, struct purge_net);
    size_t most = (size_t)branches + 1;
    double area = acos(-1.0) / 4 * 3.34e-3 * 3.34e-3;
    net->legs = ARENA_ARRAY(arena, most, struct purge_leg);
    net->pots = ARENA_ARRAY(arena, most, struct purge_pot);
    net->nipples = ARENA_ARRAY(arena, most, struct purge_nipple);
    net->density = 1050;
    net->viscosity = 15e-6;
    net->tension = 0.033;
    net->legs[net->leg_count++] = (struct purge_leg){
        .above = -1, .part = -1, .volume = shared, .bore = 3.34e-3, .length = shared / area};
    for (int i = 0; i < branches; i++) {
        net->legs[net->leg_count] = (struct purge_leg){
            .above = 0, .part = -1, .volume = pipes[i], .bore = 3.34e-3, .length = pipes[i] / area};
        net->pots[net->pot_count] =
            (struct purge_pot){.leg = net->leg_count, .behind = -1, .part = -1, .volume = pots[i]};
        net->nipples[net->nipple_count++] =
            (struct purge_nipple){net->pot_count++, net->leg_count++, {-1, -1}};
    }
    return net;
}

static void fill_with_air(struct purge_net *net)
{
    for (int i = 0; i < net->leg_count; i++) {
        net->legs[i].air = net->legs[i].volume;
    }
    for (int i = 0; i < net->pot_count; i++) {
        net->pots[i].air = net->pots[i].volume;
    }
}

static struct purge_way by_pedal(bool shut)
{
    return (struct purge_way){.method = METHOD_PEDAL,
                              .shut_under_pressure = shut,
                              .stroke = 8 * ML,
                              .stroke_time = 1,
                              .pause_time = 2,
                              .reservoir = NAN,
                              .most_strokes = 400};
}

static void the_rule_takes_the_most_air_first_and_of_equal_ways_the_longer(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const double pipes[] = {5 * ML, 20 * ML, 10 * ML}, pots[] = {2 * ML, 2 * ML, 2 * ML};
    struct purge_net *net = tree(arena, 10 * ML, pipes, pots, 3);
    struct purge_turn turns[6];
    fill_with_air(net);
    assert_int_equal(bleed_rule_order(net, NULL, turns), 3);
    assert_int_equal(turns[0].nipple, 1);
    assert_int_equal(turns[1].nipple, 2);
    assert_int_equal(turns[2].nipple, 0);
    near(bleed_air_on_way(net, 1), 32 * ML, 1e-12);
    /* no air anywhere: by length; air at the near one alone: that one first */
    for (int i = 0; i < 4; i++) {
        net->legs[i].air = 0;
    }
    for (int i = 0; i < 3; i++) {
        net->pots[i].air = 0;
    }
    bleed_rule_order(net, NULL, turns);
    assert_int_equal(turns[0].nipple, 1);
    assert_int_equal(turns[2].nipple, 0);
    net->pots[0].air = 1 * ML;
    bleed_rule_order(net, NULL, turns);
    assert_int_equal(turns[0].nipple, 0);
    arena_destroy(arena);
}

static void nipples_that_stay_shut_are_in_no_order(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const double pipes[] = {5 * ML, 20 * ML}, pots[] = {2 * ML, 2 * ML};
    struct purge_net *net = tree(arena, 10 * ML, pipes, pots, 2);
    const bool shut[] = {false, true};
    struct purge_turn turns[4];
    struct purge_way way = by_pedal(false);
    fill_with_air(net);
    assert_int_equal(bleed_rule_order(net, shut, turns), 1);
    assert_int_equal(turns[0].nipple, 0);
    struct bleed_choice choice = bleed_best_order(net, &way, shut, arena);
    assert_int_equal(choice.count, 1);
    const bool all[] = {true, true};
    assert_int_equal(bleed_best_order(net, &way, all, arena).count, 0);
    arena_destroy(arena);
}

static void the_far_half_of_a_caliper_comes_before_and_after_the_near_one(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const double pipes[] = {5 * ML, 20 * ML}, pots[] = {15 * ML, 15 * ML};
    struct purge_net *net = tree(arena, 10 * ML, pipes, pots, 2);
    struct purge_turn turns[4];
    /* both on one pipe: the second behind the first */
    net->pots[1].leg = net->nipples[1].leg = net->pots[0].leg;
    net->pots[1].behind = 0;
    net->leg_count = 2;
    fill_with_air(net);
    assert_int_equal(bleed_rule_order(net, NULL, turns), 3);
    assert_int_equal(turns[0].nipple, 1);
    assert_int_equal(turns[1].nipple, 0);
    assert_int_equal(turns[2].nipple, 1);
    arena_destroy(arena);
}

/* A master's outlet or a high point, which has a nipple and no chamber, comes before the wheels. */
static void nipples_on_the_way_come_first(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const double pipes[] = {5 * ML, 20 * ML}, pots[] = {2 * ML, 2 * ML};
    struct purge_net *net = tree(arena, 10 * ML, pipes, pots, 2);
    struct purge_turn turns[6];
    net->nipples[net->nipple_count++] = (struct purge_nipple){-1, 0, {-1, -1}};
    fill_with_air(net);
    assert_int_equal(bleed_rule_order(net, NULL, turns), 3);
    assert_int_equal(turns[0].nipple, 2);
    assert_int_equal(turns[1].nipple, 1);
    arena_destroy(arena);
}

/* Whatever is chosen stands beside the best of all orders, in either practice; when the nipple is
 * shut early, the order matters. */
static void the_choice_stands_beside_the_best_of_all_orders(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const double pipes[] = {12 * ML, 22 * ML, 6 * ML, 15 * ML};
    const double pots[] = {3 * ML, 2 * ML, 40 * ML, 1 * ML};
    for (int shut = 0; shut < 2; shut++) {
        struct purge_net *net = tree(arena, 20 * ML, pipes, pots, 4);
        struct purge_way way = by_pedal(shut == 1);
        fill_with_air(net);
        struct bleed_choice choice = bleed_best_order(net, &way, NULL, arena);
        assert_int_equal(choice.tried, 24);
        assert_int_equal(choice.by_rule, choice.reason == NULL);
        assert_true(choice.chosen.air_left <= choice.best.air_left + 0.05 * ML);
        assert_true(choice.chosen.fluid <= 1.05 * choice.best.fluid);
        assert_true(choice.worst.fluid >= choice.best.fluid);
        bool seen[4] = {false};
        for (int i = 0; i < choice.count; i++) {
            seen[choice.turns[i].nipple] = true;
        }
        assert_true(seen[0] && seen[1] && seen[2] && seen[3]);
        struct order_trial again = bleed_try(net, &way, choice.turns, choice.count,
                                             purge_room(net, choice.count, false, arena));
        near(again.fluid, choice.chosen.fluid, 1e-12);
    }
    arena_destroy(arena);
}

/* Air stands in the shared pipe alone: by the longest way it takes its whole volume with it, by the
 * shortest next to nothing. */
static void air_in_the_shared_pipe_leaves_by_the_shortest_way(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const double pipes[] = {4 * ML, 60 * ML}, pots[] = {1 * ML, 1 * ML};
    struct purge_net *net = tree(arena, 20 * ML, pipes, pots, 2);
    struct purge_way way = by_pedal(false);
    net->legs[0].air = 20 * ML;
    struct bleed_choice choice = bleed_best_order(net, &way, NULL, arena);
    assert_int_equal(choice.turns[0].nipple, 0);
    assert_false(choice.by_rule);
    assert_string_equal(choice.reason, "shared-air-shortest-way");
    assert_true(choice.rule.fluid > 1.5 * choice.chosen.fluid);
    arena_destroy(arena);
}

/* A judge by arithmetic: an order costs what its places say, so that the best is known by hand. */
static struct order_trial by_table(const struct thing_order *order, void *with)
{
    const double *price = with;
    struct order_trial trial = {.fluid = 100};
    for (int i = 0; i < order->count; i++) {
        trial.fluid += price[order->items[i]] * (i + 1);
    }
    trial.strokes = trial.fluid / 60;
    return trial;
}

static void the_first_proposal_within_a_twentieth_or_the_slack_is_kept(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    double price[] = {3, 2, 1};
    /* dear things first: 100 + 3 + 4 + 3 = 110; the other way round 100 + 1 + 4 + 9 = 114 */
    const int cheap[] = {0, 1, 2}, dear[] = {2, 1, 0};
    const struct thing_order proposals[] = {{dear, 3}, {cheap, 3}};
    struct order_search search = {3, by_table, price, proposals, 2, 0};
    struct order_found found = order_find(&search, arena);
    assert_int_equal(found.tried, 6);
    near(found.best.fluid, 110, 1e-12);
    near(found.worst.fluid, 114, 1e-12);
    assert_int_equal(found.proposal, 0);
    price[0] = 30; /* 100 + 30 + 4 + 3 = 137 against 100 + 1 + 4 + 90 = 195 */
    found = order_find(&search, arena);
    assert_int_equal(found.proposal, 1);
    search.slack = 60;
    assert_int_equal(order_find(&search, arena).proposal, 0);
    search.slack = 0;
    search.proposal_count = 1;
    found = order_find(&search, arena);
    assert_int_equal(found.proposal, -1);
    assert_memory_equal(found.order.items, cheap, sizeof cheap);
    arena_destroy(arena);
}

/* Where fluid flows back, as much of it is drawn off by any order, but not in as few strokes. */
static struct order_trial by_strokes(const struct thing_order *order, void *with)
{
    (void)with;
    return (struct order_trial){.fluid = 100, .strokes = order->items[0] == 1 ? 10 : 20};
}

static void of_orders_that_draw_off_the_same_the_one_with_fewest_strokes_is_taken(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const int rule[] = {0, 1, 2};
    const struct thing_order proposals[] = {{rule, 3}};
    struct order_search search = {3, by_strokes, NULL, proposals, 1, 0};
    struct order_found found = order_find(&search, arena);
    assert_int_equal(found.proposal, -1);
    assert_int_equal(found.order.items[0], 1);
    near(found.chosen.strokes, 10, 1e-12);
    near(found.worst.strokes, 20, 1e-12);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_rule_takes_the_most_air_first_and_of_equal_ways_the_longer),
        cmocka_unit_test(nipples_that_stay_shut_are_in_no_order),
        cmocka_unit_test(the_far_half_of_a_caliper_comes_before_and_after_the_near_one),
        cmocka_unit_test(nipples_on_the_way_come_first),
        cmocka_unit_test(the_choice_stands_beside_the_best_of_all_orders),
        cmocka_unit_test(air_in_the_shared_pipe_leaves_by_the_shortest_way),
        cmocka_unit_test(the_first_proposal_within_a_twentieth_or_the_slack_is_kept),
        cmocka_unit_test(of_orders_that_draw_off_the_same_the_one_with_fewest_strokes_is_taken),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
