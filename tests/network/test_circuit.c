#include "network/circuit.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

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

static struct network *build(struct car *car)
{
    return network_build(car->system, car->arena, NULL);
}

static int add_master(struct car *car, const char *name, enum master_type type)
{
    const int master = car_add(car, KIND_MASTER, name);
    car_part(car, master)->as.master.type = type;
    return master;
}

struct wheels {
    int front_left, front_right, rear_left, rear_right;
};

static struct wheels add_wheels(struct car *car)
{
    return (struct wheels){car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_LEFT),
                           car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_RIGHT),
                           car_brake(car, KIND_DISC, AXLE_REAR, SIDE_LEFT),
                           car_brake(car, KIND_DISC, AXLE_REAR, SIDE_RIGHT)};
}

static void expect_names(const struct network *network, const char *const *names, int count)
{
    assert_int_equal(network->circuit_count, count);
    for (int c = 0; c < count; c++)
        assert_string_equal(network->circuits[c].name, names[c]);
}

static void the_usual_car_has_a_front_a_rear_and_a_clutch_circuit(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const struct network *network = build(car);
    expect_names(network, (const char *const[]){"front circuit", "rear circuit", "clutch circuit"},
                 3);
    assert_int_equal(network->circuits[0].master, usual.master);
    assert_int_equal(network->circuits[0].chamber, 0);
    assert_int_equal(network->circuits[1].chamber, 1);
    assert_false(network->circuits[0].clutch);
    assert_true(network->circuits[2].clutch);
    /* master, tee, and a joint and a disc on each side */
    assert_int_equal(network->circuits[0].vertex_count, 6);
}

static void parents_come_before_children(void **state)
{
    struct car *car = *state;
    car_usual(car);
    const struct network *network = build(car);
    for (int c = 0; c < network->circuit_count; c++) {
        const struct circuit *circuit = &network->circuits[c];
        assert_int_equal(circuit->vertices[0], circuit->source);
        for (int k = 1; k < circuit->vertex_count; k++) {
            const int parent = network->vertices[circuit->vertices[k]].parent;
            int at = 0;
            while (at < k && circuit->vertices[at] != parent)
                at++;
            assert_true(at < k);
        }
    }
}

static void the_only_circuit_with_brakes_is_the_brake_circuit(void **state)
{
    struct car *car = *state;
    const int master = add_master(car, "brake master", MASTER_SINGLE);
    const struct wheels wheels = add_wheels(car);
    car_pipe(car, master, 0, 1, wheels.front_left, 0);
    car_pipe(car, wheels.front_left, 0, 1, wheels.front_right, 0);
    car_pipe(car, master, 0, 3, wheels.rear_left, 0);
    car_pipe(car, wheels.rear_left, 0, 1, wheels.rear_right, 0);
    expect_names(build(car), (const char *const[]){"brake circuit"}, 1);
}

static void a_diagonal_split_is_named_by_its_wheels(void **state)
{
    struct car *car = *state;
    const int vehicle = car_vehicle(car, AXLE_INDEPENDENT, AXLE_DEAD);
    const int master = add_master(car, "brake master", MASTER_TANDEM);
    const struct wheels wheels = add_wheels(car);
    car_pipe(car, master, 0, 1, wheels.front_left, 0);
    car_pipe(car, master, 0, 3, wheels.rear_right, 0);
    car_pipe(car, master, 1, 1, wheels.front_right, 0);
    car_pipe(car, master, 1, 3, wheels.rear_left, 0);
    const char *left = "left front and right rear circuit";
    const char *right = "right front and left rear circuit";
    car_part(car, vehicle)->as.vehicle.driver = DRIVER_RIGHT;
    expect_names(build(car), (const char *const[]){left, right}, 2);
    car_part(car, vehicle)->as.vehicle.driver = DRIVER_LEFT;
    expect_names(build(car), (const char *const[]){right, left}, 2);
}

static void a_circuit_to_one_rear_wheel_and_both_front_says_so(void **state)
{
    struct car *car = *state;
    const int master = add_master(car, "brake master", MASTER_TANDEM);
    const struct wheels wheels = add_wheels(car);
    car_part(car, wheels.front_left)->as.disc.inlets = 2;
    car_part(car, wheels.front_right)->as.disc.inlets = 2;
    for (int chamber = 0; chamber < 2; chamber++) {
        car_pipe(car, master, chamber, 1, wheels.front_left, chamber);
        car_pipe(car, master, chamber, 1, wheels.front_right, chamber);
    }
    car_pipe(car, master, 0, 3, wheels.rear_right, 0);
    car_pipe(car, master, 1, 3, wheels.rear_left, 0);
    expect_names(
        build(car),
        (const char *const[]){"front and left rear circuit", "front and right rear circuit"}, 2);
}

