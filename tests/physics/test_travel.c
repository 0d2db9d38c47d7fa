#include "physics/travel.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

struct taken {
    struct volume by_cause[CAUSE_COUNT];
};

static int circuit_at(const struct driven_car *driven, int part)
{
    return driven->network->vertices[network_vertex(driven->network, part, 0)].circuit;
}

/* What a circuit takes with all of it at one pressure. */
static struct taken take(const struct driven_car *driven, int circuit, double pa, bool slack)
{
    struct taken taken;
    struct pressure *all =
        ARENA_ARRAY(driven->car.arena, (size_t)driven->network->vertex_count, struct pressure);
    for (int i = 0; i < driven->network->vertex_count; i++)
        all[i].pa = pa;
    struct state pressed = state_usual();
    pressed.brakes.slack = slack;
    travel_volumes(driven->car.system, driven->network, circuit, all, &pressed, taken.by_cause);
    return taken;
}

/* Front: two discs with 2 of 48 mm (1809.557 mm2 each), fixed calipers; 8 MPa. */
static void discs_take_clearance_pads_and_bodies(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct taken taken = take(&driven, circuit_at(&driven, driven.usual.front_left), 8e6, false);
    double piston = 1809.557e-6;
    near_rel(taken.by_cause[CAUSE_CLEARANCE].m3, 4 * piston * 0.15e-3, 1e-6);
    near_rel(taken.by_cause[CAUSE_LININGS].m3, 4 * piston * 0.15e-3 * 0.8, 1e-6);
    near_rel(taken.by_cause[CAUSE_BODY].m3, 2 * piston * 0.15e-3 * 0.8, 1e-6);
    near(taken.by_cause[CAUSE_SLAVE].m3, 0, 0);
    driven_finish(&driven);
}

/* Rear: two drums with two pistons of 19.05 mm (285.023 mm2 each). */
static void slack_shoes_take_three_times_the_clearance(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int rear = circuit_at(&driven, driven.usual.rear_left);
    struct taken set = take(&driven, rear, 8e6, false), slack = take(&driven, rear, 8e6, true);
    near_rel(set.by_cause[CAUSE_CLEARANCE].m3, 4 * 285.023e-6 * 0.4e-3, 1e-5);
    near_rel(slack.by_cause[CAUSE_CLEARANCE].m3, 3 * 4 * 285.023e-6 * 0.4e-3, 1e-5);
    near_rel(set.by_cause[CAUSE_LININGS].m3, 4 * 285.023e-6 * 0.3e-3 * 0.8, 1e-5);
    near(slack.by_cause[CAUSE_LININGS].m3, set.by_cause[CAUSE_LININGS].m3, 0);
    near(set.by_cause[CAUSE_BODY].m3, 0, 0);
    driven_finish(&driven);
}

/* One litre of glycol fluid of 20 degC gives way by 3.521 mL at 7 MPa (Murnaghan with K0 1.95 GPa
 * and K' 10, worked out elsewhere); all that is in the circuit does so in proportion. */
static void fluid_gives_way_in_proportion_to_what_is_there(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int rear = circuit_at(&driven, driven.usual.rear_left);
    double litres = 0;
    for (int e = 0; e < driven.network->edge_count; e++)
        if (driven.network->edges[e].circuit == rear &&
            driven.network->edges[e].kind == EDGE_CARRIER)
            litres += 1e3 * network_edge_volume(driven.car.system, &driven.network->edges[e]);
    double in_carriers = litres;
    driven_say(&driven, driven.usual.rear_left, "chamber", 3e-6);
    driven_say(&driven, driven.usual.rear_right, "chamber", 4e-6);
    for (int i = 0; i < driven.car.system->part_count; i++)
        if (driven.car.system->parts[i].kind == KIND_JOINT)
            driven.car.system->parts[i].fitted.chamber.m3 = 1e-6;
    driven_say(&driven, driven.usual.master, "chamber", 5e-6);
    litres = in_carriers + (3 + 4 + 1 + 1 + 5) * 1e-3; /* drums, joint, tee, before the piston */
    struct taken taken = take(&driven, rear, 7e6, false);
    near_rel(taken.by_cause[CAUSE_FLUID].m3, litres * 3.521e-6, 2e-4);
    driven_finish(&driven);
}

