#include "network/mounts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
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

static struct gaps find_gaps(const struct car *car)
{
    const struct network *network = network_build(car->system, car->arena, NULL);
    return mounts_gaps(car->system, network, car->arena);
}

static int count_state(const struct gaps *gaps, enum gap_state state)
{
    int count = 0;
    for (int i = 0; i < gaps->count; i++)
        count += gaps->items[i].state == state;
    return count;
}

static const struct gap *gap_to(const struct gaps *gaps, int far)
{
    for (int i = 0; i < gaps->count; i++) {
        if (gaps->items[i].far == far)
            return &gaps->items[i];
    }
    fail_msg("no gap before part %d", far);
    return NULL;
}

/* Turns a hose into a pipe: what is left of a description in which it was forgotten. */
static void forget_hose(struct car *car, int hose)
{
    const char *name = car_part(car, hose)->name;
    const double length = car_part(car, hose)->as.hose.length.m;
    struct place place = car_part(car, hose)->place;
    part_blank(car_part(car, hose), KIND_PIPE, car->arena);
    car_part(car, hose)->name = name;
    car_part(car, hose)->place = place;
    car_part(car, hose)->as.pipe.length.m = length;
}

static void mounts_move_both_ways_or_not_at_all(void **state)
{
    (void)state;
    for (int a = 0; a < MOUNT_COUNT; a++) {
        assert_false(mounts_move((enum mount)a, (enum mount)a));
        assert_false(mounts_move((enum mount)a, MOUNT_UNKNOWN));
        for (int b = 0; b < MOUNT_COUNT; b++)
            assert_int_equal(mounts_move((enum mount)a, (enum mount)b),
                             mounts_move((enum mount)b, (enum mount)a));
    }
}

static void pairs_of_mounts_move_as_on_a_car(void **state)
{
    (void)state;
    assert_true(mounts_move(MOUNT_BODY, MOUNT_ENGINE));
    assert_true(mounts_move(MOUNT_BODY, MOUNT_REAR_AXLE));
    assert_true(mounts_move(MOUNT_FRONT_AXLE, MOUNT_FRONT_LEFT_WHEEL));
    assert_true(mounts_move(MOUNT_REAR_AXLE, MOUNT_REAR_RIGHT_WHEEL));
    assert_true(mounts_move(MOUNT_FRONT_LEFT_WHEEL, MOUNT_FRONT_RIGHT_WHEEL));
    assert_true(mounts_move(MOUNT_HANDLEBAR, MOUNT_FORK));
    assert_true(mounts_move(MOUNT_HANDLEBAR, MOUNT_BODY));
}

static void the_usual_car_has_four_bridged_gaps(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gaps.count, 4);
    assert_int_equal(count_state(&gaps, GAP_BRIDGED), 4);
    assert_int_equal(gaps.idle_count, 0);
    assert_int_equal(gap_to(&gaps, usual.front_left)->hose, usual.front_left_hose);
    assert_int_equal(gap_to(&gaps, usual.front_right)->hose, usual.front_right_hose);
    assert_int_equal(gap_to(&gaps, usual.slave)->hose, usual.clutch_hose);
    /* one hose for two drums is one gap */
    const struct gap *axle = gap_to(&gaps, usual.axle_tee);
    assert_int_equal(axle->hose, usual.axle_hose);
    assert_int_equal(axle->near, usual.master);
    assert_int_equal(axle->from, MOUNT_BODY);
    assert_int_equal(axle->to, MOUNT_REAR_AXLE);
}

static void a_hose_taken_away_is_the_one_that_is_missing(void **state)
{
    (void)state;
    for (int k = 0; k < 4; k++) {
        struct car car = car_start();
        const struct usual_car usual = car_usual(&car);
        const int hoses[4] = {usual.front_left_hose, usual.front_right_hose, usual.axle_hose,
                              usual.clutch_hose};
        const int far[4] = {usual.front_left, usual.front_right, usual.axle_tee, usual.slave};
        forget_hose(&car, hoses[k]);
        const struct gaps gaps = find_gaps(&car);
        assert_int_equal(gaps.count, 4);
        assert_int_equal(count_state(&gaps, GAP_BRIDGED), 3);
        assert_int_equal(gap_to(&gaps, far[k])->state, GAP_BARE);
        assert_int_equal(gap_to(&gaps, far[k])->hose, -1);
        car_finish(&car);
    }
}