static void circuits_to_the_same_wheels_are_told_apart_by_chamber_or_master(void **state)
{
    struct car *car = *state;
    const int master = add_master(car, "brake master", MASTER_TANDEM);
    const struct wheels wheels = add_wheels(car);
    const int all[4] = {wheels.front_left, wheels.front_right, wheels.rear_left, wheels.rear_right};
    for (int k = 0; k < 4; k++) {
        car_part(car, all[k])->as.disc.inlets = 2;
        car_pipe(car, master, 0, 1, all[k], 0);
        car_pipe(car, master, 1, 1, all[k], 1);
    }
    expect_names(
        build(car),
        (const char *const[]){"primary front and rear circuit", "secondary front and rear circuit"},
        2);
    const int slaves[2] = {car_add(car, KIND_SLAVE, "one slave"),
                           car_add(car, KIND_SLAVE, "other slave")};
    car_pipe(car, add_master(car, "b master", MASTER_SINGLE), 0, 1, slaves[0], 0);
    car_pipe(car, add_master(car, "a master", MASTER_SINGLE), 0, 1, slaves[1], 0);
    expect_names(
        build(car),
        (const char *const[]){"primary front and rear circuit", "secondary front and rear circuit",
                              "clutch circuit of the a master", "clutch circuit of the b master"},
        4);
}

static void a_motorcycle_has_a_front_and_a_rear_circuit(void **state)
{
    struct car *car = *state;
    const int front = add_master(car, "front master", MASTER_SINGLE);
    const int rear = add_master(car, "rear master", MASTER_SINGLE);
    car_hose(car, front, 0, 0.9, car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_LEFT), 0);
    car_hose(car, rear, 0, 0.5, car_brake(car, KIND_DISC, AXLE_REAR, SIDE_NONE), 0);
    expect_names(build(car), (const char *const[]){"front circuit", "rear circuit"}, 2);
}

static void a_valve_and_a_remote_servo_are_gone_through(void **state)
{
    struct car *car = *state;
    const int master = add_master(car, "brake master", MASTER_SINGLE);
    const int servo = car_add(car, KIND_SERVO, "servo");
    const int valve = car_add(car, KIND_VALVE, "rear valve");
    const int drum = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_LEFT);
    car_part(car, servo)->as.servo.type = SERVO_REMOTE;
    car_part(car, servo)->as.servo.passes = NO;
    car_part(car, valve)->as.valve.type = VALVE_LIMITING;
    car_pipe(car, master, 0, 1, servo, 0);
    car_join(car, servo, 1, valve, 0);
    car_pipe(car, valve, 1, 2, drum, 0);
    struct messages messages = messages_start(car->arena);
    const struct network *network = network_build(car->system, car->arena, &messages);
    assert_int_equal(messages.count, 0);
    const struct vertex *at = &network->vertices[network_vertex(network, drum, 0)];
    assert_int_equal(at->circuit, 0);
    assert_int_equal(at->depth, 5);
    near(at->run, 3, 1e-12);
    int kinds[3] = {0, 0, 0};
    for (int e = 0; e < network->edge_count; e++)
        kinds[network->edges[e].kind]++;
    assert_int_equal(kinds[EDGE_CARRIER], 2);
    assert_int_equal(kinds[EDGE_DIRECT], 1);
    assert_int_equal(kinds[EDGE_PASSAGE], 2);
}

static void a_shuttle_keeps_its_two_circuits_apart(void **state)
{
    struct car *car = *state;
    const int master = add_master(car, "brake master", MASTER_TANDEM);
    const int shuttle = car_add(car, KIND_VALVE, "warning shuttle");
    const struct wheels wheels = add_wheels(car);
    car_part(car, shuttle)->as.valve.type = VALVE_SHUTTLE;
    car_part(car, shuttle)->as.valve.passages = 2;
    car_pipe(car, master, 0, 1, shuttle, 0);
    car_pipe(car, shuttle, 1, 1, wheels.front_left, 0);
    car_pipe(car, shuttle, 1, 1, wheels.front_right, 0);
    car_pipe(car, master, 1, 1, shuttle, 2);
    car_pipe(car, shuttle, 3, 1, wheels.rear_left, 0);
    car_pipe(car, shuttle, 3, 1, wheels.rear_right, 0);
    struct messages messages = messages_start(car->arena);
    const struct network *network = network_build(car->system, car->arena, &messages);
    assert_int_equal(messages.count, 0);
    expect_names(network, (const char *const[]){"front circuit", "rear circuit"}, 2);
}

static void a_master_that_reaches_nothing_still_has_a_circuit(void **state)
{
    struct car *car = *state;
    add_master(car, "brake master", MASTER_SINGLE);
    expect_names(build(car), (const char *const[]){"unused circuit"}, 1);
}

