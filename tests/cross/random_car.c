#include "cross/random_car.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"

/* A car on the way to both of its forms. */
struct making {
    FILE *text, *numbers;
    struct random random;
    int car;
    int domains, circuits;
    int wheel_domains[4];
    double master_chambers[2]; /* in front of each piston, by master */
    int masters;
    char runs[4096]; /* the lines of [runs] so far */
};

void write_numbers(FILE *numbers, int car, enum row_kind kind, const double *values, int count)
{
    fprintf(numbers, "%d %d", car, (int)kind);
    for (int i = 0; i < ROW_NUMBERS; i++) {
        double value = i < count ? values[i] : 0;
        if (isnan(value))
            fputs(" NaN", numbers);
        else
            fprintf(numbers, " %.17g", value);
    }
    fputc('\n', numbers);
}

#define ROW(making, kind, ...)                                                                     \
    write_numbers((making)->numbers, (making)->car, (kind), (const double[]){__VA_ARGS__},         \
                  (int)(sizeof(double[]){__VA_ARGS__} / sizeof(double)))

static double between(struct making *making, double from, double to)
{
    return random_between(&making->random, from, to);
}

static bool chance(struct making *making, double of)
{
    return random_chance(&making->random, of);
}

/* Says a key in a unit and gives its value in SI. */
static double say(struct making *making, const char *key, double value, const char *unit,
                  double factor)
{
    fprintf(making->text, "%s = %.12g %s\n", key, value, unit);
    char words[64];
    snprintf(words, sizeof words, "%.12g", value);
    return strtod(words, NULL) * factor;
}

static double say_mm(struct making *making, const char *key, double from, double to)
{
    return say(making, key, between(making, from, to), "mm", 1e-3);
}

static double say_bar(struct making *making, const char *key, double from, double to)
{
    return say(making, key, between(making, from, to), "bar", 1e5);
}

static double say_ml(struct making *making, const char *key, double from, double to)
{
    return say(making, key, between(making, from, to), "mL", 1e-6);
}

static double say_n(struct making *making, const char *key, double from, double to)
{
    return say(making, key, between(making, from, to), "N", 1);
}

static double say_plain(struct making *making, const char *key, double from, double to)
{
    return say(making, key, between(making, from, to), "", 1);
}

static void add_run(struct making *making, const char *words)
{
    size_t size = strlen(making->runs);
    snprintf(making->runs + size, sizeof making->runs - size, "%s", words);
}

enum layout { LAYOUT_SINGLE, LAYOUT_SPLIT, LAYOUT_DIAGONAL, LAYOUT_BAR, LAYOUT_COUNT };
enum help { HELP_NONE, HELP_DIRECT, HELP_REMOTE };

static void make_vehicle(struct making *making)
{
    fputs("[vehicle]\ntitle = Made up\nmass = 1000 kg\n[fluid]\n", making->text);
    static const char *const grades[] = {"DOT 3", "DOT 4", "DOT 5.1", "DOT 5", "mineral"};
    static const double numbers[] = {3, 4, 5.1, 5, 0};
    int grade = random_of(&making->random, 5);
    fprintf(making->text, "grade = %s\n", grades[grade]);
    double temperature = say(making, "temperature", between(making, -20, 130), "degC", 1);
    double air = chance(making, 0.3) ? say_ml(making, "air", 0, 0) : say_ml(making, "air", 0, 4);
    ROW(making, ROW_FLUID, numbers[grade], temperature, air);
}

static void make_pedal(struct making *making, enum layout layout, enum help help)
{
    fprintf(making->text, "[brake pedal]\nworks = %s\n",
            help == HELP_DIRECT    ? "servo"
            : layout == LAYOUT_BAR ? "first master, second master"
                                   : "master");
    double ratio = say_plain(making, "ratio", 2.5, 7);
    double efficiency = say_plain(making, "efficiency", 0.7, 1);
    double play = chance(making, 0.7) ? say_mm(making, "free play", 0.5, 12) : NAN;
    double stiffness = say(making, "stiffness", between(making, 80, 800), "N/mm", 1e3);
    double effort = say_n(making, "effort", 20, help == HELP_NONE ? 900 : 450);
    double spring = chance(making, 0.5) ? say_n(making, "return spring", 0, 40) : 0;
    double travel = chance(making, 0.7) ? say_mm(making, "travel", 60, 220) : NAN;
    double first = NAN, second = NAN;
    if (layout == LAYOUT_BAR) {
        first = say_mm(making, "bar to first", 20, 60);
        second = say_mm(making, "bar to second", 20, 60);
    }
    ROW(making, ROW_PEDAL, ratio, efficiency, play, stiffness, effort, spring, travel, first,
        second);
}