static void a_slave_on_the_body_needs_no_hose_and_its_hose_is_idle(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.slave)->fitted.on = MOUNT_BODY;
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gaps.count, 3);
    assert_int_equal(gaps.idle_count, 1);
    assert_int_equal(gaps.idle_hoses[0], usual.clutch_hose);
}

static void an_axle_tee_on_the_body_moves_the_gap_to_the_drums(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.axle_tee)->fitted.on = MOUNT_BODY;
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gap_to(&gaps, usual.rear_left)->state, GAP_BARE);
    assert_int_equal(gap_to(&gaps, usual.rear_right)->state, GAP_BARE);
    assert_int_equal(count_state(&gaps, GAP_BRIDGED), 3);
    assert_int_equal(gaps.idle_hoses[0], usual.axle_hose);
}

static void an_independent_rear_axle_needs_a_hose_to_each_wheel(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.vehicle)->as.vehicle.rear_axle = AXLE_INDEPENDENT;
    car_part(car, usual.axle_tee)->fitted.on = MOUNT_BODY;
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gap_to(&gaps, usual.rear_left)->to, MOUNT_REAR_LEFT_WHEEL);
    assert_int_equal(gap_to(&gaps, usual.rear_right)->to, MOUNT_REAR_RIGHT_WHEEL);
    assert_int_equal(count_state(&gaps, GAP_BARE), 2);
}

static void an_axle_tee_that_does_not_say_cannot_be_told(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.axle_tee)->fitted.on = MOUNT_UNKNOWN;
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gaps.count, 4);
    assert_int_equal(count_state(&gaps, GAP_CANNOT_TELL), 1);
    assert_int_equal(gap_to(&gaps, usual.axle_tee)->unknown, usual.axle_tee);
    assert_int_equal(gaps.idle_count, 0);
}

static void a_forgotten_hose_does_not_hide_behind_a_tee_that_does_not_say(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.axle_tee)->fitted.on = MOUNT_UNKNOWN;
    forget_hose(car, usual.axle_hose);
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gaps.count, 4);
    assert_int_equal(gap_to(&gaps, usual.axle_tee)->state, GAP_BARE);
    assert_int_equal(gap_to(&gaps, usual.axle_tee)->unknown, usual.axle_tee);
}

static void a_front_tee_on_hard_pipe_is_on_the_body(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    forget_hose(car, usual.front_left_hose);
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gap_to(&gaps, usual.front_left)->state, GAP_BARE);
    assert_int_equal(gap_to(&gaps, usual.front_left)->near, usual.front_tee);
    assert_int_equal(gap_to(&gaps, usual.front_left)->from, MOUNT_BODY);
    assert_int_equal(count_state(&gaps, GAP_CANNOT_TELL), 0);
}

static void before_a_steered_beam_a_front_tee_must_say(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.vehicle)->as.vehicle.front_axle = AXLE_LIVE;
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gap_to(&gaps, usual.front_tee)->state, GAP_CANNOT_TELL);
    assert_int_equal(count_state(&gaps, GAP_CANNOT_TELL), 1);
    /* on the beam, the hose to the beam is missing and those to the wheels stay */
    car_part(car, usual.front_tee)->fitted.on = MOUNT_FRONT_AXLE;
    const struct gaps said = find_gaps(car);
    assert_int_equal(gap_to(&said, usual.front_tee)->state, GAP_BARE);
    assert_int_equal(gap_to(&said, usual.front_left)->state, GAP_BRIDGED);
    assert_int_equal(gap_to(&said, usual.front_right)->state, GAP_BRIDGED);
}

