/* How fast the search of bores is, beside the same done otherwise, all in one run:
 *
 *     choice_bench            the whole product of four cylinders over 30 bores
 *     choice_bench --short    the same over 12 bores, as a test: the ratios are kept
 *
 * Cars a second of the search, of the plain loop that solves each car as a whole, of the bare
 * arithmetic of the same laws for this one car written out by hand, and of NumPy doing that on
 * whole grids (choice_grid.py; left out where there is no NumPy). Then the growth from 1e3 cars to
 * 1e6. */
#define _GNU_SOURCE /* clock_gettime */

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <time.h>

#include "advice/choice/columns.h"
#include "advice/choice/rows.h"
#include "advice/common/bores.h"
#include "advice_car.h"
#include "plain_car.h"
#include "support/run_cli.h"
#include "units/constants.h"

enum { AXES = 4, MOST = 32, STATES = 3 };

struct bench {
    struct advice_car car;
    struct columns_asked asked;
    int parts[AXES][2];
    struct length bores[MOST];
    double sum; /* of what was seen, so that nothing is left out by the compiler */
    long count;
};

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

static long memory_kb(void)
{
    struct rusage usage;
    getrusage(RUSAGE_SELF, &usage);
    return usage.ru_maxrss;
}

static double seen(double foot, double left, double lost, double balance)
{
    return (isinf(foot) ? 0 : foot) + left + lost + (isinf(balance) ? 0 : balance);
}

static void take(const int *at, const struct column_car *car, void *context)
{
    struct bench *bench = context;
    (void)at;
    bench->sum += seen(car->foot, car->left, car->lost, car->balance);
    bench->count++;
}

static void start(struct bench *bench, int count)
{
    static const char *const names[AXES] = {"brake master", "front left disc", "rear left drum",
                                            "rear right drum"};
    size_t all;
    const struct bore_row *rows = bore_rows(&all);
    bench->car = advice_car_judged("systems/village-van.ini", NULL);
    for (int i = 0; i < MOST && i < (int)all; i++)
        bench->bores[i] = rows[i].bore;
    bench->asked = (struct columns_asked){.system = bench->car.system,
                                          .network = bench->car.network,
                                          .axis_count = AXES,
                                          .effort = {NAN},
                                          .stop = {4},
                                          .most_foot = {NAN}};
    for (int a = 0; a < AXES; a++) {
        bench->parts[a][0] = advice_part(&bench->car, names[a]);
        bench->asked.axes[a] = (struct bore_axis){
            .parts = bench->parts[a], .part_count = 1, .bores = bench->bores, .count = count};
    }
    bench->parts[1][1] = advice_part(&bench->car, "front right disc");
    bench->asked.axes[1].part_count = 2;
}

static double search(struct bench *bench)
{
    bench->sum = 0;
    bench->count = 0;
    double since = seconds();
    if (!columns_run(&bench->asked, take, bench, NULL, NULL, bench->car.arena))
        exit(1);
    return seconds() - since;
}

/* Each car as a whole; so few of them that it takes a second. */
static double plain(struct bench *bench, int cars)
{
    struct system *tried = system_copy(bench->car.system, bench->car.arena);
    struct solution *room = solution_room(tried, bench->car.network, bench->car.arena);
    unsigned seed = 1;
    double since = seconds();
    for (int i = 0; i < cars; i++) {
        for (int a = 0; a < AXES; a++) {
            const struct bore_axis *axis = &bench->asked.axes[a];
            int bore = rand_r(&seed) % axis->count;
            for (int p = 0; p < axis->part_count; p++)
                bore_set(&tried->parts[axis->parts[p]], axis->bores[bore]);
        }
        struct column_car car =
            plain_car(tried, bench->car.network, bench->asked.effort, bench->asked.stop, room);
        bench->sum += car.left;
    }
    return (seconds() - since) / cars;
}

/* --- by hand: a tandem master, discs in front, drums behind ---------------------------------- */

/* All numbers of the van that the bare loop and NumPy need: for each master bore the knees of the
 * effort and what presses there, travel for each volume, and volumes for each other bore. */
struct numbers {
    int count, rows;
    double wanted, weight, rolling, rotating, front_share, chi, grip;
    double effort[MOST][ROWS_MOST], front[MOST][ROWS_MOST], rear[MOST][ROWS_MOST];
    int row_count[MOST];
    double disc[MOST], drum[MOST]; /* N for each Pa, one brake */
    double floor[MOST][STATES];    /* m past the floor without these cylinders */
    double bore[MOST][STATES][3];  /* and past the ends of the bores */
    double discs[MOST][MOST][STATES], drums[MOST][MOST][STATES]; /* m of pedal, of one drum */
    double discs_bore[MOST][MOST][STATES][3], drums_bore[MOST][MOST][STATES][3];
};

