#include "physics/purge.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

static int circuit_of(const struct driven_car *driven, int part)
{
    const int vertex = network_vertex(driven->network, part, 0);
    return driven->network->vertices[vertex].circuit;
}

static int nipple_of(const struct purge_net *net, int part)
{
    for (int i = 0; i < net->nipple_count; i++) {
        if (net->nipples[i].nipple.part == part)
            return i;
    }
    return -1;
}

static void path_volumes_are_those_of_the_network(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct arena *arena = driven.car.arena;
    const int brakes[] = {driven.usual.front_left, driven.usual.rear_left, driven.usual.rear_right,
                          driven.usual.slave};
    for (int i = 0; i < 4; i++) {
        bool complete = false;
        const struct purge_net *net =
            purge_net_of(driven.car.system, driven.network, circuit_of(&driven, brakes[i]), arena);
        const double expected =
            network_path_volume(driven.car.system, driven.network,
                                network_vertex(driven.network, brakes[i], 0), &complete);
        assert_true(complete);
        near_rel(purge_path_volume(net, nipple_of(net, brakes[i])), expected, 1e-12);
    }
    driven_finish(&driven);
}

static void a_dry_circuit_is_full_of_air_and_can_be_bled(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct arena *arena = driven.car.arena;
    for (int c = 0; c < driven.network->circuit_count; c++) {
        struct purge_net *net = purge_net_of(driven.car.system, driven.network, c, arena);
        purge_net_dry(net, driven.network, driven.car.system, driven.network->circuits[c].source);
        for (int i = 0; i < net->leg_count; i++)
            near_rel(net->legs[i].air, net->legs[i].volume, 1e-15);
        for (int i = 0; i < net->pot_count; i++)
            near_rel(net->pots[i].air, net->pots[i].volume, 1e-15);
        const struct purge_way way = {.method = METHOD_PEDAL,
                                      .stroke = 8e-6,
                                      .stroke_time = 1,
                                      .pause_time = 2,
                                      .reservoir = NAN,
                                      .most_strokes = 400};
        struct purge_turn turns[4];
        for (int i = 0; i < net->nipple_count; i++)
            turns[i] = (struct purge_turn){i, -1};
        struct purge_room *room = purge_room(net, 4, false, arena);
        const struct purge_result *result = purge_run(net, &way, turns, net->nipple_count, room);
        near(result->air_left, 0, 1e-12);
        assert_true(result->strokes > 1 && result->strokes < 40);
        assert_true(result->worst_balance < 1e-15);
    }
    driven_finish(&driven);
}

static void what_is_dried_begins_at_the_vertex(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct arena *arena = driven.car.arena;
    const int rear = circuit_of(&driven, driven.usual.rear_left);
    struct purge_net *net = purge_net_of(driven.car.system, driven.network, rear, arena);
    const int left = network_vertex(driven.network, driven.usual.rear_left, 0);
    purge_net_dry(net, driven.network, driven.car.system, left);
    double legs = 0, pots = 0;
    for (int i = 0; i < net->leg_count; i++)
        legs += net->legs[i].air;
    for (int i = 0; i < net->pot_count; i++)
        pots += net->pots[i].air;
    near(legs, 0, 1e-18);
    const int pot = net->nipples[nipple_of(net, driven.usual.rear_left)].pot;
    near_rel(pots, net->pots[pot].volume, 1e-15);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(path_volumes_are_those_of_the_network),
        cmocka_unit_test(a_dry_circuit_is_full_of_air_and_can_be_bled),
        cmocka_unit_test(what_is_dried_begins_at_the_vertex),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