static void an_axle_that_does_not_say_leaves_its_brakes_untold(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.vehicle)->as.vehicle.front_axle = AXLE_TYPE_NOT_SAID;
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(count_state(&gaps, GAP_CANNOT_TELL), 2);
    assert_int_equal(gap_to(&gaps, usual.front_left)->unknown, usual.front_left);
    assert_int_equal(gap_to(&gaps, usual.front_right)->unknown, usual.front_right);
    assert_int_equal(gaps.idle_count, 0);
}

static void a_hard_clutch_pipe_can_be_accepted_with_a_reason(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    forget_hose(car, usual.clutch_hose);
    car_part(car, usual.slave)->fitted.rigid_accepted = "coiled pipe as built";
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gap_to(&gaps, usual.slave)->state, GAP_ACCEPTED);
    assert_string_equal(gap_to(&gaps, usual.slave)->reason, "coiled pipe as built");
    assert_int_equal(count_state(&gaps, GAP_BRIDGED), 3);
}

static void what_is_accepted_for_one_wheel_is_not_for_what_it_feeds(void **state)
{
    struct car *car = *state;
    const struct usual_car usual = car_usual(car);
    car_part(car, usual.axle_tee)->fitted.on = MOUNT_BODY;
    car_part(car, usual.rear_left)->fitted.rigid_accepted = "a reason";
    car_part(car, usual.axle_tee)->fitted.rigid_accepted = "another reason";
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gap_to(&gaps, usual.rear_left)->state, GAP_ACCEPTED);
    assert_int_equal(gap_to(&gaps, usual.rear_right)->state, GAP_BARE);
}

static void a_second_hose_over_one_gap_is_idle(void **state)
{
    struct car *car = *state;
    const int master = car_add(car, KIND_MASTER, "clutch master");
    const int slave = car_add(car, KIND_SLAVE, "clutch slave");
    const int joint = car_implied_joint(car);
    const int first = car_hose(car, master, 0, 0.3, joint, 0);
    const int second = car_line(car, joint, 0, 0.5, 0.3, slave, 0);
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gaps.count, 1);
    assert_int_equal(gaps.items[0].hose, first);
    assert_int_equal(gaps.idle_count, 1);
    assert_int_equal(gaps.idle_hoses[0], second);
}

static void two_circuits_in_one_caliper_need_two_hoses(void **state)
{
    struct car *car = *state;
    car_vehicle(car, AXLE_INDEPENDENT, AXLE_LIVE);
    const int master = car_add(car, KIND_MASTER, "brake master");
    car_part(car, master)->as.master.type = MASTER_TANDEM;
    const int disc = car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_LEFT);
    car_part(car, disc)->as.disc.inlets = 2;
    car_line(car, master, 0, 1, 0.3, disc, 0);
    car_pipe(car, master, 1, 1, disc, 1);
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gaps.count, 2);
    assert_int_equal(count_state(&gaps, GAP_BRIDGED), 1);
    assert_int_equal(count_state(&gaps, GAP_BARE), 1);
}

static void a_valve_without_a_mount_is_looked_through(void **state)
{
    struct car *car = *state;
    car_vehicle(car, AXLE_INDEPENDENT, AXLE_LIVE);
    const int master = car_add(car, KIND_MASTER, "brake master");
    const int valve = car_add(car, KIND_VALVE, "load valve");
    const int drum = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_LEFT);
    car_part(car, valve)->as.valve.passages = 1;
    car_pipe(car, master, 0, 2, valve, 0);
    const int hose = car_line(car, valve, 1, 0.3, 0.3, drum, 0);
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gaps.count, 1);
    assert_int_equal(gaps.items[0].hose, hose);
    assert_int_equal(gaps.items[0].near, master);
    assert_int_equal(gaps.items[0].far, drum);
}

