/* Laws that hold for the whole of a car, whatever its numbers: what rises, how fast at the least,
 * what is left when all that gives way is taken away, what adds up, what scales. */
#include <math.h>

#include "parts/keys/key.h"
#include "physics/press.h"
#include "physics/pressure.h"
#include "physics/travel.h"
#include "support/driven_car.h"
#include "support/near.h"

#define BORE_AREA 334.585e-6 /* of 20.64 mm, m2 */
#define RATIO     3.8

static struct solution *room_of(const struct driven_car *driven)
{
    return solution_room(driven->car.system, driven->network, driven->car.arena);
}

static int circuit_at(const struct driven_car *driven, int part)
{
    return driven->network->vertices[network_vertex(driven->network, part, 0)].circuit;
}

static struct reach pressed(const struct driven_car *driven, const struct state *state,
                            double effort, struct solution *into)
{
    return press_travel(driven->car.system, driven->network, state, driven->brake_pedal,
                        (struct force){effort}, into);
}

/* A servo never gives less than its input once it has cut in, so a newton more at the pad is at
 * least 3.8 * 0.95 N more on the rod, and 0.95 of that over the area of the bore in pressure. */
static void pressure_rises_with_effort_by_at_least_lever_and_bore(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.usual.master, "primary spring", 90);
    driven_say(&driven, driven.usual.master, "secondary spring", 60);
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    int front = circuit_at(&driven, driven.usual.front_left);
    int rear = circuit_at(&driven, driven.usual.rear_left);
    double least = (1 - 1e-4) * RATIO * 0.95 * 0.95 / BORE_AREA;
    pressed(&driven, &usual, 12, into); /* the servo cuts in at 11.1 N */
    double before = 12, p_front = into->circuits[front].pressure.pa,
           p_rear = into->circuits[rear].pressure.pa;
    for (double effort = 12.5; effort < 900; effort *= 1.07) {
        pressed(&driven, &usual, effort, into);
        assert_true(into->circuits[front].pressure.pa - p_front >= least * (effort - before));
        assert_true(into->circuits[rear].pressure.pa - p_rear >= least * (effort - before));
        p_front = into->circuits[front].pressure.pa;
        p_rear = into->circuits[rear].pressure.pa;
        before = effort;
    }
    driven_finish(&driven);
}

/* The volumes of a circuit with all of it at one pressure: of pads, linings, shoes and bodies, and
 * of all causes together. */
struct volumes {
    double even, all;
};

static struct volumes volumes_at(const struct driven_car *driven, int circuit, double pa)
{
    struct volume by_cause[CAUSE_COUNT];
    struct pressure *all =
        ARENA_ARRAY(driven->car.arena, (size_t)driven->network->vertex_count, struct pressure);
    for (int i = 0; i < driven->network->vertex_count; i++)
        all[i].pa = pa;
    struct state usual = state_usual();
    travel_volumes(driven->car.system, driven->network, circuit, all, &usual, by_cause);
    struct volumes volumes = {by_cause[CAUSE_LININGS].m3 + by_cause[CAUSE_BODY].m3, 0};
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        volumes.all += by_cause[cause].m3;
    return volumes;
}

/* Pads and bodies of two fixed calipers of 2 * 48 mm give evenly: 4 pistons of 1809.557 mm2 times
 * 0.15 mm and 2 times 0.15 mm at 10 MPa. Shoes: 4 pistons of 285.023 mm2 times 0.3 mm. */
static void volume_rises_with_pressure_by_at_least_what_gives_evenly(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.fluid, "air", 0.2e-6);
    const struct {
        int circuit;
        double least;
    } rows[] = {{circuit_at(&driven, driven.usual.front_left), 6 * 1809.557e-6 * 0.15e-3 / 10e6},
                {circuit_at(&driven, driven.usual.rear_left), 4 * 285.023e-6 * 0.3e-3 / 10e6}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double before = 1e3;
        struct volumes volumes = volumes_at(&driven, rows[i].circuit, before);
        for (double pa = 2e3; pa < 25e6; pa *= 1.2) {
            struct volumes now = volumes_at(&driven, rows[i].circuit, pa);
            double least = (1 - 1e-6) * rows[i].least * (pa - before);
            assert_true(now.even - volumes.even >= least);
            assert_true(now.all - volumes.all >= least + 1e-16 * (pa - before)); /* and the fluid */
            volumes = now;
            before = pa;
        }
    }
    driven_finish(&driven);
}

/* Says a key of all parts that have it. */
static void say_everywhere(struct driven_car *driven, const char *name, double value)
{
    for (int i = 0; i < driven->car.system->part_count; i++) {
        const struct key *key = key_find(driven->car.system->parts[i].kind, name);
        if (key != NULL && key->form == FORM_QUANTITY)
            driven_say(driven, i, name, value);
    }
}

/* With nothing that gives way what is left is play, gap, ports and the clearances over the bore:
 * 4 pistons of 1809.557 mm2 times 0.15 mm in front, 4 of 285.023 mm2 times 0.4 mm behind. */
static void a_rigid_car_without_air_goes_only_its_clearances(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    const char *const gives[] = {"pad squash", "body opening", "give"};
    for (size_t i = 0; i < sizeof gives / sizeof gives[0]; i++)
        say_everywhere(&driven, gives[i], 0);
    say_everywhere(&driven, "stiffness", INFINITY);
    say_everywhere(&driven, "length", 0); /* pipes and hoses: nothing in them to give way */
    say_everywhere(&driven, "chamber", 1e-15);
    double clearances = 4 * 1809.557e-6 * 0.15e-3 + 4 * 285.023e-6 * 0.4e-3;
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    for (double effort = 60; effort < 900; effort *= 2)
        near_rel(pressed(&driven, &usual, effort, into).travel.m,
                 3e-3 + RATIO * (0.8e-3 + 1.2e-3 + clearances / BORE_AREA), 1e-5);
    driven_finish(&driven);
}

