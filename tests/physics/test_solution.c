#include "physics/solution.h"

#include <math.h>
#include <string.h>

#include "parts/keys/key.h"
#include "support/driven_car.h"
#include "support/near.h"

static struct solution *room_of(const struct driven_car *driven)
{
    return solution_room(driven->car.system, driven->network, driven->car.arena);
}

static void solve_at(const struct driven_car *driven, const struct state *state, double effort,
                     struct solution *into)
{
    struct state pressed = *state;
    pressed.effort.n = effort;
    solve(driven->car.system, driven->network, &pressed, into);
}

static int circuit_at(const struct driven_car *driven, int part)
{
    return driven->network->vertices[network_vertex(driven->network, part, 0)].circuit;
}

/* Least slopes: without help 1 N makes 3.8 * 0.95 * 0.95/334.585e-6 = 10.25 kPa, with it 2.8 times
 * that; travel grows at least by the flexing of 1/200 mm a newton. */
static void more_effort_gives_more_pressure_and_more_travel(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    for (int assisted = 0; assisted < 2; assisted++) {
        struct state pressed = state_usual();
        pressed.assisted = assisted == 1;
        double pressure = -1e9, travel = -1;
        for (double effort = 12; effort <= 500; effort += 4) {
            solve_at(&driven, &pressed, effort, into);
            double p = into->circuits[0].pressure.pa;
            double x = into->pedals[driven.brake_pedal].travel.m;
            if (pressure >= 0) {
                assert_true(p - pressure > 4 * 10.24e3);
                assert_true(x - travel > 4 * 0.005e-3);
            }
            pressure = p;
            travel = x;
        }
    }
    driven_finish(&driven);
}

static void volumes_by_cause_add_up(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    solve(driven.car.system, driven.network, &usual, into);
    for (int c = 0; c < driven.network->circuit_count; c++) {
        double sum = 0;
        for (int cause = 0; cause < CAUSE_COUNT; cause++)
            sum += into->circuits[c].by_cause[cause].m3;
        assert_true(sum > 0);
        near_rel(into->circuits[c].volume.m3, sum, 1e-14);
    }
    driven_finish(&driven);
}

static void each_pedal_is_pressed_with_its_own_effort_unless_told(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    solve(driven.car.system, driven.network, &usual, into);
    near(into->pedals[driven.brake_pedal].effort.n, 220, 0);
    solve_at(&driven, &usual, 300, into);
    near(into->pedals[driven.brake_pedal].effort.n, 300, 0);
    near_unknown(into->pedals[driven.clutch_pedal].travel.m);
    driven_finish(&driven);
}

/* Brake force is torque over the tyre's 0.285 m; the car weighs 1320 kg, and turning parts weigh
 * like 5 % more. */
static void the_car_slows_by_the_sum_of_its_brakes(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    solve(driven.car.system, driven.network, &usual, into);
    const struct brake_state *b = into->brakes;
    const struct usual_car *u = &driven.usual;
    double front = (b[u->front_left].torque.nm + b[u->front_right].torque.nm) / 0.285;
    double rear = (b[u->rear_left].torque.nm + b[u->rear_right].torque.nm) / 0.285;
    near_rel(into->front.n, front, 1e-12);
    near_rel(into->rear.n, rear, 1e-12);
    near_rel(into->deceleration.m_s2, (front + rear) / (1320 * 1.05), 1e-12);
    near_unknown(b[u->rear_left].clamp.n);
    near_unknown(b[u->front_left].pressure[1].pa);
    driven_finish(&driven);
}