static void a_motorcycle_front_brake_hangs_between_handlebar_and_fork(void **state)
{
    struct car *car = *state;
    car_vehicle(car, AXLE_FORK, AXLE_ARM);
    const int master = car_add(car, KIND_MASTER, "front master");
    const int tee = car_add(car, KIND_JOINT, "fork tee");
    const int left = car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_LEFT);
    const int right = car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_RIGHT);
    car_part(car, master)->fitted.on = MOUNT_HANDLEBAR;
    const int feed = car_hose(car, master, 0, 0.6, tee, 0);
    car_hose(car, tee, 0, 0.4, left, 0);
    car_hose(car, tee, 0, 0.4, right, 0);
    const struct gaps unsaid = find_gaps(car);
    assert_int_equal(gap_to(&unsaid, tee)->state, GAP_CANNOT_TELL);
    car_part(car, tee)->fitted.on = MOUNT_HANDLEBAR;
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(count_state(&gaps, GAP_BRIDGED), 2);
    assert_int_equal(gaps.idle_hoses[0], feed);
}

static void a_tee_behind_a_hose_that_feeds_only_its_own_mount_can_be_told(void **state)
{
    struct car *car = *state;
    const int master = car_add(car, KIND_MASTER, "brake master");
    const int tee = car_add(car, KIND_JOINT, "tee");
    const int one = car_brake(car, KIND_DISC, AXLE_REAR, SIDE_LEFT);
    const int other = car_brake(car, KIND_DISC, AXLE_REAR, SIDE_RIGHT);
    car_part(car, one)->fitted.on = MOUNT_BODY;
    car_part(car, other)->fitted.on = MOUNT_BODY;
    const int hose = car_hose(car, master, 0, 0.6, tee, 0);
    car_pipe(car, tee, 0, 0.4, one, 0);
    car_pipe(car, tee, 0, 0.4, other, 0);
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gaps.count, 0);
    assert_int_equal(gaps.idle_count, 1);
    assert_int_equal(gaps.idle_hoses[0], hose);
}

static void plumbing_in_a_circle_comes_to_an_end(void **state)
{
    struct car *car = *state;
    const int master = car_add(car, KIND_MASTER, "brake master");
    const int one = car_implied_joint(car);
    const int other = car_implied_joint(car);
    car_hose(car, master, 0, 1, one, 0);
    car_hose(car, one, 0, 1, other, 0);
    car_hose(car, other, 0, 1, master, 0);
    const struct gaps gaps = find_gaps(car);
    assert_int_equal(gaps.count, 0);
    assert_int_equal(gaps.idle_count, 3);
}

/* Random trees, told twice: as a car, and as plain tables from which the gaps are found by brute
 * force along every way from the master to each end. */
enum { MOST_NODES = 14, MOST_HOSES = 3 };
struct tree {
    int count;
    int parent[MOST_NODES];
    enum mount mount[MOST_NODES]; /* unknown for those that are looked through */
    int hoses[MOST_NODES][MOST_HOSES];
    int hose_count[MOST_NODES]; /* on the way from the parent */
    int part[MOST_NODES];
};

static int children(const struct tree *tree, int node)
{
    int count = 0;
    for (int i = 1; i < tree->count; i++)
        count += tree->parent[i] == node;
    return count;
}

static enum mount random_mount(void)
{
    return (enum mount)(1 + rand() % 4); /* few, so that equal ones meet often */
}

static void grow_way(struct car *car, struct tree *tree, int node)
{
    int from = tree->part[tree->parent[node]];
    const int pieces = 1 + rand() % 3;
    for (int k = 0; k < pieces; k++) {
        const int to = k == pieces - 1 ? tree->part[node] : car_implied_joint(car);
        if (rand() % 2)
            tree->hoses[node][tree->hose_count[node]++] = car_hose(car, from, 0, 0.3, to, 0);
        else
            car_pipe(car, from, 0, 0.3, to, 0);
        from = to;
    }
}

