/* A thousand cars made up at random, solved by the program and by another solver: whole_car.m, in
 * GNU Octave, written from docs/physics.md alone by somebody who had not read the program's laws.
 * It takes Newton steps on all unknowns of a car at once; the program walks from the pedal to the
 * wheels.
 *
 * Hoses are as described, all good or all worn; adjusters set or not; pads
 * at rest or knocked back.
 *
 * Compared are pedal travel, effort, rod travel and the pressures at the four wheels, within 1e-9
 * of each; where a pedal ends on its floor or at a bore's end as well (about two fifths of the
 * cars).
 */
#define _GNU_SOURCE

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cross/random_car.h"
#include "input/read.h"
#include "physics/solution.h"
#include "support/near.h"
#include "support/run_cli.h"

enum { CARS = 1000 };

static int part_called(const struct system *system, const char *name)
{
    for (int i = 0; i < system->part_count; i++)
        if (strcmp(system->parts[i].name, name) == 0)
            return i;
    return -1;
}

static double wheel_pressure(const struct system *system, const struct solution *solution,
                             const char *wheel)
{
    char name[64];
    snprintf(name, sizeof name, "%s disc", wheel);
    int part = part_called(system, name);
    snprintf(name, sizeof name, "%s drum", wheel);
    if (part < 0)
        part = part_called(system, name);
    return part < 0 ? 0 : solution->brakes[part].pressure[0].pa;
}

/* The network's number of a circuit that random_car counts from 1: by piston of a tandem, by master
 * on a balance bar. */
static int lost_circuit(const struct system *system, const struct network *network, int lost)
{
    for (int i = 0; i < network->circuit_count; i++) {
        const struct circuit *circuit = &network->circuits[i];
        bool second = circuit->chamber == 1 ||
                      strcmp(system->parts[circuit->master].name, "second master") == 0;
        if (lost == (second ? 2 : 1))
            return i;
    }
    return -1;
}

static void solve_description(int car, const char *description, size_t size,
                              const struct random_state *as, FILE *numbers)
{
    struct arena *arena = arena_create();
    assert_non_null(arena);
    struct messages messages = messages_start(arena);
    struct source source = {"car.ini", description, size};
    struct system *system = read_car(&source, arena, &messages);
    if (system == NULL) {
        for (size_t i = 0; i < messages.count; i++)
            fprintf(stderr, "car %d: %s\n", car, messages.items[i].words);
        fprintf(stderr, "%s", description);
    }
    assert_non_null(system);
    struct network *network = network_build(system, arena, &messages);
    assert_non_null(network);
    struct solution *solution = solution_room(system, network, arena);
    struct state state = state_usual();
    state.assisted = as->assisted;
    static const enum hose_case hoses[] = {HOSES_AS_SAID, HOSES_GOOD, HOSES_WORN};
    state.hoses = hoses[as->hoses];
    state.brakes.slack = as->slack;
    state.brakes.knocked_back = as->knocked_back;
    state.lost_circuit = lost_circuit(system, network, as->lost);
    solve(system, network, &state, solution);
    const struct pedal_state *pedal = &solution->pedals[part_called(system, "brake pedal")];
    const double row[] = {pedal->travel.m,
                          pedal->effort.n,
                          pedal->rod_travel.m,
                          wheel_pressure(system, solution, "front left"),
                          wheel_pressure(system, solution, "front right"),
                          wheel_pressure(system, solution, "rear left"),
                          wheel_pressure(system, solution, "rear right"),
                          pedal->on_floor || pedal->bottomed};
    for (size_t i = 0; i < sizeof row / sizeof row[0]; i++)
        assert_true(isfinite(row[i]));
    write_numbers(numbers, car, ROW_ANSWER, row, sizeof row / sizeof row[0]);
    arena_destroy(arena);
}

static void write_cars(FILE *numbers)
{
    for (int car = 1; car <= CARS; car++) {
        char *text = NULL;
        size_t size = 0;
        FILE *description = open_memstream(&text, &size);
        assert_non_null(description);
        struct random_state as = {0};
        random_car(car, description, numbers, &as);
        assert_int_equal(fclose(description), 0);
        solve_description(car, text, size, &as, numbers);
        free(text);
    }
}

static void another_solver_agrees_on_a_thousand_cars(void **state)
{
    (void)state;
    char path[] = "/tmp/firmpedal-cars-XXXXXX";
    int file = mkstemp(path);
    assert_true(file >= 0);
    FILE *numbers = fdopen(file, "w");
    assert_non_null(numbers);
    write_cars(numbers);
    assert_int_equal(fclose(numbers), 0);
    setenv("OMP_NUM_THREADS", "1", 1); /* small sums: threads would only wait for each other */
    char *script = source_path("tests/cross/whole_car.m");
    const char *words[] = {"octave-cli", "--norc", "--quiet", script, path, NULL};
    struct run run = run_program(NULL, words, NULL, 500);
    int compared = 0, stopped = 0;
    double worst = INFINITY;
    int read = sscanf(run.out, "%d cars, %d stopped, worst %lf", &compared, &stopped, &worst);
    fprintf(stderr, "%s%s", run.out, run.err);
    assert_int_equal(run.status, 0);
    assert_int_equal(read, 3);
    assert_true(compared >= CARS);
    assert_true(stopped >= CARS / 20);
    assert_true(worst <= 1e-9);
    run_finish(&run);
    free(script);
    if (getenv("KEEP_CARS") == NULL)
        unlink(path);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(another_solver_agrees_on_a_thousand_cars)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