static void on_the_floor_the_pedal_gets_what_its_travel_lets_through(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    solve(driven.car.system, driven.network, &usual, into);
    double needed = into->pedals[driven.brake_pedal].travel.m;
    assert_false(into->pedals[driven.brake_pedal].on_floor);
    near(into->pedals[driven.brake_pedal].left.m, 150e-3 - needed, 1e-12);

    driven_say(&driven, driven.brake_pedal, "travel", needed - 4e-3);
    solve(driven.car.system, driven.network, &usual, into);
    const struct pedal_state pedal = into->pedals[driven.brake_pedal];
    assert_true(pedal.on_floor && !pedal.bottomed && into->converged);
    near(pedal.left.m, 0, 0);
    near(pedal.travel.m, needed - 4e-3, 0);
    assert_true(pedal.effort.n > 0 && pedal.effort.n < 220);
    /* Without a floor the found effort needs just that travel. */
    struct state endless = usual;
    endless.no_floor = true;
    solve_at(&driven, &endless, pedal.effort.n, into);
    near(into->pedals[driven.brake_pedal].travel.m, needed - 4e-3, 1e-8);
    solve_at(&driven, &endless, 220, into);
    near(into->pedals[driven.brake_pedal].travel.m, needed, 1e-12);
    driven_finish(&driven);
}

static void at_the_end_of_its_bore_a_master_gives_no_more(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    driven_say(&driven, driven.usual.master, "primary stroke", 8e-3);
    solve(driven.car.system, driven.network, &usual, into);
    const struct pedal_state pedal = into->pedals[driven.brake_pedal];
    assert_true(pedal.bottomed && !pedal.on_floor);
    near(pedal.left.m, 0, 0);
    assert_true(pedal.effort.n < 220);
    near(into->circuits[circuit_at(&driven, driven.usual.front_left)].stroke.m, 8e-3, 1e-8);
    driven_finish(&driven);
}

/* So much play that the floor comes before the port is shut: no effort fits. */
static void a_pedal_that_never_gets_there_makes_no_pressure(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state lost = state_usual();
    lost.lost_circuit = circuit_at(&driven, driven.usual.front_left);
    driven_say(&driven, driven.brake_pedal, "travel", 60e-3); /* 17 mm * 3.8 is more */
    solve(driven.car.system, driven.network, &lost, into);
    assert_true(into->pedals[driven.brake_pedal].on_floor);
    near(into->pedals[driven.brake_pedal].travel.m, 60e-3, 0);
    near(into->deceleration.m_s2, 0, 0);
    driven_finish(&driven);
}

static void a_lost_circuit_leaves_the_other_axle(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *usual = room_of(&driven), *into = room_of(&driven);
    struct state state_now = state_usual();
    solve(driven.car.system, driven.network, &state_now, usual);
    state_now.lost_circuit = circuit_at(&driven, driven.usual.rear_left);
    solve(driven.car.system, driven.network, &state_now, into);
    near(into->rear.n, 0, 0);
    near_rel(into->front.n, usual->front.n, 1e-12);
    assert_true(into->pedals[driven.brake_pedal].travel.m >
                usual->pedals[driven.brake_pedal].travel.m + 20e-3);
    driven_finish(&driven);
}

static void the_only_circuit_lost_leaves_nothing(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    /* One circuit: the rear pipe starts at the front tee. */
    driven_say(&driven, driven.usual.master, "type", MASTER_SINGLE);
    for (int i = 0; i < driven.car.system->connection_count; i++) {
        struct connection *joined = &driven.car.system->connections[i];
        if (joined->a.part == driven.usual.master && joined->a.chamber == 1)
            joined->a = (struct port){driven.usual.front_tee, 0, NULL};
    }
    driven_settle(&driven);
    struct solution *into = room_of(&driven);
    struct state lost = state_usual();
    solve(driven.car.system, driven.network, &lost, into);
    assert_true(into->rear.n > 0);
    lost.lost_circuit = circuit_at(&driven, driven.usual.rear_left);
    assert_int_equal(lost.lost_circuit, circuit_at(&driven, driven.usual.front_left));
    solve(driven.car.system, driven.network, &lost, into);
    const struct pedal_state pedal = into->pedals[driven.brake_pedal];
    near(into->deceleration.m_s2, 0, 0);
    assert_true(pedal.on_floor || pedal.bottomed);
    near(pedal.left.m, 0, 0);
    driven_finish(&driven);
}

