/* Strokes of bleeding, nipple shut under pressure, on a whole dry car and on one of which only a
 * brake was opened: what comes out at the nipple, stroke after stroke, against another solver:
 * bleed_strokes.m, which integrates the whole tree in GNU Octave by lsode. The program takes closed
 * branches together and four steps of time.
 *
 * Rows of numbers in the file between them, one stroke after the other:
 *   legs, last leg on the way, stroke, its time, density, viscosity, share of fluid in what comes
 *   out, what the program says came out;
 *   then each leg: the one it hangs on, length, bore, volume, air in it, air in its pots.
 * Legs are counted from 1. */
#define _GNU_SOURCE

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#include "purge/purge.h"
#include "purge/purge_state.h"
#include "support/cmocka_all.h"
#include "support/driven_car.h"
#include "support/run_cli.h"

static const struct purge_way shut = {.method = METHOD_PEDAL,
                                      .shut_under_pressure = true,
                                      .stroke = 8e-6,
                                      .stroke_time = 1,
                                      .pause_time = 2,
                                      .reservoir = NAN,
                                      .most_strokes = 400};

static double pot_air(const struct purge_net *net, const struct purge_room *room, int leg)
{
    double air = 0;
    for (int i = 0; i < net->pot_count; i++) {
        if (net->pots[i].leg == leg)
            air += room->pot_air[i];
    }
    return air;
}

/* Fluid that is about to come: what is left of the stroke once the free air is out. */
static double share_out(const struct purge_net *net, const struct purge_room *room, int nipple)
{
    double free = 0; /* both halves of an opposed caliper clear through its one nipple */
    for (int pot = net->nipples[nipple].pot; pot >= 0; pot = purge_clears_too(net, pot))
        free += fmax(room->pot_air[pot] - net->pots[pot].trapped, 0);
    return fmax(fmin(1 - free / shut.stroke, 1), 0);
}

static void write_stroke(const struct purge_net *net, const struct purge_room *room, int nipple,
                         double out, FILE *file)
{
    fprintf(file, "%d %d %.17g %.17g %.17g %.17g %.17g %.17g\n", net->leg_count,
            net->nipples[nipple].leg + 1, shut.stroke, shut.stroke_time, net->density,
            net->viscosity, share_out(net, room, nipple), out);
    for (int i = 0; i < net->leg_count; i++)
        fprintf(file, "%d %.17g %.17g %.17g %.17g %.17g 0 0\n", net->legs[i].above + 1,
                net->legs[i].length, net->legs[i].bore, net->legs[i].volume, room->air[i],
                pot_air(net, room, i));
}

/* Every second stroke of a nipple's turn, until all air on its way is out. */
static int write_turn(const struct purge_net *net, struct purge_room *room, int nipple, FILE *file)
{
    const struct purge_turn turn = {nipple, -1};
    int written = 0;
    purge_open(net, &turn, room);
    for (int stroke = 0; stroke < 200 && purge_air_on(net, room, &room->path) > 1e-12; stroke++) {
        const double out = purge_net_stroke(net, room, &shut);
        if (stroke % 2 == 0) {
            write_stroke(net, room, nipple, out, file);
            written++;
        }
        purge_push(net, room, out, shut.stroke_time);
    }
    return written;
}

static int write_circuit(struct driven_car *driven, int circuit, int dry_from, FILE *file)
{
    struct arena *arena = driven->car.arena;
    int written = 0;
    for (int backwards = 0; backwards < 2; backwards++) {
        struct purge_net *net = purge_net_of(driven->car.system, driven->network, circuit, arena);
        purge_net_dry(net, driven->network, driven->car.system, dry_from);
        struct purge_room *room = purge_room(net, 1, false, arena);
        purge_fill(net, room);
        for (int i = 0; i < net->nipple_count; i++)
            written += write_turn(net, room, backwards ? net->nipple_count - 1 - i : i, file);
    }
    return written;
}

static int write_car(FILE *file)
{
    struct driven_car driven = driven_start();
    const struct network *network = driven.network;
    int written = 0;
    for (int c = 0; c < network->circuit_count; c++)
        written += write_circuit(&driven, c, network->circuits[c].source, file);
    /* only the two front brakes are dry: air behind fluid */
    const int right = network_vertex(network, driven.usual.front_right, 0);
    const int front = network->vertices[right].circuit;
    struct purge_net *net = purge_net_of(driven.car.system, network, front, driven.car.arena);
    for (int i = 0; i < net->pot_count; i++)
        net->pots[i].air = 0.2 * net->pots[i].volume;
    struct purge_room *room = purge_room(net, 1, false, driven.car.arena);
    for (int i = 0; i < net->nipple_count; i++) {
        purge_fill(net, room);
        written += write_turn(net, room, i, file);
    }
    driven_finish(&driven);
    return written;
}

static void another_solver_agrees_on_what_comes_out(void **state)
{
    (void)state;
    char path[] = "/tmp/firmpedal-strokes-XXXXXX";
    FILE *file = fdopen(mkstemp(path), "w");
    assert_non_null(file);
    const int written = write_car(file);
    assert_int_equal(fclose(file), 0);
    char *script = source_path("tests/cross/bleed_strokes.m");
    const char *words[] = {"octave-cli", "--norc", "--quiet", script, path, NULL};
    struct run run = run_program(NULL, words, NULL, 300);
    fprintf(stderr, "%s%s", run.out, run.err);
    int compared = 0;
    double worst = INFINITY;
    assert_int_equal(run.status, 0);
    assert_int_equal(sscanf(run.out, "%d strokes, worst %lf", &compared, &worst), 2);
    assert_int_equal(compared, written);
    assert_true(compared >= 40);
    assert_true(worst <= 0.01);
    run_finish(&run);
    free(script);
    unlink(path);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(another_solver_agrees_on_what_comes_out)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