static struct tree grow_tree(struct car *car)
{
    struct tree tree = {.count = 2 + rand() % (MOST_NODES - 1)};
    tree.part[0] = car_add(car, KIND_MASTER, "master");
    tree.parent[0] = -1;
    for (int i = 1; i < tree.count; i++) {
        tree.parent[i] = rand() % i;
        tree.part[i] = car_add(car, KIND_JOINT, text_print(car->arena, "tee %d", i));
    }
    for (int i = 0; i < tree.count; i++) {
        const bool silent = i > 0 && children(&tree, i) == 1 && rand() % 3 == 0;
        tree.mount[i] = silent ? MOUNT_UNKNOWN : random_mount();
        car_part(car, tree.part[i])->fitted.on = tree.mount[i];
        if (i > 0)
            grow_way(car, &tree, i);
    }
    return tree;
}

struct expected {
    int bridged, bare, idle;
    bool is_gap[MOST_NODES]; /* by the node beyond it */
    int near[MOST_NODES];
    int hose[MOST_NODES];
    int is_idle[256]; /* by part */
};

/* The way up from a node to the next one with a mount, as a list of hoses from there down. */
static int way_up(const struct tree *tree, int node, int *hoses, int *count)
{
    int up[MOST_NODES * MOST_HOSES];
    int ups = 0;
    do {
        for (int k = tree->hose_count[node] - 1; k >= 0; k--)
            up[ups++] = tree->hoses[node][k];
        node = tree->parent[node];
    } while (tree->mount[node] == MOUNT_UNKNOWN);
    *count = ups;
    for (int k = 0; k < ups; k++)
        hoses[k] = up[ups - 1 - k];
    return node;
}

static void force(const struct tree *tree, struct expected *expected)
{
    memset(expected, 0, sizeof *expected);
    for (int end = 1; end < tree->count; end++) {
        if (children(tree, end) > 0)
            continue;
        for (int node = end; node != 0;) {
            int hoses[MOST_NODES * MOST_HOSES];
            int count;
            const int near = way_up(tree, node, hoses, &count);
            const bool moves = tree->mount[near] != tree->mount[node];
            expected->is_gap[node] = moves;
            expected->near[node] = tree->part[near];
            expected->hose[node] = moves && count > 0 ? hoses[0] : -1;
            for (int k = moves ? 1 : 0; k < count; k++)
                expected->is_idle[hoses[k]] = 1;
            node = near;
        }
    }
    for (int i = 0; i < tree->count; i++) {
        expected->bridged += expected->is_gap[i] && expected->hose[i] >= 0;
        expected->bare += expected->is_gap[i] && expected->hose[i] < 0;
    }
    for (int i = 0; i < 256; i++)
        expected->idle += expected->is_idle[i];
}

static void compare_with_force(const struct tree *tree, const struct gaps *gaps)
{
    struct expected expected;
    force(tree, &expected);
    assert_int_equal(count_state(gaps, GAP_BRIDGED), expected.bridged);
    assert_int_equal(count_state(gaps, GAP_BARE), expected.bare);
    assert_int_equal(gaps->count, expected.bridged + expected.bare);
    for (int i = 0; i < tree->count; i++) {
        if (!expected.is_gap[i])
            continue;
        assert_int_equal(gap_to(gaps, tree->part[i])->hose, expected.hose[i]);
        assert_int_equal(gap_to(gaps, tree->part[i])->near, expected.near[i]);
    }
    assert_int_equal(gaps->idle_count, expected.idle);
    for (int i = 0; i < gaps->idle_count; i++)
        assert_true(expected.is_idle[gaps->idle_hoses[i]]);
}

static void random_trees_agree_with_brute_force(void **state)
{
    (void)state;
    srand(20260314);
    for (int round = 0; round < 1000; round++) {
        struct car car = car_start();
        const struct tree tree = grow_tree(&car);
        assert_true(car.system->part_count < 256);
        const struct gaps gaps = find_gaps(&car);
        compare_with_force(&tree, &gaps);
        car_finish(&car);
    }
}