static void an_unknown_pipe_leaves_the_pressures(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    car_part(&driven.car, driven.usual.axle_hose)->as.hose.length.m = NAN;
    struct state usual = state_usual();
    solve(driven.car.system, driven.network, &usual, into);
    assert_true(into->deceleration.m_s2 > 3);
    assert_true(into->circuits[circuit_at(&driven, driven.usual.rear_left)].pressure.pa > 1e6);
    assert_true(into->circuits[circuit_at(&driven, driven.usual.front_left)].volume.m3 > 1e-6);
    near_unknown(into->circuits[circuit_at(&driven, driven.usual.rear_left)].volume.m3);
    near_unknown(into->pedals[driven.brake_pedal].travel.m);
    near_unknown(into->pedals[driven.brake_pedal].left.m);
    driven_finish(&driven);
}

/* The same solution in a room that was used for other things before. */
static void a_room_remembers_nothing_that_counts(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *used = room_of(&driven), *fresh = room_of(&driven);
    struct state usual = state_usual(), other = state_usual();
    other.lost_circuit = 0;
    other.brakes.slack = true;
    solve_at(&driven, &other, 500, used);
    driven_say(&driven, driven.usual.rear_left, "friction", 0.30);
    solve_at(&driven, &usual, 100, used);
    driven_say(&driven, driven.usual.rear_left, "friction", 0.42);
    solve(driven.car.system, driven.network, &usual, used);
    solve(driven.car.system, driven.network, &usual, fresh);
    size_t parts = (size_t)driven.car.system->part_count;
    size_t circuits = (size_t)driven.network->circuit_count;
    assert_memory_equal(used->circuits, fresh->circuits, circuits * sizeof *used->circuits);
    assert_memory_equal(used->brakes, fresh->brakes, parts * sizeof *used->brakes);
    assert_memory_equal(used->pressures, fresh->pressures,
                        (size_t)driven.network->vertex_count * sizeof *used->pressures);
    near(used->pedals[driven.brake_pedal].travel.m, fresh->pedals[driven.brake_pedal].travel.m, 0);
    near(used->deceleration.m_s2, fresh->deceleration.m_s2, 0);
    driven_finish(&driven);
}

static void the_effort_for_a_stop_gives_that_stop(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct acceleration wanted = {4.9};
    for (int assisted = 0; assisted < 2; assisted++) {
        struct state pressed = state_usual();
        pressed.assisted = assisted == 1;
        struct force effort =
            solve_effort_by_force(driven.car.system, driven.network, &pressed, wanted, into);
        assert_true(solve_effort_fits(driven.car.system, driven.network, &pressed, effort, into));
        solve_at(&driven, &pressed, effort.n, into);
        near(into->deceleration.m_s2, 4.9, 1e-6);
    }
    struct state usual = state_usual();
    struct acceleration too_much = {900};
    near_unknown(
        solve_effort_by_force(driven.car.system, driven.network, &usual, too_much, into).n);
    driven_say(&driven, driven.brake_pedal, "travel", 30e-3);
    struct force effort =
        solve_effort_by_force(driven.car.system, driven.network, &usual, wanted, into);
    assert_false(solve_effort_fits(driven.car.system, driven.network, &usual, effort, into));
    driven_finish(&driven);
}

#define HAIR 1e-6

/* Powers of the unit of length in each dimension, when pressures stay what they are. */
static double power_of_length(enum dimension dimension)
{
    switch (dimension) {
    case DIMENSION_LENGTH:
    case DIMENSION_STIFFNESS: /* N/m */
        return 1;
    case DIMENSION_AREA:
    case DIMENSION_FORCE:
    case DIMENSION_MASS: /* so that decelerations stay as well */
    case DIMENSION_SWELLING:
        return 2;
    case DIMENSION_VOLUME:
    case DIMENSION_TORQUE:
        return 3;
    default:
        return 0;
    }
}

static void grow(struct part *part, double times)
{
    size_t count;
    const struct key *rows = key_table(part->kind, &count);
    for (size_t i = 0; i < count; i++) {
        double value = key_value(part, &rows[i]);
        double power = power_of_length(rows[i].dimension);
        bool quantity = rows[i].form == FORM_QUANTITY || rows[i].form == FORM_BORES;
        if (quantity && !isnan(value) && power > 0)
            key_set(part, &rows[i], value * pow(times, power));
    }
}