static void of_two_ways_the_one_with_fewer_pieces_is_the_tree(void **state)
{
    struct car *car = *state;
    const int master = add_master(car, "brake master", MASTER_SINGLE);
    const struct wheels wheels = add_wheels(car);
    const int tee = car_add(car, KIND_JOINT, "tee");
    car_pipe(car, master, 0, 1, tee, 0);
    car_pipe(car, tee, 0, 1, wheels.front_left, 0);
    car_pipe(car, tee, 0, 1, wheels.front_right, 0);
    const int ring = car_pipe(car, wheels.front_left, 0, 1, wheels.front_right, 0);
    const struct network *network = build(car);
    assert_true(network->circuits[0].looped);
    for (int e = 0; e < network->edge_count; e++)
        assert_int_equal(network->edges[e].in_tree, network->edges[e].part != ring);
    const int right = network_vertex(network, wheels.front_right, 0);
    assert_int_equal(network->vertices[right].parent, network_vertex(network, tee, 0));
}

/* The same car with its parts and connections in another order. */
static struct system *shuffled(const struct system *system, struct arena *arena, int *new_index)
{
    struct system *copy = system_copy(system, arena);
    for (int i = 0; i < system->part_count; i++)
        new_index[i] = i;
    for (int i = system->part_count - 1; i > 0; i--) {
        const int k = rand() % (i + 1);
        const int kept = new_index[i];
        new_index[i] = new_index[k];
        new_index[k] = kept;
    }
    for (int i = 0; i < system->part_count; i++)
        copy->parts[new_index[i]] = system->parts[i];
    const int count = system->connection_count;
    copy->connections = ARENA_ARRAY(arena, (size_t)count, struct connection);
    for (int i = 0; i < count; i++) {
        copy->connections[i] = system->connections[i];
        copy->connections[i].a.part = new_index[system->connections[i].a.part];
        copy->connections[i].b.part = new_index[system->connections[i].b.part];
    }
    for (int i = count - 1; i > 0; i--) {
        const int k = rand() % (i + 1);
        const struct connection kept = copy->connections[i];
        copy->connections[i] = copy->connections[k];
        copy->connections[k] = kept;
    }
    return copy;
}

static void the_order_of_sections_changes_nothing(void **state)
{
    struct car *car = *state;
    car_usual(car);
    const struct network *network = build(car);
    int new_index[64];
    assert_true(car->system->part_count <= 64);
    srand(20261120);
    for (int round = 0; round < 50; round++) {
        const struct system *other = shuffled(car->system, car->arena, new_index);
        const struct network *got = network_build(other, car->arena, NULL);
        assert_int_equal(got->circuit_count, network->circuit_count);
        for (int c = 0; c < got->circuit_count; c++) {
            const struct circuit *a = &network->circuits[c];
            const struct circuit *b = &got->circuits[c];
            assert_string_equal(a->name, b->name);
            assert_int_equal(a->vertex_count, b->vertex_count);
            for (int k = 0; k < a->vertex_count; k++) {
                const struct vertex *one = &network->vertices[a->vertices[k]];
                const struct vertex *same = &got->vertices[b->vertices[k]];
                assert_int_equal(new_index[one->part], same->part);
                assert_int_equal(one->chamber, same->chamber);
                near(same->run, one->run, 1e-12);
            }
        }
    }
}

static void other_names_leave_the_order_of_wheels(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    for (int i = 0; i < car->system->part_count; i++) {
        struct part *part = car_part(car, i);
        char *turned = ARENA_ARRAY(car->arena, strlen(part->name) + 1, char);
        for (size_t k = 0; k < strlen(part->name); k++)
            turned[k] = part->name[strlen(part->name) - 1 - k];
        part->name = turned;
    }
    const struct network *network = build(car);
    expect_names(network, (const char *const[]){"front circuit", "rear circuit", "clutch circuit"},
                 3);
    const struct circuit *front = &network->circuits[0];
    assert_int_equal(network->vertices[front->vertices[4]].part, usual.front_left);
    assert_int_equal(network->vertices[front->vertices[5]].part, usual.front_right);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(the_usual_car_has_a_front_a_rear_and_a_clutch_circuit),
        TEST(parents_come_before_children),
        TEST(the_only_circuit_with_brakes_is_the_brake_circuit),
        TEST(a_diagonal_split_is_named_by_its_wheels),
        TEST(a_circuit_to_one_rear_wheel_and_both_front_says_so),
        TEST(circuits_to_the_same_wheels_are_told_apart_by_chamber_or_master),
        TEST(a_motorcycle_has_a_front_and_a_rear_circuit),
        TEST(a_valve_and_a_remote_servo_are_gone_through),
        TEST(a_shuttle_keeps_its_two_circuits_apart),
        TEST(a_master_that_reaches_nothing_still_has_a_circuit),
        TEST(of_two_ways_the_one_with_fewer_pieces_is_the_tree),
        TEST(the_order_of_sections_changes_nothing),
        TEST(other_names_leave_the_order_of_wheels),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