static void air_shrinks_by_boyle(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.fluid, "air", 1e-6);
    int rear = circuit_at(&driven, driven.usual.rear_left);
    /* 1 mL at 50 bar: 98.0 % of it goes. */
    near(take(&driven, rear, 50e5, false).by_cause[CAUSE_AIR].m3, 0.980e-6, 0.0005e-6);
    driven_finish(&driven);
}

static void an_unknown_length_spoils_only_what_rests_on_it(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int front = circuit_at(&driven, driven.usual.front_left);
    car_part(&driven.car, driven.usual.front_left_hose)->as.hose.length.m = NAN;
    struct taken taken = take(&driven, front, 7e6, false);
    near_unknown(taken.by_cause[CAUSE_HOSES].m3);
    near_unknown(taken.by_cause[CAUSE_FLUID].m3);
    assert_true(taken.by_cause[CAUSE_PIPES].m3 > 0);
    assert_true(taken.by_cause[CAUSE_CLEARANCE].m3 > 0);
    assert_true(taken.by_cause[CAUSE_LININGS].m3 > 0);
    int rear = circuit_at(&driven, driven.usual.rear_left);
    assert_true(take(&driven, rear, 7e6, false).by_cause[CAUSE_FLUID].m3 > 0);
    driven_finish(&driven);
}

/* Half of a circuit's fluid at 1 atm gauge, half at 3 atm: of 1 mL the first half loses 1/2, the
 * other 3/4; 0.25 and 0.375 mL, by hand. Each where it is: at the end alone 0.375 mL. */
static void air_is_spread_and_each_piece_is_at_its_own_pressure(void **state)
{
    (void)state;
    struct car car = car_start();
    const int master = car_add(&car, KIND_MASTER, "brake master");
    const int disc = car_brake(&car, KIND_DISC, AXLE_FRONT, SIDE_LEFT);
    struct pipe *line = &car_part(&car, car_pipe(&car, master, 0, 1.0, disc, 0))->as.pipe;
    line->size.m = 4.75e-3;
    line->wall.m = 0.7e-3;
    car_part(&car, master)->fitted.chamber = (struct volume){10e-6};
    const struct network *network = network_build(car.system, car.arena, NULL);
    const int near_end = network->circuits[0].source, far = network_vertex(network, disc, 0);
    double pipe = 0;
    for (int i = 0; i < network->edge_count; i++)
        pipe += network_edge_volume(car.system, &network->edges[i]);
    car_part(&car, disc)->fitted.chamber = (struct volume){10e-6 + pipe};
    struct pressure *at = ARENA_ARRAY(car.arena, (size_t)network->vertex_count, struct pressure);
    at[near_end].pa = 101325;
    at[far].pa = 3 * 101325;
    const struct volume one = {1e-6};
    assert_true(pipe > 1e-6);
    const double whole = 20e-6 + 2 * pipe, with_pipe = (10e-6 + pipe) / whole;
    const double front = travel_air(car.system, network, near_end, at, one).m3;
    /* the pipe is at the pressure of its near end */
    near(front, 1e-6 * (with_pipe * 0.5 + (1 - with_pipe) * 0.75), 1e-15);
    near(front, 0.625e-6, 1e-15);
    near(travel_air(car.system, network, far, at, one).m3, 0.375e-6, 1e-15);
    near(travel_air(car.system, network, far, at, (struct volume){0}).m3, 0, 0);
    at[far].pa = NAN;
    assert_true(isnan(travel_air(car.system, network, near_end, at, one).m3));
    near(travel_air(car.system, network, near_end, at, (struct volume){0}).m3, 0, 0);
    car_finish(&car);
}