static void past_of(const struct reduced *reduced, struct force effort, double *pressures,
                    const struct reduced_terms *terms, bool own, double *into)
{
    double scratch[128];
    static const struct reduced_volumes nothing = {{{0}}, {{0}}};
    double without[REDUCED_EXCESSES];
    struct reduced_volumes volumes = reduced_volumes_of(reduced, 0, pressures, terms, own, scratch);
    int count = reduced_excesses(reduced, 0, effort, &volumes, into);
    if (own)
        return;
    reduced_excesses(reduced, 0, effort, &nothing, without);
    for (int k = 0; k < count; k++)
        into[k] = isinf(without[k]) ? 0 : into[k] - without[k];
}

static void fill_state(struct numbers *numbers, struct bench *bench, int m, int s,
                       const struct reduced *reduced, struct system *tried)
{
    double pressures[64], past[REDUCED_EXCESSES];
    struct reduced_terms terms[64];
    struct force effort = reduced->pedals[0].data->effort;
    reduced_pressures(reduced, 0, effort, pressures);
    past_of(reduced, effort, pressures, reduced->terms, true, past);
    numbers->floor[m][s] = past[0];
    memcpy(numbers->bore[m][s], past + 1, sizeof numbers->bore[m][s]);
    for (int axis = 1; axis < 3; axis++)
        for (int b = 0; b < numbers->count; b++) {
            memset(terms, 0, sizeof terms);
            for (int p = 0; p < bench->asked.axes[axis].part_count; p++) {
                bore_set(&tried->parts[bench->parts[axis][p]], bench->bores[b]);
                reduced_add_part(reduced, tried, bench->parts[axis][p], terms);
            }
            past_of(reduced, effort, pressures, terms, false, past);
            (axis == 1 ? numbers->discs : numbers->drums)[m][b][s] = past[0];
            memcpy((axis == 1 ? numbers->discs_bore : numbers->drums_bore)[m][b][s], past + 1,
                   3 * sizeof(double));
        }
}

static void fill_rows(struct numbers *numbers, struct bench *bench, int m,
                      const struct reduced *reduced, struct system *tried, struct solution *room)
{
    struct reduced_force disc[2], drum[2];
    double pressures[64];
    struct rows rows = {.column_count = 0};
    int columns[2] = {0, 0};
    for (int b = 0; b < numbers->count; b++) {
        bore_set(&tried->parts[bench->parts[1][0]], bench->bores[b]);
        bore_set(&tried->parts[bench->parts[2][0]], bench->bores[b]);
        reduced_forces_of(reduced, tried, bench->parts[1][0], room, disc);
        reduced_forces_of(reduced, tried, bench->parts[2][0], room, drum);
        numbers->disc[b] = disc[0].per_pa;
        numbers->drum[b] = drum[0].per_pa;
    }
    columns[0] = rows_column(&rows, &disc[0]);
    columns[1] = rows_column(&rows, &drum[0]);
    rows_fill(&rows, reduced, pressures);
    numbers->row_count[m] = rows.count;
    for (int r = 0; r < rows.count; r++) {
        numbers->effort[m][r] = rows.effort[r];
        numbers->front[m][r] = rows.beyond[r][columns[0]];
        numbers->rear[m][r] = rows.beyond[r][columns[1]];
    }
}

