#include "network/graph.h"

#include <math.h>

#include "support/build_car.h"
#include "support/near.h"
#include "units/constants.h"

struct fixture {
    struct car car;
    struct usual_car usual;
    struct network *network;
    struct messages messages;
};

static int start(void **state)
{
    static struct fixture fixture;
    fixture.car = car_start();
    fixture.usual = car_usual(&fixture.car);
    for (int i = 0; i < fixture.car.system->part_count; i++) {
        struct part *part = car_part(&fixture.car, i);
        if (part->kind == KIND_PIPE) {
            part->as.pipe.size.m = 4.7e-3;
            part->as.pipe.wall.m = 0.7e-3;
        } else if (part->kind == KIND_HOSE) {
            part->as.hose.inside.m = 3.2e-3;
        } else {
            part->fitted.chamber.m3 = 2e-6;
        }
    }
    fixture.messages = messages_start(fixture.car.arena);
    fixture.network = network_build(fixture.car.system, fixture.car.arena, &fixture.messages);
    *state = &fixture;
    return 0;
}

static int finish(void **state)
{
    car_finish(&((struct fixture *)*state)->car);
    return 0;
}

static int vertex(const struct fixture *f, int part)
{
    return network_vertex(f->network, part, 0);
}

static void a_sound_car_leaves_no_message(void **state)
{
    struct fixture *f = *state;
    assert_int_equal(f->messages.count, 0);
}

static void pipe_runs_add_up_from_the_master(void **state)
{
    struct fixture *f = *state;
    const struct vertex *right = &f->network->vertices[vertex(f, f->usual.front_right)];
    const struct vertex *rear = &f->network->vertices[vertex(f, f->usual.rear_left)];
    near(right->run, 0.7 + 0.5 + 0.36, 1e-12);
    near(rear->run, 2.6 + 0.31 + 0.7, 1e-12);
    assert_true(right->run_known && rear->run_known);
}

static void an_unknown_length_counts_as_nothing_and_is_said(void **state)
{
    struct fixture *f = *state;
    car_part(&f->car, f->usual.axle_hose)->as.hose.length.m = NAN;
    struct network *network = network_build(f->car.system, f->car.arena, NULL);
    const struct vertex *rear = &network->vertices[network_vertex(network, f->usual.rear_left, 0)];
    const struct vertex *front =
        &network->vertices[network_vertex(network, f->usual.front_left, 0)];
    near(rear->run, 2.6 + 0.7, 1e-12);
    assert_false(rear->run_known);
    assert_true(front->run_known);
}

static void the_volume_of_a_way_is_pipes_hoses_and_chambers(void **state)
{
    struct fixture *f = *state;
    bool complete;
    const double got =
        network_path_volume(f->car.system, f->network, vertex(f, f->usual.front_right), &complete);
    /* 1.2 m of pipe of 3.3 mm, 0.36 m of hose of 3.2 mm, and the chambers of the tee, the joint
     * and the disc of 2 mL each; the master's own is left out */
    const double pipe = 1.2 * PI / 4 * 3.3e-3 * 3.3e-3;
    const double hose = 0.36 * PI / 4 * 3.2e-3 * 3.2e-3;
    near_rel(got, pipe + hose + 3 * 2e-6, 1e-12);
    assert_true(complete);
}

static void a_volume_with_an_unknown_length_is_not_complete(void **state)
{
    struct fixture *f = *state;
    bool complete = true;
    car_part(&f->car, f->usual.axle_hose)->as.hose.length.m = NAN;
    const double got =
        network_path_volume(f->car.system, f->network, vertex(f, f->usual.rear_left), &complete);
    assert_false(complete);
    near_rel(got, (2.6 + 0.7) * PI / 4 * 3.3e-3 * 3.3e-3 + 3 * 2e-6, 1e-12);
}

static void two_wheels_part_at_their_tee(void **state)
{
    struct fixture *f = *state;
    const int left = vertex(f, f->usual.rear_left);
    const int right = vertex(f, f->usual.rear_right);
    const int tee = vertex(f, f->usual.axle_tee);
    assert_int_equal(network_common(f->network, left, right), tee);
    assert_int_equal(network_common(f->network, left, left), left);
    assert_int_equal(network_common(f->network, left, tee), tee);
    assert_int_equal(network_common(f->network, left, vertex(f, f->usual.front_left)), -1);
}

static void a_wheel_lies_beyond_its_tee_and_not_beyond_its_neighbour(void **state)
{
    struct fixture *f = *state;
    const int left = vertex(f, f->usual.rear_left);
    const int tee = vertex(f, f->usual.axle_tee);
    assert_true(network_beyond(f->network, left, tee));
    assert_true(network_beyond(f->network, left, left));
    assert_false(network_beyond(f->network, tee, left));
    assert_false(network_beyond(f->network, left, vertex(f, f->usual.rear_right)));
}

static void dry_parts_and_ports_that_are_not_there_have_no_vertex(void **state)
{
    struct fixture *f = *state;
    assert_int_equal(network_vertex(f->network, f->usual.vehicle, 0), -1);
    assert_int_equal(network_vertex(f->network, f->usual.axle_hose, 0), -1);
    assert_int_equal(network_vertex(f->network, f->usual.slave, 1), -1);
    assert_int_equal(network_vertex(f->network, -1, 0), -1);
    assert_int_not_equal(network_vertex(f->network, f->usual.master, 1), -1);
}

static void every_vertex_lists_its_edges(void **state)
{
    struct fixture *f = *state;
    const struct network *network = f->network;
    assert_int_equal(network->first_at[network->vertex_count], 2 * network->edge_count);
    for (int v = 0; v < network->vertex_count; v++) {
        for (int k = network->first_at[v]; k < network->first_at[v + 1]; k++) {
            const struct edge *edge = &network->edges[network->edges_at[k]];
            assert_true(edge->a == v || edge->b == v);
        }
    }
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(a_sound_car_leaves_no_message),
        TEST(pipe_runs_add_up_from_the_master),
        TEST(an_unknown_length_counts_as_nothing_and_is_said),
        TEST(the_volume_of_a_way_is_pipes_hoses_and_chambers),
        TEST(a_volume_with_an_unknown_length_is_not_complete),
        TEST(two_wheels_part_at_their_tee),
        TEST(a_wheel_lies_beyond_its_tee_and_not_beyond_its_neighbour),
        TEST(dry_parts_and_ports_that_are_not_there_have_no_vertex),
        TEST(every_vertex_lists_its_edges),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