static bool same_gap(const struct gap *a, const struct gap *b)
{
    return a->near == b->near && a->far == b->far && a->from == b->from && a->to == b->to &&
           a->state == b->state && a->hose == b->hose;
}

static int count_missing_from(const struct gaps *gaps, const struct gaps *others)
{
    int missing = 0;
    for (int i = 0; i < gaps->count; i++) {
        bool found = false;
        for (int k = 0; k < others->count; k++)
            found |= same_gap(&gaps->items[i], &others->items[k]);
        missing += !found;
    }
    return missing;
}

static void on_random_trees_a_forgotten_hose_changes_its_gap_alone(void **state)
{
    (void)state;
    srand(5711);
    for (int round = 0; round < 300; round++) {
        struct car car = car_start();
        const struct tree tree = grow_tree(&car);
        const struct gaps before = find_gaps(&car);
        for (int i = 1; i < tree.count; i++) {
            if (tree.hose_count[i] != 1 || tree.mount[i] == MOUNT_UNKNOWN ||
                tree.mount[tree.parent[i]] == MOUNT_UNKNOWN ||
                tree.mount[i] == tree.mount[tree.parent[i]])
                continue;
            forget_hose(&car, tree.hoses[i][0]);
            const struct gaps after = find_gaps(&car);
            assert_int_equal(count_missing_from(&after, &before), 1);
            assert_int_equal(gap_to(&after, tree.part[i])->state, GAP_BARE);
            break;
        }
        car_finish(&car);
    }
}

static void on_random_trees_the_mount_of_an_end_changes_its_gap_alone(void **state)
{
    (void)state;
    srand(93);
    for (int round = 0; round < 300; round++) {
        struct car car = car_start();
        struct tree tree = grow_tree(&car);
        const struct gaps before = find_gaps(&car);
        const int end = tree.count - 1; /* the last one feeds nothing */
        tree.mount[end] = (enum mount)(1 + tree.mount[end] % 4);
        car_part(&car, tree.part[end])->fitted.on = tree.mount[end];
        const struct gaps after = find_gaps(&car);
        compare_with_force(&tree, &after);
        assert_true(count_missing_from(&after, &before) <= 1);
        assert_true(count_missing_from(&before, &after) <= 1);
        car_finish(&car);
    }
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(mounts_move_both_ways_or_not_at_all),
        TEST(pairs_of_mounts_move_as_on_a_car),
        TEST(the_usual_car_has_four_bridged_gaps),
        TEST(a_hose_taken_away_is_the_one_that_is_missing),
        TEST(a_slave_on_the_body_needs_no_hose_and_its_hose_is_idle),
        TEST(an_axle_tee_on_the_body_moves_the_gap_to_the_drums),
        TEST(an_independent_rear_axle_needs_a_hose_to_each_wheel),
        TEST(an_axle_tee_that_does_not_say_cannot_be_told),
        TEST(a_forgotten_hose_does_not_hide_behind_a_tee_that_does_not_say),
        TEST(a_front_tee_on_hard_pipe_is_on_the_body),
        TEST(before_a_steered_beam_a_front_tee_must_say),
        TEST(an_axle_that_does_not_say_leaves_its_brakes_untold),
        TEST(a_hard_clutch_pipe_can_be_accepted_with_a_reason),
        TEST(what_is_accepted_for_one_wheel_is_not_for_what_it_feeds),
        TEST(a_second_hose_over_one_gap_is_idle),
        TEST(two_circuits_in_one_caliper_need_two_hoses),
        TEST(a_valve_without_a_mount_is_looked_through),
        TEST(a_motorcycle_front_brake_hangs_between_handlebar_and_fork),
        TEST(a_tee_behind_a_hose_that_feeds_only_its_own_mount_can_be_told),
        TEST(plumbing_in_a_circle_comes_to_an_end),
        TEST(random_trees_agree_with_brute_force),
        TEST(on_random_trees_a_forgotten_hose_changes_its_gap_alone),
        TEST(on_random_trees_the_mount_of_an_end_changes_its_gap_alone),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