/* A car of twice the size, pressed with four times the effort, has the same pressures and
 * decelerations, twice the travels and eight times the volumes: no law has a unit hidden in it.
 * Chambers are said, since the usual depths do not grow; hoses have a measured swelling and keep
 * an inside of a thousandth of a mm, since the rule's bands are of given sizes. */
static void a_car_of_twice_the_size_is_the_same_car(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.fluid, "air", 0.3e-6);
    struct system *system = driven.car.system;
    for (int i = 0; i < system->part_count; i++) {
        struct part *part = &system->parts[i];
        bool assumed;
        if (part->kind == KIND_HOSE) {
            part->as.hose.expansion.m3_m = 0.4e-6;
            part->as.hose.inside.m = HAIR;
        } else if (part_chambers(part) > 0 && part->kind != KIND_PIPE) {
            part->fitted.chamber = part_chamber_volume(part, 0, &assumed);
        }
    }
    struct solution *small = room_of(&driven), *large = room_of(&driven);
    struct state usual = state_usual();
    solve(system, driven.network, &usual, small);
    for (int i = 0; i < system->part_count; i++) {
        grow(&system->parts[i], 2);
        if (system->parts[i].kind == KIND_HOSE)
            system->parts[i].as.hose.inside.m = HAIR;
    }
    solve(system, driven.network, &usual, large);

    near_rel(large->deceleration.m_s2, small->deceleration.m_s2, 1e-12);
    for (int c = 0; c < driven.network->circuit_count; c++) {
        near_rel(large->circuits[c].pressure.pa, small->circuits[c].pressure.pa, 1e-12);
        for (int cause = 0; cause < CAUSE_COUNT; cause++)
            near(large->circuits[c].by_cause[cause].m3, 8 * small->circuits[c].by_cause[cause].m3,
                 1e-12);
    }
    near_rel(large->pedals[driven.brake_pedal].rod.n, 4 * small->pedals[driven.brake_pedal].rod.n,
             1e-12);
    near_rel(large->pedals[driven.brake_pedal].travel.m,
             2 * small->pedals[driven.brake_pedal].travel.m, 1e-6);
    near_rel(large->clutches[driven.usual.slave].bearing_travel.m,
             2 * small->clutches[driven.usual.slave].bearing_travel.m, 1e-6);
    driven_finish(&driven);
}

static void every_cause_has_its_own_words(void **state)
{
    (void)state;
    for (int a = 0; a < CAUSE_COUNT; a++) {
        assert_true(strlen(cause_words((enum cause)a)) > 0);
        for (int b = 0; b < a; b++)
            assert_string_not_equal(cause_words((enum cause)a), cause_words((enum cause)b));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(more_effort_gives_more_pressure_and_more_travel),
        cmocka_unit_test(volumes_by_cause_add_up),
        cmocka_unit_test(each_pedal_is_pressed_with_its_own_effort_unless_told),
        cmocka_unit_test(the_car_slows_by_the_sum_of_its_brakes),
        cmocka_unit_test(on_the_floor_the_pedal_gets_what_its_travel_lets_through),
        cmocka_unit_test(at_the_end_of_its_bore_a_master_gives_no_more),
        cmocka_unit_test(a_pedal_that_never_gets_there_makes_no_pressure),
        cmocka_unit_test(a_lost_circuit_leaves_the_other_axle),
        cmocka_unit_test(the_only_circuit_lost_leaves_nothing),
        cmocka_unit_test(an_unknown_pipe_leaves_the_pressures),
        cmocka_unit_test(a_room_remembers_nothing_that_counts),
        cmocka_unit_test(the_effort_for_a_stop_gives_that_stop),
        cmocka_unit_test(a_car_of_twice_the_size_is_the_same_car),
        cmocka_unit_test(every_cause_has_its_own_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