static struct numbers *numbers_of(struct bench *bench)
{
    struct numbers *numbers = ARENA_NEW(bench->car.arena, struct numbers);
    const struct vehicle *vehicle = system_vehicle(bench->car.system);
    struct system *tried = system_copy(bench->car.system, bench->car.arena);
    struct solution *room = solution_room(tried, bench->car.network, bench->car.arena);
    bool *without = ARENA_ARRAY(bench->car.arena, (size_t)tried->part_count, bool);
    for (int a = 1; a < AXES; a++)
        for (int p = 0; p < bench->asked.axes[a].part_count; p++)
            without[bench->parts[a][p]] = true;
    numbers->count = bench->asked.axes[0].count;
    numbers->weight = vehicle->mass.kg * STANDARD_GRAVITY;
    numbers->rolling = vehicle->rolling.value;
    numbers->rotating = vehicle->rotating.of_1;
    numbers->front_share = vehicle->front_share.of_1;
    numbers->chi = vehicle->centre_height.m / vehicle->wheelbase.m;
    numbers->grip = vehicle->tyre_grip.value;
    numbers->wanted = vehicle->mass.kg * (bench->asked.stop.m_s2 * (1 + numbers->rotating) -
                                          numbers->rolling * STANDARD_GRAVITY);
    for (int m = 0; m < numbers->count; m++) {
        bore_set(&tried->parts[bench->parts[0][0]], bench->bores[m]);
        for (int s = 0; s < STATES; s++) {
            struct state state = state_usual();
            state.lost_circuit = s - 1;
            const struct reduced *reduced =
                reduce(tried, bench->car.network, &state, without, room, bench->car.arena);
            fill_state(numbers, bench, m, s, reduced, tried);
            if (s == 0)
                fill_rows(numbers, bench, m, reduced, tried, room);
        }
    }
    return numbers;
}

static double bare_left(const struct numbers *n, int m, int f, int l, int r, int s)
{
    double floor = n->floor[m][s] + n->discs[m][f][s] + n->drums[m][l][s] + n->drums[m][r][s];
    double past = floor;
    for (int k = 0; k < 3; k++) {
        double bore = n->bore[m][s][k] + n->discs_bore[m][f][s][k] + n->drums_bore[m][l][s][k] +
                      n->drums_bore[m][r][s][k];
        past = bore > past ? bore : past;
    }
    return past > 0 ? 0 : -floor;
}

static double bare_foot(const struct numbers *n, int m, double disc, double drum)
{
    double below = 0;
    for (int j = 0; j < n->row_count[m]; j++) {
        double sum = 2 * disc * n->front[m][j] + drum * n->rear[m][j];
        if (sum >= n->wanted)
            return j == 0 ? 0
                          : n->effort[m][j - 1] + (n->wanted - below) / (sum - below) *
                                                      (n->effort[m][j] - n->effort[m][j - 1]);
        below = sum;
    }
    return INFINITY;
}

static double bare_balance(const struct numbers *n, int m, double disc, double left, double right)
{
    double drum = left > right ? left : right, slack = n->rolling - n->grip;
    double before[3] = {0};
    for (int j = 0; j < n->row_count[m]; j++) {
        double front = n->front[m][j], rear = n->rear[m][j];
        double sum = 2 * disc * front + (left + right) * rear;
        double z = (sum / n->weight + n->rolling) / (1 + n->rotating);
        double load = n->front_share + n->chi * z, turning = n->rotating * z / 2;
        double over[3] = {2 * disc * front / n->weight + slack * load - turning,
                          2 * drum * rear / n->weight + slack * (1 - load) - turning, z};
        if (over[0] > 0 || over[1] > 0) {
            double first = 1;
            for (int i = 0; i < 2; i++)
                if (over[i] > 0 && before[i] / (before[i] - over[i]) < first)
                    first = before[i] / (before[i] - over[i]);
            double at[2], rate = before[2] + first * (z - before[2]);
            load = n->front_share + n->chi * rate;
            for (int i = 0; i < 2; i++)
                at[i] = (before[i] + first * (over[i] - before[i])) / (i == 0 ? load : 1 - load);
            return (at[0] - at[1]) / n->grip;
        }
        memcpy(before, over, sizeof before);
    }
    return INFINITY;
}

static double bare(const struct numbers *n, double *sum)
{
    double since = seconds();
    *sum = 0;
    for (int m = 0; m < n->count; m++)
        for (int f = 0; f < n->count; f++)
            for (int l = 0; l < n->count; l++)
                for (int r = 0; r < n->count; r++) {
                    double first = bare_left(n, m, f, l, r, 1);
                    double second = bare_left(n, m, f, l, r, 2);
                    *sum += seen(bare_foot(n, m, n->disc[f], n->drum[l] + n->drum[r]),
                                 bare_left(n, m, f, l, r, 0), first < second ? first : second,
                                 bare_balance(n, m, n->disc[f], n->drum[l], n->drum[r]));
                }
    return seconds() - since;
}

/* --- NumPy ----------------------------------------------------------------------------------- */

static void write_list(FILE *file, const char *name, const double *values, int count)
{
    fprintf(file, "%s", name);
    for (int i = 0; i < count; i++)
        fprintf(file, " %.17g", values[i]);
    fputc('\n', file);
}