static void make_servo(struct making *making, enum help help, struct random_state *state)
{
    state->assisted = chance(making, 0.75);
    if (help == HELP_NONE) {
        ROW(making, ROW_SERVO, 0);
        ROW(making, ROW_SERVO2, NAN, state->assisted, state->lost, 0, 0);
        return;
    }
    fprintf(making->text, "[servo]\ntype = %s\n", help == HELP_DIRECT ? "direct" : "remote");
    if (help == HELP_DIRECT)
        fputs("works = master\n", making->text);
    double diameter = say_mm(making, "diameter", 130, 280);
    double ratio = say_plain(making, "ratio", 1.5, 6);
    double jump = say_n(making, "jump", 60, 400);
    double vacuum = say_bar(making, "vacuum", 0.4, 0.9);
    double efficiency = say_plain(making, "efficiency", 0.8, 1);
    double spring = say_n(making, "return spring", 0, 150);
    double cut_in = 0, bore = 0, line_cut_in = 0, gap = NAN, motion = 0, without = 0, rod = 0,
           valve = 0;
    bool passes = true;
    if (help == HELP_DIRECT) {
        cut_in = say_n(making, "cut in", 10, 100);
        if (chance(making, 0.5))
            gap = say_mm(making, "output rod gap", 0, 2);
        motion = say_mm(making, "lost motion", 0, 2);
        without = say_mm(making, "lost motion without vacuum", 0, 4);
    } else {
        bore = say_mm(making, "bore", 15, 30);
        line_cut_in = say_bar(making, "line cut in", 1, 10);
        rod = say_mm(making, "rod diameter", 4, 10);
        valve = say_ml(making, "valve volume", 0, 0.5);
        passes = chance(making, 0.7);
        fprintf(making->text, "passes at rest = %s\n", passes ? "yes" : "no");
    }
    ROW(making, ROW_SERVO, help == HELP_DIRECT ? 1 : 2, diameter, ratio, cut_in, jump, vacuum,
        efficiency, spring, bore, line_cut_in);
    ROW(making, ROW_SERVO2, gap, state->assisted, state->lost, motion, without, passes, rod, valve);
}

static void make_master(struct making *making, const char *name, bool tandem, bool diagonal,
                        bool lost)
{
    fprintf(making->text, "[%s]\ntype = %s\n", name, tandem ? "tandem" : "single");
    if (tandem)
        fprintf(making->text, "primary outlets = %s\nsecondary outlets = %s\n",
                diagonal ? "one" : "front", diagonal ? "two" : "rear");
    double bore = say_mm(making, "bore", 15, 28);
    double stroke = chance(making, 0.7) || lost ? say_mm(making, "stroke", 25, 60) : NAN;
    double cut_off = say_mm(making, "cut off", 0.5, 2.5);
    double gap = say_mm(making, "rod gap", 0.2, 2);
    double efficiency = say_plain(making, "efficiency", 0.85, 1);
    bool springs = chance(making, 0.5);
    double most = springs ? 150 : 0;
    double primary = say_n(making, "primary spring", 0, most);
    double secondary = tandem ? say_n(making, "secondary spring", 0, 0.8 * most) : 0;
    double friction = springs ? say_n(making, "seal friction", 0, 50) : 0;
    making->master_chambers[making->masters++] = say_ml(making, "chamber", 2, 12);
    ROW(making, ROW_MASTER, tandem, bore, stroke, cut_off, gap, efficiency, primary, secondary,
        friction);
}

