/* A car boiled down says what solve() says: on cars made up at random (tests/cross/random_car.h),
 * in every state, with many efforts. */
#define _GNU_SOURCE /* open_memstream */

#include "physics/reduced.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cross/random_car.h"
#include "input/read.h"
#include "support/near.h"
#include "support/sanitized.h"

enum { CARS = SANITIZED ? 60 : 1000 };

struct made {
    struct arena *arena;
    struct system *system;
    struct network *network;
    struct random_state as;
};

static struct made made_of(const char *text)
{
    struct made made = {.arena = arena_create()};
    struct messages messages = messages_start(made.arena);
    struct source source = {"car.ini", text, strlen(text)};
    made.system = read_car(&source, made.arena, &messages);
    assert_non_null(made.system);
    made.network = network_build(made.system, made.arena, &messages);
    return made;
}

static struct made made_car(int car)
{
    char *text = NULL, *rows = NULL;
    size_t text_size = 0, rows_size = 0;
    FILE *description = open_memstream(&text, &text_size);
    FILE *numbers = open_memstream(&rows, &rows_size);
    assert_true(description != NULL && numbers != NULL);
    struct random_state as = {0};
    random_car(car, description, numbers, &as);
    assert_int_equal(fclose(description) | fclose(numbers), 0);
    struct made made = made_of(text);
    made.as = as;
    free(text);
    free(rows);
    return made;
}

/* Where an end is searched, the effort is known to 1e-12 of the asked one, and what lever and servo
 * make of it to as many times more. */
#define AT_AN_END 20

/* Within 1e-12 of itself or of a scale; both unknown is alike. */
static void same(double a, double b, double scale)
{
    if (isnan(a) && isnan(b))
        return;
    near(a, b, 1e-12 * fmax(fabs(b), scale));
}

static void hold_pedal(const struct reduced *reduced, int pedal, struct force effort,
                       const struct solution *solution, double *pressures, double *scratch)
{
    struct pedal_state is = reduced_pressed(reduced, pedal, effort, pressures, scratch);
    const struct pedal_state *was = &solution->pedals[reduced->pedals[pedal].part];
    double end = pedal_end(reduced->pedals[pedal].data).m;
    double rough = was->on_floor || was->bottomed ? AT_AN_END : 1;
    same(is.effort.n, was->effort.n, effort.n);
    same(is.rod.n, was->rod.n, rough * fmax(effort.n, was->rod.n));
    same(is.travel.m, was->travel.m, end);
    same(is.left.m, was->left.m, end);
    same(is.rod_travel.m, was->rod_travel.m, end);
    assert_int_equal(is.on_floor, was->on_floor);
    assert_int_equal(is.bottomed, was->bottomed);
}

static void hold_pressures(const struct made *made, const struct reduced *reduced,
                           const struct solution *solution, const double *pressures, double rough)
{
    for (int v = 0; v < made->network->vertex_count; v++) {
        int stretch = reduced->stretch_of[v];
        if (stretch >= 0 && !made->network->circuits[reduced->stretches[stretch].circuit].clutch)
            same(pressures[stretch], solution->pressures[v].pa,
                 rough * fmax(1e5, solution->pressures[v].pa));
    }
}

static void hold(const struct made *made, const struct state *state, double newtons)
{
    struct state pressed = *state;
    pressed.effort.n = newtons;
    struct solution *room = solution_room(made->system, made->network, made->arena);
    solve(made->system, made->network, &pressed, room);
    struct reduced *reduced =
        reduce(made->system, made->network, &pressed, NULL, room, made->arena);
    size_t count = (size_t)reduced->stretch_count + 1;
    double *pressures = ARENA_ARRAY(made->arena, count, double);
    double *scratch = ARENA_ARRAY(made->arena, 2 * count, double);
    for (int p = 0; p < reduced->pedal_count; p++)
        hold_pedal(reduced, p, pressed.effort, room, pressures, scratch);
    bool ended = false;
    for (int p = 0; p < reduced->pedal_count; p++) {
        const struct pedal_state *pedal = &room->pedals[reduced->pedals[p].part];
        ended = ended || pedal->on_floor || pedal->bottomed;
    }
    hold_pressures(made, reduced, room, pressures, ended ? AT_AN_END : 1);
    if (!ended)
        same(reduced_deceleration(reduced, pressures).m_s2, room->deceleration.m_s2, 1);
}

/* Random cars have plain masters; every fourth gets a large bore that delivers up to 8 bar. */
static void step_masters(const struct made *made)
{
    for (int i = 0; i < made->system->part_count; i++) {
        struct part *part = &made->system->parts[i];
        if (part->kind != KIND_MASTER)
            continue;
        part->as.master.large_bore.m = 1.4 * part->as.master.bore.m;
        part->as.master.take_up.pa = 8e5;
    }
}

static int circuit_lost(const struct made *made)
{
    return made->as.lost > 0 && made->as.lost <= made->network->circuit_count ? made->as.lost - 1
                                                                              : -1;
}

/* Seen to fail with what passed before a remote servo helped taken off too, with the servo's own
 * valve forgotten, and with the second piston of a stepped master at the small bore. */
static void random_cars_are_the_same(void **state)
{
    (void)state;
    static const double efforts[] = {0, 20, 100, 300, 700, 1500};
    for (int car = 1; car <= CARS; car++) {
        struct made made = made_car(car);
        struct state as = state_usual();
        if (car % 4 == 0)
            step_masters(&made);
        as.assisted = made.as.assisted;
        as.hoses = (enum hose_case)made.as.hoses;
        as.brakes.slack = made.as.slack;
        as.brakes.knocked_back = made.as.knocked_back;
        as.brakes.hot = car % 5 == 0;
        as.brakes.linings = car % 7 == 0 ? LININGS_WORN : LININGS_AS_SAID;
        as.no_floor = car % 3 == 0;
        as.lost_circuit = circuit_lost(&made);
        hold(&made, &as, efforts[car % 6]);
        hold(&made, &as, efforts[(car + 3) % 6]);
        arena_destroy(made.arena);
    }
}

static void ready_cars_are_the_same_in_every_state(void **state)
{
    (void)state;
    static const char *const ready[] = {
        "diagonal-hatch",      "family-saloon", "hill-coupe",           "little-two-seater",
        "rear-engined-saloon", "servo-estate",  "twin-disc-motorcycle", "village-van"};
    for (size_t i = 0; i < sizeof ready / sizeof *ready; i++) {
        char path[256];
        snprintf(path, sizeof path, "%s/systems/%s.ini", getenv("SOURCE_ROOT"), ready[i]);
        struct made made = {.arena = arena_create()};
        struct messages messages = messages_start(made.arena);
        struct source source;
        assert_true(source_load(path, made.arena, &messages, &source));
        made.system = read_car(&source, made.arena, &messages);
        made.network = network_build(made.system, made.arena, &messages);
        for (int lost = -1; lost < made.network->circuit_count; lost++)
            for (int assisted = 0; assisted < 2; assisted++)
                for (double effort = 50; effort < 1500; effort *= 3) {
                    struct state as = state_usual();
                    as.assisted = assisted;
                    as.lost_circuit = lost;
                    hold(&made, &as, effort);
                }
        arena_destroy(made.arena);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(random_cars_are_the_same),
        cmocka_unit_test(ready_cars_are_the_same_in_every_state),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