static void more_pressure_takes_more_of_every_cause_that_gives(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.fluid, "air", 0.2e-6);
    int front = circuit_at(&driven, driven.usual.front_left);
    struct taken before = take(&driven, front, 0.2e6, false);
    for (double p = 0.4e6; p < 20e6; p += 0.2e6) {
        struct taken now = take(&driven, front, p, false);
        for (int cause = 0; cause < CAUSE_SLAVE; cause++) {
            if (cause == CAUSE_CLEARANCE)
                near(now.by_cause[cause].m3, before.by_cause[cause].m3, 0);
            else
                assert_true(now.by_cause[cause].m3 > before.by_cause[cause].m3);
        }
        before = now;
    }
    driven_finish(&driven);
}

static struct taken take_in(const struct driven_car *driven, int circuit, const struct state *in)
{
    struct taken taken;
    struct pressure *all =
        ARENA_ARRAY(driven->car.arena, (size_t)driven->network->vertex_count, struct pressure);
    for (int i = 0; i < driven->network->vertex_count; i++)
        all[i].pa = 7e6;
    travel_volumes(driven->car.system, driven->network, circuit, all, in, taken.by_cause);
    return taken;
}

/* A litre of glycol fluid gives way by 5.231 mL at 7 MPa and 100 degC, by 3.521 mL at 20 degC
 * (Murnaghan with K0 1.30 and 1.95 GPa and K' 10, worked out elsewhere). */
static void hot_fluid_gives_way_half_as_much_again(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int front = circuit_at(&driven, driven.usual.front_left);
    struct state cold = state_usual(), hot = state_usual();
    hot.brakes.hot = true;
    near_rel(take_in(&driven, front, &hot).by_cause[CAUSE_FLUID].m3 /
                 take_in(&driven, front, &cold).by_cause[CAUSE_FLUID].m3,
             5.231 / 3.521, 3e-4);
    driven_say(&driven, driven.fluid, "temperature hot", 20);
    near_rel(take_in(&driven, front, &hot).by_cause[CAUSE_FLUID].m3,
             take_in(&driven, front, &cold).by_cause[CAUSE_FLUID].m3, 0);
    driven_finish(&driven);
}

static void a_state_may_make_all_hoses_good_or_worn(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int front = circuit_at(&driven, driven.usual.front_left);
    struct state said = state_usual(), good = said, worn = said;
    good.hoses = HOSES_GOOD;
    worn.hoses = HOSES_WORN;
    driven_say(&driven, driven.usual.front_left_hose, "state", HOSE_WORN); /* one of two */
    double a = take_in(&driven, front, &good).by_cause[CAUSE_HOSES].m3;
    double b = take_in(&driven, front, &said).by_cause[CAUSE_HOSES].m3;
    double c = take_in(&driven, front, &worn).by_cause[CAUSE_HOSES].m3;
    near_rel(a, 0.45 * c, 1e-12);
    near_rel(b, (0.45 + 1) / 2 * c, 1e-12);
    driven_finish(&driven);
}

static void air_of_the_state_comes_on_top_of_that_of_the_fluid(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.fluid, "air", 0.5e-6);
    int front = circuit_at(&driven, driven.usual.front_left);
    struct state more = state_usual();
    double before = take_in(&driven, front, &more).by_cause[CAUSE_AIR].m3;
    more.more_air.m3 = 1e-6;
    near_rel(take_in(&driven, front, &more).by_cause[CAUSE_AIR].m3, 3 * before, 1e-12);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(discs_take_clearance_pads_and_bodies),
        cmocka_unit_test(slack_shoes_take_three_times_the_clearance),
        cmocka_unit_test(fluid_gives_way_in_proportion_to_what_is_there),
        cmocka_unit_test(air_shrinks_by_boyle),
        cmocka_unit_test(air_is_spread_and_each_piece_is_at_its_own_pressure),
        cmocka_unit_test(an_unknown_length_spoils_only_what_rests_on_it),
        cmocka_unit_test(hot_fluid_gives_way_half_as_much_again),
        cmocka_unit_test(a_state_may_make_all_hoses_good_or_worn),
        cmocka_unit_test(air_of_the_state_comes_on_top_of_that_of_the_fluid),
        cmocka_unit_test(more_pressure_takes_more_of_every_cause_that_gives),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