/* A new domain behind a valve or servo, or (how 0) at a master's outlet. Its number. */
static int add_domain(struct making *making, int circuit, int before, int how, double first,
                      double second)
{
    ROW(making, ROW_DOMAIN, circuit, before, how, first, second);
    return ++making->domains;
}

/* A pipe in a run: its own length, and a size that all pipes share. */
struct sizes {
    double size, wall, inside;
    int material;
};

static void add_pipe(struct making *making, int domain, const struct sizes *sizes)
{
    char words[64];
    snprintf(words, sizeof words, "%.3f", between(making, 0.2, 3));
    ROW(making, ROW_PIPE, domain, strtod(words, NULL), sizes->size, sizes->wall, sizes->material);
    add_run(making, ", ");
    add_run(making, words);
    add_run(making, " m pipe");
}

/* A part of a run with a chamber, described in a section of its own. Its volume. */
static double add_chamber(struct making *making, const char *name, int domain)
{
    double volume = say_ml(making, "chamber", 0.1, 3);
    ROW(making, ROW_CHAMBER, domain, volume);
    add_run(making, ", ");
    add_run(making, name);
    return volume;
}

/* A valve in a run; the domain behind it. */
static int add_valve(struct making *making, const char *name, int circuit, int domain)
{
    static const char *const types[] = {"limiting", "proportioning", "load-sensing", "hold-off",
                                        "residual"};
    int type = random_of(&making->random, 5), how = 0;
    fprintf(making->text, "[%s]\ntype = %s\n", name, types[type]);
    double first = 0, second = 0;
    switch (type) {
    case 0:
        how = 1;
        first = say_bar(making, "limit", 15, 70);
        break;
    case 1:
    case 2:
        how = 2;
        first = say_bar(making, "knee", 8, 60);
        second = say_plain(making, "slope", 0.1, 0.8);
        break;
    case 3:
        how = 3;
        first = say_bar(making, "opens", 2, 12);
        second = say_bar(making, "equal above", 15, 40);
        break;
    case 4:
        say_bar(making, "holds", 0.2, 1);
        break;
    }
    double volume = add_chamber(making, name, domain);
    int behind = add_domain(making, circuit, domain, how, first, second);
    ROW(making, ROW_CHAMBER, behind, volume); /* one before and one behind */
    return behind;
}

static void add_disc(struct making *making, const char *name, int domain)
{
    fprintf(making->text, "[%s]\n", name);
    bool fixed = chance(making, 0.5);
    int pistons = fixed ? 2 + 2 * random_of(&making->random, 2) : 1 + random_of(&making->random, 2);
    bool second = chance(making, 0.2);
    char words[64], more[64];
    snprintf(words, sizeof words, "%.4f", between(making, 28, 56));
    snprintf(more, sizeof more, "%.4f", between(making, 25, 40));
    fprintf(making->text, "caliper = %s\neffective radius = 0.11 m\nbore = %d of %s mm\n",
            fixed ? "fixed" : "sliding", pistons, words);
    int others = second ? (fixed ? 2 : 1) : 0;
    if (second)
        fprintf(making->text, "second bore = %d of %s mm\n", others, more);
    double threshold = say_bar(making, "threshold", 0, 2);
    double roll_back = say_mm(making, "roll back", 0.05, 0.4);
    double squash = say_mm(making, "pad squash", 0.05, 0.4);
    double opening = say_mm(making, "body opening", 0.05, 0.4);
    double run_out = say_mm(making, "run out", 0.02, 0.2);
    double play = say_mm(making, "bearing play", 0.02, 0.2);
    double all = chance(making, 0.2) ? say_mm(making, "piston travel", 0.2, 0.9) : NAN;
    ROW(making, ROW_DISC, domain, fixed ? 1 : 2, pistons, strtod(words, NULL) * 1e-3, others,
        strtod(more, NULL) * 1e-3, threshold, roll_back, squash, opening, run_out, play, all);
    ROW(making, ROW_CHAMBER, domain, say_ml(making, "chamber", 5, 60));
}