/* As the air goes to nothing so does what it costs, in proportion. */
static void travel_goes_steadily_to_that_without_air(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    double without = pressed(&driven, &usual, 220, into).travel.m;
    for (double air = 1e-6; air > 1e-12; air /= 10) {
        driven_say(&driven, driven.fluid, "air", air);
        double p = into->circuits[0].pressure.pa, more = 2 * air * p / (101325 + p);
        near_rel(pressed(&driven, &usual, 220, into).travel.m - without, RATIO * more / BORE_AREA,
                 1e-4);
    }
    driven_finish(&driven);
}

/* What lies beyond a tee's branches and the rest make the whole circuit, piece by piece. */
static void volumes_add_up_along_a_circuit(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *into = room_of(&driven);
    struct state usual = state_usual();
    pressed(&driven, &usual, 220, into);
    for (int c = 0; c < driven.network->circuit_count; c++) {
        const struct circuit *circuit = &driven.network->circuits[c];
        if (circuit->clutch)
            continue;
        near_rel(travel_volume_beyond(driven.car.system, driven.network, circuit->source,
                                      into->pressures, &usual)
                     .m3,
                 into->circuits[c].volume.m3, 1e-12);
        for (int i = 0; i < circuit->vertex_count; i++) {
            int at = circuit->vertices[i];
            double whole =
                travel_volume_beyond(driven.car.system, driven.network, at, into->pressures, &usual)
                    .m3;
            double branches = 0;
            for (int k = 0; k < circuit->vertex_count; k++)
                if (driven.network->vertices[circuit->vertices[k]].parent == at)
                    branches += travel_volume_beyond(driven.car.system, driven.network,
                                                     circuit->vertices[k], into->pressures, &usual)
                                    .m3;
            assert_true(branches <= whole * (1 + 1e-12));
            const struct part *part = &driven.car.system->parts[driven.network->vertices[at].part];
            double own = 0;
            if (part->kind == KIND_DISC)
                own = disc_volume(&part->as.disc, 0, into->pressures[at], NULL).pads.m3;
            else if (part->kind == KIND_DRUM)
                own = drum_volume(&part->as.drum, into->pressures[at], NULL).give.m3;
            assert_true(whole > branches + own);
        }
    }
    driven_finish(&driven);
}

/* How a quantity grows in a car that is larger by a factor, its pressures and materials being the
 * same; 0: it does not. */
static int power_of(enum dimension dimension)
{
    switch (dimension) {
    case DIMENSION_LENGTH:
    case DIMENSION_STIFFNESS:
        return 1;
    case DIMENSION_AREA:
    case DIMENSION_FORCE:
    case DIMENSION_SWELLING:
        return 2;
    case DIMENSION_VOLUME:
    case DIMENSION_TORQUE:
        return 3;
    default: /* pressures, numbers, angles, and what no travel rests on */
        return 0;
    }
}

/* A car larger by 1 % in all its lengths, its forces larger by the square, has the same pressures
 * and goes 1 % farther: no formula mixes dimensions, and none hides a number of its own. */
static void a_larger_car_of_the_same_kind_goes_farther_in_proportion(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct system *system = driven.car.system;
    driven_say(&driven, driven.fluid, "air", 0.3e-6);
    driven_say(&driven, driven.usual.master, "primary spring", 90);
    driven_say(&driven, driven.usual.master, "large bore", 26e-3);
    say_everywhere(&driven, "chamber", 4e-6);
    say_everywhere(&driven, "expansion", 0.9e-6);
    struct solution *before = room_of(&driven), *after = room_of(&driven);
    struct state usual = state_usual();
    struct reach small = pressed(&driven, &usual, 220, before);
    double scale = 1.01; /* the hoses stay in their band of bores */
    for (int i = 0; i < system->part_count; i++) {
        struct part *part = car_part(&driven.car, i);
        size_t count;
        const struct key *rows = key_table(part->kind, &count);
        for (size_t k = 0; k < count; k++) {
            double value = key_value(part, &rows[k]);
            if ((rows[k].form == FORM_QUANTITY || rows[k].form == FORM_BORES) && !isnan(value))
                key_set(part, &rows[k], value * pow(scale, power_of(rows[k].dimension)));
        }
    }
    struct reach large = pressed(&driven, &usual, 220 * scale * scale, after);
    near_rel(large.travel.m, small.travel.m * scale, 1e-12);
    near_rel(large.rod.n, small.rod.n * scale * scale, 1e-12);
    for (int c = 0; c < 2; c++) {
        near_rel(after->circuits[c].pressure.pa, before->circuits[c].pressure.pa, 1e-12);
        near_rel(after->circuits[c].volume.m3, before->circuits[c].volume.m3 * pow(scale, 3),
                 1e-12);
    }
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pressure_rises_with_effort_by_at_least_lever_and_bore),
        cmocka_unit_test(volume_rises_with_pressure_by_at_least_what_gives_evenly),
        cmocka_unit_test(a_rigid_car_without_air_goes_only_its_clearances),
        cmocka_unit_test(travel_goes_steadily_to_that_without_air),
        cmocka_unit_test(volumes_add_up_along_a_circuit),
        cmocka_unit_test(a_larger_car_of_the_same_kind_goes_farther_in_proportion),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
