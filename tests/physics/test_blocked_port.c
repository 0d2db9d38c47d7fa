#include "physics/blocked_port.h"

#include <math.h>

#include "physics/travel.h"
#include "support/driven_car.h"
#include "support/near.h"

static int circuit_at(const struct driven_car *driven, int part)
{
    return driven->network->vertices[network_vertex(driven->network, part, 0)].circuit;
}

static double blocked(const struct driven_car *driven, int circuit, double warmer)
{
    struct solution *room = solution_room(driven->car.system, driven->network, driven->car.arena);
    return blocked_port_pressure(driven->car.system, driven->network, circuit, warmer, room).pa;
}

/* What the circuit takes at one pressure throughout, m3. */
static double taken_at(const struct driven_car *driven, int circuit, double pa)
{
    struct pressure *all =
        ARENA_ARRAY(driven->car.arena, (size_t)driven->network->vertex_count, struct pressure);
    for (int i = 0; i < driven->network->vertex_count; i++)
        all[i].pa = pa;
    struct state usual = state_usual();
    struct volume by_cause[CAUSE_COUNT];
    travel_volumes(driven->car.system, driven->network, circuit, all, &usual, by_cause);
    double sum = 0;
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        sum += by_cause[cause].m3;
    return sum;
}

/* Glycol fluid grows by 7.5e-4 of itself a kelvin (usual value, from memory). */
static void the_circuit_takes_what_the_fluid_grew(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const int ends[] = {driven.usual.front_left, driven.usual.rear_left};
    for (int i = 0; i < 2; i++) {
        int circuit = circuit_at(&driven, ends[i]);
        double fluid = travel_fluid(driven.car.system, driven.network, circuit).m3;
        double before = 0;
        for (double warmer = 5; warmer <= 60; warmer += 5) {
            double p = blocked(&driven, circuit, warmer);
            near_rel(taken_at(&driven, circuit, p), fluid * 7.5e-4 * warmer, 1e-6);
            assert_true(p > before + 1e3);
            before = p;
        }
    }
    driven_finish(&driven);
}

static void a_clearance_wide_enough_leaves_hardly_any_pressure(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int rear = circuit_at(&driven, driven.usual.rear_left);
    double usual = blocked(&driven, rear, 30);
    driven_say(&driven, driven.usual.rear_left, "clearance", 5e-3);
    driven_say(&driven, driven.usual.rear_right, "clearance", 5e-3);
    /* the springs hold the shoes off up to 2 bar */
    assert_true(blocked(&driven, rear, 30) < 2e5);
    assert_true(usual > 2e5);
    near(blocked(&driven, rear, 0), 0, 0);
    driven_finish(&driven);
}

static void no_pressure_is_known_without_what_it_rests_on(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int front = circuit_at(&driven, driven.usual.front_left);
    int clutch = circuit_at(&driven, driven.usual.slave);
    near_unknown(blocked(&driven, clutch, 30));
    near_unknown(blocked(&driven, front, NAN));
    near_unknown(blocked(&driven, front, -1));
    driven_unsay(&driven, driven.usual.front_left, "pad squash");
    near_unknown(blocked(&driven, front, 30));
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_circuit_takes_what_the_fluid_grew),
        cmocka_unit_test(a_clearance_wide_enough_leaves_hardly_any_pressure),
        cmocka_unit_test(no_pressure_is_known_without_what_it_rests_on),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