static void add_drum(struct making *making, const char *name, int domain)
{
    static const char *const shoes[] = {
        "leading and trailing\ncylinder = two pistons", "leading and trailing\ncylinder = sliding",
        "two leading\ncylinder = one each", "duo-servo\ncylinder = two pistons"};
    fprintf(making->text, "[%s]\nshoes = %s\ndrum diameter = 220 mm\nfriction = 0.3\n", name,
            shoes[random_of(&making->random, 4)]);
    double bore = say_mm(making, "bore", 15, 27);
    double threshold = say_bar(making, "threshold", 0.5, 5);
    double clearance = say_mm(making, "clearance", 0.1, 1.2);
    double give = say_mm(making, "give", 0.1, 0.8);
    double all = chance(making, 0.2) ? say_mm(making, "piston travel", 0.2, 2) : NAN;
    ROW(making, ROW_DRUM, domain, bore, threshold, clearance, give, all);
    /* "in each, where it has several" */
    ROW(making, ROW_CHAMBER, domain, say_ml(making, "chamber", 0.5, 4));
}

static const char *const wheel_names[4] = {"front left", "front right", "rear left", "rear right"};

/* From a tee to a wheel: a pipe, now and then a valve and a pipe, a bracket, a hose, the brake. */
static void add_wheel(struct making *making, const char *tee, int circuit, int domain, int wheel,
                      bool disc, const struct sizes *sizes)
{
    char name[64], hose[64];
    add_run(making, wheel_names[wheel]);
    add_run(making, " = ");
    add_run(making, tee);
    add_pipe(making, domain, sizes);
    if (chance(making, 0.25)) {
        snprintf(name, sizeof name, "%s valve", wheel_names[wheel]);
        domain = add_valve(making, name, circuit, domain);
        add_pipe(making, domain, sizes);
    }
    snprintf(name, sizeof name, "%s bracket", wheel_names[wheel]);
    fprintf(making->text, "[%s]\n", name);
    add_chamber(making, name, domain);
    snprintf(hose, sizeof hose, "%.3f", between(making, 0.2, 0.6));
    add_run(making, ", ");
    add_run(making, hose);
    add_run(making, " m hose, ");
    snprintf(name, sizeof name, "%s %s", wheel_names[wheel], disc ? "disc" : "drum");
    add_run(making, name);
    add_run(making, "\n");
    fprintf(making->text, "[%s hose]\n", wheel_names[wheel]);
    static const char *const states[] = {"good", "worn", "new"};
    int state = 1 + random_of(&making->random, 3);
    fprintf(making->text, "state = %s\n", states[state - 1]);
    double expansion =
        chance(making, 0.3) ? say(making, "expansion", between(making, 0.2, 2), "mL/m", 1e-6) : NAN;
    ROW(making, ROW_HOSE, domain, strtod(hose, NULL), sizes->inside, state, expansion);
    making->wheel_domains[wheel] = domain;
    if (disc)
        add_disc(making, name, domain);
    else
        add_drum(making, name, domain);
}

/* From an outlet: pipe, now and then a remote servo, now and then one or two valves, a tee, two or
 * four wheels. */
static void add_circuit(struct making *making, const char *name, const char *outlet, int master,
                        int chamber, bool remote, const int *wheels, int count, const bool discs[2],
                        const struct sizes *sizes)
{
    ROW(making, ROW_CIRCUIT, master, chamber);
    int circuit = ++making->circuits;
    int domain = add_domain(making, circuit, 0, 0, 0, 0);
    ROW(making, ROW_CHAMBER, domain, making->master_chambers[master - 1]);
    char word[64];
    add_run(making, name);
    add_run(making, " feed = ");
    add_run(making, outlet);
    add_pipe(making, domain, sizes);
    if (remote) {
        /* its chamber stands in [servo], written before */
        add_run(making, ", servo");
        domain = add_domain(making, circuit, domain, 4, 0, 0);
        add_pipe(making, domain, sizes);
    }
    int valves = random_of(&making->random, 3);
    for (int i = 0; i < valves; i++) {
        snprintf(word, sizeof word, "%s %s valve", name, i == 0 ? "upper" : "lower");
        domain = add_valve(making, word, circuit, domain);
        add_pipe(making, domain, sizes);
    }
    snprintf(word, sizeof word, "%s tee", name);
    fprintf(making->text, "[%s]\n", word);
    add_chamber(making, word, domain);
    add_run(making, "\n");
    for (int i = 0; i < count; i++)
        add_wheel(making, word, circuit, domain, wheels[i], discs[wheels[i] / 2], sizes);
}