/* A line a list: its name, its numbers; lists of a master bore follow its line "master". */
static void write_numbers(const struct numbers *n, FILE *file)
{
    double car[] = {n->wanted, n->weight, n->rolling, n->rotating, n->front_share, n->chi, n->grip};
    write_list(file, "car", car, 7);
    write_list(file, "disc", n->disc, n->count);
    write_list(file, "drum", n->drum, n->count);
    for (int m = 0; m < n->count; m++) {
        write_list(file, "effort", n->effort[m], n->row_count[m]);
        write_list(file, "front", n->front[m], n->row_count[m]);
        write_list(file, "rear", n->rear[m], n->row_count[m]);
        write_list(file, "floor", n->floor[m], STATES);
        write_list(file, "bore", n->bore[m][0], STATES * 3);
        write_list(file, "discs", n->discs[m][0], n->count * STATES);
        write_list(file, "drums", n->drums[m][0], n->count * STATES);
        write_list(file, "discs_bore", n->discs_bore[m][0][0], n->count * STATES * 3);
        write_list(file, "drums_bore", n->drums_bore[m][0][0], n->count * STATES * 3);
    }
}

/* Seconds, and the sum; NaN without NumPy. */
static double by_numpy(const struct numbers *numbers, double *sum)
{
    char path[] = "/tmp/choice-numbers-XXXXXX",
         *script = source_path("tests/advice/choice/choice_grid.py");
    int descriptor = mkstemp(path);
    FILE *file = descriptor < 0 ? NULL : fdopen(descriptor, "w");
    if (file == NULL)
        return NAN;
    write_numbers(numbers, file);
    fclose(file);
    const char *words[] = {"/usr/bin/python3", script, path, NULL};
    struct run run = run_program(NULL, words, NULL, 300);
    double taken = NAN;
    if (run.status != 0 || sscanf(run.out, "%lf %lf", &taken, sum) != 2)
        taken = NAN;
    run_finish(&run);
    remove(path);
    free(script);
    return taken;
}

/* --- growth ---------------------------------------------------------------------------------- */

/* Seconds a car for a product of about so many cars, the best of some runs. */
static double each_of(struct bench *bench, int count, int runs)
{
    double best = INFINITY;
    for (int a = 0; a < AXES; a++)
        bench->asked.axes[a].count = count;
    for (int i = 0; i < runs; i++)
        best = fmin(best, search(bench));
    return best / (double)bench->count;
}

static void show_growth(struct bench *bench)
{
    static const int counts[] = {6, 10, 18, 31};
    long before = memory_kb();
    printf("growth: cars, ns each, kB more\n");
    for (size_t i = 0; i < sizeof counts / sizeof *counts; i++) {
        double each = each_of(bench, counts[i], i < 2 ? 20 : 2);
        printf("  %8ld  %7.1f  %ld\n", bench->count, each * 1e9, memory_kb() - before);
    }
}

int main(int argc, char **argv)
{
    bool brief = argc > 1 && strcmp(argv[1], "--short") == 0;
    struct bench bench = {.sum = 0};
    start(&bench, brief ? 12 : 30);
    double searched = search(&bench), sum = bench.sum, cars = (double)bench.count, bare_sum,
           grid_sum = NAN;
    const struct numbers *numbers = numbers_of(&bench);
    double by_hand = bare(numbers, &bare_sum), grid = by_numpy(numbers, &grid_sum);
    double each_plain = plain(&bench, brief ? 400 : 4000);
    double ratios[] = {searched / by_hand, each_plain * cars / searched, grid / searched};
    printf("%.0f cars: search %.3f s\n", cars, searched);
    printf("cars a second: search %.3g, plain loop %.3g, bare loop %.3g, NumPy %.3g\n",
           cars / searched, 1 / each_plain, cars / by_hand, cars / grid);
    printf(
        "search takes %.2f times the bare loop; the plain loop %.1f, NumPy %.2f times the search\n",
        ratios[0], ratios[1], ratios[2]);
    printf("sums: %.12g, %.12g, %.12g\n", sum, bare_sum, grid_sum);
    bool same = fabs(sum - bare_sum) <= 1e-9 * fabs(sum) &&
                (isnan(grid) || fabs(sum - grid_sum) <= 1e-9 * fabs(sum));
    if (!brief)
        show_growth(&bench);
    advice_car_finish(&bench.car);
    /* a busy machine may halve what it shows */
    return same && ratios[0] < 10 && ratios[1] > 5 ? 0 : 1;
}
