#include "network/wiring.h"

#include "support/build_car.h"
#include "support/near.h"

static int start(void **state)
{
    static struct car car;
    car = car_start();
    *state = &car;
    return 0;
}

static int finish(void **state)
{
    car_finish(*state);
    return 0;
}

static void each_chamber_of_a_wet_part_is_a_vertex(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int servo = car_add(car, KIND_SERVO, "servo");
    car_part(car, servo)->as.servo.type = SERVO_DIRECT;
    const struct wiring wiring = wiring_lay(car->system, car->arena, NULL);
    /* tandem master 2, tees 2, brakes 4, clutch master and slave 2, implied joints 4 */
    assert_int_equal(wiring.network->vertex_count, 14);
    assert_int_equal(wiring.network->first_vertex[servo], -1);
    assert_int_equal(wiring.network->first_vertex[usual.vehicle], -1);
}

static void each_pipe_and_hose_is_an_edge(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const struct wiring wiring = wiring_lay(car->system, car->arena, NULL);
    /* pipes: front feed, 2 front, rear feed, 2 rear, clutch; hoses: 2 front, axle, clutch */
    assert_int_equal(wiring.network->edge_count, 11);
    for (int e = 0; e < wiring.network->edge_count; e++) {
        const struct edge *edge = &wiring.network->edges[e];
        assert_int_equal(edge->kind, EDGE_CARRIER);
        assert_int_equal(edge->place.line, car_part(car, edge->part)->place.line);
        if (edge->part == usual.clutch_hose)
            assert_int_equal(wiring.network->vertices[edge->b].part, usual.slave);
    }
}

static void vacuum_and_supply_hoses_are_left_out(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int servo = car_add(car, KIND_SERVO, "servo");
    const int hose = car_hose(car, usual.master, 0, 1, servo, 0);
    car_part(car, hose)->as.hose.use = HOSE_VACUUM;
    struct messages messages = messages_start(car->arena);
    const struct wiring wiring = wiring_lay(car->system, car->arena, &messages);
    assert_int_equal(messages.count, 0);
    assert_int_equal(wiring.network->edge_count, 11);
}

static void what_hangs_on_a_reported_pipe_is_excused(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const int pipe = car_pipe(car, usual.slave, 0, 1, usual.slave, 0);
    car->system->connection_count--;
    const struct wiring wiring = wiring_lay(car->system, car->arena, NULL);
    (void)pipe;
    for (int v = 0; v < wiring.network->vertex_count; v++)
        assert_int_equal(wiring.excused[v], wiring.network->vertices[v].part == usual.slave);
}

static void edges_at_a_vertex_stand_in_the_order_of_what_they_lead_to(void **state)
{
    struct car *car = *state;
    const int tee = car_add(car, KIND_JOINT, "tee");
    const int right = car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_RIGHT);
    const int rear = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_LEFT);
    const int left = car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_LEFT);
    const int order[3] = {left, right, rear};
    car_pipe(car, tee, 0, 1, right, 0);
    car_pipe(car, rear, 0, 1, tee, 0);
    car_pipe(car, tee, 0, 1, left, 0);
    const struct network *network = wiring_lay(car->system, car->arena, NULL).network;
    for (int k = 0; k < 3; k++) {
        const struct edge *edge = &network->edges[network->edges_at[network->first_at[0] + k]];
        assert_int_equal(network->vertices[edge->a == 0 ? edge->b : edge->a].part, order[k]);
    }
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(each_chamber_of_a_wet_part_is_a_vertex),
        TEST(each_pipe_and_hose_is_an_edge),
        TEST(vacuum_and_supply_hoses_are_left_out),
        TEST(what_hangs_on_a_reported_pipe_is_excused),
        TEST(edges_at_a_vertex_stand_in_the_order_of_what_they_lead_to),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