static struct sizes make_sizes(struct making *making)
{
    struct sizes sizes;
    fputs("[all pipes]\n", making->text);
    sizes.material = 1 + random_of(&making->random, 2);
    fprintf(making->text, "material = %s\n", sizes.material == 1 ? "steel" : "copper-nickel");
    sizes.size = say_mm(making, "size", 4.5, 8.5);
    sizes.wall = say_mm(making, "wall", 0.6, 1.1);
    fputs("[all hoses]\n", making->text);
    sizes.inside = say_mm(making, "inside", 2.5, 7);
    return sizes;
}

static void make_plumbing(struct making *making, enum layout layout, enum help help)
{
    struct sizes sizes = make_sizes(making);
    const bool discs[2] = {chance(making, 0.6), chance(making, 0.4)};
    static const int four[] = {0, 1, 2, 3}, front[] = {0, 1}, rear[] = {2, 3}, one[] = {0, 3},
                     two[] = {1, 2};
    switch (layout) {
    case LAYOUT_SINGLE:
        add_circuit(making, "main", "master", 1, 0, help == HELP_REMOTE, four, 4, discs, &sizes);
        break;
    case LAYOUT_SPLIT:
        add_circuit(making, "front", "master.front", 1, 1, false, front, 2, discs, &sizes);
        add_circuit(making, "rear", "master.rear", 1, 2, false, rear, 2, discs, &sizes);
        break;
    case LAYOUT_DIAGONAL:
        add_circuit(making, "one", "master.one", 1, 1, false, one, 2, discs, &sizes);
        add_circuit(making, "two", "master.two", 1, 2, false, two, 2, discs, &sizes);
        break;
    case LAYOUT_BAR:
        add_circuit(making, "front", "first master", 1, 0, false, front, 2, discs, &sizes);
        add_circuit(making, "rear", "second master", 2, 0, false, rear, 2, discs, &sizes);
        break;
    case LAYOUT_COUNT:
        break;
    }
    const double *domains = (const double[]){making->wheel_domains[0], making->wheel_domains[1],
                                             making->wheel_domains[2], making->wheel_domains[3]};
    write_numbers(making->numbers, making->car, ROW_WHEEL, domains, 4);
    fprintf(making->text, "[runs]\n%s", making->runs);
}

void random_car(int car, FILE *description, FILE *numbers, struct random_state *state)
{
    struct making making = {.text = description,
                            .numbers = numbers,
                            .random = {.state = (uint64_t)car * 1000003u},
                            .car = car};
    enum layout layout = (enum layout)random_of(&making.random, LAYOUT_COUNT);
    enum help help = HELP_NONE;
    if (layout != LAYOUT_BAR && chance(&making, 0.6))
        help = layout == LAYOUT_SINGLE && chance(&making, 0.5) ? HELP_REMOTE : HELP_DIRECT;
    state->lost =
        layout != LAYOUT_SINGLE && chance(&making, 0.25) ? 1 + random_of(&making.random, 2) : 0;
    make_vehicle(&making);
    make_pedal(&making, layout, help);
    make_servo(&making, help, state);
    if (help == HELP_REMOTE) { /* one chamber before its piston and one behind */
        double volume = say_ml(&making, "chamber", 2, 8);
        ROW(&making, ROW_CHAMBER, 1, volume);
        ROW(&making, ROW_CHAMBER, 2, volume);
    }
    if (layout == LAYOUT_BAR) {
        make_master(&making, "first master", false, false, state->lost > 0);
        make_master(&making, "second master", false, false, state->lost > 0);
    } else {
        make_master(&making, "master", layout != LAYOUT_SINGLE, layout == LAYOUT_DIAGONAL,
                    state->lost > 0);
    }
    make_plumbing(&making, layout, help);
    state->hoses = random_of(&making.random, 3);
    state->slack = chance(&making, 0.25);
    state->knocked_back = chance(&making, 0.25);
    ROW(&making, ROW_CASE, state->hoses, state->slack, state->knocked_back);
}
